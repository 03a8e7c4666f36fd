// Package motion finds the order in which the parts of a piece go together and the direction in
// which each goes home, or which parts lock each other so that they cannot.
package motion

import (
	"math"
	"slices"

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
	d    float64
	face int
	way  int      // among its body's
	seen [2]*laid // with its round holes stopped, and as it is
	rim  *rim     // see feels
}

// laid is a face as it is seen along its normal; it is laid out when it is first asked for.
type laid struct {
	tiles  []facet
	lo, hi mgl64.Vec3
}

// body is a part as contacts see it: its plane faces by the way that they look.
type body struct {
	part  *part.Part
	ways  []mgl64.Vec3
	flats [][]flat

	lo, hi   mgl64.Vec3        // its box in its own frame
	low, top mgl64.Vec3        // and one in the world's
	skins    [2]*solid.Surface // see surface

	sides []solid.Plane // world; see behind
	holes []solid.Rims  // world; of those that can be stopped
}

// How a body's surface is looked at.
const (
	stopped = iota // as if its round holes were stopped with wood
	asItIs
)

func newBody(q *part.Part) *body {
	b := &body{part: q, ways: make([]mgl64.Vec3, 0, 16)}
	b.lo, b.hi = q.Solid.Bounds()
	b.low, b.top = turnedBox(&q.Place, b.lo, b.hi)
	flats := make([]flat, 0, len(q.Solid.Faces))
	for i := range q.Solid.Faces {
		f := &q.Solid.Faces[i]
		if f.Round != nil {
			continue
		}
		p := f.Plane.Transform(q.Place)
		k := indexOf(b.ways, p.N)
		if k < 0 {
			k = len(b.ways)
			b.ways = append(b.ways, p.N)
		}
		flats = append(flats, flat{d: p.D, face: i, way: k})
	}
	slices.SortStableFunc(flats, func(f, g flat) int { return f.way - g.way })
	b.flats = make([][]flat, len(b.ways))
	for from, to := 0, 0; from < len(flats); from = to {
		for to < len(flats) && flats[to].way == flats[from].way {
			to++
		}
		b.flats[flats[from].way] = flats[from:to]
	}
	return b
}

// surface is the part's surface in convex pieces, in its own frame. A part without round holes has but one.
func (b *body) surface(how int) *solid.Surface {
	if b.skins[how] == nil {
		if how == stopped {
			b.skins[how] = b.part.Solid.Stopped(solid.Flattening)
		}
		if b.skins[how] == nil {
			b.skins[how] = b.part.Solid.Surface(solid.Flattening)
			b.skins[asItIs] = b.skins[how]
		}
	}
	return b.skins[how]
}

// holed tells whether a part has round holes that can be stopped.
func (b *body) holed() bool { return b.surface(stopped) != b.skins[asItIs] }

// outOfHoles tells whether nothing of another body can be in the stopped holes of this one: each of them lies beyond
// some plane that all of the other lies behind.
func (b *body) outOfHoles(other *body) bool {
	if b.holes == nil {
		b.holes = []solid.Rims{}
		for _, r := range b.surface(stopped).Rims() {
			b.holes = append(b.holes, r.Placed(b.part.Place))
		}
	}
	sides := other.behind()
	for i := range b.holes {
		if !slices.ContainsFunc(sides, func(p solid.Plane) bool { return b.holes[i].Beyond(p, touching) }) {
			return false
		}
	}
	return true
}

// look puts the pieces of a plane face before the eye that looks along its normal, as the place m puts them.
func (e *eye) look(b *body, f *flat, how int, m *mgl64.Mat4) *laid {
	if f.seen[how] != nil {
		return f.seen[how]
	}
	l := &laid{}
	f.seen[how] = l
	tiles := b.surface(how).Tiles(f.face)
	l.lo, l.hi = nowhere()
	l.tiles = make([]facet, len(tiles))
	for i := range tiles {
		l.tiles[i] = facetOf(&e.kept, &tiles[i], m)
		l.lo, l.hi = lower(l.lo, l.tiles[i].lo), upper(l.hi, l.tiles[i].hi)
	}
	return l
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
	if a.farFrom(b) {
		return nil
	}
	for i, n := range a.ways {
		if j := indexOf(b.ways, n.Mul(-1)); j >= 0 && e.touch(a, b, n, a.flats[i], b.flats[j]) {
			out = append(out, n)
		}
	}
	return out
}

// farFrom tells whether two bodies cannot touch, by their boxes.
func (b *body) farFrom(other *body) bool {
	for k := range 3 {
		if b.low[k] > other.top[k]+touching || other.low[k] > b.top[k]+touching {
			return true
		}
	}
	return false
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
			f, g := e.rim(a, &as[i], &placeA), e.rim(b, &bs[j], &placeB)
			if apart(f.lo, f.hi, g.lo, g.hi) {
				continue
			}
			if f.feels(g) {
				return true
			}
			// Where more is shared with the holes stopped than they could add, faces touch; where nothing is, they do not.
			doubt := a.surface(stopped).Stops(as[i].face) + b.surface(stopped).Stops(bs[j].face)
			area := e.shared(e.look(a, &as[i], stopped, &placeA), e.look(b, &bs[j], stopped, &placeB), doubt+grazes)
			if area > grazes && doubt > 0 && area <= doubt+grazes {
				area = e.shared(e.look(a, &as[i], asItIs, &placeA), e.look(b, &bs[j], asItIs, &placeB), grazes)
			}
			if area > grazes {
				return true
			}
		}
	}
	return false
}

// shared is the area, mm², that two faces in one plane share, as far as it is no more than enough.
func (e *eye) shared(f, g *laid, enough float64) float64 {
	if apart(f.lo, f.hi, g.lo, g.hi) {
		return 0
	}
	var area float64
	for i := range f.tiles {
		p := &f.tiles[i]
		for j := range g.tiles {
			q := &g.tiles[j]
			if apart(p.lo, p.hi, q.lo, q.hi) {
				continue
			}
			if area += e.over(p, q); area > enough {
				return area
			}
		}
	}
	return area
}
