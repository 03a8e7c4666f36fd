package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// linear is a + b (cos τ - 1) + c sin τ, with τ the angle from the middle of an arc. Counting from there
// keeps the digits of short arcs on very long ellipses, which planes almost along a cylinder make.
type linear struct{ a, b, c float64 }

// moments are the integrals of (cos τ - 1)^i (sin τ)^j from -h to h. Those with an odd j are 0.
type moments struct{ m00, m10, m20, m02, m30, m12 float64 }

// shortArc is the half angle below which the closed forms lose digits; the eight-point rule is
// exact there, since powers of h beyond its degree 15 are below rounding.
const shortArc = 0.5

// Nodes and weights of the eight-point Gauss-Legendre rule, Abramowitz and Stegun, table 25.4.
var (
	gaussNodes   = [4]float64{0.183434642495650, 0.525532409916329, 0.796666477413627, 0.960289856497536}
	gaussWeights = [4]float64{0.362683783378362, 0.313706645877887, 0.222381034453374, 0.101228536290376}
)

// momentsOver gives the integrals over an arc of half angle h, negative for one walked backwards.
func momentsOver(h float64) moments {
	if math.Abs(h) < shortArc {
		return shortMoments(h)
	}
	s, c := math.Sincos(h)
	sc, s3 := s*c, s*s*s/3
	return moments{
		m00: 2 * h,
		m10: 2 * (s - h),
		m20: 3*h + sc - 4*s,
		m02: h - sc,
		m30: 2*(s-s3) - 3*(h+sc) + 6*s - 2*h,
		m12: 2*s3 - (h - sc),
	}
}

func shortMoments(h float64) moments {
	m := moments{m00: 2 * h}
	for i, x := range gaussNodes {
		w := 2 * h * gaussWeights[i]
		half := math.Sin(h * x / 2)
		c := -2 * half * half
		s := math.Sin(h * x)
		m.m10 += w * c
		m.m20 += w * c * c
		m.m02 += w * s * s
		m.m30 += w * c * c * c
		m.m12 += w * c * s * s
	}
	return m
}

// one integrates p.
func (m *moments) one(p linear) float64 { return p.a*m.m00 + p.b*m.m10 }

// two integrates p q.
func (m *moments) two(p, q linear) float64 {
	return p.a*m.one(q) + p.b*(q.a*m.m10+q.b*m.m20) + p.c*q.c*m.m02
}

// three integrates p q r.
func (m *moments) three(p, q, r linear) float64 {
	return p.a*m.two(q, r) +
		p.b*(q.a*(r.a*m.m10+r.b*m.m20)+q.b*(r.a*m.m20+r.b*m.m30)+q.c*r.c*m.m12) +
		p.c*(q.a*r.c*m.m02+q.b*r.c*m.m12+q.c*(r.a*m.m02+r.b*m.m12))
}

// about is an arc seen from its middle: the point at τ is p + m (cos τ - 1) + d sin τ.
type about struct {
	t, h    float64 // the middle's angle, and half the arc's
	p, m, d mgl64.Vec3
}

// about finds the arc's middle from its ends, so that it goes with them to the last digit.
func (c *Curve) about(from, to mgl64.Vec3) about {
	t := (c.T0 + c.T1) / 2
	a := about{t: c.Base + t, h: (c.T1 - c.T0) / 2}
	sin, cos := math.Sincos(t)
	a.m = c.U.Mul(cos).Add(c.V.Mul(sin))
	a.d = c.V.Mul(cos).Sub(c.U.Mul(sin))
	half := math.Sin(a.h / 2)
	a.p = from.Add(to).Mul(0.5).Add(a.m.Mul(2 * half * half))
	return a
}
