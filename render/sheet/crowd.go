package sheet

import (
	"math"

	"splaywright/render/draw"
	"splaywright/render/view"
)

// Short lines of a reduced view that stand too close together to be told apart are left out all together, as a
// draughtsman leaves the dovetails out of a corner seen at a small scale and draws them enlarged elsewhere: some of
// them would tell as little as all, and all of them are a blot. ISO 128-2 wants 0.7 mm of white between lines.
const (
	shortLine = 6.0  // mm of paper; a longer one belongs to the shape of the piece
	crowdNear = 0.8  // from the middle of a line, mm of paper
	crowdMany = 5    // short lines so near crowd a line
	speck     = 0.25 // mm of paper; what is shorter, a corner's round, crowds nothing
	crowdPart = 0.3  // of a row of lines, each touching the next; it goes when more of it is crowded
)

// uncrowded leaves out the rows of short lines of which too many are crowded.
func uncrowded(list []*stretch) []*stretch {
	box := boxOf(list)
	if !anyCrowded(list, box) {
		return list
	}
	runs := straightRuns(list, box)
	c := newCells(box, len(list), 2)
	for i := range list {
		if runs[i] < shortLine {
			c.put(int32(i), list[i].box.Grow(crowdNear))
		}
	}
	heap := newGroups(len(list))
	crowded := make([]bool, len(list))
	for i := range list {
		if runs[i] < shortLine {
			crowded[i] = c.crowds(list, int32(i))
			c.touching(list, int32(i), heap)
		}
	}
	all, bad := make([]int, len(list)), make([]int, len(list))
	for i := range list {
		h := heap.of(i)
		all[h]++
		if crowded[i] {
			bad[h]++
		}
	}
	out := make([]*stretch, 0, len(list))
	for i := range list {
		if h := heap.of(i); float64(bad[h]) <= crowdPart*float64(all[h]) {
			out = append(out, list[i])
		}
	}
	return out
}

// anyCrowded tells, at less cost, whether there can be crowds at all: lines that are short by themselves count.
func anyCrowded(list []*stretch, box draw.Box) bool {
	c := newCells(box, len(list), 2)
	for i := range list {
		if list[i].long < shortLine {
			c.put(int32(i), list[i].box.Grow(crowdNear))
		}
	}
	for i := range list {
		if list[i].long < shortLine && c.crowds(list, int32(i)) {
			return true
		}
	}
	return false
}

// touching puts the short lines that touch an end of line i into its heap.
func (c *cells) touching(list []*stretch, i int32, heap groups) {
	const apart = 0.15 // mm of paper
	s := list[i]
	for _, p := range []draw.Point{s.pts[0], s.pts[len(s.pts)-1]} {
		for at := c.near(p); at >= 0; at = c.entries[at].next {
			k := c.entries[at].line
			if o := list[k]; s.Kind == o.Kind && o.comesNear(p, apart) {
				heap.join(int(i), int(k))
			}
		}
	}
}

// crowds tells whether many short lines stand close to the middle of line i. Hidden lines do not crowd visible ones, and lines
// without a crease none: what lies along a rounded edge runs together with it.
func (c *cells) crowds(list []*stretch, i int32) bool {
	s := list[i]
	mid := middleOf(s.pts)
	n := 0
	for at := c.near(mid); at >= 0; at = c.entries[at].next {
		o := list[c.entries[at].line]
		if o != s && o.Kind != view.Smooth && o.long > speck && (o.Kind == view.Visible || s.Kind != view.Visible) && o.comesNear(mid, crowdNear) {
			if n++; n >= crowdMany {
				return true
			}
		}
	}
	return false
}

// comesNear is passes for lines most of which do not.
func (s *stretch) comesNear(p draw.Point, near float64) bool {
	return p.X >= s.box.Min.X-near && p.X <= s.box.Max.X+near && p.Y >= s.box.Min.Y-near && p.Y <= s.box.Max.Y+near && s.passes(p, near)
}

// groups are numbers put together in groups, each known by one of them.
type groups []int

func newGroups(n int) groups {
	g := make(groups, n)
	for i := range g {
		g[i] = i
	}
	return g
}

func (g groups) of(i int) int {
	for g[i] != i {
		g[i] = g[g[i]]
		i = g[i]
	}
	return i
}

func (g groups) join(i, k int) { g[g.of(k)] = g.of(i) }

func middleOf(pts []draw.Point) draw.Point {
	if len(pts)%2 == 1 {
		return pts[len(pts)/2]
	}
	a, b := pts[len(pts)/2-1], pts[len(pts)/2]
	return draw.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
}

// straightRuns is how long each line is together with those that run on from it in its direction: an arris that
// passes from board to board is one line to the eye. Lines that are long by themselves are not followed further.
func straightRuns(list []*stretch, box draw.Box) []float64 {
	const place, turn = 0.05, 0.04 // mm of paper, radians
	ends := func(i int) [2]draw.Point { return [2]draw.Point{list[i].pts[0], list[i].pts[len(list[i].pts)-1]} }
	c := newCells(box, len(list), 1)
	for i := range list {
		if len(list[i].pts) == 2 {
			for _, p := range ends(i) {
				c.put(int32(i), draw.Box{Min: p, Max: p}.Grow(place))
			}
		}
	}
	group := newGroups(len(list))
	for i := range list {
		if len(list[i].pts) != 2 || list[i].long >= shortLine {
			continue
		}
		for _, p := range ends(i) {
			for at := c.near(p); at >= 0; at = c.entries[at].next {
				j := int(c.entries[at].line)
				if j != i && list[i].Kind == list[j].Kind && sameWay(list[i].pts, list[j].pts, turn) && meets(ends(j), p, place) {
					group.join(i, j)
				}
			}
		}
	}
	sum := make([]float64, len(list))
	for i := range list {
		sum[group.of(i)] += list[i].long
	}
	out := make([]float64, len(list))
	for i := range list {
		out[i] = sum[group.of(i)]
	}
	return out
}

// meets tells whether one of two ends lies so near to a point.
func meets(ends [2]draw.Point, p draw.Point, near float64) bool {
	return draw.Length(ends[0].X-p.X, ends[0].Y-p.Y) <= near || draw.Length(ends[1].X-p.X, ends[1].Y-p.Y) <= near
}

// sameWay tells whether two straight lines have one direction, to within an angle.
func sameWay(a, b []draw.Point, turn float64) bool {
	ax, ay, bx, by := a[1].X-a[0].X, a[1].Y-a[0].Y, b[1].X-b[0].X, b[1].Y-b[0].Y
	return math.Abs(ax*by-ay*bx) <= turn*draw.Length(ax, ay)*draw.Length(bx, by)
}
