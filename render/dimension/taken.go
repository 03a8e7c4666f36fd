package dimension

import "splaywright/render/draw"

// segment is a straight line that is drawn.
type segment struct{ a, b draw.Point }

// quad is the room of a text, counter-clockwise; box is the upright box round it.
type quad struct {
	p   [4]draw.Point
	box draw.Box
}

// textQuad is a text's room with m more all round.
func textQuad(t draw.Text, m float64) quad {
	p := t.Box()
	ux := draw.Point{X: p[1].X - p[0].X, Y: p[1].Y - p[0].Y}
	uy := draw.Point{X: p[3].X - p[0].X, Y: p[3].Y - p[0].Y}
	lx, ly := dist(p[0], p[1]), dist(p[0], p[3])
	if lx > 0 {
		ux = draw.Point{X: ux.X / lx * m, Y: ux.Y / lx * m}
	}
	uy = draw.Point{X: uy.X / ly * m, Y: uy.Y / ly * m}
	sx, sy := [4]float64{-1, 1, 1, -1}, [4]float64{-1, -1, 1, 1}
	q := quad{box: draw.EmptyBox()}
	for i := range p {
		q.p[i] = draw.Point{X: p[i].X + sx[i]*ux.X + sy[i]*uy.X, Y: p[i].Y + sx[i]*ux.Y + sy[i]*uy.Y}
		q.box = q.box.Add(q.p[i])
	}
	return q
}

// free tells whether a text there would touch no line and no other text.
func (k *Sketch) free(t draw.Text) bool {
	q := textQuad(t, clear)
	for i := range k.texts {
		if q.meets(&k.texts[i]) {
			return false
		}
	}
	for _, s := range k.lines {
		if q.crossed(s) {
			return false
		}
	}
	return true
}

// open tells whether a new line would cross no text.
func (k *Sketch) open(s segment) bool {
	for i := range k.texts {
		if k.texts[i].crossed(s) {
			return false
		}
	}
	return true
}

// meets tells whether two rooms overlap, by looking for a side of one that separates them.
func (q *quad) meets(r *quad) bool {
	if q.box.Min.X >= r.box.Max.X || q.box.Max.X <= r.box.Min.X || q.box.Min.Y >= r.box.Max.Y || q.box.Max.Y <= r.box.Min.Y {
		return false
	}
	return !q.separates(r.p[:]) && !r.separates(q.p[:])
}

// crossed tells whether a line runs through the room.
func (q *quad) crossed(s segment) bool {
	if min(s.a.X, s.b.X) >= q.box.Max.X || max(s.a.X, s.b.X) <= q.box.Min.X || min(s.a.Y, s.b.Y) >= q.box.Max.Y || max(s.a.Y, s.b.Y) <= q.box.Min.Y {
		return false
	}
	if q.separates([]draw.Point{s.a, s.b}) {
		return false
	}
	left, right := false, false
	for _, p := range q.p {
		c := cross(s.a, s.b, p)
		left = left || c > 0
		right = right || c < 0
	}
	return left && right
}

// separates tells whether all points lie outside one side of the room.
func (q *quad) separates(pts []draw.Point) bool {
	for i := range q.p {
		a, b := q.p[i], q.p[(i+1)&3]
		out := true
		for _, p := range pts {
			if cross(a, b, p) > 0 {
				out = false
				break
			}
		}
		if out {
			return true
		}
	}
	return false
}

func cross(a, b, p draw.Point) float64 {
	return (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X)
}
