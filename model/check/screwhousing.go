package check

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/part"
)

// letIn is the joint by which the board that takes the thread is let into the other: a housing or a groove.
func (s screw) letIn(r *run) (joint.Joint, bool) {
	for _, j := range r.p.Joints {
		if j.TailBoard == s.through.ID && j.PinBoard == s.into.ID {
			return j, form.LetIn(j.Kind)
		}
	}
	return joint.Joint{}, false
}

// tongueRoom looks at a screw in the end of a tongue, whose cheeks are nearer than the board's faces: moved along its
// row it comes no farther from them. What would do is a thicker tongue or a thinner screw.
func (s screw) tongueRoom(r *run, j joint.Joint, need float64) {
	thick := s.into.Blank.Thickness.MM() - j.Shoulder.MM()
	if thick/2 >= need-noise {
		return
	}
	f := part.Finding{ID: "screw-in-thin-tongue", Level: part.Warning, Figure: thick / 2, Limit: need, Unit: "mm", Source: edgeSource,
		Parts: s.parts(), Sizes: append([]string{"corners.shoulder", "boards.side.thickness"}, s.key("gauge")...)}
	away, enough := r.apart(thick/2, need)
	f.Text = sentence("the tongue of %s is %s thick: the middle of %s lies %s from either face of it and needs %s; leave a thicker tongue, or take a thinner screw.",
		theBoard(s.into), r.mm(thick), s.name(), away, enough)
	r.addWorst(f)
}

// besideHousings looks at the housings of stretchers in a side that a screw of something else
// runs in or through.
func besideHousings(r *run, s screw) {
	for i, q := range []*part.Part{s.into, s.through} {
		if !isSide(q) {
			continue
		}
		b, depth := s.pilot, max(s.thread, s.pilot.Depth.MM())
		if i == 1 {
			b, depth = s.clearance, s.clearance.Depth.MM()
		}
		for _, other := range r.against(q) {
			rail, ok := r.railOf(other)
			if other == s.into || !ok || rail.Joint != form.Housing {
				continue
			}
			s.housingRoom(r, q, b, depth, other, rail.Depth.MM())
		}
	}
}

func (s screw) housingRoom(r *run, q *part.Part, b part.Bore, depth float64, other *part.Part, deep float64) {
	far := b.Entry.Add(b.Axis.Mul(depth))
	radius := b.Diameter.MM() / 2
	level := seatLevel(q, other)
	above := min(b.Entry[2], far[2]) - radius + q.Blank.Thickness.MM() - deep // of the housing's floor
	if level == 0 {
		above = -deep - max(b.Entry[2], far[2]) - radius
	}
	if above >= 0 {
		return
	}
	at, ok := footprint(other, q, level)
	if !ok {
		return
	}
	track := capsule{mgl64.Vec2{b.Entry[0], b.Entry[1]}, mgl64.Vec2{far[0], far[1]}, radius}
	gap, _ := apart(track, at)
	if gap >= -noise {
		return
	}
	r.addWorst(part.Finding{ID: "screw-in-housing", Level: part.Stop, Figure: gap, Limit: 0, Unit: "mm", Source: ownGeometry,
		Parts: s.parts(), Sizes: append(s.key("from-end", "length"), acrossPath(other), stretcherPath(other, "below-top"), stretcherPath(other, "depth")),
		Text: sentence("%s runs into the housing of %s in the side; move one of them %s, or take a shorter screw.", s.name(), boardName(other), r.mm(r.up(-gap)))})
}
