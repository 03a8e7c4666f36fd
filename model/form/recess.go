package form

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/solid"
)

// recess is a slot that ends at a depth below its face: u is half its straight length along it, v its radius
// across.
func (p *spot) recess(u, v mgl64.Vec2, half, r float64) {
	c := p.centre
	pocket := solid.Pocket{Tag: p.tag(), FromOuter: p.f.Face != InnerFace, Depth: p.f.Depth.MM()}
	straight := func(n, start mgl64.Vec2) solid.Wall {
		n = n.Mul(1 / r)
		return solid.Wall{Tag: p.tag(), Start: start, Plane: solid.Plane{N: n.Vec3(0), D: n.Dot(start)}}
	}
	if half < solid.SamePoint {
		pocket.Walls = solid.Loop{pillar(p.tag(), c, r, c.Add(v))}
	} else { // counter-clockwise, as pockets go
		pocket.Walls = solid.Loop{
			straight(v, c.Sub(u).Sub(v)), pillar(p.tag(), c.Add(u), r, c.Add(u).Sub(v)),
			straight(v.Mul(-1), c.Add(u).Add(v)), pillar(p.tag(), c.Sub(u), r, c.Sub(u).Add(v)),
		}
	}
	p.board.shape.Pockets = append(p.board.shape.Pockets, pocket)
}
