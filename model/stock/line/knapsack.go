package line

// filler finds the most valuable filling of a length with parts each worth a whole number: the question a saw asks
// of every new bar. Its tables are kept between calls.
type filler struct {
	best []int64
	took [][]uint64 // for each bundle of equal parts: the lengths at which it is taken
}

// dense is the longest capacity for which a table over all lengths is kept; longer ones are searched.
const dense = 40000

type bundle struct {
	kind, n int
	size    int64
	value   int64
}

// bundles splits each part's count into 1, 2, 4 … so that any count can be taken as a sum of them.
func bundles(size []int64, value []int64, most []int, top int64) []bundle {
	var out []bundle
	for k, s := range size {
		n := most[k]
		if n == 0 || value[k] <= 0 || s > top {
			continue
		}
		n = int(min(int64(n), top/s))
		for step := 1; n > 0; step *= 2 {
			c := min(step, n)
			out = append(out, bundle{k, c, s * int64(c), value[k] * int64(c)})
			n -= c
		}
	}
	return out
}

// fill returns for each capacity the greatest value and the parts that make it.
// sure is false where the search gave up; the value is then an upper bound and the parts are a good filling.
func (f *filler) fill(size, value []int64, most []int, caps []int64) (worth []int64, what []map[int]int, sure bool) {
	top := int64(0)
	for _, c := range caps {
		top = max(top, c)
	}
	if top > dense {
		return deepFill(size, value, most, caps)
	}
	bs := bundles(size, value, most, top)
	f.table(bs, top)
	for _, c := range caps {
		worth = append(worth, f.best[c])
		got := map[int]int{}
		at := c
		for i := len(bs) - 1; i >= 0; i-- {
			if f.took[i][at/64]>>(uint(at)%64)&1 == 1 {
				got[bs[i].kind] += bs[i].n
				at -= bs[i].size
			}
		}
		what = append(what, got)
	}
	return worth, what, true
}

func (f *filler) table(bs []bundle, top int64) {
	if int64(len(f.best)) < top+1 {
		f.best = make([]int64, top+1)
		f.took = nil
	}
	best := f.best[:top+1]
	clear(best)
	words := int(top/64) + 1
	for len(f.took) < len(bs) {
		f.took = append(f.took, make([]uint64, len(f.best)/64+1))
	}
	for i, b := range bs {
		took := f.took[i][:words]
		clear(took)
		for c := top; c >= b.size; c-- {
			if v := best[c-b.size] + b.value; v > best[c] {
				best[c] = v
				took[c/64] |= 1 << (uint(c) % 64)
			}
		}
	}
}
