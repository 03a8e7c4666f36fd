// Package view turns solids into line drawings with hidden lines told apart exactly.
//
// What is drawn. Every crease of every part, and every line where a round surface turns away from the
// viewer, is cut where it passes behind the outline of something nearer; each stretch is either Visible
// or Hidden. A line where two faces meet without a crease is Smooth, and is drawn only where it is seen.
//
// Where boards touch. A face hides what lies behind it by more than Touching, never what lies in it. So
//   - the line where two boards meet in one plane (tail and pin on a dovetailed corner) is drawn, visible;
//   - the foot of a board that stands on another's face is drawn, visible;
//   - an edge in the contact between two boards is hidden if wood of either lies in front of it.
//
// Edges that fall on one line in the picture, of one part or of several, are drawn once. Visible wins over
// Smooth, and Smooth over Hidden. Of equals the nearest gives its part's name to the line, and of equally
// near ones the part that comes first in the piece.
package view

import "splaywright/render/draw"

// Tolerances, millimetres unless said otherwise.
const (
	// Touching: a point is behind a face only when it is farther behind the face's plane than this.
	Touching = 1e-5
	// Coincident: lines of the picture nearer to each other than this are surely drawn as one, and those
	// twenty times as far apart surely as two.
	Coincident = 1e-5
	// sideStep is how far beside a line one looks for what covers it. A face that looks narrower than
	// this may be taken for a line.
	sideStep = 2e-5
	// sliver is the shortest stretch of a line that is told apart.
	sliver = 1e-5
	// rounding is how far apart equal places may come out.
	rounding = 1e-8
	// edgeOn is the sine of the angle under which a face counts as seen on edge: rounding noise.
	edgeOn = 1e-9
)

// Kind tells how a line of a picture is to be drawn.
type Kind uint8

// The kinds of line.
const (
	Visible Kind = iota
	Smooth       // seen, and without a crease: tangent
	Hidden
	nothing // hidden, and not drawn when it is
)

// String is the name of the kind, which is also the name of its layer in drawings.
func (k Kind) String() string {
	return [...]string{"visible", "smooth", "hidden"}[k]
}

// Line is an open chain of points; a closed line repeats its first point.
type Line struct {
	Kind   Kind
	Points []draw.Point
	Part   string // id of the part whose edge it is
	Arc    *Arc   // what the points are taken from, where that is an arc; nil for all else
}

// Picture is what is seen in one direction: mm at full size, x right, y up; the world's origin is at 0, 0.
type Picture struct {
	Direction Direction
	Lines     []Line
	Min, Max  draw.Point // of all that is in the scene
}
