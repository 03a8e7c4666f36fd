package table

import (
	"fmt"
	"strings"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
)

// Marking is what to mark out: for each kind of corner the lines of tails and pins, running
// from the front edge, and the settings of gauges and bevels. Corners with the same figures
// share their tables.
func Marking(p *form.Piece, style measure.Style) []Table {
	var all []Table
	for _, same := range alikeJoints(p.Joints) {
		if len(same[0].Tails) > 0 {
			all = append(all, linesTable(p, same, style))
		}
		all = append(all, gaugesTable(p, same, style))
	}
	return all
}

// alikeJoints gathers joints whose figures agree to a micrometre and a hundred-thousandth of a
// degree, in order.
func alikeJoints(joints []joint.Joint) [][]joint.Joint {
	var order [][]joint.Joint
	at := map[string]int{}
	for _, j := range joints {
		key := jointLikeness(j)
		i, seen := at[key]
		if !seen {
			i = len(order)
			at[key] = i
			order = append(order, nil)
		}
		order[i] = append(order[i], j)
	}
	return order
}

func jointLikeness(j joint.Joint) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s|%.5f %.5f %.5f %.5f|%.3f %.3f %.3f %.3f %.3f %.3f", j.Kind,
		j.Dihedral.Degrees(), j.Slope.Degrees(), j.CheekTilt.Degrees(), j.PinAngle.Degrees(),
		j.Baseline.Outer, j.Baseline.Inner, j.PinBaseline.Outer, j.PinBaseline.Inner, j.Width, j.Depth)
	for _, spans := range [][]joint.Span{j.Tails, j.TailsInner, j.TailRoots, j.Pins, j.PinsInner} {
		b.WriteByte('|')
		for _, s := range spans {
			fmt.Fprintf(&b, "%.3f %.3f ", s.Start.MM(), s.End.MM())
		}
	}
	return b.String()
}

func jointNames(same []joint.Joint) string {
	var names []string
	for _, j := range same {
		names = append(names, strings.ReplaceAll(j.ID, "/", " to "))
	}
	return and(names)
}

// linesTable has a row for each line across the joint's width.
func linesTable(p *form.Piece, same []joint.Joint, style measure.Style) Table {
	j := same[0]
	s := newSheet("marking-"+j.ID, "Marking: "+jointNames(same)+", "+j.Kind, style)
	s.words("Line")
	s.lengths("Tails, outer end", "Tails, inner end", "Tails, outer baseline", "Pins, outer end", "Pins, inner end")
	columns := [][]joint.Span{j.Tails, j.TailsInner, j.TailRoots, nil, nil}
	pins := [][]joint.Span{j.Pins, j.PinsInner}
	for i := range j.Tails {
		for _, end := range []bool{false, true} {
			cells := []Cell{word(lineName(i, len(j.Tails), end))}
			for _, spans := range columns[:3] {
				cells = append(cells, s.edge(spans, i, end))
			}
			for _, spans := range pins {
				cells = append(cells, s.pinEdge(spans, i, end))
			}
			s.row(j.TailBoard, cells...)
		}
	}
	linesNotes(s, p, j)
	return s.Table
}

// lineName names the line where a pin ends and tail i begins, or the other way about.
func lineName(i, tails int, end bool) string {
	before, after := pinName(i, tails), pinName(i+1, tails)
	if end {
		return fmt.Sprintf("tail %d | %s", i+1, after)
	}
	return fmt.Sprintf("%s | tail %d", before, i+1)
}

func pinName(i, tails int) string {
	switch i {
	case 0:
		return "front half pin"
	case tails:
		return "back half pin"
	}
	return fmt.Sprintf("pin %d", i)
}

func (s *sheet) edge(spans []joint.Span, i int, end bool) Cell {
	if i >= len(spans) {
		return Cell{}
	}
	if end {
		return s.length(spans[i].End)
	}
	return s.length(spans[i].Start)
}

// pinEdge is the pin's side of the same line: pin i ends where tail i begins.
func (s *sheet) pinEdge(spans []joint.Span, i int, end bool) Cell {
	if end {
		return s.edge(spans, i+1, false)
	}
	return s.edge(spans, i, true)
}

func linesNotes(s *sheet, p *form.Piece, j joint.Joint) {
	s.note(fmt.Sprintf("Each figure runs from the front edge of that face at that line; the whole width at the outer end is %s. Set the rule once and tick all of them, so that rounding never adds up.",
		s.style.FormatUnit(j.Width)))
	s.note(fmt.Sprintf("Tails are cut on the %s, pins on the %s. Outer and inner are the faces seen from outside and from inside the piece.",
		boardName(p, j.TailBoard), boardName(p, j.PinBoard)))
	s.note("Mark one board from the other where you can: the first board as sawn is the truth, the figures are a check.")
}

func boardName(p *form.Piece, id string) string {
	if q := p.Part(id); q != nil {
		return strings.ToLower(q.Name)
	}
	return id
}

func degrees(s *sheet, name string, a measure.Angle, where string) {
	text := "square"
	if !straight(absAngle(a)) {
		text = measure.Ratio(absAngle(a))
	}
	s.row("", word(name), angle(a, 0), word(text), Cell{}, word(where))
}

func absAngle(a measure.Angle) measure.Angle {
	if a < 0 {
		return -a
	}
	return a
}
