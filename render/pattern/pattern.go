// Package pattern draws full-size patterns of the parts: each face as it is cut, and each end
// unrolled as a strip that wraps round it from the outer face over the end to the inner face. It
// lays them out on sheets to be joined, and on one large page for a plotter or a cutter.
//
// A pattern's own frame is millimetres of the part, x along the grain to the right, y up. The outer
// face is seen from outside. The inner face is seen from inside, the board turned over about its
// long axis, so that its ends stay where they were. A wrapped end lies as the outer face does.
package pattern

import (
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/draw"
)

// Kind is what a line of a pattern is for; its word is the layer of the drawn path.
type Kind string

// The kinds of line.
const (
	Cut   Kind = "cut"       // an edge of the finished part
	Fold  Kind = "fold"      // an arris that the paper is folded over
	Mark  Kind = "mark"      // centres to prick
	Guide Kind = "reference" // baselines, the blank's edges, the paper's ends, the arrows
	Waste Kind = "waste"     // crosses on what is cut away
)

// Line is one line of a pattern.
type Line struct {
	Kind Kind
	Segs []draw.Seg
	Ref  string // the part, or the part and the wall that the line belongs to: "top/tail 1 front cheek"
	Head bool   // the head of an arrow, filled
}

// Label is words that belong to a place of a pattern. Where they find room is settled on the sheet
// that they come on, as near to the place as the lines there let them.
type Label struct {
	At     draw.Point
	Lines  []string
	Size   float64 // height of capitals, mm
	Signed bool    // the first line is the part's mark, underlined
	Leader bool    // a thin line leads back to the place where the words stand off it
	Rim    float64 // that line ends so far from the place, mm
	// In is a convex figure, counter-clockwise, that the words must not leave; nil where they may.
	In    []draw.Point
	sense string // of a single word that means several things, for Tongue.Sense
}

// Pattern is one full-size figure.
type Pattern struct {
	Part  *part.Part
	Name  Name   // of the part, or of all parts that are cut alike
	Place string // "outer face", "inner face", "right end, wrapped round"
	Tells string // how to lay it
	Lines []Line
	// Labels are placed on each sheet that holds their anchor.
	Labels []Label
	// Upright tells that the pattern was turned so that its grain runs up the paper.
	Upright bool
}

// Named tolerances, mm.
const (
	sameSpot   = 1e-7 // two points nearer than this are one
	inPlane    = 1e-6 // a face this near to a plane lies in it
	curveNoise = 1e-8 // how far a drawn curve strays from its arc
)

// Sizes of what is written and marked on a pattern, mm.
const (
	smallText = 2.5
	markText  = 7.0
	pastLine  = 22.0 // a wrapped strip reaches this far past its baseline
	leastWrap = 30.0 // and at least so far over either face
)

// For draws the patterns that a part needs, in a fixed order: outer face, inner face, ends. A face
// needs one where it shows more than straight square cuts; an end, where it is not square or where
// something is marked on it. A part without a solid has none.
func For(q *part.Part, style measure.Style) []Pattern {
	if q.Solid == nil {
		return nil
	}
	return newBlank(q, nameOf([]*part.Part{q}), style).patterns()
}

func (b *blank) patterns() []Pattern {
	q := b.q
	var out []Pattern
	for _, f := range []*face{b.outer, b.inner} {
		if b.faceNeeded(f) {
			out = append(out, b.facePattern(f))
		}
	}
	for i := range q.Cuts {
		if b.endNeeded(&q.Cuts[i]) {
			out = append(out, b.wrap(&q.Cuts[i]))
		}
	}
	return out
}

func (p *Pattern) line(k Kind, segs []draw.Seg, ref string) {
	p.Lines = append(p.Lines, Line{Kind: k, Segs: segs, Ref: ref})
}

// head draws an arrowhead.
func (p *Pattern) head(tip, way draw.Point, length float64, ref string) {
	p.Lines = append(p.Lines, Line{Kind: Guide, Segs: draw.Arrow(tip, way, length), Ref: ref, Head: true})
}

func (p *Pattern) label(at draw.Point, lines ...string) {
	p.Labels = append(p.Labels, Label{At: at, Lines: lines, Size: smallText})
}

// Bounds is the box round the pattern's lines, by the handles of its curves.
func (p *Pattern) Bounds() draw.Box {
	b := draw.EmptyBox()
	for _, l := range p.Lines {
		b = b.Join(draw.Bounds([]draw.Item{draw.Path{Segs: l.Segs}}))
	}
	return b
}

// mapped is the pattern with every place sent through f, which must be affine.
func (p Pattern) mapped(f func(draw.Point) draw.Point) Pattern {
	lines := make([]Line, len(p.Lines))
	for i, l := range p.Lines {
		segs := make([]draw.Seg, len(l.Segs))
		for j, s := range l.Segs {
			for k := range s.P {
				s.P[k] = f(s.P[k])
			}
			segs[j] = s
		}
		l.Segs = segs
		lines[i] = l
	}
	labels := make([]Label, len(p.Labels))
	for i, l := range p.Labels {
		l.At = f(l.At)
		in := make([]draw.Point, len(l.In))
		for j, q := range l.In {
			in[j] = f(q)
		}
		l.In = in
		labels[i] = l
	}
	p.Lines, p.Labels = lines, labels
	return p
}

// stretched is the pattern enlarged across and down the paper.
func (p Pattern) stretched(fx, fy float64) Pattern {
	return p.mapped(func(q draw.Point) draw.Point { return draw.Point{X: q.X * fx, Y: q.Y * fy} })
}

// upright is the pattern turned a quarter, its grain up the paper.
func (p Pattern) upright() Pattern {
	q := p.mapped(func(q draw.Point) draw.Point { return draw.Point{X: -q.Y, Y: q.X} })
	q.Upright = !p.Upright
	return q
}
