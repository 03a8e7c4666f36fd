package solid

import (
	"fmt"
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

// The slab that figures are compared on: 400 x 300 x 22 mm, both ends undercut by 6°, sockets through the
// thickness and 22 mm deep along the board that follow the leaning end and widen from 0.4 of their pitch at the
// end to 0.6, four holes of radius 12.5.
const (
	slabL, slabW, slabT = 400.0, 300.0, 22.0
	slabDepth, slabR    = 22.0, 12.5
	slabLean            = 6 * deg
)

// slab has the sockets at each end and the holes, as circles when facets is 0.
func slab(sockets, facets int) Board {
	b := Board{Thickness: slabT}
	// The right end's way down, which cheeks and floors follow.
	down := mgl64.Vec3{-math.Sin(slabLean), 0, -math.Cos(slabLean)}
	b.Outline = append(b.Outline, flat("front-edge", 0, -slabW/2, 0, -1, 0))
	b.Outline = append(b.Outline, socketEnd(sockets, down, 1)...)
	b.Outline = append(b.Outline, flat("back-edge", 0, slabW/2, 0, 1, 0))
	b.Outline = append(b.Outline, socketEnd(sockets, mgl64.Vec3{-down[0], 0, down[2]}, -1)...)
	for i, at := range []mgl64.Vec2{{-100, -75}, {100, -75}, {100, 75}, {-100, 75}} {
		tag := fmt.Sprintf("hole %d", i+1)
		if facets == 0 {
			b.Openings = append(b.Openings, drillHole(tag, at[0], at[1], slabR))
			continue
		}
		b.Openings = append(b.Openings, facetedHole(tag, at[0], at[1], slabR, facets))
	}
	return b
}

// socketEnd is one end counter-clockwise; side is +1 for the right end.
func socketEnd(n int, down mgl64.Vec3, side float64) Loop {
	through := func(tag string, x, y float64, along mgl64.Vec3) Wall {
		// The wall holds the line along on the outer face and the way down; the wood is on its left.
		m := along.Cross(mgl64.Vec3{0, 0, 1})
		m = mgl64.Vec3{m[0], m[1], -(m[0]*down[0] + m[1]*down[1]) / down[2]}.Normalize()
		return Wall{Tag: tag, Plane: Plane{N: m, D: m.Dot(mgl64.Vec3{x, y, 0})}, Start: mgl64.Vec2{x, y}}
	}
	pitch := slabW / float64(n)
	x, deep := side*slabL/2, side*(slabL/2-slabDepth)
	ahead := mgl64.Vec3{0, side, 0}
	var l Loop
	for i := range n {
		mid := side * (-slabW/2 + pitch*(float64(i)+0.5))
		a, b := side*0.2*pitch, side*0.3*pitch
		l = append(l,
			through("tail end", x, mid-pitch/2, ahead),
			through("cheek", x, mid-a, mgl64.Vec3{deep - x, a - b, 0}),
			through("socket floor", deep, mid-b, ahead),
			through("cheek", deep, mid+b, mgl64.Vec3{x - deep, a - b, 0}))
	}
	return append(l, through("tail end", x, side*slabW/2, ahead))
}

func facetedHole(tag string, x, y, r float64, n int) Loop {
	var l Loop
	for i := range n {
		// Clockwise: the wall between two corners of a regular figure, seen from its middle.
		t := -2 * math.Pi * (float64(i) + 0.5) / float64(n)
		sin, cos := math.Sincos(t)
		l = append(l, flat(tag, x+r*math.Cos(math.Pi/float64(n))*cos, y+r*math.Cos(math.Pi/float64(n))*sin, -cos, -sin, 0))
	}
	return l
}

func TestSlab(t *testing.T) {
	body := slabL*slabW*slabT - slabT*slabT*math.Tan(slabLean)*slabW
	for _, c := range []struct {
		sockets, facets int
		want            float64
	}{
		// Computed independently for holes of 48 facets; circles take 4·22·r²(π - 24 sin 7.5°) more.
		{6, 48, 2436465.221607},
		{6, 0, 2436465.221607 - 4*slabT*slabR*slabR*(math.Pi-24*math.Sin(7.5*deg))},
	} {
		s := build(t, slab(c.sockets, c.facets))
		near(t, "volume as published", s.Volume(), c.want, 1e-12)
		if s.Genus() != 4 {
			t.Errorf("genus %d, want 4", s.Genus())
		}
	}
	s := build(t, slab(40, 0))
	near(t, "40 sockets", s.Volume(), body-80*0.5*(slabW/40)*slabDepth*slabT-4*math.Pi*slabR*slabR*slabT, exact)
}

// The outside check reads these figures from the log.
func TestTopBoardVolume(t *testing.T) {
	hole := 24 * math.Sin(7.5*deg) * slabR * slabR * slabT
	want := slabL*slabW*slabT - slabT*slabT*math.Tan(slabLean)*slabW - slabW*slabDepth*slabT - 4*hole
	for name, sockets := range map[string]int{"TopBoard": 6, "TopBoard40": 40} {
		v := build(t, slab(sockets, 48)).Volume()
		near(t, name, v, want, exact)
		t.Logf("%s %.6f mm³", name, v)
	}
}

func benchmarkSlab(b *testing.B, sockets, facets int) {
	board := slab(sockets, facets)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := board.Build(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkTopBoard(b *testing.B)          { benchmarkSlab(b, 6, 48) }
func BenchmarkTopBoardCircles(b *testing.B)   { benchmarkSlab(b, 6, 0) }
func BenchmarkTopBoard40(b *testing.B)        { benchmarkSlab(b, 40, 48) }
func BenchmarkTopBoard40Circles(b *testing.B) { benchmarkSlab(b, 40, 0) }

func BenchmarkVolume(b *testing.B) {
	s, err := slab(6, 48).Build()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		s.Volume()
	}
}

func BenchmarkFlatten(b *testing.B) {
	s, err := slab(6, 0).Build()
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		s.Flatten(Flattening)
	}
}
