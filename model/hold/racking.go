package hold

import (
	"fmt"
	"math"

	"splaywright/model/form"
	"splaywright/model/part"
)

const (
	// rackShare of the load is the sideways push in the shop's own case: about what drags a loaded
	// piece along a smooth floor. Common practice; EN 1022 pushes with 20 N alone.
	rackShare = 0.2

	rackSource = "statics of a portal frame with hinged feet; a fifth of the load as push: common practice; EN 1022 pushes with 20 N (https://en.tentangkayu.com/2022/06/chair-stability-tests-based-on-en-1022.html)"
)

// Racking is what a sideways push at the height of the seat brings to a side that stands on a hinged
// foot, half the push on each of two: the bending moment, N·mm, at a height above the floor.
func Racking(push, height float64) float64 { return push / 2 * height }

// racking is a push from the end at seat level: without a stretcher the corners alone keep the sides
// square to the top, with one the top and the stretcher hold them as a couple.
func (r *reckoning) racking() {
	wall, _, ok := r.beam(r.d.Boards.Side.Timber, r.depth, r.d.Boards.Side.Thickness.MM())
	if !ok {
		return
	}
	push := rackShare * r.load
	arm := r.seat.Height.MM() - r.d.Boards.Top.Thickness.MM()
	below, ties := r.lowestTies()
	corner := Figure{ID: "racking-corner", What: fmt.Sprintf("bending stress of a side at the corner under a sideways push of %s at the top", r.force(push)),
		Unit: "MPa", Formula: "6 · push/2 · (height − top) / (width through the joint · thickness²)", Source: rackSource,
		Parts: r.seat.Sides[:], Sizes: []string{"stretchers", "boards.side.thickness", "size.height"},
		Advice: "a stretcher well below the top, or thicker sides", Level: part.Warning}
	through := wall
	if w, ok := r.through(); ok {
		through.Width = w
	}
	corner.Value = stress(through, Racking(push, arm))
	if len(ties) == 0 {
		corner.Limit, corner.Source = wall.MOR/reserve, rackSource+"; limit: a third of the clear wood's strength, common practice"
		r.add(corner)
		r.rackScrews(push, arm)
		return
	}
	corner.ID, corner.What, corner.Level = "racking-without-stretcher", corner.What+", were there no stretcher", part.Note
	r.add(corner)
	moment := Racking(push, r.seat.Height.MM()-below)
	wall.Width += 2 * below * math.Tan(r.d.Splay.Edges.Radians()) // it tapers
	r.add(Figure{ID: "racking-side", What: fmt.Sprintf("bending stress of a side at the stretcher under a sideways push of %s at the top", r.force(push)),
		Value: stress(wall, moment), Limit: wall.MOR / reserve, Unit: "MPa", Formula: "6 · push/2 · height of the stretcher's middle / (width there · thickness²)",
		Source: rackSource + "; limit: a third of the clear wood's strength, common practice", Parts: corner.Parts, Sizes: corner.Sizes,
		Advice: "a lower stretcher, or thicker sides", Level: part.Warning})
	pull := Racking(push, arm) / (below - r.d.Boards.Top.Thickness.MM()/2) / float64(len(ties))
	for _, s := range ties {
		r.rackTie(s, push, pull, len(ties))
	}
}

// rackTie is what the push brings to one of the stretchers that share it; screws in its end grain are judged by it.
func (r *reckoning) rackTie(s form.Rail, push, pull float64, sharing int) {
	id := s.ID
	f := Figure{ID: "racking-pull", What: fmt.Sprintf("pull and thrust at each end of %s under a sideways push of %s at the top", r.nameOf(id), r.force(push)),
		Value: pull, Unit: "N", Formula: shared("push/2 · (height − top) / (top's middle to the stretcher's middle)", sharing),
		Source: rackSource, Parts: []string{id}, Sizes: []string{s.Path + ".below-top"}, Level: part.Note}
	if limit, ok := r.endGrain(s); ok {
		f.Limit, f.Level = limit, part.Warning
		f.Source += "; screws in end grain as for the pull of the splay"
		f.Sizes = append(f.Sizes, s.Path+".screws.length", s.Path+".screws.count", s.Path+".joint")
		f.Advice = "a housing with glue, more or longer screws, or the stretcher lower down"
	}
	r.add(f)
}

// stress of a section under a bending moment, MPa.
func stress(b Beam, moment float64) float64 { return moment * b.Height / 2 / b.inertia() }

// lowestTies are the lowest stretchers and aprons, and how far below the top's
// upper face their middle lies, mm. Stretchers within a millimetre of each other share the load.
func (r *reckoning) lowestTies() (below float64, ties []form.Rail) {
	middle := func(s form.Rail) float64 {
		return r.d.Boards.Top.Thickness.MM() + s.BelowTop.MM() + s.High.MM()/2
	}
	for _, s := range r.seat.Rails {
		below = max(below, middle(s))
	}
	for _, s := range r.seat.Rails {
		if middle(s) > below-1 {
			ties = append(ties, s)
		}
	}
	return below, ties
}

// rackScrews is the pull in the screws of a butted top: they sit in the middle of the side's
// thickness, and the side's far arris bears against the top. A housing takes the push by itself.
func (r *reckoning) rackScrews(push, arm float64) {
	s := r.d.Corners.Screws
	_, wood, ok := r.beam(r.d.Boards.Side.Timber, r.depth, r.d.Boards.Side.Thickness.MM())
	if s == nil || !ok || s.Count < 1 || r.d.Corners.Joint != form.Butt {
		return
	}
	half := r.d.Boards.Side.Thickness.MM() / 2
	thread := threadIn(s.Length.MM(), r.wayThrough(r.d.Boards.Top.Thickness)-s.Counterbore.MM())
	r.add(Figure{ID: "racking-screws-pull", What: fmt.Sprintf("pull in each screw of a corner, in end grain, under a sideways push of %s at the top", r.force(push)),
		Value: Racking(push, arm) / half / float64(s.Count), Limit: endGrainShare * AllowableWithdrawal(wood.SG, shankDiameter(s.Gauge), thread), Unit: "N",
		Formula: fmt.Sprintf("push/2 · (height − top) / (half the side's thickness · screws); limit: three quarters of 2850/15700 of %+s", r.withdrawal()),
		Source:  rackSource + "; FPL-GTR-190 equation 8-9, not checked against its text, and an allowable share (https://www.engineeringtoolbox.com/wood-screws-allowable-withdrawal-load-d_1815.html); glue is not counted",
		Parts:   append([]string{r.top.ID}, r.seat.Sides[:]...), Sizes: []string{"corners.screws.length", "corners.screws.count", "stretchers", "boards.side.thickness"},
		Advice: "a stretcher well below the top, or glued housings or dovetails", Level: part.Warning})
}
