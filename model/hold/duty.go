package hold

import (
	"fmt"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// The duty ratings of step stools, lb, in ANSI-ASC A14.11-2018, which is for self-supporting ones up to 36 in,
// https://blog.ansi.org/2018/11/standard-stepstools-ansi-asc-a14-11-2018/?amp=1 . The load of a design is set beside them; what
// the standard tests is not reckoned.
var dutyRatings = []float64{200, 225, 250, 300, 375}

const (
	dutyHigh   = 36 * measure.Inch
	dutySource = "ANSI-ASC A14.11-2018 step stools, self-supporting, up to 36 in: duty ratings of 200, 225, 250, 300 and 375 lb, https://blog.ansi.org/2018/11/standard-stepstools-ansi-asc-a14-11-2018/?amp=1"
)

// dutyCompared closes what is said of duty ratings.
const dutyCompared = "Set beside ANSI-ASC A14.11-2018, which is for self-supporting step stools up to 36 in, to compare: nothing was tested by it, and the piece is not said to conform."

// DutyRating is the largest duty rating, lb, that is not above a load, kg; 0 where even the least is.
func DutyRating(load float64) (rating float64) {
	for _, r := range dutyRatings {
		if r <= load/measure.KilogramsPerPound+noise {
			rating = r
		}
	}
	return rating
}

// duty sets the load of the design beside the duty ratings of step stools.
func (r *reckoning) duty() {
	if r.seat.Height > dutyHigh+noise {
		return
	}
	load := float64(r.d.Use.Load)
	f := Figure{ID: "duty-rating", What: fmt.Sprintf("duty rating of step stools for %s", bothWeights(r.d, load)), Value: DutyRating(load), Unit: "lb",
		Formula: "load / 0.4536, down to the next rating", Source: dutySource, Parts: []string{r.top.ID}, Sizes: []string{"use.load"}, Level: part.Note}
	if least := dutyRatings[0]; f.Value == 0 {
		f.What, f.Value, f.Limit, f.Least, f.Formula = "load of the design beside the least duty rating of step stools", load/measure.KilogramsPerPound, least, true, "load / 0.4536"
		f.Caution = dutyCompared
		f.Advice = fmt.Sprintf("a load of %s or more, where grown people stand on it", weight(r.d, least*measure.KilogramsPerPound))
	}
	r.out = append(r.out, f)
}

// bothWeights shows a weight in the unit that goes with the design's, and in the other behind it.
func bothWeights(d form.Design, kg float64) string {
	lb := kg / measure.KilogramsPerPound
	if d.Style().Unit == measure.Imperial {
		return fmt.Sprintf("%.0f lb (%.0f kg)", lb, kg)
	}
	return fmt.Sprintf("%.0f kg (%.0f lb)", kg, lb)
}

// weight is a weight in millimetres' kilograms, or in inches' pounds with the kilograms that the design file has.
func weight(d form.Design, kg float64) string {
	if d.Style().Unit == measure.Imperial {
		return bothWeights(d, kg)
	}
	return fmt.Sprintf("%.0f kg", kg)
}

// force is a force in the unit that goes with the design's.
func (r *reckoning) force(newtons float64) string {
	x, unit := r.d.Style().Unit.In(newtons, "N")
	return fmt.Sprintf("%.0f %s", x, unit)
}

// Duty says in whole sentences what duty rating the load of a piece that is stood on answers to; "" of what nobody stands on.
func Duty(p *form.Piece) string {
	if !form.OnSides(p.Form) || p.Stopped() {
		return ""
	}
	load := float64(p.Design.Use.Load)
	switch rating := DutyRating(load); {
	case p.Design.Size.Height > dutyHigh+noise:
		return fmt.Sprintf("The duty ratings of step stools in ANSI-ASC A14.11-2018 are for self-supporting ones up to 36 in; this piece is %s high, so that none answers to its load.", Show(p.Design, p.Design.Size.Height.MM(), "mm"))
	case rating == 0:
		return fmt.Sprintf("The load of the design, %s, is less than the least duty rating of step stools, %.0f lb.", bothWeights(p.Design, load), dutyRatings[0]) + " " + dutyCompared
	default:
		return fmt.Sprintf("The load of the design, %s, answers to a duty rating of %.0f lb: of 200, 225, 250, 300 and 375 lb, the largest that is not above it.", bothWeights(p.Design, load), rating) + " " + dutyCompared
	}
}
