package sheet

import (
	"fmt"
	"math"
	"strings"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/dimension"
	"splaywright/render/draw"
)

// boreNotes names each kind of hole once: "4 × Ø10 counterbore × 8, Ø4.5 clearance". Notes keep to one
// unit: with both they would be wider than the part.
func boreNotes(q *part.Part, f *figure, o Options) {
	type spot struct {
		at     draw.Point
		label  string
		toward []float64
	}
	var spots []spot
	for _, b := range q.Bores {
		text := fmt.Sprintf(boreFormats[b.Purpose], bit(b.Diameter, o))
		if b.Slot > 0 {
			text += fmt.Sprintf(", slot %s long", o.Style.Format(b.Slot))
		}
		if !b.Through {
			text += " × " + o.Style.Format(b.Depth)
		}
		if centred(q, b) {
			text += ", centred"
		}
		at := f.at(b.Entry.X(), b.Entry.Y())
		if n := len(spots) - 1; n >= 0 && math.Hypot(spots[n].at.X-at.X, spots[n].at.Y-at.Y) < 0.01 {
			sep := ", "
			if !strings.Contains(spots[n].label, "\n") {
				sep = "\n" // the first below the line, the rest after it
			}
			spots[n].label += sep + text
			continue
		}
		spots = append(spots, spot{at: at, label: text})
		if _, end := boredInto(q, b); end { // its axis is what is seen: the note stands over the wood, beside it
			deep := b.Entry.Add(b.Axis.Mul(0.6 * b.Depth.MM()))
			spots[len(spots)-1] = spot{f.at(deep.X(), deep.Y()), text, overWood(b)}
		}
		if b.Face == "inner" {
			spots[len(spots)-1].label = fmt.Sprintf("inner face: %s", text)
		}
	}
	count, order := map[string]int{}, []spot{}
	for _, s := range spots {
		if count[s.label]++; count[s.label] == 1 {
			order = append(order, s)
		}
	}
	for _, s := range order {
		label := s.label
		if n := count[label]; n > 1 {
			label = fmt.Sprintf("%d × %s", n, label)
		}
		f.Leader(s.at, true, o.say(label), q.ID, s.toward...)
	}
}

// overWood are the directions, degrees, in which the note of a hole in an end stands over the board.
func overWood(b part.Bore) []float64 {
	if b.Axis.X() < 0 {
		return []float64{150, -150, 165, -165, 135, -135}
	}
	return []float64{30, -30, 15, -15, 45, -45}
}

// boreFormats say what holes are for, with their diameter.
var boreFormats = map[string]string{"hole": "Ø%s", "counterbore": "Ø%s counterbore", "clearance": "Ø%s clearance", "pilot": "Ø%s pilot"}

// bit is a drill's size as drills are sold, whatever the step that sizes are rounded to: tenths of a
// millimetre, or 64ths of an inch.
func bit(d measure.Length, o Options) string {
	if o.Style.Unit == measure.Imperial {
		return measure.Style{Unit: measure.Imperial, Step: measure.Inch / 64}.Format(d)
	}
	return strings.TrimSuffix(measure.Style{Step: 0.1}.Format(d), ".0")
}

// shapeNotes names shapes and gives arcs their radius and rise.
func shapeNotes(q *part.Part, f *figure, o Options) {
	for _, s := range q.Features {
		ref := sizePath("features", s.Index)
		c := f.at(s.Centre.X(), s.Centre.Y())
		switch s.Kind {
		case part.HandHole, part.Slot:
			text := fmt.Sprintf("%s %s × %s", s.Kind, o.Style.Format(s.Length), o.Style.Format(s.Width))
			if math.Abs(s.Angle.Degrees()) > 0.05 {
				text += fmt.Sprintf(" at %s", degrees(s.Angle))
			}
			if s.Depth > 0 {
				text += fmt.Sprintf(", %s deep", o.Style.Format(s.Depth))
			}
			if s.Inner {
				text += ", inner face"
			}
			f.Leader(c, true, o.say(text), ref)
		case part.Groove:
			text := fmt.Sprintf("groove %s wide, %s deep", o.Style.Format(s.Width), o.Style.Format(s.Depth))
			if s.Inner {
				text += ", inner face"
			}
			f.Leader(c, true, o.say(text), ref)
		case part.Notch, part.Taper, part.Chamfer:
			edgeNote(f, s, o, ref)
		case part.RoundOver:
			if s.Edge != "" {
				edgeNote(f, s, o, ref)
			}
		case part.Arch, part.Ogee:
			sin, cos := math.Sincos(s.Angle.Radians())
			mid := f.at(s.Centre.X()-s.Width.MM()*cos, s.Centre.Y()-s.Width.MM()*sin)
			side := dimension.Above
			if math.Abs(cos) < math.Abs(sin) {
				side = dimension.RightOf
			}
			f.Linear(side, edgeCorner(q, f, s, side), mid, o.label(s.Width), ref)
			radius := "R " + o.label(s.Radius)
			if s.Kind == part.Ogee {
				radius = fmt.Sprintf("ogee R %s and %s", o.Style.Format(s.Radius), o.Style.Format(s.Hollow))
			}
			f.Leader(mid, false, o.say(radius), ref, 150, -150, 170)
		}
	}
}

// edgeCorner is where the edge that a shape stands on ends towards a side of the sheet: a dimension from the edge begins
// there, not in the air under an arch. Of an edge that slants, which has no such place, it is the shape's own middle.
func edgeCorner(q *part.Part, f *figure, s part.Feature, side dimension.Side) draw.Point {
	best := s.Centre
	for _, v := range q.Solid.Vertices {
		level, along, most := v.Y()-s.Centre.Y(), v.X(), best.X()
		if side == dimension.Above {
			level, along, most = v.X()-s.Centre.X(), v.Y(), best.Y()
		}
		if math.Abs(v.Z()) < sameShape && math.Abs(level) < 1e-3 && along > most {
			best = v.Vec2()
		}
	}
	return f.at(best.X(), best.Y())
}

// edgeNote names a notch, a taper, a chamfer or a round-over at the wood that it takes.
func edgeNote(f *figure, s part.Feature, o Options, ref string) {
	sin, cos := math.Sincos(s.Angle.Radians())
	in := s.Width.MM() / 2
	text := fmt.Sprintf("%s %s × %s", s.Kind, o.Style.Format(s.Length), o.Style.Format(s.Width))
	switch s.Kind {
	case part.Chamfer:
		text = fmt.Sprintf("chamfer %s at %s", o.Style.Format(s.Width), degrees(s.Bevel))
	case part.RoundOver:
		text = fmt.Sprintf("round-over R %s", o.Style.Format(s.Radius))
	}
	if s.Inner {
		text += ", inner face"
	}
	f.Leader(f.at(s.Centre.X()-in*cos, s.Centre.Y()-in*sin), false, o.say(text), ref)
}

// stopped is the share of an edge under which a chamfer counts as stopped.
const stopped = 0.98

// longestOn is how long the edge is that a shape stands on.
func longestOn(q *part.Part, s part.Feature) float64 {
	for _, c := range q.Cuts {
		if c.ID == s.Edge {
			return c.Length.MM()
		}
	}
	return 0
}
