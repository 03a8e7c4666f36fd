// Package part holds what one board of a piece is: its blank, its place, the
// cuts and holes it receives, and its solid.
//
// Part frame: right-handed, x along the grain, y across the width, z out of the
// outer face; z = 0 is the outer face and z = -thickness the inner face.
package part

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/solid"
)

// Box is the size of a square-ended board.
type Box struct {
	Length, Width, Thickness measure.Length
}

// Part is one board of the piece.
type Part struct {
	ID     string // "top", "side-left", "stretcher-1"
	Name   string // "Side, left"
	Timber string
	Slip   Slip   // what small loose part it is; "" = a board
	Mark   string // short mark on drawings and tables, "1", "2"; equal parts keep their own marks

	Blank Box // the smallest square-ended board the part comes from
	Rough Box // blank plus the allowance

	// FaceLength is the finished length along the grain, middle of the width, on each face.
	FaceLength struct{ Outer, Inner measure.Length }

	Place mgl64.Mat4   // part frame to world; a rotation and a shift
	Solid *solid.Solid // in the part frame, as it is cut and joined; nil when a stop finding prevented it
	// Finished is the solid when the free edges are rounded, after the glue-up; Solid itself where none is.
	Finished *solid.Solid
	Volume   float64    // mm³, of the finished solid
	Middle   mgl64.Vec3 // its centre of mass, part frame
	Mass     float64    // kg, from the timber's density at 12 % moisture

	Cuts     []Cut
	Bores    []Bore
	Features []Feature
	Eased    []EasedEdge
}

// Shape is the part as it looks in the finished piece; nil when it could not be cut.
func (p *Part) Shape() *solid.Solid {
	if p.Finished != nil {
		return p.Finished
	}
	return p.Solid
}

// Lying are the finished and the rough box of a part as it lies in the board that it is cut from. A small loose part that is
// thicker than it is wide, such as a wedge over a wide tenon, lies there on its edge, so that its thickness is its width.
func (p *Part) Lying() (finished, rough Box) {
	finished, rough = p.Blank, p.Rough
	if p.Slip == "" || finished.Thickness <= finished.Width {
		return finished, rough
	}
	wide, thick := rough.Width-finished.Width, rough.Thickness-finished.Thickness
	finished.Width, finished.Thickness = finished.Thickness, finished.Width
	rough.Width, rough.Thickness = finished.Width+wide, finished.Thickness+thick
	return finished, rough
}

// Slip names a small loose part that is cut from a strip made to fit.
type Slip string

// The kinds of slip.
const (
	Spline Slip = "spline"
	Key    Slip = "key"
	Wedge  Slip = "wedge"
)

// Late tells whether the part goes in when the boards are glued up.
func (s Slip) Late() bool { return s == Key || s == Wedge }

// CutKind says how a cut runs to the grain.
type CutKind string

// The kinds of cut.
const (
	Crosscut CutKind = "crosscut"
	Rip      CutKind = "rip"
)

// Cut is one straight saw cut through a board from face to face.
type Cut struct {
	ID     string // "top-end", "floor-end", "front-edge", "back-edge", "left-end", "right-end"
	Kind   CutKind
	Swing  measure.Angle // magnitude; crosscut: away from square; rip: away from the grain
	Tilt   measure.Angle // magnitude; blade away from square to the face
	Normal mgl64.Vec3    // outward unit normal, part frame
	// Offset is Normal·p for any point p of the cut, part frame, mm.
	Offset float64
	// Length of the cut line on the outer face, end to end.
	Length measure.Length
	// OuterLonger tells that the cut leans so that the outer face ends longer
	// than the inner face at this cut. False with Tilt 0.
	OuterLonger bool
	// Pair is the id ("part/cut") of the cut that is its mirror image, if any.
	Pair string
}

// Bore is one round hole, drilled from an entry point along an axis.
type Bore struct {
	ID       string     // "screw-1 clearance", "hole-1"
	Purpose  string     // "pilot", "clearance", "counterbore", "hole"
	Entry    mgl64.Vec3 // centre on the entry face, part frame
	Axis     mgl64.Vec3 // unit, into the wood
	Diameter measure.Length
	Depth    measure.Length // along the axis from Entry; for a through hole to the far face
	Through  bool
	Lean     measure.Angle  // axis away from square to the entry face
	Face     string         // "outer", "inner" or the id of the cut it enters
	Plug     measure.Length // diameter of the plug that closes it; 0 = none
	// Slot is how long the hole is along the part's x, ends included, where it is a slot in which the screw
	// moves as the wood does; 0 = round. Its middle is at Entry.
	Slot measure.Length
	// Screw is the screw that goes into the hole, the zero value where none does.
	Screw Screw
}

// Screw is a wood screw as it is asked for: its number, 4 to 14, and its length, measured from where its head seats.
type Screw struct {
	Number int
	Length measure.Length
}

// FeatureKind names a shape cut into a board besides its joints.
type FeatureKind string

// The kinds of feature.
const (
	Arch      FeatureKind = "arch"
	HandHole  FeatureKind = "hand hole"
	Hole      FeatureKind = "hole"
	Slot      FeatureKind = "slot"
	RoundOver FeatureKind = "round-over"
	Groove    FeatureKind = "groove"
	Notch     FeatureKind = "notch"
	Taper     FeatureKind = "taper"
	Chamfer   FeatureKind = "chamfer"
	Ogee      FeatureKind = "ogee"
)

// Feature is a feature as placed on a part, part frame.
type Feature struct {
	Index  int // place in the design's list of features, from 0
	Kind   FeatureKind
	Centre mgl64.Vec2     // on the outer face; arch: middle of its chord
	Length measure.Length // along the feature's long direction; arch: width of the chord
	Width  measure.Length // across; arch: its rise
	Depth  measure.Length // groove: square to its face; 0 = right through
	Inner  bool           // groove: in the inner face
	Angle  measure.Angle  // of the long direction from x; arch: of the chord from y
	Radius measure.Length // of the arc; arch: the circle's, hole: half the diameter; ogee: of the arcs that leave the edge

	// Edge is the id of the cut that a shape stands on: arch, ogee, notch, taper, chamfer, and a
	// round-over of one edge. Of those, Centre is the middle of their stretch of the edge, on the
	// outer face; Length runs along it, Width from it into the board, and Angle is that of the way
	// out of the board from x.
	Edge string
	Hull []mgl64.Vec2 // notch, taper, ogee, chamfer: corners of the wood it takes, on its face
	// Bevel, of a chamfer, is the angle between its face and the board's; its Width is on the board's
	// face, its Depth square to it.
	Bevel  measure.Angle
	Hollow measure.Length // ogee: radius of the hollow arcs
}

// EasedEdge is an edge of the finished piece that a round-over runs along.
type EasedEdge struct {
	Name     string
	Radius   measure.Length
	Length   measure.Length
	Dihedral measure.Angle // angle inside the wood between the two faces
	Removed  float64       // mm³ of wood the round-over takes away
	Cut      bool          // the solid has it; otherwise it stands in the tables alone
}

// Level is how serious a finding is.
type Level string

// The levels of findings. A stop means the piece cannot be cut as it stands.
const (
	Note    Level = "note"
	Warning Level = "warning"
	Stop    Level = "stop"
)

// CannotBeCut is the id of the finding that a part's walls do not close.
const CannotBeCut = "part-cannot-be-cut"

// Finding is something the program noticed about the piece.
type Finding struct {
	ID     string // kebab-case, stable: "pin-narrower-than-kerf"
	Level  Level
	Text   string   // a whole sentence in shop words with the figures and what would do
	Figure float64  // the measured value
	Limit  float64  // what it is compared with
	Unit   string   // "mm", "deg", ""
	Source string   // where the limit comes from
	Parts  []string // ids of the parts concerned
	Sizes  []string // paths in the design file that would change it: "corners.pin"
}
