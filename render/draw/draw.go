// Package draw holds drawings as data: pages of paths and texts in paper millimetres,
// x to the right, y up from the lower left corner.
package draw

// Point is a place on the paper, mm.
type Point struct{ X, Y float64 }

// Pen says how a path is stroked. Width 0 means not stroked.
type Pen struct {
	Width float64   // mm
	Dash  []float64 // mm on, off, …; empty = continuous
	Ink   Ink
}

// Ink is an opaque colour.
type Ink struct{ R, G, B uint8 }

// SegKind is the kind of a path's segment.
type SegKind int

// The kinds of segment. A Curve is a cubic Bézier with two control points.
const (
	Move SegKind = iota
	Line
	Curve
	Close
)

// Seg is one step of a path. P holds the end point last; Curve uses all three.
type Seg struct {
	Kind SegKind
	P    [3]Point
}

// Path is a stroked and/or filled figure (non-zero winding).
type Path struct {
	Segs   []Seg
	Pen    Pen
	Filled bool
	Fill   Ink
	Layer  string // "visible", "hidden", "dimension", "frame", "table", …
	Ref    string // what it belongs to: "side-left", "side-left/top-end", "size.height"; "" = nothing
}

// Align is where a text hangs on its point.
type Align int

// Alignments; the point lies on the baseline.
const (
	Left Align = iota
	Centre
	Right
)

// Text is one line of text. Size is the height of capitals, mm (as ISO 3098 gives it).
type Text struct {
	At    Point
	Turn  float64 // degrees, counter-clockwise
	Size  float64
	Align Align
	Bold  bool
	Ink   Ink
	Text  string
	Layer string
	Ref   string
}

// Item is a Path or a Text.
type Item interface{ item() }

func (Path) item() {}
func (Text) item() {}

// Page is one sheet of paper, or one picture.
type Page struct {
	Title         string
	Width, Height float64 // mm
	Items         []Item
}
