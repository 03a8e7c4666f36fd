package table

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/part"
)

// mitres are fitted before anything is cut into them.
func (s *steps) mitres(j joint.Joint) {
	s.step(j.TailBoard, "Fit the mitres", "Shoot small ends on a board with a stop, never freehand over a machine.",
		fmt.Sprintf("Hold %s and %s together: inside the corner a bevel stands at %s. Shave the ends until no light shows; opposite boards stay of one length.",
			s.nameOf(j.TailBoard), s.nameOf(j.PinBoard), degrees(j.Dihedral)),
		"An error of a tenth of a degree arrives at the last corner as many times over as there are cuts.")
}

// butts are ends of walls that stand against the face of the next.
func (s *steps) butts(j joint.Joint) {
	s.step(j.TailBoard, "Fit the corners", "Shoot small ends on a board with a stop, never freehand over a machine.",
		fmt.Sprintf("The end of one board stands on the face of the other, at %s inside, as in Seats; shave it until no light shows.", degrees(j.Dihedral)),
		"Glue alone on end grain does not hold: the corner wants screws, or a bottom that ties it.")
}

func (s *steps) together() {
	how := []string{"Glue the joints, bring them home as in the dry fit, clamp with blocks cut to the corner's angle so that the clamps do not slide down the lean."}
	if slices.ContainsFunc(s.p.Joints, mitred) {
		how = append(how, "Mitres: size their end grain with thin glue first; lay the boards outer face up, tape the corners, turn them over, glue and fold them up.")
	}
	if s.bored("pilot") {
		how = append(how, "Drive the screws while the clamps hold.")
	}
	how = append(how, s.loose()...)
	s.step("", "Glue up", "Check the diagonals again before the glue sets. Follow the glue's own cautions for skin and air.", how...)
}

// loose says which parts must be free to move with the seasons.
func (s *steps) loose() []string {
	var out []string
	for _, j := range s.p.Joints {
		switch j.Kind {
		case form.InGroove, form.InRabbet:
			out = appendOnce(out, "The bottom goes in with the walls and dry, or with a spot of glue in the middle of its ends: it must swell and shrink in its groove.")
		case form.ScrewedOn:
			if j.TailBoard != "bottom" {
				continue // a batten, of which more below
			}
			out = appendOnce(out, "The bottom is screwed on without glue, so that it can move.")
		}
	}
	if slices.ContainsFunc(s.p.Parts, func(q *part.Part) bool { return strings.HasPrefix(q.ID, "batten") }) {
		out = append(out, "Battens are screwed to the lid without glue, the outer holes in them slotted across the lid's grain: glued on, they split it.")
	}
	return out
}

func appendOnce(list []string, text string) []string {
	if slices.Contains(list, text) {
		return list
	}
	return append(list, text)
}

// bored tells whether any hole serves a purpose.
func (s *steps) bored(purpose string) bool {
	return slices.ContainsFunc(s.p.Parts, func(q *part.Part) bool {
		return slices.ContainsFunc(q.Bores, func(b part.Bore) bool { return b.Purpose == purpose })
	})
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
