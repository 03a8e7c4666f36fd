package check

import (
	"fmt"
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// What a screw needs around it.
const (
	// edgeDiameters of its shank from a screw's axis to an edge it runs beside, and
	// spacingDiameters between the axes of two: common practice (1 1/2 and 4, as design rules for
	// wood screws ask, from memory).
	edgeDiameters    = 1.5
	spacingDiameters = 4.0
	// rim, mm, of wood round a counterbore, and cover, mm, over the point of a screw: common practice.
	rim   = 2.0
	cover = 3.0
	// underHead, mm, of wood between the floor of a counterbore and the joint (1/4 in): common practice.
	underHead = 6.0
)

const (
	edgeSource    = "common practice: 1 1/2 shank diameters to an edge, as design rules for wood screws ask, not checked against their text"
	spacingSource = "common practice: 4 shank diameters between screws, as design rules for wood screws ask, not checked against their text"
	biteSource    = "http://www.ary.com/Info/WoodScrewSizes.html: about 2/3 of a screw in the second piece; half is taken as the least"
	openingSource = "common practice: a shank's diameter of wood between a screw and an opening"
)

// shank is the diameter, mm, of a wood screw's shank: 0.060 + 0.013·n in,
// https://www.finescrews.com/news/industry-news/screw-size-charts-gauge-diameters-hole-sizes-nails-vs-screws.html
func shank(gauge int) float64 { return (0.060 + 0.013*float64(gauge)) * measure.Inch.MM() }

// screw is one screw, followed through the two boards it joins.
type screw struct {
	spec         form.Screws
	path         string     // of the spec in the design: "corners.screws"
	through      *part.Part // the board with the head
	into         *part.Part // the board with the thread
	clearance    part.Bore  // in through
	counterbore  *part.Bore // in through; nil = none
	pilot        part.Bore  // in into
	grip, thread float64    // mm of the screw in the one and in the other
}

func (s screw) diameter() float64 { return shank(s.spec.Gauge) }

// name is what a screw is called in a sentence; all the screws of a set go by one.
func (s screw) name() string {
	return fmt.Sprintf("a screw through %s into %s", theBoard(s.through), theBoard(s.into))
}

func (s screw) parts() []string { return []string{s.through.ID, s.into.ID} }

func (s screw) key(names ...string) []string {
	var out []string
	for _, n := range names {
		out = append(out, s.path+"."+n)
	}
	return out
}

// screws looks at every screw of the piece.
func screws(r *run) {
	all := screwsOf(r)
	for _, s := range all {
		bite(r, s)
		point(r, s)
		besideEdges(r, s)
		besideOpenings(r, s)
		besideJoint(r, s)
		besideHousings(r, s)
		seatDepth(r, s)
	}
	for i, s := range all {
		for _, other := range all[i+1:] {
			besideScrew(r, s, other)
		}
	}
}

// screwsOf pairs every pilot hole with the clearance hole on the same line in another board.
func screwsOf(r *run) []screw {
	var out []screw
	for _, q := range r.p.Parts {
		for _, b := range q.Bores {
			if b.Purpose != "pilot" {
				continue
			}
			spec, path := specFor(r, q, b)
			if spec == nil {
				continue
			}
			s := screw{spec: *spec, path: path, into: q, pilot: b}
			if s.findHead(r) {
				out = append(out, s)
			}
		}
	}
	return out
}

// specFor is the set of screws whose threads go into a board at a pilot hole.
func specFor(r *run, q *part.Part, b part.Bore) (*form.Screws, string) {
	if r.walled() {
		return wallScrews(r.d, b)
	}
	if isSide(q) || isTop(q) {
		return r.d.Corners.Screws, "corners.screws"
	}
	if s, ok := r.railOf(q); ok {
		return s.Screws, s.Path + ".screws"
	}
	return nil, ""
}

// findHead finds the clearance hole that the pilot continues, and its counterbore.
func (s *screw) findHead(r *run) bool {
	for _, q := range r.p.Parts {
		if q == s.into {
			continue
		}
		for _, b := range q.Bores {
			if b.Purpose != "clearance" || !sameLine(q, b, s.into, s.pilot) {
				continue
			}
			s.through, s.clearance = q, b
			for i, c := range q.Bores {
				if c.Purpose == "counterbore" && sameLine(q, c, q, b) {
					s.counterbore = &q.Bores[i]
				}
			}
			s.lengths()
			return true
		}
	}
	return false
}

// lengths follows the screw from where its head seats to where the second board begins.
func (s *screw) lengths() {
	from := world(s.through, s.clearance.Entry)
	axis := s.through.Place.Mul4x1(s.clearance.Axis.Vec4(0)).Vec3()
	s.grip = world(s.into, s.pilot.Entry).Sub(from).Dot(axis)
	if s.counterbore != nil {
		s.grip -= s.counterbore.Depth.MM()
	}
	s.thread = s.spec.Length.MM() - s.grip
}

func world(q *part.Part, p mgl64.Vec3) mgl64.Vec3 { return q.Place.Mul4x1(p.Vec4(1)).Vec3() }

// sameLine tells whether two bores lie on one line and are drilled the same way.
func sameLine(p *part.Part, a part.Bore, q *part.Part, b part.Bore) bool {
	const near = 1e-3 // mm; far below any drill's play
	u := p.Place.Mul4x1(a.Axis.Vec4(0)).Vec3()
	v := q.Place.Mul4x1(b.Axis.Vec4(0)).Vec3()
	d := world(q, b.Entry).Sub(world(p, a.Entry))
	return u.Dot(v) > 1-1e-9 && d.Sub(u.Mul(d.Dot(u))).Len() < near
}

// bite looks at how much of the screw holds in each board. One that does not reach the second
// board, or whose counterbore goes through the first, is stopped by the form.
func bite(r *run, s screw) {
	f := part.Finding{Level: part.Warning, Unit: "mm", Parts: s.parts()}
	_, housed := s.letIn(r)
	grip, enough := r.apart(s.grip, underHead)
	half := s.spec.Length.MM() / 2
	switch {
	case s.grip < underHead-noise && s.counterbore == nil && isStretcher(s.into) && housed:
		rail, _ := r.railOf(s.into)
		depth := rail.Depth.MM()
		f.ID, f.Figure, f.Limit, f.Source, f.Sizes = "housing-deep-for-screw", s.grip, underHead, commonPractice, []string{rail.Path + ".depth", "boards.side.thickness"}
		f.Text = sentence("the housing of %s leaves %s of wood for the heads of its screws; a housing of %s or less leaves %s.",
			boardName(s.into), grip, r.mm(r.down(max(depth-(underHead-s.grip), 0))), enough)
	case s.grip < underHead-noise:
		f.ID, f.Figure, f.Limit, f.Source, f.Sizes = "counterbore-deep", s.grip, underHead, commonPractice, s.key("counterbore")
		f.Text = sentence("the counterbore of %s leaves %s of wood under the head; a counterbore of %s or less leaves %s.",
			s.name(), grip, r.mm(r.down(max(s.spec.Counterbore.MM()-(underHead-s.grip), 0))), enough)
	case s.thread < half-noise:
		f.ID, f.Figure, f.Limit, f.Source, f.Sizes = "screw-holds-little", s.thread, half, biteSource, s.key("length", "counterbore")
		thread, _ := r.apart(s.thread, half)
		length, _ := r.apart(2*half, 2*s.grip)
		f.Text = sentence("%s has only %s of its %s in the second board; a screw of %s or more has half of it there.",
			s.name(), thread, length, r.mm(r.up(2*s.grip)))
	default:
		return
	}
	r.addWorst(f)
}

// eachPlane visits the planes that bound a board: its faces and its cuts.
func eachPlane(q *part.Part, visit func(id string, n mgl64.Vec3, offset float64)) {
	visit("outer face", mgl64.Vec3{0, 0, 1}, 0)
	visit("inner face", mgl64.Vec3{0, 0, -1}, q.Blank.Thickness.MM())
	for i := range q.Cuts {
		visit(q.Cuts[i].ID, q.Cuts[i].Normal, q.Cuts[i].Offset)
	}
}

// point looks at whether the screw, or the hole for it, comes out on the far side.
func point(r *run, s screw) {
	left, face := math.Inf(1), ""
	eachPlane(s.into, func(id string, n mgl64.Vec3, offset float64) {
		out, away := n.Dot(s.pilot.Axis), offset-n.Dot(s.pilot.Entry)
		if out < noise || away < noise {
			return
		}
		if d := away/out - max(s.thread, s.pilot.Depth.MM()); d < left {
			left, face = d, cutName(id)
		}
	})
	if left >= cover-noise {
		return
	}
	f := part.Finding{ID: "screw-near-far-side", Level: part.Warning, Figure: left, Limit: cover, Unit: "mm", Source: commonPractice,
		Parts: s.parts(), Sizes: s.key("length", "counterbore")}
	shorter := r.mm(r.down(s.spec.Length.MM() - (cover - left)))
	under, enough := r.apart(left, cover)
	f.Text = sentence("the point of %s ends %s under the %s; a screw of %s or less leaves %s.", s.name(), under, face, shorter, enough)
	if left < -noise {
		f.ID, f.Level, f.Limit, f.Source = "screw-comes-out", part.Stop, 0, ownGeometry
		f.Text = sentence("the point of %s comes out %s beyond the %s; a screw of %s or less leaves %s of wood over it.", s.name(), r.past(-left), face, shorter, r.mm(cover))
	}
	r.addWorst(f)
}

// beside is the least distance from a bore's axis to a plane that it runs alongside, not through:
// neither begins nor ends in, nor runs at steeply.
func beside(q *part.Part, b part.Bore, depth float64) (least float64, face string) {
	least = math.Inf(1)
	far := b.Entry.Add(b.Axis.Mul(depth))
	consider := func(id string, n mgl64.Vec3, offset float64) {
		onPlane := func(p mgl64.Vec3) bool { return math.Abs(n.Dot(p)-offset) < noise }
		if math.Abs(n.Dot(b.Axis)) > 0.6 || onPlane(b.Entry) || onPlane(far) {
			return
		}
		if d := offset - max(n.Dot(b.Entry), n.Dot(far)); d < least {
			least, face = d, id
		}
	}
	eachPlane(q, consider)
	return least, cutName(face)
}

// besideEdges looks at the wood beside the screw in both boards and round its counterbore.
func besideEdges(r *run, s screw) {
	need := edgeDiameters * s.diameter()
	s.edgeRoom(r, s.into, s.pilot, max(s.thread, s.pilot.Depth.MM()), need)
	s.edgeRoom(r, s.through, s.clearance, s.clearance.Depth.MM(), need)
	if c := s.counterbore; c != nil {
		s.edgeRoom(r, s.through, *c, c.Depth.MM(), c.Diameter.MM()/2+rim)
	}
}

func (s screw) edgeRoom(r *run, q *part.Part, b part.Bore, depth, need float64) {
	least, face := beside(q, b, depth)
	j, in := s.letIn(r)
	if q == s.into && in && j.Shoulder > 0 && strings.HasSuffix(face, "face") {
		s.tongueRoom(r, j, need)
		return
	}
	if least >= need-noise {
		return
	}
	what := s.name()
	if b.Purpose == "counterbore" {
		what = "the counterbore of " + what
	}
	f := part.Finding{ID: "screw-near-edge", Level: part.Warning, Figure: least, Limit: need, Unit: "mm", Source: edgeSource,
		Parts: s.parts(), Sizes: s.key("from-end", "gauge")}
	away, enough := r.apart(least, need)
	f.Text = sentence("the middle of %s lies %s from the %s of %s and needs %s; move it %s inwards, or take a thinner screw.",
		what, away, face, theBoard(q), enough, r.mm(r.up(need-least)))
	radius := b.Diameter.MM() / 2
	if q == s.into && in { // the clearance hole comes through the floor of the housing
		radius = max(radius, s.clearance.Diameter.MM()/2)
	}
	if least < radius-noise {
		f.ID, f.Level, f.Limit, f.Source = "screw-over-edge", part.Stop, radius, ownGeometry
		f.Text = sentence("%s breaks out %s over the %s of %s; move it %s inwards.",
			what, r.past(radius-least), face, theBoard(q), r.mm(r.up(need-least)))
	}
	r.addWorst(f)
}

// besideOpenings looks at holes, slots and arches near a screw, in both boards.
func besideOpenings(r *run, s screw) {
	s.openingRoom(r, s.into, s.pilot, max(s.thread, s.pilot.Depth.MM()))
	s.openingRoom(r, s.through, s.clearance, s.clearance.Depth.MM())
	if c := s.counterbore; c != nil {
		s.openingRoom(r, s.through, *c, c.Depth.MM())
	}
}

func (s screw) openingRoom(r *run, q *part.Part, b part.Bore, depth float64) {
	far := b.Entry.Add(b.Axis.Mul(depth))
	track := capsule{mgl64.Vec2{b.Entry[0], b.Entry[1]}, mgl64.Vec2{far[0], far[1]}, b.Diameter.MM() / 2}
	for _, o := range r.openings(q) {
		if o.clear(track, s.diameter()) {
			continue
		}
		gap, _ := apart(track, o.shape)
		if gap >= s.diameter()-noise {
			continue
		}
		f := part.Finding{ID: "screw-near-opening", Level: part.Warning, Figure: gap, Limit: s.diameter(), Unit: "mm", Source: openingSource,
			Parts: s.parts(), Sizes: append(s.key("from-end", "length"), o.sizes...)}
		f.Text = sentence("%s passes %s from %s; move one of them %s.", s.name(), r.mm(gap), o.name, r.mm(r.up(s.diameter()-gap)))
		if gap < -noise {
			f.ID, f.Level, f.Limit, f.Source = "screw-in-opening", part.Stop, 0, ownGeometry
			f.Text = sentence("%s runs %s into %s; move one of them %s.", s.name(), r.past(-gap), o.name, r.mm(r.up(s.diameter()-gap)))
		}
		r.addWorst(f)
	}
}
