package form

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/solid"
)

// wallCorner of a random tray or ring, with its tails, and how far its tail board leans.
func wallCorner(t *rapid.T) (*enclosure, joint.Corner, []joint.Cheeks) {
	angle := func(name string, lo, hi float64) measure.Angle {
		return measure.Angle(rapid.Float64Range(lo, hi).Draw(t, name)) * measure.Degree
	}
	thick := func(name string) Board {
		return Board{Thickness: measure.Length(rapid.Float64Range(8, 25).Draw(t, name))}
	}
	d := Design{Form: "tray", Size: Size{Width: 900, Depth: 800}}
	d.Size.Height = measure.Length(rapid.Float64Range(90, 250).Draw(t, "height"))
	d.Splay = Splay{Front: angle("front", -15, 30), Ends: angle("ends", -15, 30)}
	d.Boards.Front, d.Boards.End = thick("front board"), thick("end board")
	d.Corners.Joint = rapid.SampledFrom([]string{ThroughDovetail, HalfBlindDovetail, FingerJoint}).Draw(t, "joint")
	d.Corners.TailsOn = rapid.SampledFrom([]string{OnFront, OnEnd}).Draw(t, "tails on")
	d.Corners.Slope = angle("slope", 4, 12)
	walls := fourWalls
	if rapid.Bool().Draw(t, "ring") {
		d.Form, d.Size.Staves, d.Boards.Side = ringForm, rapid.IntRange(3, 10).Draw(t, "staves"), d.Boards.End
		walls = func(d Design, _ float64) []*wall { return staves(d) }
	}
	a := &assembly{d: d.Defaults(), piece: &Piece{}}
	e := newEnclosure(a, walls(a.d, 1), 1)
	m := e.meeting(rapid.IntRange(0, len(e.walls)-1).Draw(t, "corner"))
	if !e.cutTails(m) {
		t.Skip(a.piece.Findings[0].Text)
	}
	l := e.laid[0]
	return e, l.Corner, l.cheeks
}

func TestWallsSlideAlongThePinBoardsGrain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c, cheeks := wallCorner(t)
		tails, pins := pieces(c, cheeks)
		run := c.Tail.Thickness() / c.Tail.Outer.N.Cross(c.Pin.Outer.N).Len()
		for station := range 9 {
			off := run * 1.1 * float64(station) / 8
			if v := overlap(tails, pins, c.Pin.Grain.Mul(-off)); v > overlapNoise {
				t.Fatalf("%.3g mm from home the boards overlap by %g mm³", off, v)
			}
		}
	})
}

// The habit from square corners, straight off the tail board's face, jams where its boards lean.
func TestWallsJamSquareToTheFace(t *testing.T) {
	for _, lean := range [][2]float64{{6, 10}, {15, 8}, {20, 20}, {-8, 12}} {
		for _, on := range []string{OnFront, OnEnd} {
			d := Design{Form: "tray", Size: Size{Width: 600, Depth: 500, Height: 120}}
			d.Splay = Splay{Front: measure.Angle(lean[0]) * measure.Degree, Ends: measure.Angle(lean[1]) * measure.Degree}
			d.Corners = Corners{Joint: ThroughDovetail, TailsOn: on}
			a := &assembly{d: d.Defaults(), piece: &Piece{}}
			e := newEnclosure(a, fourWalls(a.d, 1), 1)
			if !e.cutTails(e.meeting(0)) {
				t.Fatal(a.piece.Findings[0].Text)
			}
			tails, pins := pieces(e.laid[0].Corner, e.laid[0].cheeks)
			if v := overlap(tails, pins, e.laid[0].Tail.Outer.N.Mul(0.5)); v < 0.1 {
				t.Errorf("leans %v, tails on the %s: half a millimetre off its face the boards overlap by %g mm³ only", lean, on, v)
			}
		}
	}
}

// Shop teaching on compound dovetails: the sides of the pins stay parallel to the edges of their
// board. https://www.popularwoodworking.com/techniques/compound-angle-dovetails-the-layout/
func TestPinsRunParallelToTheEdges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c, cheeks := wallCorner(t)
		for _, k := range cheeks {
			for _, n := range []mgl64.Vec3{k.Front.N, k.Back.N} {
				line := n.Cross(c.Pin.Outer.N).Normalize()
				if math.Abs(line[2]) > 1e-12 {
					t.Fatalf("a cheek rises %g along the pin board's face", line[2])
				}
			}
		}
	})
}

// The slope is from the tail board's grain on its face, not from a line square to its slanting end.
func TestSlopeOfWallsIsFromTheGrain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c, cheeks := wallCorner(t)
		for _, n := range []mgl64.Vec3{cheeks[0].Front.N, cheeks[0].Back.N} {
			line := n.Cross(c.Tail.Outer.N).Normalize()
			if got := math.Acos(math.Min(1, math.Abs(line.Dot(c.Tail.Grain)))); math.Abs(got-c.Slope.Radians()) > 1e-7 {
				t.Fatalf("slope %.9g°, want %.9g°", got*180/math.Pi, c.Slope.Degrees())
			}
		}
	})
}

// What a tail loses to its baseline is found between the corners of its outer face.
func TestTaperOfWallTails(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c, cheeks := wallCorner(t)
		k := cheeks[0]
		at := func(cheek, across mgl64.Vec3, d, e float64) mgl64.Vec3 {
			return meet(c.Tail.Outer, solid.Plane{N: cheek, D: d}, solid.Plane{N: across, D: e})
		}
		end := at(k.Back.N, c.Pin.Outer.N, k.Back.D, c.Pin.Outer.D).Sub(at(k.Front.N, c.Pin.Outer.N, k.Front.D, c.Pin.Outer.D)).Len()
		root := at(k.Back.N, c.Pin.Inner.N, k.Back.D, c.Pin.Inner.D).Sub(at(k.Front.N, c.Pin.Inner.N, k.Front.D, c.Pin.Inner.D)).Len()
		if math.Abs(end-root-c.Taper().MM()) > 1e-8 {
			t.Fatalf("a tail loses %.12g mm, told %.12g", end-root, c.Taper().MM())
		}
	})
}
