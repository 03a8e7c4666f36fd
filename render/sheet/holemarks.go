package sheet

import (
	"fmt"
	"math"
	"slices"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/dimension"
	"splaywright/render/draw"
	"splaywright/render/table"
)

// holeMarks are the places on a true face that a bench measures to: holes in either face and where those in ends
// and edges begin, the middles of shapes, the ends of an arch's chord, and the lines of what
// is let in.
func holeMarks(p *form.Piece, q *part.Part) (xs, ys []float64) {
	for _, b := range q.Bores {
		switch along, end := boredInto(q, b); {
		case !end:
			xs, ys = append(xs, b.Entry.X()), append(ys, b.Entry.Y())
		case along:
			ys = append(ys, b.Entry.Y())
		default:
			xs = append(xs, b.Entry.X())
		}
	}
	for _, s := range q.Features {
		switch s.Kind {
		case part.HandHole, part.Hole, part.Slot:
			xs, ys = append(xs, s.Centre.X()), append(ys, s.Centre.Y())
		case part.Groove:
			ys = append(ys, s.Centre.Y()-s.Width.MM()/2, s.Centre.Y()+s.Width.MM()/2)
			if s.Length.MM() < stopped*extent(q).Width() {
				xs = append(xs, s.Centre.X()-s.Length.MM()/2, s.Centre.X()+s.Length.MM()/2)
			}
		case part.Arch, part.Ogee, part.Notch, part.Taper:
			mx, my := edgeMarks(s)
			xs, ys = append(xs, mx...), append(ys, my...)
		case part.Chamfer:
			if s.Length.MM() < stopped*longestOn(q, s) {
				mx, my := edgeMarks(s)
				xs, ys = append(xs, mx...), append(ys, my...)
			}
		}
	}
	sx, sy := seatMarks(p, q)
	return append(xs, sx...), append(ys, sy...)
}

// boredInto tells whether a hole enters an end or an edge, and if so whether it is an end.
func boredInto(q *part.Part, b part.Bore) (end, either bool) {
	for _, c := range q.Cuts {
		if c.ID == b.Face {
			return c.Kind == part.Crosscut, true
		}
	}
	return false, false
}

// seatMarks are the lines of housings and mortises in a part that run along its frame: two along the grain, two
// across it, and none that lie beyond its edges. Lines that slant are for the table of seats.
func seatMarks(p *form.Piece, q *part.Part) (xs, ys []float64) {
	box := extent(q)
	for _, j := range p.Joints {
		s, ok := table.SeatOf(p, j)
		if !ok || j.TailBoard != q.ID {
			continue
		}
		var x, y []float64
		for _, c := range s.Corners {
			x, y = append(x, c.X()), append(y, c.Y())
		}
		if x = distinct(x); len(x) == 2 {
			xs = append(xs, between(x, box.Min.X, box.Max.X)...)
		}
		if y = distinct(y); len(y) == 2 {
			ys = append(ys, between(y, box.Min.Y, box.Max.Y)...)
		}
	}
	return xs, ys
}

// between keeps what lies between two ends.
func between(list []float64, lo, hi float64) []float64 {
	var out []float64
	for _, v := range list {
		if v > lo+sameShape && v < hi-sameShape {
			out = append(out, v)
		}
	}
	return out
}

// centred tells whether a hole in an end or an edge stands in the middle of the thickness.
func centred(q *part.Part, b part.Bore) bool {
	_, end := boredInto(q, b)
	return end && math.Abs(b.Entry.Z()+q.Blank.Thickness.MM()/2) < 0.005
}

// cutOutNote names the corners that are cut out of a bottom so that it goes round the pins, and their size on the
// outer face.
func cutOutNote(q *part.Part, f *figure, o Options) {
	if q.ID != "bottom" || manySided(q) {
		return
	}
	face := draw.EmptyBox()
	var all []draw.Point
	for _, v := range q.Solid.Vertices {
		if math.Abs(v.Z()) <= sameShape {
			all = append(all, draw.Point{X: v.X(), Y: v.Y()})
			face = face.Add(all[len(all)-1])
		}
	}
	count, order, at := map[string]int{}, []string(nil), map[string]draw.Point{}
	for _, c := range all {
		x, y := min(c.X-face.Min.X, face.Max.X-c.X), min(c.Y-face.Min.Y, face.Max.Y-c.Y)
		if x < sameShape || y < sameShape {
			continue
		}
		text := fmt.Sprintf("corner cut out %s × %s", o.Style.Format(measure.Length(x)), o.Style.Format(measure.Length(y)))
		if count[text]++; count[text] == 1 {
			order, at[text] = append(order, text), c
		}
	}
	for _, text := range order {
		label := text
		if n := count[text]; n > 1 {
			label = fmt.Sprintf("%d × %s", n, text)
		}
		c := at[text]
		f.Leader(f.at(c.X, c.Y), false, o.say(label), q.ID)
	}
}

// seatNotes name what is let into a part, once each kind, at a place where nothing else is let in.
func seatNotes(p *form.Piece, q *part.Part, f *figure, o Options) {
	var seats [][]draw.Point
	var labels, refs []string
	for _, j := range p.Joints {
		s, ok := table.SeatOf(p, j)
		if !ok || j.TailBoard != q.ID || j.Tenon != nil {
			continue
		}
		text := fmt.Sprintf("housing, %s deep", o.joints().label(j.Depth))
		if s.Inner {
			text += ", inner face"
		}
		var outline []draw.Point
		for _, c := range s.Corners {
			outline = append(outline, f.at(c.X(), c.Y()))
		}
		seats, labels, refs = append(seats, outline), append(labels, text), append(refs, j.ID)
	}
	for i, text := range labels {
		if slices.Index(labels, text) == i {
			f.Leader(placeIn(seats, i), true, o.say(text), refs[i])
		}
	}
}

// placeIn is a place in one of several outlines of four corners, as far outside of the others as can be, the middle
// before what is no better.
func placeIn(outlines [][]draw.Point, i int) draw.Point {
	best, free := draw.Point{}, math.Inf(-1)
	for _, u := range []float64{0.5, 0.3, 0.7, 0.15, 0.85} {
		for _, v := range []float64{0.5, 0.3, 0.7, 0.15, 0.85} {
			var at draw.Point
			for k, w := range [4]float64{(1 - u) * (1 - v), u * (1 - v), u * v, (1 - u) * v} {
				at.X, at.Y = at.X+w*outlines[i][k].X, at.Y+w*outlines[i][k].Y
			}
			room := enoughRoom
			for k, o := range outlines {
				if k == i {
					continue
				}
				to := roomAt(at, [][]draw.Point{o}, nil, draw.EmptyBox())
				if face := (frontFace{box: loopsBox([][]draw.Point{o}), loops: [][]draw.Point{o}}); face.holds(at) {
					to = -to
				}
				room = min(room, to)
			}
			if room > free+0.01 {
				best, free = at, room
			}
		}
	}
	return best
}

// tapered tells whether an edge runs out of the grain's direction.
func tapered(q *part.Part) bool {
	return slices.ContainsFunc(q.Cuts, func(c part.Cut) bool {
		return c.Kind == part.Rip && math.Abs(c.Normal.X()) > slight.Radians()
	})
}

// freeEnd gives the end of a tapered board that has no row of tails or pins its width, which its other end does not
// tell.
func freeEnd(q *part.Part, f *figure, o Options, side dimension.Side, box draw.Box) {
	if !tapered(q) {
		return
	}
	way := 1.0
	if side == dimension.LeftOf {
		way = -1
	}
	lo, hi, x := math.Inf(1), math.Inf(-1), endX(box, side)
	at := func(float64) float64 { return x } // where the end meets the outer face
	for _, e := range q.Cuts {
		if e.Kind != part.Crosscut || e.Normal.X()*way <= 0 {
			continue
		}
		at = func(y float64) float64 { return (e.Offset - e.Normal.Y()*y) / e.Normal.X() }
		for _, r := range q.Cuts {
			if det := e.Normal.X()*r.Normal.Y() - e.Normal.Y()*r.Normal.X(); r.Kind == part.Rip && math.Abs(det) > 1e-9 {
				y := (e.Normal.X()*r.Offset - r.Normal.X()*e.Offset) / det
				lo, hi = min(lo, y), max(hi, y)
			}
		}
	}
	if hi-lo > 0 && hi-lo < q.Blank.Width.MM()-1 {
		for _, y := range []float64{lo, hi} {
			f.sharp(q, at(y), y)
		}
		f.Linear(side, f.at(x, lo), f.at(x, hi), o.label(measure.Length(hi-lo)), q.ID)
	}
}
