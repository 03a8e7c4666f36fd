package table

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"splaywright/model/cut"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// SawSettings has a row for every cut and every way to set it up: exact angles read from 0 and
// from 90, what the saw can hold of them with the gap this leaves, the same angles without a
// protractor, and which way they go. Cuts that pair as mirror images share their rows.
func SawSettings(p *form.Piece, style measure.Style) Table {
	s := newSheet("saw-settings", "Saw settings", style)
	s.words("Cut", "Board lies")
	s.angles("Swing", "Swing from 90", "Tilt", "Tilt from 90", "Set swing", "Set tilt", "Lean")
	s.lengths("square to the cut, at its far end", "Gap")
	s.lengths("along the blade, from the table", "Blade reach")
	s.words("Swing 1:n")
	s.lengths("along the grain, across the outer face from edge to edge", "Swing offset")
	s.words("Tilt 1:n")
	s.lengths("along the edge, from the outer face to the inner", "Tilt offset")
	s.words("Ends longer")
	saw := sawOf(p)
	for _, c := range pairedCuts(p) {
		for i, u := range cut.ForSaw(c.part, c.cut, saw) {
			sawRow(s, c, u, saw, i == 0)
		}
	}
	if len(s.Rows) > 0 {
		sawNotes(s, saw)
	}
	return s.done()
}

func sawOf(p *form.Piece) cut.Saw {
	d := p.Design.Saw
	return cut.Saw{Step: d.Step, MaxSwing: d.MaxSwing, MaxTilt: d.MaxTilt, Upright: d.NoFlatTable, Depth: d.Depth, Cradle: d.Cradle}
}

func sawRow(s *sheet, c pairedCut, u cut.Setup, saw cut.Saw, first bool) {
	name := Cell{}
	if first {
		name = word(c.name())
	}
	s.row(c.ref(), name, word(lies(c.part, c.cut, u)),
		angle(u.Setting.Swing, 0), angle(cut.FromNinety(u.Setting.Swing), 0),
		angle(u.Setting.Tilt, 0), angle(cut.FromNinety(u.Setting.Tilt), 0),
		reach(angle(u.Set.Swing, saw.Step), u.SwingBeyond), reach(angle(u.Set.Tilt, saw.Step), u.TiltBeyond),
		leanCell(u, saw), s.exactLength(u.GapAlong+u.GapThrough), reach(s.length(u.Reach), u.ReachBeyond),
		ratio(u.Setting.Swing), s.offset(u.Setting.Swing, u.SwingOffset),
		ratio(u.Setting.Tilt), s.offset(u.Setting.Tilt, u.TiltOffset),
		word(longer(c.part, u)))
}

// leanCell is the wedge of a leaned board.
func leanCell(u cut.Setup, saw cut.Saw) Cell {
	if u.Position != cut.Nested && u.Position != cut.Cradled {
		return Cell{}
	}
	return angle(u.LeanSet, saw.Step)
}

// reach marks a setting that the saw cannot make.
func reach(c Cell, beyond bool) Cell {
	if beyond {
		c.Text += " beyond"
	}
	return c
}

// beyond tells whether any row is marked so under one of the heads.
func (s *sheet) beyond(heads ...string) bool {
	for c, column := range s.Columns {
		if !slices.Contains(heads, column.Head) {
			continue
		}
		for _, row := range s.Rows {
			if strings.HasSuffix(row[c].Text, " beyond") {
				return true
			}
		}
	}
	return false
}

func (s *sheet) offset(a measure.Angle, l measure.Length) Cell {
	if straight(a) {
		return Cell{}
	}
	return s.exactLength(l)
}

// lies is how the board is put down for the set-up.
func lies(q *part.Part, c part.Cut, u cut.Setup) string {
	switch u.Position {
	case cut.OnEdge:
		return "on edge, outer face out"
	case cut.Nested:
		return "leaned, " + raised(q, c, u) + " up"
	case cut.Cradled:
		return "in a cradle of " + measure.FormatAngle(u.Lean, measure.Degree/10) + ", " + sideName(q, u.Raised) + " up"
	case cut.EndOn:
		return "flat, square end to the fence"
	case cut.OnEnd:
		return "on end, outer face out"
	}
	if u.NoTable {
		return "flat, outer face up: not at this saw"
	}
	return "flat, outer face up"
}

// raised names the side that a wedge lifts: the one being sawn, the one opposite, or by its name.
func raised(q *part.Part, c part.Cut, u cut.Setup) string {
	axis, sawn, far := 0, "sawn end", "far end"
	if c.Kind == part.Rip {
		axis, sawn, far = 1, "sawn edge", "far edge"
	}
	switch along := sideDirection(u.Raised)[axis] * c.Normal[axis]; {
	case along > 0:
		return sawn
	case along < 0:
		return far
	}
	return sideName(q, u.Raised)
}

// longer says which face and which side the board ends longer on; even ends say nothing.
func longer(q *part.Part, u cut.Setup) string {
	face := u.LongFace
	if face != "" {
		face += " face"
	}
	switch {
	case u.LongSide == cut.NoSide:
		return face
	case face == "":
		return sideName(q, u.LongSide)
	}
	return face + ", " + sideName(q, u.LongSide)
}

func sawNotes(s *sheet, saw cut.Saw) {
	s.note("Swing: the gauge turned away from a square crosscut; for a rip, the cut turned away from the grain. " +
		"Tilt: the blade away from square to the table. Both read from 0 at square; “from 90” is the same setting on a scale that calls square 90.")
	s.note(stepText(saw.Step) + " " +
		"Gap: how far the sawn face stands off at its far end, along the cut and through the thickness together, when the set figures are used. Two faces cut alike double it.")
	s.note("1:n is one across for n along. Offsets are over the part's own finished size, board flat: the swing's over the width (a rip's over the length), " +
		"the tilt's over the thickness. On edge the two change places.")
	s.note("Leaned: outer face up on a wedge that raises the named side by the lean, so that the blade stays square. On edge and on end: outer face away from the fence, before the edge or end it stands on is cut to an angle.")
	if saw.Upright {
		s.note("This saw has no table to lay a board flat on (saw.flat-table is false): boards stand on edge or on end. " +
			"A cut that it reaches neither way is given flat, for another saw or by hand to the line.")
	}
	s.note("Blade reach: how far the blade must stand out of the table, along itself, to come through; " + depthText(s, saw) + ". The first row of a cut without “beyond” is the one to use.")
	if hasCradle(s.Rows) {
		s.note("In a cradle: leaned about its grain on wedges of the angle named, outer face up, the named edge raised, held down to the wedges while it is sawn.")
	}
	if s.beyond("Blade reach") {
		s.note("Blade reach beyond: the blade does not come through so; put the board down as another row says, or use a larger saw.")
	}
	if s.beyond("Set swing", "Set tilt") {
		s.note("Beyond: the saw does not reach that setting; make the cut by another row, or a block of known angle against the fence.")
	}
	s.note("A row for two cuts: both are made so. Mirrored: the second has the same figures with the gauge swung the other way. Make a trial cut in waste wood first.")
	s.note(sawCaution)
}

const sawCaution = "Caution: use the guard and a clamp or hold-down, above all for boards that lean or stand; keep hands out of the line of the blade; " +
	"never saw freehand, nor with an offcut trapped between blade and fence. The saw's own instructions and local rules come first."

// stepText says how the set figures follow from the exact ones.
func stepText(step measure.Angle) string {
	if step <= 0 {
		return "Swing and tilt are exact, and so are the set figures, since the design does not say how finely the saw is set (saw.step)."
	}
	return fmt.Sprintf("Swing and tilt are exact; the set figures are rounded to the saw's step of %s°.", trimmed(math.Abs(step.Degrees()), 4))
}

// depthText says how far the saw's blade reaches, and whether that was told.
func depthText(s *sheet, saw cut.Saw) string {
	if saw.Depth > 0 {
		return "this saw's reaches " + s.style.FormatUnit(saw.Depth)
	}
	if saw.Upright {
		return "not judged, since the design does not say how far the blade reaches"
	}
	return "taken as " + s.style.FormatUnit(cut.DefaultDepth) + ", as on a common saw of 10 in, since the design does not say how far its blade reaches"
}

func hasCradle(rows [][]Cell) bool {
	for _, row := range rows {
		if len(row) > 1 && strings.HasPrefix(row[1].Text, "in a cradle") {
			return true
		}
	}
	return false
}
