package view

import (
	"slices"
	"sync"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/render/draw"
)

// work is what taking one picture needs; it is used again for the next.
type work struct {
	s         *Scene
	direction Direction
	seenOnly  bool         // hidden lines are left out, and arcs are not told
	pts       []mgl64.Vec3 // vertices: x right, y up, z to the viewer
	planes    []plane
	lo, hi    mgl64.Vec3

	twins   []twin
	grid    grid
	stands  []standing
	bends   []outline // where front faces end against nothing
	seen    []int32   // by outline: the last edge that met it
	cuts    []float64
	pieces  []piece
	joining joining
	curves  []int32 // by line: the curve it runs along
	marked  int32   // the number last given to an edge or a stretch of a mark
}

// plane is a face in the picture's frame.
type plane struct {
	n      mgl64.Vec3
	d      float64
	facing int8    // 1 to the viewer, 0 on edge, -1 away
	far    float64 // least z of its points
	near   float64 // greatest z
}

// piece is a straight stretch of one edge, in the picture.
type piece struct {
	x0, y0, x1, y1 float64
	edge           int32
	rank           int32 // more is nearer
	kind           Kind
}

// works is what is at rest, the one that was in use last at the end: its room is the likeliest to be near the processor
// still. A sync.Pool would give the room away whenever the program collects, which the window does after every key press.
var works struct {
	sync.Mutex
	list []*work
}

// mostWorks is how many works may be at rest.
const mostWorks = 4

// begin takes a work from those at rest, or a new one.
func begin() *work {
	works.Lock()
	defer works.Unlock()
	n := len(works.list) - 1
	if n < 0 {
		return new(work)
	}
	w := works.list[n]
	works.list = works.list[:n]
	return w
}

// rest puts a work back for the next picture.
func (w *work) rest() {
	w.s = nil
	works.Lock()
	defer works.Unlock()
	if len(works.list) < mostWorks {
		works.list = append(works.list, w)
	}
}

// Project takes the picture seen in direction d. The same scene and direction always give the same
// picture. It is safe to call from several goroutines at once.
func (s *Scene) Project(d Direction) *Picture {
	w := begin()
	p := w.take(s, d)
	w.rest()
	return p
}

// Seen takes the picture without its hidden lines. Its lines do not tell which of them are arcs.
func (s *Scene) Seen(d Direction) *Picture {
	w := begin()
	w.seenOnly = true
	p := w.take(s, d)
	w.seenOnly = false
	w.rest()
	return p
}

func (w *work) take(s *Scene, d Direction) *Picture {
	w.s, w.direction = s, d
	w.turn(d)
	p := &Picture{Direction: d, Min: draw.Point{X: w.lo[0], Y: w.lo[1]}, Max: draw.Point{X: w.hi[0], Y: w.hi[1]}}
	if len(s.edges) > 0 {
		w.place()
		w.lay()
		w.trace()
		p.Lines = w.join()
	}
	w.marked = int32(len(s.edges))
	return p
}

// Pictures takes several pictures, two at a time, in the order of ds.
func (s *Scene) Pictures(ds ...Direction) []*Picture {
	out := make([]*Picture, len(ds))
	var done sync.WaitGroup
	done.Go(func() {
		for i := 1; i < len(ds); i += 2 {
			out[i] = s.Project(ds[i])
		}
	})
	for i := 0; i < len(ds); i += 2 {
		out[i] = s.Project(ds[i])
	}
	done.Wait()
	return out
}

// turn brings the scene into the picture's frame.
func (w *work) turn(d Direction) {
	w.pts = slices.Grow(w.pts[:0], len(w.s.verts))[:len(w.s.verts)]
	r, u, t := d.Right, d.Up, d.Toward
	for i := range w.s.verts {
		v := &w.s.verts[i]
		w.pts[i] = mgl64.Vec3{
			v[0]*r[0] + v[1]*r[1] + v[2]*r[2],
			v[0]*u[0] + v[1]*u[1] + v[2]*u[2],
			v[0]*t[0] + v[1]*t[1] + v[2]*t[2],
		}
	}
	w.bounds()
	w.planes = slices.Grow(w.planes[:0], len(w.s.faces))
	for i := range w.s.faces {
		f := &w.s.faces[i]
		p := plane{n: d.turn(f.normal), d: f.d}
		switch {
		case p.n[2] > edgeOn:
			p.facing = 1
			w.depths(f, &p)
		case p.n[2] < -edgeOn:
			p.facing = -1
		}
		w.planes = append(w.planes, p)
	}
}

func (w *work) bounds() {
	w.lo, w.hi = mgl64.Vec3{}, mgl64.Vec3{}
	if len(w.pts) == 0 {
		return
	}
	lo, hi := w.pts[0], w.pts[0]
	for i := range w.pts {
		p := &w.pts[i]
		for k := range p {
			if p[k] < lo[k] {
				lo[k] = p[k]
			}
			if p[k] > hi[k] {
				hi[k] = p[k]
			}
		}
	}
	w.lo, w.hi = lo, hi
}

func (w *work) depths(f *face, p *plane) {
	first := w.pts[w.s.sides[f.lo].from][2]
	p.far, p.near = first, first
	for _, s := range w.s.sides[f.lo:f.hi] {
		z := w.pts[s.from][2]
		p.far, p.near = min(p.far, z), max(p.near, z)
	}
}
