package view

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/solid"
)

// lengths is the total length of a picture's lines of each kind.
func lengths(p *Picture) (out [nothing]float64) {
	for _, l := range p.Lines {
		for i := 1; i < len(l.Points); i++ {
			a, b := l.Points[i-1], l.Points[i]
			out[l.Kind] += math.Hypot(b.X-a.X, b.Y-a.Y)
		}
	}
	return out
}

// lengths asks the witness at n points an edge, and closes in on each change between two of them.
func (w witness) lengths(n int) (out [nothing]float64) {
	for i := range w.s.edges {
		e := &w.s.edges[i]
		long := math.Hypot(w.d.Right.Dot(w.along(e)), w.d.Up.Dot(w.along(e)))
		if long < 1e-4 {
			continue
		}
		from, kind := 0.0, w.state(e, 0.5/float64(n))
		for k := 1; k < n; k++ {
			t := (float64(k) + 0.5) / float64(n)
			if now := w.state(e, t); now != kind {
				at := w.change(e, t-1/float64(n), t)
				add(&out, kind, long*(at-from))
				from, kind = at, now
			}
		}
		add(&out, kind, long*(1-from))
	}
	return out
}

func add(out *[nothing]float64, k Kind, l float64) {
	if k != nothing {
		out[k] += l
	}
}

func (w witness) along(e *edge) mgl64.Vec3 { return w.s.verts[e.to].Sub(w.s.verts[e.from]) }

func (w witness) state(e *edge, t float64) Kind {
	if k, drawn := w.kind(e, t); drawn {
		return k
	}
	return nothing
}

func (w witness) change(e *edge, t0, t1 float64) float64 {
	first := w.state(e, t0)
	for t1-t0 > 1e-7 {
		if m := (t0 + t1) / 2; w.state(e, m) == first {
			t0 = m
		} else {
			t1 = m
		}
	}
	return t0
}

// Boards that do not touch, so that no line is drawn for two edges: the lengths of the lines are those of
// the edges as rays see them.
func TestLengthsAgreeWithRaysToOneInAThousand(t *testing.T) {
	lean := mgl64.HomogRotate3DY(0.3).Mul4(mgl64.HomogRotate3DX(0.1))
	s := scene(
		toothed(200, 100, 20, 20, 3, 1, true),
		toothed(150, 90, 15, 15, 2, 2, false).Transform(mgl64.Translate3D(30, 20, 80).Mul4(lean)),
		prism(-60, -40, []bool{true}, circle(100, 50, 70, 40, false)),
		box(-40, -30, -20, -10, 130, 60),
	)
	for _, d := range []Direction{Pictorial(37, 23), Pictorial(-61, 48)} {
		got, want := lengths(s.Project(d)), witness{s: s, d: d}.lengths(30)
		for k := range got {
			if math.Abs(got[k]-want[k]) > 1e-3*want[k] || want[k] == 0 && got[k] != 0 {
				t.Errorf("%v: %v lines are %.4f long, as rays see them %.4f", d.Toward, Kind(k), got[k], want[k])
			}
		}
	}
}

// A scene that is its own mirror image in X gives mirrored pictures from mirrored directions.
func TestMirroredDirectionsGiveMirroredPictures(t *testing.T) {
	s := scene(stool(2, 0)...)
	for _, turn := range []float64{0, 20, 45, 71, 90} {
		for _, tip := range []float64{-20, 0, 30, 90} {
			a, b := lengths(s.Project(Pictorial(turn, tip))), lengths(s.Project(Pictorial(-turn, tip)))
			for k := range a {
				if math.Abs(a[k]-b[k]) > 1e-6*(1+a[k]) {
					t.Errorf("turn %v, tip %v: %v lines are %.6f long and %.6f mirrored", turn, tip, Kind(k), a[k], b[k])
				}
			}
		}
	}
}

// Front and back of a lone piece show the same outlines, and what one hides of a plain box the other sees.
func TestOppositeSidesHaveEqualOutlines(t *testing.T) {
	for _, m := range []*solid.Mesh{box(0, 0, 0, 30, 20, 10), prism(0, 30, []bool{true}, circle(0, 0, 20, 64, false))} {
		s := scene(m)
		a, b := lengths(s.Project(Pictorial(30, 20))), lengths(s.Project(Pictorial(210, -20)))
		for k := range a {
			if math.Abs(a[k]-b[k]) > 1e-6 {
				t.Errorf("%v lines are %.6f long from one side and %.6f from the other", Kind(k), a[k], b[k])
			}
		}
	}
}
