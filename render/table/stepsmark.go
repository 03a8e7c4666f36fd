package table

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/part"
)

// faces says what is pencilled on the boards: the same as drawings and patterns show.
func (s *steps) faces() {
	how := []string{fmt.Sprintf("Choose outer faces and %ss; on each outer face write the part's number, underlined, and beside it the arrows to the top and to the front, as drawn.", markedEdge(s.p))}
	s.step("", "Mark the faces", "", append(how, s.triangles(), fmt.Sprintf("Every figure is taken from the %s and the outer face.", markedEdge(s.p)))...)
}

// triangles says over which boards the carpenter's triangle is drawn, and which way it points.
func (s *steps) triangles() string {
	var over []string
	base, point := "", ""
	for _, run := range form.Runs(s.p) {
		over = append(over, inOrder(boardsOf(run)))
		base, point = edgesAcross(run[0].Part)
	}
	if len(over) == 0 || point == "" {
		return ""
	}
	return fmt.Sprintf("Lay the boards of a run end to end, outer faces up, and draw a triangle over them, its base along the %ss and its point towards the %ss: over %s.",
		base, point, strings.Join(over, "; "))
}

// edgesAcross are the edge that marking starts from and the one across from it.
func edgesAcross(q *part.Part) (base, point string) {
	base = cutName(q.Reference().ID)
	switch base {
	case "front edge":
		point = "back edge"
	case "lower edge":
		point = "upper edge"
	}
	return base, point
}

func boardsOf(run []form.Laid) []*part.Part {
	var out []*part.Part
	for _, l := range run {
		out = append(out, l.Part)
	}
	return out
}

// inOneBoard asks for the boards of a run from one board.
func (s *steps) inOneBoard() string {
	var each []string
	for _, run := range form.Runs(s.p) {
		each = append(each, inOrder(boardsOf(run)))
	}
	if len(each) == 0 {
		return ""
	}
	return fmt.Sprintf("Keep the boards of a run in one board, in this order, so that the grain runs on: %s.", strings.Join(each, "; "))
}

// seats marks where boards stand against others that are not let in: those that stand against the same together.
func (s *steps) seats() {
	var seated, on [][]string
	first := ""
	for _, q := range s.p.Parts {
		var against []string
		for _, j := range s.p.Joints {
			if j.PinBoard == q.ID && (j.Kind == form.Butt || j.Kind == form.ScrewedOn) && s.p.Part(j.TailBoard) != nil {
				against = appendOnce(against, j.TailBoard)
			}
		}
		if len(against) == 0 {
			continue
		}
		if first == "" {
			first = against[0]
		}
		if k := slices.IndexFunc(on, func(o []string) bool { return slices.Equal(o, against) }); k >= 0 {
			seated[k] = append(seated[k], q.ID)
			continue
		}
		seated, on = append(seated, []string{q.ID}), append(on, against)
	}
	var each []string
	for k := range on {
		each = append(each, fmt.Sprintf("%s against %s", s.the(seated[k]...), s.the(on[k]...)))
	}
	if len(each) > 0 {
		s.step(first, "Mark the seats", "", fmt.Sprintf("Where boards only stand against each other, mark the corners of each seat as in Seats and join them: %s.", strings.Join(each, "; ")))
	}
}

// fellowsOf are a part and those that are equal to it.
func fellowsOf(p *form.Piece, id string) []string {
	for _, g := range groups(p) {
		if slices.ContainsFunc(g, func(q *part.Part) bool { return q.ID == id }) {
			var ids []string
			for _, q := range g {
				ids = append(ids, q.ID)
			}
			return ids
		}
	}
	return []string{id}
}

// features are cut while the boards still lie flat.
func (s *steps) features() {
	var each []string
	seen := map[int]bool{}
	for _, q := range s.p.Parts {
		for _, f := range q.Features {
			if f.Kind != part.RoundOver && !seen[f.Index] {
				seen[f.Index] = true
				each = append(each, s.shaped(f.Index)...)
			}
		}
	}
	if len(each) == 0 {
		return
	}
	s.step("", "Cut the shapes", "Saw clear of the line and work to it; curves near an end are short grain.",
		strings.Join(each, "; ")+".", "Places stand in Shapes.",
		"They come before the glue-up, while the boards lie flat, and after the joints, whose ends take the clamps.")
}

// shaped tells one shape of the design: the parts that have it alike together, each different one by itself.
func (s *steps) shaped(index int) []string {
	var texts []string
	parts := map[string]group{}
	for _, q := range s.p.Parts {
		var some []part.Feature
		for _, f := range q.Features {
			if f.Index == index && f.Kind != part.RoundOver {
				some = append(some, f)
			}
		}
		if len(some) == 0 {
			continue
		}
		text := s.shapeWords(some)
		if parts[text] == nil {
			texts = append(texts, text)
		}
		parts[text] = append(parts[text], q)
	}
	for k, text := range texts {
		texts[k] = parts[text].short() + ": " + text
	}
	return texts
}

// shapeWords are the kind and the size of a shape, or of several equal ones of a board.
func (s *steps) shapeWords(some []part.Feature) string {
	f := some[0]
	switch {
	case f.Kind == part.Hole && len(some) > 1:
		return fmt.Sprintf("%d holes Ø%s", len(some), s.show(f.Length))
	case f.Kind == part.Hole:
		return fmt.Sprintf("hole Ø%s", s.show(f.Length))
	}
	return fmt.Sprintf("%s %s × %s%s", f.Kind, s.show(f.Length), s.show(f.Width), onEdge(f))
}

func onEdge(f part.Feature) string {
	if f.Edge == "" || f.Kind == part.Arch {
		return ""
	}
	return fmt.Sprintf(" on the %s", strings.ReplaceAll(f.Edge, "-", " "))
}

// holes are bored in the outer board before the dry fit and in the inner one through them.
func (s *steps) holes() {
	lean := false
	for _, q := range s.p.Parts {
		for _, b := range q.Bores {
			lean = lean || b.Purpose == "clearance" && !straight(b.Lean)
		}
	}
	if !s.bored("clearance") {
		return
	}
	first := "Bore the clearance holes by Boring."
	if s.bored("counterbore") {
		first = "Counterbore first, then clearance, by Boring."
	}
	leaning := ""
	if lean {
		leaning = "They lean against the face: a wedge under the board at the angle in Boring lets the bit stand plumb."
	}
	s.step("", "Bore for the screws", "Clamp a backing board behind; never hold small parts by hand.",
		first, leaning, "The pilots come later, through the clearance holes, so that they line up.")
}

// housing cuts housings, grooves and rabbets, and the tongue of what goes into them.
func (s *steps) housing(j joint.Joint) {
	in, what := s.alikeTo(j)
	how := []string{fmt.Sprintf("In %s for %s, %s deep; its place stands in %s.", in, what, s.joint(j.Depth), placeWord(j)),
		"Mark its width from the board that goes in, not from a rule."}
	if j.Stop > 0 {
		how = append(how, fmt.Sprintf("It stops %s short of the %s: notch the board that goes in there.", s.joint(j.Stop), stopEdge(s.p)))
	}
	if j.Shoulder > 0 {
		how = append(how, fmt.Sprintf("Leave a tongue on %s: cut %s off the outer face, as far from the end as the groove is deep.", what, s.show(j.Shoulder)))
	}
	s.step(j.TailBoard, cutSeat(j), "Clamp a fence; keep both hands on the router or the saw.", how...)
}

// stopEdge is the edge before which a stopped housing ends.
func stopEdge(p *form.Piece) string {
	if form.OnSides(p.Form) {
		return "front edge"
	}
	return "upper edge"
}
