package cut

import (
	"math"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// board is 420 × 250 × 20 mm with one cut.
func board(kind part.CutKind, n mgl64.Vec3) (*part.Part, part.Cut) {
	p := &part.Part{ID: "board", Blank: part.Box{Length: 420, Width: 250, Thickness: 20}}
	s := SettingOf(n, kind)
	return p, part.Cut{ID: "cut", Kind: kind, Swing: s.Swing, Tilt: s.Tilt, Normal: n}
}

func drawBoard(t *rapid.T) (*part.Part, part.Cut) {
	angle := rapid.OneOf(rapid.Float64Range(-70, 70), rapid.SampledFrom([]float64{0, 45, 6, -0.03}))
	s := Setting{Swing: deg(angle.Draw(t, "swing")), Tilt: deg(angle.Draw(t, "tilt"))}
	n := s.normal()
	if rapid.Bool().Draw(t, "rip") {
		return board(part.Rip, mgl64.Vec3{n[1], n[0], n[2]})
	}
	if rapid.Bool().Draw(t, "left end") {
		n[0] = -n[0]
	}
	return board(part.Crosscut, n)
}

func TestExactSettingsLeaveNoGap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, c := drawBoard(t)
		for _, u := range For(p, c, 0) {
			if gap := u.GapAlong + u.GapThrough; gap > 1e-9 {
				t.Fatalf("%s: gap %g mm", u.Position, gap.MM())
			}
		}
	})
}

func TestRoundedSettingsAreWithinHalfAStepAndTheGapFollows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, c := drawBoard(t)
		step := deg(rapid.SampledFrom([]float64{0.1, 0.25, 0.5, 1}).Draw(t, "step"))
		for _, u := range For(p, c, step) {
			for _, off := range []measure.Angle{u.SwingOff(), u.TiltOff(), u.LeanSet - u.Lean} {
				if math.Abs(float64(off)) > float64(step)/2+1e-12 {
					t.Fatalf("%s: off by %v° at a step of %v°", u.Position, off.Degrees(), step.Degrees())
				}
			}
			// Two errors of half a step turn the plane by less than twice that.
			line, deep := lineLength(p, c, SettingOf(c.Normal, c.Kind)), Along(p.Blank.Thickness, c.Tilt)
			if most := Offset(line+deep, step); u.GapAlong+u.GapThrough > most {
				t.Fatalf("%s: gap %g mm, can be %g at most", u.Position, (u.GapAlong + u.GapThrough).MM(), most.MM())
			}
		}
	})
}

// The gap of one error alone is length × tan(error): along the cut for the swing, through the
// thickness for the tilt.
func TestGapOfOneErrorAlone(t *testing.T) {
	p, c := board(part.Crosscut, Setting{Swing: deg(5.2)}.normal())
	u := For(p, c, deg(1))[0]
	close(t, "along", u.GapAlong.MM(), Offset(Along(250, deg(5.2)), deg(0.2)).MM(), 1e-9)
	close(t, "through", u.GapThrough.MM(), 0, 1e-9)
	p, c = board(part.Crosscut, Setting{Tilt: deg(6.4)}.normal())
	u = For(p, c, deg(1))[0]
	close(t, "along", u.GapAlong.MM(), 0, 1e-9)
	close(t, "through", u.GapThrough.MM(), Offset(Along(20, deg(6.4)), deg(0.4)).MM(), 1e-9)
	c.Length = 100
	c.Normal = Setting{Swing: deg(5.2)}.normal()
	close(t, "over the cut's own length", For(p, c, deg(1))[0].GapAlong.MM(), Offset(100, deg(0.2)).MM(), 1e-9)
}

func positions(setups []Setup) []Position {
	var list []Position
	for _, u := range setups {
		list = append(list, u.Position)
	}
	return list
}

func TestWhichSetupsACutHas(t *testing.T) {
	for _, tc := range []struct {
		name string
		kind part.CutKind
		n    mgl64.Vec3
		want []Position
	}{
		{"a square end", part.Crosscut, mgl64.Vec3{1, 0, 0}, []Position{Flat}},
		{"a square edge", part.Rip, mgl64.Vec3{0, -1, 0}, []Position{Flat}},
		{"an end swung only has nothing to lean", part.Crosscut, Setting{Swing: deg(9)}.normal(), []Position{Flat, OnEdge}},
		{"a plain end bevel", part.Crosscut, Setting{Tilt: deg(6)}.normal(), []Position{Flat, OnEdge, Nested}},
		{"a compound end", part.Crosscut, Setting{deg(9), deg(6)}.normal(), []Position{Flat, OnEdge, Nested}},
		{"swung beyond 60", part.Crosscut, Setting{Swing: deg(65)}.normal(), []Position{Flat, OnEdge, EndOn}},
		{"tilted beyond 45", part.Crosscut, Setting{Tilt: deg(50)}.normal(), []Position{Flat, OnEdge, Nested, OnEnd}},
		{"swung and tilted beyond: the end to the fence leaves the tilt", part.Crosscut, Setting{deg(70), deg(50)}.normal(), []Position{Flat, OnEdge, Nested, OnEnd}},
		{"a taper", part.Rip, mgl64.Vec3{math.Sin(0.07), math.Cos(0.07), 0}, []Position{Flat}},
		{"a bevelled edge", part.Rip, mgl64.Vec3{0, math.Cos(0.1), math.Sin(0.1)}, []Position{Flat, Nested}},
		{"an edge bevelled beyond 45", part.Rip, mgl64.Vec3{0, math.Cos(1), math.Sin(1)}, []Position{Flat, Nested, OnEdge}},
	} {
		p, c := board(tc.kind, tc.n)
		got := positions(For(p, c, 0))
		if len(got) != len(tc.want) {
			t.Errorf("%s: %v, want %v", tc.name, got, tc.want)
			continue
		}
		for i := range got {
			if got[i] != tc.want[i] {
				t.Errorf("%s: %v, want %v", tc.name, got, tc.want)
				break
			}
		}
	}
}

// A side of a stool that leans 6°: its ends are plain bevels. On edge the gauge takes the whole
// angle; on a wedge of 6° both gauge and blade stand square.
func TestPlainEndBevelThreeWays(t *testing.T) {
	n := mgl64.Vec3{-math.Cos(deg(6).Radians()), 0, math.Sin(deg(6).Radians())} // top end: inner face longer
	p, c := board(part.Crosscut, n)
	setups := For(p, c, 0)
	flat, edge, nested := setups[0], setups[1], setups[2]
	close(t, "flat swing", flat.Setting.Swing.Degrees(), 0, 1e-9)
	close(t, "flat tilt", flat.Setting.Tilt.Degrees(), 6, 1e-9)
	close(t, "on edge swing", edge.Setting.Swing.Degrees(), 6, 1e-9)
	close(t, "on edge tilt", edge.Setting.Tilt.Degrees(), 0, 1e-9)
	close(t, "nested swing", nested.Setting.Swing.Degrees(), 0, 1e-9)
	close(t, "nested tilt", nested.Setting.Tilt.Degrees(), 0, 1e-9)
	close(t, "wedge", nested.Lean.Degrees(), 6, 1e-9)
	close(t, "bevel over the thickness", flat.TiltOffset.MM(), 20*math.Tan(deg(6).Radians()), 1e-12)
	if nested.Raised != PlusX {
		t.Errorf("the far end goes up, got %s", nested.Raised)
	}
	if flat.LongFace != "inner" || flat.LongSide != NoSide {
		t.Errorf("ends longer: %q %q, want the inner face and no edge", flat.LongFace, flat.LongSide)
	}
}

func TestWhichSideEndsLonger(t *testing.T) {
	for _, tc := range []struct {
		name string
		kind part.CutKind
		n    mgl64.Vec3
		face string
		side Side
	}{
		{"right end, longer along +y", part.Crosscut, mgl64.Vec3{0.9, -0.3, 0}, "", PlusY},
		{"left end, longer along +y", part.Crosscut, mgl64.Vec3{-0.9, -0.3, 0}, "", PlusY},
		{"right end, outer face longer", part.Crosscut, mgl64.Vec3{0.9, 0, -0.3}, "outer", NoSide},
		{"left end, inner face longer", part.Crosscut, mgl64.Vec3{-0.9, 0, 0.3}, "inner", NoSide},
		{"taper, wider towards +x", part.Rip, mgl64.Vec3{-0.1, 0.9, 0}, "", PlusX},
		{"taper, wider towards -x", part.Rip, mgl64.Vec3{0.1, 0.9, 0}, "", MinusX},
	} {
		p, c := board(tc.kind, tc.n.Normalize())
		u := For(p, c, 0)[0]
		if u.LongFace != tc.face || u.LongSide != tc.side {
			t.Errorf("%s: %q %q, want %q %q", tc.name, u.LongFace, u.LongSide, tc.face, tc.side)
		}
		wantLonger(t, tc.name, c, u)
	}
}

// wantLonger looks at the cut itself: the point of the plane over the longer side lies further out.
func wantLonger(t *testing.T, name string, c part.Cut, u Setup) {
	t.Helper()
	axis := 0
	if c.Kind == part.Rip {
		axis = 1
	}
	reach := func(at mgl64.Vec3) float64 { // of the cut along its own axis, past the middle
		return -(c.Normal.Dot(at) - c.Normal[axis]*at[axis]) / c.Normal[axis] * math.Copysign(1, c.Normal[axis])
	}
	sides := map[Side]mgl64.Vec3{PlusX: {1, 0, 0}, MinusX: {-1, 0, 0}, PlusY: {0, 1, 0}, MinusY: {0, -1, 0}}
	if at, ok := sides[u.LongSide]; ok && reach(at) <= 0 {
		t.Errorf("%s: %s does not end longer", name, u.LongSide)
	}
	faces := map[string]mgl64.Vec3{"outer": {0, 0, 1}, "inner": {0, 0, -1}}
	if at, ok := faces[u.LongFace]; ok && reach(at) <= 0 {
		t.Errorf("%s: the %s face does not end longer", name, u.LongFace)
	}
}

// Leaned by Lean with Raised going up, the cut stands plumb, so that a square blade makes it.
func TestNestedBoardBringsTheCutPlumb(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, c := drawBoard(t)
		for _, u := range For(p, c, 0) {
			if u.Position != Nested {
				continue
			}
			sin, cos := math.Sincos(u.Lean.Radians())
			out := map[Side]mgl64.Vec3{PlusX: {1, 0, 0}, MinusX: {-1, 0, 0}, PlusY: {0, 1, 0}, MinusY: {0, -1, 0}}[u.Raised]
			up := out.Mul(sin).Add(mgl64.Vec3{0, 0, cos}) // plumb, seen from the leaned board
			if lift := c.Normal.Dot(up); math.Abs(lift) > 1e-9 {
				t.Fatalf("the cut is %g off plumb, lean %v° raised %s, normal %v", lift, u.Lean.Degrees(), u.Raised, c.Normal)
			}
			if u.Setting.Tilt > 1e-9 {
				t.Fatalf("tilt %v°, want a square blade", u.Setting.Tilt.Degrees())
			}
		}
	})
}

// A mitred side that leans 30°, flat and standing on edge (O02 of the open cases, to a hundredth; exact: atan(cos L tan A) and
// asin(sin L sin A)). Whoever stands the board up twice has it lying flat again.
func TestTheSameCutOnEdge(t *testing.T) {
	flat := flatMitre(30)
	edge := flat.OnEdge()
	close(t, "flat swing", flat.Swing.Degrees(), 26.57, 0.005)
	close(t, "flat tilt", flat.Tilt.Degrees(), 37.76, 0.005)
	close(t, "swing on edge", edge.Swing.Degrees(), 40.89, 0.005)
	close(t, "tilt on edge", edge.Tilt.Degrees(), 20.70, 0.005)
	close(t, "flat again, swing", edge.OnEdge().Swing.Radians(), flat.Swing.Radians(), 1e-12)
	close(t, "flat again, tilt", edge.OnEdge().Tilt.Radians(), flat.Tilt.Radians(), 1e-12)
	rapid.Check(t, func(t *rapid.T) {
		p, c := drawBoard(t)
		if c.Kind == part.Rip {
			t.Skip("a crosscut's frame")
		}
		for _, u := range For(p, c, 0) {
			if u.Position == OnEdge && OnEdgeOf(c).Miss(u.Setting) > 1e-9 {
				t.Fatalf("on edge %v, as a set-up %v", OnEdgeOf(c), u.Setting)
			}
		}
	})
}

// A board leaned until the blade may stand square needs the gauge all the more: a mitre between four sides takes 45°, a little
// more than a gauge of 44° reaches. A rip's taper is set on a carriage and is never beyond.
func TestANestedCutBeyondTheGauge(t *testing.T) {
	for _, c := range []struct {
		kind   part.CutKind
		stop   float64
		beyond bool
	}{{part.Crosscut, 44, true}, {part.Crosscut, 45, false}, {part.Rip, 44, false}} {
		s := flatMitre(30)
		n := s.normal()
		if c.kind == part.Rip {
			n[0], n[1] = n[1], n[0]
		}
		p, e := board(c.kind, n)
		for _, u := range ForSaw(p, e, Saw{MaxSwing: deg(c.stop)}) {
			if u.Position == Nested && (u.SwingBeyond != c.beyond || u.TiltBeyond) {
				t.Errorf("%s, a gauge of %g°: swing beyond %v, tilt beyond %v", c.kind, c.stop, u.SwingBeyond, u.TiltBeyond)
			}
		}
	}
}

func BenchmarkSetups(b *testing.B) {
	p, c := board(part.Crosscut, Setting{deg(9), deg(6)}.normal())
	for b.Loop() {
		ForSaw(p, c, Saw{Step: deg(0.1)})
	}
}

// A saw without a flat table takes boards on edge or on end; what it reaches neither way is given
// flat and marked. A plain bevel of 50° is swung on edge; a rip cannot be made so.
func TestWithoutAFlatTable(t *testing.T) {
	for _, tc := range []struct {
		name string
		kind part.CutKind
		n    mgl64.Vec3
		want []Position
		ok   bool
	}{
		{"a square end", part.Crosscut, mgl64.Vec3{1, 0, 0}, []Position{OnEdge}, true},
		{"a plain end bevel", part.Crosscut, Setting{Tilt: deg(6)}.normal(), []Position{OnEdge}, true},
		{"a compound end", part.Crosscut, Setting{deg(9), deg(6)}.normal(), []Position{OnEdge}, true},
		{"a bevel of 50", part.Crosscut, Setting{Tilt: deg(50)}.normal(), []Position{OnEdge, OnEnd}, true},
		{"a bevel of 70", part.Crosscut, Setting{Tilt: deg(70)}.normal(), []Position{OnEnd}, true},
		{"swung 50: beyond the tilt on edge", part.Crosscut, Setting{Swing: deg(50)}.normal(), []Position{Flat}, false},
		{"a square edge", part.Rip, mgl64.Vec3{0, -1, 0}, []Position{Flat}, false},
		{"an edge bevelled 60", part.Rip, mgl64.Vec3{0, math.Cos(1.05), math.Sin(1.05)}, []Position{OnEdge}, true},
	} {
		p, c := board(tc.kind, tc.n)
		setups := ForSaw(p, c, Saw{Upright: true})
		if got := positions(setups); !slices.Equal(got, tc.want) {
			t.Errorf("%s: %v, want %v", tc.name, got, tc.want)
		}
		for _, u := range setups {
			if u.InRange() != tc.ok || u.NoTable == tc.ok {
				t.Errorf("%s, %s: reached %v", tc.name, u.Position, u.InRange())
			}
		}
	}
}
