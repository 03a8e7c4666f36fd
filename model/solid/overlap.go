package solid

import (
	"errors"
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// ErrPlace tells that a place is not a rotation and a shift.
var ErrPlace = errors.New("a place must be a rotation and a shift, without mirroring or stretching")

// ErrNothing tells that a solid has no faces.
var ErrNothing = errors.New("the solid has no faces")

// unturned is how far a place may be off a rotation: rounding of a chain of turns.
const unturned = 1e-9

// noDepth is how deep, mm, one block must reach into another before it counts: the rounding of touching faces
// a metre from the origin.
const noDepth = 1e-12

// Overlap is the volume, mm³, that two solids share when b is moved by place into a's frame. Arcs count as chords
// within Flattening of them. What touches without overlapping gives 0 but for rounding, which may be negative:
// some 1e-15 of the smaller solid. For many places of the same solids make their Blocks once.
func Overlap(a, b *Solid, place mgl64.Mat4) (float64, error) {
	if len(a.Faces) == 0 || len(b.Faces) == 0 {
		return 0, ErrNothing
	}
	return a.Blocks(Flattening).Overlap(b.Blocks(Flattening), place)
}

// Overlap is the volume that the solids of a and b share when b is moved by place into a's frame.
func (b *Blocks) Overlap(with *Blocks, place mgl64.Mat4) (float64, error) {
	if !rigid(place) {
		return 0, ErrPlace
	}
	var sum float64
	var k knife
	var moved column
	var work convex
	for _, w := range with.blocks {
		moved.body.moveFrom(&w.body, place)
		moved.lo, moved.hi = boxOf(moved.body.corners)
		if moved.misses(&b.around) {
			continue
		}
		moved.planes = moved.planes[:0]
		for _, p := range w.planes {
			moved.planes = append(moved.planes, p.Transform(place))
		}
		for _, a := range b.blocks {
			if a.lo[0] >= moved.hi[0] {
				break
			}
			if !a.misses(&moved.extent) {
				sum += a.sign * w.sign * a.shared(&k, &moved, &work)
			}
		}
	}
	return sum, nil
}

// misses tells whether two boxes share no more than their faces.
func (e *extent) misses(f *extent) bool {
	return e.lo[0] >= f.hi[0] || f.lo[0] >= e.hi[0] || e.lo[1] >= f.hi[1] || f.lo[1] >= e.hi[1] ||
		e.lo[2] >= f.hi[2] || f.lo[2] >= e.hi[2]
}

// sides tells whether something of the body lies on the inner and on the outer side of a plane.
func (c *convex) sides(p *Plane) (in, out bool) {
	for i := range c.corners {
		q := &c.corners[i]
		d := p.N[0]*q[0] + p.N[1]*q[1] + p.N[2]*q[2] - p.D
		in = in || d < -noDepth
		out = out || d > 0
	}
	return in, out
}

// shared is the volume that lies in both columns. A plane of either that has all of the other outside settles it.
func (c *column) shared(k *knife, other *column, work *convex) float64 {
	var cuts uint64 // the planes that have something of the other on both sides
	for i := range c.planes {
		in, out := other.body.sides(&c.planes[i])
		if !in {
			return 0
		}
		if out {
			cuts |= 1 << min(i, 63)
		}
	}
	for i := range other.planes {
		if in, _ := c.body.sides(&other.planes[i]); !in {
			return 0
		}
	}
	work.copyOf(&other.body)
	for i := range c.planes {
		if cuts&(1<<min(i, 63)) != 0 && !k.keep(work, c.planes[i]) {
			return 0
		}
	}
	v, _ := work.size()
	return v
}

// moveFrom makes c the body d moved by place.
func (c *convex) moveFrom(d *convex, place mgl64.Mat4) {
	c.copyOf(d)
	for i, p := range c.corners {
		c.corners[i] = mgl64.Vec3{
			place[0]*p[0] + place[4]*p[1] + place[8]*p[2] + place[12],
			place[1]*p[0] + place[5]*p[1] + place[9]*p[2] + place[13],
			place[2]*p[0] + place[6]*p[1] + place[10]*p[2] + place[14]}
	}
}

// rigid tells whether a place turns and shifts and does nothing else.
func rigid(m mgl64.Mat4) bool {
	r := m.Mat3()
	off := r.Transpose().Mul3(r).Sub(mgl64.Ident3())
	for _, x := range off {
		if !(math.Abs(x) < unturned) {
			return false
		}
	}
	last := m.Row(3).Sub(mgl64.Vec4{0, 0, 0, 1})
	return r.Det() > 0 && last.Len() < unturned
}
