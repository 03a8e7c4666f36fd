package solid

import "math"

// linear is a + b cos t + c sin t.
type linear struct{ a, b, c float64 }

// moments holds the integrals of cos^i t sin^j t over one stretch of t, for i+j <= 3.
type moments [4][4]float64

// momentsOver gives the closed forms between two angles.
func momentsOver(t0, t1 float64) moments {
	s0, c0 := math.Sincos(t0)
	s1, c1 := math.Sincos(t1)
	d := func(f func(s, c float64) float64) float64 { return f(s1, c1) - f(s0, c0) }
	dt := t1 - t0
	sc := s1*c1 - s0*c0
	var m moments
	m[0][0] = dt
	m[1][0] = s1 - s0
	m[0][1] = c0 - c1
	m[2][0] = (dt + sc) / 2
	m[1][1] = (s1*s1 - s0*s0) / 2
	m[0][2] = (dt - sc) / 2
	m[3][0] = d(func(s, _ float64) float64 { return s - s*s*s/3 })
	m[2][1] = d(func(_, c float64) float64 { return -c * c * c / 3 })
	m[1][2] = d(func(s, _ float64) float64 { return s * s * s / 3 })
	m[0][3] = d(func(_, c float64) float64 { return c*c*c/3 - c })
	return m
}

// one integrates p.
func (m *moments) one(p linear) float64 {
	return p.a*m[0][0] + p.b*m[1][0] + p.c*m[0][1]
}

// two integrates p q.
func (m *moments) two(p, q linear) float64 {
	return p.a*m.one(q) +
		p.b*(q.a*m[1][0]+q.b*m[2][0]+q.c*m[1][1]) +
		p.c*(q.a*m[0][1]+q.b*m[1][1]+q.c*m[0][2])
}

// three integrates p q r.
func (m *moments) three(p, q, r linear) float64 {
	sum := p.a * m.two(q, r)
	// cos t times q r, then sin t times q r.
	sum += p.b * (q.a*r.a*m[1][0] + (q.a*r.b+q.b*r.a)*m[2][0] + (q.a*r.c+q.c*r.a)*m[1][1] +
		q.b*r.b*m[3][0] + (q.b*r.c+q.c*r.b)*m[2][1] + q.c*r.c*m[1][2])
	sum += p.c * (q.a*r.a*m[0][1] + (q.a*r.b+q.b*r.a)*m[1][1] + (q.a*r.c+q.c*r.a)*m[0][2] +
		q.b*r.b*m[2][1] + (q.b*r.c+q.c*r.b)*m[1][2] + q.c*r.c*m[0][3])
	return sum
}
