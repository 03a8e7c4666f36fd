package form

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
	"splaywright/model/solid"
)

// wall is one of the boards that stand round a tray, chest or ring, with its planes in the world.
// Normals point out of its wood.
type wall struct {
	id, name  string
	long      bool       // front and back of a tray or chest; ends and staves are not
	out       mgl64.Vec3 // level unit direction in plan, outward
	lean      float64    // from plumb, positive where the wall leans outward to the rim
	half      float64    // from the axis to the outer face, where width and depth are taken
	thickness float64
	timber    string
	sizes     []string // paths in the design file that shape it

	outer, inner solid.Plane
	lower, upper solid.Plane // its long edges
	right, up    mgl64.Vec3  // along the grain, to the right as seen from outside; up the slope
	rise         mgl64.Vec3  // unit, the way its corners run: worldZ, and worldY round a stool, which lies on its front
	end          [2]wallEnd  // left and right as seen from outside
}

// wallEnd is what a corner makes of the end of a wall.
type wallEnd struct {
	cut   solid.Plane
	walls []solid.Wall // of tails or pins, from the lower edge to the upper one; nil = the cut alone
	// base is the plane of the baselines, where the joint ends in the board; nil = the cut.
	base *solid.Plane
	// stop is where a groove along the inner face ends, its normal into the groove; nil = it runs out
	// at the cut.
	stop *solid.Plane
}

// enclosure is a piece of walls while it is put together. Its first boards are the walls,
// counter-clockwise from above.
type enclosure struct {
	*assembly
	walls     []*wall
	outward   float64   // +1 where a positive lean makes the rim wider, −1 where it makes the floor wider
	rim, foot float64   // Z of the outer lines of the walls' upper and lower edges
	tails     int       // a corner, once the first is laid out
	laid      []laidOut // corners in tails and pins, by the number of their first wall
	loose     []*board  // splines and keys, after all others

	corners []meeting // nil = each wall with the next
	faces   []float64 // how long the walls' outer faces are at least; nil = between their neighbours
}

// newEnclosure stands the walls. The words and sizes of the design are sound.
func newEnclosure(a *assembly, walls []*wall, outward float64) *enclosure {
	e := &enclosure{assembly: a, walls: walls, outward: outward, rim: a.d.Size.Height.MM()}
	if l := a.d.Lid; l != nil {
		e.rim -= l.Thickness.MM()
	}
	if u := a.d.Bottom; u != nil && u.Joint == ScrewedOn {
		e.foot = u.Thickness.MM()
	}
	for _, w := range walls {
		e.stand(w)
	}
	return e
}

// stand gives a wall its faces and edges.
func (e *enclosure) stand(w *wall) {
	sin, cos := math.Sincos(w.lean)
	taken := e.rim
	if e.d.Size.TakenAt == AtFloor {
		taken = 0
	}
	w.outer = through(w.out.Mul(cos).Sub(worldZ.Mul(sin)), w.out.Mul(w.half).Add(worldZ.Mul(taken)))
	w.inner = solid.Plane{N: w.outer.N.Mul(-1), D: w.thickness - w.outer.D}
	w.rise = worldZ
	w.right = w.rise.Cross(w.out)
	w.up = w.outer.N.Cross(w.right)
	w.lower, w.upper = solid.Plane{N: worldZ.Mul(-1), D: -e.foot}, solid.Plane{N: worldZ, D: e.rim}
	if e.d.Splay.EdgeCut == EdgeSquare {
		w.lower = through(w.up.Mul(-1), w.at(e.foot))
		w.upper = through(w.up, w.at(e.rim))
	}
}

// at is a point of the wall's outer face at a height.
func (w *wall) at(z float64) mgl64.Vec3 {
	level := solid.Plane{N: worldZ, D: z}
	return meet(w.outer, level, solid.Plane{N: w.right})
}

// next is the wall to the right of wall i as seen from outside.
func (e *enclosure) next(i int) int { return (i + 1) % len(e.walls) }

func (e *enclosure) before(i int) int { return (i + len(e.walls) - 1) % len(e.walls) }

// along is the unit direction of the corner between two walls, the way it rises.
func along(a, b *wall) mgl64.Vec3 {
	v := a.outer.N.Cross(b.outer.N).Normalize()
	if v.Dot(a.rise) < 0 {
		return v.Mul(-1)
	}
	return v
}

// cornerAt is where the outer, or the inner, faces of two walls meet at a height.
func cornerAt(a, b solid.Plane, z float64) mgl64.Vec3 {
	return meet(a, b, solid.Plane{N: worldZ, D: z})
}

// room is the length of a wall's face at a height, between the same faces of its neighbours;
// less than nothing where they cross before.
func (e *enclosure) room(i int, inner bool, z float64) float64 {
	l, w, r := e.walls[e.before(i)], e.walls[i], e.walls[e.next(i)]
	if inner {
		return cornerAt(w.inner, r.inner, z).Sub(cornerAt(l.inner, w.inner, z)).Dot(w.right)
	}
	return cornerAt(w.outer, r.outer, z).Sub(cornerAt(l.outer, w.outer, z)).Dot(w.right)
}

// place is the frame of a wall: x to the right, y up the slope, z out of the outer face, origin
// in the middle of the outer face's line on the floor.
func (e *enclosure) place(i int) mgl64.Mat4 {
	l, w, r := e.walls[e.before(i)], e.walls[i], e.walls[e.next(i)]
	middle := cornerAt(l.outer, w.outer, 0).Add(cornerAt(w.outer, r.outer, 0)).Mul(0.5)
	return part.Frame(middle, w.right, w.up, w.outer.N)
}

// board begins the part of a wall, whose ends the corners have cut.
func (e *enclosure) board(i int) *board {
	w := e.walls[i]
	p := &part.Part{ID: w.id, Name: w.name, Timber: w.timber}
	b := newBoard(p, e.place(i), w.thickness,
		edge{id: "lower-edge", kind: part.Rip, plane: w.lower},
		edge{id: "right-end", kind: part.Crosscut, plane: w.end[right].cut},
		edge{id: "upper-edge", kind: part.Rip, plane: w.upper},
		edge{id: "left-end", kind: part.Crosscut, plane: w.end[left].cut},
	)
	b.sizes = w.sizes
	return b
}

// outline goes round a wall: lower edge, right end, upper edge, left end.
func (w *wall) outline(b *board) {
	ends := [2][]solid.Wall{}
	for i, at := range [2]int{3, 1} {
		ends[i] = []solid.Wall{b.wall(b.around[at])}
		if tails := w.end[i].walls; tails != nil {
			ends[i] = b.walls(tails, i == int(left))
		}
	}
	b.shape.Outline = append(b.shape.Outline, b.wall(b.around[0]))
	b.shape.Outline = append(b.shape.Outline, ends[right]...)
	b.shape.Outline = append(b.shape.Outline, b.wall(b.around[2]))
	b.shape.Outline = append(b.shape.Outline, ends[left]...)
}

// mirrorEnds notes which ends are mirror images of each other: the two of one wall, or else the
// left one of a wall and the right one of a later wall.
func (e *enclosure) mirrorEnds() {
	n := len(e.walls)
	for i, b := range e.boards[:n] {
		for k := range n {
			other := e.boards[(i+k)%n]
			if b.around[1].pair == "" && other.around[3].pair == "" && b.mirrors(other) {
				b.around[1].pair = other.part.ID + "/" + other.around[3].id
				other.around[3].pair = b.part.ID + "/" + b.around[1].id
			}
		}
	}
}

// mirrors tells whether the right end of a board is the mirror image of the left end of another.
func (b *board) mirrors(other *board) bool {
	const alike = 1e-9
	r, l := b.local(b.around[1].plane).N, other.local(other.around[3].plane).N
	return b.thickness == other.thickness && r.Sub(mgl64.Vec3{-l[0], l[1], l[2]}).Len() < alike
}
