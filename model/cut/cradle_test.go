package cut

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// mitred is a wall of so many, wider at the rim by a lean, with the mitre at its right-hand end: that plane is plumb and halves
// the corner. The board's x is level, its y up the slope, its z out of the outer face.
func mitred(lean float64, sides int) (*part.Part, part.Cut) {
	half := math.Pi / float64(sides)
	sin, cos := math.Sincos(deg(lean).Radians())
	return board(part.Crosscut, mgl64.Vec3{math.Cos(half), -math.Sin(half) * sin, -math.Sin(half) * cos})
}

// inCradle is the set-up in a wedge cradle, if there is one.
func inCradle(setups []Setup) (u Setup, ok bool) {
	for _, u := range setups {
		if u.Position == Cradled {
			return u, true
		}
	}
	return u, false
}

// A wall laid in a cradle as it leans in the piece is mitred with the blade plumb and the gauge at half the corner (O02 of the
// open cases). What the wedge lacks of that, or has too much, is as the lean of a board on edge: swing atan(cos d tan A), tilt
// asin(sin d sin A), A being half the corner (exact geometry). With the outer face up it is the floor edge that goes up.
func TestAWallInACradle(t *testing.T) {
	for _, c := range []struct {
		lean  float64 // of the wall, from plumb
		sides int
		wedge float64 // from level
	}{{30, 4, 60}, {5, 4, 85}, {15, 6, 75}, {45, 4, 30}, {45, 4, 60}, {10, 8, 40}, {-10, 4, 80}} {
		p, e := mitred(c.lean, c.sides)
		u, ok := inCradle(ForSaw(p, e, Saw{Cradle: deg(c.wedge)}))
		if !ok {
			t.Errorf("%+v: nothing in the person's own cradle", c)
			continue
		}
		half, lacks := math.Pi/float64(c.sides), deg(90-math.Abs(c.lean)-c.wedge).Radians()
		close(t, "swing", u.Setting.Swing.Radians(), math.Atan(math.Cos(lacks)*math.Tan(half)), 1e-12)
		close(t, "tilt", u.Setting.Tilt.Radians(), math.Abs(math.Asin(math.Sin(lacks)*math.Sin(half))), 1e-12)
		close(t, "wedge", u.Lean.Degrees(), c.wedge, 1e-12)
		want := MinusY
		if c.lean < 0 {
			want = PlusY
		}
		if u.Raised != want {
			t.Errorf("%+v: side %s goes up, not %s", c, u.Raised, want)
		}
	}
}

// What a saw does not reach in a cradle is told, of the gauge and of the blade each; at its stop it does reach.
func TestBeyondTheSawInACradle(t *testing.T) {
	p, e := mitred(30, 4) // in a wedge of 40°: swing atan cos 20° = 43.219°, tilt asin(sin 20° sin 45°) = 13.994°
	swing, tilt := math.Atan(math.Cos(math.Pi/9)), math.Asin(math.Sin(math.Pi/9)*math.Sqrt2/2)
	for _, c := range []struct {
		swing, tilt             float64 // of the saw's most, of what is needed
		swingBeyond, tiltBeyond bool
	}{{1, 1, false, false}, {0.999, 1, true, false}, {1, 0.999, false, true}, {0.5, 0.5, true, true}, {1.2, 2, false, false}} {
		saw := Saw{Cradle: deg(40), MaxSwing: measure.Angle(c.swing * swing), MaxTilt: measure.Angle(c.tilt * tilt)}
		u, ok := inCradle(ForSaw(p, e, saw))
		if !ok || u.SwingBeyond != c.swingBeyond || u.TiltBeyond != c.tiltBeyond {
			t.Errorf("%+v: swing beyond %v, tilt beyond %v (found %v)", c, u.SwingBeyond, u.TiltBeyond, ok)
		}
	}
}

// Where nothing else does, the flattest wedge in steps of 5° is proposed that does; where something else does, or no wedge
// would, none. The depth of the blade counts as well.
func TestWhichCradleIsProposed(t *testing.T) {
	for _, c := range []struct {
		name  string
		lean  float64
		saw   Saw
		wedge float64 // 0: none
	}{
		{"flat will do", 30, Saw{}, 0},
		{"a blade that tilts to 20° only", 30, Saw{MaxTilt: deg(20), MaxSwing: deg(46), Depth: 200}, 60 - 25}, // asin(sin d sin 45°) ≤ 20° up to d = 28.9°
		{"laid as it leans will do, with a blade that hardly tilts", 30, Saw{MaxTilt: deg(1), MaxSwing: deg(46), Depth: 400}, 0},
		{"a gauge that stops at 40°", 30, Saw{MaxTilt: deg(29.5), MaxSwing: deg(40), Depth: 400}, 20}, // atan cos d ≤ 40° from d = 32.9° on, the tilt to d = 44.1°
		{"the blade reaches too little for any", 30, Saw{MaxTilt: deg(1), MaxSwing: deg(46), Depth: 20}, 0},
	} {
		p, e := mitred(c.lean, 4)
		setups := ForSaw(p, e, c.saw)
		u, ok := inCradle(setups)
		if ok != (c.wedge > 0) || math.Abs(u.Lean.Degrees()-c.wedge) > 1e-9 {
			t.Errorf("%s: a wedge of %.4g°, proposed %v; %g° is right of %+v", c.name, u.Lean.Degrees(), ok, c.wedge, positions(setups))
		}
	}
}

// Of the two edges that may be raised, one that works goes before one whose angles alone are reached, that before one that is not, and then the one with the blade nearer to
// upright: that is what a cradle is for. The gaps that rounding costs are those by which the plane cut misses the far corners of
// the true one: followed through the cradle, not by the formula of gaps.
func TestTheBetterEdgeAndTheGapsInACradle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, e := mitred(rapid.Float64Range(-50, 50).Draw(t, "lean"), rapid.IntRange(3, 9).Draw(t, "sides"))
		saw := Saw{Cradle: deg(rapid.Float64Range(2, 85).Draw(t, "wedge")), Step: deg(rapid.SampledFrom([]float64{0.25, 0.5, 1}).Draw(t, "step"))}.withDefaults()
		u, ok := inCradle(ForSaw(p, e, saw))
		if !ok {
			t.Skip("square as it lies")
		}
		other := PlusY
		if u.Raised == PlusY {
			other = MinusY
		}
		v := cradled(p, e, saw, saw.Cradle, other)
		v.Reach = reach(p, e, &v)
		rank := func(u Setup) int {
			if !u.InRange() {
				return 0
			} else if u.Reach > saw.Depth {
				return 1
			}
			return 2
		}
		if rank(v) > rank(u) || rank(v) == rank(u) && rank(u) > 0 && v.Setting.Tilt < u.Setting.Tilt-1e-9 {
			t.Fatalf("%s goes up, works %d, tilt %.4f; with %s %d and %.4f", u.Raised, rank(u), u.Setting.Tilt.Degrees(), other, rank(v), v.Setting.Tilt.Degrees())
		}
		along, through := strayed(p, e, u)
		if math.Abs(along-u.GapAlong.MM()) > 1e-9*(1+along) || math.Abs(through-u.GapThrough.MM()) > 1e-9*(1+through) {
			t.Fatalf("gaps %.6f along and %.6f through, followed %.6f and %.6f", u.GapAlong.MM(), u.GapThrough.MM(), along, through)
		}
	})
}

// strayed is how far the plane that the rounded settings cut in the cradle lies off the true one at the far end of the cut on the
// upper face and, straight below the near end, on the lower one: each point is put down as the board lies, and how far it is from
// the plane is measured at right angles to the true cut.
func strayed(p *part.Part, e part.Cut, u Setup) (along, through float64) {
	turn := deg(u.Lean.Degrees()).Radians()
	if u.Raised == MinusY {
		turn = -turn
	}
	lies := mgl64.Rotate3DX(turn)
	true3 := lies.Mul3x1(e.Normal)
	set := u.Set.normal()
	for k := range set {
		set[k] = math.Copysign(set[k], true3[k])
	}
	line := mgl64.Vec3{-e.Normal[1], e.Normal[0], 0}.Normalize()
	down := line.Cross(e.Normal)
	far := line.Mul(math.Hypot(250, 250*math.Tan(SettingOf(e.Normal, e.Kind).Swing.Radians())))
	deep := down.Mul(20 / math.Abs(down[2]))
	off := func(v mgl64.Vec3) float64 { return math.Abs(lies.Mul3x1(v).Dot(set) / set.Dot(true3)) }
	return off(far), off(deep)
}
