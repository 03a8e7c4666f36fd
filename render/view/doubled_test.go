package view

import (
	"cmp"
	"math"
	"slices"

	"testing"

	"splaywright/assets"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/render/draw"
)

// segment is a straight stretch in a picture.
type segment struct{ a, b draw.Point }

// straight is a segment by the line it lies on: its angle, its gap from the origin, and from where to where along it.
type straight struct {
	angle, gap, lo, hi float64
	skip               bool // of what is left out
}

func (s segment) straight() straight {
	a, b := s.a, s.b
	if a.X > b.X || a.X == b.X && a.Y > b.Y {
		a, b = b, a
	}
	dx, dy := b.X-a.X, b.Y-a.Y
	n := math.Hypot(dx, dy)
	dx, dy = dx/n, dy/n
	angle := math.Atan2(dy, dx)
	if angle < -math.Pi/2+1e-6 { // plumb lines that lean the other way by rounding
		angle, dx, dy = angle+math.Pi, -dx, -dy
	}
	lo, hi := a.X*dx+a.Y*dy, b.X*dx+b.Y*dy
	return straight{angle: angle, gap: a.Y*dx - a.X*dy, lo: min(lo, hi), hi: max(lo, hi)}
}

// Segments are taken to lie on one line when their angles and gaps differ by no more than this.
type oneLine struct{ angle, gap float64 }

// loosely is for lines found by different methods; strictly is what the package promises to draw once.
var (
	loosely  = oneLine{2e-5, 1e-3}
	strictly = oneLine{1e-7, Coincident}
)

// lines sorts segments by the line they lie on.
func (o oneLine) lines(list, left []segment) [][]straight {
	var all []straight
	for i, l := range [][]segment{list, left} {
		for _, s := range l {
			if math.Hypot(s.b.X-s.a.X, s.b.Y-s.a.Y) < 1e-3 {
				continue
			}
			st := s.straight()
			st.skip = i == 1
			all = append(all, st)
		}
	}
	slices.SortFunc(all, func(a, b straight) int { return cmp.Compare(a.angle, b.angle) })
	var out [][]straight
	for len(all) > 0 {
		n := 1
		for n < len(all) && all[n].angle-all[n-1].angle < o.angle {
			n++
		}
		group := all[:n]
		all = all[n:]
		slices.SortFunc(group, func(a, b straight) int { return cmp.Compare(a.gap, b.gap) })
		for len(group) > 0 {
			k := 1
			for k < len(group) && group[k].gap-group[k-1].gap < o.gap {
				k++
			}
			out = append(out, group[:k])
			group = group[k:]
		}
	}
	return out
}

// unionLength is how long segments are in all, what falls on one another counted once and what falls on left not at all.
func (o oneLine) unionLength(list, left []segment) float64 {
	total := 0.0
	for _, line := range o.lines(list, left) {
		type end struct {
			at         float64
			list, left int
		}
		var ends []end
		for _, s := range line {
			a, b := end{at: s.lo, list: 1}, end{at: s.hi, list: -1}
			if s.skip {
				a, b = end{at: s.lo - 0.05, left: 1}, end{at: s.hi + 0.05, left: -1}
			}
			ends = append(ends, a, b)
		}
		slices.SortFunc(ends, func(a, b end) int { return cmp.Compare(a.at, b.at) })
		var now end
		for i, e := range ends {
			if i > 0 && now.list > 0 && now.left == 0 {
				total += e.at - ends[i-1].at
			}
			now.list, now.left = now.list+e.list, now.left+e.left
		}
	}
	return total
}

// doubled is how much of the segments falls on others, mm.
func doubled(list []segment) float64 {
	total := 0.0
	for _, s := range list {
		if n := math.Hypot(s.b.X-s.a.X, s.b.Y-s.a.Y); n >= 1e-3 {
			total += n
		}
	}
	return total - strictly.unionLength(list, nil)
}

// drawn is all straight stretches of a picture, whatever their kind.
func drawn(p *Picture) []segment {
	var out []segment
	for _, l := range p.Lines {
		for i := 1; i < len(l.Points); i++ {
			out = append(out, segment{l.Points[i-1], l.Points[i]})
		}
	}
	return out
}

var everyView = []Direction{Front, Back, End, Left, Top, Bottom, Isometric, Pictorial(35, 25)}

func noneDoubled(t interface{ Errorf(string, ...any) }, name string, s *Scene) {
	const most = 0.01 // mm: corners of facets that overlap by rounding
	for _, d := range everyView {
		if x := doubled(drawn(s.Project(d))); x > most {
			t.Errorf("%s, %s: %.4f mm of lines are drawn twice", name, d.Name, x)
		}
	}
	lens, ok := s.Lens(Eye{Turn: 35, Height: 1500, Distance: 3000})
	if !ok {
		t.Errorf("%s: the eye stands too near", name)
		return
	}
	if x := doubled(drawn(s.Through(lens).Project(lens.Direction))); x > most {
		t.Errorf("%s, from an eye: %.4f mm of lines are drawn twice", name, x)
	}
}

func TestNoLineOfAnExampleIsDrawnTwice(t *testing.T) {
	for _, e := range assets.Examples() {
		noneDoubled(t, e.Name, NewScene(example(t, e), 0.05))
	}
}

// Rims of small bores seen all but on edge: their chords lie in one line but for some thousandths of a millimetre, and that
// is another line when those of one rim are joined.
func TestNoLineIsDrawnTwiceWhereJoiningTurnsIt(t *testing.T) {
	d := exampleDesigns(t)[washstand]
	for _, l := range []*measure.Length{&d.Size.Height, &d.Size.Width, &d.Size.Depth, &d.Boards.Side.Thickness} {
		*l *= 1.3
	}
	d.Splay.Ends = measure.Degree
	p := form.Build(d)
	if p.Stopped() || p.Title != "Washstand step for a child" {
		t.Fatalf("%s: stopped %v", p.Title, p.Stopped())
	}
	for _, tol := range []float64{0.8, 0.4, 0.1} { // mm
		if x := doubled(drawn(NewScene(p, tol).Project(Pictorial(-30, -0.5)))); x > 0.01 {
			t.Errorf("with chords %g mm off arcs %.4f mm of lines are drawn twice", tol, x)
		}
	}
}

// washstand is the place of the washstand step among the examples.
const washstand = 9

func pt(x, y float64) draw.Point { return draw.Point{X: x, Y: y} }
