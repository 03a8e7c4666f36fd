package form_test

import (
	"cmp"
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// twinsOf are the parts that share their shape with one before them.
func twinsOf(p *form.Piece) []string {
	var ids []string
	for _, q := range p.Parts {
		if q.Solid != nil && q.Solid.Like() != q.Solid {
			ids = append(ids, q.ID)
		}
	}
	return ids
}

func TestTwins(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*form.Design)
		want   []string
	}{
		{"two sides and two stretchers", func(*form.Design) {}, []string{"side-right", "stretcher-2"}},
		{"a hole in one side", func(d *form.Design) {
			d.Features = append(d.Features, form.Feature{On: "side-left", Kind: string(part.Hole), X: 120, Diameter: 30})
		}, []string{"stretcher-2"}},
		{"a hole to the front of both sides: one is the other's mirror image", func(d *form.Design) {
			d.Features = append(d.Features, form.Feature{On: "side", Kind: string(part.Hole), X: 120, Y: 60, Diameter: 30})
		}, []string{"side-right", "stretcher-2"}},
		{"a hole to the front of one side, and one to the back of the other: one is the other turned round", func(d *form.Design) {
			d.Features = append(d.Features, form.Feature{On: "side-left", Kind: string(part.Hole), X: 120, Y: 60, Diameter: 30},
				form.Feature{On: "side-right", Kind: string(part.Hole), X: 120, Y: -60, Diameter: 30})
		}, []string{"side-right", "stretcher-2"}},
		{"holes of two sizes", func(d *form.Design) {
			d.Features = append(d.Features, form.Feature{On: "side-left", Kind: string(part.Hole), X: 120, Y: 60, Diameter: 30},
				form.Feature{On: "side-right", Kind: string(part.Hole), X: 120, Y: 60, Diameter: 31})
		}, []string{"stretcher-2"}},
		{"sides of two timbers: the shape is one", func(d *form.Design) { d.Boards.Side.Timber = "cherry" }, []string{"side-right", "stretcher-2"}},
		{"one stretcher, off the middle", func(d *form.Design) { d.Stretchers = d.Stretchers[:1] }, []string{"side-right"}},
	} {
		d := formtest.WorkedExample()
		for _, across := range []measure.Length{60, -60} {
			d.Stretchers = append(d.Stretchers, form.Stretcher{Width: 50, Thickness: 20, Set: form.OnEdge, Joint: form.Butt, Across: across,
				Screws: &form.Screws{Gauge: 8, Length: 45, Count: 2, FromEnd: 12}})
		}
		c.change(&d)
		if got := twinsOf(form.Build(d)); !slices.Equal(got, c.want) {
			t.Errorf("%s: twins %v, want %v", c.name, got, c.want)
		}
	}
}

// A board that is made as its twin is what it would be by itself: the same wood, surfaces, names and findings.
func TestATwinIsWhatItWouldBeByItself(t *testing.T) {
	twins, mirrored := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		d := formtest.Random(rapid.Uint64().Draw(t, "design"))
		if rapid.IntRange(0, 3).Draw(t, "rounded") == 0 {
			d.Features = append(d.Features, form.Feature{On: "all", Kind: string(part.RoundOver), Radius: 2})
		}
		p, alone := form.Build(d), form.BuildAlone(d)
		if !reflect.DeepEqual(p.Findings, alone.Findings) {
			t.Fatalf("findings %v, alone %v", p.Findings, alone.Findings)
		}
		for i, q := range p.Parts {
			a := alone.Parts[i]
			if q.Solid == nil || a.Solid == nil {
				if q.Solid != nil || a.Solid != nil {
					t.Fatalf("%s: one has no solid", q.ID)
				}
				continue
			}
			if q.Solid.Like() != q.Solid {
				twins++
			}
			if q.Solid.Mirror != solid.Unmirrored {
				mirrored++
			}
			if err := q.Shape().Check(); err != nil {
				t.Errorf("%s: %v", q.ID, err)
			}
			sameSurfaces(t, q.ID, q.Solid, a.Solid)
			sameSurfaces(t, q.ID+", finished", q.Shape(), a.Shape())
			if math.Abs(q.Volume-a.Volume) > 1e-10*a.Volume || q.Middle.Sub(a.Middle).Len() > 1e-8 || math.Abs(q.Mass-a.Mass) > 1e-10*a.Mass {
				t.Errorf("%s: %.9g mm³ about %v, %.9g kg; alone %.9g about %v, %.9g", q.ID, q.Volume, q.Middle, q.Mass, a.Volume, a.Middle, a.Mass)
			}
			if math.Abs(float64(q.Blank.Length-a.Blank.Length)) > 1e-8 || math.Abs(float64(q.Blank.Width-a.Blank.Width)) > 1e-8 {
				t.Errorf("%s: blank %v, alone %v", q.ID, q.Blank, a.Blank)
			}
			if !reflect.DeepEqual(q.Eased, a.Eased) {
				t.Errorf("%s: eased %v, alone %v", q.ID, q.Eased, a.Eased)
			}
		}
	})
	if !t.Failed() && (twins == 0 || mirrored == 0) {
		t.Errorf("pieces had %d twins, %d of them mirror images", twins, mirrored)
	}
}

// sameSurfaces compares two solids face by face, in whatever order they are.
func sameSurfaces(t *rapid.T, name string, a, b *solid.Solid) {
	if len(a.Faces) != len(b.Faces) || len(a.Vertices) != len(b.Vertices) || len(a.Edges) != len(b.Edges) {
		t.Errorf("%s: %d faces, %d corners, %d edges; alone %d, %d, %d", name, len(a.Faces), len(a.Vertices), len(a.Edges), len(b.Faces), len(b.Vertices), len(b.Edges))
		return
	}
	fa, fb := inOrder(a.Faces), inOrder(b.Faces)
	for i := range fa {
		x, y := fa[i], fb[i]
		if x.Tag != y.Tag || (x.Round == nil) != (y.Round == nil) || len(x.Loops) != len(y.Loops) {
			t.Errorf("%s: the face %q, %d loops; alone %q, %d loops", name, x.Tag, len(x.Loops), y.Tag, len(y.Loops))
			continue
		}
		if x.Round == nil && (x.Plane.N.Sub(y.Plane.N).Len() > 1e-9 || math.Abs(x.Plane.D-y.Plane.D) > 1e-7) {
			t.Errorf("%s: %q lies in %v, alone in %v", name, x.Tag, x.Plane, y.Plane)
		}
		if x.Round != nil && (math.Abs(x.Round.Radius-y.Round.Radius) > 1e-9 || x.Round.Hollow != y.Round.Hollow) {
			t.Errorf("%s: %q is round as %v, alone as %v", name, x.Tag, x.Round, y.Round)
		}
	}
}

func inOrder(faces []solid.Face) []solid.Face {
	number := func(f solid.Face) float64 {
		p := f.Plane
		if f.Round != nil {
			p = solid.Plane{N: f.Round.Point.Mul(1e-3), D: float64(len(f.Loops[0]))}
		}
		return math.Round((7*p.N[0]+3*p.N[1]+p.N[2])*1e6) + math.Round(p.D*1e3)*1e-3
	}
	return slices.SortedFunc(slices.Values(faces), func(a, b solid.Face) int {
		return cmp.Or(cmp.Compare(a.Tag, b.Tag), cmp.Compare(number(a), number(b)))
	})
}
