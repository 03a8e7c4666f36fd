package hold

import (
	"fmt"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// The stability test of EN 1022, as read in
// https://en.tentangkayu.com/2022/06/chair-stability-tests-based-on-en-1022.html : 600 N down at
// 60 mm inside the seat's edge and 20 N outward at seat level must not lift a foot.
const (
	tipLoad   = 600.0 // N
	tipInside = 60.0  // mm
	tipPush   = 20.0  // N

	tipSource = "EN 1022: 600 N at 60 mm inside the edge and 20 N outward, https://en.tentangkayu.com/2022/06/chair-stability-tests-based-on-en-1022.html"
)

// FeetInside is the most, mm, that the feet may stand inside the seat's edge at a seat height, the
// piece's own weight left out: 600·(60 − o) > 20·h.
func FeetInside(height float64) float64 { return feetInside(tipInside, height) }

// feetInside is the same with the load that far inside the edge.
func feetInside(inside, height float64) float64 { return inside - tipPush*height/tipLoad }

// TipsAt is the outward push, N, at seat level that tips a piece with the test's load near its edge:
// inside is how far the feet stand inside the edge, weight the piece's own and back how far its
// middle lies from the foot line. Nothing or less: it tips without a push.
func TipsAt(height, inside, weight, back float64) float64 {
	return (tipLoad*(tipInside-inside) + weight*back) / height
}

// endLever is how far the piece's own weight lies from the foot line under the free end, mm.
func (r *reckoning) endLever() float64 {
	half := r.p.Overall.WidthFloor.MM() / 2
	if r.p.Form != form.Steps {
		return half
	}
	if r.weight.mass == 0 {
		return half
	}
	out := r.weight.middle[0] - r.p.Overall.FloorMiddle.MM() // of the middle, to the right
	if r.seat.Height == r.d.Size.Height {                    // its free end is the right one
		return half - out
	}
	return half + out
}

// tips is how far the feet stand inside an edge of what is sat on, and what tips it over that edge
// with its own weight counted, which lies back from the foot line; over is how far it overhangs there.
func (r *reckoning) tips(seat *part.Part, where string, h, inside, back float64, over measure.Length, paths ...string) {
	f := Figure{ID: "feet-inside", What: fmt.Sprintf("feet inside the %s of %s (− outside)", where, seatName(seat)),
		Value: inside, Limit: max(FeetInside(h), noise), Unit: "mm", Formula: "60 mm − 20 N · height / 600 N at most, own weight left out", Source: tipSource,
		Parts: []string{seat.ID}, Sizes: paths, Advice: feetOut(over), Level: part.Warning, Told: form.OnSides(r.p.Form)}
	r.add(f)
	push := TipsAt(h, inside, r.p.Overall.Mass*gravity, back)
	r.add(Figure{ID: "tips-at-push", What: fmt.Sprintf("push outward at "+seatTop(seat)+" that tips it over its %s with %s near the edge", where, r.onEdge()),
		Value: max(push, 0), Limit: tipPush, Least: true, Unit: "N", Formula: "(600 N · (60 mm − feet inside) + own weight · half the floor size) / height", Source: tipSource,
		Parts: []string{seat.ID}, Sizes: paths, Advice: f.Advice, Level: part.Warning, Told: form.OnSides(r.p.Form)})
}

// onEdge is the load that the test of tipping sets near the edge, as the standard has it, and in inches what it is there.
func (r *reckoning) onEdge() string {
	const standard = "600 N"
	if own := r.force(tipLoad); own != standard {
		return own + " (" + standard + ")"
	}
	return standard
}

// feetOut is what would do about tipping, where something overhangs that far.
func feetOut(over measure.Length) string {
	if over <= 0 {
		return "feet farther out"
	}
	return "feet farther out, or less overhang"
}

// seatName is what is sat or stepped on, in a sentence.
func seatName(seat *part.Part) string {
	if word, is := strings.CutPrefix(seat.ID, "top-"); is {
		return "the " + word + " tread"
	}
	return "the " + seat.ID
}

// seatTop is the level that the test pushes at.
func seatTop(seat *part.Part) string {
	if strings.HasPrefix(seat.ID, "top-") {
		return seatName(seat)
	}
	return "the top"
}
