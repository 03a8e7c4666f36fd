package view

import (
	"fmt"
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/solid"
)

// toothed is a board lying flat, long by wide by thick, with n sockets in each end and holes of 48
// facets. A tooth stands at both edges of an end where toothFirst is set, otherwise a gap.
func toothed(long, wide, thick, depth float64, n, holes int, toothFirst bool) *solid.Mesh {
	pitch := wide / float64(2*n+1)
	var out []mgl64.Vec2
	ends := func(x, in float64, up bool) {
		for i := range 2*n + 1 {
			y0, y1, at := float64(i)*pitch, float64(i+1)*pitch, x
			if !up {
				y0, y1 = wide-y0, wide-y1
			}
			if (i%2 == 0) != toothFirst {
				at = in
			}
			out = append(out, mgl64.Vec2{at, y0}, mgl64.Vec2{at, y1})
		}
	}
	ends(long, long-depth, true)
	ends(0, depth, false)
	loops, rounded := [][]mgl64.Vec2{out}, []bool{false}
	side := int(math.Ceil(math.Sqrt(float64(holes))))
	for i := range holes {
		x, y := float64(i%side)+0.5, float64(i/side)+0.5
		step := math.Min(long-2*depth, wide) / float64(side)
		loops = append(loops, circle(depth+x*(long-2*depth)/float64(side), y*wide/float64(side), 0.3*step, 48, true))
		rounded = append(rounded, true)
	}
	return prism(-thick, 0, rounded, loops...)
}

// stool is five toothed boards: a top, two sides that its teeth go into, and two shelves between them.
func stool(n, holes int) []*solid.Mesh {
	upright := mgl64.HomogRotate3DY(-math.Pi / 2)
	side := toothed(300, 300, 22, 22, n, holes, false).Transform(upright)
	return []*solid.Mesh{
		toothed(400, 300, 22, 22, n, holes, true).Transform(mgl64.Translate3D(0, 0, 300)),
		side,
		side.Transform(mgl64.Translate3D(378, 0, 0)),
		toothed(356, 200, 22, 22, n, holes, true).Transform(mgl64.Translate3D(22, 50, 200)),
		toothed(356, 200, 22, 22, n, holes, true).Transform(mgl64.Translate3D(22, 50, 100)),
	}
}

// BenchmarkFourViews has five boards. 25 sockets an end and 4 holes make 1,990 faces and 5,940 edges.
func BenchmarkFourViews(b *testing.B) {
	for _, k := range []struct{ n, holes int }{{6, 1}, {12, 2}, {25, 4}, {50, 8}, {100, 16}, {250, 40}} {
		s := scene(stool(k.n, k.holes)...)
		b.Run(fmt.Sprintf("faces=%d/edges=%d", len(s.faces), len(s.edges)), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				s.Pictures(Front, End, Top, Isometric)
			}
		})
	}
}

// BenchmarkPiece is what one change of a size costs up to the lines: the piece built, flattened, and
// seen in four views.
func BenchmarkPiece(b *testing.B) {
	for _, d := range []form.Design{formtest.WorkedExample(), formtest.Full()} {
		b.Run(d.Title, func(b *testing.B) {
			for b.Loop() {
				NewScene(form.Build(d), solid.Flattening).Pictures(Front, End, Top, Isometric)
			}
		})
	}
	p := form.Build(formtest.Full())
	b.Run("scene alone", func(b *testing.B) {
		for b.Loop() {
			NewScene(p, solid.Flattening)
		}
	})
	s := NewScene(p, solid.Flattening)
	b.Run("one view alone", func(b *testing.B) {
		for b.Loop() {
			s.Project(Isometric)
		}
	})
}
