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
)

// flat is a plane face of a part in the world.
type flat struct {
	d      float64
	face   int
	tiles  []facet // seen along its normal; set together with its extent, when it is first asked for
	lo, hi mgl64.Vec3
}

// body is a part as contacts see it: its plane faces by the way that they look.
type body struct {
	part  *part.Part
	ways  []mgl64.Vec3
	flats [][]flat

	lo, hi mgl64.Vec3 // its box in its own frame
	skin   *solid.Surface
}

func newBody(q *part.Part) *body {
	b := &body{part: q}
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
		b.flats[k] = append(b.flats[k], flat{d: p.D, face: i})
	}
	return b
}

// surface is the part's surface in convex pieces, in its own frame.
func (b *body) surface() *solid.Surface {
	if b.skin == nil {
		b.skin = b.part.Solid.Surface(solid.Flattening)
	}
	return b.skin
}

// look puts the pieces of a plane face before the eye that looks along its normal, as the place m puts them.
func (e *eye) look(b *body, f *flat, m *mgl64.Mat4) {
	if f.tiles != nil {
		return
	}
	tiles := b.surface().Tiles(f.face)
	f.lo, f.hi = nowhere()
	f.tiles = make([]facet, len(tiles))
	for i := range tiles {
		f.tiles[i] = facetOf(&e.kept, &tiles[i], m)
		f.lo, f.hi = lower(f.lo, f.tiles[i].lo), upper(f.hi, f.tiles[i].hi)
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

// contacts gives the normals, out of a into b, of the plane faces where a touches b, each once. Round
// faces that touch (a peg in its hole) are left out: they hold across their axis only, and the parts
// of a piece meet in planes.
func (e *eye) contacts(a, b *body) []mgl64.Vec3 {
	var out []mgl64.Vec3
	for i, n := range a.ways {
		if j := indexOf(b.ways, n.Mul(-1)); j >= 0 && e.touch(a, b, n, a.flats[i], b.flats[j]) {
			out = append(out, n)
		}
	}
	return out
}

// touch tells whether some face of a that looks along n touches one of b that looks the other way.
func (e *eye) touch(a, b *body, n mgl64.Vec3, as, bs []flat) bool {
	var placeA, placeB mgl64.Mat4
	known := false
	for i := range as {
		for j := range bs {
			if math.Abs(as[i].d+bs[j].d) >= touching {
				continue
			}
			if !known {
				known, placeA, placeB = true, sight(n).Mul4(a.part.Place), sight(n.Mul(-1)).Mul4(b.part.Place)
			}
			e.look(a, &as[i], &placeA)
			e.look(b, &bs[j], &placeB)
			if e.meets(&as[i], &bs[j]) {
				return true
			}
		}
	}
	return false
}

// meets tells whether two faces in one plane share area.
func (e *eye) meets(f, g *flat) bool {
	if apart(f.lo, f.hi, g.lo, g.hi) {
		return false
	}
	var area float64
	for i := range f.tiles {
		p := &f.tiles[i]
		for j := range g.tiles {
			q := &g.tiles[j]
			if apart(p.lo, p.hi, q.lo, q.hi) {
				continue
			}
			if area += e.over(p, q); area > grazes {
				return true
			}
		}
	}
	return false
}
