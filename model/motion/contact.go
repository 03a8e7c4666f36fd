// Package motion finds the order in which the parts of a piece go together and the direction in
// which each goes home, or which parts lock each other so that they cannot.
package motion

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
	"splaywright/model/solid"
)

// Tolerances.
const (
	// sameWay is how far two unit normals, or a direction and a plane, may differ and count as alike.
	sameWay = 1e-9
	// touching, mm, is how near two faces lie that touch.
	touching = 1e-6
	// inside, mm, is how deep a point is pushed into the wood to see which part is there.
	inside = 1e-3
	// grid is how many points across a face are looked at.
	grid = 9
)

// flat is a plane face of a part in the world.
type flat struct {
	d      float64
	face   *solid.Face
	u, v   mgl64.Vec3 // two directions in it; set together with its extent, when it is first asked for
	lo, hi mgl64.Vec2
	known  bool
}

// body is a part as contacts see it: its plane faces by the way that they look.
type body struct {
	part  *part.Part
	back  mgl64.Mat4
	ways  []mgl64.Vec3
	flats [][]flat

	lo, hi mgl64.Vec3    // its box in its own frame
	finder *solid.Finder // made when the first point is asked for
	tiles  []solid.Tile  // made when it is first seen along a way
}

func newBody(q *part.Part) *body {
	b := &body{part: q, back: part.Back(q.Place)}
	b.lo, b.hi = q.Solid.Bounds()
	for i := range q.Solid.Faces {
		f := &q.Solid.Faces[i]
		if f.Round != nil {
			continue
		}
		p := f.Plane.Transform(q.Place)
		k := indexOf(b.ways, p.N)
		if k < 0 {
			k = len(b.ways)
			b.ways, b.flats = append(b.ways, p.N), append(b.flats, nil)
		}
		b.flats[k] = append(b.flats[k], flat{d: p.D, face: f})
	}
	return b
}

// measure finds how far a face reaches along two directions in its plane.
func (b *body) measure(f *flat, n mgl64.Vec3) {
	if f.known {
		return
	}
	f.known = true
	f.u, f.v = across(n)
	f.lo, f.hi = mgl64.Vec2{math.Inf(1), math.Inf(1)}, mgl64.Vec2{math.Inf(-1), math.Inf(-1)}
	s := b.part.Solid
	for _, h := range f.face.Loops[0] {
		at := b.part.Place.Mul4x1(s.Vertices[s.Edges[h.Edge].From].Vec4(1)).Vec3()
		for k, x := range [2]float64{f.u.Dot(at), f.v.Dot(at)} {
			f.lo[k], f.hi[k] = min(f.lo[k], x), max(f.hi[k], x)
		}
	}
}

func indexOf(all []mgl64.Vec3, n mgl64.Vec3) int {
	for i, m := range all {
		if m.Sub(n).LenSqr() < sameWay*sameWay {
			return i
		}
	}
	return -1
}

// across gives two directions in a plane; opposite normals get the same two.
func across(n mgl64.Vec3) (u, v mgl64.Vec3) {
	k := 0
	for i := range 3 {
		if math.Abs(n[i]) < math.Abs(n[k])-sameWay {
			k = i
		}
	}
	for i := range 3 { // the sign of a normal must not turn its axes
		if math.Abs(n[i]) > 0.5 {
			if n[i] < 0 {
				n = n.Mul(-1)
			}
			break
		}
	}
	var axis mgl64.Vec3
	axis[k] = 1
	u = axis.Cross(n).Normalize()
	return u, n.Cross(u)
}

func (b *body) contains(p mgl64.Vec3) bool {
	q := b.back.Mul4x1(p.Vec4(1)).Vec3()
	for k := range 3 {
		if q[k] < b.lo[k] || q[k] > b.hi[k] {
			return false
		}
	}
	return b.find().Contains(q)
}

// find looks for points in the wood, in the part's own frame.
func (b *body) find() *solid.Finder {
	if b.finder == nil {
		b.finder = b.part.Solid.Finder()
	}
	return b.finder
}

// contacts gives the normals, out of a into b, of the plane faces where a touches b, each once. Round
// faces that touch (a peg in its hole) are left out: they hold across their axis only, and the parts
// of a piece meet in planes.
func contacts(a, b *body) []mgl64.Vec3 {
	var out []mgl64.Vec3
	for i, n := range a.ways {
		if j := indexOf(b.ways, n.Mul(-1)); j >= 0 && touch(a, b, n, a.flats[i], b.flats[j]) {
			out = append(out, n)
		}
	}
	return out
}

// touch tells whether some face of a that looks along n touches one of b that looks the other way.
func touch(a, b *body, n mgl64.Vec3, as, bs []flat) bool {
	for i := range as {
		for j := range bs {
			if math.Abs(as[i].d+bs[j].d) >= touching {
				continue
			}
			a.measure(&as[i], n)
			b.measure(&bs[j], n.Mul(-1))
			if meets(a, b, n, &as[i], &bs[j]) {
				return true
			}
		}
	}
	return false
}

// meets looks for a point in both faces: wood of a on one side of it and wood of b on the other.
func meets(a, b *body, n mgl64.Vec3, f, g *flat) bool {
	var lo, hi mgl64.Vec2
	for k := range 2 {
		lo[k], hi[k] = max(f.lo[k], g.lo[k]), min(f.hi[k], g.hi[k])
		if hi[k]-lo[k] < inside {
			return false
		}
	}
	foot := n.Mul(f.d)
	for _, i := range fromMiddle {
		for _, j := range fromMiddle {
			p := foot.Add(f.u.Mul(lo[0] + (hi[0]-lo[0])*i)).Add(f.v.Mul(lo[1] + (hi[1]-lo[1])*j))
			if a.contains(p.Sub(n.Mul(inside))) && b.contains(p.Add(n.Mul(inside))) {
				return true
			}
		}
	}
	return false
}

// fromMiddle are places across a face, the middle first: most faces that touch touch there.
var fromMiddle = func() (out [grid]float64) {
	for i := range out {
		step := float64((i+1)/2) / (grid + 1)
		if i%2 == 0 {
			step = -step
		}
		out[i] = 0.5 + step
	}
	return out
}()
