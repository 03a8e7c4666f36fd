// Package assets holds what is built into the program: example designs, the schema of the
// derived result, fonts, species figures and the icon.
package assets

import (
	"embed"
	"fmt"
	"io/fs"
	"path"
	"strings"
)

//go:embed examples/*.yaml
var exampleFiles embed.FS

// Schema is the JSON Schema (2020-12) of what `splaywright derive` prints.
//
//go:embed derived.schema.json
var Schema []byte

// Example is a design of ours that a person can start from.
type Example struct {
	Name  string // "reading-nook-step": what `splaywright new --from` takes
	Title string // as in the design
	YAML  []byte
}

// Examples lists the built-in designs, the one to begin with first.
func Examples() []Example {
	names, err := fs.Glob(exampleFiles, "examples/*.yaml")
	if err != nil || len(names) == 0 {
		panic(fmt.Sprintf("assets: no example designs are built in: %v", err))
	}
	out := make([]Example, 0, len(names))
	for _, n := range names {
		text, err := exampleFiles.ReadFile(n)
		if err != nil {
			panic(fmt.Sprintf("assets: %s: %v", n, err))
		}
		e := Example{Name: exampleName(n), Title: titleOf(string(text)), YAML: text}
		if e.Name == FirstExample {
			out = append([]Example{e}, out...)
			continue
		}
		out = append(out, e)
	}
	return out
}

// FirstExample is the name of the design that a new person sees.
const FirstExample = "reading-nook-step"

// FindExample gives the built-in design of that name.
func FindExample(name string) (Example, bool) {
	for _, e := range Examples() {
		if e.Name == name {
			return e, true
		}
	}
	return Example{}, false
}

func exampleName(file string) string {
	return strings.TrimSuffix(path.Base(file), ".yaml")
}

func titleOf(text string) string {
	for line := range strings.Lines(text) {
		if rest, ok := strings.CutPrefix(line, "title:"); ok {
			return strings.Trim(strings.TrimSpace(rest), `"'`)
		}
	}
	return ""
}

// Icon is the program's icon, PNG, 256 dots square.
//
//go:embed icon.png
var Icon []byte
