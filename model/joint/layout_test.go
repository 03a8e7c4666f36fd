package joint_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/joint"
	"splaywright/model/measure"
)

func mm(l measure.Length) *measure.Length { return &l }

func TestLay(t *testing.T) {
	const inch = measure.Inch
	for _, c := range []struct {
		name            string
		wish            joint.Wish
		tails           int
		tail, pin, half measure.Length
	}{
		{"the worked example", joint.Wish{Width: 250, Tails: new(4), Pin: mm(10), HalfPin: mm(8)}, 4, 51, 10, 8},
		// the counts of “How to size dovetails”, woodworkingcreations.us ; pins 3/8 in ≈ 10 mm
		{"2 in: 1 tail", joint.Wish{Width: 2 * inch}, 1, 40.64, 6.35, 5.08},
		{"3 in: 2 tails", joint.Wish{Width: 3 * inch}, 2, 27.3375, 9.525, 6},
		{"4 in: 3 tails", joint.Wish{Width: 4 * inch}, 3, 23.2, 10, 6},
		{"5 in: 4 tails", joint.Wish{Width: 5 * inch}, 4, 21.25, 10, 6},
		{"tail typed", joint.Wish{Width: 250, Tail: mm(40)}, 5, 40, 50 / 5.2, 30 / 5.2},
		{"tail and count typed", joint.Wish{Width: 250, Tail: mm(40), Tails: new(4)}, 4, 40, 90 / 4.2, 54 / 4.2},
		{"tail, count and pin typed", joint.Wish{Width: 250, Tail: mm(50), Tails: new(4), Pin: mm(10)}, 4, 50, 10, 10},
		{"tail, count and half pin typed", joint.Wish{Width: 250, Tail: mm(50), Tails: new(4), HalfPin: mm(10)}, 4, 50, 10, 10},
		{"all four typed and right", joint.Wish{Width: 250, Tail: mm(51), Tails: new(4), Pin: mm(10), HalfPin: mm(8)}, 4, 51, 10, 8},
		{"one tail typed", joint.Wish{Width: 100, Tail: mm(60), Tails: new(1)}, 1, 60, 10, 20},
	} {
		l, err := joint.Lay(c.wish)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if len(l.Tails) != c.tails {
			t.Errorf("%s: %d tails, want %d", c.name, len(l.Tails), c.tails)
		}
		for _, f := range [][2]measure.Length{{l.Widths[0], c.tail}, {l.Pin, c.pin}, {l.HalfPin, c.half}} {
			if math.Abs(float64(f[0]-f[1])) > 1e-9 {
				t.Errorf("%s: tail %g, pin %g, half pin %g, want %g, %g, %g", c.name,
					l.Widths[0], l.Pin, l.HalfPin, c.tail, c.pin, c.half)
				break
			}
		}
	}
}

func TestUnevenTails(t *testing.T) {
	for _, c := range []struct {
		name string
		wish joint.Wish
		want []measure.Length
	}{
		{"front to back", joint.Wish{Width: 209, Widths: []measure.Length{38, 52, 40}, HalfPin: mm(14)}, []measure.Length{38, 52, 40}},
		{"mirrored", joint.Wish{Width: 250, Widths: []measure.Length{30, 50}, Mirrored: true}, []measure.Length{30, 50, 50, 30}},
		{"mirrored about a middle tail", joint.Wish{Width: 250, Widths: []measure.Length{30, 50}, Mirrored: true, Tails: new(3)},
			[]measure.Length{30, 50, 30}},
	} {
		l, err := joint.Lay(c.wish)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if len(l.Tails) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, l.Widths, c.want)
			continue
		}
		for i, s := range l.Tails {
			if math.Abs(float64(s.Width()-c.want[i])) > 1e-9 {
				t.Errorf("%s: tail %d is %g wide, want %g", c.name, i+1, s.Width(), c.want[i])
			}
		}
	}
}

func TestMisfits(t *testing.T) {
	for _, c := range []struct {
		name string
		wish joint.Wish
		want joint.MisfitKind
	}{
		{"no width", joint.Wish{}, joint.NoWidth},
		{"no number", joint.Wish{Width: measure.Length(math.NaN())}, joint.NoWidth},
		{"no tails", joint.Wish{Width: 250, Tails: new(0)}, joint.NoTails},
		{"a pin of nothing", joint.Wish{Width: 250, Pin: mm(0)}, joint.NoSize},
		{"sixty tails", joint.Wish{Width: 250, Tails: new(60), Pin: mm(10)}, joint.TailsTooMany},
		{"pointed tails", joint.Wish{Width: 250, Tails: new(12), Pin: mm(10), Taper: 12}, joint.TailToPoint},
		{"tails take all", joint.Wish{Width: 250, Tails: new(5), Tail: mm(50), Pin: mm(2)}, joint.HalfPinGone},
		{"no room for pins", joint.Wish{Width: 250, Tails: new(5), Tail: mm(50), HalfPin: mm(2)}, joint.PinGone},
		{"sizes that do not add up", joint.Wish{Width: 250, Tails: new(4), Tail: mm(50), Pin: mm(10), HalfPin: mm(8)}, joint.Contradiction},
		{"mirrored to another count", joint.Wish{Width: 250, Tails: new(7), Widths: []measure.Length{30, 50}, Mirrored: true}, joint.OtherCount},
	} {
		_, err := joint.Lay(c.wish)
		var m *joint.Misfit
		if !errors.As(err, &m) || m.Kind != c.want {
			t.Errorf("%s: %v, want %s", c.name, err, c.want)
		}
	}
}

// The tail that comes to a point is told by its number from the front, and what it lacks.
func TestWhichTailComesToAPoint(t *testing.T) {
	_, err := joint.Lay(joint.Wish{Width: 250, Widths: []measure.Length{60, 9, 60}, Taper: 11})
	var m *joint.Misfit
	if !errors.As(err, &m) || m.Kind != joint.TailToPoint || m.Tail != 2 || m.Figure != 9 || m.Limit != 11 {
		t.Errorf("%+v", err)
	}
}

// Whatever is left out, a layout that is given fills the width, and what was typed stays.
func TestLayoutsFillTheWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := joint.Wish{Width: measure.Length(rapid.Float64Range(20, 1500).Draw(t, "width"))}
		maybe := func(name string, lo, hi float64) *measure.Length {
			if rapid.Bool().Draw(t, name+" typed") {
				return mm(measure.Length(rapid.Float64Range(lo, hi).Draw(t, name)))
			}
			return nil
		}
		w.Tail, w.Pin, w.HalfPin = maybe("tail", 10, 80), maybe("pin", 2, 30), maybe("half pin", 2, 30)
		if rapid.Bool().Draw(t, "count typed") {
			n := rapid.IntRange(1, 30).Draw(t, "count")
			w.Tails = &n
		}
		l, err := joint.Lay(w)
		if err != nil {
			t.Skip(err.Error())
		}
		sum := 2*l.HalfPin + measure.Length(len(l.Tails)-1)*l.Pin
		for _, s := range l.Tails {
			sum += s.Width()
		}
		if math.Abs(float64(sum-w.Width)) > 2e-6*float64(w.Width) {
			t.Fatalf("%g of %g", sum, w.Width)
		}
		for _, typed := range []struct {
			was *measure.Length
			is  measure.Length
		}{{w.Tail, l.Widths[0]}, {w.Pin, l.Pin}, {w.HalfPin, l.HalfPin}} {
			if typed.was != nil && *typed.was != typed.is {
				t.Fatalf("typed %g, became %g", *typed.was, typed.is)
			}
		}
		if w.Tails != nil && len(l.Tails) != *w.Tails {
			t.Fatalf("typed %d tails, became %d", *w.Tails, len(l.Tails))
		}
	})
}

// The count that follows from the width leaves every tail a root to stand on, however the pins and the slope are: one tail more
// would not, or would be more than the width asks for.
func TestTheCountThatFollowsLeavesRoots(t *testing.T) {
	fewer := 0
	rapid.Check(t, func(t *rapid.T) {
		w := joint.Wish{Width: measure.Length(rapid.Float64Range(60, 800).Draw(t, "width")), Taper: measure.Length(rapid.Float64Range(0, 25).Draw(t, "taper")),
			Pin: mm(measure.Length(rapid.Float64Range(3, 40).Draw(t, "pin"))), HalfPin: mm(8)}
		l, err := joint.Lay(w)
		if err != nil {
			t.Skip(err.Error())
		}
		n := len(l.Widths)
		if root := l.Widths[0] - w.Taper; n > 1 && root < joint.NarrowestRoot-1e-9 {
			t.Fatalf("%d tails with roots of %g", n, root)
		}
		if asked := int(math.Round(float64(w.Width/joint.TailPitch))) - 1; n < asked {
			fewer++
			w.Tails = new(n + 1)
			if m, err := joint.Lay(w); err == nil && m.Widths[0]-w.Taper >= joint.NarrowestRoot {
				t.Fatalf("%d tails where %d would have roots of %g", n, n+1, m.Widths[0]-w.Taper)
			}
		}
	})
	if fewer == 0 {
		t.Error("no slope took a tail away")
	}
}
