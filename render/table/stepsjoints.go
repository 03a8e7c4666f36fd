package table

import (
	"fmt"
	"slices"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/part"
)

// joints has the steps of each kind of joint once, for the first of those that are alike; mitres are fitted before
// anything is cut into them.
func (s *steps) joints() {
	s.eachJoint(func(j joint.Joint) {
		if mitred(j) {
			s.mitres(j)
		}
	})
	splined := map[string]bool{}
	s.eachJoint(func(j joint.Joint) {
		switch {
		case len(j.Tails) > 0:
			s.tails(j)
		case j.Spline != nil:
			if key := fmt.Sprintf("%.3f %.3f", j.Spline.Thickness.MM(), j.Spline.Width.MM()); !splined[key] {
				splined[key] = true
				s.splines(j)
			}
		case j.Tenon != nil:
			s.tenons(j)
		case j.Depth > 0:
			s.housing(j)
		case !form.OnSides(s.p.Form) && j.Kind == form.Butt:
			s.butts(j)
		}
	})
}

// eachJoint does something for the first of the joints that are alike.
func (s *steps) eachJoint(do func(joint.Joint)) {
	done := map[string]bool{}
	for _, j := range s.p.Joints {
		key := fmt.Sprintf("%s %.3f %.3f %d", j.Kind, j.Dihedral.Degrees(), j.Width.MM(), len(j.Tails))
		switch {
		case j.Tenon != nil:
			key = "tenon " + j.PinBoard
		case j.Depth > 0 && len(j.Tails) == 0 && j.Spline == nil:
			key = s.housed(j)
		}
		if !done[key] {
			done[key] = true
			do(j)
		}
	}
}

// housed is the same for housings and grooves that are cut with one setting for boards that are alike.
func (s *steps) housed(j joint.Joint) string {
	return fmt.Sprintf("%s %.3f %s", j.Kind, j.Depth.MM(), fellowsOf(s.p, j.PinBoard)[0])
}

// alikeTo names the boards of all joints that are made like one: those with the tails or the hollows, and the others.
func (s *steps) alikeTo(j joint.Joint) (tails, pins string) {
	var t, p []string
	for _, k := range s.p.Joints {
		if s.madeLike(j, k) {
			t, p = appendOnce(t, k.TailBoard), appendOnce(p, k.PinBoard)
		}
	}
	return s.the(t...), s.the(p...)
}

func (s *steps) madeLike(j, k joint.Joint) bool {
	if len(j.Tails) > 0 {
		return k.Kind == j.Kind && len(k.Tails) == len(j.Tails) && within(k.Dihedral, j.Dihedral, sameAngle) && within(k.Width, j.Width, sameLength)
	}
	return k.Depth > 0 && len(k.Tails) == 0 && k.Spline == nil && k.Tenon == nil && s.housed(k) == s.housed(j)
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

// finishing ends the work: what is rounded is rounded here, and nowhere before.
func (s *steps) finishing() {
	how := []string{"Plane joints flush."}
	if form.OnSides(s.p.Form) {
		how = append(how, "Stand it on a flat surface, scribe the feet round and pare them to the line until it does not rock.")
	}
	if r := s.rounding(); r > 0 {
		how = append(how, fmt.Sprintf("Round the free edges to %s: after the glue-up, since an edge rounded earlier leaves a gap where it runs into a joint. Where the router does not reach into a corner, finish by hand.", s.show(r)))
	}
	mind := "Oily rags heat up by themselves: dry them flat outdoors."
	if form.OnSides(s.p.Form) || s.has("lid") {
		mind = "Oily rags heat up by themselves: dry them flat outdoors. Load it on the floor before anyone uses it."
	}
	s.step("", "Level, ease and finish", mind, append(how, "Finish all faces alike, the hidden ones too, so that the boards stay flat.")...)
}

// bored tells whether any hole serves a purpose.
func (s *steps) bored(purpose string) bool {
	return slices.ContainsFunc(s.p.Parts, func(q *part.Part) bool {
		return slices.ContainsFunc(q.Bores, func(b part.Bore) bool { return b.Purpose == purpose })
	})
}
