package joint_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/solid"
)

// upright makes a corner of two boards on edge whose inner faces meet at an angle; both boards
// are as thick and as wide as told.
func upright(inside measure.Angle, thick, wide float64) joint.Corner {
	plane := func(n mgl64.Vec3, d float64) solid.Plane { return solid.Plane{N: n, D: d} }
	z := mgl64.Vec3{0, 0, 1}
	sin, cos := math.Sincos(inside.Radians())
	low, high := plane(z.Mul(-1), 0), plane(z, wide)
	one, other := mgl64.Vec3{0, -1, 0}, mgl64.Vec3{-sin, cos, 0} // outer normals; boards along +x and at the angle
	return joint.Corner{
		Tail:  joint.Board{ID: "a", Outer: plane(one, 0), Inner: plane(one.Mul(-1), thick), Front: low, Back: high, Grain: mgl64.Vec3{1, 0, 0}},
		Pin:   joint.Board{ID: "b", Outer: plane(other, 0), Inner: plane(other.Mul(-1), thick), Front: low, Back: high, Grain: mgl64.Vec3{cos, sin, 0}},
		Along: z, Slope: measure.Angle(math.Atan(1.0 / 7)),
	}
}

// “Dovetails for a 135 degree corner”, a weblog on write.as: the baseline
// lies 1.414 thicknesses from each face's own end.
func TestBaselineOfAnOctagon(t *testing.T) {
	c := upright(135*measure.Degree, 12, 80)
	l, err := joint.Lay(joint.Wish{Width: c.Width(), Taper: c.Taper()})
	if err != nil {
		t.Fatal(err)
	}
	j := c.Dovetail(l)
	for name, got := range map[string]float64{
		"dihedral":       j.Dihedral.Degrees() / 135,
		"baseline":       j.Baseline.Outer.MM() / (12 * math.Sqrt2),
		"inner baseline": j.Baseline.Inner.MM() / (12 * math.Sqrt2),
		"pin baseline":   j.PinBaseline.Outer.MM() / (12 * math.Sqrt2),
	} {
		if math.Abs(got-1) > 1e-12 {
			t.Errorf("%s: %.15g times what it should be", name, got)
		}
	}
}

// At a square corner the cheeks stand square to the tail board and the pins show the slope.
func TestSquareCorner(t *testing.T) {
	c := upright(90*measure.Degree, 18, 120)
	l, err := joint.Lay(joint.Wish{Width: c.Width(), Taper: c.Taper()})
	if err != nil {
		t.Fatal(err)
	}
	j := c.Dovetail(l)
	if j.CheekTilt > 1e-12 || math.Abs((j.PinAngle-c.Slope).Radians()) > 1e-12 {
		t.Errorf("cheek tilt %g°, pin angle %g°, slope %g°", j.CheekTilt.Degrees(), j.PinAngle.Degrees(), c.Slope.Degrees())
	}
	for i, s := range j.Tails {
		in, root := j.TailsInner[i], j.TailRoots[i]
		if math.Abs(float64(in.Start-s.Start)) > 1e-9 || math.Abs(float64(root.Width()-(s.Width()-c.Taper()))) > 1e-9 {
			t.Errorf("tail %d: %v outside, %v inside, %v at the root", i+1, s, in, root)
		}
		if pin := j.Pins[i+1]; math.Abs(float64(pin.Start-s.End)) > 1e-9 {
			t.Errorf("pin %d begins at %g, tail %d ends at %g", i+1, pin.Start, i+1, s.End)
		}
		if j.PinsInner[i+1].Width() <= j.Pins[i+1].Width() {
			t.Errorf("pin %d is not wider on the inner face", i+1)
		}
	}
}
