package check

import (
	"fmt"
	"math"

	"splaywright/model/form"
	"splaywright/model/part"
)

// besideJoint looks at a stretcher's screws near the dovetails of the side they go through: one
// among the pins or tails splits them.
func besideJoint(r *run, s screw) {
	rail, ok := r.railOf(s.into)
	if !ok {
		return
	}
	for _, j := range r.p.Joints {
		if !form.Tailed(j.Kind) {
			continue
		}
		mate := j.TailBoard
		if mate == s.through.ID {
			mate = j.PinBoard
		} else if j.PinBoard != s.through.ID {
			continue
		}
		s.jointRoom(r, rail, r.p.Part(mate), s.clearance)
		if s.counterbore != nil {
			s.jointRoom(r, rail, r.p.Part(mate), *s.counterbore)
		}
	}
}

// jointRoom looks at how far a bore stays from the other board's inner face, past which the wood
// is pins or tails.
func (s screw) jointRoom(r *run, d form.Rail, mate *part.Part, b part.Bore) {
	const half = 0.5
	gap := math.Inf(1)
	axis := s.through.Place.Mul4x1(b.Axis.Vec4(0))
	toMate := mate.Place.Inv()
	slant := toMate.Mul4x1(axis)[2]
	for _, along := range []float64{0, b.Depth.MM()} {
		p := toMate.Mul4x1(world(s.through, b.Entry.Add(b.Axis.Mul(along))).Vec4(1))
		before := -mate.Blank.Thickness.MM() - p[2] // of the inner face
		gap = min(gap, before-b.Diameter.MM()*half*math.Sqrt(math.Max(0, 1-slant*slant)))
	}
	need := s.diameter()
	if gap >= need-noise {
		return
	}
	wayOut := fmt.Sprintf("set %s %s below the top or more", railWord(s.into), r.mm(r.up(d.BelowTop.MM()+need-gap)))
	if d.Set == form.OnEdge && s.spec.Count > 1 {
		wayOut = fmt.Sprintf("move it %s inwards, or %s", r.mm(r.up(need-gap)), wayOut)
	}
	what := s.name()
	if b.Purpose == "counterbore" {
		what = "the counterbore of " + what
	}
	f := part.Finding{ID: "screw-near-joint", Level: part.Warning, Figure: gap, Limit: need, Unit: "mm", Source: openingSource,
		Parts: s.parts(), Sizes: append(s.key("from-end"), d.Path+".below-top")}
	f.Text = sentence("%s passes %s from the joint with the %s; %s.", what, r.mm(gap), boardName(mate), wayOut)
	if gap < -noise {
		f.ID, f.Level, f.Limit, f.Source = "screw-in-joint", part.Stop, 0, ownGeometry
		f.Text = sentence("%s runs %s into the joint with the %s; %s.", what, r.past(-gap), boardName(mate), wayOut)
	}
	r.addWorst(f)
}

// seatDepth looks at a counterbore that leans: it must be deep enough that its flat floor lies all
// within the wood, half its diameter times the tangent of the lean.
func seatDepth(r *run, s screw) {
	c := s.counterbore
	if c == nil {
		return
	}
	need := c.Diameter.MM() / 2 * math.Tan(c.Lean.Radians())
	if c.Depth.MM() > need+noise {
		return
	}
	deep, least := r.apart(c.Depth.MM(), need)
	r.addWorst(part.Finding{ID: "counterbore-shallow", Level: part.Stop, Figure: c.Depth.MM(), Limit: need, Unit: "mm", Source: ownGeometry,
		Parts: s.parts(), Sizes: s.key("counterbore"),
		Text: sentence("the counterbore of %s leans %s and is %s deep, so its floor comes out of the face; it must be deeper than %s: a counterbore of %s or more.",
			s.name(), deg(c.Lean), deep, least, r.mm(r.up(need+r.step()/2)))})
}
