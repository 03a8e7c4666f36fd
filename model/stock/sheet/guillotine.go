package sheet

import "slices"

// item is a rectangle worth something, in whole numbers.
type item struct {
	l, w  int
	value float64
}

// table is the most that any rectangle of a sheet can yield by cuts that go right through, each item as often as
// wanted (P. C. Gilmore and R. E. Gomory, Operations Research 14 (1966) 1045–1074; only places where sums of items
// end are looked at, after J. E. Beasley, J. Operational Research Society 36 (1985) 297–306).
type table struct {
	xs, ys []int
	ax, ay []int32 // length → last place not beyond it
	best   [][]float64
	items  []item
	pairs  int // of places, compared
}

// sums are the places up to size where a row of items can end; with reduce, only those that matter to a sheet of that
// size as a whole.
func sums(size int, lengths []int, reduce bool) (places []int, at []int32) {
	reach := make([]bool, size+1)
	reach[0] = true
	for _, l := range lengths {
		for i := l; i <= size; i++ {
			reach[i] = reach[i] || reach[i-l]
		}
	}
	// a place counts only if it is the last before the end less some other place
	keep := make([]bool, size+1)
	last := make([]int, size+1)
	for i := range reach {
		last[i] = i
		if !reach[i] {
			last[i] = last[i-1]
		}
	}
	for i, r := range reach {
		if r && reduce {
			keep[last[size-i]] = true
		}
		keep[i] = keep[i] || r && !reduce
	}
	keep[0], keep[last[size]] = true, true
	at = make([]int32, size+1)
	for i := range at {
		if keep[i] {
			places = append(places, i)
		}
		at[i] = int32(len(places) - 1)
	}
	return places, at
}

func newTable(length, width int, items []item, reduce bool) *table {
	t := &table{items: items}
	var ls, ws []int
	for _, it := range items {
		if it.l <= length && it.w <= width {
			ls, ws = append(ls, it.l), append(ws, it.w)
		}
	}
	slices.Sort(ls)
	slices.Sort(ws)
	t.xs, t.ax = sums(length, slices.Compact(ls), reduce)
	t.ys, t.ay = sums(width, slices.Compact(ws), reduce)
	t.best = make([][]float64, len(t.xs))
	for i := range t.best {
		t.best[i] = make([]float64, len(t.ys))
	}
	for _, it := range items {
		for i, x := range t.xs {
			if x < it.l {
				continue
			}
			for j, y := range t.ys {
				if y >= it.w {
					t.best[i][j] = max(t.best[i][j], it.value)
				}
			}
		}
	}
	t.grow()
	return t
}

// grow works out the most of every place. Of two pieces side by side one can be taken as small as what it yields allows: it
// ends where the most grows.
func (t *table) grow() {
	nx := len(t.xs)
	turned := make([]float64, nx*len(t.ys)) // the most by places across, then along
	alongs := make([][]int32, len(t.ys))    // of each place across: where the most grows along
	var overs []int32                       // where it grows across
	for i, x := range t.xs {
		row := t.best[i]
		overs = overs[:0]
		for j, y := range t.ys {
			col := turned[j*nx : (j+1)*nx]
			best, before, under := row[j], 0.0, 0.0
			if i > 0 {
				before = col[i-1]
			}
			if j > 0 {
				under = row[j-1]
			}
			best = max(best, before, under)
			for _, a := range alongs[j] {
				if 2*t.xs[a] > x {
					break
				}
				t.pairs++
				best = max(best, col[a]+col[t.ax[x-t.xs[a]]])
			}
			for _, b := range overs {
				if 2*t.ys[b] > y {
					break
				}
				t.pairs++
				best = max(best, row[b]+row[t.ay[y-t.ys[b]]])
			}
			row[j], col[i] = best, best
			if i > 0 && best > before {
				alongs[j] = append(alongs[j], int32(i))
			}
			if j > 0 && best > under {
				overs = append(overs, int32(j))
			}
		}
	}
}

// of is the most a rectangle can yield.
func (t *table) of(length, width int) float64 { return t.best[t.ax[length]][t.ay[width]] }

// use adds to counts how often each item is in one best way to cut the rectangle.
func (t *table) use(length, width int, counts []int) {
	t.trace(int(t.ax[length]), int(t.ay[width]), counts)
}

func (t *table) trace(i, j int, counts []int) {
	for {
		v := t.best[i][j]
		switch {
		case v == 0:
			return
		case i > 0 && t.best[i-1][j] == v:
			i--
			continue
		case j > 0 && t.best[i][j-1] == v:
			j--
			continue
		}
		break
	}
	v, x, y := t.best[i][j], t.xs[i], t.ys[j]
	for k, it := range t.items {
		if it.value == v && it.l <= x && it.w <= y {
			counts[k]++
			return
		}
	}
	for a := 1; a < i; a++ {
		if c := int(t.ax[x-t.xs[a]]); t.best[a][j]+t.best[c][j] == v {
			t.trace(a, j, counts)
			t.trace(c, j, counts)
			return
		}
	}
	for b := 1; b < j; b++ {
		if c := int(t.ay[y-t.ys[b]]); t.best[i][b]+t.best[i][c] == v {
			t.trace(i, b, counts)
			t.trace(i, c, counts)
			return
		}
	}
}
