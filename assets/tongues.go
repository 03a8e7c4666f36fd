package assets

import (
	"embed"
	"encoding/json"
	"fmt"
	"io/fs"
	"strings"
)

// tongues holds what the program says in other languages than English: a folder a language, and in
// it a file an area, English texts to texts of the language. A text with figures in it is the format
// that prints it, "%s is %s wide"; a language that turns the order round numbers them, "%[2]s".
//
//go:embed tongues
var tongues embed.FS

// TongueAreas gives the texts of a language by the file they stand in; none for English, which the
// program is written in.
func TongueAreas(code string) map[string]map[string]string {
	names, err := fs.Glob(tongues, "tongues/"+code+"/*.json")
	if err != nil {
		panic("assets: " + err.Error()) // the pattern is ours
	}
	out := map[string]map[string]string{}
	for _, name := range names {
		text, err := tongues.ReadFile(name)
		if err == nil {
			area := map[string]string{}
			err = json.Unmarshal(text, &area)
			out[name] = area
		}
		if err != nil {
			panic(fmt.Sprintf("assets: %s: %v", name, err)) // embedded; a test reads every one
		}
	}
	return out
}

// WindowWords gives the words that the window's library says itself, such as those of its file
// dialog, in a language that it does not speak; nil when it does.
func WindowWords(code string) []byte {
	text, err := tongues.ReadFile("tongues/library/" + code + ".json")
	if err != nil {
		return nil
	}
	return text
}

// seams are long words with a hyphen where a line may break in them.
//
//go:embed tongues/seams.txt
var seams string

// Seams gives long words of the languages, each in the parts between which a line may be broken with a hyphen.
func Seams() map[string][]string {
	out := map[string][]string{}
	for _, w := range strings.Fields(seams) {
		if parts := strings.Split(w, "-"); len(parts) > 1 {
			out[strings.Join(parts, "")] = parts
		}
	}
	return out
}
