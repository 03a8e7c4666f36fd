package sheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/draw"
)

// partSheets calls back with every part sheet of the examples, A4.
func partSheets(t *testing.T, each func(t *testing.T, p *form.Piece, q *part.Part, b *blank, texts []string, o Options)) {
	for name, p := range examplePieces(t) {
		t.Run(name, func(t *testing.T) {
			o := Options{}.fill(p)
			for _, g := range kinds(p) {
				b := partSheet(p, set{o: o, piece: p.Title, form: p.Form}, g)
				var texts []string
				for _, it := range b.Items {
					if s, ok := it.(draw.Text); ok {
						texts = append(texts, s.Text)
					}
				}
				each(t, p, g[0], b, texts, o)
			}
		})
	}
}

// across is how far a place on a face is from the edge at which its sheet's rows start: of boards with tails or pins on
// a level corner the edge that is in front in the piece, else the lower one on the sheet.
func across(p *form.Piece, q *part.Part, y float64) float64 {
	box := extent(q)
	level := slices.ContainsFunc(p.Joints, func(j joint.Joint) bool {
		return len(j.Tails) > 0 && math.Abs(j.Corner.Z()) < 0.2 && (j.TailBoard == q.ID || j.PinBoard == q.ID)
	})
	if upperInFront := q.Place.Mul4x1(mgl64.Vec4{0, 1, 0, 0}).Y() < 0; level && upperInFront {
		return box.Max.Y - y
	}
	return y - box.Min.Y
}

// Every hole stands on its part's sheet at two distances from edges: those in faces in both rows, those in ends by
// their height and by their place in the thickness, or as centred.
func TestHolesArePlacedFromTwoEdges(t *testing.T) {
	holes := 0
	partSheets(t, func(t *testing.T, p *form.Piece, q *part.Part, _ *blank, texts []string, o Options) {
		box := extent(q)
		has := func(b part.Bore, what string, v float64) {
			if want := o.label(measure.Length(v)); !slices.Contains(texts, want) {
				t.Errorf("%s, %s: %s %s does not stand on the sheet", q.Name, b.ID, what, want)
			}
		}
		for _, b := range q.Bores {
			holes++
			end, either := boredInto(q, b)
			if !end {
				has(b, "along the grain", b.Entry.X()-box.Min.X)
			}
			if end || !either {
				has(b, "across the grain", across(p, q, b.Entry.Y()))
			}
			centre := slices.ContainsFunc(texts, func(s string) bool { return strings.Contains(s, b.Purpose) && strings.Contains(s, "centred") })
			if either && !centre {
				has(b, "in the thickness", -b.Entry.Z())
			}
		}
	})
	if holes < 40 {
		t.Errorf("%d holes in all", holes)
	}
}

// Part sheets of the examples are drawn so large that marks do not crowd: a sixth of full size at least, on A4.
func TestPartsFillTheirSheets(t *testing.T) {
	partSheets(t, func(t *testing.T, _ *form.Piece, q *part.Part, b *blank, _ []string, _ Options) {
		for _, r := range append(slices.Clone(metricScales), inchScales...) {
			if r.name == b.entry.scale && r.of < 1.0/6-1e-9 {
				t.Errorf("%s is drawn at %s", q.Name, r.name)
			}
		}
	})
}

// What is let in stands on the sheet of the board that receives it, with its depth and its lines; corners cut out of
// a bottom with their size.
func TestHousingsAndCutOutsAreSized(t *testing.T) {
	said := map[string]int{}
	partSheets(t, func(t *testing.T, _ *form.Piece, q *part.Part, _ *blank, texts []string, _ Options) {
		for _, s := range texts {
			for _, what := range []string{"housing, ", "corner cut out "} {
				if strings.Contains(s, what) {
					said[what]++
				}
			}
		}
	})
	if said["housing, "] < 5 || said["corner cut out "] < 2 {
		t.Errorf("said %v", said)
	}
	p := model.Derive(formtest.Housing())
	o := Options{}.fill(p)
	xs, _ := seatMarks(p, p.Part("top"))
	b := partSheet(p, set{o: o}, kinds(p)[0])
	for _, x := range xs {
		want := o.joints().label(measure.Length(x - extent(p.Part("top")).Min.X))
		if !slices.ContainsFunc(b.Items, func(it draw.Item) bool { s, ok := it.(draw.Text); return ok && s.Text == want }) {
			t.Errorf("the line of a housing at %s does not stand on the top's sheet", want)
		}
	}
	if len(xs) != 4 {
		t.Errorf("%d lines of housings on the top", len(xs))
	}
}
