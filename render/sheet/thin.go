package sheet

import (
	"slices"

	"splaywright/render/draw"
	"splaywright/render/view"
)

// Lines of a reduced view that would run together on paper are drawn once: a line goes when all of it
// lies nearer than this, mm of paper, to one line that stays. The limits are those at which two pens
// of ISO 128-2's widths leave less than a hair of white between them.
const (
	besideVisible = 0.45
	besideHidden  = 0.35
)

// stretch is a line of a figure: its points, mm of paper, the box round them and its length.
type stretch struct {
	*view.Line
	pts  []draw.Point
	box  draw.Box
	long float64
	fine bool // drawn in a narrow line, since it stands in a crowd
}

// thinned scales a picture's lines and leaves out those that would run together; at full size and
// above none. Visible lines stay before others and long ones before short ones.
func (f *figure) thinned(lines []view.Line) []*stretch {
	list := f.stretches(lines, view.Hidden)
	if f.scale >= 1 {
		return list
	}
	return uncrowded(thin(list))
}

// stretches scales a picture's lines: those of the kinds up to one, of which visible is the first.
func (f *figure) stretches(lines []view.Line, upTo view.Kind) []*stretch {
	n, points := 0, 0
	for i := range lines {
		if lines[i].Kind <= upTo {
			n, points = n+1, points+len(lines[i].Points)
		}
	}
	list, all, room := make([]*stretch, 0, n), make([]stretch, n), make([]draw.Point, 0, points)
	for i := range lines {
		l := &lines[i]
		if l.Kind > upTo {
			continue
		}
		at := len(room)
		for _, p := range l.Points {
			room = append(room, scaled(p, f.scale))
		}
		s := &all[len(list)]
		s.Line, s.pts, s.box = l, room[at:len(room):len(room)], draw.EmptyBox()
		for j, p := range s.pts {
			s.box = s.box.Add(p)
			if j > 0 {
				s.long += draw.Length(p.X-s.pts[j-1].X, p.Y-s.pts[j-1].Y)
			}
		}
		list = append(list, s)
	}
	return list
}

// thin leaves out what would run together with what stays.
func thin(list []*stretch) []*stretch {
	type rank struct { // what they are sorted by
		long float64
		kind view.Kind
		at   int32
	}
	order := make([]rank, len(list))
	for i := range list {
		order[i] = rank{list[i].long, list[i].Kind, int32(i)}
	}
	slices.SortFunc(order, func(a, b rank) int {
		switch {
		case a.kind != b.kind:
			return int(a.kind) - int(b.kind)
		case a.long > b.long:
			return -1
		case a.long < b.long:
			return 1
		}
		return int(a.at - b.at)
	})
	kept := make([]*stretch, 0, len(list))
	c := newCells(boxOf(list), len(list), 0)
	for _, r := range order {
		if s := list[r.at]; !c.hasBeside(kept, s) {
			c.put(int32(len(kept)), s.box.Grow(besideVisible))
			kept = append(kept, s)
		}
	}
	return kept
}

// cells tells which lines come near a place: squares over the figure, each with a list of the lines that reach it.
type cells struct {
	from       draw.Point
	per        float64 // cells a mm
	cols, rows int
	first      []int32 // by cell: the place of its last entry, -1 for none
	entries    []reach
}

type reach struct{ line, next int32 }

// boxOf is the box round lines.
func boxOf(list []*stretch) draw.Box {
	all := draw.EmptyBox()
	for _, s := range list {
		all = all.Join(s.box)
	}
	return all
}

// newCells makes cells of a size, mm, over a box for so many lines; of a 48th of the box when it is 0.
func newCells(all draw.Box, lines int, size float64) *cells {
	all = all.Grow(1)
	if size == 0 {
		size = max(all.Width(), all.Height(), 1) / 48
	}
	c := &cells{from: all.Min, per: 1 / size, entries: make([]reach, 0, 4*lines)}
	if lines > 0 {
		c.cols, c.rows = int(all.Width()*c.per)+1, int(all.Height()*c.per)+1
		c.first = make([]int32, c.cols*c.rows)
		for i := range c.first {
			c.first[i] = -1
		}
	}
	return c
}

func (c *cells) at(p draw.Point) (col, row int) {
	return min(max(int((p.X-c.from.X)*c.per), 0), c.cols-1), min(max(int((p.Y-c.from.Y)*c.per), 0), c.rows-1)
}

// put notes a line in the cells that a box reaches.
func (c *cells) put(line int32, box draw.Box) {
	c0, r0 := c.at(box.Min)
	c1, r1 := c.at(box.Max)
	for r := r0; r <= r1; r++ {
		for k := c0; k <= c1; k++ {
			f := &c.first[r*c.cols+k]
			c.entries = append(c.entries, reach{line, *f})
			*f = int32(len(c.entries) - 1)
		}
	}
}

// near is the first entry of the cell of a place, -1 for none.
func (c *cells) near(p draw.Point) int32 {
	col, row := c.at(p)
	return c.first[row*c.cols+col]
}

// hasBeside tells whether a line that stays runs along all of s. It comes near the corner of the box of s, too.
func (c *cells) hasBeside(kept []*stretch, s *stretch) bool {
	for k := c.near(s.box.Min); k >= 0; k = c.entries[k].next {
		if s.beside(kept[c.entries[k].line]) {
			return true
		}
	}
	return false
}

// beside tells whether all of s lies so near to k that the two would be one line.
func (s *stretch) beside(k *stretch) bool {
	near := besideHidden
	if k.Kind == view.Visible {
		near = besideVisible
	}
	if s.box.Min.X < k.box.Min.X-near || s.box.Max.X > k.box.Max.X+near || s.box.Min.Y < k.box.Min.Y-near || s.box.Max.Y > k.box.Max.Y+near {
		return false
	}
	for _, p := range s.pts {
		if !k.passes(p, near) {
			return false
		}
	}
	return true
}

func (s *stretch) passes(p draw.Point, near float64) bool {
	for i := 1; i < len(s.pts); i++ {
		if fromSegment(p, s.pts[i-1], s.pts[i]) <= near {
			return true
		}
	}
	return false
}
