package papers

import (
	"context"
	"io"
	"slices"
	"strings"
	"testing"

	"splaywright/assets"
	"splaywright/model/tongue"
	"splaywright/render/pattern"
)

// missing draws every paper of every example in a language and gives the texts that it does not know whole, but
// for what people themselves have written in the design.
func missing(t *testing.T, code string) []string {
	t.Helper()
	var out []string
	for _, e := range assets.Examples() {
		found := map[string]bool{}
		speak := tongue.Load(code)
		speak.Missed(func(english string) { found[english] = true })
		p := examplePiece(t, e)
		task := newTask(context.Background(), p, Options{Tongue: speak, Patterns: &pattern.Options{}}, nil)
		files, err := task.files()
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files { // all but the board plan are drawn already
			if strings.HasPrefix(f.Name, "board") || strings.HasPrefix(f.Name, "wood-to-buy") {
				if err := f.Write(io.Discard); err != nil {
					t.Fatalf("%s: %s: %v", e.Name, f.Name, err)
				}
			}
		}
		onePage(p, nil, nil, speak)
		for text := range found {
			if !written(e, text) {
				out = append(out, text)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// written tells whether a text stands in the design file itself, such as the name of a board on hand.
func written(e assets.Example, text string) bool {
	name, _, _ := strings.Cut(text, " (")
	return strings.Contains(string(e.YAML), name)
}

// Every text of every paper of the examples is known whole in every language.
func TestPapersAreSaidWhole(t *testing.T) {
	for _, code := range tongue.Codes()[1:] {
		for _, text := range missing(t, code) {
			t.Errorf("%s: %q is not said whole", code, text)
		}
	}
}
