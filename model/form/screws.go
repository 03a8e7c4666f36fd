package form

import (
	"fmt"
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
	"splaywright/model/timber"
)

// screwing is a row of equal screws through one board into the end of another, world frame.
type screwing struct {
	screws   Screws
	path     string // in the design file
	first    *board // the heads are in it
	second   *board // takes the thread
	enter    solid.Plane
	meeting  solid.Plane // where the two boards touch; both normals against the screws
	axis     mgl64.Vec3
	middle   mgl64.Vec3 // any point of the row's middle screw
	row      mgl64.Vec3 // unit, along the row
	length   float64    // of the joint along the row
	tongue   float64    // how thick the second board's tongue is; 0 = it has none
	entersAt string     // face of the first board
	endsAt   string     // cut of the second board
	// moves is how far the second board moves against the first at a place along the row, mm, along the first
	// one's x; nil = not at all. The holes of the first board are slots as much longer.
	moves func(place float64) float64
}

// screwing of a stretcher, through a side along the stretcher's grain.
func (r *rail) screwing(s *stand, i side, wall *board) screwing {
	enters := "outer"
	if s.past[i] {
		enters = "inner" // of a side whose outer face looks to the stretcher
	}
	return screwing{
		screws: *r.d.Screws, path: r.path + ".screws", first: wall, second: r.board,
		enter: s.outer[i], meeting: r.end[i], axis: worldX.Mul(-i.sign()),
		middle: r.middleLine, row: r.crossWise, length: r.d.Width.MM(),
		entersAt: enters, endsAt: i.word() + "-end",
	}
}

// topScrewing of a butted or housed top, through the top along the side's grain, in the middle of what of it is let in.
func (b *builder) topScrewing(i side) screwing {
	s := b.stand
	mid := solid.Plane{N: s.outer[i].N, D: s.outer[i].D - (s.side+b.shoulder().MM())/2}
	front, back := -s.depth/2, s.depth/2
	if s.d.Corners.Stop > 0 { // square to an edge that may taper
		front = meet(s.outer[i], s.upper, b.stoppedSide(i))[1]
	}
	return screwing{
		screws: *s.d.Corners.Screws, path: "corners.screws", first: b.boards[0], second: b.boards[1+i],
		enter: s.upper, meeting: s.sideTop(i), axis: s.grain(i),
		middle: meet(mid, s.upper, solid.Plane{N: worldY, D: (front + back) / 2}), row: worldY, length: back - front, tongue: tongueOf(s.side, b.shoulder()),
		entersAt: "outer", endsAt: "top-end",
	}
}

// at gives where a line along the axis through p meets a plane.
func (w *screwing) at(p mgl64.Vec3, q solid.Plane) mgl64.Vec3 {
	return p.Add(w.axis.Mul((q.D - q.N.Dot(p)) / q.N.Dot(w.axis)))
}

// places of the screws along the row from its middle, evenly spaced.
func (w *screwing) places() []float64 {
	n := w.screws.Count
	reach := w.length/2 - w.screws.FromEnd.MM()
	if n == 1 {
		return []float64{0}
	}
	out := make([]float64, n)
	for i := range out {
		out[i] = reach * (2*float64(i)/float64(n-1) - 1)
	}
	return out
}

// paths of the sizes that place and shape the screws.
func (w *screwing) paths() []string {
	out := []string{w.path + ".from-end", w.path + ".length", w.path + ".counterbore", w.path + ".gauge", w.path + ".count"}
	if rail := strings.TrimSuffix(w.path, ".screws"); strings.HasPrefix(rail, "stretchers.") {
		out = append(out, rail+".below-top", rail+".across")
	}
	return out
}

// tongueOf a board of a thickness that has a shoulder; 0 where it has none.
func tongueOf(thick float64, shoulder measure.Length) float64 {
	if shoulder == 0 {
		return 0
	}
	return thick - shoulder.MM()
}

// screw bores a row of screws.
func (b *assembly) screw(w screwing) {
	fill(&w.screws.Count, 2)
	fill(&w.screws.FromEnd, measure.Length(w.length/4))
	species, known := b.d.Timbers.Find(w.second.part.Timber)
	holes, ok := part.ScrewHolesFor(w.screws.Gauge, !known || species.Wood == timber.Hardwood, w.screws.Plug)
	if !ok {
		b.find(stop("screw-number-unknown", "Wood screws run from number 4 to number 14.",
			float64(w.screws.Gauge), 14, "", w.path+".gauge"))
		return
	}
	start, end := w.at(w.middle, w.enter), w.at(w.middle, w.meeting)
	through := end.Sub(start).Dot(w.axis)
	if b.refuseScrews(&w, holes, measure.Length(through)) {
		return
	}
	for _, y := range w.places() {
		p := w.middle.Add(w.row.Mul(y))
		travel := 0.0
		if w.moves != nil {
			travel = w.moves(y)
		}
		b.boreFirst(&w, holes, w.at(p, w.enter), through, measure.Length(travel))
		b.borePilot(&w, holes, w.at(p, w.meeting), through)
	}
}

// refuseScrews reports a row of screws that cannot be bored.
func (b *assembly) refuseScrews(w *screwing, h part.ScrewHoles, through measure.Length) bool {
	f, bad := b.screwFault(w, h, through)
	if bad {
		f.Parts = []string{w.first.part.ID, w.second.part.ID}
		b.find(f)
	}
	return bad
}

// screwFault is what is wrong with a row of screws, through being the wood of the first board along
// them. Where they meet it at a lean, the rim of a hole's floor reaches deeper, or less deep, than
// its middle by the radius times the tangent of the lean.
func (b *assembly) screwFault(w *screwing, h part.ScrewHoles, through measure.Length) (part.Finding, bool) {
	sc, row := w.screws, measure.Length(w.length)
	rim := func(diameter measure.Length) measure.Length {
		return diameter / 2 * measure.Length(math.Tan(lean(w.axis, w.meeting.N).Radians()))
	}
	deepest, shortest := through, through-sc.Counterbore+rim(h.Pilot)
	if sc.Counterbore > 0 {
		deepest -= rim(h.Counterbore)
	}
	switch {
	case sc.Count < 1 || sc.Count > 200:
		return stop("screw-count", "A row holds between 1 and 200 screws.", float64(sc.Count), 200, "", w.path+".count"), true
	case through <= 2*rim(h.Clearance): // the hole's two rims lie as far apart along it
		return stop("no-wood-for-screw", fmt.Sprintf("Only %s of wood is left along a screw before the housing, too little to bore through at that lean; make the housing shallower.",
			b.show(through)), through.MM(), 2*rim(h.Clearance).MM(), "mm", strings.TrimSuffix(w.path, ".screws")+".depth", "boards.side.thickness"), true
	case w.tongue > 0 && h.Clearance.MM() >= w.tongue:
		return stop("screw-over-tongue", fmt.Sprintf("The tongue of the %s is %s thick, no thicker than the hole of a number %d screw, %s: it would break out of the groove. Take a thinner screw, or a shoulder of less than %s.",
			w.second.word(), b.show(measure.Length(w.tongue)), sc.Gauge, b.show(h.Clearance), b.show(max(0, measure.Length(w.second.thickness)-h.Clearance))),
			w.tongue, h.Clearance.MM(), "mm", w.path+".gauge", "corners.shoulder", "boards.side.thickness"), true
	case sc.Counterbore < 0 || sc.Counterbore >= deepest:
		return stop("counterbore-through", fmt.Sprintf("The counterbore is %s deep where the wood along the screw is only %s; it must be less than %s.",
			b.show(sc.Counterbore), b.show(through), b.atMost(max(0, deepest))), sc.Counterbore.MM(), deepest.MM(), "mm", w.path+".counterbore"), true
	case sc.Length <= shortest:
		return stop("screw-too-short", fmt.Sprintf("A screw of %s does not reach the second board: it needs more than %s.",
			b.show(sc.Length), b.atLeast(shortest)), sc.Length.MM(), shortest.MM(), "mm", w.path+".length"), true
	case sc.Count > 1 && (sc.FromEnd <= 0 || 2*sc.FromEnd >= row):
		return stop("screws-without-room", fmt.Sprintf("Screws %s from either end leave no row on a joint of %s; keep them less than %s from the ends.",
			b.show(sc.FromEnd), b.show(row), b.atMost(row/2)), sc.FromEnd.MM(), row.MM()/2, "mm", w.path+".from-end"), true
	}
	return part.Finding{}, false
}

// boreFirst bores the board that the heads are in: counterbore and clearance on one axis.
func (b *assembly) boreFirst(w *screwing, h part.ScrewHoles, at mgl64.Vec3, through float64, travel measure.Length) {
	p := w.first.part
	base := part.Bore{
		Entry: w.first.localPoint(at), Axis: w.first.localWay(w.axis), Lean: lean(w.axis, w.enter.N), Face: w.entersAt, Screw: w.screw(),
	}
	n := countBores(p, "clearance") + 1
	var steps []solid.Step
	if w.screws.Counterbore > 0 {
		c := base
		c.ID, c.Purpose = fmt.Sprintf("screw-%d counterbore", n), "counterbore"
		c.Diameter, c.Depth = h.Counterbore, w.screws.Counterbore
		if w.screws.Plug {
			c.Plug = h.Counterbore
		}
		c.Slot = slotted(c.Diameter, travel)
		p.Bores = append(p.Bores, c)
		steps = append(steps, solid.Step{Radius: c.Diameter.MM() / 2, To: c.Depth.MM()})
	}
	c := base
	c.ID, c.Purpose = fmt.Sprintf("screw-%d clearance", n), "clearance"
	c.Diameter, c.Depth, c.Through = h.Clearance, measure.Length(through), true
	p.Bores = append(p.Bores, c)
	steps = append(steps, solid.Step{Radius: c.Diameter.MM() / 2, To: math.Inf(1)})
	w.first.sizesOf[c.ID] = w.paths()
	if travel > 0 {
		p.Bores[len(p.Bores)-1].Slot = slotted(c.Diameter, travel)
		w.first.slotScrew(c.ID, base.Entry.Vec2(), steps, travel.MM())
		return
	}
	w.first.bore(c.ID, base.Entry, base.Axis, steps)
}

// screw is what is driven into the holes.
func (w *screwing) screw() part.Screw {
	return part.Screw{Number: w.screws.Gauge, Length: w.screws.Length}
}

func slotted(diameter, travel measure.Length) measure.Length {
	if travel == 0 {
		return 0
	}
	return diameter + travel
}

// slotScrew cuts a screw's hole as a slot square to the outer face, along x: the counterbore as a hollow,
// the clearance right through.
func (b *board) slotScrew(tag string, at mgl64.Vec2, steps []solid.Step, travel float64) {
	for _, s := range steps {
		top, right, bottom, left := oblong(tag, at, travel/2, s.Radius)
		if math.IsInf(s.To, 1) {
			b.shape.Openings = append(b.shape.Openings, solid.Loop{top, right, bottom, left})
			continue
		}
		// A hollow goes the other way round, and each of its walls begins where it ended.
		top.Start, right.Start, bottom.Start, left.Start = right.Start, bottom.Start, left.Start, top.Start
		b.shape.Pockets = append(b.shape.Pockets, solid.Pocket{Tag: tag, FromOuter: true, Depth: s.To, Walls: solid.Loop{left, bottom, right, top}})
	}
}

// oblong is the walls of a slot along x, reaching half to either side of its middle and round at its ends, each
// beginning where it does when walked clockwise.
func oblong(tag string, at mgl64.Vec2, half, r float64) (top, right, bottom, left solid.Wall) {
	u, v := mgl64.Vec2{half, 0}, mgl64.Vec2{0, r}
	side := func(n, start mgl64.Vec2) solid.Wall {
		return solid.Wall{Tag: tag, Start: start, Plane: solid.Plane{N: n.Vec3(0), D: n.Dot(start)}}
	}
	return side(mgl64.Vec2{0, -1}, at.Sub(u).Add(v)), pillar(tag, at.Add(u), r, at.Add(u).Add(v)),
		side(mgl64.Vec2{0, 1}, at.Add(u).Sub(v)), pillar(tag, at.Sub(u), r, at.Sub(u).Sub(v))
}

// borePilot bores the board that takes the thread, as deep as the screw's tip reaches.
func (b *assembly) borePilot(w *screwing, h part.ScrewHoles, at mgl64.Vec3, through float64) {
	p := w.second.part
	c := part.Bore{
		ID: fmt.Sprintf("screw-%d pilot", countBores(p, "pilot")+1), Purpose: "pilot",
		Entry: w.second.localPoint(at), Axis: w.second.localWay(w.axis), Lean: lean(w.axis, w.meeting.N),
		Diameter: h.Pilot, Depth: w.screws.Counterbore + w.screws.Length - measure.Length(through), Face: w.endsAt, Screw: w.screw(),
	}
	p.Bores = append(p.Bores, c)
	w.second.sizesOf[c.ID] = w.paths()
	w.second.bore(c.ID, c.Entry, c.Axis, []solid.Step{{Radius: c.Diameter.MM() / 2, To: c.Depth.MM()}})
}

func (b *board) bore(tag string, entry, axis mgl64.Vec3, steps []solid.Step) {
	b.shape.Bores = append(b.shape.Bores, solid.Bore{Tag: tag, Entry: entry, Axis: axis, Steps: steps})
}

func countBores(p *part.Part, purpose string) int {
	n := 0
	for _, c := range p.Bores {
		if c.Purpose == purpose {
			n++
		}
	}
	return n
}

// lean of an axis away from square to a face.
func lean(axis, normal mgl64.Vec3) measure.Angle {
	return measure.Angle(math.Atan2(axis.Cross(normal).Len(), math.Abs(axis.Dot(normal))))
}

// butted notes the joint of a butted or housed top, with its housing and screws.
func (b *builder) butted(i side) {
	s := b.stand
	top := b.boards[0]
	deep := 0.0
	if LetIn(s.d.Corners.Joint) {
		deep = s.d.Corners.Depth.MM()
		top.shape.Pockets = append(top.shape.Pockets, b.topPocket(i, top))
		b.sideShoulder(i)
	}
	into := measure.Length(deep / math.Cos(s.lean[i]))
	end := meet(s.topEnd[i], s.lower, solid.Plane{N: worldY})
	line := meet(s.outer[i], s.lower, solid.Plane{N: worldY})
	b.piece.Joints = append(b.piece.Joints, joint.Joint{
		ID: s.topBoard.id + "/" + s.sideBoards[i].id, Kind: s.d.Corners.Joint, TailBoard: s.topBoard.id, PinBoard: s.sideBoards[i].id,
		Dihedral:    joint.Dihedral(s.upper.N, s.outer[i].N),
		Baseline:    joint.Faces{Inner: measure.Length(end.Sub(line).Dot(worldX) * i.sign())},
		PinBaseline: joint.Faces{Outer: into, Inner: into},
		Width:       measure.Length(s.depth), Depth: measure.Length(deep),
		Shoulder: b.shoulder(), Stop: s.d.Corners.Stop,
		Slides: s.grain(i), Corner: worldY,
	})
	if s.d.Corners.Screws != nil {
		b.screw(b.topScrewing(i))
	}
}

// topPocket is the housing in the top's lower face: it stands in the planes of the side's faces
// and runs out at front and back, and at the end where the top does not overhang.
func (b *builder) topPocket(i side, top *board) solid.Pocket {
	s := b.stand
	outer := flip(s.outer[i]) // into the hollow
	outer.D += b.shoulder().MM()
	if s.d.Corners.Overhang == 0 && b.shoulder() == 0 {
		outer = s.topEnd[i]
	}
	inner, front := flip(s.inner[i]), s.topFront
	if s.d.Corners.Stop > 0 {
		front = flip(b.stoppedSide(i))
	}
	planes := []solid.Plane{front, outer, s.topBack, inner}
	if i == left {
		planes = []solid.Plane{front, inner, s.topBack, outer}
	}
	top.sizesOf["housing "+i.word()] = []string{"corners.depth", "corners.overhang", "corners.stop", "boards.side.thickness"}
	p := solid.Pocket{Tag: "housing " + i.word(), Depth: s.d.Corners.Depth.MM()}
	for _, q := range planes {
		p.Walls = append(p.Walls, solid.Wall{Tag: p.Tag, Plane: top.local(q)})
	}
	return p
}
