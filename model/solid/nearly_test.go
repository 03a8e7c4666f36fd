package solid

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

// leans runs through angles from far below rounding to plain ones, both ways, radians.
func leans(yield func(float64) bool) {
	for e := -17.0; e <= -2; e += 0.25 {
		for _, sign := range []float64{1, -1} {
			if !yield(sign * math.Pow(10, e)) {
				return
			}
		}
	}
}

// rightOrRefused sees that a board either is refused in words or makes a whole solid of the given volume; how
// often it is refused comes back as 1.
func rightOrRefused(t *testing.T, name string, b Board, volume, relative float64) (refused int) {
	t.Helper()
	s, err := b.Build()
	if err != nil {
		var be *BuildError
		if !errors.As(err, &be) || be.Reason == "" || len(be.Tags) == 0 {
			t.Fatalf("%s: refused without a reason: %v", name, err)
		}
		return 1
	}
	if err := s.Check(); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if err := s.Flatten(0.05).Check(); err != nil {
		t.Fatalf("%s: flattened: %v", name, err)
	}
	if d := math.Abs(s.Volume() - volume); !(d <= relative*volume) {
		t.Fatalf("%s: volume %.15g, want %.15g (%.2g of it)", name, s.Volume(), volume, d/volume)
	}
	return 0
}

// An arch's wall beside an end that leans a hair: the two meet in a very long ellipse.
func TestArchOnEndThatLeansAHair(t *testing.T) {
	for _, c := range []struct{ chord, rise, axis float64 }{
		{150, 45, 0}, {150, 45, 10 * deg}, {200, 2, 0}, {100, 50, 0}, {60, 50, 0}, {4, 1, 5 * deg},
	} {
		for d := range leans {
			lean := d - c.axis // the end is off the arch's own direction by d
			volume := 260*250*20 + 250*20*20*math.Tan(lean) -
				gauss16(func(z float64) float64 { return archArea(c.chord, c.rise, lean, c.axis, z) }, 0, 20, 4)
			// The end opposite leans as much.
			name := fmt.Sprintf("chord %g, rise %g, arch leans %g, end %g off it", c.chord, c.rise, c.axis/deg, d)
			if rightOrRefused(t, name, archBoard(c.chord, c.rise, lean, c.axis), volume, exact) > 0 {
				t.Errorf("%s: refused", name)
			}
		}
	}
}

// oneWall is the volume that bending takes, of the whole, where the two walls count as one.
func oneWall(d float64) float64 {
	if math.Abs(d) < parallel {
		return math.Abs(d)
	}
	return 0
}

// Two walls that follow each other at almost a straight angle.
func TestWallsThatBendAHair(t *testing.T) {
	for d := range leans {
		for _, lean := range []float64{0, 6 * deg} {
			// The front edge bends outward by d at its middle, which makes a triangle under each lean alike.
			out := block(400, 250, 0, 0)
			a := flat("front-edge, left", 0, -125, -math.Sin(d), -math.Cos(d), lean)
			b := flat("front-edge, right", 0, -125, math.Sin(d), -math.Cos(d), lean)
			b.Start = mgl64.Vec2{0, -125}
			area := func(z float64) float64 {
				// The section at depth z: each half wall moves outward by z tan(lean) along its normal.
				y := 125 + z*math.Tan(lean)/math.Cos(d)
				return 400*(125+y) - 200*200*math.Tan(d)
			}
			volume := gauss16(area, 0, 20, 1)
			rightOrRefused(t, fmt.Sprintf("bend %g, lean %g", d, lean/deg),
				Board{Thickness: 20, Outline: Loop{a, b, out[1], out[2], out[3]}}, volume, exact+oneWall(d))
		}
	}
}

// A slot whose sides miss the tangent of its round ends by a hair, in place or in direction.
func TestSlotsTangentButForAHair(t *testing.T) {
	for d := range leans {
		l := slotLoop("slot", 0, 0, 95, 28, 0)
		l[0].Plane.D += d
		volume := 400*250*20 - 20*(math.Pi*14*14+(95-28)*28.0)
		rightOrRefused(t, fmt.Sprintf("side %g mm off", d), Board{Thickness: 20, Outline: block(400, 250, 0, 0), Openings: []Loop{l}}, volume, 1e-12+4e-3*math.Abs(d))
		l = slotLoop("slot", 0, 0, 95, 28, 0)
		at := mgl64.Vec3{0, 14, 0}
		l[0].Plane.N = mgl64.Vec3{0, -math.Cos(d), math.Sin(d)}
		l[0].Plane.D = l[0].Plane.N.Dot(at)
		rightOrRefused(t, fmt.Sprintf("side leans %g", d), Board{Thickness: 20, Outline: block(400, 250, 0, 0), Openings: []Loop{l}}, volume, 1e-12+1e-2*math.Abs(d))
		l = slotLoop("slot", 0, 0, 95, 28, 0)
		l[1].Round.Radius += d
		rightOrRefused(t, fmt.Sprintf("end's radius %g off", d), Board{Thickness: 20, Outline: block(400, 250, 0, 0), Openings: []Loop{l}}, volume, 1e-12+4e-3*math.Abs(d))
		l = slotLoop("slot", 0, 0, 95, 28, 0)
		l[1].Round.Axis = mgl64.Vec3{math.Sin(d), 0, math.Cos(d)}
		rightOrRefused(t, fmt.Sprintf("end leans %g along", d), Board{Thickness: 20, Outline: block(400, 250, 0, 0), Openings: []Loop{l}}, volume, 1e-12+1e-2*math.Abs(d))
		l[1].Round.Axis = mgl64.Vec3{0, math.Sin(d), math.Cos(d)}
		rightOrRefused(t, fmt.Sprintf("end leans %g across", d), Board{Thickness: 20, Outline: block(400, 250, 0, 0), Openings: []Loop{l}}, volume, 1e-12+1e-2*math.Abs(d))
	}
}

// Holes and pockets a hair from an edge, a face or each other.
func TestHollowsAHairApart(t *testing.T) {
	out := block(400, 250, 6*deg, 0)
	whole := 400*250*20 + 250*20*20*math.Tan(6*deg)
	for d := range leans {
		b := Board{Thickness: 20, Outline: out, Openings: []Loop{drillHole("hole", 0, 115+d, 10)}}
		rightOrRefused(t, fmt.Sprintf("hole %g from the edge", d), b, whole-20*math.Pi*100, 1e-12)
		b.Openings = []Loop{drillHole("a", 0, 0, 10), drillHole("b", 20+d, 0, 10)}
		rightOrRefused(t, fmt.Sprintf("holes %g apart", d), b, whole-40*math.Pi*100, 1e-12)
		b.Openings = nil
		deep := 250.0 * 10 * 6
		b.Pockets = []Pocket{{Tag: "p", Depth: 6, Walls: groove(0, 10, out[0], out[2])}, {Tag: "q", Depth: 6 + d, Walls: groove(5, 15, out[0], out[2])}}
		rightOrRefused(t, fmt.Sprintf("floors %g apart", d), b, whole-1.5*deep, 1e-12+math.Abs(d))
		b.Pockets = []Pocket{{Tag: "p", Depth: 6, Walls: groove(0, 10, out[0], out[2])}, {Tag: "q", Depth: 6, Walls: groove(10+d, 20, out[0], out[2])}}
		rightOrRefused(t, fmt.Sprintf("grooves %g apart", d), b, whole-2*deep, 1e-12+math.Abs(d))
		b.Pockets[1] = Pocket{Tag: "q", Depth: 6, FromOuter: true, Walls: groove(10+d, 20, out[0], out[2])}
		rightOrRefused(t, fmt.Sprintf("grooves of both faces, %g apart", d), b, whole-2*deep, 1e-12+math.Abs(d))
		front := flat("front", 0, -125+d, 0, -1, 0)
		b.Pockets = []Pocket{{Tag: "p", Depth: 6, Walls: groove(0, 10, front, out[2])}}
		rightOrRefused(t, fmt.Sprintf("a groove ends %g from the edge", d), b, whole-deep, 1e-12+math.Abs(d))
		front = flat("front", 0, -125, 0, -1, d)
		b.Pockets[0].Walls = groove(0, 10, front, out[2])
		rightOrRefused(t, fmt.Sprintf("a groove's end leans %g off the edge", d), b, whole-deep, 1e-12+math.Abs(d))
		front = flat("front", 0, -125, d, -1, 0)
		b.Pockets[0].Walls = groove(0, 10, front, out[2])
		rightOrRefused(t, fmt.Sprintf("a groove's end turns %g off the edge", d), b, whole-deep, 1e-12+math.Abs(d))
	}
}

// Bores that all but touch an edge, an end or each other.
func TestBoresAHairApart(t *testing.T) {
	out := block(400, 250, 6*deg, 0)
	whole := 400*250*20 + 250*20*20*math.Tan(6*deg)
	for d := range leans {
		for _, c := range []struct {
			name   string
			bores  []Bore
			volume float64
		}{
			{"from the edge", []Bore{{Tag: "a", Entry: mgl64.Vec3{0, 121 + d, 0}, Axis: leaning(0), Steps: []Step{{4, through}}}}, 16 * math.Pi * 20},
			{"from the leaning end", []Bore{{Tag: "a", Entry: mgl64.Vec3{196 + d, 0, 0}, Axis: leaning(0), Steps: []Step{{4, through}}}}, 16 * math.Pi * 20},
			{"beside another", []Bore{{Tag: "a", Entry: mgl64.Vec3{}, Axis: leaning(0), Steps: []Step{{4, through}}},
				{Tag: "b", Entry: mgl64.Vec3{8 + d, 0, 0}, Axis: leaning(0), Steps: []Step{{4, through}}}}, 32 * math.Pi * 20},
			{"above the far face", []Bore{{Tag: "a", Entry: mgl64.Vec3{}, Axis: leaning(0), Steps: []Step{{4, 20 + d}}}}, 16 * math.Pi * 20},
			{"a hair of lean", []Bore{{Tag: "a", Entry: mgl64.Vec3{}, Axis: leaning(d), Steps: []Step{{4, 10}}}}, 16 * math.Pi * 10},
		} {
			rightOrRefused(t, fmt.Sprintf("%s: %g", c.name, d), Board{Thickness: 20, Outline: out, Bores: c.bores}, whole-c.volume, 1e-12+math.Abs(d))
		}
	}
}

// Two bores that cross square at any angle in plan are refused from the first hair that they share, and built from the
// first hair between them.
func TestBoresThatPassEachOther(t *testing.T) {
	out := block(400, 250, 0, 0)
	for d := range leans {
		if math.Abs(d) < 2*SamePoint {
			continue
		}
		for _, turn := range []float64{0, 3.7 * deg, 17 * deg, -8.1 * deg} {
			along := mgl64.Vec3{math.Cos(turn), math.Sin(turn), 0}
			gap := 4 + 1.5 + d
			// The pilot starts where its line, gap beside the middle, meets the left end.
			beside := mgl64.Vec3{-math.Sin(turn), math.Cos(turn), 0}.Mul(gap)
			entry := beside.Sub(along.Mul((200 + beside[0]) / along[0]))
			entry[2] = -10
			_, err := Board{Thickness: 20, Outline: out, Bores: []Bore{
				{Tag: "upright", Axis: leaning(0), Steps: []Step{{4, through}}},
				{Tag: "pilot", Entry: entry, Axis: along, Steps: []Step{{1.5, 250}}},
			}}.Build()
			if (err == nil) != (d > 0) {
				t.Fatalf("gap %g, turned %g: %v", d, turn/deg, err)
			}
		}
	}
}

// A groove right across an arch whose end leans a hair: the arch's edges are joined over the groove's floor.
func TestGrooveAcrossArchThatLeansAHair(t *testing.T) {
	const chord, rise = 150.0, 45.0
	r := chord*chord/(8*rise) + rise/2
	for d := range leans {
		if math.Abs(d) > 1e-3 {
			continue
		}
		for _, axis := range []float64{0, 4 * deg} {
			lean := d - axis
			b := archBoard(chord, rise, lean, axis)
			b.Pockets = []Pocket{{Tag: "groove", Depth: 6, Walls: groove(100, 110, b.Outline[0], b.Outline[4])}}
			volume := 260*250*20 + 250*20*20*math.Tan(lean) -
				gauss16(func(z float64) float64 { return archArea(chord, rise, lean, axis, z) }, 0, 20, 4)
			// Of the groove the arch has taken its part already: at depth z it is an ellipse stretched along the board.
			volume -= gauss16(func(z float64) float64 {
				centre := 130 - rise + r - z*math.Tan(axis)
				return gauss16(func(x float64) float64 {
					u := (x - centre) * math.Cos(axis)
					return 250 - 2*math.Sqrt(r*r-u*u)
				}, 100, 110, 2)
			}, 14, 20, 1)
			name := fmt.Sprintf("arch leans %g, end %g off it", axis/deg, d)
			if rightOrRefused(t, name, b, volume, exact) > 0 {
				t.Errorf("%s: refused", name)
			}
		}
	}
}
