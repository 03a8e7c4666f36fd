package draw

import "math"

// MoveTo, LineTo and CurveTo are the steps that build a path.
func MoveTo(p Point) Seg { return Seg{Kind: Move, P: [3]Point{2: p}} }

// LineTo is a straight step to p.
func LineTo(p Point) Seg { return Seg{Kind: Line, P: [3]Point{2: p}} }

// CurveTo is a cubic Bézier with handles a and b to p.
func CurveTo(a, b, p Point) Seg { return Seg{Kind: Curve, P: [3]Point{a, b, p}} }

// Polyline is an open path through the points.
func Polyline(pts []Point) []Seg {
	segs := make([]Seg, len(pts))
	for i, p := range pts {
		segs[i] = LineTo(p)
	}
	if len(segs) > 0 {
		segs[0].Kind = Move
	}
	return segs
}

// Polygon is the closed path through the points.
func Polygon(pts []Point) []Seg {
	return append(Polyline(pts), Seg{Kind: Close})
}

// Rect is the closed path along the sides of the box.
func Rect(b Box) []Seg {
	return Polygon([]Point{b.Min, {b.Max.X, b.Min.Y}, b.Max, {b.Min.X, b.Max.Y}})
}

// Circle is the closed path round c.
func Circle(c Point, r float64) []Seg {
	return append(ArcPath(c, r, 0, 2*math.Pi), Seg{Kind: Close})
}

// ArcPath is the arc round c from angle a to angle b, radians, counter-clockwise when b > a.
func ArcPath(c Point, r, a, b float64) []Seg {
	n := int(math.Ceil(math.Abs(b-a)/(math.Pi/2) - 1e-9))
	n = max(n, 1)
	step := (b - a) / float64(n)
	h := r * 4 / 3 * math.Tan(step/4)
	at := func(t float64) (p, along Point) {
		sin, cos := math.Sincos(t)
		return Point{c.X + r*cos, c.Y + r*sin}, Point{-sin * h, cos * h}
	}
	p, d := at(a)
	segs := []Seg{MoveTo(p)}
	for i := 1; i <= n; i++ {
		q, e := at(a + step*float64(i))
		segs = append(segs, CurveTo(Point{p.X + d.X, p.Y + d.Y}, Point{q.X - e.X, q.Y - e.Y}, q))
		p, d = q, e
	}
	return segs
}

// ArrowAngle is the whole angle of an arrowhead's point, degrees: slim, within the 15 to 30 of
// ISO 129-1.
const ArrowAngle = 16.0

// Arrow is a closed arrowhead of that length with its tip at tip, pointing along dir (any length).
func Arrow(tip, dir Point, length float64) []Seg {
	n := math.Hypot(dir.X, dir.Y)
	u := Point{dir.X / n, dir.Y / n}
	w := length * math.Tan(ArrowAngle/2*math.Pi/180)
	back := Point{tip.X - u.X*length, tip.Y - u.Y*length}
	return Polygon([]Point{tip, {back.X - u.Y*w, back.Y + u.X*w}, {back.X + u.Y*w, back.Y - u.X*w}})
}

// Flatten gives a path's runs of straight steps; curves are cut so finely that no chord is
// further than tol, mm, from its curve. Closed runs end where they began.
func Flatten(segs []Seg, tol float64) [][]Point {
	var r Chords
	r.Cut(segs, tol)
	var out [][]Point
	for i := range r.Len() {
		out = append(out, r.At(i))
	}
	return out
}

// Chords are a path's runs of straight steps. They are cut again and again without new room.
type Chords struct {
	Points []Point // of all runs, one after the other
	ends   []int
}

// Cut takes the runs of a path as Flatten does.
func (r *Chords) Cut(segs []Seg, tol float64) {
	r.Points, r.ends = r.Points[:0], r.ends[:0]
	start := 0
	flush := func() {
		if len(r.Points)-start > 1 {
			r.ends = append(r.ends, len(r.Points))
		}
		start = r.whole()
		r.Points = r.Points[:start]
	}
	for _, s := range segs {
		switch {
		case s.Kind == Move:
			flush()
			r.Points = append(r.Points, s.P[2])
		case s.Kind == Line || s.Kind == Curve && len(r.Points) == start:
			r.Points = append(r.Points, s.P[2])
		case s.Kind == Curve:
			r.Points = appendCurve(r.Points, s.P, tol)
		case s.Kind == Close:
			if len(r.Points) > start {
				r.Points = append(r.Points, r.Points[start])
			}
			flush()
		}
	}
	flush()
}

// whole is how many points the finished runs have.
func (r *Chords) whole() int {
	if len(r.ends) == 0 {
		return 0
	}
	return r.ends[len(r.ends)-1]
}

// Len is how many runs there are.
func (r *Chords) Len() int { return len(r.ends) }

// At is one of the runs.
func (r *Chords) At(i int) []Point {
	from := 0
	if i > 0 {
		from = r.ends[i-1]
	}
	return r.Points[from:r.ends[i]:r.ends[i]]
}

// appendCurve cuts a Bézier into equal steps; the bound on the chord error is that of the second
// difference of its handles.
func appendCurve(run []Point, p [3]Point, tol float64) []Point {
	a := run[len(run)-1]
	dd := max(math.Hypot(a.X-2*p[0].X+p[1].X, a.Y-2*p[0].Y+p[1].Y), math.Hypot(p[0].X-2*p[1].X+p[2].X, p[0].Y-2*p[1].Y+p[2].Y))
	n := max(1, int(math.Ceil(math.Sqrt(0.75*dd/tol))))
	for i := 1; i <= n; i++ {
		t := float64(i) / float64(n)
		s := 1 - t
		b0, b1, b2, b3 := s*s*s, 3*s*s*t, 3*s*t*t, t*t*t
		run = append(run, Point{b0*a.X + b1*p[0].X + b2*p[1].X + b3*p[2].X, b0*a.Y + b1*p[0].Y + b2*p[1].Y + b3*p[2].Y})
	}
	return run
}

// Retext changes the texts of a page in place.
func (p *Page) Retext(change func(string) string) {
	for i, it := range p.Items {
		if t, is := it.(Text); is {
			t.Text = change(t.Text)
			p.Items[i] = t
		}
	}
}
