package sheet

import (
	"cmp"
	"math/bits"
	"slices"
)

// quilt holds, for every size of sheet up to a largest, the way of cutting it that is worth most among those looked
// at: each unit at most as often as it is left, by cuts that go right through, kerf counted with every unit. One way
// is kept for each place where a row of units may end, with its true extent, so that nothing is lost where places are
// thinned out; ways that are each other's rivals for the same units are not all seen. It finds plans and bounds
// nothing.
type quilt struct {
	xs, ys  places
	kinds   []quiltKind
	bias    tally
	guard   tally
	byY     []float64 // worth at [y][x], for cuts across
	byX     []float64 // worth at [x][y], for cuts along
	at      []int32   // patch at [x][y]
	patches []patch   // the first is none
	gainX   [][]gain  // of each y: where worth grows along
	gainY   [][]gain  // of each x: where worth grows across
	seeds   []seed    // single units, by cell
	sown    int       // how many seeds have had their turn
	work    int       // pairs of ways compared
}

// seed is a single unit's patch and the cell it belongs to.
type seed struct {
	at    int
	patch int32
}

// gain is a place where worth grows, and the true extent of the way there.
type gain struct {
	at, patch int32
	size      float64
}

// tally counts kinds in fields of its bits, each with a guard bit above it.
type tally [2]uint64

// quiltKind is a kind of unit in a quilt: its size, its worth, and its field in a tally.
type quiltKind struct {
	l, w  float64 // kerf included
	turn  bool
	count int
	worth float64
	one   tally
}

// patch is a way to cut a sheet: two smaller ones side by side, or one unit.
type patch struct {
	l, w   float64 // what it takes, kerf included
	worth  float64
	used   tally
	a, b   int32 // patches; a == 0: a unit, b its kind; the first patch of all is none
	along  bool  // b lies beyond a along x
	turned bool
}

// fieldBits is how many bits of a tally a kind takes: those of its count and one more.
func fieldBits(count int) int { return bits.Len(uint(count)) + 1 }

// index gives every kind its field; it returns false when the tallies have no room for all.
func (q *quilt) index() bool {
	at, word := 0, 0
	for i := range q.kinds {
		k := &q.kinds[i]
		b := fieldBits(k.count)
		if at+b > 64 {
			if at, word = 0, word+1; word == len(q.bias) {
				return false
			}
		}
		k.one = tally{}
		k.one[word] = 1 << at
		q.bias[word] |= uint64(1<<(b-1)-1-k.count) << at
		q.guard[word] |= 1 << (at + b - 1)
		at += b
	}
	return true
}

// both adds two tallies; ok says that no kind is taken too often.
func (q *quilt) both(a, b *tally) (t tally, ok bool) {
	t[0], t[1] = a[0]+b[0], a[1]+b[1]
	return t, (t[0]+q.bias[0])&q.guard[0]|(t[1]+q.bias[1])&q.guard[1] == 0
}

// lay works out the best ways for sheets up to l by w, kerf included, at no more than nx by ny places. It returns
// false when there are too many kinds. What was laid before is gone.
func (q *quilt) lay(l, w float64, nx, ny int, kinds []quiltKind) bool {
	q.kinds, q.work = kinds, 0
	q.bias, q.guard = tally{}, tally{}
	if !q.index() {
		return false
	}
	var alongs, acrosses []member
	for _, k := range kinds {
		alongs, acrosses = append(alongs, member{k.l, k.count}), append(acrosses, member{k.w, k.count})
		if k.turn && k.l != k.w {
			alongs, acrosses = append(alongs, member{k.w, k.count}), append(acrosses, member{k.l, k.count})
		}
	}
	q.xs.set(l, nx, alongs)
	q.ys.set(w, ny, acrosses)
	nx, ny = len(q.xs.size), len(q.ys.size)
	n := nx * ny
	q.byX, q.byY, q.at = slices.Grow(q.byX[:0], n)[:n], slices.Grow(q.byY[:0], n)[:n], slices.Grow(q.at[:0], n)[:n]
	q.gainX, q.gainY = fresh(q.gainX, ny), fresh(q.gainY, nx)
	q.patches = append(q.patches[:0], patch{})
	q.sow()
	for i := range nx {
		for j := range ny {
			q.grow(i, j)
		}
	}
	return true
}

// fresh makes n empty lists, with the memory of former ones.
func fresh(lists [][]gain, n int) [][]gain {
	lists = slices.Grow(lists[:0], n)[:n]
	for i := range lists {
		lists[i] = lists[i][:0]
	}
	return lists
}

func (q *quilt) sow() {
	q.seeds = q.seeds[:0]
	for k, it := range q.kinds {
		q.sowOne(patch{l: it.l, w: it.w, worth: it.worth, used: it.one, b: int32(k)})
		if it.turn && it.l != it.w {
			q.sowOne(patch{l: it.w, w: it.l, worth: it.worth, used: it.one, b: int32(k), turned: true})
		}
	}
	slices.SortFunc(q.seeds, func(a, b seed) int { return cmp.Compare(a.at, b.at) })
	q.sown = 0
}

func (q *quilt) sowOne(p patch) {
	i, j := q.xs.holding(p.l), q.ys.holding(p.w)
	if i < 0 || j < 0 {
		return
	}
	q.seeds = append(q.seeds, seed{i*len(q.ys.size) + j, int32(len(q.patches))})
	q.patches = append(q.patches, p)
}

// grow finds the way of one size.
func (q *quilt) grow(i, j int) {
	nx, ny := len(q.xs.size), len(q.ys.size)
	at := i*ny + j
	best, which := 0.0, int32(0)
	if i > 0 {
		best, which = q.byX[at-ny], q.at[at-ny]
	}
	if j > 0 && q.byX[at-1] > best {
		best, which = q.byX[at-1], q.at[at-1]
	}
	for ; q.sown < len(q.seeds) && q.seeds[q.sown].at == at; q.sown++ {
		s := q.seeds[q.sown].patch
		if v := q.patches[s].worth; v > best {
			best, which = v, s
		}
	}
	best, which = q.across(i, j, best, which)
	best, which = q.lengthwise(i, j, best, which)
	q.byX[at], q.byY[j*nx+i], q.at[at] = best, best, which
	if i > 0 && best > q.byX[at-ny] {
		q.gainX[j] = append(q.gainX[j], gain{int32(i), which, q.patches[which].l})
	}
	if j > 0 && best > q.byX[at-1] {
		q.gainY[i] = append(q.gainY[i], gain{int32(j), which, q.patches[which].w})
	}
}

// across joins two ways of the same width by a crosscut.
func (q *quilt) across(i, j int, best float64, which int32) (float64, int32) {
	nx, ny := len(q.xs.size), len(q.ys.size)
	row := q.byY[j*nx : (j+1)*nx]
	room := q.xs.size[i] + eps
	for _, a := range q.gainX[j] {
		if 2*a.size > room {
			break
		}
		q.work++
		rest := q.xs.below(room - a.size)
		if v := row[a.at] + row[rest]; v > best {
			if p := q.join(a.patch, q.at[int(rest)*ny+j], true); p > 0 {
				best, which = v, p
			}
		}
	}
	return best, which
}

// lengthwise joins two ways of the same length by a rip.
func (q *quilt) lengthwise(i, j int, best float64, which int32) (float64, int32) {
	ny := len(q.ys.size)
	row := q.byX[i*ny : (i+1)*ny]
	room := q.ys.size[j] + eps
	for _, a := range q.gainY[i] {
		if 2*a.size > room {
			break
		}
		q.work++
		rest := q.ys.below(room - a.size)
		if v := row[a.at] + row[rest]; v > best {
			if p := q.join(a.patch, q.at[i*ny+int(rest)], false); p > 0 {
				best, which = v, p
			}
		}
	}
	return best, which
}

// join makes a patch of two, unless together they take a kind too often.
func (q *quilt) join(a, b int32, along bool) int32 {
	p, o := &q.patches[a], &q.patches[b]
	used, ok := q.both(&p.used, &o.used)
	if !ok || b == 0 {
		return 0
	}
	c := patch{l: p.l + o.l, w: max(p.w, o.w), worth: p.worth + o.worth, used: used, a: a, b: b, along: along}
	if !along {
		c.l, c.w = max(p.l, o.l), p.w+o.w
	}
	q.patches = append(q.patches, c)
	return int32(len(q.patches) - 1)
}

// of is the way for a sheet of that size, kerf included.
func (q *quilt) of(l, w float64) int32 {
	if l <= 0 || w <= 0 {
		return 0
	}
	return q.at[int(q.xs.below(l+eps))*len(q.ys.size)+int(q.ys.below(w+eps))]
}
