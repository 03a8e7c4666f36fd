package solid

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"
)

// drawBoard is a random convex board with leaning walls and up to four openings, each in its own
// quarter: round, leaning round, a slot, or a polygon. volume is its closed form.
func drawBoard(t *rapid.T) (b Board, openings int, volume float64) {
	b.Thickness = rapid.Float64Range(5, 40).Draw(t, "thickness")
	n := rapid.IntRange(3, 9).Draw(t, "walls")
	turn := rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn")
	for i := range n {
		// Walls tangent to a circle, so that the figure is convex whatever their leans.
		a := turn + 2*math.Pi*(float64(i)+rapid.Float64Range(-0.2, 0.2).Draw(t, "shift"))/float64(n)
		lean := rapid.SampledFrom([]float64{0, 0, 6 * deg, -6 * deg, 0.01 * deg, 15 * deg}).Draw(t, "lean")
		const r = 200
		b.Outline = append(b.Outline, flat(fmt.Sprintf("wall %d", i), r*math.Cos(a), r*math.Sin(a), math.Cos(a), math.Sin(a), lean))
	}
	planes := HalfSpaces{{mgl64.Vec3{0, 0, 1}, 0}, {mgl64.Vec3{0, 0, -1}, b.Thickness}}
	for _, w := range b.Outline {
		planes = append(planes, w.Plane)
	}
	volume = planes.Volume()
	openings = rapid.IntRange(0, 4).Draw(t, "openings")
	for i := range openings {
		x, y := 60*math.Cos(float64(i)*math.Pi/2), 60*math.Sin(float64(i)*math.Pi/2)
		r := rapid.Float64Range(1, 20).Draw(t, "radius")
		tag := fmt.Sprintf("opening %d", i)
		switch rapid.IntRange(0, 3).Draw(t, "kind") {
		case 0:
			b.Openings = append(b.Openings, drillHole(tag, x, y, r))
			volume -= math.Pi * r * r * b.Thickness
		case 1:
			lean := rapid.Float64Range(-20, 20).Draw(t, "hole's lean") * deg
			l := drillHole(tag, x, y, r)
			l[0].Round.Axis = mgl64.Vec3{math.Sin(lean), 0, math.Cos(lean)}
			b.Openings = append(b.Openings, l)
			volume -= math.Pi * r * r * b.Thickness / math.Cos(lean)
		case 2:
			b.Openings = append(b.Openings, slotLoop(tag, x, y, 2*r, r, rapid.Float64Range(-3, 3).Draw(t, "slot's turn")))
			volume -= (math.Pi*r*r/4 + r*r) * b.Thickness
		case 3:
			k := rapid.IntRange(3, 8).Draw(t, "corners")
			b.Openings = append(b.Openings, facetedHole(tag, x, y, r, k))
			volume -= float64(k) / 2 * math.Sin(2*math.Pi/float64(k)) * r * r * b.Thickness
		}
	}
	return b, openings, volume
}

func TestRandomBoards(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, openings, volume := drawBoard(t)
		s, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
		if s.Genus() != openings {
			t.Fatalf("genus %d with %d openings", s.Genus(), openings)
		}
		if d := math.Abs(s.Volume() - volume); d > exact*volume {
			t.Fatalf("volume %.15g, want %.15g", s.Volume(), volume)
		}
		if n := s.AreaNormalSum().Len(); n > 1e-12*s.Area() {
			t.Fatalf("normals sum to %g over %g mm²", n, s.Area())
		}
		before := math.Inf(1)
		for _, tol := range []float64{0.5, 0.05, 0.005} {
			m := s.Flatten(tol)
			if err := m.Check(); err != nil {
				t.Fatal(err)
			}
			d := math.Abs(m.Volume() - volume)
			if d > before+1e-9*volume || d > tol*4*2*math.Pi*20*40/math.Cos(20*deg)+1e-9 {
				t.Fatalf("tolerance %g: mesh is %g mm³ off, %g before", tol, d, before)
			}
			before = d
		}
	})
}

// A solid's centroid agrees with sampling on a fine grid, cell by cell, and its Contains with the closed volume.
func TestContainsAgreesWithVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, _, volume := drawBoard(t)
		s, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		lo, hi := s.Bounds()
		d := hi.Sub(lo)
		in, total := 0, 0
		finder := s.Finder()
		var sum mgl64.Vec3
		// A point somewhere in every cell of the box: on a lattice slanting sides may fall in step with the points.
		const nx, ny, nz = 28, 22, 5
		r := rand.New(rand.NewPCG(1, 2))
		for i := range nx * ny * nz {
			at := func(cell, of int) float64 { return (float64(cell) + r.Float64()) / float64(of) }
			p := lo.Add(mgl64.Vec3{d[0] * at(i%nx, nx), d[1] * at(i/nx%ny, ny), d[2] * at(i/nx/ny, nz)})
			total++
			if s.Contains(p) != finder.Contains(p) {
				t.Fatalf("%v: Contains says %t, a Finder the opposite", p, s.Contains(p))
			}
			if s.Contains(p) {
				in++
				sum = sum.Add(p)
			}
		}
		box := d[0] * d[1] * d[2]
		if got := box * float64(in) / float64(total); math.Abs(got-volume) > 0.03*box {
			t.Fatalf("sampled volume %g, closed form %g", got, volume)
		}
		if off := sum.Mul(1 / float64(in)).Sub(s.Centroid()); math.Abs(off[0])+math.Abs(off[1]) > 12 || math.Abs(off[2]) > 0.06*b.Thickness {
			t.Fatalf("sampled centroid is %v off of %v, %d in", off, d, in)
		}
	})
}

// Centroids in closed form: a board moved moves its centroid, a hole moves it the other way.
func TestCentroidOfHoles(t *testing.T) {
	whole := 400 * 250 * 20.0
	for _, lean := range []float64{0, 10 * deg} {
		l := drillHole("hole", 100, 30, 15)
		l[0].Round.Axis = mgl64.Vec3{math.Sin(lean), 0, math.Cos(lean)}
		s := build(t, Board{Thickness: 20, Outline: block(400, 250, 0, 0), Openings: []Loop{l}})
		v := math.Pi * 225 * 20 / math.Cos(lean)
		at := mgl64.Vec3{100 - 10*math.Tan(lean), 30, -10}
		want := mgl64.Vec3{0, 0, -10}.Mul(whole).Sub(at.Mul(v)).Mul(1 / (whole - v))
		if d := s.Centroid().Sub(want).Len(); d > 1e-11 {
			t.Errorf("lean %g: centroid %v, want %v", lean/deg, s.Centroid(), want)
		}
	}
}

func TestMomentsOfArcs(t *testing.T) {
	for _, h := range []float64{1e-6, 0.01, 0.4999, 0.5001, 1, math.Pi / 2, math.Pi, -0.3, -2} {
		m := momentsOver(h)
		for _, c := range []struct {
			name string
			i, j int
			got  float64
		}{{"00", 0, 0, m.m00}, {"10", 1, 0, m.m10}, {"20", 2, 0, m.m20}, {"02", 0, 2, m.m02}, {"30", 3, 0, m.m30}, {"12", 1, 2, m.m12}} {
			want := gauss16(func(x float64) float64 {
				half := math.Sin(x / 2)
				return math.Pow(-2*half*half, float64(c.i)) * math.Pow(math.Sin(x), float64(c.j))
			}, -h, h, 4)
			near(t, fmt.Sprintf("moment %s over %g", c.name, h), c.got, want, 1e-11)
		}
	}
}

func TestHalfSpaces(t *testing.T) {
	box := HalfSpaces{{mgl64.Vec3{1, 0, 0}, 3}, {mgl64.Vec3{-1, 0, 0}, 1}, {mgl64.Vec3{0, 1, 0}, 2},
		{mgl64.Vec3{0, -1, 0}, 2}, {mgl64.Vec3{0, 0, 1}, 0}, {mgl64.Vec3{0, 0, -1}, 5}}
	near(t, "box", box.Volume(), 4*4*5, exact)
	near(t, "the same plane twice", append(box, box[0]).Volume(), 80, exact)
	near(t, "a plane that only touches", append(box, Plane{mgl64.Vec3{1, 1, 0}.Normalize(), 5 / math.Sqrt2}).Volume(), 80, exact)
	near(t, "a corner off", append(box, Plane{mgl64.Vec3{1, 1, 1}.Normalize(), 3 / math.Sqrt(3)}).Volume(), 80-8.0/6, exact)
	for name, h := range map[string]HalfSpaces{
		"empty": append(box, Plane{mgl64.Vec3{-1, 0, 0}, -4}),
		"flat":  append(box, Plane{mgl64.Vec3{-1, 0, 0}, -3}),
		"none":  {},
	} {
		if v := h.Volume(); v != 0 {
			t.Errorf("%s: %g", name, v)
		}
	}
}

// Opposite planes that coincide, or pass each other, by no more than rounding leave nothing; farther apart they leave
// the plate between them.
func TestHalfSpacesOfPlanesThatCoincide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, most float64) float64 { return rapid.Float64Range(-most, most).Draw(t, name) }
		gap := f("sign", 1) * math.Pow(10, -rapid.Float64Range(0, 17).Draw(t, "gap"))
		by := mgl64.Translate3D(f("x", 900), f("y", 900), f("z", 900)).Mul4(
			mgl64.HomogRotate3D(f("turn", 3), mgl64.Vec3{f("u", 1), f("v", 1), 1.5}.Normalize()))
		h := HalfSpaces{{mgl64.Vec3{1, 0, 0}, 200}, {mgl64.Vec3{-1, 0, 0}, 200}, {mgl64.Vec3{0, 1, 0}, 150},
			{mgl64.Vec3{0, -1, 0}, 150}, {mgl64.Vec3{0, 0, 1}, gap}, {mgl64.Vec3{0, 0, -1}, 0}}
		for i := range h {
			h[i] = h[i].Transform(by)
		}
		// Planes are known to some 1e-13 mm at a metre from the origin.
		const rounding = 2e-12
		want := math.Max(gap, 0) * 400 * 300
		if v := h.Volume(); math.Abs(v-want) > rounding*400*300+1e-12*want && !(v == 0 && gap < 2*noBody) {
			t.Fatalf("gap %g: volume %g, want %g", gap, v, want)
		}
		if v := h.Volume(); gap < noBody/4 && v > 1e-9 {
			t.Fatalf("gap %g: volume %g, want nothing", gap, v)
		}
	})
}

func TestTransformKeepsVolume(t *testing.T) {
	s := build(t, slab(6, 0))
	by := mgl64.Translate3D(100, -20, 7).Mul4(mgl64.HomogRotate3D(1.1, mgl64.Vec3{1, 2, 3}.Normalize()))
	m := s.Flatten(0.02)
	near(t, "moved mesh", m.Transform(by).Volume(), m.Volume(), 1e-12)
	p := Plane{mgl64.Vec3{0, 0.6, 0.8}, 12}
	q := p.Transform(by)
	for _, x := range []mgl64.Vec3{{0, 20, 0}, {5, 0, 15}} {
		if d := q.N.Dot(by.Mul4x1(x.Vec4(1)).Vec3()) - q.D; math.Abs(d) > 1e-12 {
			t.Errorf("point of the plane is %g off the moved plane", d)
		}
	}
}

func BenchmarkFinder(b *testing.B) {
	f := build(b, slab(6, 0)).Finder()
	for b.Loop() {
		f.Contains(mgl64.Vec3{20, 30, -10})
	}
}

func BenchmarkContains(b *testing.B) {
	s := build(b, slab(6, 0))
	for b.Loop() {
		s.Contains(mgl64.Vec3{20, 30, -10})
	}
}
