package sheet

import (
	"slices"

	"splaywright/render/draw"
	"splaywright/render/view"
)

// A wedge that spreads a tenon lies over wood that gives way to it: what a cut shows of that wood ends at the wedge.

// overlap: wood that lies over other wood by more than this, mm of the piece, does so on purpose.
const overlap = 0.05

// lyingOver gives for each cut face the loops of the later ones that lie over it.
func lyingOver(faces []view.CutFace) [][][]draw.Point {
	out := make([][][]draw.Point, len(faces))
	for i, under := range faces {
		for _, over := range faces[i+1:] {
			if liesOver(over, under) {
				out[i] = append(out[i], over.Loops...)
			}
		}
	}
	return out
}

// liesOver tells whether the middle of a side of one face lies well inside another.
func liesOver(over, under view.CutFace) bool {
	if !loopsBox(over.Loops).Meets(loopsBox(under.Loops)) {
		return false
	}
	face := frontFace{box: loopsBox(under.Loops), loops: under.Loops}
	for _, l := range over.Loops {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			mid := draw.Point{X: (p.X + q.X) / 2, Y: (p.Y + q.Y) / 2}
			if face.holds(mid) && roomAt(mid, under.Loops, nil, draw.EmptyBox()) > overlap {
				return true
			}
		}
	}
	return false
}

// yielding is a section in which lines of wood that lies under other wood end there.
func yielding(s *view.Section) *view.Section {
	over := lyingOver(s.Faces)
	if !slices.ContainsFunc(over, func(l [][]draw.Point) bool { return len(l) > 0 }) {
		return s
	}
	out, pic := *s, *s.Picture
	pic.Lines = nil
	for _, l := range s.Lines {
		i := slices.IndexFunc(s.Faces, func(c view.CutFace) bool { return c.Part == l.Part })
		if i < 0 || len(over[i]) == 0 {
			pic.Lines = append(pic.Lines, l)
			continue
		}
		for k := range l.Points[1:] {
			for _, c := range uncovered(l.Points[k], l.Points[k+1], over[i], overlap) {
				pic.Lines = append(pic.Lines, view.Line{Kind: l.Kind, Points: c[:], Part: l.Part})
			}
		}
	}
	out.Picture = &pic
	return &out
}

// beside is what of lines, mm of paper, lies outside loops, mm of the piece.
func (f *figure) beside(lines [][2]draw.Point, loops [][]draw.Point) [][2]draw.Point {
	var scaled [][]draw.Point
	for _, l := range loops {
		scaled = append(scaled, f.scaled(l))
	}
	var out [][2]draw.Point
	for _, l := range lines {
		out = append(out, uncovered(l[0], l[1], scaled, 0)...)
	}
	return out
}

// uncovered is what of a line lies outside loops, or runs inside no farther from them than a margin: along an end that both
// faces have.
func uncovered(a, b draw.Point, loops [][]draw.Point, margin float64) [][2]draw.Point {
	at := func(t float64) draw.Point { return draw.Point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)} }
	ts := []float64{0, 1}
	for _, l := range loops {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			dx, dy := q.X-p.X, q.Y-p.Y
			across := (b.X-a.X)*dy - (b.Y-a.Y)*dx
			if across == 0 {
				continue
			}
			t, u := ((p.X-a.X)*dy-(p.Y-a.Y)*dx)/across, ((p.X-a.X)*(b.Y-a.Y)-(p.Y-a.Y)*(b.X-a.X))/across
			if t > 0 && t < 1 && u >= 0 && u <= 1 {
				ts = append(ts, t)
			}
		}
	}
	slices.Sort(ts)
	face := frontFace{box: loopsBox(loops), loops: loops}
	var out [][2]draw.Point
	for i := range ts[1:] {
		from, to := ts[i], ts[i+1]
		mid := at((from + to) / 2)
		if to > from && !(face.holds(mid) && roomAt(mid, loops, nil, draw.EmptyBox()) > margin) {
			if n := len(out); n > 0 && out[n-1][1] == at(from) {
				out[n-1][1] = at(to)
				continue
			}
			out = append(out, [2]draw.Point{at(from), at(to)})
		}
	}
	return out
}
