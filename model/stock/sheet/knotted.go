package sheet

import (
	"cmp"
	"math"
	"slices"
)

// knotted is the most that a board with places to avoid can yield at certain prices, in the whole steps of a table, each
// unit as often as wanted. Where every place of a real cutting is rounded up to a whole step, units rounded down still lie
// beside one another and clear of the places to avoid, those rounded up too; so no more can really be had. A cut takes a
// sound piece off a side, of which the table knows the most, or divides the places to avoid; what lies before it can be
// pushed against the piece's end or a place to avoid, so that it ends where a row of units does.
type knotted struct {
	t     *table
	boxes []box // to avoid
	all   box   // the board
	value float64
	known map[box]most
	cuts  []halving // being looked at
	work  int
}

// box is a rectangle in steps: from its left near to its right far corner.
type box [4]int32

// knottedWork is how many ways to cut may be looked at for one board.
const knottedWork = 300_000

// rounding is what sums of worths may miss by, as a fraction.
const rounding = 1e-12

// around looks at a board of so many steps. Where its work comes to more than knottedWork its value is too small.
func (t *table) around(l, w int, boxes []box) *knotted {
	k := &knotted{t: t, known: map[box]most{}, boxes: boxes, all: box{0, 0, int32(l), int32(w)}}
	k.value = k.of(k.all, boxes, 0)
	return k
}

// use adds to counts how often each item is in one best way to cut a piece.
func (k *knotted) use(r box, counts []int) {
	var room [8]box
	if len(meeting(r, k.boxes, room[:0])) == 0 {
		if r[2] > r[0] && r[3] > r[1] {
			k.t.use(int(r[2]-r[0]), int(r[3]-r[1]), counts)
		}
		return
	}
	if m := k.known[r]; m.value > 0 {
		k.use(m.cut.one, counts)
		k.use(m.cut.two, counts)
	}
}

// sound is the most that a piece yields without places to avoid.
func (k *knotted) sound(r box) float64 {
	if r[2] <= r[0] || r[3] <= r[1] {
		return 0
	}
	return k.t.of(int(r[2]-r[0]), int(r[3]-r[1]))
}

// most is what a piece yields; not exact where it is only known to yield no more. The cut is how it does.
type most struct {
	value float64
	exact bool
	cut   halving
}

// halving is a cut, and what both pieces would yield without places to avoid.
type halving struct {
	one, two box
	hope     float64
}

// of is the most that a piece yields where that is more than beat; else something between.
func (k *knotted) of(r box, boxes []box, beat float64) float64 {
	var room [8]box
	in := meeting(r, boxes, room[:0])
	if len(in) == 0 {
		return k.sound(r)
	}
	if m, ok := k.known[r]; ok && (m.exact || m.value <= beat) {
		return m.value
	}
	from := len(k.cuts)
	for dim := range 2 {
		k.trim(r, in, dim, max(beat, 0))
		k.divide(r, in, dim, max(beat, 0))
	}
	cuts := k.cuts[from:]
	slices.SortFunc(cuts, func(a, b halving) int { return cmp.Compare(b.hope, a.hope) })
	best, how := max(beat, 0), halving{}
	for i := range cuts {
		c := cuts[i]
		if c.hope <= best || k.work > knottedWork {
			break
		}
		k.work++
		two := k.sound(c.two)
		if v := k.of(c.one, in, best-two); v+two > best*(1+rounding) {
			if v += k.of(c.two, in, best-v); v > best*(1+rounding) {
				best, how = v, c
			}
		}
	}
	k.work += len(cuts) / 8
	k.cuts = k.cuts[:from]
	k.known[r] = most{best, best > beat, how}
	return best
}

// meeting are the parts of boxes within a piece.
func meeting(r box, boxes, out []box) []box {
	for _, b := range boxes {
		b = box{max(b[0], r[0]), max(b[1], r[1]), min(b[2], r[2]), min(b[3], r[3])}
		if b[0] < b[2] && b[1] < b[3] {
			out = append(out, b)
		}
	}
	return out
}

// places are where rows may end in one direction.
func (k *knotted) places(dim int) []int {
	if dim == 1 {
		return k.t.ys
	}
	return k.t.xs
}

// fromTo is where the places to avoid begin and end.
func fromTo(in []box, dim int) (lo, hi int32) {
	lo, hi = in[0][dim], in[0][dim+2]
	for _, b := range in[1:] {
		lo, hi = min(lo, b[dim]), max(hi, b[dim+2])
	}
	return lo, hi
}

// cut notes a cut that promises more than beat.
func (k *knotted) cut(r box, dim int, at int32, beat float64) {
	c := halving{one: r, two: r}
	c.one[dim+2], c.two[dim] = at, at
	if c.hope = k.sound(c.one) + k.sound(c.two); c.hope > beat {
		k.cuts = append(k.cuts, c)
	}
}

// trim takes sound pieces off both sides.
func (k *knotted) trim(r box, in []box, dim int, beat float64) {
	lo, hi := fromTo(in, dim)
	near, far := int(lo-r[dim]), int(r[dim+2]-hi)
	places, i, j := k.places(dim), 0, int(k.t.ay[r[3]-r[1]])
	if dim == 1 {
		i, j = int(k.t.ax[r[2]-r[0]]), 0
	}
	was := 0.0
	for n := 1; n < len(places) && places[n] <= max(near, far); n++ {
		if dim == 0 {
			i = n
		} else {
			j = n
		}
		v := k.t.best[i][j]
		if v <= was {
			continue
		}
		was = v
		if places[n] <= near {
			k.cut(r, dim, r[dim]+int32(places[n]), beat)
		}
		if places[n] <= far {
			k.cut(r, dim, r[dim+2]-int32(places[n]), beat)
		}
	}
}

// divide cuts between places to avoid or through them.
func (k *knotted) divide(r box, in []box, dim int, beat float64) {
	lo, hi := fromTo(in, dim)
	places := k.places(dim)
	for n := -1; n < len(in); n++ {
		start := r[dim]
		if n >= 0 {
			start = in[n][dim+2]
		}
		first, _ := slices.BinarySearch(places, int(lo-start+1))
		for _, s := range places[first:] {
			at := start + int32(s)
			if at >= hi {
				break
			}
			k.cut(r, dim, at, beat)
		}
	}
}

// inSteps are the places to avoid in steps, as units see them that are grown by the kerf to the right and upward:
// those may reach into a place by the kerf from its left and near sides. In a round one lies a square.
func (s *shape) inSteps(k float64, step [2]float64) []box {
	fl, fw := step[0], step[1]
	var out []box
	for _, b := range s.blots {
		r := b.Rect
		if b.Radius > 0 {
			h := b.Radius / math.Sqrt2
			r.X1, r.Y1, r.X2, r.Y2 = b.Centre.X-h, b.Centre.Y-h, b.Centre.X+h, b.Centre.Y+h
		}
		up := func(at, step float64) int32 { return int32(math.Ceil(at/step - hair)) }
		o := box{up(r.X1+k-s.root.X1, fl), up(r.Y1+k-s.root.Y1, fw), up(r.X2-s.root.X1, fl), up(r.Y2-s.root.Y1, fw)}
		if o[0] < o[2] && o[1] < o[3] {
			out = append(out, o)
		}
	}
	return out
}

// around is how one of the boards is cut round its places to avoid; nil where these are too small to matter.
func (y yields) around(n int, sh *shape, kerf float64) *knotted {
	boxes := sh.inSteps(kerf, y.step)
	if len(boxes) == 0 {
		return nil
	}
	return y.table.around(y.size[n][0], y.size[n][1], boxes)
}

// counts is how often each item is taken.
func (k *knotted) counts() []int {
	of := make([]int, len(k.t.items))
	k.use(k.all, of)
	return of
}

// knotty says that there are places to avoid, on a board that has no outline of its own.
func (s *shape) knotty() bool { return len(s.blots) > 0 && len(s.outline) == 0 }
