package view

import (
	"fmt"
	"math"
	"math/rand/v2"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/render/draw"
)

// witness tells what is seen by casting rays in the world at single points against every face: slow, and
// by a way of its own.
type witness struct {
	s *Scene
	d Direction
	// few is how many edges and how many lines it looks at, drawn by lot; 0 = all.
	few int
}

// skips tells whether the lot leaves out one of n.
func (w witness) skips(n int, r *rand.Rand) bool { return w.few > 0 && r.IntN(n) >= w.few }

// kind is how edge e shows at t, and false where it is not drawn.
func (w witness) kind(e *edge, t float64) (Kind, bool) {
	fa, fb := w.facing(e.a), w.facing(e.b)
	if e.smooth && (fa > 0) == (fb > 0) {
		if e.curve < 0 || w.hidden(e, t, aside) {
			return 0, false
		}
		return Smooth, true
	}
	if w.hidden(e, t, aside) {
		return Hidden, true
	}
	return Visible, true
}

func (w witness) facing(f int32) int {
	switch c := w.s.faces[f].normal.Dot(w.d.Toward); {
	case c > edgeOn:
		return 1
	case c < -edgeOn:
		return -1
	}
	return 0
}

func (w witness) at(e *edge, t float64) mgl64.Vec3 {
	a, b := w.s.verts[e.from], w.s.verts[e.to]
	return a.Add(b.Sub(a).Mul(t))
}

// aside is how far beside an edge rays are cast, mm.
const aside = 3e-5

// hidden casts a ray on each side of the edge, so far from it.
func (w witness) hidden(e *edge, t, far float64) bool {
	p := w.at(e, t)
	step := w.s.verts[e.to].Sub(w.s.verts[e.from]).Cross(w.d.Toward).Normalize().Mul(far)
	return w.blocked(p, p.Add(step)) && w.blocked(p, p.Sub(step))
}

// blocked tells whether a ray from q to the viewer meets a front face that p lies behind.
func (w witness) blocked(p, q mgl64.Vec3) bool {
	for i := range w.s.faces {
		f := &w.s.faces[i]
		if w.facing(int32(i)) <= 0 || f.normal.Dot(p) > f.d-Touching {
			continue
		}
		hit := q.Add(w.d.Toward.Mul((f.d - f.normal.Dot(q)) / f.normal.Dot(w.d.Toward)))
		if w.holds(f, hit) {
			return true
		}
	}
	return false
}

// holds counts how often the face's outline winds round p, by the angles its sides subtend.
func (w witness) holds(f *face, p mgl64.Vec3) bool {
	sum := 0.0
	for _, s := range w.s.sides[f.lo:f.hi] {
		a, b := w.s.verts[s.from].Sub(p), w.s.verts[s.to].Sub(p)
		sum += math.Atan2(a.Cross(b).Dot(f.normal), a.Dot(b))
	}
	return math.Abs(sum) > math.Pi
}

// steady is the kind at t when it is the same a little before and behind, and when it does not hang on
// how far beside the edge one looks: another line runs alongside where it does.
func (w witness) steady(e *edge, t float64) (Kind, bool, bool) {
	const step = 1e-3
	k, drawn := w.kind(e, t)
	if w.hidden(e, t, aside) != w.hidden(e, t, aside/30) {
		return 0, false, false
	}
	for _, u := range []float64{t - step, t + step} {
		if k2, d2 := w.kind(e, u); k2 != k || d2 != drawn {
			return 0, false, false
		}
	}
	return k, drawn, true
}

// closeness is how near two lines must be to count as one: surely is where the package promises that
// they are drawn once, perhaps is where it may do so.
type closeness struct{ gap, slope float64 }

var (
	surely  = closeness{Coincident, 1e-7}
	perhaps = closeness{gapBox, 2e-5}
)

// runs tells whether l runs through q in direction u, and does not merely cross it there.
func (c closeness) runs(l *Line, q, u draw.Point) bool {
	for i := 1; i < len(l.Points); i++ {
		if c.along(l.Points[i-1], l.Points[i], q, u) {
			return true
		}
	}
	return false
}

// along tells whether q lies on the straight piece from a to b and u runs along it.
func (c closeness) along(a, b, q, u draw.Point) bool {
	v := unit(a, b)
	slack := c.slope
	if c == perhaps {
		slack += gapBox / math.Hypot(b.X-a.X, b.Y-a.Y)
	}
	return math.Abs(u.X*v.Y-u.Y*v.X) < slack && gapToPiece(a, b, q) < c.gap
}

func unit(a, b draw.Point) draw.Point {
	d := math.Hypot(b.X-a.X, b.Y-a.Y)
	return draw.Point{X: (b.X - a.X) / d, Y: (b.Y - a.Y) / d}
}

func gapToPiece(a, b, q draw.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := ((q.X-a.X)*dx + (q.Y-a.Y)*dy) / (dx*dx + dy*dy)
	t = max(0, min(1, t))
	return math.Hypot(a.X+t*dx-q.X, a.Y+t*dy-q.Y)
}

// objections compares a picture with the witness at n random points an edge and a line.
func (w witness) objections(p *Picture, n int, r *rand.Rand) []string {
	return append(w.missing(p, n, r), w.invented(p, n, r)...)
}

// missing lists points of edges that the picture does not show as it should.
func (w witness) missing(p *Picture, n int, r *rand.Rand) (out []string) {
	for i := range w.s.edges {
		e := &w.s.edges[i]
		a, b := w.d.Point(w.s.verts[e.from]), w.d.Point(w.s.verts[e.to])
		if w.skips(len(w.s.edges), r) || math.Hypot(b.X-a.X, b.Y-a.Y) < 1 {
			continue
		}
		for range n {
			t := 0.01 + 0.98*r.Float64()
			k, drawn, sure := w.steady(e, t)
			if !sure || !drawn {
				continue
			}
			if worst := w.strongest(p, e, t); worst > k {
				out = append(out, fmt.Sprintf("edge %d of %s at %.4f: want %v, best line is %d", i, w.s.parts[e.part], t, k, worst))
			}
		}
	}
	return out
}

// strongest is the least kind of the picture's lines through the edge's point; nothing when none.
func (w witness) strongest(p *Picture, e *edge, t float64) Kind {
	best := nothing
	q, u := w.d.Point(w.at(e, t)), unit(w.d.Point(w.at(e, 0)), w.d.Point(w.at(e, 1)))
	for i := range p.Lines {
		if perhaps.runs(&p.Lines[i], q, u) {
			best = min(best, p.Lines[i].Kind)
		}
	}
	return best
}

// invented lists points of lines that no edge accounts for, or that are drawn twice.
func (w witness) invented(p *Picture, n int, r *rand.Rand) (out []string) {
	for i := range p.Lines {
		l := &p.Lines[i]
		for range n {
			if w.skips(len(p.Lines), r) {
				continue
			}
			k := 1 + r.IntN(len(l.Points)-1)
			a, b := l.Points[k-1], l.Points[k]
			if math.Hypot(b.X-a.X, b.Y-a.Y) < 0.1 {
				continue // all of it is near its ends, where other lines begin
			}
			t := 0.01 + 0.98*r.Float64()
			q, u := draw.Point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)}, unit(a, b)
			if s := w.account(l, q, u); s != "" {
				out = append(out, fmt.Sprintf("%v line %d at %.4f %.4f: %s", l.Kind, i, q.X, q.Y, s))
			}
			for j := range p.Lines {
				if j != i && surely.runs(&p.Lines[j], q, u) {
					out = append(out, fmt.Sprintf("%v line %d at %.4f %.4f: also drawn %v", l.Kind, i, q.X, q.Y, p.Lines[j].Kind))
				}
			}
		}
	}
	return out
}

// account looks for an edge that shows at q as the line does, and for none that shows stronger.
func (w witness) account(l *Line, q, u draw.Point) string {
	found, best := false, nothing
	for i := range w.s.edges {
		e := &w.s.edges[i]
		a, b := w.d.Point(w.s.verts[e.from]), w.d.Point(w.s.verts[e.to])
		if math.Hypot(b.X-a.X, b.Y-a.Y) < 1e-4 || !perhaps.along(a, b, q, u) {
			continue
		}
		k, drawn, sure := w.steady(e, math.Hypot(q.X-a.X, q.Y-a.Y)/math.Hypot(b.X-a.X, b.Y-a.Y))
		found = found || !sure || drawn && k == l.Kind
		if drawn && sure && surely.along(a, b, q, u) {
			best = min(best, k)
		}
	}
	switch {
	case !found:
		return "no edge shows so there"
	case best < l.Kind:
		return fmt.Sprintf("an edge there is %v", best)
	}
	return ""
}
