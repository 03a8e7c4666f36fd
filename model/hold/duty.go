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
	kgOfPound  = 0.45359237 // kg, by definition
	dutySource = "ANSI-ASC A14.11-2018 step stools, self-supporting, up to 36 in: duty ratings of 200, 225, 250, 300 and 375 lb, https://blog.ansi.org/2018/11/standard-stepstools-ansi-asc-a14-11-2018/?amp=1"
)

// dutyCompared closes what is said of duty ratings.
const dutyCompared = "Set beside ANSI-ASC A14.11-2018, which is for self-supporting step stools up to 36 in, to compare: nothing was tested by it, and the piece is not said to conform."

// DutyRating is the largest duty rating, lb, that is not above a load, kg; 0 where even the least is.
func DutyRating(load float64) (rating float64) {
	for _, r := range dutyRatings {
		if r <= load/kgOfPound+noise {
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
	f := Figure{ID: "duty-rating", What: fmt.Sprintf("duty rating of step stools that the load of the design, %s, answers to", bothWeights(load)), Value: DutyRating(load), Unit: "lb",
		Formula: "load / 0.4536, down to the next rating", Source: dutySource, Parts: []string{r.top.ID}, Sizes: []string{"use.load"}, Level: part.Note}
	if least := dutyRatings[0]; f.Value == 0 {
		f.What, f.Value, f.Limit, f.Least, f.Formula = "load of the design beside the least duty rating of step stools", load/kgOfPound, least, true, "load / 0.4536"
		f.Caution = dutyCompared
		f.Advice = fmt.Sprintf("a load of %.0f kg or more, where grown people stand on it", least*kgOfPound)
	}
	r.out = append(r.out, f)
}

// bothWeights shows kg with lb behind it.
func bothWeights(kg float64) string { return fmt.Sprintf("%.0f kg (%.0f lb)", kg, kg/kgOfPound) }

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
		return fmt.Sprintf("The load of the design, %s, is less than the least duty rating of step stools, %.0f lb.", bothWeights(load), dutyRatings[0]) + " " + dutyCompared
	default:
		return fmt.Sprintf("The load of the design, %s, answers to a duty rating of %.0f lb: of 200, 225, 250, 300 and 375 lb, the largest that is not above it.", bothWeights(load), rating) + " " + dutyCompared
	}
}
