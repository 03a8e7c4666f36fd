package solid

import "github.com/go-gl/mathgl/mgl64"

// HalfSpaces is what lies on the inner side of every plane.
type HalfSpaces []Plane

// Volume is the volume of the bounded convex body, mm³; 0 when nothing is left. Every face's
// polygon is found by clipping a square on its plane that reaches beyond the body; a body
// larger than a hundred metres is cut off there.
func (h HalfSpaces) Volume() float64 {
	const far = 1e5
	inner, ok := h.near()
	if !ok {
		return 0
	}
	var sum float64
	poly, next := make([]mgl64.Vec3, 0, 16), make([]mgl64.Vec3, 0, 16)
	for i, p := range h {
		if h.repeats(i) {
			continue
		}
		x, y := (&Cylinder{Axis: p.N}).frame()
		d := p.D - p.N.Dot(inner)
		c := p.N.Mul(d)
		poly = append(poly[:0], c.Add(x.Mul(far)), c.Add(y.Mul(far)), c.Sub(x.Mul(far)), c.Sub(y.Mul(far)))
		for j, q := range h {
			if j != i {
				next = clipPolygon(next[:0], poly, Plane{q.N, q.D - q.N.Dot(inner)})
				poly, next = next, poly
			}
		}
		var area float64
		for k := 1; k+1 < len(poly); k++ {
			area += p.N.Dot(poly[k].Sub(poly[0]).Cross(poly[k+1].Sub(poly[0]))) / 2
		}
		sum += d * area / 3
	}
	if sum < 0 {
		return 0
	}
	return sum
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
