package motion

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/solid"
)

// recedes tells whether a body that moves along a way stays on its own side of a plane between it and the other, so that
// it strikes it nowhere. Looked for among the planes that bound either body, and asked first: most parts of a piece stand
// side by side.
func (b *body) recedes(other *body, way mgl64.Vec3) bool {
	for _, p := range b.behind() {
		if p.N.Dot(way) <= sameWay && other.beyond(p) {
			return true
		}
	}
	for _, p := range other.behind() {
		if p.N.Dot(way) >= -sameWay && b.beyond(p) {
			return true
		}
	}
	return false
}

// behind are planes that all of the body lies behind, one for each way that its faces look.
func (b *body) behind() []solid.Plane {
	if b.sides == nil {
		b.sides = make([]solid.Plane, len(b.ways))
		for i, n := range b.ways {
			local, from := b.seenFrom(n)
			far := math.Inf(-1)
			for _, v := range b.part.Solid.Vertices {
				far = max(far, local.Dot(v))
			}
			for i := range b.part.Solid.Arcs {
				far = max(far, b.part.Solid.Arcs[i].Reach(local))
			}
			b.sides[i] = solid.Plane{N: n, D: far + from}
		}
	}
	return b.sides
}

// beyond tells whether all of the body lies on that side of a plane to which its normal points, or in it.
func (b *body) beyond(p solid.Plane) bool {
	local, from := b.seenFrom(p.N)
	least := p.D - from - depth
	for _, v := range b.part.Solid.Vertices {
		if local.Dot(v) < least {
			return false
		}
	}
	against := local.Mul(-1)
	for i := range b.part.Solid.Arcs {
		if -b.part.Solid.Arcs[i].Reach(against) < least {
			return false
		}
	}
	return true
}

// seenFrom is a way, world frame, in the frame of the part, and how far along it that frame's origin lies.
func (b *body) seenFrom(way mgl64.Vec3) (local mgl64.Vec3, from float64) {
	m := &b.part.Place
	return mgl64.Vec3{
		m[0]*way[0] + m[1]*way[1] + m[2]*way[2],
		m[4]*way[0] + m[5]*way[1] + m[6]*way[2],
		m[8]*way[0] + m[9]*way[1] + m[10]*way[2],
	}, m[12]*way[0] + m[13]*way[1] + m[14]*way[2]
}
