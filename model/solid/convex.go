package solid

import "github.com/go-gl/mathgl/mgl64"

// convex is a convex body by its corners and faces, each face a loop of corners counter-clockwise seen from outside.
// Cutting it decides once for each corner on which side it lies, so the body stays closed whatever rounding does:
// where planes all but coincide it may keep a sliver as thin as rounding, never a false volume.
type convex struct {
	corners []mgl64.Vec3
	loops   []int32 // the faces' corners, one face after the other
	ends    []int32 // where each face ends in loops
}

// knife cuts convex bodies; it holds what cutting needs, to be used again.
type knife struct {
	off    []float64
	number []int32 // of each corner after the cut; -1 when it is cut off
	cuts   []cut
	spare  convex
}

// cut is where the plane cuts the edge between two corners, and the cut that follows it round the new face.
type cut struct{ a, b, corner, next int32 }

// copyOf makes c a copy of d.
func (c *convex) copyOf(d *convex) {
	c.corners = append(c.corners[:0], d.corners...)
	c.loops = append(c.loops[:0], d.loops...)
	c.ends = append(c.ends[:0], d.ends...)
}

// box makes c the box between two corners.
func (c *convex) box(lo, hi mgl64.Vec3) {
	c.corners, c.loops, c.ends = c.corners[:0], c.loops[:0], c.ends[:0]
	for i := range 8 {
		p := lo
		for a := range 3 {
			if i>>a&1 == 1 {
				p[a] = hi[a]
			}
		}
		c.corners = append(c.corners, p)
	}
	c.loops = append(c.loops, 0, 2, 3, 1, 4, 5, 7, 6, 0, 1, 5, 4, 2, 6, 7, 3, 0, 4, 6, 2, 1, 3, 7, 5)
	c.ends = append(c.ends, 4, 8, 12, 16, 20, 24)
}

// keep leaves of the body what lies on the inner side of the plane; false when nothing is left.
func (k *knife) keep(c *convex, p Plane) bool {
	k.off, k.number = k.off[:0], k.number[:0]
	k.spare.corners = k.spare.corners[:0]
	for _, q := range c.corners {
		d := p.N[0]*q[0] + p.N[1]*q[1] + p.N[2]*q[2] - p.D
		k.off = append(k.off, d)
		if d > 0 {
			k.number = append(k.number, -1)
			continue
		}
		k.number = append(k.number, int32(len(k.spare.corners)))
		k.spare.corners = append(k.spare.corners, q)
	}
	switch len(k.spare.corners) {
	case len(c.corners):
		return true
	case 0:
		return false
	}
	k.faces(c)
	k.lid()
	*c, k.spare = k.spare, *c
	return true
}

// faces puts what is left of the body's faces into the spare.
func (k *knife) faces(c *convex) {
	s := &k.spare
	s.loops, s.ends, k.cuts = s.loops[:0], s.ends[:0], k.cuts[:0]
	first := int32(0)
	for _, end := range c.ends {
		loop := c.loops[first:end]
		first = end
		begin := len(s.loops)
		out := int32(-1) // the cut by which the face was left
		into := int32(-1)
		a := loop[len(loop)-1]
		for _, b := range loop {
			if (k.number[a] < 0) != (k.number[b] < 0) {
				at := k.cutOf(c, a, b)
				s.loops = append(s.loops, k.cuts[at].corner)
				switch {
				case k.number[b] < 0:
					out = at
				case out >= 0:
					k.cuts[at].next = out
					out = -1
				default:
					into = at
				}
			}
			if k.number[b] >= 0 {
				s.loops = append(s.loops, k.number[b])
			}
			a = b
		}
		if into >= 0 {
			k.cuts[into].next = out
		}
		s.close(begin)
	}
}

// close ends the face whose loop begins there; one of two corners is nothing.
func (c *convex) close(begin int) {
	if len(c.loops) < begin+3 {
		c.loops = c.loops[:begin]
		return
	}
	c.ends = append(c.ends, int32(len(c.loops)))
}

// cutOf finds or makes the cut of the edge between two corners.
func (k *knife) cutOf(c *convex, a, b int32) int32 {
	if a > b {
		a, b = b, a
	}
	for i := range k.cuts {
		if k.cuts[i].a == a && k.cuts[i].b == b {
			return int32(i)
		}
	}
	p, q := &c.corners[a], &c.corners[b]
	t := k.off[a] / (k.off[a] - k.off[b])
	k.cuts = append(k.cuts, cut{a: a, b: b, corner: int32(len(k.spare.corners)), next: -1})
	k.spare.corners = append(k.spare.corners, mgl64.Vec3{
		p[0] + t*(q[0]-p[0]), p[1] + t*(q[1]-p[1]), p[2] + t*(q[2]-p[2])})
	return int32(len(k.cuts) - 1)
}

// lid closes the spare where the plane cut it.
func (k *knife) lid() {
	s := &k.spare
	for i := range k.cuts {
		begin := len(s.loops)
		for at := int32(i); k.cuts[at].next >= 0; {
			s.loops = append(s.loops, k.cuts[at].corner)
			k.cuts[at].next, at = -1, k.cuts[at].next
		}
		s.close(begin)
	}
}

// size is the body's volume, mm³, and twice the area of its boundary, mm².
func (c *convex) size() (volume, area2 float64) {
	o := c.corners[0]
	first := int32(0)
	for _, end := range c.ends {
		loop := c.loops[first:end]
		first = end
		p := c.corners[loop[0]]
		var sum mgl64.Vec3
		u := c.corners[loop[1]].Sub(p)
		for _, j := range loop[2:] {
			v := c.corners[j].Sub(p)
			sum = sum.Add(u.Cross(v))
			u = v
		}
		volume += sum.Dot(p.Sub(o)) / 6
		area2 += sum.Len()
	}
	return volume, area2
}
