package dimension

import (
	"math"
	"slices"

	"splaywright/render/draw"
)

// linear is a straight dimension that was asked for. u runs along the dimension line.
type linear struct {
	a, b       draw.Point // a has the smaller u
	label, ref string
}

// laid is a straight dimension's line as placed on a level: from lo to hi with its extensions.
type laid struct{ lo, hi float64 }

// Linear asks for the distance between two points, measured along that side of the view.
// The same distance asked for twice is drawn once.
func (k *Sketch) Linear(side Side, a, b draw.Point, label, ref string) {
	if side.along(a) > side.along(b) {
		a, b = b, a
	}
	for _, l := range k.linears[side] {
		if l.label == label && math.Abs(side.along(l.a)-side.along(a)) < same && math.Abs(side.along(l.b)-side.along(b)) < same {
			return
		}
	}
	k.linears[side] = append(k.linears[side], linear{a, b, label, ref})
}

// same: dimensions nearer to each other than this, mm on paper, are one and are drawn once.
const same = 0.05

// along is the coordinate that runs along the side's dimension lines.
func (s Side) along(p draw.Point) float64 {
	if s.upright() {
		return p.Y
	}
	return p.X
}

// at is the point at u along a dimension line that stands v outward of the outline.
func (k *Sketch) at(s Side, u, v float64) draw.Point {
	switch s {
	case Below:
		return draw.Point{X: u, Y: k.outline.Min.Y - v}
	case Above:
		return draw.Point{X: u, Y: k.outline.Max.Y + v}
	case LeftOf:
		return draw.Point{X: k.outline.Min.X - v, Y: u}
	}
	return draw.Point{X: k.outline.Max.X + v, Y: u}
}

// layLinears places the dimensions of one side, the short ones nearest to the outline.
func (k *Sketch) layLinears(s Side) {
	list := k.linears[s]
	slices.SortStableFunc(list, func(p, q linear) int {
		d := (s.along(p.b) - s.along(p.a)) - (s.along(q.b) - s.along(q.a))
		if math.Abs(d) < 1e-6 {
			return 0
		}
		return int(math.Copysign(1, d))
	})
	for i, l := range list {
		coming := s.ends(list[i+1:])
		if !k.layOne(s, l, coming) && !k.layOne(s, l, nil) && !k.layOne(s.Opposite(), l, nil) {
			k.force(s, l)
		}
	}
}

// ends is where the extension lines of dimensions still to come will run.
func (s Side) ends(list []linear) []float64 {
	var us []float64
	for _, l := range list {
		us = append(us, s.along(l.a), s.along(l.b))
	}
	return us
}

// Opposite is the side across the view.
func (s Side) Opposite() Side {
	return [...]Side{Below: Above, Above: Below, LeftOf: RightOf, RightOf: LeftOf}[s]
}

// layOne finds the lowest level of a side with room. A new outermost level has none of the others'
// lines and values; only extension lines could be in the way there, and then no level will do. The
// value also stays clear of the extension lines to come.
func (k *Sketch) layOne(s Side, l linear, coming []float64) bool {
	forms := k.forms(s, l)
	forms = slices.DeleteFunc(forms, func(f form) bool {
		half := k.width(l.label)/2 + clear
		return slices.ContainsFunc(coming, func(u float64) bool { return math.Abs(u-f.text) < half })
	})
	for n := range len(k.levels[s]) + 3 {
		for _, f := range forms {
			v := k.base[s] + float64(n)*k.Style.Step
			if (n >= len(k.levels[s]) || hasRoom(k.levels[s][n], f.laid)) && k.fits(s, l, f, v) {
				k.occupy(s, n, f.laid)
				k.drawLinear(s, l, f, v)
				return true
			}
		}
	}
	return false
}

// force draws a dimension that found no room near its view: it is never left out. It goes far out,
// past what other sides have put there; failing that its value still stands free if it can, though
// its lines then cross other values.
func (k *Sketch) force(s Side, l linear) {
	forms := k.forms(s, l)
	for _, fit := range []func(form, float64) bool{
		func(f form, v float64) bool { return k.fits(s, l, f, v) },
		func(f form, v float64) bool { return k.free(k.value(s, f, v, l)) },
	} {
		for n := len(k.levels[s]); n < len(k.levels[s])+10; n++ {
			for _, f := range forms {
				if v := k.base[s] + float64(n)*k.Style.Step; fit(f, v) {
					k.occupy(s, n, f.laid)
					k.drawLinear(s, l, f, v)
					return
				}
			}
		}
	}
	n := len(k.levels[s])
	k.occupy(s, n, forms[0].laid)
	k.drawLinear(s, l, forms[0], k.base[s]+float64(n)*k.Style.Step)
}

func (k *Sketch) occupy(s Side, n int, l laid) {
	for len(k.levels[s]) <= n {
		k.levels[s] = append(k.levels[s], nil)
	}
	k.levels[s][n] = append(k.levels[s][n], l)
}

func hasRoom(level []laid, l laid) bool {
	for _, o := range level {
		if l.lo < o.hi-1e-6 && o.lo < l.hi-1e-6 {
			return false
		}
	}
	return true
}

// form is one way to draw a dimension: where the value is and how far the line reaches.
type form struct {
	laid
	text    float64 // u of the middle of the value
	outside bool    // arrowheads point inward from outside
}

// forms lists the ways in order of liking: the value between the arrowheads where it fits, else
// beyond one end of the line, farther out when something stands there.
func (k *Sketch) forms(s Side, l linear) []form {
	lo, hi := s.along(l.a), s.along(l.b)
	w := k.width(l.label)
	arrow := k.Style.Arrow
	out := hi-lo < 3*arrow
	tail := 0.0
	if out {
		tail = 2 * arrow
	}
	var list []form
	if w+2*clear <= hi-lo {
		list = append(list, form{laid{lo - tail, hi + tail}, (lo + hi) / 2, out})
	}
	for _, shift := range []float64{0, 6, 12, 20, 30} {
		reach := 1.6*arrow + w + clear + shift
		list = append(list,
			form{laid{lo - 2*arrow, hi + reach}, hi + reach - w/2, true},
			form{laid{lo - reach, hi + 2*arrow}, lo - reach + w/2, true})
	}
	return list
}

func (k *Sketch) value(s Side, f form, v float64, l linear) draw.Text {
	p := k.at(s, f.text, v)
	if s.upright() {
		return k.text(draw.Point{X: p.X - lift, Y: p.Y}, 90, draw.Centre, l.label, l.ref)
	}
	return k.text(draw.Point{X: p.X, Y: p.Y + lift}, 0, draw.Centre, l.label, l.ref)
}

// strokes are the two extension lines and the dimension line.
func (k *Sketch) strokes(s Side, l linear, f form, v float64) [3]segment {
	ext := func(p draw.Point) segment {
		end := k.at(s, s.along(p), v+beyond)
		n := dist(p, end)
		return segment{draw.Point{X: p.X + (end.X-p.X)*offStart/n, Y: p.Y + (end.Y-p.Y)*offStart/n}, end}
	}
	return [3]segment{ext(l.a), ext(l.b), {k.at(s, f.lo, v), k.at(s, f.hi, v)}}
}

func (k *Sketch) fits(s Side, l linear, f form, v float64) bool {
	for _, g := range k.strokes(s, l, f, v) {
		if !k.open(g) {
			return false
		}
	}
	return k.free(k.value(s, f, v, l))
}

func (k *Sketch) drawLinear(s Side, l linear, f form, v float64) {
	st := k.strokes(s, l, f, v)
	for _, g := range st {
		k.lines = append(k.lines, g)
		k.put(k.thin(g.a, g.b), l.ref)
	}
	a, b := k.at(s, s.along(l.a), v), k.at(s, s.along(l.b), v)
	out, in := draw.Point{X: a.X - b.X, Y: a.Y - b.Y}, draw.Point{X: b.X - a.X, Y: b.Y - a.Y}
	if f.outside {
		out, in = in, out
	}
	if dist(a, b) > 1e-9 {
		k.putArrow(a, out, l.ref)
		k.putArrow(b, in, l.ref)
	}
	k.putText(k.value(s, f, v, l))
}
