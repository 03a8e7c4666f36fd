package band

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// Reading is how near a rule reads a finished piece, mm (common practice).
const Reading = 0.5

// Reason is one fault that explains what was measured: a cut that is off, or all cuts alike by as much, such as from a saw
// that was set so.
type Reason struct {
	Causes []int   // of the bands, all alike
	Off    float64 // each is off by so much, mm or degrees, with its sign
	Times  float64 // of what the cut holds to
	Left   float64 // mm that the worst of the figures that were measured still misses by
	Gives  []float64
}

// Explains tells whether the reason leaves nothing that a rule could see.
func (r Reason) Explains() bool { return r.Left <= Reading }

// Measured is a figure of the bands and what it came out at.
type Measured struct {
	Figure int
	At     float64 // mm
}

// Measured are what a design says was measured of the figures that its form has.
func (b Bands) Measured(c form.CameOut) []Measured {
	told := map[string]measure.Length{"width-top": c.WidthTop, "width-floor": c.WidthFloor, "depth-top": c.DepthTop, "depth-floor": c.DepthFloor,
		"height-whole": c.Height, "height-left": c.HeightLeft, "height-right": c.HeightRight}
	var out []Measured
	for i, f := range b.Figures {
		if at := told[f.Key]; f.Key != "" && at > 0 {
			out = append(out, Measured{i, at.MM()})
		}
	}
	return out
}

// farthest is how many times what it holds to a cut is taken to be off at the most: beyond that something else is wrong.
const farthest = 100

// Reasons are the single faults that explain what was measured, those that explain all of it first, of these the one that
// asks least of the shop's usual care. Nothing where nothing was measured, or all is within what a rule reads.
func (b Bands) Reasons(measured []Measured) []Reason {
	if len(measured) == 0 || worst(measured, b.values(nil)) <= Reading {
		return nil
	}
	var out []Reason
	for _, group := range b.groups() {
		if r, ok := b.reason(group, measured); ok {
			out = append(out, r)
		}
	}
	slices.SortStableFunc(out, func(x, y Reason) int {
		if x.Explains() != y.Explains() {
			if x.Explains() {
				return -1
			}
			return 1
		}
		if !x.Explains() {
			if c := cmp.Compare(math.Round(x.Left*10), math.Round(y.Left*10)); c != 0 {
				return c
			}
		}
		return cmp.Compare(math.Round(x.Times*100), math.Round(y.Times*100))
	})
	return out
}

// kind is what causes have in common that one setting makes: what it is, of parts that are cut alike. All bevels are cut with
// one tilt.
func (c Cause) kind() [2]string {
	role, _, _ := strings.Cut(c.Part, "-")
	switch {
	case c.What == OfBevel:
		role = ""
	case role == "back":
		role = "front"
	}
	return [2]string{c.What, role}
}

// groups are the causes one by one, and those of a kind all together.
func (b Bands) groups() [][]int {
	var out [][]int
	kinds := map[[2]string][]int{}
	var order [][2]string
	for k, c := range b.Causes {
		out = append(out, []int{k})
		kind := c.kind()
		if kinds[kind] == nil {
			order = append(order, kind)
		}
		kinds[kind] = append(kinds[kind], k)
	}
	for _, kind := range order {
		if g := kinds[kind]; len(g) > 1 {
			out = append(out, g)
		}
	}
	return out
}

// values are the figures with the causes of a group off by so much.
func (b Bands) values(group []int, by ...float64) []float64 {
	off := make([]float64, len(b.Causes))
	for _, k := range group {
		off[k] = by[0]
	}
	return b.built(off)
}

// reason finds by how much a group is off when it comes nearest to what was measured: Newton's way on the sum of squares,
// with the figures as they are and not as they begin.
func (b Bands) reason(group []int, measured []Measured) (Reason, bool) {
	const step = 1e-3
	x := 0.0
	for range 30 {
		now, more := b.values(group, x), b.values(group, x+step)
		up, square := 0.0, 0.0
		for _, m := range measured {
			slope := (more[m.Figure] - now[m.Figure]) / step
			up, square = up+slope*(m.At-now[m.Figure]), square+slope*slope
		}
		if square < 1e-12 {
			return Reason{}, false // it changes nothing that was measured
		}
		d := up / square
		x += d
		if math.Abs(d) < 1e-9 {
			break
		}
	}
	hold := b.Causes[group[0]].Off
	gives := b.values(group, x)
	r := Reason{Causes: group, Off: x, Times: math.Abs(x) / hold, Left: worst(measured, gives), Gives: gives}
	return r, r.Times <= farthest && r.Left < worst(measured, b.values(nil))-Reading/2 && !math.IsNaN(x)
}

// worst is the largest miss between what was measured and what is given.
func worst(measured []Measured, gives []float64) float64 {
	most := 0.0
	for _, m := range measured {
		most = math.Max(most, math.Abs(m.At-gives[m.Figure]))
	}
	return most
}
