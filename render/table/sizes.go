package table

import (
	"fmt"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// Sizes is the outside of the finished piece and the leans it was made from.
func Sizes(p *form.Piece, style measure.Style) Table {
	s := newSheet("sizes", "Sizes", style)
	s.words("What")
	s.lengths(asLine, "Size")
	s.words("Line")
	s.words("Also")
	o := p.Overall
	s.row("", word("height"), s.length(o.Height), word("plumb"), word(""))
	ends, edges := overhangs(p)
	wider := stance(s, o.WidthFloor-o.WidthTop+2*ends)
	if p.Form == form.Steps { // each end by its own height
		wider = ""
	}
	across(s, p, "width", o.WidthTop, o.WidthFloor, ends, wider)
	across(s, p, "depth", o.DepthTop, o.DepthFloor, edges, stance(s, o.DepthFloor-o.DepthTop+2*edges))
	if p.Form == "ring" {
		flats(s, p)
	}
	if p.Form == form.Steps {
		s.row("", word("height of the lower tread"), s.length(p.Design.Size.LowerHeight), word("plumb"), word("the second step rises "+s.style.FormatUnit(o.Height-p.Design.Size.LowerHeight)))
		s.row("", word("width of the lower tread"), s.length(p.Design.Size.LowerWidth), word("level, outer face to outer face"), word("on its upper face, to the middle side"))
	}
	splayRows(s, p)
	s.row("", word("weight"), Cell{}, word(""), word(massText(p)))
	s.note("Sizes are outside sizes of the finished piece. Splay is away from plumb, square-on in the elevation; in the board: away from square on the face of the board that shows it, as a bevel gauge reads it.")
	return s.done()
}

const level = "level, outer face to outer face"

// across are the rows of the width or the depth: of what lies on top, where that overhangs, apart from what it lies on, since
// the splay leads from there to the floor.
func across(s *sheet, p *form.Piece, what string, top, floor, over measure.Length, wider string) {
	if over == 0 {
		s.row("", word(what+" at the top"), s.length(top), word(level), word(""))
	} else {
		beneath, on := " over the sides there", "at the level of the top's upper face"
		if p.Design.Lid != nil {
			beneath, on = " over the walls there", "under the lid"
		}
		s.row("", word(what+" at the top"), s.length(top), word("level, over all"), word(fmt.Sprintf("overhangs by %s on each side", s.style.FormatUnit(over))))
		s.row("", word(what+beneath), s.length(top-2*over), word(level), word(on))
	}
	s.row("", word(what+" at the floor"), s.length(floor), word(level), word(wider))
}

// overhangs are how far the top or the lid reaches out beyond the outer faces at its ends, and at front and back.
func overhangs(p *form.Piece) (ends, edges measure.Length) {
	switch d := p.Design; {
	case d.Lid != nil:
		return d.Lid.Overhang, d.Lid.Overhang
	case form.OnSides(p.Form):
		return d.Corners.Overhang, d.Corners.OverhangEdges
	}
	return 0, 0
}

// splayRows are the leans that the form has.
func splayRows(s *sheet, p *form.Piece) {
	d := p.Design.Splay
	row := func(path, name string, a measure.Angle) { splayRow(s, p.Design, path, name, a) }
	switch p.Form {
	case "stool":
		row("splay.ends", "splay of the ends", d.Ends)
		row("splay.edges", "splay of the front and back edges", d.Edges)
	case form.Steps:
		row("splay.ends", "splay of the outer sides", d.Ends)
		row("splay.middle", "splay of the middle side", d.Middle)
		row("splay.edges", "splay of the front and back edges", d.Edges)
	case "ring":
		row("splay.ends", "splay of the staves", d.Ends)
	default:
		row("splay.ends", "splay of the ends", d.Ends)
		row("splay.front", "splay of the front and back", d.Front)
		for _, own := range []struct {
			path, name string
			angle      *measure.Angle
		}{{"splay.back", "splay of the back", d.Back}, {"splay.end-left", "splay of the left end", d.EndLeft}, {"splay.end-right", "splay of the right end", d.EndRight}} {
			if own.angle != nil {
				row(own.path, own.name, *own.angle)
			}
		}
	}
}

// splayRow says a lean as seen square-on, and what it comes to in the board that shows it.
func splayRow(s *sheet, d form.Design, path, name string, a measure.Angle) {
	text := measure.FormatAngle(a, 0)
	if a != 0 {
		text += ", " + measure.Ratio(a)
	}
	if other, how, ok := d.OtherLean(path); ok {
		text += "; " + how + ": " + measure.FormatAngle(other, 0)
	}
	s.row("", word(name), Cell{}, word(""), word(text))
}

// stance says how much wider the piece stands than it is at the top.
func stance(s *sheet, more measure.Length) string {
	half := more / 2
	switch shown, _ := s.style.Round(half); {
	case shown > 0:
		return s.style.FormatUnit(half) + " wider on each side"
	case shown < 0:
		return s.style.FormatUnit(-half) + " narrower on each side"
	}
	return "as at the top"
}

func massText(p *form.Piece) string {
	if !p.Weighed() {
		return "not known: a timber of the piece is in no table"
	}
	kg, lb := figure(p.Overall.Mass, 2).Text+" kg", figure(p.Overall.Mass/measure.KilogramsPerPound, 1).Text+" lb"
	if p.Design.Style().Unit == measure.Imperial {
		kg, lb = lb, kg
	}
	return fmt.Sprintf("%s (%s), wood only, at 12 %% moisture", kg, lb)
}
