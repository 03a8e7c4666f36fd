package table

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/joint"
)

// mitres are fitted before anything is cut into them.
func (s *steps) mitres(j joint.Joint) {
	shave := "Shave the ends until no light shows."
	if !form.OnSides(s.p.Form) {
		shave = "Shave the ends until no light shows; opposite boards stay of one length."
	}
	s.step(j.TailBoard, "Fit the mitres", "Shoot small ends on a board with a stop, never freehand over a machine.",
		fmt.Sprintf("Hold %s and %s together: inside the corner a bevel stands at %s.", s.the(j.TailBoard), s.the(j.PinBoard), degrees(j.Dihedral)), shave,
		"An error of a tenth of a degree arrives at the last corner as many times over as there are cuts.")
}

// butts are ends of walls that stand against the face of the next.
func (s *steps) butts(j joint.Joint) {
	s.step(j.TailBoard, "Fit the corners", "Shoot small ends on a board with a stop, never freehand over a machine.",
		fmt.Sprintf("The end of one board stands on the face of the other, at %s inside, as in Seats; shave it until no light shows.", degrees(j.Dihedral)),
		"Glue alone on end grain does not hold: the corner wants screws, or a bottom that ties it.")
}

func (s *steps) together() {
	clamp := "Glue the joints, bring them home as in the dry fit and clamp them."
	if s.leans() {
		clamp = "Glue the joints, bring them home as in the dry fit, clamp with blocks cut to the corner's angle so that the clamps do not slide down the lean."
	}
	how := []string{clamp, s.folding()}
	if s.glueScrews() {
		how = append(how, "Drive the screws while the clamps hold.")
	}
	how = append(how, s.loose()...)
	s.step("", "Glue up", "Check again that it stands true before the glue sets. Follow the glue's own cautions for skin and air.", how...)
}

// folding is how mitres are glued. Splines that can slide in from an end go in when the corners stand.
func (s *steps) folding() string {
	k := slices.IndexFunc(s.p.Joints, mitred)
	switch {
	case k < 0:
		return ""
	case s.p.Joints[k].Spline == nil:
		return "Mitres: size their end grain with thin glue first; lay the boards outer face up, tape the corners, turn them over, glue and fold them up."
	case s.p.Joints[k].Spline.Low > 0 && s.p.Joints[k].Spline.High > 0:
		return "Mitres: size their end grain with thin glue first; glue the splines into one board of each corner and close the corners straight onto them."
	}
	return "Mitres: size their end grain with thin glue first; lay the boards outer face up, tape the corners, turn them over, glue and fold them up; slide the splines in with glue at once, before you clamp."
}

// loose says which parts must be free to move with the seasons.
func (s *steps) loose() []string {
	var out []string
	for _, j := range s.p.Joints {
		switch {
		case grooved(j):
			out = appendOnce(out, s.bottomIn(j))
		case j.Kind == form.ScrewedOn && j.TailBoard == "bottom":
			out = appendOnce(out, "When the glue is dry, screw the bottom on without glue, so that it can move.")
		}
	}
	if s.has("lid") {
		out = append(out, "The lid gets no glue: it is laid on when the rest is dry.")
	}
	return out
}

// bottomIn says when a bottom goes into its groove or rabbet, and how it is held.
func (s *steps) bottomIn(j joint.Joint) string {
	if j.Kind == form.InRabbet && s.bottomLast() {
		return "The bottom goes into its rabbet last, with a spot of glue in the middle of its ends: it must be free to swell and shrink."
	}
	return "The bottom goes in with the walls and dry, or with a spot of glue in the middle of its ends: it must swell and shrink in its groove."
}

// bottomLast tells whether the bottom goes in when all walls stand.
func (s *steps) bottomLast() bool {
	seen := false
	for _, m := range s.p.Assembly.Moves {
		if slices.Contains(m.Parts, "bottom") {
			seen = true
			continue
		}
		if q := s.p.Part(m.Parts[0]); seen && q != nil && q.Slip == "" && slices.Contains(m.Onto, "bottom") && !slices.Contains(m.Parts, "lid") {
			return false
		}
	}
	return seen
}

func appendOnce(list []string, text string) []string {
	if slices.Contains(list, text) {
		return list
	}
	return append(list, text)
}

// plugs close the counterbores when everything is dry.
func (s *steps) plugs() {
	sizes := map[string]int{}
	var order []string
	for _, q := range s.p.Parts {
		for _, b := range q.Bores {
			if b.Plug > 0 {
				d := bits(s.style).Format(b.Plug)
				if sizes[d] == 0 {
					order = append(order, d)
				}
				sizes[d]++
			}
		}
	}
	if len(order) == 0 {
		return
	}
	var each []string
	for _, d := range order {
		each = append(each, fmt.Sprintf("%d of Ø%s", sizes[d], d))
	}
	s.step("", "Plug the screw holes", "Cut plugs at the drill press from a board that is clamped; they are too small to hold.",
		fmt.Sprintf("Plugs from the face of a board of the same timber, not from its end: %s.", strings.Join(each, ", ")),
		"Glue them in when the screws are home, grain along the board's; saw them off when dry and pare them flush with the grain.")
}
