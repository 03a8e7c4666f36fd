package hold

import (
	"fmt"
	"math"
	"strings"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/timber"
)

const (
	// leastTongue, mm, of a bottom that stays in its groove in the driest air (common practice).
	leastTongue = 1.0

	slotFormula  = "way from the fixed middle · C · change of moisture, flatsawn"
	slotSource   = movementSource + "; limit: the play of the screw in its hole and 0.5 mm that the wood gives, common practice"
	panelFormula = "half the width · C · change of moisture · cos(lean of the wall), flatsawn"
)

// isWall tells whether a board is one of those that stand round a piece.
func isWall(q *part.Part) bool {
	return q.ID == "front" || q.ID == "back" || strings.HasPrefix(q.ID, "end-") || strings.HasPrefix(q.ID, "stave-")
}

// walls is how the walls move in their height, and how unlike timbers part along a corner.
func (r *reckoning) walls() {
	var least, most, tallest float64
	var one, other *part.Part
	for _, q := range r.p.Parts {
		high := q.Blank.Width.MM()
		c, ok := r.air.change(q.Timber, high)
		if !isWall(q) || !ok {
			continue
		}
		if one == nil || c < least {
			least, one = c, q
		}
		if other == nil || c > most {
			most, other, tallest = c, q, high
		}
	}
	if one == nil {
		return
	}
	r.add(Figure{ID: "walls-move", What: fmt.Sprintf("seasonal movement of the walls in their height, flatsawn, %s", r.air.words), Value: most, Unit: "mm",
		Formula: "width · C · change of moisture", Source: movementSource, Parts: []string{other.ID}, Sizes: []string{"size.height", "timber", "use"}, Level: part.Note})
	if one.Timber == other.Timber {
		return
	}
	slow, _ := r.air.change(one.Timber, tallest)
	r.add(Figure{ID: "boards-move-apart", What: fmt.Sprintf("difference in movement between %s and %s along their corner, %s", r.inWords(one), r.inWords(other), r.air.words),
		Value: math.Abs(most - slow), Limit: mostUnlike, Unit: "mm", Formula: "width · difference of C · change of moisture", Source: movementSource + "; limit: common practice",
		Parts: []string{one.ID, other.ID}, Sizes: []string{"timber", "boards.side.timber", "size.height", "use"}, Advice: "one timber for all walls, or quartersawn boards", Level: part.Warning})
}

// inWords is what a part is called in a sentence.
func (r *reckoning) inWords(q *part.Part) string {
	return strings.Join(form.InWords(r.p, q.ID), "")
}

// bottomMoves is a bottom in its grooves, or held across its grain by screws.
func (r *reckoning) bottomMoves() {
	u, q := r.d.Bottom, r.p.Part("bottom")
	if u == nil || q == nil {
		return
	}
	whole, ok := r.air.change(q.Timber, q.Blank.Width.MM())
	if !ok {
		return
	}
	if u.Joint == form.ScrewedOn {
		r.slots(q, "bottom", "bottom.screws", u.Screws)
		return
	}
	square := whole / 2 * math.Cos(r.lean())
	quarter, _ := r.air.across(q.Timber, q.Blank.Width.MM(), timber.AcrossQuartersawn)
	quartersawn := fmt.Sprintf("a quartersawn bottom, which moves %s there", r.up(quarter/2*math.Cos(r.lean())))
	clearance, depth := u.Clearance.MM(), u.Depth.MM()
	r.add(Figure{ID: "bottom-swells", What: "swelling of the bottom into its groove at each long edge, made in the driest air and brought into the dampest, " + r.air.words,
		Value: square, Limit: max(clearance, noise), Unit: "mm", Formula: panelFormula, Source: movementSource + "; limit: the clearance in the groove", Parts: []string{"bottom"},
		Sizes:  []string{"bottom.clearance", "bottom.depth", "size.depth", "use"},
		Advice: fmt.Sprintf("a clearance of %s or more in a groove deeper by as much, %s, or a dry board fitted by the season", r.up(square), quartersawn), Level: part.Warning})
	r.add(Figure{ID: "bottom-leaves-groove", What: "shrinking of the bottom out of its groove at each long edge, made in the dampest air and brought into the driest",
		Value: square, Limit: max(depth-clearance-leastTongue, noise), Unit: "mm", Formula: panelFormula,
		Source: movementSource + "; limit: 1 mm of the bottom stays in its groove, common practice", Parts: []string{"bottom"},
		Sizes:  []string{"bottom.depth", "bottom.clearance", "size.depth", "use"},
		Advice: fmt.Sprintf("a groove %s deep or more, or %s", r.up(square+clearance+leastTongue), quartersawn), Level: part.Warning})
}

// lean is the lesser lean of the walls that a bottom moves against: front and back, or the staves.
func (r *reckoning) lean() float64 {
	if r.p.Form == "ring" {
		return r.d.Splay.Ends.Radians()
	}
	lean := math.Abs(r.d.Splay.Front.Radians())
	if b := r.d.Splay.Back; b != nil {
		lean = min(lean, math.Abs(b.Radians()))
	}
	return lean
}

// lidMoves is a lid over its walls and across its battens.
func (r *reckoning) lidMoves() {
	q := r.p.Part("lid")
	if r.d.Lid == nil || q == nil {
		return
	}
	whole, ok := r.air.change(q.Timber, q.Blank.Width.MM())
	if !ok {
		return
	}
	r.add(Figure{ID: "lid-moves", What: "seasonal movement of the lid from front to back, flatsawn, " + r.air.words, Value: whole, Unit: "mm",
		Formula: "width · C · change of moisture", Source: movementSource, Parts: []string{"lid"}, Sizes: []string{"size.depth", "timber", "use"}, Level: part.Note})
	n, batten := r.d.Lid.Battens, r.p.Part("batten-1")
	if n == nil || batten == nil {
		return
	}
	if n.Screws != nil {
		r.slots(q, "lid", "lid.battens.screws", n.Screws)
		return
	}
	across, _ := r.air.change(q.Timber, batten.Blank.Length.MM())
	r.add(Figure{ID: "battens-hold-the-lid", What: "seasonal movement of the lid along its battens, which lie across its grain", Value: across, Limit: mostUnlike, Unit: "mm",
		Formula: "length of the batten · C · change of moisture, flatsawn", Source: movementSource + "; limit: common practice", Parts: []string{"lid", "batten-1"},
		Sizes:  []string{"lid.battens.screws", "size.depth", "use"},
		Advice: "no glue but in the middle: screws, the outer ones in slots (lid.battens.screws)", Level: part.Warning})
}

// slots is a board held across its grain by screws: how far the wood at the outermost screw moves
// against the other board when the middle stays fixed, and the slot that lets it.
func (r *reckoning) slots(moving *part.Part, name, path string, s *form.Screws) {
	if s == nil {
		return
	}
	far, with := r.outermost(moving)
	travel, ok := r.air.change(moving.Timber, far)
	holes, known := part.ScrewHolesFor(s.Gauge, true, false)
	if !ok || !known || far == 0 {
		return
	}
	play := max(holes.Clearance.MM()-shankDiameter(s.Gauge), 0)
	r.add(Figure{ID: "slots-for-screws", What: fmt.Sprintf("movement of the %s across its grain at its outermost screw, against the %s, middle fixed, %s", name, with, r.air.words),
		Value: travel, Limit: play + mostUnlike, Unit: "mm", Formula: slotFormula, Source: slotSource, Parts: []string{moving.ID}, Sizes: []string{path + ".from-end", path + ".count", "size.depth", "use"},
		Advice: fmt.Sprintf("a round hole in the middle alone and the outermost holes as slots %s long across the %s's grain, the screw in the middle of its slot when the wood is midway between its seasons; no glue",
			r.up(holes.Clearance.MM()+travel), name), Level: part.Note})
	r.add(Figure{ID: "slot-length", What: fmt.Sprintf("slot for the outermost screw, long across the %s's grain; one between it and the middle is longer than its hole in proportion", name),
		Value: holes.Clearance.MM() + travel, Unit: "mm", Formula: "clearance hole + movement there, half of it to either side of the screw midway between the seasons", Source: movementSource,
		Parts: []string{moving.ID}, Sizes: []string{path + ".gauge", path + ".from-end", "use"}, Level: part.Note})
}

// outermost is how far from the middle of a board, across its grain, its outermost screw sits, mm,
// and the board at its other end.
func (r *reckoning) outermost(moving *part.Part) (far float64, with string) {
	middle := moving.Place.Col(3).Vec3()
	across := moving.Place.Col(1).Vec3()
	for _, j := range r.p.Joints {
		if j.Kind != form.ScrewedOn || j.TailBoard != moving.ID && j.PinBoard != moving.ID {
			continue
		}
		other := r.p.Part(j.TailBoard)
		if j.TailBoard == moving.ID {
			other = r.p.Part(j.PinBoard)
		}
		if other == nil {
			continue
		}
		for _, b := range other.Bores {
			if b.Purpose != "pilot" && b.Purpose != "clearance" {
				continue
			}
			at := other.Place.Mul4x1(b.Entry.Vec4(1)).Vec3()
			if y := math.Abs(at.Sub(middle).Dot(across)); y > far+noise {
				far, with = y, other.ID
			}
		}
	}
	switch {
	case strings.HasPrefix(with, "batten"):
		with = "battens, whose grain crosses it"
	case with != "":
		with = "walls, of which those at its ends cross it"
	}
	return far, with
}

// up shows a length as its next tenth of a millimetre or 64th of an inch.
func (r *reckoning) up(mm float64) string {
	step := fineStep(r.d.Style().Unit).MM()
	return Show(r.d, math.Ceil(mm/step-noise)*step, "mm")
}
