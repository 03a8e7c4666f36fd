package say_test

import (
	"bytes"
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"golang.org/x/image/font/sfnt"

	"splaywright/app/look"
	"splaywright/app/panel"
	"splaywright/app/session"
	"splaywright/assets"
	"splaywright/model/form"
	"splaywright/model/timber"
	"splaywright/model/tongue"
)

func others() []string { return tongue.Codes()[1:] }

// texts are those of a language; a text that two files say otherwise is an error.
func texts(t *testing.T, code string) map[string]string {
	t.Helper()
	out := map[string]string{}
	for file, area := range assets.TongueAreas(code) {
		for english, text := range area {
			if was, ok := out[english]; ok && was != text {
				t.Errorf("%s: %q is %q here and %q in another file", file, english, text, was)
			}
			out[english] = text
		}
	}
	return out
}

// shown are the texts of the column of sizes, whichever form, joint and feature a design has.
func shown() map[string]bool {
	out := map[string]bool{}
	add := func(list ...string) {
		for _, s := range list {
			out[s] = true
		}
	}
	add(timber.Names()...)
	add(timber.GradeNames()...)
	for _, e := range assets.Examples() {
		add(e.Title)
	}
	for _, f := range form.Forms() {
		for _, j := range append(form.WallJoints(), "") {
			for _, d := range designs(f, j) {
				for _, g := range panel.Groups(&d, timber.Names(), nil) {
					add(numberless(g.Title))
					for _, s := range g.Fields {
						add(append(append([]string{s.Label, s.Hint}, s.Menu...), s.Offers...)...)
						for _, c := range s.Choices {
							add(cmp.Or(s.Senses[c], c))
						}
						for _, word := range strings.Split(session.Words(s.Path), ", ") { // as the history names it
							add(numbered.ReplaceAllString(word, ""))
						}
					}
					for _, a := range g.Adds {
						add(a.Label)
					}
				}
			}
		}
	}
	return out
}

// numberless makes a format of the heading of a numbered group.
func numberless(title string) string {
	head, kind, feature := strings.Cut(title, ": ")
	for _, word := range []string{"Stretcher ", "Feature "} {
		if strings.HasPrefix(head, word) {
			head = word + "%d" + strings.TrimLeft(head[len(word):], "0123456789")
		}
	}
	if feature && kind != "" {
		return head + ": %s"
	}
	return head
}

func designs(f, joint string) []form.Design {
	bare := form.Design{Form: f, Corners: form.Corners{Joint: joint}}
	full := bare
	full.Corners.Screws, full.Splay.Edges = &form.Screws{}, 0.1
	full.Stretchers = []form.Stretcher{{}, {Joint: form.Housing, Screws: &form.Screws{}}}
	full.Aprons = &form.Aprons{Joint: form.Housing, Screws: &form.Screws{}}
	full.Tolerance, full.CameOut = form.Tolerance{Length: 1}, form.CameOut{WidthFloor: 400}
	full.Bottom = &form.Bottom{Joint: form.InGroove}
	full.Lid = &form.Lid{Battens: &form.Battens{Screws: &form.Screws{}}}
	for _, k := range form.FeatureKinds() {
		full.Features = append(full.Features, form.Feature{Kind: k}, form.Feature{Kind: k, On: "side", Edge: "floor-end", Depth: 5},
			form.Feature{Kind: k, On: "top", Edge: "floor-end"}, form.Feature{Kind: k, On: "lid", Edge: "front-end"})
	}
	screwed := full
	screwed.Bottom = &form.Bottom{Joint: form.ScrewedOn, Screws: &form.Screws{}}
	return []form.Design{bare, full, screwed}
}

// numbered is the number of an item of a list.
var numbered = regexp.MustCompile(` \d+$`)

func wordy(text string) bool { return strings.ContainsFunc(text, unicode.IsLetter) }

func TestEverythingThatIsSaidHasItsTextInEveryLanguage(t *testing.T) {
	said := walk(t).said
	for text := range shown() {
		if _, ok := said[text]; !ok {
			said[text] = "the column of sizes"
		}
	}
	if len(said) < 200 {
		t.Fatalf("only %d texts are said; the walk is broken", len(said))
	}
	for _, code := range others() {
		have := texts(t, code)
		for _, text := range sorted(said) {
			if _, ok := have[text]; !ok && wordy(text) && !isPath(text) && len(text) > 1 {
				t.Errorf("%s has no text for %q of %s", code, text, said[text])
			}
		}
	}
}

// isPath tells a path of the design file, which the walk takes along, from a text.
func isPath(text string) bool {
	return strings.Contains(text, ".") && !strings.ContainsAny(text, " %") && !strings.HasSuffix(text, ".")
}

func TestNoTextIsLeftOver(t *testing.T) {
	c, on, read := walk(t), shown(), strings.Join(tableTexts(t), "\n")
	for _, code := range others() {
		for _, text := range sorted(texts(t, code)) {
			if !c.literals[text] && !on[text] && !strings.Contains(read, text) {
				t.Errorf("%s has a text for %q, which the program does not say", code, text)
			}
		}
	}
}

func TestEveryLanguageHasTheSameTexts(t *testing.T) {
	first := texts(t, others()[0])
	for _, code := range others()[1:] {
		other := texts(t, code)
		for _, text := range sorted(first) {
			if _, ok := other[text]; !ok {
				t.Errorf("%s lacks %q", code, text)
			}
		}
		for _, text := range sorted(other) {
			if _, ok := first[text]; !ok {
				t.Errorf("%s lacks %q", others()[0], text)
			}
		}
	}
}

// A translation prints the same figures as the English format: with figures of every kind it holds
// what each prints, and nothing that Sprintf complains of.
func TestFiguresStayInTheirPlaces(t *testing.T) {
	for _, code := range others() {
		have := texts(t, code)
		for _, text := range sorted(have) {
			want, got := figures(t, text), figures(t, have[text])
			if want != got {
				t.Errorf("%s: %q prints %s, %q prints %s", code, text, want, have[text], got)
			}
		}
	}
}

// figures lists the figures of a format with their verbs, in their order of numbers.
func figures(t *testing.T, format string) string {
	t.Helper()
	kinds, ok := tongue.Figures(format)
	if !ok {
		t.Errorf("%q cannot be read as a format", format)
	}
	return fmt.Sprintf("%q", kinds)
}

func TestEveryLetterIsInTheFonts(t *testing.T) {
	plain := parsed(t, theme.DefaultTextFont().Content())
	for _, bold := range []bool{false, true} {
		japanese := parsed(t, assets.JapaneseFont(bold))
		for _, code := range others() {
			missing := map[rune]bool{}
			for _, text := range texts(t, code) {
				for _, r := range text + tongue.Name(code) {
					if r != '\n' && !has(t, japanese, r) && !has(t, plain, r) {
						missing[r] = true
					}
				}
			}
			for r := range missing {
				t.Errorf("%s: %q is in no font; enter it in assets/fonts/extra.txt and run assets/fonts/remake", code, r)
			}
		}
	}
}

// Sizes in inches, angles and signs that figures stand with show in the window's own face.
func TestTheWindowsFacesHoldFractionsAndSigns(t *testing.T) {
	for _, style := range []struct {
		name         string
		first, other []byte // Fyne looks into its own face where the theme's has nothing
	}{
		{"plain", look.Theme{}.Font(fyne.TextStyle{}).Content(), theme.DefaultTextFont().Content()},
		{"bold", look.Theme{}.Font(fyne.TextStyle{Bold: true}).Content(), theme.DefaultTextBoldFont().Content()},
	} {
		first, other := parsed(t, style.first), parsed(t, style.other)
		for _, r := range "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⁄′″×°±≈≤≥→–…“”„" {
			if !has(t, first, r) && !has(t, other, r) {
				t.Errorf("the %s faces have no %q", style.name, r)
			}
		}
	}
}

func parsed(t *testing.T, data []byte) *sfnt.Font {
	t.Helper()
	f, err := sfnt.Parse(bytes.Clone(data))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func has(t *testing.T, f *sfnt.Font, r rune) bool {
	t.Helper()
	i, err := f.GlyphIndex(nil, r)
	if err != nil {
		t.Fatal(err)
	}
	return i != 0
}

func sorted[V any](m map[string]V) []string {
	var out []string
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}
