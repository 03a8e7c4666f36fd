// Package resize works out what else of a design changes when its overall sizes do and something of
// the old piece is to be held: its footprint, the length of its legs, its pins, its tails, how far
// its stretchers are in from the edges.
package resize

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
)

// What can be held. Splay, footprint and leg length each settle the lean, so only one of them goes
// at a time; the splay is what is held when none of them is named.
const (
	Splay     = "splay"
	Footprint = "footprint"       // width and depth at the floor
	LegLength = "leg length"      // of a stool's sides, along the outer face
	Pins      = "pin width"       // pins and half pins; as many tails as then come nearest to the old ones
	Tails     = "number of tails" // pins and half pins grow in proportion, unless they are held too
	Inset     = "stretcher inset" // from the nearer edge of the piece, at the top
)

// Holds lists what can be held for a form, in the order in which it is offered.
func Holds(d form.Design) []string {
	d = d.Defaults()
	out := []string{Splay, Footprint}
	if d.Form == "stool" {
		out = append(out, LegLength)
	}
	if tailed(d.Corners.Joint) {
		out = append(out, Pins, Tails)
	}
	if slices.ContainsFunc(d.Stretchers, func(s form.Stretcher) bool { return s.Across != 0 }) {
		out = append(out, Inset)
	}
	return out
}

func tailed(j string) bool { return j == form.ThroughDovetail || j == form.HalfBlindDovetail }

// Edit is a size to be put into the design file; an empty text takes it out.
type Edit struct{ Path, Text string }

// Kept is returned where a hold would change a size that the person keeps.
type Kept struct{ Hold, Path string }

func (k *Kept) Error() string {
	return fmt.Sprintf("to hold the %s, %s would have to change, and it is kept; let one of the two go", k.Hold, k.Path)
}

// Plan gives the edits that, made to a design whose overall sizes are new, hold what is named of the
// design that was. kept are paths that must stay as they are. The error says which hold cannot be
// had, why, and what would do.
func Plan(was, now form.Design, holds, kept []string) ([]Edit, error) {
	t := task{was: was.Defaults(), now: now.Defaults(), kept: kept}
	if err := t.agree(holds); err != nil {
		return nil, err
	}
	t.before = form.Build(was)
	if t.before.Stopped() {
		return nil, errors.New("the piece cannot be built as it is, so nothing of it can be held; mend that first")
	}
	for _, step := range []struct {
		name string
		hold func() error
	}{{Footprint, t.footprint}, {LegLength, t.legLength}, {Inset, t.inset}} {
		if slices.Contains(holds, step.name) {
			if err := step.hold(); err != nil {
				return nil, err
			}
		}
	}
	if err := t.corner(slices.Contains(holds, Pins), slices.Contains(holds, Tails)); err != nil {
		return nil, err
	}
	return t.edits, nil
}

// task is one resizing while it is worked out.
type task struct {
	was, now form.Design
	before   *form.Piece
	kept     []string
	edits    []Edit
}

// agree refuses holds that there are not and those that contradict each other.
func (t *task) agree(holds []string) error {
	can := Holds(t.was)
	leans := 0
	for _, h := range holds {
		if !slices.Contains(can, h) {
			return fmt.Errorf("the %s of this piece cannot be held; there is %s", h, strings.Join(can, ", "))
		}
		if h == Splay || h == Footprint || h == LegLength {
			leans++
		}
	}
	if leans > 1 {
		return fmt.Errorf("%s, %s and %s each settle how far the piece leans; hold one of them", Splay, Footprint, LegLength)
	}
	return nil
}

// edit notes a new size, unless the person keeps what is there.
func (t *task) edit(hold, path, text string) error {
	if slices.Contains(t.kept, path) {
		return &Kept{hold, path}
	}
	t.edits = append(t.edits, Edit{path, text})
	return nil
}
