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

// pieces cuts the two boards of a corner into convex pieces: the body of each board up to its
// baseline, every tail and every pin.
func pieces(c joint.Corner, cheeks []joint.Cheeks) (tailBoard, pinBoard []solid.HalfSpaces) {
	far := 400.0 // how much of either body counts
	slab := func(b joint.Board) solid.HalfSpaces {
		end := solid.Plane{N: b.Grain, D: b.Grain.Dot(meet(c.Tail.Outer, c.Pin.Outer, c.Tail.Front)) + far}
		return solid.HalfSpaces{b.Outer, b.Inner, end}
	}
	with := func(h solid.HalfSpaces, more ...solid.Plane) solid.HalfSpaces {
		return append(append(solid.HalfSpaces(nil), h...), more...)
	}
	tail, pin := slab(c.Tail), slab(c.Pin)
	tailBoard = append(tailBoard, with(tail, c.Tail.Front, c.Tail.Back, flip(c.Pin.Inner)))
	pinBoard = append(pinBoard, with(pin, c.Pin.Front, c.Pin.Back, flip(c.Tail.Inner)))
	core := solid.HalfSpaces{c.Tail.Outer, c.Tail.Inner, c.Pin.Outer, c.Pin.Inner}
	before := c.Pin.Front
	for _, k := range cheeks {
		tailBoard = append(tailBoard, with(core, k.Front, k.Back))
		pinBoard = append(pinBoard, with(core, before, flip(k.Front)))
		before = flip(k.Back)
	}
	return tailBoard, append(pinBoard, with(core, before, c.Pin.Back))
}

// touch, mm: pieces that come nearer than this touch and do not overlap.
const touch = 1e-7

// overlap of the tail board, moved, with the pin board where it stands.
func overlap(tailBoard, pinBoard []solid.HalfSpaces, move mgl64.Vec3) float64 {
	sum := 0.0
	for _, a := range tailBoard {
		moved := make(solid.HalfSpaces, len(a))
		for i, p := range a {
			moved[i] = solid.Plane{N: p.N, D: p.D + p.N.Dot(move) - touch}
		}
		for _, b := range pinBoard {
			sum += append(append(solid.HalfSpaces(nil), moved...), b...).Volume()
		}
	}
	return sum
}

// corner of a random stool, with its tails.
func corner(t *rapid.T) (*stand, joint.Corner, []joint.Cheeks) {
	angle := func(name string, lo, hi float64) measure.Angle {
		return measure.Angle(rapid.Float64Range(lo, hi).Draw(t, name)) * measure.Degree
	}
	d := Design{Size: Size{Height: 300, Width: 500}}
	d.Size.Depth = measure.Length(rapid.Float64Range(120, 350).Draw(t, "depth"))
	d.Splay = Splay{Ends: angle("ends", -10, 20), Edges: angle("edges", -4, 10)}
	d.Boards.Top.Thickness = measure.Length(rapid.Float64Range(10, 35).Draw(t, "top"))
	d.Boards.Side.Thickness = measure.Length(rapid.Float64Range(10, 35).Draw(t, "side"))
	d.Corners.TailsOn = rapid.SampledFrom([]string{OnTop, OnSide}).Draw(t, "tails on")
	d.Corners.Slope = angle("slope", 4, 12)
	s := newStand(d.Defaults())
	c := s.dovetailCorner(side(rapid.IntRange(0, 1).Draw(t, "which side")))
	l, err := joint.Lay(joint.Wish{Width: c.Width(), Taper: c.Taper()})
	if err != nil {
		t.Skip(err.Error())
	}
	return s, c, c.Cheeks(l)
}

// overlapNoise, mm³, of a corner of some 100 000 mm³.
const overlapNoise = 1e-6

func TestTailBoardSlidesAlongPinBoardsGrain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c, cheeks := corner(t)
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

// The habit from square corners, straight off the tail board's face, jams as soon as a side leans.
func TestTailBoardJamsSquareToItsFace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, c, cheeks := corner(t)
		if math.Abs(s.ends) < 1*math.Pi/180 {
			t.Skip("hardly leans")
		}
		tails, pins := pieces(c, cheeks)
		if v := overlap(tails, pins, c.Tail.Outer.N.Mul(0.5)); v < 0.1 {
			t.Fatalf("half a millimetre off its face the boards overlap by %g mm³ only", v)
		}
	})
}

// Tails and pins leave no gap: where the edges of both boards lie in one plane, they sum up to
// the corner.
func TestTailsAndPinsSumUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c, cheeks := corner(t)
		c.Pin.Front, c.Pin.Back = c.Tail.Front, c.Tail.Back
		tails, pins := pieces(c, cheeks)
		sum := 0.0
		for _, h := range append(tails[1:], pins[1:]...) {
			sum += h.Volume()
		}
		whole := solid.HalfSpaces{c.Tail.Outer, c.Tail.Inner, c.Pin.Outer, c.Pin.Inner, c.Tail.Front, c.Tail.Back}.Volume()
		if math.Abs(sum-whole) > 1e-11*whole {
			t.Fatalf("%.12g mm³ of %.12g", sum, whole)
		}
	})
}
