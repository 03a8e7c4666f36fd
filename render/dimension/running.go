package dimension

import (
	"math"
	"slices"

	"splaywright/render/draw"
)

// Mark is one place of a running dimension.
type Mark struct {
	At    draw.Point
	Label string
	Ref   string
}

type running struct {
	origin Mark
	marks  []Mark
}

// Running asks for a row of distances from one edge: a small ring at the origin, an arrowhead at
// each mark, the value at the end of its extension line and along it.
func (k *Sketch) Running(side Side, origin Mark, marks []Mark) {
	k.running[side] = append(k.running[side], running{origin, slices.Clone(marks)})
}

// pitch is the least distance between the values of a row, mm.
func (k *Sketch) pitch() float64 { return k.Style.Text*(draw.Ascent+draw.Descent) + 0.2 }

// closePitch is that of a row whose values stand in two columns, by turns: the lines to the far column run between the
// values of the near one.
func (k *Sketch) closePitch() float64 { return k.pitch()/2 + 0.5 }

// RowLength is the least length, mm, on which that many values of a row have room.
func (k *Sketch) RowLength(values int) float64 { return float64(values) * k.closePitch() }

// ringRadius is that of the ring at the origin, mm.
const ringRadius = 0.8

// layRunning places the rows of one side, each outside the one before, and gives where the first
// straight dimension may stand.
func (k *Sketch) layRunning(s Side) float64 {
	v := k.Style.First
	for _, r := range k.running[s] {
		v += k.layRow(s, r, v) + 3
	}
	return v
}

// layRow places one row with its line at v and gives how far its values reach beyond the line.
func (k *Sketch) layRow(s Side, r running, v float64) float64 {
	all := append([]Mark{r.origin}, r.marks...)
	slices.SortStableFunc(all, func(a, b Mark) int {
		if d := s.along(a.At) - s.along(b.At); d < 0 {
			return -1
		} else if d > 0 {
			return 1
		}
		return 0
	})
	us := make([]float64, len(all))
	for i, m := range all {
		us[i] = s.along(m.At)
	}
	room := spread(us, k.pitch())
	far := 0.0 // how far beyond the near column the other stands; 0 = there is one alone
	if moved(us, room) > k.pitch() {
		room = spread(us, k.closePitch())
		for i := 0; i < len(all); i += 2 {
			far = max(far, k.width(all[i].Label)+1.6)
		}
	}
	o := s.along(r.origin.At)
	deep, dots := 0.0, k.crowded(us)
	for i, m := range all {
		beyond := far * float64(i%2)
		k.runningMark(s, m, us[i], rowPlace{room[i], v, o, beyond, dots})
		deep = max(deep, beyond+k.width(m.Label))
	}
	a, b := k.at(s, us[0], v), k.at(s, us[len(us)-1], v)
	k.lines = append(k.lines, segment{a, b})
	k.put(k.thin(a, b), r.origin.Ref)
	return jog + stub + deep + 1
}

// moved is the farthest that a value stands from its place.
func moved(want, got []float64) float64 {
	far := 0.0
	for i := range want {
		far = max(far, math.Abs(got[i]-want[i]))
	}
	return far
}

// rowPlace is where a mark of a row stands: u of its value, the row's level and its origin's u, how much farther out
// its value is than those nearest, and whether dots take the place of arrowheads.
type rowPlace struct {
	value, level, origin, beyond float64
	dots                         bool
}

// crowded tells whether arrowheads of sorted marks would run into one another; dots then take their
// place (ISO 129-1).
func (k *Sketch) crowded(us []float64) bool {
	for i := 1; i < len(us); i++ {
		if us[i]-us[i-1] < 1.1*k.Style.Arrow {
			return true
		}
	}
	return false
}

// dotRadius is that of a dot in place of an arrowhead, mm.
const dotRadius = 0.45

// An extension line runs straight past its row for stub, then jogs to where its value has room.
const (
	jog  = 3.0
	stub = 1.0
)

func (k *Sketch) runningMark(s Side, m Mark, u float64, p rowPlace) {
	v := p.level
	on := k.at(s, u, v)
	n := dist(m.At, on)
	start := m.At
	if n > offStart {
		start = draw.Point{X: m.At.X + (on.X-m.At.X)*offStart/n, Y: m.At.Y + (on.Y-m.At.Y)*offStart/n}
	}
	line := []draw.Point{start, k.at(s, u, v+stub), k.at(s, p.value, v+stub+jog)}
	if p.beyond > 0 {
		line = append(line, k.at(s, p.value, v+stub+jog+p.beyond))
	}
	for i := 1; i < len(line); i++ {
		k.lines = append(k.lines, segment{line[i-1], line[i]})
	}
	k.put(k.thin(line...), m.Ref)
	switch {
	case u == p.origin:
		k.lines = append(k.lines, arcSegments(on, ringRadius, 0, 2*math.Pi)...)
		k.put(draw.Circle(on, ringRadius), m.Ref)
	case p.dots:
		k.Items = append(k.Items, draw.Path{Segs: draw.Circle(on, dotRadius), Filled: true, Fill: k.Style.Ink, Layer: "dimension", Ref: m.Ref})
	default:
		from := k.at(s, p.origin, v)
		k.putArrow(on, draw.Point{X: on.X - from.X, Y: on.Y - from.Y}, m.Ref)
	}
	k.putText(k.runningValue(s, m, k.at(s, p.value, v+stub+jog+p.beyond+0.6)))
}

// runningValue stands on the end of its extension line, the middle of its capitals on the line.
func (k *Sketch) runningValue(s Side, m Mark, p draw.Point) draw.Text {
	half := k.Style.Text / 2
	switch s {
	case Below:
		return k.text(draw.Point{X: p.X + half, Y: p.Y}, 90, draw.Right, m.Label, m.Ref)
	case Above:
		return k.text(draw.Point{X: p.X + half, Y: p.Y}, 90, draw.Left, m.Label, m.Ref)
	case LeftOf:
		return k.text(draw.Point{X: p.X, Y: p.Y - half}, 0, draw.Right, m.Label, m.Ref)
	}
	return k.text(draw.Point{X: p.X, Y: p.Y - half}, 0, draw.Left, m.Label, m.Ref)
}

// spread moves sorted places apart to at least gap, each as little as can be: places that would
// touch form a group, which is centred on where its members wanted to be.
func spread(want []float64, gap float64) []float64 {
	type group struct {
		sum float64 // of want less its own offset in the group
		n   int
	}
	var groups []group
	for _, w := range want {
		groups = append(groups, group{w, 1})
		for len(groups) > 1 {
			p, q := groups[len(groups)-2], groups[len(groups)-1]
			if p.sum/float64(p.n)+gap*float64(p.n) <= q.sum/float64(q.n) {
				break
			}
			merged := group{p.sum + q.sum - gap*float64(p.n*q.n), p.n + q.n}
			groups = append(groups[:len(groups)-2], merged)
		}
	}
	var out []float64
	for _, g := range groups {
		for i := range g.n {
			out = append(out, g.sum/float64(g.n)+gap*float64(i))
		}
	}
	return out
}
