package form_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// featured is a plain stool with one feature.
func featured(f form.Feature) form.Design {
	d := formtest.Butt()
	d.Stretchers, d.Features, d.Corners.Screws = nil, []form.Feature{f}, nil
	return d
}

func volumeOf(t *testing.T, d form.Design, id string) float64 {
	t.Helper()
	p := form.Build(d)
	if p.Stopped() {
		t.Fatalf("%+v", p.Findings)
	}
	q := p.Part(id)
	if err := q.Solid.Check(); err != nil {
		t.Fatal(err)
	}
	return q.Volume
}

// A groove takes width × depth × length out of the board, whichever face it is in; one from end to end
// ends with the board.
func TestGroovesTakeTheirWood(t *testing.T) {
	plain := volumeOf(t, featured(form.Feature{On: "top", Kind: "hole", Diameter: 20}), "top") + math.Pi*100*20
	for _, face := range []string{"outer", form.InnerFace} {
		got := volumeOf(t, featured(form.Feature{On: "top", Kind: "groove", Width: 8, Depth: 6, Length: 150, X: 10, Y: -30, Face: face}), "top")
		if want := plain - 8*6*150; math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: %.6f, want %.6f", face, got, want)
		}
	}
	p := form.Build(featured(form.Feature{On: "top", Kind: "groove", Width: 8, Depth: 6, Y: -30}))
	top := p.Part("top")
	if f := top.Features[0]; f.Kind != part.Groove || math.Abs((f.Length-top.Blank.Length).MM()) > 1e-9 || f.Depth != 6 {
		t.Errorf("%+v in a blank of %g", f, top.Blank.Length.MM())
	}
}

// The holes of a row stand at their pitch, its middle where the row is placed, along the grain or
// across it; on a side heights count from the floor.
func TestARowOfHoles(t *testing.T) {
	for _, c := range []struct {
		name   string
		f      form.Feature
		part   string
		across bool
	}{
		{"along the grain", form.Feature{On: "top", Kind: form.RowOfHoles, Diameter: 12, Count: 5, Pitch: 30, X: 20, Y: 10}, "top", false},
		{"across it", form.Feature{On: "top", Kind: form.RowOfHoles, Diameter: 12, Count: 4, Pitch: 30, Angle: 90 * measure.Degree}, "top", true},
		{"on a side", form.Feature{On: "side-left", Kind: form.RowOfHoles, Diameter: 10, Count: 3, Pitch: 25, X: 100}, "side-left", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := form.Build(featured(c.f))
			if p.Stopped() {
				t.Fatalf("%+v", p.Findings)
			}
			holes := p.Part(c.part).Features
			if len(holes) != c.f.Count || p.Part(c.part).Solid.Genus() != c.f.Count {
				t.Fatalf("%d holes", len(holes))
			}
			axis := 0
			if c.across {
				axis = 1
			}
			for i := 1; i < len(holes); i++ {
				step := holes[i].Centre.Sub(holes[i-1].Centre)
				if math.Abs(math.Abs(step[axis])-c.f.Pitch.MM()) > 1e-9 || math.Abs(step[1-axis]) > 1e-9 {
					t.Errorf("from hole %d to %d: %v", i, i+1, step)
				}
			}
			mid := holes[0].Centre.Add(holes[len(holes)-1].Centre).Mul(0.5)
			if c.part == "top" && mid.Sub(mgl64.Vec2{c.f.X.MM(), c.f.Y.MM()}).Len() > 1e-9 {
				t.Errorf("the row's middle is at %v", mid)
			}
		})
	}
}

func TestWhatNoGrooveOrRowCanBe(t *testing.T) {
	for id, f := range map[string]form.Feature{
		"groove-through":         {On: "top", Kind: "groove", Width: 8, Depth: 20},
		"holes-run-together":     {On: "top", Kind: form.RowOfHoles, Diameter: 12, Count: 3, Pitch: 12},
		"size-not-above-nothing": {On: "top", Kind: form.RowOfHoles, Diameter: 12, Count: 0, Pitch: 30},
	} {
		found := false
		for _, g := range form.Build(featured(f)).Findings {
			found = found || g.ID == id && g.Level == part.Stop
		}
		if !found {
			t.Errorf("%s is missing", id)
		}
	}
}
