package table

import (
	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
)

// gaugesTable is how marking gauge and bevel are set for a corner.
func gaugesTable(p *form.Piece, same []joint.Joint, style measure.Style) Table {
	j := same[0]
	s := newSheet("gauges-"+j.ID, "Gauge and bevel: "+jointNames(same)+", "+j.Kind, style)
	s.words("Setting")
	s.angles("Angle")
	s.words("Rise over run")
	s.lengths("Gauge")
	s.words("Where")
	s.row("", word("inside corner"), angle(j.Dihedral, 0), word(fromSquare(j.Dihedral)), Cell{}, word("between the two inner faces"))
	if len(j.Tails) > 0 {
		dovetailGauges(s, p, j)
	}
	if j.Depth > 0 {
		gauge(s, "depth of the housing", j.Depth, "square to the face of the "+boardName(p, j.TailBoard))
	}
	return s.Table
}

func dovetailGauges(s *sheet, p *form.Piece, j joint.Joint) {
	tails, pins := boardName(p, j.TailBoard), boardName(p, j.PinBoard)
	degrees(s, "slope of the tails", j.Slope, "on the outer face of the "+tails+", from its grain")
	degrees(s, "angle of the pins", j.PinAngle, "on the end of the "+pins+", from square to the arris")
	degrees(s, "tilt of the cheeks", j.CheekTilt, "on the end of the "+tails+", away from square to its face")
	gauge(s, "baseline, outer face", j.Baseline.Outer, "on the "+tails+", from that face's own end")
	gauge(s, "baseline, inner face", j.Baseline.Inner, "on the "+tails+", from that face's own end")
	gauge(s, "baseline, outer face", j.PinBaseline.Outer, "on the "+pins+", from that face's own end")
	gauge(s, "baseline, inner face", j.PinBaseline.Inner, "on the "+pins+", from that face's own end")
	s.note("The baselines stand at the mating thickness divided by the sine of the corner, not at the thickness itself: the boards meet off square.")
	s.note("The tail board goes home along the grain of the pin board. Sliding it square to its own face jams and breaks pins.")
	s.note("Slope lines lie evenly on both sides of the tail board's grain, not of a line square to a slanting end.")
}

func gauge(s *sheet, name string, l measure.Length, where string) {
	s.row("", word(name), Cell{}, word(""), s.length(l), word(where))
}

// fromSquare says how far an angle is from 90 degrees, as a bevel is set against a square.
func fromSquare(a measure.Angle) string {
	d := a - 90*measure.Degree
	if straight(absAngle(d)) {
		return "square"
	}
	return measure.Ratio(absAngle(d)) + " from square"
}
