package table

import (
	"fmt"
	"slices"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
)

// Marking is what to mark out on dovetailed corners: the lines of tails and pins, running from
// the front edge, and the settings of gauges and bevels; and the grooves or slots of mitres. Corners with the same figures share
// their tables. Boards that butt or are housed are in Seats.
func Marking(p *form.Piece, style measure.Style) []Table {
	var all []Table
	for _, same := range alikeJoints(p.Joints) {
		if len(same[0].Tails) > 0 {
			all = append(all, linesTable(p, same, style), gaugesTable(p, same, style))
		}
		if same[0].Spline != nil {
			all = append(all, splineTable(p, same, style))
		}
		if same[0].Keys != nil {
			all = append(all, keysTable(p, same, style))
		}
	}
	return all
}

// alikeJoints gathers joints whose figures are the same, in order.
func alikeJoints(joints []joint.Joint) [][]joint.Joint {
	var all [][]joint.Joint
	for _, j := range joints {
		i := slices.IndexFunc(all, func(g []joint.Joint) bool { return alikeJoint(g[0], j) })
		if i < 0 {
			all = append(all, []joint.Joint{j})
			continue
		}
		all[i] = append(all[i], j)
	}
	return all
}

func alikeJoint(a, b joint.Joint) bool {
	return a.Kind == b.Kind && within(a.Dihedral, b.Dihedral, sameAngle) && within(a.Slope, b.Slope, sameAngle) &&
		within(a.CheekTilt, b.CheekTilt, sameAngle) && within(a.PinAngle, b.PinAngle, sameAngle) &&
		alikeSplines(a.Spline, b.Spline) && alikeKeys(a.Keys, b.Keys) &&
		alikeFaces(a.Baseline, b.Baseline) && alikeFaces(a.PinBaseline, b.PinBaseline) &&
		within(a.Width, b.Width, sameLength) && slices.EqualFunc(a.Tails, b.Tails, alikeSpan) &&
		slices.EqualFunc(a.TailsInner, b.TailsInner, alikeSpan) && slices.EqualFunc(a.TailRoots, b.TailRoots, alikeSpan) &&
		slices.EqualFunc(a.Pins, b.Pins, alikeSpan) && slices.EqualFunc(a.PinsInner, b.PinsInner, alikeSpan)
}

func alikeFaces(a, b joint.Faces) bool {
	return within(a.Outer, b.Outer, sameLength) && within(a.Inner, b.Inner, sameLength)
}

func alikeSpan(a, b joint.Span) bool {
	return within(a.Start, b.Start, sameLength) && within(a.End, b.End, sameLength)
}

// jointNames are the boards that meet: "the top to the sides".
func jointNames(p *form.Piece, same []joint.Joint) string {
	if a, b := tailBoards(p, same), pinBoards(p, same); a != b {
		return a + " to " + b
	}
	return tailBoards(p, same)
}

func tailBoards(p *form.Piece, same []joint.Joint) string {
	return boards(p, same, func(j joint.Joint) string { return j.TailBoard })
}

func pinBoards(p *form.Piece, same []joint.Joint) string {
	return boards(p, same, func(j joint.Joint) string { return j.PinBoard })
}

// boards names the boards of alike joints in a sentence.
func boards(p *form.Piece, same []joint.Joint, which func(joint.Joint) string) string {
	var ids []string
	for _, j := range same {
		ids = appendOnce(ids, which(j))
	}
	return boardNames(p, ids...)
}

// linesTable has a row for each line across the joint's width.
func linesTable(p *form.Piece, same []joint.Joint, style measure.Style) Table {
	j := same[0]
	s := newSheet("marking-"+j.ID, "Marking: "+jointNames(p, same)+", "+j.Kind, style.Joints())
	s.words("Line")
	s.lengths("along the outer face's end arris", "Tails, outer end")
	s.lengths("along the inner face's end arris", "Tails, inner end")
	s.lengths("along the baseline on the outer face", "Tails, outer baseline")
	if j.Kind == form.HalfBlindDovetail { // the outer face stays whole
		s.lengths("along the lap line, on the end", "Pins, lap line")
	} else {
		s.lengths("along the outer face's end arris", "Pins, outer end")
	}
	s.lengths("along the inner face's end arris", "Pins, inner end")
	columns := [][]joint.Span{j.Tails, j.TailsInner, j.TailRoots, nil, nil}
	pins := [][]joint.Span{j.Pins, j.PinsInner}
	for i := range j.Tails {
		for _, end := range []bool{false, true} {
			cells := []Cell{word(lineName(j, i, len(j.Tails), end))}
			for _, spans := range columns[:3] {
				cells = append(cells, s.edge(spans, i, end))
			}
			for _, spans := range pins {
				cells = append(cells, s.pinEdge(spans, i, end))
			}
			s.row(j.TailBoard, cells...)
		}
	}
	backEdgeRow(s, j)
	linesNotes(s, p, same)
	return s.done()
}

// lineName names the line where a pin ends and tail i begins, or the other way about.
func lineName(j joint.Joint, i, tails int, end bool) string {
	before, after := pinName(j, i, tails), pinName(j, i+1, tails)
	if end {
		return fmt.Sprintf("tail %d | %s", i+1, after)
	}
	return fmt.Sprintf("%s | tail %d", before, i+1)
}

func pinName(j joint.Joint, i, tails int) string {
	from, _ := cornerEnds(j)
	up := from == "lower"
	switch {
	case i == 0 && up:
		return "lower half pin"
	case i == 0:
		return "front half pin"
	case i == tails && up:
		return "upper half pin"
	case i == tails:
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

// backEdgeRow is where each face ends, as far as the joint knows it.
func backEdgeRow(s *sheet, j joint.Joint) {
	_, to := cornerEnds(j)
	last := func(spans []joint.Span) Cell {
		if len(spans) == 0 {
			return Cell{}
		}
		return s.length(spans[len(spans)-1].End)
	}
	s.row(j.TailBoard, word(to+" edge"), s.length(j.Width), Cell{}, Cell{}, last(j.Pins), last(j.PinsInner))
}

func linesNotes(s *sheet, p *form.Piece, same []joint.Joint) {
	s.note("Each figure runs from the " + markedEdge(p) + " of that face on that line. Lay the rule down once and tick all of them, so that rounding never adds up.")
	s.note(fmt.Sprintf("Tails are cut on %s, pins on %s. Outer and inner are the faces seen from outside and from inside the piece; “end” is the arris of that face.",
		tailBoards(p, same), pinBoards(p, same)))
	if same[0].Kind == form.HalfBlindDovetail {
		s.note(fmt.Sprintf("The outer face of %s stays whole: there are no pins and no baseline on it. The lap line runs along the end, as far from the inner face as Gauge and bevel has it.", pinBoards(p, same)))
	}
	s.note("Mark one board from the other where you can: the first board as sawn is the truth, the figures are a check.")
}
