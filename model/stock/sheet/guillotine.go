package sheet

import "slices"

// item is a rectangle worth something, in whole numbers.
type item struct {
	l, w  int
	value float64
}

// table is the most that any rectangle of a sheet can yield by cuts that go right through, each item as often as
// wanted (Operations Research 14 (1966) 1045–1074; only places where sums of items end are looked at, after
// J. Operational Research Society 36 (1985) 297–306).
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
		i, _ := slices.BinarySearch(t.xs, it.l)
		j, _ := slices.BinarySearch(t.ys, it.w)
		if i < len(t.xs) && j < len(t.ys) {
			t.best[i][j] = max(t.best[i][j], it.value)
		}
	}
	t.grow()
	return t
}

// grown is a size of piece that yields more than pieces in a row do: how much, and what it lacks of the strip it is cut from,
// were this as full all along as a strip can be.
type grown struct {
	lack, value float64
	size        int32
}

// grow works out the most of every place. The smallest piece of a row is no row itself, no longer than half of it, and lacks
// less than the row does.
func (t *table) grow() {
	nx := len(t.xs)
	turned := make([]float64, nx*len(t.ys)) // the most by places across, then along
	alongs := make([][]grown, len(t.ys))    // of each place across: the first pieces of rows along
	var overs []grown                       // those of rows across
	dense, thick := t.densest(len(t.ay)-1, false), t.densest(len(t.ax)-1, true)
	for i, x := range t.xs {
		row := t.best[i]
		overs = overs[:0]
		for j, y := range t.ys {
			col := turned[j*nx : (j+1)*nx]
			before, under := 0.0, 0.0
			if i > 0 {
				before = col[i-1]
			}
			if j > 0 {
				under = row[j-1]
			}
			one := max(row[j], before, under)
			full, high := float64(x)*dense[y], float64(y)*thick[x]
			along := t.pair(alongs[j], col, t.ax, x, full, before)
			over := t.pair(overs, row, t.ay, y, high, under)
			best := max(one, along, over)
			row[j], col[i] = best, best
			if best > along {
				alongs[j] = append(alongs[j], grown{full - best, best, int32(x)})
			}
			if best > over {
				overs = append(overs, grown{high - best, best, int32(y)})
			}
		}
	}
}

// pair is the most of a first piece and what follows within a size that could yield full, and no less than best.
func (t *table) pair(first []grown, most []float64, at []int32, size int, full, best float64) float64 {
	full *= 1 + 1e-12
	lack := full - best
	for n := range first {
		p := &first[n]
		if 2*int(p.size) > size {
			t.pairs += n
			return best
		}
		if p.lack < lack {
			if v := p.value + most[at[size-int(p.size)]]; v > best {
				best, lack = v, full-v
			}
		}
	}
	t.pairs += len(first)
	return best
}

// densest is, for strips along the board of every width up to a widest, the most that a unit of their length can yield: what
// lies over one another at any place of them is no wider than they are. With across, for strips across it and their length.
func (t *table) densest(widest int, across bool) []float64 {
	out := make([]float64, widest+1)
	for _, it := range t.items {
		size, value := it.w, it.value/float64(it.l)
		if across {
			size, value = it.l, it.value/float64(it.w)
		}
		for n := size; n <= widest; n++ {
			out[n] = max(out[n], value+out[n-size])
		}
	}
	return out
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
