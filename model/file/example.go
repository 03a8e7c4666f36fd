package file

import "fmt"

// likely is what a key could say where it is missing or says nothing that is read.
var likely = map[string]string{
	"splaywright": "splaywright: 1",
	"form":        "form: stool",
	"size":        "size: {height: 260, width: 420, depth: 250}",
	"height":      "height: 260 mm",
	"width":       "width: 60 mm",
	"depth":       "depth: 250 mm",
	"staves":      "staves: 6",
	"gauge":       "gauge: 8",
	"length":      "length: 50 mm",
	"count":       "count: 2",
	"on":          "on: top",
	"kind":        "kind: hand hole",
	"rise":        "rise: 45 mm",
	"diameter":    "diameter: 25 mm",
	"radius":      "radius: 3 mm",
	"thickness":   "thickness: 20 mm",
}

// missing says that a key is needed, and how it is written.
func missing(key string) string {
	if how := likely[key]; how != "" {
		return fmt.Sprintf("this is missing, and a piece cannot be made without it; write it such as %+s", how)
	}
	return "this is missing, and a piece cannot be made without it"
}

// wordsFor are words that a key could hold.
func wordsFor(path string) string {
	if _, key := cut(path); key == "title" {
		return "Reading-nook step"
	}
	return "white oak"
}
