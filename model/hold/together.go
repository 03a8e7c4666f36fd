package hold

import (
	"math"
	"slices"
	"strings"

	"splaywright/model/form"
)

// together makes one figure of those that are the same for all aprons of a seat, or for all stretchers, among the figures from
// one on. What is beyond its limit stays apart, so that the sizes of each are offered.
func (r *reckoning) together(from int) {
	for _, kind := range [...]struct{ prefix, each string }{{"apron-", "each apron"}, {"stretcher-", "each stretcher"}} {
		var rails []form.Rail
		for _, s := range r.seat.Rails {
			if strings.HasPrefix(s.ID, kind.prefix) {
				rails = append(rails, s)
			}
		}
		if len(rails) > 1 {
			r.each(from, rails, kind.each)
		}
	}
}

// each puts the figures of some rails that differ in nothing but their names where the first of them stands.
func (r *reckoning) each(from int, rails []form.Rail, name string) {
	for n := from; n < len(r.out); n++ {
		one, ok := r.of(r.out[n], rails[0], name)
		if !ok {
			continue
		}
		alike := []int{n}
		for _, s := range rails[1:] {
			for k := from; k < len(r.out); k++ {
				if f, ok := r.of(r.out[k], s, name); ok && f.same(one) {
					alike = append(alike, k)
					one.Parts, one.Sizes = join(one.Parts, f.Parts), join(one.Sizes, f.Sizes)
					break
				}
			}
		}
		if len(alike) < len(rails) {
			continue
		}
		r.out[n] = one
		for _, k := range slices.Backward(slices.Sorted(slices.Values(alike[1:]))) {
			r.out = slices.Delete(r.out, k, k+1)
		}
	}
}

// of is a figure of a rail under another name; false where it is none of that rail or beyond its limit.
func (r *reckoning) of(f Figure, s form.Rail, name string) (Figure, bool) {
	own := r.nameOf(s.ID)
	if f.Over() || !slices.Contains(f.Parts, s.ID) || !strings.Contains(f.What, own) {
		return f, false
	}
	f.What = strings.Replace(f.What, own, name, 1)
	return f, true
}

// same tells whether two figures say the same, but for the parts they are of.
func (f Figure) same(o Figure) bool {
	near := func(a, b float64) bool { return math.Abs(a-b) <= noise+1e-9*math.Abs(a) }
	return f.ID == o.ID && f.What == o.What && near(f.Value, o.Value) && near(f.Limit, o.Limit) && f.Formula == o.Formula &&
		f.Source == o.Source && f.Advice == o.Advice && f.Level == o.Level
}

// join is a list and what of another is not in it.
func join(a, b []string) []string {
	out := slices.Clone(a)
	for _, s := range b {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}
