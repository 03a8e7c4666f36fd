package view

import (
	"math"
	"math/rand/v2"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/solid"
)

// Whole pieces, looked at by rays. A coarser chord than for drawing keeps it short.
func TestPiecesAsRaysSeeThem(t *testing.T) {
	for _, d := range []form.Design{formtest.WorkedExample(), formtest.Full(), formtest.Housing()} {
		t.Run(d.Title, func(t *testing.T) {
			s := NewScene(form.Build(d), 0.5)
			if len(s.parts) < 3 {
				t.Fatalf("parts with a solid: %v", s.parts)
			}
			for _, d := range []Direction{Front, End, Top, Bottom, Pictorial(35, 25)} {
				for _, o := range (witness{s: s, d: d}).objections(s.Project(d), 1, rand.New(rand.NewPCG(5, 6))) {
					t.Errorf("%s: %s", d.Name, o)
				}
			}
		})
	}
}

// From the end of the worked example every cheek of the four tails is drawn once where tail and pin meet
// in the side's outer face: four tails on the top make eight, each from the top's upper arris to the
// baseline 20 mm below, and they stand where the layout puts them (half pin 8, tail 51, pin 10).
func TestCheeksOfTheWorkedExampleFromTheEnd(t *testing.T) {
	p := NewScene(form.Build(formtest.WorkedExample()), solid.Flattening).Project(End)
	want := []float64{8, 59, 69, 120, 130, 181, 191, 242}
	found := make([]int, len(want))
	for _, l := range p.Lines {
		a, b := l.Points[0], l.Points[len(l.Points)-1]
		upper := a
		if b.Y > a.Y {
			upper = b
		}
		if l.Kind != Visible || math.Abs(upper.Y-260) > 1e-6 || math.Abs(math.Abs(a.Y-b.Y)-20) > 1e-6 {
			continue
		}
		for i, y := range want {
			if math.Abs(upper.X+125-y) < 1e-6 {
				found[i]++
			}
		}
	}
	for i, n := range found {
		if n != 1 {
			t.Errorf("the cheek %g mm from the front edge is drawn %d times", want[i], n)
		}
	}
}

// A piece that is its own mirror image gives pictures that are.
func TestWorkedExampleIsSymmetricalInPictures(t *testing.T) {
	s := NewScene(form.Build(formtest.WorkedExample()), solid.Flattening)
	for _, pair := range [][2]Direction{{End, Left}, {Front, Back}, {Pictorial(35, 25), Pictorial(-35, 25)}} {
		a, b := lengths(s.Project(pair[0])), lengths(s.Project(pair[1]))
		for k := range a {
			if math.Abs(a[k]-b[k]) > 1e-6 {
				t.Errorf("%s and %s: %v lines %.6f and %.6f long", pair[0].Name, pair[1].Name, Kind(k), a[k], b[k])
			}
		}
	}
}
