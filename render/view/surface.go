package view

import (
	"cmp"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/render/draw"
)

// Surface is a face that looks to the viewer, or a piece of one: loops in the picture, mm.
type Surface struct {
	Face  int
	Part  string
	Loops [][]draw.Point
}

// inPlane is how far beside a face's plane a corner still counts as lying in it, mm.
const inPlane = 1e-4

// patch is a convex piece of a face, in the picture's frame.
type patch []mgl64.Vec3

// sheet is a face or what a plane has left of it.
type sheet struct {
	face    int32
	whole   bool
	patches []patch
}

// surfaces orders the faces that look to the viewer so that none covers one that comes later. A plane parts what
// lies before it from what lies behind it, and nothing behind covers anything before: planes of the faces part the
// scene until single planes are left. A face that lies on both sides of such a plane is cut along it.
func (w *work) surfaces() []Surface {
	var list []sheet
	for _, f := range w.nearFirst() {
		list = append(list, sheet{f, true, w.patches(&w.s.faces[f])})
	}
	return w.order(nil, list)
}

func (w *work) order(out []Surface, list []sheet) []Surface {
	if len(list) == 0 {
		return out
	}
	by := w.parting(list)
	p := &w.planes[list[by].face]
	var behind, in, before []sheet
	for i, s := range list {
		switch lo, hi := p.reach(s.patches); {
		case i == by || lo >= -inPlane && hi <= inPlane:
			in = append(in, s)
		case lo >= -inPlane:
			before = append(before, s)
		case hi <= inPlane:
			behind = append(behind, s)
		default:
			b, f := s.cut(p)
			behind, before = append(behind, b), append(before, f)
		}
	}
	out = w.order(out, behind)
	for _, s := range in {
		out = append(out, w.surface(s))
	}
	return w.order(out, before)
}

// parting picks the face whose plane cuts the fewest others, of a few that are tried.
func (w *work) parting(list []sheet) int {
	const tries, asked = 9, 200
	best, least := 0, 1<<30
	step := max(1, len(list)/tries)
	each := max(1, len(list)/asked)
	for i := 0; i < len(list); i += step {
		p := &w.planes[list[i].face]
		cuts, front, back := 0, 0, 0
		for j := 0; j < len(list); j += each {
			switch lo, hi := p.reach(list[j].patches); {
			case lo < -inPlane && hi > inPlane:
				cuts++
			case lo < -inPlane:
				back++
			case hi > inPlane:
				front++
			}
		}
		if cost := 8*cuts + max(front, back); cost < least {
			best, least = i, cost
		}
	}
	return best
}

// reach is how far behind and before the plane patches reach.
func (p *plane) reach(list []patch) (lo, hi float64) {
	for i, q := range list {
		for j := range q {
			h := p.n[0]*q[j][0] + p.n[1]*q[j][1] + p.n[2]*q[j][2] - p.d
			if i+j == 0 {
				lo, hi = h, h
			}
			lo, hi = min(lo, h), max(hi, h)
		}
	}
	return lo, hi
}

// cut parts a sheet along a plane.
func (s sheet) cut(p *plane) (behind, before sheet) {
	behind.face, before.face = s.face, s.face
	for _, q := range s.patches {
		lo, hi := p.reach([]patch{q})
		if hi <= inPlane {
			behind.patches = append(behind.patches, q)
			continue
		}
		if lo >= -inPlane {
			before.patches = append(before.patches, q)
			continue
		}
		b, f := q.cut(p)
		behind.patches, before.patches = append(behind.patches, b), append(before.patches, f)
	}
	return behind, before
}

func (q patch) cut(p *plane) (behind, before patch) {
	high := func(v mgl64.Vec3) float64 { return p.n.Dot(v) - p.d }
	for i, a := range q {
		b := q[(i+1)%len(q)]
		ha, hb := high(a), high(b)
		if ha <= 0 {
			behind = append(behind, a)
		}
		if ha >= 0 {
			before = append(before, a)
		}
		if ha < 0 && hb > 0 || ha > 0 && hb < 0 {
			m := a.Add(b.Sub(a).Mul(ha / (ha - hb)))
			behind, before = append(behind, m), append(before, m)
		}
	}
	return behind, before
}

func (w *work) surface(s sheet) Surface {
	f := &w.s.faces[s.face]
	out := Surface{Face: int(s.face), Part: w.s.parts[f.part]}
	if s.whole {
		for _, l := range w.s.loops(f) {
			out.Loops = append(out.Loops, w.flatLoop(l))
		}
		return out
	}
	for _, q := range s.patches {
		l := make([]draw.Point, len(q))
		for i, v := range q {
			l[i] = draw.Point{X: v[0], Y: v[1]}
		}
		out.Loops = append(out.Loops, l)
	}
	return out
}

func (w *work) flatLoop(l []int32) []draw.Point {
	out := make([]draw.Point, len(l))
	for i, v := range l {
		out[i] = draw.Point{X: w.pts[v][0], Y: w.pts[v][1]}
	}
	return out
}

// patches cuts a face into convex pieces: itself where it is convex, else what lies between its corners' heights.
func (w *work) patches(f *face) []patch {
	loops := w.s.loops(f)
	if len(loops) == 1 && w.isConvex(loops[0]) {
		q := make(patch, len(loops[0]))
		for i, v := range loops[0] {
			q[i] = w.pts[v]
		}
		return []patch{q}
	}
	return w.bands(f)
}

func (w *work) isConvex(l []int32) bool {
	for i := range l {
		a, b, c := w.pts[l[i]], w.pts[l[(i+1)%len(l)]], w.pts[l[(i+2)%len(l)]]
		if (b[0]-a[0])*(c[1]-b[1])-(b[1]-a[1])*(c[0]-b[0]) < -1e-9 {
			return false
		}
	}
	return true
}

// bands cuts a face at the height of each of its corners in the picture; between two of them it is made of pieces
// with four corners.
func (w *work) bands(f *face) []patch {
	var heights []float64
	sides := w.s.sides[f.lo:f.hi]
	for _, s := range sides {
		heights = append(heights, w.pts[s.from][1])
	}
	slices.Sort(heights)
	heights = slices.CompactFunc(heights, func(a, b float64) bool { return abs(b-a) < 1e-7 })
	type rung struct{ lo, hi mgl64.Vec3 }
	var out []patch
	for k := 1; k < len(heights); k++ {
		y0, y1 := heights[k-1], heights[k]
		var rungs []rung
		for _, s := range sides {
			a, b := w.pts[s.from], w.pts[s.to]
			if a[1] > b[1] {
				a, b = b, a
			}
			if mid := (y0 + y1) / 2; a[1] < mid && b[1] > mid {
				at := func(y float64) mgl64.Vec3 { return a.Add(b.Sub(a).Mul((y - a[1]) / (b[1] - a[1]))) }
				rungs = append(rungs, rung{at(y0), at(y1)})
			}
		}
		slices.SortFunc(rungs, func(a, b rung) int { return cmp.Compare(a.lo[0]+a.hi[0], b.lo[0]+b.hi[0]) })
		for i := 0; i+1 < len(rungs); i += 2 {
			out = append(out, patch{rungs[i].lo, rungs[i+1].lo, rungs[i+1].hi, rungs[i].hi})
		}
	}
	return out
}
