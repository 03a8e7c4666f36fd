package cut

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// Setting is a swing and a tilt together.
type Setting struct {
	Swing measure.Angle
	Tilt  measure.Angle
}

// SettingOf gives the setting, as magnitudes, that cuts a plane with unit normal n in a board
// lying flat; n is in the part frame (x grain, y width, z face).
func SettingOf(n mgl64.Vec3, kind part.CutKind) Setting {
	return settingIn(n, flatFrame(kind))
}

// OnEdgeOf is the setting of a crosscut with the board standing on edge.
func OnEdgeOf(c part.Cut) Setting {
	return settingIn(c.Normal, edgeFrame)
}

// OnEdge is the setting that makes the same crosscut with the board standing on edge.
func (s Setting) OnEdge() Setting { return settingIn(s.normal(), edgeFrame) }

// Miss is the angle between the planes that two settings cut, both swung and tilted the same
// way: how far the one is from the other as a cut.
func (s Setting) Miss(other Setting) measure.Angle {
	return angleBetween(s.normal(), other.normal())
}

// normal is the plane's unit normal with the gauge swung towards +y and the blade towards +z.
func (s Setting) normal() mgl64.Vec3 {
	swing, tilt := s.Swing.Radians(), s.Tilt.Radians()
	return mgl64.Vec3{
		math.Cos(tilt) * math.Cos(swing),
		math.Cos(tilt) * math.Sin(swing),
		math.Sin(tilt),
	}
}

// FromNinety is the reading of a scale that calls square 90.
func FromNinety(a measure.Angle) measure.Angle { return 90*measure.Degree - a }

// frame says which axis of the part stands upright at the saw, and which one the cut's normal
// would lie along if the cut were square.
type frame struct{ upright, square, across int }

// edgeFrame is that of a crosscut in a board on edge.
var edgeFrame = frame{upright: 1, square: 0, across: 2}

func flatFrame(kind part.CutKind) frame {
	if kind == part.Rip {
		return frame{upright: 2, square: 1, across: 0}
	}
	return frame{upright: 2, square: 0, across: 1}
}

func settingIn(n mgl64.Vec3, f frame) Setting {
	return Setting{
		Swing: measure.Angle(math.Atan2(math.Abs(n[f.across]), math.Abs(n[f.square]))),
		Tilt:  measure.Angle(math.Atan2(math.Abs(n[f.upright]), math.Hypot(n[f.across], n[f.square]))),
	}
}

// normalIn is the reverse of settingIn; the signs are those of like.
func normalIn(s Setting, f frame, like mgl64.Vec3) mgl64.Vec3 {
	m := s.normal()
	var n mgl64.Vec3
	n[f.square] = math.Copysign(m[0], like[f.square])
	n[f.across] = math.Copysign(m[1], like[f.across])
	n[f.upright] = math.Copysign(m[2], like[f.upright])
	return n
}

// angleBetween is exact for small angles too, where an arc cosine would lose half its digits.
func angleBetween(a, b mgl64.Vec3) measure.Angle {
	return measure.Angle(math.Atan2(a.Cross(b).Len(), a.Dot(b)))
}
