package sheet

import (
	"fmt"
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/dimension"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// detail is one enlarged picture: how it is drawn at a scale, tight with less of the boards round the joint.
type detail struct {
	title string
	draw  func(scale float64, tight bool) *figure
}

// around is how much of the board is shown past the joint, mm of the piece.
const around = 12.0

// longest is the most of a corner's length that a detail shows, mm of the piece.
const longest = 95.0

// details are the pictures of each kind of joint of a piece, in the order of its joints: the ends of
// dovetailed boards, and sections of other joints.
func details(p *form.Piece, o Options) (tails, cuts []detail) {
	seen := map[string]bool{}
	for _, j := range p.Joints {
		if k := kindOf(p, j); seen[k] {
			continue
		} else {
			seen[k] = true
		}
		if len(j.Tails) > 0 && len(j.Pins) > 0 {
			tails = append(tails, dovetailDetails(p, j, o)...)
		} else if d, ok := jointSection(p, j, o); ok {
			cuts = append(cuts, d)
		}
	}
	return tails, cuts
}

// kindOf is equal for joints that are made alike, mirrored or not.
func kindOf(p *form.Piece, j joint.Joint) string {
	bores := 0
	if q := p.Part(j.TailBoard); q != nil {
		bores = len(q.Bores)
	}
	first := joint.Span{}
	if len(j.Tails) > 0 {
		first = j.Tails[0]
	}
	return fmt.Sprintf("%s %.3f %.3f %.2f %.2f %.2f %.2f %.2f %t", j.Kind, math.Abs(j.Dihedral.Degrees()-90), j.Slope.Degrees(), j.Baseline.Outer, j.PinBaseline.Outer, first.Start, first.End, j.Depth, bores > 0)
}

// boardEnd is the end of a board that is jointed, in the board's frame: where the end arris of the face starts that the joint is
// marked on, the way along it from the front edge, the way outward along the grain, the way inward along the
// front edge, how far that edge and the end stand out on the other face, mm, and the view square on the face
// with the end up.
type boardEnd struct {
	q            *part.Part
	start, along mgl64.Vec3
	grain, edge  mgl64.Vec3
	bevel, lip   float64
	dir          view.Direction
}

// endOf finds the end of board q that meets the other board of a joint.
func endOf(p *form.Piece, j joint.Joint, q *part.Part) (boardEnd, bool) {
	other := p.Part(j.TailBoard)
	if other == q {
		other = p.Part(j.PinBoard)
	}
	if q == nil || other == nil || q.Solid == nil || other.Solid == nil {
		return boardEnd{}, false
	}
	lo, hi := other.Solid.Bounds()
	back := q.Place.Inv()
	to := mgl64.TransformCoordinate(mgl64.TransformCoordinate(lo.Add(hi).Mul(0.5), other.Place), back)
	lo, hi = q.Solid.Bounds()
	to = to.Sub(lo.Add(hi).Mul(0.5))
	corner := mgl64.TransformNormal(j.Corner, back)
	for _, c := range q.Cuts {
		if c.Kind != part.Crosscut || c.Normal.X()*to.X() <= 0 {
			continue
		}
		e := boardEnd{q: q, grain: mgl64.Vec3{math.Copysign(1, to.X()), 0, 0}}
		if lapped(j, q) {
			e.start[2] = -q.Blank.Thickness.MM()
		}
		out := mgl64.Vec3{c.Normal.X(), c.Normal.Y(), 0}
		e.lip = max(0, e.through()*c.Normal.Z()/out.Len())
		out = out.Normalize()
		e.along = mgl64.Vec3{-out.Y(), out.X(), 0}
		if e.along.Dot(corner) < 0 {
			e.along = e.along.Mul(-1)
		}
		e.dir = view.Square("end", mgl64.Vec3{0, 0, 1}, out)
		return e, e.startAt(c)
	}
	return boardEnd{}, false
}

// through is the way to the board's other face, mm: above nothing from the outer one.
func (e boardEnd) through() float64 { return e.q.Blank.Thickness.MM() + 2*e.start.Z() }

// startAt finds the edge from which the arris of an end's cut starts on the face.
func (e *boardEnd) startAt(c part.Cut) bool {
	found, z := false, e.start.Z()
	for _, r := range e.q.Cuts {
		if r.Kind != part.Rip {
			continue
		}
		det := c.Normal.X()*r.Normal.Y() - c.Normal.Y()*r.Normal.X()
		if math.Abs(det) < 1e-9 {
			continue
		}
		one, other := c.Offset-c.Normal.Z()*z, r.Offset-r.Normal.Z()*z
		at := mgl64.Vec3{(one*r.Normal.Y() - other*c.Normal.Y()) / det, (c.Normal.X()*other - r.Normal.X()*one) / det, z}
		if found && at.Dot(e.along) >= e.start.Dot(e.along) {
			continue
		}
		flat := mgl64.Vec3{r.Normal.X(), r.Normal.Y(), 0}
		e.start, found = at, true
		e.edge = mgl64.Vec3{-flat.Y(), flat.X(), 0}.Normalize()
		if e.edge.Dot(e.grain) > 0 {
			e.edge = e.edge.Mul(-1)
		}
		e.bevel = max(0, e.through()*r.Normal.Z()/flat.Len())
	}
	return found
}

// on is a place u along the arris and v along the grain outward of it.
func (e boardEnd) on(u, v float64) mgl64.Vec3 {
	return e.start.Add(e.along.Mul(u)).Add(e.grain.Mul(v))
}

// out is the way outward square to the arris.
func (e boardEnd) out() mgl64.Vec3 { return e.dir.Up }

// sides of a view on which the front edge and the back edge are.
func (e boardEnd) front(d view.Direction) dimension.Side {
	if e.along.Dot(d.Right) > 0 {
		return dimension.LeftOf
	}
	return dimension.RightOf
}

// shown is how much of the corner's length a detail shows: up to into the second tail, all where that is
// little more.
func shown(j joint.Joint) float64 {
	w := j.Width.MM()
	if len(j.Tails) < 2 {
		return min(w, longest)
	}
	to := j.Tails[1].Start.MM() + 0.35*j.Tails[1].Width().MM()
	if w-to < around {
		return min(w, longest)
	}
	return min(to, longest)
}

// dovetailDetails are the tail board's end and the pin board's face and end, square on.
func dovetailDetails(p *form.Piece, j joint.Joint, o Options) []detail {
	tail, ok := endOf(p, j, p.Part(j.TailBoard))
	pin, ok2 := endOf(p, j, p.Part(j.PinBoard))
	if !ok || !ok2 {
		return nil
	}
	name := func(e boardEnd) string { return e.q.Mark + " " + o.say(e.q.Name) }
	tails, pins, endOn := "%s, tails", "%s, pins", "%s, pins end on"
	if strings.HasPrefix(j.Kind, "finger") {
		tails, pins, endOn = "%s, fingers", "%s, fingers", "%s, fingers end on"
	}
	return []detail{
		{o.with(tails, name(tail)), func(s float64, _ bool) *figure { return tailFigure(j, tail, s, o) }},
		{o.with(pins, name(pin)), func(s float64, _ bool) *figure { return pinFigure(j, pin, s, o) }},
		{o.with(endOn, name(pin)), func(s float64, _ bool) *figure { return pinEndFigure(j, pin, s, o) }},
	}
}

// picture draws what a window, mm, shows of the board from a direction, with break lines where the wood of
// a section at that depth runs on. From the end hidden lines are left out: all of the board's other end
// would be among them.
func (e boardEnd) picture(d view.Direction, w draw.Box, section, scale float64, i ink) *figure {
	flat := *e.q
	flat.Place = mgl64.Ident4()
	lone := &form.Piece{Parts: []*part.Part{&flat}}
	shown := windowed(view.NewScene(lone, flattening).Project(d), w, scale)
	f := newFigure(shown, scale, i, d == e.dir)
	for _, c := range view.NewSection(lone, flattening, view.Cut{Direction: d, Depth: section}).Faces {
		f.breaks(c.Loops, shown.Lines, w)
	}
	return f
}

// faceWindow holds a stretch of the arris and the board to a depth, square to the arris, with all of the
// front edge.
func (e boardEnd) faceWindow(long, deep float64) draw.Box {
	const free = 1.0
	beside := e.along.Mul(-e.bevel - free)
	foot := e.start.Add(e.edge.Mul(-deep / e.edge.Dot(e.out())))
	b := draw.EmptyBox()
	for _, p := range []mgl64.Vec3{e.start.Add(beside), foot.Add(beside), e.on(long, 0), e.on(long, 0).Sub(e.out().Mul(deep))} {
		b = b.Add(e.dir.Point(p))
	}
	b.Max.Y += e.lip + around/4
	return b
}

func tailFigure(j joint.Joint, e boardEnd, scale float64, o Options) *figure {
	base := j.Baseline.Outer.MM()
	f := e.picture(e.dir, e.faceWindow(shown(j), base+around), 0, scale, o.ink())
	at := func(p mgl64.Vec3) draw.Point { q := e.dir.Point(p); return f.at(q.X, q.Y) }
	o = o.joints()
	f.sharpCorner(e.q, e.start, e.dir.Point)
	f.widths(dimension.Above, j.Tails, shown(j), func(u float64) draw.Point { return at(e.on(u, 0)) }, o, j.ID)
	side := e.front(e.dir)
	f.Linear(side, at(e.start), at(e.start.Sub(e.out().Mul(base))), o.label(j.Baseline.Outer), j.ID)
	cheek := e.cheek(j)
	tip := e.on(j.Tails[0].Start.MM(), 0)
	length := base / cheek.Dot(e.out())
	f.between(at(tip.Sub(cheek.Mul(length))), e.dir.Point(e.grain), e.dir.Point(cheek), length*scale, degrees(j.Slope), j.ID)
	return f
}

// cheek is the way outward along the front cheek of a tail on the outer face: the slope away from the
// grain, towards the front edge, since tails widen to their ends.
func (e boardEnd) cheek(j joint.Joint) mgl64.Vec3 {
	sin, cos := math.Sincos(j.Slope.Radians())
	across := mgl64.Vec3{0, math.Copysign(1, e.along.Y()), 0}
	return e.grain.Mul(cos).Sub(across.Mul(sin))
}

// widths dimensions spans and the gaps between them from the front edge, as far as they are shown.
func (f *figure) widths(side dimension.Side, spans []joint.Span, long float64, at func(float64) draw.Point, o Options, ref string) {
	last := joint.Span{}
	for i, s := range spans {
		if i > 1 || s.Start.MM() > long {
			return
		}
		if s.Start.MM() > 0.01 {
			f.Linear(side, at(last.End.MM()), at(s.Start.MM()), o.label(s.Start-last.End), ref)
		}
		if s.End.MM() > long+0.01 {
			return
		}
		f.Linear(side, at(s.Start.MM()), at(s.End.MM()), o.label(s.Width()), ref)
		last = s
	}
}

// between marks the angle at v between a square or straight direction and a drawn line of a length, mm of
// paper.
func (f *figure) between(v, plain, drawn draw.Point, long float64, label, ref string) {
	from, to, have := turnOf(plain), turnOf(drawn), [2]float64{0, long}
	if to-from > math.Pi {
		to -= 2 * math.Pi
	} else if from-to > math.Pi {
		from -= 2 * math.Pi
	}
	if math.Abs(to-from) < slight.Radians() {
		return
	}
	if from > to {
		from, to, have = to, from, [2]float64{long, 0}
	}
	f.Angle(v, from, to, have, []float64{0.8 * long, 0.65 * long, 0.9 * long, 0.5 * long}, label, ref)
}

// lapped tells whether a board has pins behind a lap: its outer face is left whole, and they are marked on the inner one.
func lapped(j joint.Joint, q *part.Part) bool {
	return j.Kind == form.HalfBlindDovetail && j.PinBoard == q.ID
}

// pinsOf are a board's pins and how far from the end their baseline lies, on the face that they are marked on.
func pinsOf(j joint.Joint, q *part.Part) ([]joint.Span, measure.Length) {
	if lapped(j, q) {
		return j.PinsInner, j.PinBaseline.Inner
	}
	return j.Pins, j.PinBaseline.Outer
}

func pinFigure(j joint.Joint, e boardEnd, scale float64, o Options) *figure {
	pins, base := pinsOf(j, e.q)
	f := e.picture(e.dir, e.faceWindow(shown(j), base.MM()+around), 0, scale, o.ink())
	at := func(p mgl64.Vec3) draw.Point { q := e.dir.Point(p); return f.at(q.X, q.Y) }
	o = o.joints()
	f.widths(dimension.Above, pins, shown(j), func(u float64) draw.Point { return at(e.on(u, 0)) }, o, j.ID)
	f.Linear(e.front(e.dir), at(e.start), at(e.start.Sub(e.out().Mul(base.MM()))), o.label(base), j.ID)
	return f
}

// pinEndFigure looks along the pin board's grain at its end, the outer face below.
func pinEndFigure(j joint.Joint, e boardEnd, scale float64, o Options) *figure {
	d := view.Square("pins", e.grain, mgl64.Vec3{0, 0, -1})
	t, deep := e.q.Blank.Thickness.MM(), e.q.Blank.Thickness.MM()
	w := draw.EmptyBox()
	for _, u := range []float64{-around / 4, shown(j)} {
		w = w.Add(d.Point(e.on(u, 0)))
	}
	w.Min.Y, w.Max.Y = -around/4, t+around/4
	pins, base := pinsOf(j, e.q)
	f := e.picture(d, w, e.on(0, 0).Dot(e.grain)-2*base.MM()-around, scale, o.ink())
	at := func(u float64) draw.Point { q := d.Point(e.on(u, 0)); return f.at(q.X, q.Y) }
	side, up := dimension.Below, 1.0
	if lapped(j, e.q) { // seen from where the tails come in
		side, up, deep = dimension.Above, -1, j.Depth.MM()
		f.Linear(e.front(d), draw.Point{X: at(0).X, Y: (t - deep) * scale}, at(0), o.joints().label(j.Depth), j.ID)
	}
	f.widths(side, pins, shown(j), at, o.joints(), j.ID)
	f.Linear(e.front(d), draw.Point{X: at(0).X}, draw.Point{X: at(0).X, Y: t * scale}, o.label(e.q.Blank.Thickness), e.q.ID)
	if degrees(j.PinAngle) != degrees(j.PinEnd) {
		return f // seen along the grain it is another angle than on the sawn end, where it is marked and which the table gives
	}
	sin, cos := math.Sincos(j.PinAngle.Radians())
	way := up * math.Copysign(1, e.along.Dot(d.Right))
	f.between(at(pins[0].End.MM()), draw.Point{Y: up}, draw.Point{X: way * sin, Y: up * cos}, deep*scale/cos, degrees(size(j.PinAngle)), j.ID)
	return f
}
