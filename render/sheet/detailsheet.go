package sheet

import (
	"cmp"
	"slices"

	"splaywright/model/form"
	"splaywright/render/draw"
)

// detailScales are those of enlarged details, the largest first; the others serve thick stock on small
// sheets.
var detailScales = []ratio{{"2:1", 2}, {"1:1", 1}, {"1:2", 0.5}, {"1:4", 0.25}}

// picture is a detail as drawn.
type picture struct {
	items []draw.Item
	box   draw.Box
}

// detailSheets show the joints of a piece enlarged, on as few sheets as hold them at full size, or at half of it where that
// would show hardly more than one a sheet: dovetails and sections on sheets of their own where that takes no more, at the
// largest scale that takes no more of them either.
func detailSheets(p *form.Piece, s set) []*blank {
	tails, cuts := details(p, s.o)
	all := s.enlarged(append(slices.Clone(tails), cuts...), false)
	if len(all) < 2 {
		return all
	}
	apart := append(s.enlarged(tails, false), s.enlarged(cuts, false)...)
	tight := s.enlarged(append(slices.Clone(tails), cuts...), true)
	switch {
	case len(tight) < min(len(all), len(apart)):
		return tight
	case len(all) < len(apart):
		return all
	}
	return apart
}

func (s set) enlarged(list []detail, tight bool) []*blank {
	if len(list) == 0 {
		return nil
	}
	room := s.sheet(entry{}, true).room
	var best [][]laidPicture
	name := ""
	for i := len(detailScales) - 1; i >= 0; i-- {
		sc := detailScales[i]
		pages, ok := laidOut(drawn(list, sc.of, tight, s.o), room)
		alone := 2*len(list) <= 3*len(pages) // many of them would have a sheet to themselves
		if best != nil && (!ok || (alone || sc.of > 1) && len(pages) > len(best)) {
			break
		}
		best, name = pages, sc.name
	}
	return s.placed(best, name)
}

func drawn(list []detail, scale float64, tight bool, o Options) []picture {
	var out []picture
	for _, d := range list {
		f := d.draw(scale, tight)
		mid := (f.Outline().Min.X + f.Outline().Max.X) / 2
		items, box := titled(f.Finish(), mid, d.title, o.ink())
		out = append(out, picture{items, box})
	}
	return out
}

// laidPicture is a picture with how far it is moved to its place on a sheet's room.
type laidPicture struct {
	picture
	by draw.Point
}

// laidOut sets pictures on as few pages as it finds, in their order, in that order begun elsewhere, or the tall ones
// first, and then with as much air between them as these pages have; false when one is larger than the room.
func laidOut(pics []picture, room draw.Box) ([][]laidPicture, bool) {
	ok := !slices.ContainsFunc(pics, func(p picture) bool { return !fitsIn(p.box, room) })
	tall := slices.Clone(pics)
	slices.SortStableFunc(tall, func(a, b picture) int { return cmp.Compare(b.box.Height(), a.box.Height()) })
	var orders [][]picture
	for i := range pics {
		orders = append(orders, slices.Concat(pics[i:], pics[:i]))
	}
	var best [][]laidPicture
	for _, order := range append(orders, tall) {
		for _, air := range []float64{4 * gap, 3 * gap, 2 * gap, gap} {
			if pages := packed(order, room, air); best == nil || len(pages) < len(best) {
				best = pages
			}
		}
	}
	return best, ok
}

// packed sets each picture as high and then as far left as a page has room, on the first page that has some.
func packed(pics []picture, room draw.Box, air float64) [][]laidPicture {
	var pages [][]laidPicture
	var free [][]draw.Box // by page: the largest empty rooms, which may overlap
	for _, p := range pics {
		set := false
		for k := range pages {
			if at, ok := highest(free[k], p.box); ok {
				pages[k], free[k], set = append(pages[k], moveTo(p, at)), without(free[k], at, p.box, air), true
				break
			}
		}
		if !set {
			at := draw.Point{X: room.Min.X, Y: room.Max.Y}
			pages, free = append(pages, []laidPicture{moveTo(p, at)}), append(free, without([]draw.Box{room}, at, p.box, air))
		}
	}
	return pages
}

// moveTo moves a picture so that its upper left corner is at a place.
func moveTo(p picture, at draw.Point) laidPicture {
	return laidPicture{p, draw.Point{X: at.X - p.box.Min.X, Y: at.Y - p.box.Max.Y}}
}

// highest is the upper left corner of the highest, and of these the leftmost, of the rooms that hold a box.
func highest(free []draw.Box, b draw.Box) (draw.Point, bool) {
	var best draw.Point
	found := false
	for _, f := range free {
		if at := (draw.Point{X: f.Min.X, Y: f.Max.Y}); fitsIn(b, f) && (!found || at.Y > best.Y || at.Y == best.Y && at.X < best.X) {
			best, found = at, true
		}
	}
	return best, found
}

// without are the largest empty rooms that are left once a box with air to its right and below stands at a place.
func without(free []draw.Box, at draw.Point, b draw.Box, air float64) []draw.Box {
	taken := draw.Box{Min: draw.Point{X: at.X - air, Y: at.Y - b.Height() - air}, Max: draw.Point{X: at.X + b.Width() + air, Y: at.Y + air}}
	var out []draw.Box
	for _, f := range free {
		if !f.Meets(taken) {
			out = append(out, f)
			continue
		}
		for _, part := range []draw.Box{
			{Min: f.Min, Max: draw.Point{X: taken.Min.X, Y: f.Max.Y}}, {Min: draw.Point{X: taken.Max.X, Y: f.Min.Y}, Max: f.Max},
			{Min: f.Min, Max: draw.Point{X: f.Max.X, Y: taken.Min.Y}}, {Min: draw.Point{X: f.Min.X, Y: taken.Max.Y}, Max: f.Max},
		} {
			if part.Width() > 1 && part.Height() > 1 {
				out = append(out, part)
			}
		}
	}
	return out
}

// placed draws the sheets, what stands on each in the middle of it.
func (s set) placed(pages [][]laidPicture, scale string) []*blank {
	var out []*blank
	for _, pics := range pages {
		b := s.sheet(entry{title: s.o.say("Details of the joints"), scale: scale}, true)
		box := draw.EmptyBox()
		for _, p := range pics {
			box = box.Join(p.box.Moved(p.by))
		}
		d := draw.Point{X: (b.room.Min.X + b.room.Max.X - box.Min.X - box.Max.X) / 2, Y: (b.room.Min.Y + b.room.Max.Y - box.Min.Y - box.Max.Y) / 2}
		for _, p := range pics {
			b.Items = append(b.Items, draw.Moved(p.items, draw.Point{X: p.by.X + d.X, Y: p.by.Y + d.Y})...)
		}
		out = append(out, b)
	}
	return out
}
