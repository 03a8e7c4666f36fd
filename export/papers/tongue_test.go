package papers

import (
	"context"
	"io"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"splaywright/assets"
	"splaywright/model/tongue"
	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
	"splaywright/render/pattern"
)

// drawn are all pages of an example's papers in a language, with the board plan written, and those of its patterns.
func drawn(t *testing.T, e assets.Example, speak *tongue.Tongue) (pages, patterns []draw.Page) {
	t.Helper()
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
	if err := task.onePage(io.Discard, nil, nil, nil); err != nil {
		t.Fatal(err)
	}
	pages = task.pages
	sets, err := pattern.Sets(p, pattern.Options{Tongue: speak})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range sets {
		patterns = append(append(patterns, s.Sheets...), s.Whole)
	}
	return pages, patterns
}

// designs are the examples, and pieces with what no example has: boards that are resawn from one, wood that is bought by its grade.
func designs(t *testing.T) []assets.Example {
	t.Helper()
	out := assets.Examples()
	for _, name := range []string{"letter-box", "mirror-stool", "graded-bench"} {
		text, err := os.ReadFile("testdata/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, assets.Example{Name: name, YAML: text})
	}
	return out
}

// written tells whether a text stands in the design file itself, such as the name of a board on hand.
func written(e assets.Example, text string) bool {
	name, _, _ := strings.Cut(text, " (")
	return strings.Contains(string(e.YAML), name)
}

// Every text of every paper of the examples is known whole in every language, has its letters in the fonts, lies on
// nothing and stays within its frame.
func TestPapersInEveryLanguage(t *testing.T) {
	english := map[string][]draw.Page{}
	all := designs(t)
	for _, e := range all {
		sets, err := pattern.Sets(examplePiece(t, e), pattern.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range sets {
			english[e.Name] = append(append(english[e.Name], s.Sheets...), s.Whole)
		}
	}
	for _, code := range tongue.Codes()[1:] {
		for _, e := range all {
			t.Run(code+" "+e.Name, func(t *testing.T) {
				t.Parallel()
				unsaid := map[string]bool{}
				speak := tongue.Load(code)
				speak.Missed(func(english string) { unsaid[english] = true })
				pages, patterns := drawn(t, e, speak)
				for _, p := range pages {
					for _, v := range drawtest.Overlaps(p, "tint", "paper") {
						t.Error(v)
					}
				}
				notMore(t, patterns, english[e.Name])
				for _, p := range append(pages, patterns...) {
					for _, text := range drawtest.Texts(p) {
						for _, r := range text.Text {
							if !draw.HasGlyph(r) {
								t.Errorf("%s: no font has %q of %q", p.Title, r, text.Text)
							}
						}
					}
				}
				for text := range unsaid {
					if !written(e, text) {
						t.Errorf("%q is not said whole", text)
					}
				}
			})
		}
	}
}

// notMore complains of words on patterns that lie on something where the English ones lie on less.
func notMore(t *testing.T, patterns, english []draw.Page) {
	t.Helper()
	if len(patterns) != len(english) {
		t.Fatalf("%d sheets of patterns, %d in English", len(patterns), len(english))
	}
	for i, p := range patterns {
		if all := drawtest.Overlaps(p, "underline", "join"); len(all) > len(drawtest.Overlaps(english[i], "underline", "join")) {
			t.Errorf("%s: %s", p.Title, strings.Join(all, "; "))
		}
	}
}

// strange is a language of German's texts whose every letter is another.
func strange() *tongue.Tongue {
	texts := map[string]string{}
	for _, area := range assets.TongueAreas("de") {
		for english, text := range area {
			texts[english] = letters(text)
		}
	}
	return tongue.New("xx", texts)
}

var verbs = regexp.MustCompile(`%(\[\d+\])?[-+#0]*\d*(\.\d+)?(\[\d+\])?[a-zA-Z%]`)

// letters changes the letters of a format outside its verbs.
func letters(text string) string {
	change := func(s string) string {
		return strings.Map(func(r rune) rune {
			if unicode.IsLetter(r) {
				return 'ж'
			}
			return r
		}, s)
	}
	var out strings.Builder
	at := 0
	for _, m := range verbs.FindAllStringIndex(text, -1) {
		out.WriteString(change(text[at:m[0]]) + text[m[0]:m[1]])
		at = m[1]
	}
	return out.String() + change(text[at:])
}

// address is a place on the net, or a piece of one that goes on in the next line.
var address = regexp.MustCompile(`\S+(://|/|-\S+-)\S*`)

var latinWord = regexp.MustCompile(`[A-Za-z]{3,}`)

// Nothing that is drawn is left in English: in a language of other letters no Latin word remains, but for what
// stands in the design file.
func TestNothingIsDrawnUnsaid(t *testing.T) {
	speak := strange()
	all := designs(t)
	for _, e := range append(all[:4:4], all[len(all)-2:]...) {
		pages, patterns := drawn(t, e, speak)
		for _, p := range append(pages, patterns...) {
			for _, text := range drawtest.Texts(p) {
				for _, w := range latinWord.FindAllString(address.ReplaceAllString(text.Text, ""), -1) {
					if !slices.Contains([]string{"MPa", "psi", "lbf"}, w) && !strings.Contains(string(e.YAML), w) {
						t.Errorf("%s: %s: %q is in English", e.Name, p.Title, text.Text)
						break
					}
				}
			}
		}
	}
}
