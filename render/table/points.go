package table

import (
	"math"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Points is how long each part with slanting ends is along the grain: from long point to long
// point, from short point to short point, along the middle of both faces, and between the
// shoulders where its ends are housed or tenoned.
func Points(p *form.Piece, style measure.Style) Table {
	s := newSheet("points", "Long and short points", style)
	s.words("Part")
	s.lengths("along the grain, from long point to long point", "Long point")
	s.words("On")
	s.lengths("along the grain, from short point to short point", "Short point")
	s.words("On")
	s.lengths("along the grain, on the middle line of the outer face", "Middle, outer face")
	s.lengths("along the grain, on the middle line of the inner face", "Middle, inner face")
	s.lengths("along the grain, on the middle line of the outer face, from shoulder to shoulder", "Between shoulders")
	s.perPart(p, func(q *part.Part) [][]Cell {
		long, short, ok := points(q)
		if !ok || q.Slip != "" || within(long.length, short.length, sameLength) {
			return nil // its ends are square, or slant alike, or it is sawn off when it is in
		}
		return [][]Cell{{
			s.length(long.length), word(long.on), s.length(short.length), word(short.on),
			s.length(q.FaceLength.Outer), s.length(q.FaceLength.Inner), s.shoulders(p, q),
		}}
	})
	if len(s.Rows) > 0 {
		s.note("Lengths run along the grain on the named line of the part, from cut to cut: a corner that a joint takes away counts as if it were there.")
	}
	return s.done()
}

// arris is the length of a part along one of its four long arrises.
type arris struct {
	on     string
	length measure.Length
}

// points gives the longest and the shortest arris. Where both edges of a face, or both faces at an
// edge, are as long, it is named by what they share. ok is false where a part has not two ends and
// two edges.
func points(q *part.Part) (long, short arris, ok bool) {
	var ends, edges []wall
	faces := map[string]wall{}
	for _, w := range wallsOf(q) {
		switch w.rank {
		case 0:
			ends = append(ends, w)
		case 1:
			edges = append(edges, w)
		default:
			faces[w.name] = w
		}
	}
	if len(ends) != 2 || len(edges) != 2 {
		return long, short, false
	}
	var all []arris
	for _, face := range []string{"outer face", "inner face"} {
		for _, edge := range edges {
			a, met := meet(faces[face], edge, ends[0])
			b, also := meet(faces[face], edge, ends[1])
			if !met || !also {
				return long, short, false
			}
			all = append(all, arris{face + ", " + edge.name, measure.Length(math.Abs(b[0] - a[0]))})
		}
	}
	long, short = all[0], all[0]
	for _, a := range all {
		if a.length > long.length+sameLength {
			long = a
		}
		if a.length < short.length-sameLength {
			short = a
		}
	}
	long.on, short.on = shared(all, long), shared(all, short)
	return long, short, true
}

// shared names an arris, or the face or edge that has no other length on it.
func shared(all []arris, a arris) string {
	alike := func(i int) bool { return within(all[i].length, a.length, sameLength) }
	for _, pair := range [][2]int{{0, 1}, {2, 3}} { // the two edges of a face
		if alike(pair[0]) && alike(pair[1]) {
			face, _, _ := strings.Cut(all[pair[0]].on, ", ")
			return face
		}
	}
	for _, pair := range [][2]int{{0, 2}, {1, 3}} { // the two faces at an edge
		if alike(pair[0]) && alike(pair[1]) {
			_, edge, _ := strings.Cut(all[pair[0]].on, ", ")
			return edge
		}
	}
	return a.on
}

// shoulders is the length of a housed part between the boards that its ends are let into.
func (s *sheet) shoulders(p *form.Piece, q *part.Part) Cell {
	rest, ends := q.FaceLength.Outer, 0
	for _, j := range p.Joints {
		switch {
		case j.PinBoard == q.ID && j.Tenon != nil:
			rest -= j.Tenon.Length
			ends++
		case j.PinBoard == q.ID && j.PinBaseline.Outer > 0 && len(j.Tails) == 0:
			rest -= j.PinBaseline.Outer
			ends++
		}
	}
	if ends != 2 {
		return Cell{}
	}
	return s.joint(rest)
}
