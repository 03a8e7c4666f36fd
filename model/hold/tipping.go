package hold

import (
	"fmt"

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
func FeetInside(height float64) float64 { return tipInside - tipPush*height/tipLoad }

// TipsAt is the outward push, N, at seat level that tips a piece with the test's load near its edge:
// inside is how far the feet stand inside the edge, weight the piece's own and back how far its
// middle lies from the foot line. Nothing or less: it tips without a push.
func TipsAt(height, inside, weight, back float64) float64 {
	return (tipLoad*(tipInside-inside) + weight*back) / height
}

// tipping is how far the feet stand inside the edges of what is sat on, and what tips it with its
// own weight counted.
func (r *reckoning) tipping(seat *part.Part) {
	o := r.p.Overall
	r.tips(seat, "ends", o.WidthTop.MM(), o.WidthFloor.MM(), "splay.ends", "corners.overhang")
	r.tips(seat, "front and back edges", o.DepthTop.MM(), o.DepthFloor.MM(), "splay.edges", "corners.overhang-edges")
}

func (r *reckoning) tips(seat *part.Part, where string, top, floor float64, paths ...string) {
	h, inside := r.d.Size.Height.MM(), (top-floor)/2
	if seat.ID == "lid" {
		paths = []string{"splay.front", "splay.ends", "lid.overhang"}
	}
	paths = append(paths, "size.height")
	f := Figure{ID: "feet-inside", What: fmt.Sprintf("feet inside the %s of the %s; less than nothing: outside", where, seat.ID),
		Value: inside, Limit: max(FeetInside(h), noise), Unit: "mm", Formula: "60 mm − 20 N · height / 600 N at most, own weight left out", Source: tipSource,
		Parts: []string{seat.ID}, Sizes: paths, Advice: "feet farther out, or less overhang", Level: part.Warning, Told: r.p.Form == "stool"}
	r.add(f)
	push := TipsAt(h, inside, r.p.Overall.Mass*gravity, floor/2)
	r.add(Figure{ID: "tips-at-push", What: fmt.Sprintf("push outward at the top that tips it over its %s with 600 N near the edge, own weight counted", where),
		Value: max(push, 0), Limit: tipPush, Least: true, Unit: "N", Formula: "(600 N · (60 mm − feet inside) + own weight · half the floor size) / height", Source: tipSource,
		Parts: []string{seat.ID}, Sizes: paths, Advice: f.Advice, Level: part.Warning, Told: r.p.Form == "stool"})
}
