package sheet

import "slices"

// quilt holds, for every size of sheet up to a largest, the way of cutting it that is worth most among those looked
// at: each unit at most as often as it is left, by cuts that go right through, kerf counted with every unit. One way
// is kept for each place where a row of units may end, with its true extent, so that nothing is lost where places are
// thinned out; ways that are each other's rivals for the same units are not all seen. It finds plans and bounds
// nothing.
type quilt struct {
	xs, ys  places
	kinds   []quiltKind
	limit   limit
	book    *book // of swatches to be made of; nil: none
	board   uint64
	byY     []float64 // worth at [y][x], for cuts across
	byX     []float64 // worth at [x][y], for cuts along
	at      []int32   // patch at [x][y]; at first what is sown there: a unit or a swatch
	patches []patch   // the first is none
	gainX   [][]gain  // of each y: where worth grows along
	gainY   [][]gain  // of each x: where worth grows across
	work    int       // pairs of ways compared
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
	id    int // in the book
	one   tally
}

// patch is a way to cut a sheet: two smaller ones side by side, a swatch, or one unit.
type patch struct {
	l, w   float64 // what it takes, kerf included
	worth  float64
	used   tally
	a, b   int32 // patches; a == 0: a unit, b its kind; swatched: b is a swatch; the first patch of all is none
	along  bool  // b lies beyond a along x
	turned bool
}

// index gives every kind its field; it returns false when the tallies have no room for all.
func (q *quilt) index() bool {
	if q.book != nil {
		counts := make([]int, len(q.book.fields))
		for i := range q.kinds {
			k := &q.kinds[i]
			counts[k.id], k.one = k.count, q.book.fields[k.id].one()
		}
		q.limit.set(q.book.fields, counts)
		return true
	}
	counts := make([]int, len(q.kinds))
	for i, k := range q.kinds {
		counts[i] = k.count
	}
	fs, ok := fields(counts)
	if !ok {
		return false
	}
	for i := range q.kinds {
		q.kinds[i].one = fs[i].one()
	}
	q.limit.set(fs, counts)
	return true
}

// both adds two tallies; ok says that no kind is taken too often.
func (q *quilt) both(a, b *tally) (t tally, ok bool) {
	t[0], t[1] = a[0]+b[0], a[1]+b[1]
	return t, (t[0]+q.limit.bias[0])&q.limit.guard[0]|(t[1]+q.limit.bias[1])&q.limit.guard[1] == 0
}

// lay works out the best ways for sheets up to l by w, kerf included, at no more than nx by ny places. It returns
// false when there are too many kinds. What was laid before is gone.
func (q *quilt) lay(l, w float64, nx, ny int, kinds []quiltKind) bool {
	q.kinds, q.work = kinds, 0
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
	clear(q.at)
	for k, it := range q.kinds {
		q.sowOne(patch{l: it.l, w: it.w, worth: it.worth, used: it.one, b: int32(k)})
		if it.turn && it.l != it.w {
			q.sowOne(patch{l: it.w, w: it.l, worth: it.worth, used: it.one, b: int32(k), turned: true})
		}
	}
	if q.book != nil {
		q.sowSwatches()
	}
}

// sowSwatches sows every swatch of units that are left.
func (q *quilt) sowSwatches() {
	worth := make([]float64, len(q.book.fields))
	for _, k := range q.kinds {
		worth[k.id] = k.worth
	}
	l, w := q.xs.size[len(q.xs.size)-1]+eps, q.ys.size[len(q.ys.size)-1]+eps
	for n := range q.book.swatches {
		s := &q.book.swatches[n]
		if s.units < 2 || s.l > l || s.w > w || s.boards&q.board == 0 || !q.limit.keeps(s.used) {
			continue
		}
		p := patch{l: s.l, w: s.w, used: s.used, a: swatched, b: int32(n), along: s.along}
		for _, k := range s.kinds[:s.units] {
			p.worth += worth[k]
		}
		q.sowOne(p)
	}
}

// swatched stands in a patch's a where its b is a swatch.
const swatched = -1

func (q *quilt) sowOne(p patch) {
	i, j := q.xs.holding(p.l), q.ys.holding(p.w)
	if i < 0 || j < 0 {
		return
	}
	at := i*len(q.ys.size) + j
	if old := q.at[at]; old > 0 && q.patches[old].worth >= p.worth {
		return
	}
	q.at[at] = int32(len(q.patches))
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
	if s := q.at[at]; s > 0 && q.patches[s].worth > best { // what was sown there
		best, which = q.patches[s].worth, s
	}
	best, which = q.joined(i, j, true, best, which)
	best, which = q.joined(i, j, false, best, which)
	q.byX[at], q.byY[j*nx+i], q.at[at] = best, best, which
	if i > 0 && best > q.byX[at-ny] {
		q.gainX[j] = append(q.gainX[j], gain{int32(i), which, q.patches[which].l})
	}
	if j > 0 && best > q.byX[at-1] {
		q.gainY[i] = append(q.gainY[i], gain{int32(j), which, q.patches[which].w})
	}
}

// joined is the best way to join two ways side by side: of the same width by a crosscut, or of the same length by a rip.
func (q *quilt) joined(i, j int, along bool, best float64, which int32) (float64, int32) {
	nx, ny := len(q.xs.size), len(q.ys.size)
	row, all, rests, room, from, step := q.byY[j*nx:(j+1)*nx], q.gainX[j], &q.xs, q.xs.size[i]+eps, j, ny
	if !along {
		row, all, rests, room, from, step = q.byX[i*ny:(i+1)*ny], q.gainY[i], &q.ys, q.ys.size[j]+eps, i*ny, 1
	}
	for _, a := range all {
		if 2*a.size > room {
			break
		}
		q.work++
		rest := rests.below(room - a.size)
		if v := row[a.at] + row[rest]; v > best {
			if p := q.join(a.patch, q.at[from+int(rest)*step], along); p > 0 {
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
