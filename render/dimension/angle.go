package dimension

import (
	"math"

	"splaywright/render/draw"
)

// angle is an angular dimension that was asked for.
type angle struct {
	vertex     draw.Point
	from, to   float64 // directions of the legs, radians, from < to
	have       [2]float64
	radii      []float64
	label, ref string
	before     bool // rather before the first leg than past the second
}

// Angle asks for the angle at vertex between the directions from and to (radians,
// counter-clockwise). have is how far along each leg the view already draws a line; the rest is
// drawn as an extension line. The arc takes the first of the radii, mm, that leaves the value free.
func (k *Sketch) Angle(vertex draw.Point, from, to float64, have [2]float64, radii []float64, label, ref string) {
	k.angles = append(k.angles, angle{vertex, from, to, have, radii, label, ref, false})
}

// AngleBefore is Angle with a value that, without room between the legs, stands rather before the first leg than past the second.
func (k *Sketch) AngleBefore(vertex draw.Point, from, to float64, have [2]float64, radii []float64, label, ref string) {
	k.angles = append(k.angles, angle{vertex, from, to, have, radii, label, ref, true})
}

func (k *Sketch) layAngle(a angle) {
	places := [3]int{between, pastTo, pastFrom}
	if a.before {
		places = [3]int{between, pastFrom, pastTo}
	}
	for _, place := range places {
		for _, r := range a.radii {
			if p, ok := k.angleForm(a, r, place); ok && k.free(p.text) && k.openArc(a.vertex, r, p.lo, p.hi) && k.openLegs(a, r, p) {
				k.drawAngle(a, r, p)
				return
			}
		}
	}
	k.leaders = append(k.leaders, leader{at: add(a.vertex, polar(a.radii[0], (a.from+a.to)/2)), label: a.label, ref: a.ref})
}

// arcForm is one way to draw an angle: the arc from lo to hi and where its value is.
type arcForm struct {
	lo, hi  float64
	outside bool
	text    draw.Text
}

// Places of an angle's value: between the legs, past the second leg, past the first.
const (
	between = iota
	pastTo
	pastFrom
)

// angleForm gives the arc and the value in one of the places; false when the legs are too close for it.
func (k *Sketch) angleForm(a angle, r float64, place int) (arcForm, bool) {
	tail := 2.2 * k.Style.Arrow / r
	switch place {
	case pastTo:
		return arcForm{a.from - tail, a.to + tail, true, k.past(a, r, a.to+tail, 1)}, true
	case pastFrom:
		return arcForm{a.from - tail, a.to + tail, true, k.past(a, r, a.from-tail, -1)}, true
	}
	if r*(a.to-a.from) < 3*k.Style.Arrow {
		return arcForm{}, false
	}
	w, h, mid := k.width(a.label), k.Style.Text, (a.from+a.to)/2
	c := add(a.vertex, polar(r+lift+(w*math.Abs(math.Cos(mid))+h*math.Abs(math.Sin(mid)))/2, mid))
	return arcForm{a.from, a.to, false, k.text(draw.Point{X: c.X, Y: c.Y - h/2}, 0, draw.Centre, a.label, a.ref)}, true
}

// past is the value at the end of the arc, onward along it: dir is 1 counter-clockwise, -1 clockwise.
func (k *Sketch) past(a angle, r, end, dir float64) draw.Text {
	h := k.Style.Text
	p, d := add(a.vertex, polar(r, end)), polar(1, end+dir*math.Pi/2)
	at := draw.Point{X: p.X + 0.8*d.X, Y: p.Y + d.Y*(0.8+h/2) - h/2}
	align := draw.Centre
	if d.X > 0.3 {
		align = draw.Left
	} else if d.X < -0.3 {
		align = draw.Right
	}
	return k.text(at, 0, align, a.label, a.ref)
}

func (k *Sketch) openArc(c draw.Point, r, lo, hi float64) bool {
	for _, g := range arcSegments(c, r, lo, hi) {
		if !k.open(g) {
			return false
		}
	}
	return true
}

// legs are the extension lines that an arc of radius r needs.
func (a angle) legs(r float64) []segment {
	var list []segment
	for i, dir := range []float64{a.from, a.to} {
		if need := r + beyond; need > a.have[i] {
			list = append(list, segment{add(a.vertex, polar(a.have[i]+offStart, dir)), add(a.vertex, polar(need, dir))})
		}
	}
	return list
}

// openLegs tells whether the extension lines cross no other text, and neither they nor the arc the
// value itself.
func (k *Sketch) openLegs(a angle, r float64, f arcForm) bool {
	q := textQuad(f.text, 0.2)
	for _, g := range arcSegments(a.vertex, r, f.lo, f.hi) {
		if q.crossed(g) {
			return false
		}
	}
	for _, g := range a.legs(r) {
		if !k.open(g) || q.crossed(g) {
			return false
		}
	}
	return true
}

func arcSegments(c draw.Point, r, lo, hi float64) []segment {
	const n = 8
	list := make([]segment, n)
	for i := range list {
		t := func(j int) draw.Point { return add(c, polar(r, lo+(hi-lo)*float64(j)/n)) }
		list[i] = segment{t(i), t(i + 1)}
	}
	return list
}

func (k *Sketch) drawAngle(a angle, r float64, f arcForm) {
	for _, g := range a.legs(r) {
		k.lines = append(k.lines, g)
		k.put(k.thin(g.a, g.b), a.ref)
	}
	k.lines = append(k.lines, arcSegments(a.vertex, r, f.lo, f.hi)...)
	k.put(draw.ArcPath(a.vertex, r, f.lo, f.hi), a.ref)
	lo, hi := add(a.vertex, polar(r, a.from)), add(a.vertex, polar(r, a.to))
	half := k.Style.Arrow / r / 2 // the arrow lies along the chord of its own length
	sign := 1.0
	if f.outside {
		sign = -1
	}
	k.putArrow(lo, polar(sign, a.from-math.Pi/2+sign*half), a.ref)
	k.putArrow(hi, polar(sign, a.to+math.Pi/2-sign*half), a.ref)
	k.putText(f.text)
}
