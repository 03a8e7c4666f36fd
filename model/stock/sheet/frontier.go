package sheet

import (
	"slices"

	"splaywright/model/stock"
)

// frontier knows, for tasks with few units, the smallest rectangles that any choice of units can be cut from, kerf
// included and places to avoid left out of account. It is exact for sound boards and a bound for others.
type frontier struct {
	kinds []*unit
	count []int
	step  []int // index of a choice is the sum of step times number taken
	size  int
	sizes [][]side // of each choice, by rising length and falling width
	fits  [][]bool // of each shape: the choices it may hold
	full  int      // the choice of everything
}

type side struct{ l, w float64 }

// Limits within which frontiers are worked out.
const (
	mostChoices = 260
	mostWork    = 20_000_000
)

// newFrontier returns nil where there are too many choices.
func newFrontier(t stock.Task, shapes []*shape, us []*unit) *frontier {
	f := &frontier{size: 1}
	for _, u := range us {
		i := slices.IndexFunc(f.kinds, func(v *unit) bool {
			return v.same(u)
		})
		if i < 0 {
			f.kinds, f.count = append(f.kinds, u), append(f.count, 1)
			continue
		}
		f.count[i]++
	}
	for _, n := range f.count {
		f.step = append(f.step, f.size)
		if f.size *= n + 1; f.size > mostChoices {
			return nil
		}
	}
	f.full = f.size - 1
	k := t.Saw.Kerf
	l, w := 0.0, 0.0
	for _, s := range shapes {
		l, w = max(l, s.root.Length()+k), max(w, s.root.Width()+k)
	}
	f.build(k, l+eps, w+eps)
	f.match(shapes, k)
	return f
}

func (f *frontier) build(k, l, w float64) {
	f.sizes = make([][]side, f.size)
	for n := 1; n < f.size; n++ {
		var all []side
		if i := slices.Index(f.step, n); i >= 0 {
			u := f.kinds[i]
			all = append(all, side{u.l + k, u.w + k})
			if u.turn {
				all = append(all, side{u.w + k, u.l + k})
			}
		}
		for m := 1; 2*m <= n; m++ {
			if !f.within(m, n) {
				continue
			}
			for _, a := range f.sizes[m] {
				for _, b := range f.sizes[n-m] {
					if c := (side{a.l + b.l, max(a.w, b.w)}); c.l <= l {
						all = append(all, c)
					}
					if c := (side{max(a.l, b.l), a.w + b.w}); c.w <= w {
						all = append(all, c)
					}
				}
			}
			if len(all) > 4000 {
				all = smallest(all)
			}
		}
		f.sizes[n] = smallest(all)
	}
}

// within says whether choice m is part of choice n.
func (f *frontier) within(m, n int) bool {
	for i, s := range f.step {
		if m/s%(f.count[i]+1) > n/s%(f.count[i]+1) {
			return false
		}
	}
	return true
}

// smallest drops what is larger both ways than another.
func smallest(all []side) []side {
	slices.SortFunc(all, func(a, b side) int {
		switch {
		case a.l < b.l:
			return -1
		case a.l > b.l:
			return 1
		case a.w < b.w:
			return -1
		case a.w > b.w:
			return 1
		}
		return 0
	})
	out := all[:0]
	for _, s := range all {
		if len(out) == 0 || s.w < out[len(out)-1].w-eps {
			out = append(out, s)
		}
	}
	return slices.Clone(out)
}

func (f *frontier) match(shapes []*shape, k float64) {
	for i, s := range shapes {
		fits := make([]bool, f.size)
		fits[0] = true
		for n := 1; n < f.size; n++ {
			may := true
			for j, u := range f.kinds {
				may = may && (n/f.step[j]%(f.count[j]+1) == 0 || u.may(i))
			}
			fits[n] = may && slices.ContainsFunc(f.sizes[n], func(c side) bool {
				return c.l <= s.root.Length()+k+eps && c.w <= s.root.Width()+k+eps
			})
		}
		f.fits = append(f.fits, fits)
	}
}

// may says whether a set of boards may hold everything.
func (f *frontier) may(boards uint64) bool {
	reach := make([]bool, f.size)
	reach[0] = true
	for i, fits := range f.fits {
		if boards>>i&1 == 0 {
			continue
		}
		for n := f.size - 1; n >= 0; n-- { // from large to small: what this board adds is not added again
			if reach[n] {
				continue
			}
			for m := 1; m <= n; m++ {
				if fits[m] && reach[n-m] && f.within(m, n) {
					reach[n] = true
					break
				}
			}
		}
	}
	return reach[f.full]
}
