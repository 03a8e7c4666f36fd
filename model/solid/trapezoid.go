package solid

import (
	"cmp"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// chord is a side of a loop from left to right.
type chord struct{ p, q mgl64.Vec3 }

// at is the chord's y at x.
func (c *chord) at(x float64) float64 {
	return c.p[1] + (x-c.p[0])/(c.q[0]-c.p[0])*(c.q[1]-c.p[1])
}

// strip is the space between two chords, from x on.
type strip struct {
	low, high *chord
	from      float64
}

// trapezoids cuts what loops enclose, seen from +z, into trapezoids with two sides along y. They come counter-clockwise,
// with the planes of their sides: a side may have shrunk to rounding, and its ends no longer tell which way it runs.
// Both lists hold only until out comes back.
func trapezoids(loops [][]mgl64.Vec3, out func(q []mgl64.Vec3, sides []Plane)) {
	n := 0
	for _, l := range loops {
		n += len(l)
	}
	all := make([]chord, 0, n)
	chords := make([]*chord, 0, n)
	stops := make([]float64, 0, n)
	for _, l := range loops {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			stops = append(stops, p[0])
			switch {
			case p[0] == q[0]:
				continue
			case p[0] < q[0]:
				all = append(all, chord{p, q})
			default:
				all = append(all, chord{q, p})
			}
			chords = append(chords, &all[len(all)-1])
		}
	}
	slices.Sort(stops)
	slices.SortStableFunc(chords, func(c, d *chord) int { return cmp.Compare(c.p[0], d.p[0]) })
	var open, next []strip
	piece := trapezoid{out: out}
	var active []*chord
	for i := 1; i < len(stops); i++ {
		a, z := stops[i-1], stops[i]
		if a == z {
			continue
		}
		active = spanning(active, &chords, a, z)
		next = next[:0]
		for j := 0; j+1 < len(active); j += 2 {
			next = append(next, strip{active[j], active[j+1], a})
		}
		open = piece.goOn(open, next, a)
		open, next = next, open
	}
	piece.goOn(open, nil, stops[len(stops)-1])
}

// spanning are the chords over the stretch from a to z, by their height in its middle.
func spanning(active []*chord, rest *[]*chord, a, z float64) []*chord {
	kept := active[:0]
	for _, c := range active {
		if c.q[0] >= z {
			kept = append(kept, c)
		}
	}
	for len(*rest) > 0 && (*rest)[0].p[0] <= a {
		if c := (*rest)[0]; c.q[0] >= z {
			kept = append(kept, c)
		}
		*rest = (*rest)[1:]
	}
	mid := (a + z) / 2
	slices.SortStableFunc(kept, func(c, d *chord) int { return cmp.Compare(c.at(mid), d.at(mid)) })
	return kept
}

// trapezoid gives one piece after the other out.
type trapezoid struct {
	out   func(q []mgl64.Vec3, sides []Plane)
	q     [4]mgl64.Vec3
	sides [4]Plane
}

// goOn lets the strips that go on in next begin where they began, and gives out those that end at x.
func (t *trapezoid) goOn(open, next []strip, x float64) []strip {
	j := 0
	for _, s := range open {
		found := false
		for k := j; k < len(next); k++ {
			if next[k].low == s.low && next[k].high == s.high {
				next[k].from, j, found = s.from, k+1, true
				break
			}
		}
		if found {
			continue
		}
		t.q = [4]mgl64.Vec3{{s.from, s.low.at(s.from)}, {x, s.low.at(x)}, {x, s.high.at(x)}, {s.from, s.high.at(s.from)}}
		if areaSeen(t.q[:]) > noColumn {
			low, _ := uprightBy(s.low.p, s.low.q)
			high, _ := uprightBy(s.high.q, s.high.p)
			t.sides = [4]Plane{low, {mgl64.Vec3{1, 0, 0}, x}, high, {mgl64.Vec3{-1, 0, 0}, -s.from}}
			t.out(t.q[:], t.sides[:])
		}
	}
	return open
}
