package solid

import "github.com/go-gl/mathgl/mgl64"

// HalfSpaces is what lies on the inner side of every plane.
type HalfSpaces []Plane

// noBody is the mean thickness, mm, below which a body is rounding and counts as nothing.
const noBody = 1e-10

// Volume is the volume of the bounded convex body, mm³; 0 when nothing is left. A body larger than a
// hundred metres is cut off there.
func (h HalfSpaces) Volume() float64 {
	inner, ok := h.near()
	if !ok {
		return 0
	}
	// Once to find how large the body is, once more about it to keep digits.
	const far = 5e4
	c, ok := h.within(inner.Sub(mgl64.Vec3{far, far, far}), inner.Add(mgl64.Vec3{far, far, far}), inner)
	if !ok {
		return 0
	}
	lo, hi := boxOf(c.corners)
	room := hi.Sub(lo).Mul(0.25).Add(mgl64.Vec3{1, 1, 1})
	if c, ok = h.within(lo.Sub(room), hi.Add(room), lo.Add(hi).Mul(0.5)); !ok {
		return 0
	}
	volume, area2 := c.size()
	if volume < noBody*area2/4 {
		return 0
	}
	return volume
}

// within is what the planes leave of a box, seen from o.
func (h HalfSpaces) within(lo, hi, o mgl64.Vec3) (convex, bool) {
	var c convex
	var k knife
	c.box(lo.Sub(o), hi.Sub(o))
	for _, p := range h {
		if !k.keep(&c, Plane{p.N, p.D - p.N.Dot(o)}) {
			return c, false
		}
	}
	for i := range c.corners {
		c.corners[i] = c.corners[i].Add(o)
	}
	return c, true
}

// boxOf is the smallest box along the axes that holds all points.
func boxOf(points []mgl64.Vec3) (lo, hi mgl64.Vec3) {
	lo, hi = points[0], points[0]
	for _, p := range points[1:] {
		for a := range 3 {
			lo[a], hi[a] = min(lo[a], p[a]), max(hi[a], p[a])
		}
	}
	return lo, hi
}

// near is a point about which the planes are few millimetres off, to keep digits: where
// three of them meet, as squarely as there are three. Three that are all but parallel to one line meet far
// outside the body.
func (h HalfSpaces) near() (mgl64.Vec3, bool) {
	for _, least := range []float64{0.3, 0.03, 1e-3} {
		if p, ok := h.meeting(least); ok {
			return p, true
		}
	}
	return mgl64.Vec3{}, false
}

// meeting is where three planes meet whose normals span at least so much.
func (h HalfSpaces) meeting(least float64) (mgl64.Vec3, bool) {
	for i := range h {
		for j := range i {
			across := h[i].N.Cross(h[j].N)
			if across.Len() < least {
				continue
			}
			for k := range j {
				if span := across.Dot(h[k].N); span > least || span < -least {
					m := mgl64.Mat3FromRows(h[i].N, h[j].N, h[k].N)
					return m.Inv().Mul3x1(mgl64.Vec3{h[i].D, h[j].D, h[k].D}), true
				}
			}
		}
	}
	return mgl64.Vec3{}, false
}
