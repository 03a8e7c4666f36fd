package solid

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"
)

func overlap(t testing.TB, a, b *Solid, place mgl64.Mat4) float64 {
	t.Helper()
	v, err := Overlap(a, b, place)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestOverlapOfPlainBoards(t *testing.T) {
	a := build(t, Board{Thickness: 20, Outline: block(400, 250, 0, 0)})
	quarter := mgl64.HomogRotate3DZ(math.Pi / 2)
	upright := mgl64.HomogRotate3DY(math.Pi / 2) // the board's outer face, z, looks along x
	for _, c := range []struct {
		name  string
		place mgl64.Mat4
		want  float64
	}{
		{"home on itself", mgl64.Ident4(), 400 * 250 * 20},
		{"half along", mgl64.Translate3D(200, 0, 0), 200 * 250 * 20},
		{"end to end", mgl64.Translate3D(400, 0, 0), 0},
		{"face to face", mgl64.Translate3D(0, 0, 20), 0},
		{"a hair in", mgl64.Translate3D(0, 0, 20-1e-6), 400 * 250 * 1e-6},
		{"far off", mgl64.Translate3D(0, 0, 500), 0},
		{"crosswise", quarter, 250 * 250 * 20},
		{"on end through the middle", upright, 20 * 250 * 20},
		{"turned over", mgl64.HomogRotate3DX(math.Pi).Mul4(mgl64.Translate3D(0, 0, 20)), 400 * 250 * 20},
	} {
		if v := overlap(t, a, a, c.place); math.Abs(v-c.want) > 1e-8 {
			t.Errorf("%s: %.12g, want %.12g", c.name, v, c.want)
		}
	}
}

func TestOverlapRefusesWhatIsNoPlace(t *testing.T) {
	a := build(t, Board{Thickness: 20, Outline: block(400, 250, 0, 0)})
	for name, place := range map[string]mgl64.Mat4{
		"mirrored":     mgl64.Scale3D(-1, 1, 1),
		"stretched":    mgl64.Scale3D(1.001, 1, 1),
		"no number":    mgl64.Translate3D(1, 2, 3).Mul(math.NaN()),
		"in one point": {},
	} {
		if _, err := Overlap(a, a, place); !errors.Is(err, ErrPlace) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := Overlap(a, &Solid{}, mgl64.Ident4()); !errors.Is(err, ErrNothing) {
		t.Error(err)
	}
}

// The blocks of any board, with pockets, bores and openings, add up to the flattened solid, and a solid shares with
// itself all that it is.
func TestBlocksAddUp(t *testing.T) {
	check := func(t interface{ Fatalf(string, ...any) }, s *Solid) {
		m, b := s.Flatten(0.05), s.Blocks(0.05)
		if v := b.Volume(); math.Abs(v-m.Volume()) > 1e-11*m.Volume() {
			t.Fatalf("blocks %.15g, mesh %.15g", v, m.Volume())
		}
		if v, err := b.Overlap(b, mgl64.Ident4()); err != nil || math.Abs(v-m.Volume()) > 1e-11*m.Volume() {
			t.Fatalf("shared with itself %.15g (%v), mesh %.15g", v, err, m.Volume())
		}
	}
	for _, b := range []Board{slab(6, 48), slab(6, 0), slab(40, 48), archBoard(150, 45, 6*deg, 10*deg), housingBoard()} {
		check(t, build(t, b))
	}
	rapid.Check(t, func(t *rapid.T) {
		b, _, _ := drawBoard(t)
		s, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		check(t, s)
	})
}

func drawPlace(t *rapid.T, reach float64) mgl64.Mat4 {
	f := func(name string, most float64) float64 { return rapid.Float64Range(-most, most).Draw(t, name) }
	return mgl64.Translate3D(f("x", reach), f("y", reach), f("z", reach/4)).Mul4(
		mgl64.HomogRotate3D(f("turn", math.Pi), mgl64.Vec3{f("u", 1), f("v", 1), f("w", 1) + 1.5}.Normalize()))
}

// Against half-spaces: two convex boards anywhere.
func TestOverlapOfConvexBoardsIsThatOfTheirPlanes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		planes := func(b Board) HalfSpaces {
			h := HalfSpaces{{mgl64.Vec3{0, 0, 1}, 0}, {mgl64.Vec3{0, 0, -1}, b.Thickness}}
			for _, w := range b.Outline {
				h = append(h, w.Plane)
			}
			return h
		}
		a, _, _ := drawBoard(t)
		b, _, _ := drawBoard(t)
		a.Openings, b.Openings = nil, nil
		s, err := a.Build()
		u, err2 := b.Build()
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		place := drawPlace(t, 300)
		all := planes(a)
		for _, p := range planes(b) {
			all = append(all, p.Transform(place))
		}
		got, err := Overlap(s, u, place)
		if want := all.Volume(); err != nil || math.Abs(got-want) > 1e-8+1e-11*want {
			t.Fatalf("%.12g (%v), want %.12g", got, err, want)
		}
		back, err := Overlap(u, s, place.Inv())
		if err != nil || math.Abs(got-back) > 1e-7+1e-10*got {
			t.Fatalf("%.12g one way, %.12g the other (%v)", got, back, err)
		}
	})
}

// Against point sampling: boards with everything in them, anywhere.
func TestOverlapAgreesWithSampling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, _, _ := drawBoard(t)
		s, err := a.Build()
		if err != nil {
			t.Fatal(err)
		}
		u, err := housingBoard().Build()
		if err != nil {
			t.Fatal(err)
		}
		place := drawPlace(t, 120)
		back := place.Inv()
		lo, hi := s.Bounds()
		d := hi.Sub(lo)
		// Plain random points: even lattices of few points can fall in step with a thin slice.
		const n = 2000
		random := rand.New(rand.NewPCG(1, 2))
		finder, other := s.Finder(), u.Finder()
		in := 0
		for range n {
			p := lo.Add(mgl64.Vec3{d[0] * random.Float64(), d[1] * random.Float64(), d[2] * random.Float64()})
			if finder.Contains(p) && other.Contains(back.Mul4x1(p.Vec4(1)).Vec3()) {
				in++
			}
		}
		box := d[0] * d[1] * d[2]
		got, err := Overlap(s, u, place)
		// Six standard deviations of sampling what was found, and what the flattening of arcs may take.
		share, found := float64(in)/n, got/box
		slack := 6*math.Sqrt((math.Abs(found)+1.0/n)/n) + 1e-4
		if err != nil || math.Abs(found-share) > slack {
			t.Fatalf("%.6g of the box (%v), sampled %.6g", got/box, err, share)
		}
	})
}

// Tails of a board's end slide home into the sockets of another along the way that their cheeks follow: nothing
// overlaps at any station; across it they jam.
func TestOverlapAlongASlide(t *testing.T) {
	a := build(t, slab(40, 0))
	// The teeth that fill the right end's sockets, standing on a bar beyond the end, as one board.
	b := build(t, teeth(40)).Blocks(Flattening)
	way := mgl64.Vec3{math.Sin(slabLean), 0, math.Cos(slabLean)}
	ours := a.Blocks(Flattening)
	for i := 0; i <= 100; i++ {
		d := way.Mul(slabT * 1.05 * float64(i) / 100)
		v, err := ours.Overlap(b, mgl64.Translate3D(d[0], d[1], d[2]))
		if err != nil || math.Abs(v) > 1e-7 {
			t.Fatalf("station %d: %g mm³ (%v)", i, v, err)
		}
	}
	// Square to the face instead, the teeth push into the sockets' floors and the bar beyond the end into the
	// wood between the sockets: two strips as wide as the shift, 0.6 of the pitch long and shrinking with the cheeks.
	const d = 0.5
	v, err := ours.Overlap(b, mgl64.Translate3D(0, 0, d))
	shift := d * math.Tan(slabLean)
	pitch := slabW / 40
	want := 40 * 2 * (0.6*pitch*shift - 0.1*pitch*shift*shift/slabDepth) * (slabT - d)
	if err != nil || math.Abs(v-want) > 1e-7 {
		t.Fatalf("jammed: %.10g mm³ (%v), want %.10g", v, err, want)
	}
}

// teeth is the board that fills the sockets of slab's right end and lies on beyond it.
func teeth(n int) Board {
	end := socketEnd(n, mgl64.Vec3{-math.Sin(slabLean), 0, -math.Cos(slabLean)}, 1)
	b := Board{Thickness: slabT}
	// The same walls walked the other way, their normals turned.
	for i := len(end) - 1; i >= 0; i-- {
		w := end[i]
		w.Plane = Plane{w.Plane.N.Mul(-1), -w.Plane.D}
		b.Outline = append(b.Outline, w)
	}
	return Board{Thickness: slabT, Outline: append(b.Outline,
		flat("front-edge", 0, -slabW/2, 0, -1, 0), flat("far end", slabL/2+60, 0, 1, 0, 0), flat("back-edge", 0, slabW/2, 0, 1, 0))}
}

func benchmarkOverlap(b *testing.B, sockets int, home bool) {
	a, u := build(b, slab(sockets, 0)).Blocks(Flattening), build(b, teeth(sockets)).Blocks(Flattening)
	d := mgl64.Vec3{}
	if !home {
		d = mgl64.Vec3{math.Sin(slabLean), 0, math.Cos(slabLean)}.Mul(7)
	}
	place := mgl64.Translate3D(d[0], d[1], d[2])
	b.ReportAllocs()
	for b.Loop() {
		if _, err := a.Overlap(u, place); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkOverlapHome(b *testing.B)       { benchmarkOverlap(b, 6, true) }
func BenchmarkOverlapUnderWay(b *testing.B)   { benchmarkOverlap(b, 6, false) }
func BenchmarkOverlap40Home(b *testing.B)     { benchmarkOverlap(b, 40, true) }
func BenchmarkOverlap40UnderWay(b *testing.B) { benchmarkOverlap(b, 40, false) }

func BenchmarkBlocks(b *testing.B) {
	s := build(b, slab(40, 0))
	b.ReportAllocs()
	for b.Loop() {
		s.Blocks(Flattening)
	}
}

// A tray's end board, mitred: its ends and its outer face meet 87 m off, which is no place to look for it.
func TestHalfSpacesThatAllButMissEachOther(t *testing.T) {
	h := HalfSpaces{
		{mgl64.Vec3{0, 0, 1}, 0}, {mgl64.Vec3{0, 0, -1}, 16},
		{mgl64.Vec3{-0.7071185603712616, -0.001542460872570978, -0.7070933194373507}, 134.10569513732077},
		{mgl64.Vec3{0.7071185603712616, -0.001542460872570978, -0.7070933194373507}, 134.10569513732077},
		{mgl64.Vec3{0, -0.9998476951563913, 0.01745240643728351}, 0}, {mgl64.Vec3{0, 0.9998476951563913, -0.01745240643728351}, 160},
	}
	near(t, "volume", h.Volume(), 931088.1017551788, 1e-12) // the board's own solid
}
