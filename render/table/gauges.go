package table

import (
	"fmt"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
)

// gaugesTable is how marking gauge and bevel are set for a dovetailed corner.
func gaugesTable(p *form.Piece, same []joint.Joint, style measure.Style) Table {
	j := same[0]
	s := newSheet("gauges-"+j.ID, "Gauge and bevel: "+jointNames(p, same)+", "+j.Kind, style.Joints())
	s.words("Setting")
	s.angles("Angle")
	s.words("1:n")
	s.lengths("along the face, from its own end, as Where says", "Gauge", "Exact")
	s.words("Where")
	corner := bevel(s, "inside corner", j.Dihedral, "between the two inner faces; 1:n is from square")
	corner[2] = ratio(j.Dihedral - 90*measure.Degree)
	dovetailGauges(s, tailBoards(p, same), pinBoards(p, same), j)
	return s.done()
}

func dovetailGauges(s *sheet, tails, pins string, j joint.Joint) {
	fingers := j.Kind == form.FingerJoint
	if !fingers { // these have no slope
		bevel(s, "slope of the tails", j.Slope, "on the outer face of "+tails+", from its grain")
	}
	if straight(j.PinEnd-j.BackPinEnd) && straight(j.CheekTilt-j.BackCheekTilt) {
		angle := "angle of the pins"
		if fingers {
			angle = "angle of the fingers"
		}
		bevel(s, angle, j.PinEnd, "on the end grain of "+pins+", from square to the arris")
		bevel(s, "tilt of the cheeks", j.CheekTilt, fmt.Sprintf("of %s, from square to its face", tails))
	} else { // the ends slant, so that the two sides of a pin differ
		lower, upper := PinSides(j)
		below, above, over := "lower side of the tails", "upper side of the tails", "lines across the tails"
		if fingers {
			below, above, over = "lower side of the fingers", "upper side of the fingers", "lines across the fingers"
		}
		bevel(s, below, lower.Angle, onEnd(pins, lower))
		bevel(s, above, upper.Angle, onEnd(pins, upper))
		across := rising(j.TailEnd)
		bevel(s, over, across.Angle, onEnd(tails, across))
		bevel(s, "tilt of the lower cheeks", j.CheekTilt, fmt.Sprintf("of %s, from square to its face", tails))
		bevel(s, "tilt of the upper cheeks", j.BackCheekTilt, fmt.Sprintf("of %s, from square to its face", tails))
	}
	gauge(s, "baseline, outer face", j.Baseline.Outer, "on "+tails+", from that face's own end")
	gauge(s, "baseline, inner face", j.Baseline.Inner, "on "+tails+", from that face's own end")
	if j.Kind == form.HalfBlindDovetail {
		gauge(s, "lap line", j.Baseline.Outer, fmt.Sprintf("on the end of %s, from the inner face's arris: as far as the tails are long", pins))
	} else {
		gauge(s, "baseline, outer face", j.PinBaseline.Outer, "on "+pins+", from that face's own end")
	}
	gauge(s, "baseline, inner face", j.PinBaseline.Inner, "on "+pins+", from that face's own end")
	if !straight(j.Dihedral - 90*measure.Degree) {
		s.note("The boards meet off square, so a baseline stands at the mating thickness divided by the sine of the corner, not at the thickness.")
	}
	s.note("The tail board goes home along the grain of the pin board. Driven square to its own face it jams and breaks pins when the corner is off square.")
	s.note("Slope lines lie evenly on both sides of the tail board's grain, not of a line square to a slanting end.")
}

// onEnd says where a line runs and which way it slants.
func onEnd(boards string, l PinSide) string {
	return fmt.Sprintf("on the end grain of %s, from square to the arris; %s", boards, l.Way)
}

// bevel adds an angle and gives its row.
func bevel(s *sheet, name string, a measure.Angle, where string) []Cell {
	s.row("", word(name), angle(a, 0), ratio(a), Cell{}, Cell{}, word(where))
	return s.Rows[len(s.Rows)-1]
}

// gauge adds a distance: as papers round it, and as fine as a gauge can be set.
func gauge(s *sheet, name string, l measure.Length, where string) {
	s.row("", word(name), Cell{}, Cell{}, s.length(l), s.exactLength(l), word(where))
}
