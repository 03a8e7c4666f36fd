// Package dimension places dimensions and notes about a view so that no text lies on another text
// or on a line. All places are paper millimetres, x right, y up.
//
// Practice follows ISO 129-1 as common practice has it: the first dimension line 10 mm from the
// outline, the next ones 8 mm apart, extension lines 2 mm beyond, values above the line and
// readable from below and from the right, slim closed arrowheads. (Figures from memory; the first
// two are also read in https://ja.scribd.com/document/398713789/Dimensioning.)
package dimension

import (
	"math"
	"slices"

	"splaywright/render/draw"
)

// Style is how dimensions look. Lengths are mm on paper.
type Style struct {
	Ink   draw.Ink
	Text  float64 // height of capitals
	Line  float64 // width of lines
	Arrow float64 // length of arrowheads
	First float64 // from the outline to the first dimension line
	Step  float64 // from one dimension line to the next
}

// Practice is the common style in an ink: 2.5 mm capitals (the smallest of ISO 3098), 0.25 mm lines.
func Practice(ink draw.Ink) Style {
	return Style{Ink: ink, Text: 2.5, Line: 0.25, Arrow: 2.6, First: 10, Step: 8}
}

// Distances that no sheet needs to change, mm.
const (
	beyond   = 2.0 // extension line past its dimension line
	lift     = 1.0 // foot of a value above its line
	clear    = 0.5 // least room round a text
	offStart = 1.0 // gap between a feature and its extension line: keeps the outline's corner crisp
)

// Side is where a dimension stands to its view.
type Side int

// The four sides of a view.
const (
	Below Side = iota
	Above
	LeftOf
	RightOf
)

// upright tells whether dimension lines on that side run up the paper.
func (s Side) upright() bool { return s == LeftOf || s == RightOf }

// Sketch is a view with what is written about it. Lines of the view go in first; dimensions and
// notes are asked for in any order and laid out by Finish.
type Sketch struct {
	Style Style
	Items []draw.Item

	outline draw.Box
	lines   []segment
	segs    []draw.Seg // room for the view's lines
	own     int        // how many of the lines are the view's
	texts   []quad
	linears [4][]linear
	running [4][]running
	base    [4]float64 // where a side's first straight dimension may stand
	levels  [4][][]laid
	angles  []angle
	leaders []leader
	stamps  []stamped
}

// New is an empty sketch.
func New(s Style) *Sketch { return &Sketch{Style: s, outline: draw.EmptyBox()} }

// Room makes room for so many lines of the view and points of theirs, before they go in.
func (k *Sketch) Room(lines, points int) {
	k.Items = slices.Grow(k.Items, lines+usualItems)
	k.lines = slices.Grow(k.lines, points+usualItems)
	k.segs = make([]draw.Seg, 0, points)
}

// usualItems is room for what is written about a view.
const usualItems = 128

// Line adds a line of the view itself, which dimensions stand clear of.
func (k *Sketch) Line(pts []draw.Point, pen draw.Pen, layer, ref string) {
	at := len(k.segs)
	for _, p := range pts {
		k.segs = append(k.segs, draw.LineTo(p))
	}
	segs := k.segs[at:len(k.segs):len(k.segs)]
	if len(segs) > 0 {
		segs[0].Kind = draw.Move
	}
	k.Curve(segs, pts, pen, layer, ref)
}

// Curve is Line for a curve that passes through the points.
func (k *Sketch) Curve(segs []draw.Seg, pts []draw.Point, pen draw.Pen, layer, ref string) {
	for i, p := range pts {
		k.outline = k.outline.Add(p)
		if i > 0 {
			k.lines = append(k.lines, segment{pts[i-1], p})
		}
	}
	k.Items = append(k.Items, draw.Path{Segs: segs, Pen: pen, Layer: layer, Ref: ref})
}

// Ring adds a circle of the view, which dimensions stand clear of.
func (k *Sketch) Ring(c draw.Point, r float64, pen draw.Pen, layer, ref string) {
	k.lines = append(k.lines, arcSegments(c, r, 0, 2*math.Pi)...)
	k.Items = append(k.Items, draw.Path{Segs: draw.Circle(c, r), Pen: pen, Layer: layer, Ref: ref})
}

// Outline is the box round the lines of the view.
func (k *Sketch) Outline() draw.Box { return k.outline }

// Chain adds a centre or symmetry line (long dash, dot), which does not widen the outline.
func (k *Sketch) Chain(a, b draw.Point, ref string) {
	d := k.Style.Line
	pen := draw.Pen{Width: d, Dash: []float64{24 * d, 3 * d, 0.5 * d, 3 * d}, Ink: k.Style.Ink}
	k.lines = append(k.lines, segment{a, b})
	k.Items = append(k.Items, draw.Path{Segs: draw.Polyline([]draw.Point{a, b}), Pen: pen, Layer: "centre", Ref: ref})
}

// Finish lays out everything asked for and gives all items of the sketch.
func (k *Sketch) Finish() []draw.Item {
	k.own = len(k.lines)
	for s := range k.base {
		k.base[s] = k.layRunning(Side(s))
	}
	for s := range k.linears {
		k.layLinears(Side(s))
	}
	for _, a := range k.angles {
		k.layAngle(a)
	}
	for _, l := range k.leaders { // no note may lie on what another points at
		k.lines = append(k.lines, segment{add(l.at, draw.Point{X: -spot}), add(l.at, draw.Point{X: spot})})
	}
	for _, l := range k.leaders {
		k.layLeader(l)
	}
	for _, s := range k.stamps {
		k.layStamp(s)
	}
	return k.Items
}

// Bounds is the box round everything drawn so far.
func (k *Sketch) Bounds() draw.Box { return draw.Bounds(k.Items) }

func (k *Sketch) thin(pts ...draw.Point) []draw.Seg { return draw.Polyline(pts) }

func (k *Sketch) put(segs []draw.Seg, ref string) {
	k.Items = append(k.Items, draw.Path{Segs: segs, Pen: draw.Pen{Width: k.Style.Line, Ink: k.Style.Ink}, Layer: "dimension", Ref: ref})
}

func (k *Sketch) putArrow(tip, dir draw.Point, ref string) {
	n := math.Hypot(dir.X, dir.Y) / k.Style.Arrow
	k.lines = append(k.lines, segment{draw.Point{X: tip.X - dir.X/n, Y: tip.Y - dir.Y/n}, tip})
	k.Items = append(k.Items, draw.Path{Segs: draw.Arrow(tip, dir, k.Style.Arrow), Filled: true, Fill: k.Style.Ink, Layer: "dimension", Ref: ref})
}

func (k *Sketch) putText(t draw.Text) {
	k.texts = append(k.texts, textQuad(t, 0))
	k.Items = append(k.Items, t)
}

func (k *Sketch) text(at draw.Point, turn float64, a draw.Align, s, ref string) draw.Text {
	return draw.Text{At: at, Turn: turn, Size: k.Style.Text, Align: a, Ink: k.Style.Ink, Text: s, Layer: "dimension", Ref: ref}
}

func (k *Sketch) width(s string) float64 { return draw.TextWidth(s, k.Style.Text, false) }

func dist(a, b draw.Point) float64 { return draw.Length(b.X-a.X, b.Y-a.Y) }

func add(a, b draw.Point) draw.Point { return draw.Point{X: a.X + b.X, Y: a.Y + b.Y} }

func polar(r, a float64) draw.Point {
	sin, cos := math.Sincos(a)
	return draw.Point{X: r * cos, Y: r * sin}
}
