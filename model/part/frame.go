package part

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/solid"
)

// Frame places a part: where its frame's origin and unit axes lie in the world. The three axes
// are right-handed and square to each other.
func Frame(origin, x, y, z mgl64.Vec3) mgl64.Mat4 {
	return mgl64.Mat4FromCols(x.Vec4(0), y.Vec4(0), z.Vec4(0), origin.Vec4(1))
}

// Back turns a rotation and a shift round: from world to part frame.
func Back(place mgl64.Mat4) mgl64.Mat4 {
	r := place.Mat3().Transpose()
	o := r.Mul3x1(place.Col(3).Vec3()).Mul(-1)
	return mgl64.Mat4FromCols(r.Col(0).Vec4(0), r.Col(1).Vec4(0), r.Col(2).Vec4(0), o.Vec4(1))
}

// SquareNoise is the slope of a normal below which a cut counts as square: rounding noise of
// sines and cosines, a ten-thousandth of the finest saw setting.
const SquareNoise = 1e-12

// CutOf reads a cut from its plane in the part frame. Pair and Length stay empty.
func CutOf(id string, kind CutKind, p solid.Plane) Cut {
	n := p.N
	along, across := math.Abs(n[0]), math.Abs(n[1])
	if kind == Rip {
		along, across = across, along
	}
	return Cut{
		ID: id, Kind: kind, Normal: n, Offset: p.D,
		Swing:       quiet(math.Atan2(across, along)),
		Tilt:        quiet(math.Asin(math.Min(1, math.Abs(n[2])))),
		OuterLonger: n[2] < -SquareNoise,
	}
}

// quiet takes rounding noise for the nothing that it is.
func quiet(a float64) measure.Angle {
	if a < SquareNoise {
		return 0
	}
	return measure.Angle(a)
}
