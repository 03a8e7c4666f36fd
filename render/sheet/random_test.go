package sheet

import (
	"flag"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/render/draw/drawtest"
)

var howMany = flag.Int("pieces", 8, "random pieces over all forms whose sheets are looked at")

// likeExample draws a design like one of the examples, so that every form comes with whatever it can have:
// other sizes, leans, thicknesses, joints, units and rounding.
func likeExample(starts []form.Design) *rapid.Generator[form.Design] {
	return rapid.Custom(func(t *rapid.T) form.Design {
		d := rapid.SampledFrom(starts).Draw(t, "start")
		scaled := func(name string, l *measure.Length, lo, hi float64) {
			*l = measure.Length(float64(int(l.MM() * rapid.Float64Range(lo, hi).Draw(t, name))))
		}
		scaled("height", &d.Size.Height, 0.7, 1.5)
		scaled("width", &d.Size.Width, 0.7, 1.5)
		scaled("depth", &d.Size.Depth, 0.7, 1.4)
		part := float64(d.Size.Height) * rapid.Float64Range(0.4, 0.6).Draw(t, "lower")
		if d.Size.LowerHeight > 0 {
			d.Size.LowerHeight = measure.Length(int(part))
			d.Size.LowerWidth = measure.Length(int(d.Size.Width.MM() * rapid.Float64Range(0.4, 0.6).Draw(t, "lower width")))
		}
		lean := func(name string, a *measure.Angle) {
			*a = measure.Angle(rapid.IntRange(-4, 36).Draw(t, name)) / 2 * measure.Degree
		}
		lean("ends", &d.Splay.Ends)
		if d.Splay.Edges != 0 {
			lean("edges", &d.Splay.Edges)
		}
		if d.Splay.Front != 0 {
			lean("front", &d.Splay.Front)
		}
		thick := rapid.Float64Range(0.75, 1.4).Draw(t, "thick")
		for _, b := range []*form.Board{&d.Boards.Top, &d.Boards.Side, &d.Boards.Front, &d.Boards.Back, &d.Boards.End} {
			b.Thickness = measure.Length(int(b.Thickness.MM()*thick*2)) / 2
		}
		if d.Form == "tray" || d.Form == "chest" {
			d.Corners.Joint = rapid.SampledFrom(form.WallJoints()).Draw(t, "joint")
			d.Corners.Tails = nil
		} else if d.Corners.Tails != nil {
			d.Corners.Tails = new(rapid.IntRange(1, 9).Draw(t, "tails"))
		}
		d.Corners.Tail, d.Corners.Pin, d.Corners.HalfPin, d.Corners.TailWidths = nil, nil, nil, nil
		if rapid.Bool().Draw(t, "inches") {
			d.Units, d.Round = measure.Imperial, form.Round{To: measure.Inch / 32, Unit: measure.Imperial}
		} else {
			d.Units, d.Round = measure.Metric, form.Round{To: rapid.SampledFrom([]measure.Length{0.1, 0.5, 1}).Draw(t, "round")}
		}
		d.Round.Comma = rapid.Bool().Draw(t, "comma")
		return d
	})
}

// Random pieces over all forms: on no sheet does a text lie on a text or a line, and nothing leaves its
// room. `make thorough` looks at 500.
func TestNoTextOverlapsOnRandomPieces(t *testing.T) {
	var starts []form.Design
	for _, p := range examplePieces(t) {
		starts = append(starts, p.Design)
	}
	sortByTitle(starts)
	gen := likeExample(starts)
	forms := map[string]int{}
	seen := 0
	for seed := 1; seen < *howMany; seed++ {
		if seed > 40*(*howMany) {
			t.Fatalf("only %d of %d pieces can be cut", seen, seed)
		}
		d := gen.Example(seed)
		sheet := form.Sheets[seed%len(form.Sheets)]
		d.Round.Both = sheet != "A4" && sheet != "Letter" && seed/5%3 == 0 // values three times as long
		p := model.Derive(d)
		if p.Stopped() {
			continue
		}
		seen++
		forms[p.Form]++
		o := Options{Sheet: sheet, Projection: []string{"first", "third"}[seed/5%2]}
		for _, page := range Papers(p, o) {
			for _, v := range drawtest.Overlaps(page, allowed...) {
				t.Errorf("piece %d, %s on %s: %s", seed, p.Title, o.Sheet, v)
			}
			outside(t, page)
		}
	}
	t.Logf("looked at %v", forms)
}

// sortByTitle puts designs in an order of their own, so that a seed always means the same piece.
func sortByTitle(list []form.Design) {
	slices.SortFunc(list, func(a, b form.Design) int { return strings.Compare(a.Title, b.Title) })
}
