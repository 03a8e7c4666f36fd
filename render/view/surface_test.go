package view

import (
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/render/draw"
)

// topmost is the face that is painted last over a point; -1 for none.
func topmost(list []Surface, x, y float64) int {
	last := -1
	for i := range list {
		in := false
		for _, l := range list[i].Loops {
			for k, a := range l {
				b := l[(k+1)%len(l)]
				if (a.Y <= y) != (b.Y <= y) && a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y) < x {
					in = !in
				}
			}
		}
		if in {
			last = list[i].Face
		}
	}
	return last
}

// ray is the face nearest to the viewer at a point and by how much it is so; -1 for none.
func (w witness) ray(x, y float64) (face int, ahead float64) {
	face = -1
	first, second := -1e9, -1e9
	at := w.d.Right.Mul(x).Add(w.d.Up.Mul(y))
	for i := range w.s.faces {
		f := &w.s.faces[i]
		if w.facing(int32(i)) <= 0 {
			continue
		}
		hit := at.Add(w.d.Toward.Mul((f.d - f.normal.Dot(at)) / f.normal.Dot(w.d.Toward)))
		if !w.holds(f, hit) {
			continue
		}
		if z := w.d.Depth(hit); z > first {
			face, first, second = i, z, first
		} else {
			second = max(second, z)
		}
	}
	return face, first - second
}

// What is painted last is what a ray meets first.
func painted(t interface{ Errorf(string, ...any) }, s *Scene, d Direction, n int) {
	p := s.Paint(d, nil)
	w := witness{s: s, d: d}
	r := rand.New(rand.NewPCG(3, 4))
	for range n {
		q := draw.Point{X: p.Min.X + r.Float64()*(p.Max.X-p.Min.X), Y: p.Min.Y + r.Float64()*(p.Max.Y-p.Min.Y)}
		want, ahead := w.ray(q.X, q.Y)
		if ahead < 0.01 {
			continue // boards in each other's way or edge on
		}
		if got := topmost(p.Surfaces, q.X, q.Y); got != want {
			t.Errorf("%s at %.3f %.3f: painted face %d, a ray meets %d first", d.Name, q.X, q.Y, got, want)
		}
	}
}

func TestBlocksArePaintedAsRaysSeeThem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { painted(t, scene(blocks(t)...), anyDirection(t), 60) })
}

func TestAPieceIsPaintedAsRaysSeeIt(t *testing.T) {
	for _, d := range []form.Design{formtest.WorkedExample(), formtest.Full()} {
		s := NewScene(form.Build(d), 0.05)
		painted(t, s, Pictorial(35, 25), 400)
		lens, ok := s.Lens(Eye{Turn: 35, Height: 1000, Distance: 1500})
		if !ok {
			t.Fatal("the eye stands too near")
		}
		painted(t, s.Through(lens), lens.Direction, 400)
	}
}
