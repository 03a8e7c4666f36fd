package file

import (
	"strconv"

	"splaywright/model/form"
)

// SetJoint gives the corners another joint. What carries over stays; an overhang goes where the joint
// leaves none, for its field goes too and nothing would be left to mend the refused piece by.
// The error is an *Error.
func (d *Document) SetJoint(joint string) error {
	next, before := d.Clone(), d.Text("corners.joint")
	if err := next.Set("corners.joint", joint); err != nil {
		return err
	}
	next.dropOverhang()
	if !form.LetIn(joint) { // nothing is let in, so nothing stops short or has a shoulder
		next.Remove("corners.stop")
		next.Remove("corners.shoulder")
	}
	if joint != form.SplinedMitre {
		next.Remove("corners.spline")
	}
	if joint != form.KeyedMitre {
		next.Remove("corners.keys")
	}
	if (joint == form.FingerJoint) != (before == form.FingerJoint) {
		next.dropTails()
	}
	if joint == form.GrooveTongue {
		next.Remove("corners.screws") // those of a whole end would split its tongue, a third as thick
	}
	*d = *next
	return nil
}

// dropOverhang takes out an overhang where the form and its joint leave none.
func (d *Document) dropOverhang() {
	if joint := d.Text("corners.joint"); joint != "" && !form.Overhangs(d.Text("form"), joint) {
		d.Remove("corners.overhang")
		d.Remove("corners.overhang-edges")
	}
}

// dropTails takes out the number and widths of tails, pins or fingers. Fingers are about as wide as the boards are thick and tails
// some times that, so that neither the number nor the width of one is what a person wants of the other.
func (d *Document) dropTails() {
	for _, key := range []string{"tails", "tail", "tail-widths", "mirrored", "pin", "half-pin"} {
		d.Remove("corners." + key)
	}
}

// carryTails keeps the number of uneven tails where the corner becomes one of another length: a top's
// corners run across it, walls' corners up them. The error is an *Error.
func (d *Document) carryTails() error {
	const widths = "corners.tail-widths"
	n := d.Len(widths)
	if n == 0 {
		return nil
	}
	if d.Text("corners.mirrored") == "true" {
		n *= 2 // an odd number is typed beside them
	}
	d.Remove(widths)
	d.Remove("corners.mirrored")
	if d.Text("corners.tails") != "" {
		return nil
	}
	return d.Set("corners.tails", strconv.Itoa(n))
}
