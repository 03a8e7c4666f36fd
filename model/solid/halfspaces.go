package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// HalfSpaces is what lies on the inner side of every plane.
type HalfSpaces []Plane

// Volume is the volume of the bounded convex body, mm³; 0 when nothing is left. A body larger than a
// hundred metres is cut off there.
func (h HalfSpaces) Volume() float64 {
	inner, ok := h.near()
	if !ok {
		return 0
	}
	// Once to find how large the body is, once more about its middle to keep digits.
	_, lo, hi := h.about(inner, 1e5)
	if !(hi[0] >= lo[0]) {
		return 0
	}
	size := hi.Sub(lo).Len()
	sum, _, _ := h.about(lo.Add(hi).Mul(0.5), 2*size+1)
	return max(sum, 0)
}

// about finds every face's polygon by clipping a square on its plane, whose corners are `far` from the
// foot of o, and sums the cones from o. lo and hi are the box of all corners.
func (h HalfSpaces) about(o mgl64.Vec3, far float64) (sum float64, lo, hi mgl64.Vec3) {
	lo, hi = mgl64.Vec3{math.Inf(1), math.Inf(1), math.Inf(1)}, mgl64.Vec3{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	poly, next := make([]mgl64.Vec3, 0, 16), make([]mgl64.Vec3, 0, 16)
	for i, p := range h {
		if h.repeats(i) {
			continue
		}
		x, y := (&Cylinder{Axis: p.N}).frame()
		d := p.D - p.N.Dot(o)
		c := p.N.Mul(d)
		poly = append(poly[:0], c.Add(x.Mul(far)), c.Add(y.Mul(far)), c.Sub(x.Mul(far)), c.Sub(y.Mul(far)))
		for j, q := range h {
			if j != i && !samePlane(p, q) {
				next = clipPolygon(next[:0], poly, Plane{q.N, q.D - q.N.Dot(o)})
				poly, next = next, poly
			}
		}
		var area float64
		for k, v := range poly {
			if k > 0 && k+1 < len(poly) {
				area += p.N.Dot(v.Sub(poly[0]).Cross(poly[k+1].Sub(poly[0]))) / 2
			}
			for a := range 3 {
				lo[a], hi[a] = math.Min(lo[a], o[a]+v[a]), math.Max(hi[a], o[a]+v[a])
			}
		}
		sum += d * area / 3
	}
	return sum, lo, hi
}

// repeats tells whether a plane before i is the same.
func (h HalfSpaces) repeats(i int) bool {
	for _, q := range h[:i] {
		if samePlane(q, h[i]) {
			return true
		}
	}
	return false
}

// near is a point about which the planes are few millimetres off, to keep digits: where
// three of them meet.
func (h HalfSpaces) near() (mgl64.Vec3, bool) {
	for i := range h {
		for j := range i {
			across := h[i].N.Cross(h[j].N)
			if across.Len() < 1e-3 {
				continue
			}
			for k := range j {
				m := mgl64.Mat3FromRows(h[i].N, h[j].N, h[k].N)
				if det := m.Det(); det > 1e-3 || det < -1e-3 {
					return m.Inv().Mul3x1(mgl64.Vec3{h[i].D, h[j].D, h[k].D}), true
				}
			}
		}
	}
	return mgl64.Vec3{}, false
}

// clipPolygon appends to out what of the polygon lies on the inner side of the plane.
func clipPolygon(out, poly []mgl64.Vec3, p Plane) []mgl64.Vec3 {
	for i, a := range poly {
		b := poly[(i+1)%len(poly)]
		da, db := p.N.Dot(a)-p.D, p.N.Dot(b)-p.D
		if da <= 0 {
			out = append(out, a)
		}
		if (da < 0) != (db < 0) && da != 0 && db != 0 {
			out = append(out, a.Add(b.Sub(a).Mul(da/(da-db))))
		}
	}
	return out
}
