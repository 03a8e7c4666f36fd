package sheet

import (
	"math"
	"strings"

	"splaywright/model/form"
	"splaywright/render/dimension"
	"splaywright/render/draw"
)

// flight are the outlines of steps in the front view, mm.
type flight struct {
	high, low   float64 // the upper faces of the treads
	left, right float64 // X of the outer sides' outer planes there, each at its own tread
	face        float64 // X of the middle side's outer face over the lower tread
	ends        float64 // lean of the outer sides
}

func flightOf(p *form.Piece) flight {
	d := p.Design
	w := (p.Overall.WidthTop/2 - d.Corners.Overhang).MM()
	return flight{
		high: p.Overall.Height.MM(), low: d.Size.LowerHeight.MM(), left: -w, right: w,
		face: d.Size.LowerWidth.MM() - w, ends: d.Splay.Ends.Radians(),
	}
}

// stepsFigure gives the front view of steps its dimensions: heights at either end, widths over all and
// of the lower tread, leans, thicknesses, and how far below the treads stretchers hang.
func stepsFigure(p *form.Piece, f *figure, o Options) *figure {
	d, v, s := p.Design, p.Overall, flightOf(p)
	over := d.Corners.Overhang.MM()
	wf, middle := v.WidthFloor.MM()/2, v.FloorMiddle.MM()
	f.Linear(dimension.Above, f.at(s.left, s.low), f.at(s.face, s.low), o.label(d.Size.LowerWidth), "size.lower-width")
	f.Linear(dimension.Above, f.at(s.left-over, s.low), f.at(s.right+over, s.high), o.label(v.WidthTop), "size.width")
	f.Linear(dimension.Below, f.at(middle-wf, 0), f.at(middle+wf, 0), o.label(v.WidthFloor), "size.width")
	f.Linear(dimension.LeftOf, f.at(middle-wf, 0), f.at(s.left-over, s.low), o.label(d.Size.LowerHeight), "size.lower-height")
	f.Linear(dimension.RightOf, f.at(middle+wf, 0), f.at(s.right+over, s.high), o.label(v.Height), "size.height")
	t := d.Boards.Top.Thickness
	f.Leader(f.at((s.left+s.face)/2, s.low-t.MM()/2), true, o.with("%s thick", o.label(t)), "boards.top.thickness", -60, -120)
	side := leaning{d.Splay.Ends, "splay.ends", d.Boards.Side.Thickness, "boards.side.thickness"}
	sideEdge(f, draw.Point{X: s.right, Y: s.high}, 1, side, s.high, o)
	thick(p, f, s.left, s.low, side, o)
	if a := d.Splay.Middle; math.Abs(a.Degrees()) > 0.05 {
		up := (s.high + s.low) / 2
		f.Leader(f.at(s.face+(up-s.low)*math.Tan(a.Radians()), up), true, o.with("%s from plumb", degrees(size(a))), "splay.middle", 150, 165, 120)
	}
	underTreads(p, f, o, s)
	return f
}

// underTreads places each stretcher below the underside of its tread.
func underTreads(p *form.Piece, f *figure, o Options, s flight) {
	d := p.Design
	for i, r := range d.Stretchers {
		if r.BelowTop <= 0 {
			continue
		}
		way, at, high, side := 1.0, s.right, s.high, dimension.RightOf
		if r.Under == form.UnderLower {
			way, at, high, side = -1, s.left, s.low, dimension.LeftOf
		}
		under := high - d.Boards.Top.Thickness.MM()
		inner := func(z float64) draw.Point { // on the outer side's inner face
			return f.at(at+way*((high-z)*math.Tan(s.ends)-d.Boards.Side.Thickness.MM()/math.Cos(s.ends)), z)
		}
		f.Linear(side, inner(under-r.BelowTop.MM()), inner(under), o.label(r.BelowTop), sizePath("stretchers", i)+".below-top")
	}
}

// isTread tells whether a part is a stool's top or a tread of steps.
func isTread(id string) bool { return id == "top" || strings.HasPrefix(id, "top-") }
