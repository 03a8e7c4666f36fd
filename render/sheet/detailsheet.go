package sheet

import (
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

// detailSheets show the joints of a piece enlarged: all on one sheet where they fit it at full size or
// larger, else dovetails and sections each on sheets of their own where that takes no more sheets, at the largest
// scale that needs no more of them than full size.
func detailSheets(p *form.Piece, s set) []*blank {
	tails, cuts := details(p, s.o)
	all := s.enlarged(append(slices.Clone(tails), cuts...))
	if len(all) < 2 {
		return all
	}
	apart := append(s.enlarged(tails), s.enlarged(cuts)...)
	if len(all) < len(apart) {
		return all
	}
	return apart
}

func (s set) enlarged(list []detail) []*blank {
	if len(list) == 0 {
		return nil
	}
	room := s.sheet(entry{}, true).room
	var best [][]shelf
	name := ""
	for i := len(detailScales) - 1; i >= 0; i-- {
		sc := detailScales[i]
		pages, ok := shelve(drawn(list, sc.of, s.o), room)
		if best != nil && (!ok || sc.of > 1 && len(pages) > len(best)) {
			break
		}
		best, name = pages, sc.name
	}
	return s.placed(best, name)
}

func drawn(list []detail, scale float64, o Options) []picture {
	var out []picture
	for _, d := range list {
		f := d.draw(scale)
		mid := (f.Outline().Min.X + f.Outline().Max.X) / 2
		items, box := titled(f.Finish(), mid, d.title, o.ink())
		out = append(out, picture{items, box})
	}
	return out
}

// shelf is a row of pictures.
type shelf struct {
	pics       []picture
	wide, high float64
}

// shelve sets pictures in rows and rows on pages, in their order; false when one is larger than the room.
func shelve(pics []picture, room draw.Box) ([][]shelf, bool) {
	ok := true
	var rows []shelf
	for _, p := range pics {
		ok = ok && fitsIn(p.box, room)
		w, h := p.box.Width(), p.box.Height()
		if n := len(rows); n > 0 && rows[n-1].wide+gap+w <= room.Width() {
			r := &rows[n-1]
			r.pics, r.wide, r.high = append(r.pics, p), r.wide+gap+w, max(r.high, h)
			continue
		}
		rows = append(rows, shelf{[]picture{p}, w, h})
	}
	var pages [][]shelf
	used := 0.0
	for _, r := range rows {
		if n := len(pages); n > 0 && used+gap+r.high <= room.Height() {
			pages[n-1], used = append(pages[n-1], r), used+gap+r.high
			continue
		}
		pages, used = append(pages, []shelf{r}), r.high
	}
	return pages, ok
}

// placed spreads the rows evenly over each sheet and the pictures evenly over each row.
func (s set) placed(pages [][]shelf, scale string) []*blank {
	var out []*blank
	for _, rows := range pages {
		b := s.sheet(entry{title: s.o.say("Details of the joints"), scale: scale}, true)
		free := b.room.Height()
		for _, r := range rows {
			free -= r.high
		}
		y, step := b.room.Max.Y, free/float64(len(rows)+1)
		for _, r := range rows {
			y -= step
			x, between := b.room.Min.X, 0.0
			for _, p := range r.pics {
				between += p.box.Width()
			}
			between = (b.room.Width() - between) / float64(len(r.pics)+1)
			for _, p := range r.pics {
				x += between
				b.Items = append(b.Items, draw.Moved(p.items, draw.Point{X: x - p.box.Min.X, Y: y - p.box.Max.Y})...)
				x += p.box.Width()
			}
			y -= r.high
		}
		out = append(out, b)
	}
	return out
}
