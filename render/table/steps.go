package table

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Steps is the order in which the piece is built, with the figures in place, the reason where the
// order matters, and what to mind at each step.
func Steps(p *form.Piece, style measure.Style) Table {
	s := &steps{sheet: newSheet("steps", "Steps", style), p: p}
	if p.Stopped() {
		return s.Table
	}
	s.numbers("", "Step")
	s.words("Do", "How", "Mind")
	s.mill()
	s.rough()
	s.faces()
	s.sawing()
	s.joints()
	s.features()
	s.seats()
	s.holes()
	s.lid()
	s.dryFit()
	s.together()
	s.wedges()
	s.late()
	s.plugs()
	s.finishing()
	s.note("Lengths are finished sizes as the papers round them. Where the wood turns out otherwise, type what it is and print again: the steps follow.")
	return s.Said(style)
}

// steps is the table while it is filled.
type steps struct {
	*sheet
	p *form.Piece
}

// step adds a row; how is made of the sentences that are not empty.
func (s *steps) step(ref, do, mind string, how ...string) {
	how = slices.DeleteFunc(how, func(h string) bool { return h == "" })
	text := strings.ReplaceAll(strings.Join(how, " "), "\n ", "\n")
	s.row(ref, count(len(s.Rows)+1), word(do), word(strings.TrimSuffix(text, "\n")), word(mind))
}

func (s *steps) show(l measure.Length) string { return s.style.Format(l) }

// listed puts what is done to each board in a line of its own, where figures of two boards are not mistaken for each other.
func listed(head string, each []string) string {
	return head + "\n" + strings.Join(each, ".\n") + ".\n"
}

// joint shows what a joint is marked or set by.
func (s *steps) joint(l measure.Length) string { return s.style.Joints().Format(l) }

func (s *steps) mill() {
	var each []string // by thickness
	at := map[string]int{}
	for _, g := range groups(boardsOnly(s.p)) {
		thick := s.show(g[0].Blank.Thickness)
		if i, ok := at[thick]; ok {
			each[i] += "; " + g.short()
			continue
		}
		at[thick] = len(each)
		each = append(each, thick+": "+g.short())
	}
	s.step("", "Plane to thickness", "Boards too short for the machine's hold-downs are planed before they are cut to length.",
		listed("Flatten one face, plane the other to it:", each),
		"Joints and angled cuts depend on it: a board that comes out thinner is typed in before anything is marked.")
}

func (s *steps) rough() {
	var each []string
	for _, g := range groups(boardsOnly(s.p)) {
		r := g[0].Rough
		each = append(each, fmt.Sprintf("%s: %s × %s", g.short(), s.show(r.Length), s.show(r.Width)))
	}
	s.step("", "Cut heavy", "Let the boards rest a few days in the room and plane again if they move.",
		listed("Cut along the grain × across it:", each), s.inOneBoard())
}

// sawing has a row for each set of equal cuts; the angles are those with the board flat.
func (s *steps) sawing() {
	var straightCuts, angled []string
	last := [2]string{}
	add := func(list *[]string, kind int, boards, text, between string) { // the cuts of one board together
		if n := len(*list) - 1; n >= 0 && last[kind] == boards {
			(*list)[n] += between + text
			return
		}
		*list, last[kind] = append(*list, boards+": "+text), boards
	}
	for _, c := range pairedCuts(boardsOnly(s.p)) {
		if straight(c.cut.Swing) && straight(c.cut.Tilt) {
			add(&straightCuts, 0, c.boards(), c.cuts(), ", ")
			continue
		}
		add(&angled, 1, c.boards(), c.cuts()+": "+s.settings(c.cut), "; ")
	}
	if len(straightCuts) > 0 {
		s.step("", "Cut square", "", listed("Square to face and edge, to the finished size:", straightCuts))
	}
	if len(angled) > 0 {
		s.step("", "Cut the angles", "Clamp or jig leaning boards; keep hands out of the blade's line and the offcut free.",
			listed("Board flat, outer face up.", angled),
			"Try each setting in a scrap of the same thickness; other ways to set the saw stand in Saw settings.", s.taperFirst())
	}
}

// settings is a cut in words: what is not square.
func (s *steps) settings(c part.Cut) string {
	var words []string
	if !straight(c.Swing) {
		kind := "swing %s"
		if c.Kind == part.Rip {
			kind = "taper %s"
		}
		words = append(words, fmt.Sprintf(kind, degrees(c.Swing)))
	}
	if !straight(c.Tilt) {
		kind := "tilt %s, inner face longer"
		if c.OuterLonger {
			kind = "tilt %s, outer face longer"
		}
		words = append(words, fmt.Sprintf(kind, degrees(c.Tilt)))
	}
	return strings.Join(words, ", ")
}

func degrees(a measure.Angle) string {
	return measure.Fixed(a.Degrees(), 1) + "°"
}

// taperFirst says why edges that taper are cut before the joint is marked.
func (s *steps) taperFirst() string {
	if !s.dovetailed() || !slices.ContainsFunc(boardsOnly(s.p).Parts, tapers) {
		return ""
	}
	return "Cut tapered edges before the joints are marked: the marks run from the finished edge, and a taper sawn later runs through the outer pins or tails."
}

func tapers(q *part.Part) bool {
	return slices.ContainsFunc(q.Cuts, func(c part.Cut) bool { return c.Kind == part.Rip && !straight(c.Swing) })
}

func (s *steps) dovetailed() bool {
	return slices.ContainsFunc(s.p.Joints, func(j joint.Joint) bool { return len(j.Tails) > 0 })
}

func (s *steps) tails(j joint.Joint) {
	tail, pin := s.alikeTo(j)
	from, on := s.tailEnds(j)
	first, second := "Mark and saw the tails", "Transfer and cut the pins"
	if j.Kind == form.FingerJoint {
		first, second = "Mark and saw the fingers", "Transfer and cut their mates"
	}
	s.step(j.TailBoard, first, "Cut on the waste side; the line stays.",
		fmt.Sprintf("On %s: gauge the baseline %s from %s on both faces; mark %d %s from the %s as in Marking%s.",
			tail, s.exactLength(j.Baseline.Outer).Text, from, len(j.Tails), tailWord(j), markedEdge(s.p), slopeWords(j)),
		s.cheeks(j), "Chop or saw out the waste, paring to the baseline at the corner's angle, not square to the face.")
	base := fmt.Sprintf("Baseline %s on both faces.", s.exactLength(j.PinBaseline.Outer).Text)
	if j.Kind == form.HalfBlindDovetail {
		base = fmt.Sprintf("Baseline %s on the inner face alone, and on the end a line as far from the inner face as the tails are long: what is outside it stays whole and covers them.", s.exactLength(j.PinBaseline.Inner).Text)
	}
	s.step(j.PinBoard, second, "Chop with the board held down, chisel away from the body.", transfer(j, on, pin), base)
}

// tailEnds are the ends that carry the tails, and the pins; the end with pins has no name where all ends of its board
// are alike. A side has tails at its top end only, and the two ends of a tread may differ.
func (s *steps) tailEnds(j joint.Joint) (tails, pins string) {
	for _, k := range s.p.Joints {
		if len(k.Tails) == 0 || k.PinBoard != j.TailBoard {
			continue
		}
		if s.p.Design.Corners.TailsOn == form.OnFront {
			return "the right end as seen from outside", "left end"
		}
		return "the left end as seen from outside", "right end"
	}
	like := 0
	for _, k := range s.p.Joints {
		if k.TailBoard == j.TailBoard && len(k.Tails) == len(j.Tails) && within(k.Dihedral, j.Dihedral, sameAngle) && within(k.Width, j.Width, sameLength) {
			like++
		}
	}
	tail, pin := s.p.Part(j.TailBoard), s.p.Part(j.PinBoard)
	switch {
	case like > 1 || tail == nil || pin == nil:
		return "each end", ""
	case strings.HasPrefix(tail.ID, "side-"):
		return "its top end", ""
	case part.Back(tail.Place).Mul4x1(pin.Place.Col(3))[0] < 0:
		return "its left end", ""
	}
	return "its right end", ""
}

// transfer says how pins are marked from the tails, or fingers from those between them; on is the end of a board that has pins
// at one end alone.
func transfer(j joint.Joint, on, pin string) string {
	inside, stand := degrees(j.Dihedral), pinWords(j)
	switch fingers := j.Kind == form.FingerJoint; {
	case fingers && on == "":
		return fmt.Sprintf("On the end grain of %s: lay the board with the fingers on it at %s inside and scribe round them, or mark from the table; their mates stand %s from square on the end.", pin, inside, stand)
	case fingers:
		return fmt.Sprintf("On the %s of %s: lay the board with the fingers on it at %s inside and scribe round them, or mark from the table; their mates stand %s from square on the end.", on, pin, inside, stand)
	case on == "":
		return fmt.Sprintf("On the end grain of %s: lay the tail board on it at %s inside and scribe round the tails, or mark from the table; the pins stand %s from square on the end.", pin, inside, stand)
	}
	return fmt.Sprintf("On the %s of %s: lay the tail board on it at %s inside and scribe round the tails, or mark from the table; the pins stand %s from square on the end.", on, pin, inside, stand)
}

// cheeks reminds that off square the cheeks of a tail lean.
func (s *steps) cheeks(j joint.Joint) string {
	if straight(j.CheekTilt) && straight(j.BackCheekTilt) {
		return "The cheeks are square to the face."
	}
	if !straight(j.CheekTilt - j.BackCheekTilt) {
		return fmt.Sprintf("Off square the lower cheeks lean %.2f° and the upper ones %.2f° from square to the face: follow the line on the end.",
			j.CheekTilt.Degrees(), j.BackCheekTilt.Degrees())
	}
	return fmt.Sprintf("Off square the cheeks lean %.2f° from square to the face: follow the line on the end.", j.CheekTilt.Degrees())
}
