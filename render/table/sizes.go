package table

import (
	"splaywright/model/form"
	"splaywright/model/measure"
)

// Sizes is the outside of the finished piece and the leans it was made from.
func Sizes(p *form.Piece, style measure.Style) Table {
	s := newSheet("sizes", "Sizes", style)
	s.words("What")
	s.lengths("Size")
	s.words("Also")
	o := p.Overall
	s.row("", word("height"), s.length(o.Height), word(""))
	s.row("", word("width at the top"), s.length(o.WidthTop), word(""))
	wider := stance(s, o.WidthFloor-o.WidthTop)
	if p.Form == form.Steps { // each end by its own height
		wider = ""
	}
	s.row("", word("width at the floor"), s.length(o.WidthFloor), word(wider))
	s.row("", word("depth at the top"), s.length(o.DepthTop), word(""))
	s.row("", word("depth at the floor"), s.length(o.DepthFloor), word(stance(s, o.DepthFloor-o.DepthTop)))
	if p.Form == "ring" {
		flats(s, p)
	}
	if p.Form == form.Steps {
		s.row("", word("height of the lower tread"), s.length(p.Design.Size.LowerHeight), word("the second step rises "+s.style.FormatUnit(o.Height-p.Design.Size.LowerHeight)))
		s.row("", word("width of the lower tread"), s.length(p.Design.Size.LowerWidth), word("on its upper face, to the middle side"))
	}
	splayRows(s, p)
	s.row("", word("weight"), Cell{}, word(kilograms(o.Mass)))
	s.note("Sizes are outside sizes of the finished piece. Splay is away from plumb, square-on in the elevation.")
	return s.done()
}

// splayRows are the leans that the form has.
func splayRows(s *sheet, p *form.Piece) {
	d := p.Design.Splay
	switch p.Form {
	case "stool":
		splayRow(s, "splay of the ends", d.Ends)
		splayRow(s, "splay of the front and back edges", d.Edges)
	case form.Steps:
		splayRow(s, "splay of the outer sides", d.Ends)
		splayRow(s, "splay of the middle side", d.Middle)
		splayRow(s, "splay of the front and back edges", d.Edges)
	case "ring":
		splayRow(s, "splay of the staves", d.Ends)
	default:
		splayRow(s, "splay of the ends", d.Ends)
		splayRow(s, "splay of the front and back", d.Front)
		for _, own := range []struct {
			name  string
			angle *measure.Angle
		}{{"splay of the back", d.Back}, {"splay of the left end", d.EndLeft}, {"splay of the right end", d.EndRight}} {
			if own.angle != nil {
				splayRow(s, own.name, *own.angle)
			}
		}
	}
}

func splayRow(s *sheet, name string, a measure.Angle) {
	text := measure.FormatAngle(a, 0)
	if a != 0 {
		text += ", " + measure.Ratio(a)
	}
	s.row("", word(name), Cell{}, word(text))
}

// stance says how much wider the piece stands than its top.
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

func kilograms(mass float64) string {
	return figure(mass, 2).Text + " kg (" + figure(mass/poundKG, 1).Text + " lb), wood only, at 12 % moisture"
}

// poundKG is the avoirdupois pound in kilograms, exact by the agreement of 1959.
const poundKG = 0.45359237
