package part_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// Round-overs on the edges of a cube leave, of the cube of one radius at a corner, what two or
// three crossed cylinders have in common: an eighth of Steinmetz' solids, 16/3 r³ and (16 − 8√2) r³,
// https://mathworld.wolfram.com/SteinmetzSolid.html (from memory).
func TestSharedAtACubesCorner(t *testing.T) {
	s := part.Strip{Radius: 1, Inside: 90 * measure.Degree}
	one, square := 1-math.Pi/4, 90*measure.Degree
	two := part.SharedByTwo(s, s, square)
	if want := 2*one - (1 - 2.0/3); math.Abs(two-want) > 1e-7 {
		t.Errorf("two share %.9g, want %.9g", two, want)
	}
	three := part.SharedByThree(s, s, s, square)
	if want := 1 - (2 - math.Sqrt2) - 3*one + 3*two; math.Abs(three-want) > 1e-3*want {
		t.Errorf("three share %.9g, want %.9g", three, want)
	}
}

// corner is three faces through the origin; the wood is behind all of them.
type threeFaces [3]mgl64.Vec3

// takes tells whether a round-over of radius r on the edge of faces i and j takes a point.
func (c threeFaces) takes(p mgl64.Vec3, i, j int, r float64) bool {
	n, m := c[i], c[j]
	k := n.Dot(m)
	// The round's axis stands r behind both faces; in the plane of the normals:
	axis := n.Add(m).Mul(-r / (1 + k))
	e := n.Cross(m).Normalize()
	off := p.Sub(axis)
	off = off.Sub(e.Mul(off.Dot(e)))
	// between the two tangent points as seen from the axis: off = x·n + y·m with x, y ≥ 0
	x, y := (off.Dot(n)-k*off.Dot(m))/(1-k*k), (off.Dot(m)-k*off.Dot(n))/(1-k*k)
	return x >= 0 && y >= 0 && off.Len() > r
}

func (c threeFaces) inside(i, j int) measure.Angle {
	return measure.Angle(math.Pi - math.Acos(c[i].Dot(c[j])))
}

// between is the angle on face f of its edges with the other two faces.
func (c threeFaces) between(f int) measure.Angle {
	g, h := c[(f+1)%3], c[(f+2)%3]
	n := c[f]
	// the outward normals' parts in the face turn by 180° less the angle
	a, b := g.Sub(n.Mul(n.Dot(g))).Normalize(), h.Sub(n.Mul(n.Dot(h))).Normalize()
	return measure.Angle(math.Pi - math.Acos(a.Dot(b)))
}

// Corners that are not square, against points thrown into a box.
func TestSharedAtLeaningCorners(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 8))
	sin, cos := math.Sincos(12 * math.Pi / 180)
	for _, c := range []threeFaces{
		{{cos, 0, sin}, {0, -cos, sin}, {0, 0, -1}}, // a side's foot, splayed both ways
		{{-cos, 0, -sin}, {0, -cos, sin}, {0, 0, -1}},
		{{cos, 0, sin}, {0, -cos, -sin}, {0, 0, 1}},
	} {
		const r, n = 3.0, 2000000
		both, all := 0, 0
		const box = 9.0
		for range n {
			p := mgl64.Vec3{rng.Float64() - 0.5, rng.Float64() - 0.5, rng.Float64() - 0.5}.Mul(box)
			if p.Dot(c[0]) > 0 || p.Dot(c[1]) > 0 || p.Dot(c[2]) > 0 {
				continue
			}
			if c.takes(p, 0, 2, r) && c.takes(p, 1, 2, r) {
				both++
				if c.takes(p, 0, 1, r) {
					all++
				}
			}
		}
		strip := func(i, j int) part.Strip { return part.Strip{Radius: r, Inside: c.inside(i, j)} }
		a, b, down, angle := strip(0, 2), strip(1, 2), strip(0, 1), c.between(2)
		for _, f := range []struct {
			what      string
			got       float64
			hits      int
			tolerance float64
		}{
			{"two", part.SharedByTwo(a, b, angle), both, 0.02},
			{"three", part.SharedByThree(a, b, down, angle), all, 0.03},
		} {
			thrown := float64(f.hits) / n * box * box * box
			if math.Abs(f.got-thrown) > f.tolerance*thrown {
				t.Errorf("%v: %s share %.5g mm³, by points %.5g", c, f.what, f.got, thrown)
			}
		}
	}
}

// The lost section's middle, against thin slices.
func TestCentroidOfTheLostSection(t *testing.T) {
	for _, degrees := range []float64{78, 90, 102} {
		s := part.Strip{Radius: 3, Inside: measure.Angle(degrees) * measure.Degree}
		half := degrees / 2 * math.Pi / 180
		centre := 3 / math.Sin(half)
		area, moment := 0.0, 0.0
		const n = 200000
		for i := range n { // slices square to the bisector
			x := (float64(i) + 0.5) / n * centre
			wide := x * math.Tan(half)
			if end := 3 / math.Tan(half) * math.Cos(half); x > end {
				wide = 0
				if x < centre {
					wide = math.Max(0, (centre-x)/math.Tan(half))
				}
			}
			if d := centre - x; d < 3 {
				wide -= math.Min(wide, math.Sqrt(9-d*d))
			}
			area += wide
			moment += wide * x
		}
		if want := moment / area; math.Abs(s.Centroid()-want) > 1e-5*want {
			t.Errorf("%g°: %.8g mm behind the edge, by slices %.8g", degrees, s.Centroid(), want)
		}
	}
}
