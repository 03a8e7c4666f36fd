package table

import (
	"fmt"
	"math"
	"slices"
	"strconv"
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
	s.holes()
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
	s.row(ref, count(len(s.Rows)+1), word(do), word(strings.Join(how, " ")), word(mind))
}

func (s *steps) show(l measure.Length) string { return s.style.Format(l) }

func (s *steps) mill() {
	var each []string
	for _, g := range groups(boardsOnly(s.p)) {
		each = append(each, g.short()+": "+s.show(g[0].Blank.Thickness))
	}
	s.step("", "Plane to thickness", "Boards too short for the machine's hold-downs are planed before they are cut to length.",
		"Flatten one face, plane the other to it: "+strings.Join(each, "; ")+".",
		"Baselines and angled cuts depend on it: a board that comes out thinner is typed in before anything is marked.")
}

func (s *steps) rough() {
	var each []string
	for _, g := range groups(boardsOnly(s.p)) {
		r := g[0].Rough
		each = append(each, fmt.Sprintf("%s: %s × %s", g.short(), s.show(r.Length), s.show(r.Width)))
	}
	s.step("", "Cut heavy", "Let the boards rest a few days in the room and plane again if they move.",
		"Cut along the grain × across it: "+strings.Join(each, "; ")+".", "Keep boards that follow each other round the piece in one board, in order.")
}

func (s *steps) faces() {
	draw := "Choose outer faces and %ss, write the part's number on the outer face and an arrow to the top beside it."
	if !form.OnSides(s.p.Form) || s.dovetailed() {
		draw = "Choose outer faces and %ss, write the part's number on the outer face and draw a triangle across all of them, its point to the top."
	}
	s.step("", "Mark the faces", "", fmt.Sprintf(draw, markedEdge(s.p)),
		fmt.Sprintf("Every figure is taken from the %s and the outer face.", markedEdge(s.p)))
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
		s.step("", "Cut square", "", "Square to face and edge, to the finished size: "+strings.Join(straightCuts, "; ")+".")
	}
	if len(angled) > 0 {
		s.step("", "Cut the angles", "Clamp or jig leaning boards; keep hands out of the blade's line and the offcut free.",
			"Board flat, outer face up. "+strings.Join(angled, ". ")+".",
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
	return strconv.FormatFloat(a.Degrees(), 'f', 1, 64) + "°"
}

// taperFirst says why edges that taper are cut before the joint is marked.
func (s *steps) taperFirst() string {
	if !s.dovetailed() || !slices.ContainsFunc(s.p.Parts, tapers) {
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

// joints has the steps of each kind of joint once, for the first of those that are alike.
func (s *steps) joints() {
	done := map[string]bool{}
	for _, j := range s.p.Joints {
		key := fmt.Sprintf("%s %.3f %.3f %d", j.Kind, j.Dihedral.Degrees(), j.Width.MM(), len(j.Tails))
		switch {
		case j.Tenon != nil:
			key = "tenon " + j.PinBoard
		case j.Depth > 0 && len(j.Tails) == 0 && j.Spline == nil:
			key = s.housed(j)
		}
		if done[key] {
			continue
		}
		done[key] = true
		if mitred(j) {
			s.mitres(j)
		}
		switch {
		case len(j.Tails) > 0:
			s.tails(j)
		case j.Spline != nil:
			s.splines(j)
		case j.Tenon != nil:
			s.tenons(j)
		case j.Depth > 0:
			s.housing(j)
		case !form.OnSides(s.p.Form) && j.Kind == form.Butt:
			s.butts(j)
		}
	}
}

func (s *steps) tails(j joint.Joint) {
	tail, pin := s.alikeTo(j)
	from, on := s.tailEnds(j)
	s.step(j.TailBoard, "Mark and saw the tails", "Cut on the waste side; the line stays.",
		fmt.Sprintf("On %s: gauge the baseline %s from %s on both faces; mark %d %s from the %s as in Marking%s.",
			tail, s.exactLength(j.Baseline.Outer).Text, from, len(j.Tails), tailWord(j), markedEdge(s.p), slopeWords(j)),
		s.cheeks(j), "Chop or saw out the waste, paring to the baseline at the corner's angle, not square to the face.")
	s.step(j.PinBoard, "Transfer and cut the pins", "Chop with the board held down, chisel away from the body.",
		transfer(on, pin, degrees(j.Dihedral), pinWords(j)),
		fmt.Sprintf("Baseline %s on both faces.", s.exactLength(j.PinBaseline.Outer).Text))
}

// trueness is how a tape tells that the piece stands true.
func (s *steps) trueness() string {
	n := s.p.Design.Size.Staves
	switch {
	case s.p.Form != "ring" || n == 4:
		return "Measure both diagonals on the floor and across the top: they are equal when it stands true."
	case n%2 == 0:
		return "Measure from corner to opposite corner on the floor and across the top: all are equal when it stands true."
	}
	return "Measure from each corner to the middle of the stave across from it, on the floor and at the top: all are equal when it stands true."
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

// transfer says how pins are marked from the tails; on is the end of a board that has pins at one end alone.
func transfer(on, pin, inside, stand string) string {
	if on == "" {
		return fmt.Sprintf("On the end of %s: lay the tail board on it at %s inside and scribe round the tails, or mark from the table; the pins stand %s from square on the end.", pin, inside, stand)
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

// housed is the same for housings and grooves that are cut with one setting for boards that are alike.
func (s *steps) housed(j joint.Joint) string {
	pin := j.PinBoard
	for _, g := range groups(s.p) {
		if slices.ContainsFunc(g, func(q *part.Part) bool { return q.ID == pin }) {
			pin = g[0].ID
		}
	}
	return fmt.Sprintf("%s %.3f %s", j.Kind, j.Depth.MM(), pin)
}

// alikeTo names the boards of all joints that are made like one: those with the tails or the hollows, and the others.
func (s *steps) alikeTo(j joint.Joint) (tails, pins string) {
	like := func(k joint.Joint) bool {
		if len(j.Tails) > 0 {
			return k.Kind == j.Kind && len(k.Tails) == len(j.Tails) && within(k.Dihedral, j.Dihedral, sameAngle) && within(k.Width, j.Width, sameLength)
		}
		return k.Depth > 0 && len(k.Tails) == 0 && k.Spline == nil && k.Tenon == nil && s.housed(k) == s.housed(j)
	}
	var t, p []string
	for _, k := range s.p.Joints {
		if like(k) {
			t, p = appendOnce(t, k.TailBoard), appendOnce(p, k.PinBoard)
		}
	}
	return s.these(t), s.these(p)
}

// these names parts, equal ones together.
func (s *steps) these(ids []string) string {
	var names []string
	for _, g := range groups(s.p) {
		var in group
		for _, q := range g {
			if slices.Contains(ids, q.ID) {
				in = append(in, q)
			}
		}
		switch {
		case len(in) > 0 && len(in) == len(g):
			names = append(names, g.short())
		default:
			for _, q := range in {
				names = append(names, s.nameOf(q.ID))
			}
		}
	}
	return and(names)
}

func (s *steps) housing(j joint.Joint) {
	in, what := s.alikeTo(j)
	s.step(j.TailBoard, "Cut the "+seatWord(j), "Clamp a fence; keep both hands on the router or the saw.",
		fmt.Sprintf("In %s for %s, %s deep; its place stands in %s.", in, what, s.show(j.Depth), placeWord(j)),
		"Mark its width from the board that goes in, not from a rule.")
}

func (s *steps) nameOf(id string) string {
	q := s.p.Part(id)
	if q == nil {
		return id
	}
	return strings.TrimRight(partMark(q), " 0123456789") // the mark is number enough
}

// features are cut while the boards still lie flat.
func (s *steps) features() {
	var each []string
	seen := map[int]bool{}
	for _, q := range s.p.Parts {
		for _, f := range q.Features {
			if f.Kind == part.RoundOver || seen[f.Index] {
				continue
			}
			seen[f.Index] = true
			if f.Kind == part.Hole {
				each = append(each, fmt.Sprintf("%s: hole Ø%s", partMark(q), s.show(f.Length)))
				continue
			}
			each = append(each, fmt.Sprintf("%s: %s %s × %s%s", partMark(q), f.Kind, s.show(f.Length), s.show(f.Width), onEdge(f)))
		}
	}
	if len(each) == 0 {
		return
	}
	s.step("", "Cut the shapes", "Saw clear of the line and work to it; curves near an end are short grain.",
		strings.Join(each, "; ")+"; equal parts alike.", "Places stand in Shapes.",
		"They come before the glue-up, while the boards lie flat, and after the joints, whose ends take the clamps.")
}

func onEdge(f part.Feature) string {
	if f.Edge == "" || f.Kind == part.Arch {
		return ""
	}
	return fmt.Sprintf(" on the %s", strings.ReplaceAll(f.Edge, "-", " "))
}

// holes are bored in the outer board before the dry fit and in the inner one through them.
func (s *steps) holes() {
	var screws, pilots, lean bool
	for _, q := range s.p.Parts {
		for _, b := range q.Bores {
			screws = screws || b.Purpose == "clearance"
			pilots = pilots || b.Purpose == "pilot"
			lean = lean || !straight(b.Lean)
		}
	}
	if !screws && !pilots {
		return
	}
	leaning := ""
	if lean {
		leaning = "They lean against the face: a wedge under the board at the angle in Boring lets the bit stand plumb."
	}
	s.step("", "Bore for the screws", "Clamp a backing board behind; never hold small parts by hand.",
		"Counterbore first, then clearance, by Boring.", leaning, "The pilots are bored at the dry fit, through the clearance holes, so that they line up.")
}

func (s *steps) dryFit() {
	how := []string{"Put everything together without glue."}
	how = append(how, s.order()...)
	s.step("", "Dry fit", "Do not force it: a pin that must be driven hard splits the board.",
		append(how, s.trueness(), s.inside())...)
}

// order is how the parts go together, in words.
func (s *steps) order() []string {
	a := s.p.Assembly
	if len(a.First) == 0 {
		return nil
	}
	out := []string{fmt.Sprintf("First %s.", s.namesOf(a.First))}
	for _, m := range a.Moves {
		if q := s.p.Part(m.Parts[0]); q != nil && q.Slip.Late() {
			continue // a step of its own
		}
		if m.AtOnce() {
			out = append(out, fmt.Sprintf("Then %s at once: hold them together as far as they go, start all of them, and bring them home a little each in turn; %s.", s.namesOf(m.Parts), s.closing(m)))
			continue
		}
		out = append(out, fmt.Sprintf("Then %s, %s.", s.namesOf(m.Parts), s.wayOf(m)))
	}
	return out
}

// closing is how far the moving parts travel for each unit that they close on each other.
func (s *steps) closing(m form.Move) string {
	for i := range m.Ways {
		for k := range i {
			between := m.Ways[i].Sub(m.Ways[k]).Len()
			along := max(m.Ways[i].Len(), m.Ways[k].Len())
			if between > 1e-6 && along > between {
				return fmt.Sprintf("%s and %s close 1 on each other while they travel %.1f", s.nameOf(m.Parts[k]), s.nameOf(m.Parts[i]), along/between)
			}
		}
	}
	return "each goes its own way"
}

// wayOf says which way a move goes: along a part's own grain, or by the room's directions.
func (s *steps) wayOf(m form.Move) string {
	way := m.Ways[0]
	for _, id := range append(slices.Clone(m.Parts), m.Onto...) {
		q := s.p.Part(id)
		if q == nil || q.Solid == nil {
			continue
		}
		grain := q.Place.Col(0).Vec3()
		if math.Abs(math.Abs(grain.Dot(way))-1) > 1e-9 || math.Abs(way[2]) > 1-1e-6 {
			continue
		}
		if math.Abs(way[2]) < 1e-6 {
			return fmt.Sprintf("level, along the grain of %s", s.nameOf(id))
		}
		return fmt.Sprintf("along the grain of %s, %s from plumb: driven straight it jams", s.nameOf(id), degrees(measure.Angle(math.Acos(math.Abs(way[2])))))
	}
	switch {
	case way[2] > 1-1e-6:
		return "straight up"
	case way[2] < -1+1e-6:
		return "straight down"
	case math.Abs(way[2]) < 1e-6:
		return "level"
	}
	return fmt.Sprintf("%s from plumb", degrees(measure.Angle(math.Acos(min(1, math.Abs(way[2]))))))
}

func (s *steps) namesOf(ids []string) string {
	var names []string
	for _, id := range ids {
		names = append(names, s.nameOf(id))
	}
	return and(names)
}

// inside says what can only be eased before the glue-up.
func (s *steps) inside() string {
	for _, q := range s.p.Parts {
		if len(q.Eased) > 0 {
			return "Ease, plane and sand what cannot be reached later: inner faces, and edges that end at a joint."
		}
	}
	return "Plane and sand the inner faces now."
}

func (s *steps) finishing() {
	how := []string{"Plane joints flush."}
	if form.OnSides(s.p.Form) {
		how = append(how, "Stand it on a flat surface, scribe the feet round and pare them to the line until it does not rock.")
	}
	radius := measure.Length(0)
	for _, q := range s.p.Parts {
		for _, e := range q.Eased {
			radius = max(radius, e.Radius)
		}
	}
	if radius > 0 {
		how = append(how, fmt.Sprintf("Round the free edges to %s: after the glue-up, since an edge rounded earlier leaves a gap where it runs into a joint.", s.show(radius)))
	}
	s.step("", "Level, ease and finish", "Oily rags heat up by themselves: dry them flat outdoors. Load it on the floor before anyone uses it.", append(how, "Finish all faces alike, the hidden ones too, so that the boards stay flat.")...)
}
