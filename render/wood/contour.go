package wood

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/render/draw"
)

// plot is a face laid flat: its grid of radii, from which the growth rings on it are followed.
type plot struct {
	o, e1, e2 mgl64.Vec3 // origin and the directions along and across, world
	s1, s2    float64    // steps of the grid, mm
	n1, n2    int        // steps each way
	r         []float64  // radii at the grid's points, row by row across
	loops     [][]draw.Point
}

// newPlot lays a face flat. Along is the grain where it lies in the face, so that few steps follow it.
func newPlot(b *board, normal mgl64.Vec3, loops [][]mgl64.Vec3, every float64) *plot {
	grain := b.q.Place.Col(0).Vec3()
	along := grain.Sub(normal.Mul(grain.Dot(normal)))
	t := &plot{s1: 7, s2: every / 2}
	if along.Len() < 0.5 { // end grain: rings bend both ways
		t.s1 = t.s2
		up := b.q.Place.Col(1).Vec3()
		along = up.Sub(normal.Mul(up.Dot(normal)))
	}
	t.o, t.e1 = loops[0][0], along.Normalize()
	t.e2 = normal.Cross(t.e1)
	box := draw.EmptyBox()
	for _, l := range loops {
		flat := make([]draw.Point, len(l))
		for i, p := range l {
			q := p.Sub(t.o)
			flat[i] = draw.Point{X: q.Dot(t.e1), Y: q.Dot(t.e2)}
			box = box.Add(flat[i])
		}
		t.loops = append(t.loops, flat)
	}
	t.n1 = max(2, int(math.Ceil(box.Width()/t.s1)))
	t.n2 = max(2, int(math.Ceil(box.Height()/t.s2)))
	t.s1, t.s2 = box.Width()/float64(t.n1), box.Height()/float64(t.n2)
	t.o = t.o.Add(t.e1.Mul(box.Min.X)).Add(t.e2.Mul(box.Min.Y))
	for _, l := range t.loops {
		for i := range l {
			l[i].X -= box.Min.X
			l[i].Y -= box.Min.Y
		}
	}
	t.r = make([]float64, 0, (t.n1+1)*(t.n2+1))
	for i := range t.n1 + 1 {
		for j := range t.n2 + 1 {
			t.r = append(t.r, b.radius(t.world(draw.Point{X: float64(i) * t.s1, Y: float64(j) * t.s2})))
		}
	}
	return t
}

func (t *plot) world(p draw.Point) mgl64.Vec3 { return t.o.Add(t.e1.Mul(p.X)).Add(t.e2.Mul(p.Y)) }

// span is the least and the greatest radius.
func (t *plot) span() (lo, hi float64) {
	lo, hi = t.r[0], t.r[0]
	for _, r := range t.r {
		lo, hi = min(lo, r), max(hi, r)
	}
	return lo, hi
}

// rung is a side of a cell of the grid: from point i, j along (0) or across (1).
type rung struct{ i, j, way int }

// ring follows one growth ring over the grid: chains of points.
func (t *plot) ring(r float64) [][]draw.Point {
	next := map[rung][]rung{}
	var order []rung
	link := func(a, b rung) {
		for _, k := range [2]rung{a, b} {
			if next[k] == nil {
				order = append(order, k)
			}
		}
		next[a], next[b] = append(next[a], b), append(next[b], a)
	}
	for i := range t.n1 {
		for j := range t.n2 {
			t.cell(i, j, r, link)
		}
	}
	var out [][]draw.Point
	follow := func(from rung) {
		var chain []draw.Point
		for at, more := from, true; more; {
			chain = append(chain, t.place(at, r))
			more = false
			if list := next[at]; len(list) > 0 {
				to := list[0]
				next[at], next[to] = list[1:], without(next[to], at)
				at, more = to, true
			}
		}
		if len(chain) > 1 {
			out = append(out, chain)
		}
	}
	for _, k := range order {
		if len(next[k]) == 1 {
			follow(k)
		}
	}
	for _, k := range order {
		if len(next[k]) > 0 {
			follow(k)
		}
	}
	return out
}

func without(list []rung, k rung) []rung {
	for i, x := range list {
		if x == k {
			return append(append([]rung{}, list[:i]...), list[i+1:]...)
		}
	}
	return list
}

// cell links the sides of a cell that a ring crosses.
func (t *plot) cell(i, j int, r float64, link func(a, b rung)) {
	at := func(i, j int) bool { return t.r[i*(t.n2+1)+j] < r }
	a, b, c, d := at(i, j), at(i+1, j), at(i+1, j+1), at(i, j+1)
	var met []rung
	if a != b {
		met = append(met, rung{i, j, 0})
	}
	if b != c {
		met = append(met, rung{i + 1, j, 1})
	}
	if c != d {
		met = append(met, rung{i, j + 1, 0})
	}
	if d != a {
		met = append(met, rung{i, j, 1})
	}
	for k := 0; k+1 < len(met); k += 2 {
		link(met[k], met[k+1])
	}
}

// place is where on a cell's side the radius is r.
func (t *plot) place(k rung, r float64) draw.Point {
	p := t.r[k.i*(t.n2+1)+k.j]
	x, y := float64(k.i), float64(k.j)
	if k.way == 0 {
		x += (r - p) / (t.r[(k.i+1)*(t.n2+1)+k.j] - p)
	} else {
		y += (r - p) / (t.r[k.i*(t.n2+1)+k.j+1] - p)
	}
	return draw.Point{X: x * t.s1, Y: y * t.s2}
}
