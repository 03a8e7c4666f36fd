// Package form turns a design's sizes into parts and joints.
package form

import (
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/stock"
	"splaywright/model/timber"
)

// Design is what a person typed, as values. The text as typed stays in the file's document.
type Design struct {
	Title      string
	Units      measure.Unit // of bare numbers, and what papers print unless told otherwise
	Form       string       // one of Forms
	Size       Size
	Splay      Splay
	Timber     string
	Timbers    timber.Book // key timbers: the person's own, and prices
	Boards     Boards
	Corners    Corners
	Bottom     *Bottom // tray, chest and ring; nil = open below
	Lid        *Lid    // chest; nil = open above
	Stretchers []Stretcher
	Aprons     *Aprons // stool; nil = none
	Features   []Feature
	Allowance  Allowance
	Saw        Saw
	Round      Round
	Papers     Papers
	Use        Use
	Tolerance  Tolerance
	CameOut    CameOut // key came-out
	Plan       Plan
	OnHand     []stock.Board // key boards-on-hand
	ToBuy      []stock.Board // key boards-to-buy: what the yard has, each with its price
	Yard       []Yard        // key yard: what the yard sells by the foot
	Cost       Cost
}

// Cost is what things cost, in whatever currency the person counts; 0 = not told.
type Cost struct {
	WoodPerM3        float64 // key wood-per-m3: of rough wood
	WoodPerBoardFoot float64 // key wood-per-board-foot; instead of the price of a cubic metre
	Waste            int     // percent of rough wood that is bought besides, for defects and offcuts
	EachScrew        float64
	EachPlug         float64
	FinishPerM2      float64 // of surface, all coats together
}

// Use is what the piece has to bear.
type Use struct {
	Load int // kg, of a person or what stands on it; 0 = 150, the most that EN 14183 provides for
	// Dry and Damp are the relative humidity, percent, of the air it lives in at its driest and
	// dampest, at 20 °C; 0 = 30 and 65.
	Dry, Damp int
}

// Tolerance is what the shop's cuts hold to, plus or minus; what is 0 was left out and is as usual.
type Tolerance struct {
	Length    measure.Length // of anything that a rule or a stop sets
	Angle     measure.Angle
	Thickness measure.Length // of a planed board, and of what is let in
}

// CameOut is what was measured on the finished piece; 0 = it was not.
type CameOut struct {
	WidthTop, WidthFloor    measure.Length
	DepthTop, DepthFloor    measure.Length
	Height                  measure.Length // walls
	HeightLeft, HeightRight measure.Length // a top's ends; steps: the lower tread's left end, the upper one's right
}

// Words of the design file for the first cuts of a board.
const (
	CrosscutFirst = "crosscut"
	RipFirst      = "rip"
	EitherFirst   = "either"
)

// Plan is how boards on hand are cut up.
type Plan struct {
	TrimEnds  measure.Length // off both ends of every board: checks, dirt, nails
	TrimEdges measure.Length // off both edges
	// An offcut is kept that is at least Keep long along the grain and KeepWidth wide; one that is 0 is as the other, and where
	// both are, none is kept.
	Keep, KeepWidth measure.Length
	First           string // "crosscut", "rip", "either"; "" = either
	Run             bool   // side, top and side come out of one board in order, so that the grain runs over the corners
	// Resawn: two boards are sawn from one through its thickness and opened like a book, so that the sides of a stool mirror
	// each other and the grain runs over all corners of walls.
	Resawn    bool
	GlueUp    bool           // parts wider than any board may be glued up of strips
	Narrowest measure.Length // strip of a glue-up; 0 = 50 mm
	Planing   measure.Length // the most that may be planed off a board thicker than a part asks for; 0 = any
	Missing   bool           // wood to buy is for the parts that the boards on hand do not yield
	Pieces    int            // made together out of the same wood; 0 = 1
}

// MostPieces are made together, at most: more parts than a small shop cuts at a time.
const MostPieces = 24

// TakenAt says where width and depth are measured.
type TakenAt string

// Where width and depth are measured.
const (
	AtTop   TakenAt = "top"
	AtFloor TakenAt = "floor"
)

// Size is the overall size of the piece.
type Size struct {
	// Height is from the floor to the highest point, with a lid and a bottom under the walls. Width of
	// a ring is across the flats: twice the way from its axis to a stave's outer face. Depth is not
	// used by a ring.
	Height, Width, Depth measure.Length
	TakenAt              TakenAt
	Staves               int // of a ring
	// Steps: from the floor to the lower tread's upper face, and from that tread's free end to the
	// middle side's outer face, on the upper face.
	LowerHeight, LowerWidth measure.Length
}

// EdgeCut says how the front and back edges of a splayed side are cut.
type EdgeCut string

// How edges are cut: square to the board's face; a stool's flush with the lean of its front and
// back; a wall's level.
const (
	EdgeSquare EdgeCut = "square"
	EdgeFlush  EdgeCut = "flush"
	EdgeLevel  EdgeCut = "level"
)

// Splay is how far the boards lean from plumb. Positive = feet outward. A lean under a millionth
// of a radian stands upright: over a metre it comes to a thousandth of a millimetre.
type Splay struct {
	// Ends: a stool's sides, the end walls of a tray or chest, every stave of a ring. A tray and a
	// ring lean positive when wider at the rim, a stool and a chest when wider at the floor.
	Ends, Edges measure.Angle
	Measured    string        // key splay.measured: "square-on" or "in the board"; "" = square-on
	EdgeCut     EdgeCut       // key splay.edge-cut
	Front       measure.Angle // front and back walls of a tray or chest
	Middle      measure.Angle // steps: of the side that both treads share, its foot towards the lower step
	// A wall that leans unlike its fellow; nil = like Front or Ends.
	Back, EndLeft, EndRight *measure.Angle
}

// Board is what is known of a board before it is cut.
type Board struct {
	Thickness measure.Length
	Timber    string // "" = the design's
}

// Boards by role.
type Boards struct {
	Top, Side        Board // Side: a stool's sides, and every wall that has nothing of its own
	Front, Back, End Board // walls of a tray or chest; nothing = like Side
}

// Screws is a set of equal screws through one board into another.
type Screws struct {
	Gauge       int            // wood screw number, 4 to 14
	Length      measure.Length // of the screw
	Count       int            // in one row
	FromEnd     measure.Length // first and last screw from the end (stretcher: from its edge; corner: from the front and back edge)
	Counterbore measure.Length // depth of the counterbore; 0 = countersunk flush
	Plug        bool           // the counterbore is closed by a plug
}

// Corners is how the top meets the sides, or the walls each other. A pointer that is nil was left out and follows
// from the others by trade practice.
type Corners struct {
	Joint      string          // "through dovetail", "butt", "housing"; walls also those of WallJoints
	TailsOn    string          // "top", "side"; walls: "front", "end"
	Over       string          // butt and housing of walls: which walls run through, "front" or "end"
	Lap        *measure.Length // half-blind dovetail: what is left of the pin board over the tails
	Slope      measure.Angle
	Tails      *int
	Tail       *measure.Length
	Pin        *measure.Length
	HalfPin    *measure.Length
	TailWidths []measure.Length // uneven tails, front to back; overrides Tails
	Mirrored   bool             // key corners.mirrored: TailWidths runs from the edge to the middle and is mirrored
	// Overhang, butt and housing: top beyond the outer planes of the sides at the top's upper face,
	// each end; housing of walls: the wall that runs through beyond the other, along its grain.
	Overhang      measure.Length
	OverhangEdges measure.Length  // the same at front and back; key corners.overhang-edges
	Depth         *measure.Length // of a housing
	// Shoulder is what is cut off the outer face of the board that is let in, so that a tongue is left on its
	// inner side; nil = none in a housing, half of the board in a groove.
	Shoulder *measure.Length
	// Stop is what a housing or groove stays short of the upper edge of a wall, or of the front edge of a
	// stool's side, square to that edge; the board that is let in is notched there. 0 = it runs out.
	Stop   measure.Length
	Screws *Screws // butt and housing
	Spline *Spline // mitre with splines
	Keys   *Keys   // mitre with keys
}

// Spline is a loose tongue in grooves that are square to the faces of a mitre. What is 0 was left out
// and follows from the walls' thickness.
type Spline struct {
	Thickness measure.Length
	Width     measure.Length // across the joint, along its grain: half of it in either wall
	Inset     measure.Length // along the mitre, from the corner's inner line to the groove
	Stop      measure.Length // what the grooves stay short of the upper edge, along the corner; 0 = they run out
	Timber    string
}

// Keys are slips let into saw cuts across the corner of a mitre that is glued already. What is 0 was
// left out and follows from the walls.
type Keys struct {
	Count     int            // a corner
	Thickness measure.Length // of a key and of its slot; left out: the saw's kerf
	Depth     measure.Length // from the corner's outer line to the floor of the slot; settled when the corners are known
	Pitch     measure.Length // from the middle of one key to the middle of the next; left out: evenly spread
	Timber    string
}

// Bottom is the board that closes the walls below.
type Bottom struct {
	Thickness measure.Length
	Timber    string
	Joint     string          // "groove", "rabbet", "screwed on"
	Up        measure.Length  // groove: from the floor to the underside of the bottom
	Depth     *measure.Length // of groove or rabbet, square to the wall's face
	Clearance *measure.Length // left between the bottom's edge and the floor of its groove
	Screws    *Screws         // screwed on: per wall
}

// Lid is a chest's lid.
type Lid struct {
	Thickness measure.Length
	Timber    string
	Overhang  measure.Length // beyond the walls' outer faces at the rim, all round
	Battens   *Battens       // nil = none
}

// Battens are strips across the lid's grain on its underside that keep it flat.
type Battens struct {
	Width, Thickness measure.Length
	Inset            measure.Length // from the walls' inner faces, all round
	Count            int
	Timber           string
	Screws           *Screws
}

// Stretcher is a board between the two sides.
type Stretcher struct {
	Width, Thickness measure.Length
	Set              string         // "on edge", "flat"
	BelowTop         measure.Length // from the underside of the top to the stretcher's upper edge or face
	Across           measure.Length // its middle from the middle of the piece, positive to the back
	Under            string         // steps: the tread that it stands under, "upper" or "lower"
	Joint            string         // one of StretcherJoints
	Depth            measure.Length // of a housing
	Tenon            *Tenon         // of a tenon
	Timber           string
	Screws           *Screws
}

// Feature is a shape cut into a board. X is along the grain and Y across, from the
// middle of the board's face, except that an arch is placed on the floor end and a hole
// on a side measures X from the floor end along the face (positive up).
//
// A shape that stands on an edge is placed along it: by X along a long edge and by Y along an end, from
// the edge's middle, or, where From names an end of the edge, from there.
type Feature struct {
	On       string // part, or several parts by what their ids begin with: "top", "side", "side-left", "side-right", "stretcher", "all"
	Kind     string // one of FeatureKinds
	Width    measure.Length
	Rise     measure.Length
	Length   measure.Length
	Diameter measure.Length
	Radius   measure.Length
	Hollow   measure.Length // ogee: radius of the hollow arcs; 0 = as Radius
	X, Y     measure.Length
	Angle    measure.Angle  // slot, row of holes: long direction from the grain; chamfer: from the face, 0 = 45°
	Count    int            // row of holes
	Pitch    measure.Length // row of holes: from middle to middle
	Depth    measure.Length // groove: square to the face; hole, slot: the same, 0 = through; notch, taper: square to the edge
	Face     string         // groove, chamfer, round-over of an edge: "outer", "inner"; "" = outer
	Edge     string         // id of the cut that it stands on, or "edges", "ends", "all"; "" = where an arch stands
	From     string         // id of the cut at the end of the edge that it is placed from; "" = the middle
}

// FeatureKinds are the kinds there are, as the design file names them.
func FeatureKinds() []string {
	return []string{string(part.Arch), string(part.Ogee), string(part.HandHole), string(part.Hole), RowOfHoles, string(part.Slot),
		string(part.Notch), string(part.Taper), string(part.Groove), string(part.Chamfer), string(part.RoundOver)}
}

// Words of the design file for several edges at once.
const (
	LongEdges = "edges"
	BothEnds  = "ends"
	AllEdges  = "all"
)

// Allowance is what a rough board has beyond its blank.
type Allowance struct{ Length, Width, Thickness measure.Length }

// Saw is what the person's saw can do.
type Saw struct {
	Kerf measure.Length
	// Resaw is how wide a cut through a board's thickness is; 0 = 1/16 in.
	Resaw measure.Length
	Step  measure.Angle // what its scales can be set to
	// NoFlatTable is the key saw.flat-table turned round: false there says that no board can be laid
	// on a face at this saw, which then takes boards only on edge or on end. Left out, it can.
	NoFlatTable bool
	MaxSwing    measure.Angle  // 0 = 60 deg, stated in the finding; key saw.max-swing
	MaxTilt     measure.Angle  // 0 = 45 deg; key saw.max-tilt
	Depth       measure.Length // how far the blade reaches out of the table, along itself; 0 = 79 mm, said as such
	Cradle      measure.Angle  // of a wedge cradle that leans boards about their grain; 0 = none
}

// Round is how papers print.
type Round struct {
	To   measure.Length // step: 0.5 mm, 1/32 in
	Unit measure.Unit   // follows from how To was typed
	Both bool           // key round.both: mm and inches side by side
	// Comma is the key round.decimal: a comma divides decimals on paper, "12,5". Files for other programs
	// (CSV, workbook, JSON) keep their numbers as numbers.
	Comma bool
	Said  bool // the design says which; else whoever prints decides
}
