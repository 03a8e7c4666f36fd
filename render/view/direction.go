package view

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/render/draw"
)

// Direction is a way of looking at a piece from far off, so that equal lengths look equal near and
// far. Right, Up and Toward (to the viewer) are square to each other and one long, world frame.
type Direction struct {
	Name              string
	Right, Up, Toward mgl64.Vec3
}

// The square-on directions. World: X right, Y back, Z up. End is seen from the right, Top has the
// back of the piece up, Bottom has its front up.
var (
	Front  = Direction{"front", mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 0, 1}, mgl64.Vec3{0, -1, 0}}
	Back   = Direction{"back", mgl64.Vec3{-1, 0, 0}, mgl64.Vec3{0, 0, 1}, mgl64.Vec3{0, 1, 0}}
	End    = Direction{"end", mgl64.Vec3{0, 1, 0}, mgl64.Vec3{0, 0, 1}, mgl64.Vec3{1, 0, 0}}
	Left   = Direction{"left", mgl64.Vec3{0, -1, 0}, mgl64.Vec3{0, 0, 1}, mgl64.Vec3{-1, 0, 0}}
	Top    = Direction{"top", mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 1, 0}, mgl64.Vec3{0, 0, 1}}
	Bottom = Direction{"bottom", mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, -1, 0}, mgl64.Vec3{0, 0, -1}}
)

// Isometric shows the three main directions equally foreshortened, from the right, in front and above:
// the tip is atan(1/√2).
var Isometric = named(Pictorial(45, math.Atan(math.Sqrt2/2)*180/math.Pi), "isometric")

func named(d Direction, name string) Direction {
	d.Name = name
	return d
}

// Pictorial is the direction of a viewer who started in front, went round the piece to its right by
// turn and then up by tip, both in degrees. Turn 0, tip 0 is the front view; tip 90 looks straight down.
func Pictorial(turn, tip float64) Direction {
	st, ct := math.Sincos(turn * math.Pi / 180)
	sp, cp := math.Sincos(tip * math.Pi / 180)
	toward := mgl64.Vec3{st * cp, -ct * cp, sp}
	right := mgl64.Vec3{ct, st, 0}
	return Direction{Name: "pictorial", Right: right, Up: toward.Cross(right), Toward: toward}
}

// Square is the direction square on to a face with outward normal toward; up is the direction that
// shall point up in the picture, as nearly as it can. The two must not be parallel.
func Square(name string, toward, up mgl64.Vec3) Direction {
	t := toward.Normalize()
	right := up.Cross(t).Normalize()
	return Direction{Name: name, Right: right, Up: t.Cross(right), Toward: t}
}

// Point is where a point of the world (mm) lies in the picture: mm, x right, y up, no scale.
func (d Direction) Point(p mgl64.Vec3) draw.Point {
	return draw.Point{X: p.Dot(d.Right), Y: p.Dot(d.Up)}
}

// Depth is how near a point of the world is to the viewer, mm; more is nearer.
func (d Direction) Depth(p mgl64.Vec3) float64 { return p.Dot(d.Toward) }

// turn is a point or direction in the picture's own frame: x right, y up, z to the viewer.
func (d Direction) turn(p mgl64.Vec3) mgl64.Vec3 {
	return mgl64.Vec3{p.Dot(d.Right), p.Dot(d.Up), p.Dot(d.Toward)}
}
