package view

import (
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/render/draw"
)

// Mark is a line drawn on a face of the scene, in the scene's frame, mm.
type Mark struct {
	Face   int
	Points []mgl64.Vec3
}

// Run is a stretch of a mark that is seen.
type Run struct {
	Mark   int
	Points []draw.Point
}

// Painting is a picture with the surfaces that look to the viewer and what is seen of the marks on them.
type Painting struct {
	*Picture
	Surfaces []Surface // in the order of painting: what comes later lies over what came before
	Runs     []Run     // in the order of the marks
}

// Paint takes the picture seen in direction d with surfaces and marks. Marks are cut where something nearer hides
// them by the same rule as edges, so none shows through and none flickers.
func (s *Scene) Paint(d Direction, marks []Mark) *Painting {
	w := begin()
	p := &Painting{Picture: w.take(s, d)}
	if len(s.edges) > 0 {
		p.Surfaces = w.surfaces()
		for i := range marks {
			if w.planes[marks[i].Face].facing > 0 {
				p.Runs = w.traceMark(p.Runs, i, d, &marks[i])
			}
		}
	}
	w.rest()
	return p
}

// traceMark appends the stretches of a mark that nothing covers.
func (w *work) traceMark(out []Run, mark int, d Direction, m *Mark) []Run {
	part := w.s.faces[m.Face].part
	var run []draw.Point
	flush := func() {
		if len(run) > 1 {
			out = append(out, Run{mark, run})
		}
		run = nil
	}
	for i := 1; i < len(m.Points); i++ {
		a, b := d.turn(m.Points[i-1]), d.turn(m.Points[i])
		e := newStretch(&a, &b)
		if e.long < sliver {
			continue
		}
		w.marked++
		w.cuts = append(w.cuts[:0], 0)
		w.meet(w.marked, part, &e)
		w.cuts = append(w.cuts, 1)
		slices.Sort(w.cuts)
		for k := 1; k < len(w.cuts); k++ {
			t0, t1 := w.cuts[k-1], w.cuts[k]
			if t1-t0 < sliver/e.long {
				continue
			}
			if w.hidden(&e, (t0+t1)/2) {
				flush()
				continue
			}
			if len(run) == 0 {
				run = append(run, draw.Point{X: e.x + t0*e.dx, Y: e.y + t0*e.dy})
			}
			run = append(run, draw.Point{X: e.x + t1*e.dx, Y: e.y + t1*e.dy})
		}
	}
	flush()
	return out
}

// Faces is how many faces the scene has.
func (s *Scene) Faces() int { return len(s.faces) }

// Face gives a face of the scene: its part, its outward normal, and its loops, mm in the scene's frame: the outline
// counter-clockwise as seen from outside, holes clockwise.
func (s *Scene) Face(i int) (part string, normal mgl64.Vec3, loops [][]mgl64.Vec3) {
	f := &s.faces[i]
	for _, l := range s.loops(f) {
		pts := make([]mgl64.Vec3, len(l))
		for k, v := range l {
			pts[k] = s.verts[v]
		}
		loops = append(loops, pts)
	}
	return s.parts[f.part], f.normal, loops
}

// loops are a face's vertices, loop by loop.
func (s *Scene) loops(f *face) [][]int32 {
	var out [][]int32
	var loop []int32
	for _, d := range s.sides[f.lo:f.hi] {
		loop = append(loop, d.from)
		if d.to == loop[0] {
			out, loop = append(out, loop), nil
		}
	}
	return out
}
