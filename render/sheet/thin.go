package sheet

import (
	"math"
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
	view.Line
	pts  []draw.Point
	box  draw.Box
	long float64
}

// thinned scales a picture's lines and leaves out those that would run together; at full size and
// above none. Visible lines stay before others and long ones before short ones.
func (f *figure) thinned(lines []view.Line) []stretch {
	list := f.stretches(lines)
	if f.scale >= 1 {
		return list
	}
	return thin(list)
}

// stretches scales a picture's lines.
func (f *figure) stretches(lines []view.Line) []stretch {
	list := make([]stretch, len(lines))
	for i, l := range lines {
		s := stretch{Line: l, pts: f.scaled(l.Points), box: draw.EmptyBox()}
		for j, p := range s.pts {
			s.box = s.box.Add(p)
			if j > 0 {
				s.long += math.Hypot(p.X-s.pts[j-1].X, p.Y-s.pts[j-1].Y)
			}
		}
		list[i] = s
	}
	return list
}

// thin leaves out what would run together with what stays.
func thin(list []stretch) []stretch {
	slices.SortStableFunc(list, func(a, b stretch) int {
		if a.Kind != b.Kind {
			return int(a.Kind) - int(b.Kind)
		}
		switch {
		case a.long > b.long:
			return -1
		case a.long < b.long:
			return 1
		}
		return 0
	})
	kept := list[:0]
	for _, s := range list {
		if !s.besideAny(kept) {
			kept = append(kept, s)
		}
	}
	return kept
}

func (s *stretch) besideAny(kept []stretch) bool {
	for i := range kept {
		if s.beside(&kept[i]) {
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
