package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/part"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// screw is a screw's holes in line with each other, world frame: where it enters, where it ends, and its
// bores from the head on.
type screw struct {
	from, to mgl64.Vec3
	bores    []placedBore
}

type placedBore struct {
	part.Bore
	entry, axis mgl64.Vec3 // world
}

func (b placedBore) at(share float64) mgl64.Vec3 {
	return b.entry.Add(b.axis.Mul(share * b.Depth.MM()))
}

func placedBores(q *part.Part) []placedBore {
	var out []placedBore
	for _, b := range q.Bores {
		out = append(out, placedBore{b, mgl64.TransformCoordinate(b.Entry, q.Place), mgl64.TransformNormal(b.Axis, q.Place)})
	}
	return out
}

// inLine: the axes of one screw's holes are nearer to each other than this, mm.
const inLine = 0.05

// screwsOf finds the screws of a joint: pilots in one board in line with clearance holes in the other.
func screwsOf(a, b *part.Part) []screw {
	var out []screw
	for _, pair := range [2][2]*part.Part{{a, b}, {b, a}} {
		for _, pilot := range placedBores(pair[1]) {
			if pilot.Purpose != "pilot" {
				continue
			}
			s := screw{from: pilot.entry, to: pilot.at(1)}
			for _, c := range placedBores(pair[0]) {
				off := c.entry.Sub(pilot.entry)
				if c.axis.Dot(pilot.axis) > 0.9999 && off.Sub(pilot.axis.Mul(off.Dot(pilot.axis))).Len() < inLine {
					s.bores = append(s.bores, c)
					if off.Dot(pilot.axis) < s.from.Sub(pilot.entry).Dot(pilot.axis) {
						s.from = c.entry
					}
				}
			}
			if len(s.bores) > 0 {
				s.bores = append(s.bores, pilot)
				out = append(out, s)
			}
		}
	}
	return out
}

// jointCut is where a joint is cut to be shown: through as many of its screws as one plane can hold, else
// square to its corner, off the middle, where arches and hand holes are.
func jointCut(a, b *part.Part, j joint.Joint, screws []screw) (view.Cut, bool) {
	n := j.Corner
	if n.Len() < 0.5 {
		n = mgl64.TransformNormal(mgl64.Vec3{0, 0, 1}, a.Place).Cross(mgl64.TransformNormal(mgl64.Vec3{0, 0, 1}, b.Place))
	}
	if len(screws) > 0 && (j.Depth == 0 || n.Len() < 0.5) { // a housing shows only square to its corner
		n = throughScrews(screws)
	}
	if n.Len() < 1e-3 {
		return view.Cut{}, false
	}
	n = n.Normalize()
	if n.Dot(mgl64.Vec3{-0.2, -1, 0.4}) < 0 {
		n = n.Mul(-1)
	}
	up := mgl64.Vec3{0, 0, 1}
	if math.Abs(n.Z()) > 0.9 {
		up = mgl64.Vec3{0, 1, 0}
	}
	c := view.Cut{Direction: view.Square("section", n, up)}
	if len(screws) > 0 {
		c.Depth = n.Dot(screws[0].from)
		return c, true
	}
	const share = 0.3
	lo, hi := shared(n, a, b)
	if lo >= hi {
		lo, hi = common(n, a, b)
	}
	c.Depth = lo + share*(hi-lo)
	return c, lo < hi
}

// throughScrews is the square-on direction, or the nearest to one, in which most screws lie in one plane
// with the first.
func throughScrews(screws []screw) mgl64.Vec3 {
	first := screws[0]
	along := first.to.Sub(first.from).Normalize()
	var best mgl64.Vec3
	most := 0
	for _, d := range []view.Direction{view.Front, view.End, view.Top} {
		n := d.Toward.Sub(along.Mul(along.Dot(d.Toward)))
		if n.Len() < 0.5 {
			continue
		}
		n = n.Normalize()
		count := 0
		for _, s := range screws {
			if math.Abs(s.from.Sub(first.from).Dot(n)) < inLine && math.Abs(s.to.Sub(first.from).Dot(n)) < inLine {
				count++
			}
		}
		if count > most {
			best, most = n, count
		}
	}
	return best
}

// shared is the stretch along n, mm, between corners that both boards have in one place: of a mitre or a
// butted corner the corner itself, which may lean far. lo > hi when they have none.
func shared(n mgl64.Vec3, a, b *part.Part) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	to := b.Place.Inv().Mul4(a.Place)
	for _, v := range a.Solid.Vertices {
		w := mgl64.TransformCoordinate(v, to)
		for _, u := range b.Solid.Vertices {
			if w.Sub(u).Len() < inLine {
				d := n.Dot(mgl64.TransformCoordinate(v, a.Place))
				lo, hi = min(lo, d), max(hi, d)
				break
			}
		}
	}
	return lo, hi
}

// common is the stretch along n that both boards reach over, mm.
func common(n mgl64.Vec3, a, b *part.Part) (lo, hi float64) {
	lo, hi = math.Inf(-1), math.Inf(1)
	for _, q := range []*part.Part{a, b} {
		l, h := math.Inf(1), math.Inf(-1)
		for _, v := range q.Solid.Vertices {
			d := n.Dot(mgl64.TransformCoordinate(v, q.Place))
			l, h = min(l, d), max(h, d)
		}
		lo, hi = max(lo, l), min(hi, h)
	}
	return lo, hi
}

// behindJoint is how far behind the cut a section of a joint shows the boards, in thicknesses of the thicker one: what is
// beside the joint, but not the foot of a board that runs away from it.
const behindJoint = 2.5

// jointSection shows two boards cut through where they meet; false where there is nothing to cut.
func jointSection(p *form.Piece, j joint.Joint, o Options) (detail, bool) {
	a, b := p.Part(j.TailBoard), p.Part(j.PinBoard)
	if a == nil || b == nil || a.Solid == nil || b.Solid == nil {
		return detail{}, false
	}
	screws := screwsOf(a, b)
	cut, ok := jointCut(a, b, j, screws)
	if !ok {
		return detail{}, false
	}
	thick := max(a.Blank.Thickness, b.Blank.Thickness).MM()
	cut.Reach = behindJoint * thick
	boards := &form.Piece{Parts: []*part.Part{a, b}}
	s := view.NewSection(boards, flattening, cut)
	if len(s.Faces) < 2 {
		return detail{}, false
	}
	screws = slices.DeleteFunc(screws, func(c screw) bool {
		return math.Abs(cut.Direction.Depth(c.from)-cut.Depth) > inLine || math.Abs(cut.Direction.Depth(c.to)-cut.Depth) > inLine
	})
	touching := touchingAt(s.Faces[0], s.Faces[1])
	contact := boxAround(touching)
	if contact.Empty() {
		return detail{}, false
	}
	faces, parts := s.Faces, boards.Parts
	loops := slices.Concat(faces[0].Loops, faces[1].Loops)
	if loose := looseIn(p, cut, contact.Grow(thick)); len(loose) > 0 {
		parts = append(parts, loose...)
		s = yielding(view.NewSection(&form.Piece{Parts: parts}, flattening, cut))
	}
	title := o.with("%s and %s: %s, cut through", a.Mark, b.Mark, o.say(j.Kind))
	return detail{title, func(scale float64, tight bool) *figure {
		wood := thick
		if tight {
			wood = tightShare * thick
		}
		w := sectionWindow(contact, screws, cut.Direction, wood)
		w = wholeCorners(w, loops, wood)
		shown := windowed(s.Picture, w, scale)
		f := newFigure(shown, scale, o.ink(), false)
		var axes [][2]draw.Point
		for _, c := range screws {
			axes = append(axes, [2]draw.Point{scaled(cut.Direction.Point(c.from), scale), scaled(cut.Direction.Point(c.to), scale)})
		}
		inside := f.hatch(s.Faces, draw.Box{Min: f.at(w.Min.X, w.Min.Y), Max: f.at(w.Max.X, w.Max.Y)}, axes...)
		f.breaks(loops, shown.Lines, w)
		for _, q := range parts {
			if at, ok := inside[q.ID]; ok {
				f.Leader(at, true, q.Mark+" "+o.say(q.Name), q.ID, offHatch...)
			}
		}
		f.jointNote(j, cut, touching, faces, o)
		f.screwNotes(screws, cut.Direction, w, o)
		return f
	}}, true
}

// looseIn are the splines, keys and wedges of a piece that a cut goes through in a box round where two boards touch.
func looseIn(p *form.Piece, cut view.Cut, near draw.Box) []*part.Part {
	var out []*part.Part
	for _, q := range p.Parts {
		if q.Slip == "" || q.Solid == nil {
			continue
		}
		box, low, high := draw.EmptyBox(), math.Inf(1), math.Inf(-1)
		for _, v := range q.Solid.Vertices {
			w := mgl64.TransformCoordinate(v, q.Place)
			box = box.Add(cut.Direction.Point(w))
			low, high = min(low, cut.Direction.Depth(w)), max(high, cut.Direction.Depth(w))
		}
		if low < cut.Depth && cut.Depth < high && box.Meets(near) {
			out = append(out, q)
		}
	}
	return out
}

func boxAround(points []draw.Point) draw.Box {
	box := draw.EmptyBox()
	for _, p := range points {
		box = box.Add(p)
	}
	return box
}

// touchingAt are the corners of two cut faces at which they touch, mm of the piece.
func touchingAt(a, b view.CutFace) []draw.Point {
	const touch = 0.02 // chords of two round faces may stand this far apart
	var out []draw.Point
	for _, pair := range [2][2]view.CutFace{{a, b}, {b, a}} {
		for _, l := range pair[0].Loops {
			for _, p := range l {
				for _, m := range pair[1].Loops {
					for i := range m {
						if fromSegment(p, m[i], m[(i+1)%len(m)]) < touch {
							out = append(out, p)
						}
					}
				}
			}
		}
	}
	return out
}

// wholeCorners widens a window where a board that leans runs out of its side just before it reaches its end, so that the
// board is broken off square across and not at a corner; by no more than so much.
func wholeCorners(w draw.Box, loops [][]draw.Point, most float64) draw.Box {
	const far = 1e6 // mm, off every board
	out := w
	for _, l := range loops {
		for _, upright := range []bool{true, false} {
			band := w
			if upright {
				band.Min.X, band.Max.X = -far, far
			} else {
				band.Min.Y, band.Max.Y = -far, far
			}
			in := draw.EmptyBox()
			for i, p := range l {
				if a, b, ok := inBox(p, l[(i+1)%len(l)], band); ok {
					in = in.Add(a).Add(b)
				}
			}
			out = reaching(out, in, w, most, upright)
		}
	}
	return out
}

// reaching widens a window to what is in it of a board, sideways or upwards and downwards, where that wants no more than so
// much beyond what it was.
func reaching(w, in, was draw.Box, most float64, sideways bool) draw.Box {
	low := func(to *float64, at, from float64) {
		if from-at <= most {
			*to = min(*to, at)
		}
	}
	high := func(to *float64, at, from float64) {
		if at-from <= most {
			*to = max(*to, at)
		}
	}
	if sideways {
		low(&w.Min.X, in.Min.X, was.Min.X)
		high(&w.Max.X, in.Max.X, was.Max.X)
	} else {
		low(&w.Min.Y, in.Min.Y, was.Min.Y)
		high(&w.Max.Y, in.Max.Y, was.Max.Y)
	}
	return w
}

// tightShare is how much of the usual wood round a joint is shown where this saves a sheet.
const tightShare = 0.4

// sectionWindow holds the contact and the screws and as much round them as the boards are thick, but no
// more than fits a sheet: of a long contact the middle, of screws the first.
func sectionWindow(contact draw.Box, screws []screw, d view.Direction, thick float64) draw.Box {
	const most = 90.0
	box, mid := contact, draw.Point{X: (contact.Min.X + contact.Max.X) / 2, Y: (contact.Min.Y + contact.Max.Y) / 2}
	for i, s := range screws {
		box = box.Add(d.Point(s.from)).Add(d.Point(s.to))
		if i == 0 {
			mid = d.Point(s.from)
		}
	}
	w := box.Grow(thick + around/2)
	if w.Width() > most+2*thick {
		w.Min.X, w.Max.X = max(w.Min.X, mid.X-most/2-thick), min(w.Max.X, mid.X+most/2+thick)
	}
	if w.Height() > most+2*thick {
		w.Min.Y, w.Max.Y = max(w.Min.Y, mid.Y-most/2-thick), min(w.Max.Y, mid.Y+most/2+thick)
	}
	return w
}

// jointNote says what a section shows but does not tell by itself.
func (f *figure) jointNote(j joint.Joint, c view.Cut, touching []draw.Point, faces []view.CutFace, o Options) {
	contact := boxAround(touching)
	text, at := "", draw.Point{X: (contact.Min.X + contact.Max.X) / 2, Y: (contact.Min.Y + contact.Max.Y) / 2}
	switch {
	case j.Depth > 0:
		text = o.with("%s, %s deep", o.say(j.Kind), o.joints().label(j.Depth))
	case math.Abs(c.Direction.Toward.Dot(j.Corner)) > 0.9999: // the cut is square to the corner
		text = o.with("inside angle %s", degrees(j.Dihedral))
		at = insideCorner(touching, faces, j.Dihedral.Degrees())
	default:
		return
	}
	f.Leader(f.at(at.X, at.Y), true, text, j.ID, offHatch...)
}

// insideCorner is the place where two cut boards touch and as many degrees are open between them as their inner faces stand
// apart, of several such the first.
func insideCorner(touching []draw.Point, faces []view.CutFace, open float64) draw.Point {
	const near, rays = 0.2, 360 // mm, round each place
	miss := func(p draw.Point) float64 {
		air := 0
		for i := range rays {
			s, c := math.Sincos((float64(i) + 0.5) * 2 * math.Pi / rays)
			at := draw.Point{X: p.X + near*c, Y: p.Y + near*s}
			if !slices.ContainsFunc(faces, func(f view.CutFace) bool { return inLoops(f.Loops, at) }) {
				air++
			}
		}
		return math.Round(math.Abs(float64(air)*360/rays - open))
	}
	return slices.MinFunc(touching, func(a, b draw.Point) int { return cmp.Compare(miss(a), miss(b)) })
}

// inLoops counts how many outlines a ray to the left crosses.
func inLoops(loops [][]draw.Point, p draw.Point) (in bool) {
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			if (a.Y > p.Y) != (b.Y > p.Y) && a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) < p.X {
				in = !in
			}
		}
	}
	return in
}

// screwNotes draws the axes of screws and names the holes of the first.
func (f *figure) screwNotes(screws []screw, d view.Direction, w draw.Box, o Options) {
	for i, s := range screws {
		from, to := d.Point(s.from), d.Point(s.to)
		if a, b, ok := inBox(from, to, w); ok {
			f.axis(f.at(a.X, a.Y), f.at(b.X, b.Y), 2)
		}
		if i > 0 {
			continue
		}
		for _, b := range s.bores {
			text := fmt.Sprintf(boreFormats[b.Purpose], bit(b.Diameter, o))
			if !b.Through {
				text += " × " + o.label(b.Depth)
			}
			if b.Plug > 0 {
				text += fmt.Sprintf("\nplug Ø%s", bit(b.Plug, o))
			}
			share := 0.5
			if b.Purpose == "clearance" { // past the counterbore, which begins at the same place
				share = 0.8
			}
			if at := d.Point(b.at(share)); at.X > w.Min.X && at.X < w.Max.X && at.Y > w.Min.Y && at.Y < w.Max.Y {
				f.Leader(f.at(at.X, at.Y), true, o.say(text), b.ID, offHatch...)
			}
		}
	}
}
