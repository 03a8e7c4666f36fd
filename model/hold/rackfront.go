package hold

import (
	"fmt"

	"splaywright/model/form"
	"splaywright/model/part"
)

// rackFront is a push from the front at seat level. The sides are boards set against it on edge: each takes half the
// push in its own plane, where it is as strong as it is wide, and the joint under the top takes the bending.
func (r *reckoning) rackFront() {
	side, wood, ok := r.beam(r.d.Boards.Side.Timber, r.d.Boards.Side.Thickness.MM(), r.depth)
	if !ok {
		return
	}
	push := rackShare * r.load
	arm := r.seat.Height.MM() - r.d.Boards.Top.Thickness.MM()
	moment := Racking(push, arm)
	share := 1.0
	if w, ok := r.through(); ok {
		share = w / r.depth
	}
	parts := append([]string{r.top.ID}, r.seat.Sides[:]...)
	r.add(Figure{ID: "racking-front", What: fmt.Sprintf("bending stress in the joint of a side with the top under a push of %s from the front", r.force(push)),
		Value: stress(side, moment) / share, Limit: side.MOR / reserve, Unit: "MPa", Formula: "6 · push/2 · (height − top) / (thickness · depth² · share of the width that reaches through)",
		Source: rackSource + "; limit: a third of the clear wood's strength, common practice", Parts: parts,
		Sizes: []string{"size.depth", "boards.side.thickness", "size.height"}, Advice: "a deeper piece, or thicker sides", Level: part.Warning})
	r.rackFrontScrews(push, moment, wood.SG, parts)
}

// rackFrontScrews is the pull in the last screw of a butted top's row: the row turns about the far edge of the side.
// The screws between are left out, which is on the safe side.
func (r *reckoning) rackFrontScrews(push, moment, sg float64, parts []string) {
	s := r.d.Corners.Screws
	if s == nil || s.Count < 1 || r.d.Corners.Joint != form.Butt {
		return
	}
	lever := r.depth - s.FromEnd.MM()
	if s.Count == 1 {
		lever = r.depth / 2
	}
	thread := threadIn(s.Length.MM(), r.wayThrough(r.d.Boards.Top.Thickness)-s.Counterbore.MM())
	r.add(Figure{ID: "racking-front-screws", What: fmt.Sprintf("pull in the last screw of a corner, in end grain, under a push of %s from the front", r.force(push)),
		Value: moment / lever, Limit: endGrainShare * AllowableWithdrawal(sg, shankDiameter(s.Gauge), thread), Unit: "N",
		Formula: fmt.Sprintf("push/2 · (height − top) / (depth − way of the screw from the edge); limit: three quarters of 2850/15700 of %+s", r.withdrawal()),
		Source:  rackSource + "; FPL-GTR-190 equation 8-9, not checked against its text, and an allowable share (https://www.engineeringtoolbox.com/wood-screws-allowable-withdrawal-load-d_1815.html); glue is not counted",
		Parts:   parts, Sizes: []string{"corners.screws.length", "corners.screws.from-end", "corners.screws.count", "size.depth"},
		Advice: "longer screws, nearer to the edges, or glued housings or dovetails", Level: part.Warning})
}
