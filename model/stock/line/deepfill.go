package line

import (
	"math"
	"slices"
)

// deepMost is how many places a search for one filling looks at before it gives up.
const deepMost = 200_000

type deep struct {
	size, value []int64
	kind, most  []int
	best        int64
	got, now    []int
	nodes       int
}

// deepFill searches the most valuable filling where lengths are too fine for a table.
func deepFill(size, value []int64, most []int, caps []int64) (worth []int64, what []map[int]int, sure bool) {
	sure = true
	for _, c := range caps {
		d := newDeep(size, value, most, c)
		d.walk(0, c, 0)
		v := d.best
		if d.nodes > deepMost {
			sure = false
			v = d.loose(0, c) // an upper bound in place of the value
		}
		got := map[int]int{}
		for i, n := range d.got {
			if n > 0 {
				got[d.kind[i]] = n
			}
		}
		worth, what = append(worth, v), append(what, got)
	}
	return worth, what, sure
}

func newDeep(size, value []int64, most []int, c int64) *deep {
	var order []int
	for k := range size {
		if value[k] > 0 && most[k] > 0 && size[k] <= c {
			order = append(order, k)
		}
	}
	slices.SortFunc(order, func(a, b int) int {
		x := float64(value[a])*float64(size[b]) - float64(value[b])*float64(size[a])
		switch {
		case x > 0:
			return -1
		case x < 0:
			return 1
		}
		return a - b
	})
	d := &deep{kind: order, got: make([]int, len(order)), now: make([]int, len(order))}
	for _, k := range order {
		d.size, d.value, d.most = append(d.size, size[k]), append(d.value, value[k]), append(d.most, most[k])
	}
	return d
}

// loose is the value reached when the last part may be split; rounded up with room for the float's error.
func (d *deep) loose(i int, room int64) int64 {
	sum := int64(0)
	for ; i < len(d.size); i++ {
		n := min(int64(d.most[i]), room/d.size[i])
		sum += n * d.value[i]
		room -= n * d.size[i]
		if n < int64(d.most[i]) {
			part := float64(room) / float64(d.size[i]) * float64(d.value[i])
			return sum + int64(math.Ceil(part*(1+1e-12)))
		}
	}
	return sum
}

func (d *deep) walk(i int, room, sum int64) {
	d.nodes++
	if sum > d.best {
		d.best = sum
		copy(d.got, d.now)
	}
	if i == len(d.size) || d.nodes > deepMost || sum+d.loose(i, room) <= d.best {
		return
	}
	for n := min(int64(d.most[i]), room/d.size[i]); n >= 0; n-- {
		d.now[i] = int(n)
		d.walk(i+1, room-n*d.size[i], sum+n*d.value[i])
	}
	d.now[i] = 0
}
