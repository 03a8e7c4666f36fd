package sheet

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/model/part"
	"splaywright/render/draw"
	"splaywright/render/pattern"
)

// What is pencilled on a board is the same on its sheet, its pattern and in the tables: the mark with a
// line under it, and the arrows' words.
func TestMarksAreTheSameOnEveryPaper(t *testing.T) {
	p := model.Derive(formtest.Full())
	sets, err := pattern.Sets(p, pattern.Options{})
	if err != nil {
		t.Fatal(err)
	}
	words := func(pages []draw.Page, ref string) map[string]bool {
		out := map[string]bool{}
		for _, page := range pages {
			for _, it := range page.Items {
				if s, is := it.(draw.Text); is && (s.Layer == "mark" && s.Ref == ref || ref == "") {
					out[s.Text] = true
				}
			}
		}
		return out
	}
	seen := 0
	for _, s := range sets {
		if !slices.ContainsFunc(s.Sheets, func(page draw.Page) bool { return strings.Contains(page.Title, "outer face") }) {
			continue // its ends alone have patterns
		}
		on, drawn := words(s.Sheets[1:], ""), words(Papers(p, Options{}), s.Parts[0].ID)
		for _, sign := range pattern.Signs(s.Parts...) {
			word := sign.Word
			if sign.Way.Len() == 0 {
				word = "outer face, " + word
			}
			onSheet := slices.ContainsFunc(kinds(p), func(g []*part.Part) bool {
				return g[0] == s.Parts[0] && slices.Contains(pattern.Signs(g...), sign)
			})
			if onSheet && (!on[word] || !drawn[word]) {
				t.Errorf("%s: %q stands on the pattern %v, on the drawing %v", s.Name.ID, word, on[word], drawn[word])
			}
			seen++
		}
	}
	if seen < 4 {
		t.Errorf("%d signs in all", seen)
	}
}
