package hold

import (
	"fmt"
	"math"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/timber"
)

const (
	roomWarmth     = 20.0 // °C
	movementSource = "FPL-GTR-190 (2010) chapters 4 and 13, coefficients of the movement table; air at 20 °C"
	// mostUnlike, mm, that two boards joined along their width may move apart over a year before the
	// joint is likely to crack (common practice).
	mostUnlike = 0.5
)

// seasons are the moistures, percent, that the wood takes on in the driest and the dampest air.
type seasons struct {
	dry, damp float64
	words     string
	timbers   timber.Book
}

func seasonsOf(d form.Design) seasons {
	u := d.Use
	s := seasons{timbers: d.Timbers, dry: timber.EquilibriumMoisture(roomWarmth, float64(u.Dry)), damp: timber.EquilibriumMoisture(roomWarmth, float64(u.Damp))}
	s.words = fmt.Sprintf("from %d to %d %% humidity (%.1f to %.1f %% moisture)", u.Dry, u.Damp, s.dry, s.damp)
	return s
}

// change is how much a size across the grain of a flatsawn board grows from the driest to the
// dampest air, mm; ok is false where the timber's movement is not in the table.
func (s seasons) change(name string, size float64) (mm float64, ok bool) {
	return s.across(name, size, timber.AcrossFlatsawn)
}

// across is the same for a board sawn either way.
func (s seasons) across(name string, size float64, sawn timber.Direction) (mm float64, ok bool) {
	m, ok := s.timbers.FindMovement(name)
	if !ok {
		return 0, false
	}
	return math.Abs(m.Change(size, sawn, s.dry, s.damp)), true
}

// movement is how much the top and the sides grow and shrink across the grain between the driest and
// the dampest air, and what that does where both are joined along their width.
func (r *reckoning) movement() {
	top, ok := r.air.change(r.d.Boards.Top.Timber, r.wide)
	if !ok {
		return
	}
	r.add(Figure{ID: "top-moves", What: "seasonal movement of " + r.the() + " across its grain, flatsawn, " + r.air.words, Value: top, Unit: "mm",
		Formula: "width · C · change of moisture", Source: movementSource, Parts: []string{r.top.ID}, Sizes: []string{"size.depth", "timber", "use"}, Level: part.Note})
	side, ok := r.air.change(r.d.Boards.Side.Timber, r.depth)
	along, _ := r.air.change(r.d.Boards.Top.Timber, r.depth)
	if !ok || r.d.Boards.Side.Timber == r.d.Boards.Top.Timber {
		return
	}
	r.add(Figure{ID: "boards-move-apart", What: fmt.Sprintf("difference in movement between %s and its sides along their joint, %s", r.the(), r.air.words), Value: math.Abs(along - side), Limit: mostUnlike, Unit: "mm",
		Formula: "depth · difference of C · change of moisture", Source: movementSource + "; limit: common practice", Parts: append([]string{r.top.ID}, r.seat.Sides[:]...),
		Sizes: []string{"boards.top.timber", "boards.side.timber", "size.depth", "use"}, Advice: "one timber for both, or quartersawn boards", Level: part.Warning})
}
