package solid

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"
)

// gauss16 integrates f from a to b: nodes and weights of the 16-point rule, found by Newton's method on the
// Legendre polynomial, on each of n equal parts.
func gauss16(f func(float64) float64, a, b float64, n int) float64 {
	const order = 16
	var sum float64
	for i := range order {
		x := math.Cos(math.Pi * (float64(i) + 0.75) / (order + 0.5))
		var slope float64
		for range 50 {
			p, q := 1.0, 0.0
			for j := range order {
				p, q = (float64(2*j+1)*x*p-float64(j)*q)/float64(j+1), p
			}
			slope = order * (x*p - q) / (x*x - 1)
			x -= p / slope
		}
		w := 2 / ((1 - x*x) * slope * slope)
		h := (b - a) / float64(n)
		for k := range n {
			sum += w * h / 2 * f(a+h*(float64(k)+0.5+x/2))
		}
	}
	return sum
}

// archBoard is a side board whose right end leans by lean and has an arch of the given chord and rise,
// measured on the outer face; the arch's own direction leans by axis towards the end.
func archBoard(chord, rise, lean, axis float64) Board {
	const l, w, t = 260, 250, 20
	r := chord*chord/(8*rise) + rise/2
	out := block(l, w, lean, 0)
	end := out[1]
	end2 := end
	end2.Start = mgl64.Vec2{l / 2, chord / 2}
	end2.Tag = "floor-end, back foot"
	arch := Wall{Tag: "arch", Start: mgl64.Vec2{l / 2, -chord / 2}, Round: &Cylinder{
		Point: mgl64.Vec3{l/2 - rise + r, 0, 0}, Axis: mgl64.Vec3{math.Sin(axis), 0, math.Cos(axis)}, Radius: r, Hollow: true}}
	return Board{Thickness: t, Outline: Loop{out[0], end, arch, end2, out[2], out[3]}}
}

// archArea is the arch's area at depth z: a circular segment, stretched along the board when the arch leans.
func archArea(chord, rise, lean, axis, z float64) float64 {
	r := chord*chord/(8*rise) + rise/2
	stretch := 1 / math.Cos(axis)
	centre := 130 - rise + r - z*math.Tan(axis)
	// Distance from the ellipse's middle to the end, in the circle's own measure.
	d := (centre - (130 + z*math.Tan(lean))) / stretch
	half := math.Atan2(math.Sqrt((r-d)*(r+d)), d)
	return stretch * r * r * (half - math.Sin(2*half)/2)
}

func TestArchOnLeaningEnd(t *testing.T) {
	for _, c := range []struct {
		name                    string
		chord, rise, lean, axis float64
	}{
		{"plumb end", 150, 45, 0, 0},
		{"end leans 6", 150, 45, 6 * deg, 0},
		{"end leans 6, arch follows it", 150, 45, 6 * deg, -6 * deg},
		{"end leans 6, arch leans 10", 150, 45, 6 * deg, 10 * deg},
		{"undercut end", 150, 45, -12 * deg, 0},
		{"half circle", 100, 50, 6 * deg, 0},
		{"flat arch", 200, 2, 0.01 * deg, 0},
		{"more than half a circle", 60, 50, 6 * deg, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := archBoard(c.chord, c.rise, c.lean, c.axis)
			r := c.chord*c.chord/(8*c.rise) + c.rise/2
			plain := build(t, Board{Thickness: 20, Outline: block(260, 250, c.lean, 0)}).Volume()
			s := build(t, b)
			cut := gauss16(func(z float64) float64 { return archArea(c.chord, c.rise, c.lean, c.axis, z) }, 0, 20, 4)
			near(t, "volume", s.Volume(), plain-cut, 1e-12)
			if s.Genus() != 0 || len(s.Faces) != 8 {
				t.Errorf("genus %d, %d faces", s.Genus(), len(s.Faces))
			}
			for _, tol := range []float64{1, 0.02, 1e-4} {
				m := s.Flatten(tol)
				if err := m.Check(); err != nil {
					t.Fatal(err)
				}
				if d := math.Abs(m.Volume() - s.Volume()); d > tol*2*math.Pi*r*25 {
					t.Errorf("tolerance %g: mesh is %g mm³ off", tol, d)
				}
				chordsWithin(t, s, m, tol)
			}
		})
	}
}

// chordsWithin sees that every chord of the mesh stays within the tolerance of its arc.
func chordsWithin(t *testing.T, s *Solid, m *Mesh, tol float64) {
	t.Helper()
	for _, e := range m.Edges {
		if e.Edge < 0 || s.Edges[e.Edge].Arc == 0 {
			continue
		}
		mid := m.Vertices[e.From].Add(m.Vertices[e.To]).Mul(0.5)
		edge := s.Edges[e.Edge]
		curve := s.Curve(&edge)
		round := s.Faces[edge.Left].Round
		if round == nil {
			round = s.Faces[edge.Right].Round
		}
		x, y := round.frame()
		q := mid.Sub(round.Point)
		if d := curve.at(math.Atan2(q.Dot(y), q.Dot(x)) - curve.Base).Sub(mid).Len(); d > tol*1.001+1e-9 {
			t.Fatalf("a chord is %g mm off its arc, allowed %g", d, tol)
		}
	}
}

// A slot's round ends are tangent to its sides.
func slotLoop(tag string, x, y, length, width, turn float64) Loop {
	r, h := width/2, (length-width)/2
	sin, cos := math.Sincos(turn)
	at := func(u, v float64) (float64, float64) { return x + u*cos - v*sin, y + u*sin + v*cos }
	side := func(u, v, nu, nv float64) Wall {
		px, py := at(u, v)
		return flat(tag, px, py, nu*cos-nv*sin, nu*sin+nv*cos, 0)
	}
	round := func(u, v float64, start mgl64.Vec2) Wall {
		px, py := at(u, v)
		return Wall{Tag: tag, Start: start, Round: &Cylinder{Point: mgl64.Vec3{px, py, 0}, Axis: mgl64.Vec3{0, 0, 1}, Radius: r, Hollow: true}}
	}
	p := func(u, v float64) mgl64.Vec2 { a, b := at(u, v); return mgl64.Vec2{a, b} }
	return Loop{ // clockwise
		side(-h, r, 0, -1), round(h, 0, p(h, r)), side(h, -r, 0, 1), round(-h, 0, p(-h, -r)),
	}
}

func TestSlotsAreTangent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Float64Range(3, 40).Draw(t, "width")
		l := w + rapid.Float64Range(0.5, 60).Draw(t, "longer")
		turn := rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "turn")
		s, err := Board{Thickness: 20, Outline: block(400, 250, 0, 0), Openings: []Loop{slotLoop("slot", 3, -2, l, w, turn)}}.Build()
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
		want := 400*250*20 - 20*(math.Pi*w*w/4+(l-w)*w)
		if math.Abs(s.Volume()-want) > 1e-11*want {
			t.Fatalf("volume %.12g, want %.12g", s.Volume(), want)
		}
		smooth := 0
		for _, e := range s.Edges {
			if e.Smooth {
				smooth++
			}
		}
		if smooth != 4 || s.Genus() != 1 {
			t.Fatalf("%d smooth edges, genus %d", smooth, s.Genus())
		}
		if err := s.Flatten(0.05).Check(); err != nil {
			t.Fatal(err)
		}
	})
}
