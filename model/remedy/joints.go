package remedy

import "splaywright/model/form"

const (
	jointPath  = "corners.joint"
	mostJoints = 2 // offered: more is a catalogue
)

// joints lets the corners be joined otherwise, where that clears the finding; those that are nearest to what is made first.
func (s *search) joints() (out []Offer) {
	was := s.piece.Design.Corners.Joint
	order := []string{form.SplinedMitre, form.Mitre, form.Housing, form.GrooveTongue, form.Butt, form.KeyedMitre, form.FingerJoint, form.ThroughDovetail, form.HalfBlindDovetail}
	for _, to := range order {
		if o := (Offer{Path: jointPath, Was: was, Now: to}); to != was && len(out) < mostJoints && s.clears(o) {
			out = append(out, o)
		}
	}
	return out
}
