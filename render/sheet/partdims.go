package sheet

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/dimension"
	"splaywright/render/draw"
)

// faceFigure gives the true face its dimensions: the blank, tails or pins in a row from the front
// edge, holes and shapes in rows from the blank's lower left corner, baselines, arcs.
func faceFigure(p *form.Piece, q *part.Part, f *figure, o Options) *figure {
	box := extent(q)
	jointed := jointRow(p, q, f, o, box)
	across := dimension.RightOf
	if jointed == dimension.RightOf {
		across = dimension.LeftOf
	}
	xs, ys := holeMarks(p, q)
	rows := o
	if sx, sy := seatMarks(p, q); len(sx)+len(sy) > 0 {
		rows = o.joints()
	}
	if len(xs) > 0 {
		f.Running(dimension.Below, mark(f, box.Min.X, box.Min.Y, 0, "", rows), marksX(f, xs, box, rows, q.ID))
	} else if tenoned(p, q) || !tapersThrough(q) && !pointToPoint(p, q, f.scale) {
		f.Linear(dimension.Below, f.at(box.Min.X, box.Min.Y), f.at(box.Max.X, box.Min.Y), o.label(q.Blank.Length), q.ID)
	}
	if len(ys) > 0 {
		x, from, to := box.Min.X, box.Min.Y, box.Max.Y
		if across == dimension.RightOf {
			x = box.Max.X
		}
		if _, way, ok := rowOf(p, q); ok && way < 0 { // one sheet has its zeros on one edge
			from, to = to, from
		}
		f.Running(across, mark(f, x, from, 0, "", rows), marksY(f, ys, x, from, to, rows, q.ID))
	} else {
		f.Linear(across, f.at(endX(box, across), box.Min.Y), f.at(endX(box, across), box.Max.Y), o.label(q.Blank.Width), q.ID)
	}
	if jointed == dimension.Above {
		freeEnd(q, f, o, across.Opposite(), box)
	}
	points(p, q, f, o, box)
	cutOutNote(q, f, o)
	boreNotes(q, f, o)
	seatNotes(p, q, f, o)
	shapeNotes(q, f, o)
	return f
}

// extent is the part's bounding box on its face: where its blank lies.
func extent(q *part.Part) draw.Box {
	lo, hi := q.Solid.Bounds()
	return draw.Box{Min: draw.Point{X: lo.X(), Y: lo.Y()}, Max: draw.Point{X: hi.X(), Y: hi.Y()}}
}

func endX(b draw.Box, s dimension.Side) float64 {
	if s == dimension.LeftOf {
		return b.Min.X
	}
	return b.Max.X
}

func mark(f *figure, x, y float64, l measure.Length, ref string, o Options) dimension.Mark {
	if l == 0 {
		return dimension.Mark{At: f.at(x, y), Label: "0", Ref: ref}
	}
	return dimension.Mark{At: f.at(x, y), Label: o.label(l), Ref: ref}
}

// marksX are running positions from the blank's left end, its right end the last of them. Each is
// rounded by itself, so that roundings never add up.
func marksX(f *figure, xs []float64, b draw.Box, o Options, ref string) []dimension.Mark {
	var out []dimension.Mark
	for _, x := range distinct(append(xs, b.Max.X)) {
		out = append(out, mark(f, x, b.Min.Y, measure.Length(x-b.Min.X), ref, o))
	}
	return out
}

// marksY are running positions from one edge of the blank, the other edge the last of them.
func marksY(f *figure, ys []float64, x, from, to float64, o Options, ref string) []dimension.Mark {
	var out []dimension.Mark
	for _, y := range distinct(append(ys, to)) {
		out = append(out, mark(f, x, y, measure.Length((y-from)*math.Copysign(1, to-from)), ref, o))
	}
	return out
}

// edgeMarks are the places on an edge where a shape that stands on it begins and ends.
func edgeMarks(s part.Feature) (xs, ys []float64) {
	half := s.Length.MM() / 2
	sin, cos := math.Sincos(s.Angle.Radians())
	if math.Abs(cos) < math.Abs(sin) { // on a long edge
		return []float64{s.Centre.X() - half*math.Abs(sin), s.Centre.X() + half*math.Abs(sin)}, nil
	}
	return nil, []float64{s.Centre.Y() - half*math.Abs(cos), s.Centre.Y() + half*math.Abs(cos)}
}

// rowOf finds the joint whose tails or pins stand in a row on a part's sheet, and which way the row runs: 1 up the
// sheet, -1 down it. Of walls it rises from the lower edge at their left end, of others it starts at the front edge.
func rowOf(p *form.Piece, q *part.Part) (row joint.Joint, way float64, ok bool) {
	for _, j := range slices.Backward(p.Joints) {
		if j.PinBoard == q.ID && len(j.Pins) > 0 || j.PinBoard != q.ID && j.TailBoard == q.ID && len(j.Tails) > 0 {
			if row, ok = j, true; !rising(j) || !atRight(p, q, j) {
				break
			}
		}
	}
	if !ok || rising(row) {
		return row, 1, ok
	}
	return row, math.Copysign(1, mgl64.TransformNormal(row.Corner, q.Place.Inv()).Y()), true
}

// atRight tells whether a joint stands at a board's right hand end.
func atRight(p *form.Piece, q *part.Part, j joint.Joint) bool {
	other := j.TailBoard
	if other == q.ID {
		other = j.PinBoard
	}
	o, box := p.Part(other), extent(q)
	return o != nil && mgl64.TransformCoordinate(o.Place.Col(3).Vec3(), q.Place.Inv())[0] > (box.Min.X+box.Max.X)/2
}

// row is where the tails or pins of a board's end stand, mm on its face.
type row struct {
	joint.Joint
	spans    []joint.Span
	baseline measure.Length // from the end
	x, start float64        // of the end, and of the edge that the spans are counted from
	way      float64        // 1 up the sheet, -1 down it
	z        float64        // of the face that they are marked on
	right    bool           // at the board's right hand end
}

// rowFor is the row that a part's sheet shows; false where it has none.
func rowFor(p *form.Piece, q *part.Part) (row, bool) {
	j, way, ok := rowOf(p, q)
	if !ok {
		return row{}, false
	}
	r := row{Joint: j, spans: j.Tails, baseline: j.Baseline.Outer, start: -way * j.Width.MM() / 2, way: way, right: atRight(p, q, j)}
	if j.PinBoard == q.ID {
		r.spans, r.baseline = pinsOf(j, q)
		r.start = -way * pinWidth(r.spans).MM() / 2
	}
	if lapped(j, q) {
		r.z = -q.Blank.Thickness.MM()
	}
	if rising(j) { // walls: heights up the face from the lower edge, whether the end slants or not
		r.start, _ = faceEdges(q, r.z)
		r.spans = upFace(r.spans, mgl64.TransformNormal(j.Corner, q.Place.Inv()).Y())
	}
	r.x = faceEnd(q, r.right, r.z)
	return r, true
}

// jointRow puts the tails or pins of the part's first dovetailed end in a row from the front edge,
// and the baseline of the outer face. It tells which side it took; Above when there is none.
func jointRow(p *form.Piece, q *part.Part, f *figure, o Options, box draw.Box) dimension.Side {
	o = o.joints()
	r, ok := rowFor(p, q)
	if !ok {
		return dimension.Above
	}
	side := dimension.LeftOf
	if r.right {
		side = dimension.RightOf
	}
	marks := spanMarks(f, r.spans, r.x, r.start, r.way, o, r.ID)
	if r.TailBoard == q.ID && !rising(r.Joint) { // pins reach both edges by themselves
		marks = append(marks, mark(f, r.x, r.start+r.way*r.Width.MM(), r.Width, r.ID, o))
	}
	if f.RowLength(len(marks)+1) > r.Width.MM()*f.scale+denseRow && len(marks) > 2*rowEnd {
		marks = slices.Concat(marks[:rowEnd], marks[len(marks)-rowEnd:])
	}
	f.Running(side, mark(f, r.x, r.start, 0, r.ID, o), marks)
	if rising(r.Joint) {
		return side // the baseline runs along a slanting end: the notes give it
	}
	inward := math.Copysign(r.baseline.MM(), -r.x+(box.Min.X+box.Max.X)/2)
	f.Linear(dimension.Above, f.at(r.x, box.Max.Y), f.at(r.x+inward, box.Max.Y), o.label(r.baseline), r.ID)
	return side
}

// A row of tails whose values would reach this much, mm, beyond the part shows its two ends alone, so many
// values each; the table of marking has them all, as the notes say.
const (
	denseRow = 20.0
	rowEnd   = 4
)

// pinWidth is the width of the joint on the pin board: its half pins reach both edges.
func pinWidth(pins []joint.Span) measure.Length { return pins[len(pins)-1].End + pins[0].Start }

func spanMarks(f *figure, spans []joint.Span, x, start, way float64, o Options, ref string) []dimension.Mark {
	var out []dimension.Mark
	last := math.Inf(-1)
	for _, s := range spans {
		for _, l := range []measure.Length{s.Start, s.End} {
			if l.MM() < 0.01 || l.MM()-last < 0.01 {
				continue
			}
			last = l.MM()
			out = append(out, mark(f, x, start+way*l.MM(), l, ref, o))
		}
	}
	return out
}

// rising tells whether a corner rises between two walls.
func rising(j joint.Joint) bool { return j.Corner.Z() > 0.2 }

// upFace turns stretches along a slanting end into heights up the face.
func upFace(spans []joint.Span, rise float64) []joint.Span {
	out := make([]joint.Span, len(spans))
	for i, s := range spans {
		out[i] = joint.Span{Start: s.Start * measure.Length(rise), End: s.End * measure.Length(rise)}
	}
	return out
}

// faceEdges is where a face, at a height z, begins and ends across the grain: within the blank where its edges lean.
func faceEdges(q *part.Part, z float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, v := range q.Solid.Vertices {
		if math.Abs(v.Z()-z) <= sameShape {
			low, high = min(low, v.Y()), max(high, v.Y())
		}
	}
	return low, high
}

// faceEnd is where a face, at a height z, ends along the grain.
func faceEnd(q *part.Part, right bool, z float64) float64 {
	x := math.Inf(1)
	if right {
		x = math.Inf(-1)
	}
	for _, v := range q.Solid.Vertices {
		if math.Abs(v.Z()-z) > sameShape {
			continue
		}
		if right {
			x = max(x, v.X())
		} else {
			x = min(x, v.X())
		}
	}
	return x
}

// edgeFigure shows the lower edge: the lengths of both faces and how far each end leans; the thickness too, unless
// that stands on the view of the end.
func edgeFigure(p *form.Piece, q *part.Part, f *figure, o Options, tip bool) *figure {
	t := q.Blank.Thickness.MM()
	ends := map[bool][2]float64{} // right end? -> x on the outer and on the inner face
	for _, c := range endsOf(p, q) {
		n := c.Normal
		at := func(z float64) float64 { return (c.Offset - n.Z()*z) / n.X() }
		ends[n.X() > 0] = [2]float64{at(0), at(-t)}
		tilt := math.Atan2(math.Abs(n.Z()), math.Abs(n.X()))
		if math.Abs(n.Y()) > 1e-6 || tilt < slight.Radians() {
			continue
		}
		lean := math.Atan2(-t, at(-t)-at(0))
		if lean > 0 {
			lean -= 2 * math.Pi
		}
		lo, hi, have := lean, -math.Pi/2, [2]float64{t * f.scale / math.Cos(tilt), 0}
		if lo > hi {
			lo, hi, have = hi, lo, [2]float64{0, have[0]}
		}
		v := f.at(at(0), 0)
		ts := t * f.scale
		f.Angle(v, lo, hi, have, []float64{ts + 3.5, ts + 6, ts + 9, ts + 12}, degrees(measure.Angle(tilt)), q.ID+"/"+c.ID)
	}
	if x := extent(q).Max.X; !tip || !thickAtTip(q, f, o) {
		f.Linear(dimension.RightOf, f.at(x, -t), f.at(x, 0), o.label(q.Blank.Thickness), q.ID)
	}
	l, r := ends[false], ends[true]
	tapered := tapersThrough(q)
	plain := !tapered && math.Abs(r[0]-l[0]-q.Blank.Length.MM()) < 0.02 // the face has this length already
	if len(ends) == 2 && !plain && !swung(q) {                          // with swung ends the face shows long and short point
		f.faceLength(dimension.Above, q, l[0], r[0], 0, o)
		if tapered {
			f.faceLength(dimension.Below, q, l[1], r[1], -t, o)
		}
	}
	return f
}

// faceLength is how long a face is from end to end, as the edge shows it.
func (f *figure) faceLength(side dimension.Side, q *part.Part, from, to, z float64, o Options) {
	f.sharpEnd(q, from, z)
	f.sharpEnd(q, to, z)
	f.Linear(side, f.at(from, z), f.at(to, z), o.label(measure.Length(to-from)), q.ID)
}

// tapersThrough tells whether a board's two faces are not of one length, so that its edge shows both.
func tapersThrough(q *part.Part) bool {
	longer, ends := 0.0, 0
	for _, c := range q.Cuts {
		if c.Kind == part.Crosscut && math.Abs(c.Normal.X()) >= 0.1 {
			longer += c.Normal.Z() / math.Abs(c.Normal.X())
			ends++
		}
	}
	return ends == 2 && !swung(q) && math.Abs(longer)*q.Blank.Thickness.MM() > 0.02
}

// thickAtTip tells whether the thickness stands on the view of the end: where its value has room between
// the arrowheads. Else it stands on the edge, so that a slim view takes little of the sheet's width.
func thickAtTip(q *part.Part, f *figure, o Options) bool {
	return q.Blank.Thickness.MM()*f.scale > draw.TextWidth(o.label(q.Blank.Thickness), f.Style.Text, false)+1
}

// tipFigure shows the end, with the thickness where that has room there or no edge is shown.
func tipFigure(q *part.Part, f *figure, o Options, edge bool) *figure {
	t, way := q.Blank.Thickness.MM(), 1.0
	y := extent(q).Max.Y
	if f.dir.Toward.X() < 0 { // seen from the left the inner face is at the left
		t, way = -t, -1
	}
	for _, b := range q.Bores {
		if _, end := boredInto(q, b); end && !centred(q, b) {
			f.Linear(dimension.Above, f.at(0, y), f.at(-way*b.Entry.Z(), y), o.label(measure.Length(-b.Entry.Z())), q.ID)
		}
	}
	if edge && !thickAtTip(q, f, o) {
		return f
	}
	f.Linear(dimension.Above, f.at(0, y), f.at(t, y), o.label(q.Blank.Thickness), q.ID)
	return f
}

// distinct sorts places and keeps one of those that no rule could tell apart.
func distinct(list []float64) []float64 {
	slices.Sort(list)
	out := list[:0]
	for _, v := range list {
		if len(out) == 0 || v-out[len(out)-1] > 0.01 {
			out = append(out, v)
		}
	}
	return out
}
