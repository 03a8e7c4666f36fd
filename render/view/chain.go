package view

import "splaywright/render/draw"

// chain makes lines of the pieces that were kept. Pieces of one curve that follow each other become
// one line of many points.
func (w *work) chain() []Line {
	lines, points := w.count()
	out := make([]Line, 0, lines)
	room := make([]draw.Point, 0, points)
	w.curves = w.curves[:0]
	var last *piece
	for i := range w.pieces {
		if !w.joining.kept[i] {
			continue
		}
		p := &w.pieces[i]
		end := draw.Point{X: p.x1, Y: p.y1}
		if last != nil && w.follows(last, p) {
			l := &out[len(out)-1]
			l.Points = append(l.Points, end)
			room = room[:len(room)+1]
		} else {
			at := len(room)
			room = append(room, draw.Point{X: p.x0, Y: p.y0}, end)
			out = append(out, Line{Kind: p.kind, Points: room[at:], Part: w.s.parts[w.s.edges[p.edge].part]})
			w.curves = append(w.curves, w.s.edges[p.edge].curve)
		}
		last = p
	}
	for i := range out {
		out[i].Points = out[i].Points[:len(out[i].Points):len(out[i].Points)]
		if w.seenOnly || len(out[i].Points) < 3 {
			continue
		}
		out[i].Arc = w.s.arcOf(w.curves[i], w.direction, out[i].Points)
	}
	return out
}

// count is how many lines and points the chains will have.
func (w *work) count() (lines, points int) {
	var last *piece
	for i := range w.pieces {
		if !w.joining.kept[i] {
			continue
		}
		p := &w.pieces[i]
		if last == nil || !w.follows(last, p) {
			lines++
			points++
		}
		points++
		last = p
	}
	return lines, points
}

// follows tells whether b runs on from a along one curve.
func (w *work) follows(a, b *piece) bool {
	c := w.s.edges[a.edge].curve
	return c >= 0 && c == w.s.edges[b.edge].curve && a.kind == b.kind &&
		abs(a.x1-b.x0) <= sliver && abs(a.y1-b.y0) <= sliver
}
