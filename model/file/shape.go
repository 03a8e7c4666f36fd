package file

import (
	"strings"
)

// shape is which keys stand where, in the order in which they are written. An item of a list is "#".
var shape = map[string][]string{
	"": words(`splaywright title units form size splay timber boards corners stretchers features
		names allowance saw round papers boards-on-hand`),
	"size":                words("height width depth taken-at"),
	"splay":               words("ends edges edge-cut"),
	"boards":              words("top side"),
	"boards.top":          words("thickness timber"),
	"boards.side":         words("thickness timber"),
	"corners":             words("joint tails-on slope tails tail pin half-pin tail-widths mirrored overhang overhang-edges depth screws"),
	"corners.screws":      words("gauge length count from-end counterbore plug"),
	"corners.tail-widths": {"#"},
	"stretchers":          {"#"},
	"stretchers.#":        words("width thickness set below-top across joint depth timber screws"),
	"stretchers.#.screws": words("gauge length count from-end counterbore plug"),
	"features":            {"#"},
	"features.#":          words("on kind width rise length diameter radius x y angle"),
	"allowance":           words("length width thickness"),
	"saw":                 words("kerf step flat-table max-swing max-tilt"),
	"round":               words("to both"),
	"papers":              words("sheet projection"),
	"boards-on-hand":      {"#"},
}

func words(s string) []string { return strings.Fields(s) }

// pattern is a path with its list numbers as "#".
func pattern(path string) string {
	keys := strings.Split(path, ".")
	for i, k := range keys {
		if k != "" && strings.Trim(k, "0123456789") == "" {
			keys[i] = "#"
		}
	}
	return strings.Join(keys, ".")
}

// place tells whether a design has something at the path, and otherwise what is near.
func place(path string) (why string) {
	parent, key := cut(pattern(path))
	if parent == "names" {
		return nameTrouble(key)
	}
	if path == "names" {
		return ""
	}
	known, ok := shape[parent]
	if !ok {
		if why := place(parent); why != "" {
			return why
		}
		return parent + " holds one value, not a group"
	}
	for _, k := range known {
		if k == key {
			return ""
		}
	}
	return unknown(key, known)
}

// unknown says that there is no such key and which one was perhaps meant.
func unknown(key string, known []string) string {
	if len(known) == 1 && known[0] == "#" {
		return "items of a list go by their number, from 0"
	}
	if near := nearest(key, known); near != "" {
		return "there is no such key here; did you mean " + near + "?"
	}
	return "there is no such key here; there are " + strings.Join(known, ", ")
}

// nearest gives the word that takes the fewest slips of the pen to become key, "" when none is near.
func nearest(key string, known []string) string {
	best, slips := "", max(2, len(key)/3)+1
	for _, k := range known {
		if n := distance(strings.ToLower(key), k); n < slips {
			best, slips = k, n
		}
	}
	return best
}

// distance counts the letters put in, left out, changed, or swapped with the next.
func distance(a, b string) int {
	if len(a) > 60 {
		return len(a)
	}
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			change := rows[i-1][j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			rows[i][j] = min(change, rows[i-1][j]+1, rows[i][j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				rows[i][j] = min(rows[i][j], rows[i-2][j-2]+1)
			}
		}
	}
	return rows[len(a)][len(b)]
}

// nameTrouble says why a word cannot be the name of a value; "" when it can.
func nameTrouble(name string) string {
	e := &expression{text: name}
	for e.pos < len(name) && e.inName() && name[e.pos] != '.' {
		e.pos++
	}
	switch _, function := functions[name]; {
	case name == "" || !letter(name[0]) || e.pos < len(name):
		return "a name begins with a letter and goes on with letters, digits, _ or - before a letter"
	case function:
		return "this is the name of a function"
	}
	return ""
}
