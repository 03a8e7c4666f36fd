package hold

import (
	"fmt"
	"math"
	"strings"

	"splaywright/model/form"
	"splaywright/model/part"
)

const (
	pushFormula = "half the load · tan(splay) at each foot, on a floor without friction"
	statics     = "statics of two leaning props, each carrying half the load"
)

// push is what leaning sides push outward at the floor, and what takes it: a stretcher as a tie, or
// else the corner by bending.
func (r *reckoning) push() {
	lean := r.d.Splay.Ends.Radians()
	out := r.load / 2 * math.Tan(math.Abs(lean))
	if out < 1 {
		return
	}
	r.add(Figure{ID: "outward-push", What: "outward push of each side at the floor", Value: out, Unit: "N",
		Formula: pushFormula, Source: statics, Parts: r.seat.Sides[:], Sizes: []string{"splay.ends"}, Level: part.Note})
	r.corner(out)
	for _, s := range r.seat.Rails {
		r.tie(s, out)
	}
}

// corner is the bending that the push brings to the joint between side and top when nothing else
// takes it. Of a dovetailed side only the pins or tails reach through.
func (r *reckoning) corner(out float64) {
	arm := r.seat.Height.MM() - r.d.Boards.Top.Thickness.MM()
	wall, _, ok := r.beam(r.d.Boards.Side.Timber, r.depth, r.d.Boards.Side.Thickness.MM())
	if !ok || len(r.seat.Rails) > 0 {
		return
	}
	what := "bending stress of a side at the corner"
	if through, ok := r.through(); ok {
		wall.Width, what = through, "bending stress of the side's pins or tails at the corner"
	}
	stress := 6 * out * arm / (wall.Width * wall.Height * wall.Height)
	r.add(Figure{ID: "corner-bends", What: what, Value: stress, Limit: wall.MOR / reserve, Unit: "MPa",
		Formula: "6·push·(height − top) / (width through the joint · thickness²)", Source: statics + "; limit: a third of the clear wood's strength, common practice",
		Parts: r.seat.Sides[:], Sizes: []string{"stretchers", "splay.ends", "boards.side.thickness", "size.height"},
		Advice: "a stretcher between the sides, which takes the push as a tie", Level: part.Warning})
}

// through is the width, mm, of a side's pins or tails that reach through a dovetailed corner.
func (r *reckoning) through() (width float64, ok bool) {
	for _, j := range r.p.Joints {
		if !form.Tailed(j.Kind) || j.TailBoard != r.seat.ID && j.PinBoard != r.seat.ID {
			continue
		}
		spans := j.Pins
		if strings.HasPrefix(j.TailBoard, "side") {
			spans = j.TailRoots
		}
		for _, s := range spans {
			width += s.Width().MM()
		}
		return width, true
	}
	return 0, false
}

// shared is a formula whose figure so many stretchers share evenly.
func shared(formula string, stretchers int) string {
	if stretchers < 2 {
		return formula
	}
	return fmt.Sprintf("%s / %d stretchers", formula, stretchers)
}

// tie is the pull in a stretcher that holds the sides together, shared evenly by all of them. Screws
// into its end grain should not carry it.
func (r *reckoning) tie(s form.Rail, out float64) {
	below := r.d.Boards.Top.Thickness.MM() + s.BelowTop.MM() + s.High.MM()/2
	pull := out * r.seat.Height.MM() / below / float64(len(r.seat.Rails))
	id := s.ID
	f := Figure{ID: "stretcher-pull", What: "pull in " + r.nameOf(id), Value: pull, Unit: "N",
		Formula: shared("push · height / (depth of the stretcher's middle below the top's upper face)", len(r.seat.Rails)), Source: statics, Parts: []string{id},
		Sizes: []string{s.Path + ".below-top"}, Level: part.Note}
	if limit, ok := r.endGrain(s); ok {
		f.ID, f.What, f.Limit, f.Level = "end-grain-screws-pull", "pull in "+r.nameOf(id)+" on its screws in end grain", limit, part.Warning
		f.Formula += fmt.Sprintf("; screws: %+s each, three quarters in end grain", r.withdrawal())
		f.Source += "; FPL-GTR-190 equation 8-9, not checked against its text, and an allowable share of 2850/15700 (https://www.engineeringtoolbox.com/wood-screws-allowable-withdrawal-load-d_1815.html); screws should not be loaded so in end grain at all: https://issuhub.com/view/index?id=4884&pageIndex=189"
		f.Advice = "a housing with glue, more or longer screws, or the stretcher lower down"
		f.Sizes = append(f.Sizes, s.Path+".screws.length", s.Path+".screws.count", s.Path+".joint")
	}
	r.add(f)
}

// endGrain is the pull that a butted stretcher's screws may be counted on for, N.
func (r *reckoning) endGrain(s form.Rail) (float64, bool) {
	if s.Screws == nil || s.Joint != form.Butt {
		return 0, false
	}
	_, wood, ok := r.beam(s.Timber, s.Width.MM(), s.Thickness.MM())
	if !ok {
		return 0, false
	}
	thread := threadIn(s.Screws.Length.MM(), r.wayThrough(r.d.Boards.Side.Thickness)-s.Screws.Counterbore.MM())
	each := endGrainShare * AllowableWithdrawal(wood.SG, shankDiameter(s.Screws.Gauge), thread)
	return each * float64(s.Screws.Count), true
}
