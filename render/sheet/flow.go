package sheet

import (
	"math"
	"slices"

	"splaywright/render/draw"
	"splaywright/render/table"
)

// item is what stands on sheets of tables: a table, or the pictures of the runs, measured once.
type item struct {
	paper string
	t     table.Table
	g     *grid // nil: the runs
	notes []string
	ways  []picture // larger pictures of how boards lie
}

// items are tables with what follows them, measured for the sheet.
func (w *writer) items(paper string, list []table.Table) []*item {
	var out []*item
	runs := false
	for _, t := range list {
		t = t.Filled()
		it := &item{paper: paper, t: t, g: w.grid(t), ways: w.ways(t)}
		it.notes = w.noteLines(it.g.t)
		out = append(out, it)
		runs = runs || t.ID == "cut-list"
	}
	if runs {
		out = append(out, &item{paper: paper})
	}
	return out
}

// manner is how an item begins.
type manner int

const (
	whole  manner = iota // on what is left of a sheet where all of it finds room there, otherwise on a new one
	broken               // on what is left of a sheet, and goes on on the next
	fresh                // on a new sheet
)

// What a way to lay tables out costs. A sheet is saved for a few broken tables, not for many.
const (
	costSheet  = 100.0
	costBroken = 15.0 // a table that one sheet could hold goes on on the next
	costJoined = 8.0  // a paper begins on the sheet of another, so that it cannot go to its machine by itself
	costStray  = 12.0 // notes stand on another sheet than their table, or a row or two do
	costEmpty  = 40.0 // a sheet that is left empty; none of it where half of it is filled
)

// way is how the first few items are laid out: how each begins, how far down the last sheet they reach and what it costs.
type way struct {
	manners []manner
	y       float64
	opened  bool // a sheet of tables, after the one that the writer began with
	cost    float64
}

// layOut tells how each item should begin so that there are few sheets, few of them half empty, and few tables broken.
func (w *writer) layOut(items []*item) []manner {
	ways := []way{{y: w.y, opened: w.b == nil}}
	for k, it := range items {
		var next []way
		for _, from := range ways {
			for _, how := range w.manners(items, k) {
				to := w.try(from, it, how)
				if k > 0 && items[k-1].paper != it.paper && to.joined {
					to.cost += costJoined
				}
				next = better(next, to.way)
			}
		}
		ways = next
	}
	return slices.MinFunc(ways, func(a, b way) int {
		switch {
		case a.cost < b.cost-1e-9:
			return -1
		case a.cost > b.cost+1e-9:
			return 1
		}
		return 0
	}).manners
}

// manners are the ways in which an item may begin.
func (w *writer) manners(items []*item, k int) []manner {
	it := items[k]
	switch {
	case w.set.o.Apart && k > 0 && items[k-1].paper != it.paper:
		return []manner{fresh}
	case it.g == nil:
		return []manner{whole}
	}
	return []manner{whole, broken, fresh}
}

// better keeps the cheapest of the ways that end alike.
func better(ways []way, to way) []way {
	for i, v := range ways {
		if v.opened == to.opened && math.Abs(v.y-to.y) < 1e-6 {
			if to.cost < v.cost-1e-9 {
				ways[i] = to
			}
			return ways
		}
	}
	return append(ways, to)
}

// tried is a way with what is only asked of its last item.
type tried struct {
	way
	joined bool // it begins below another
	sheets int  // that it begins
}

// try lays one item out without drawing it.
func (w *writer) try(from way, it *item, how manner) tried {
	d := &writer{set: w.set, piece: w.piece, plain: w.blank(), y: from.y, dry: true, drawn: w.drawn}
	if from.opened {
		b := *d.plain
		d.b = &b
		if len(from.manners) == 0 { // nothing is begun
			d.y = math.Inf(-1)
		}
	} else {
		b := *w.b
		b.Items = nil
		d.b = &b
	}
	d.lay(it, how)
	n := d.tally
	cost := from.cost + costSheet*float64(n.sheets) + costStray*float64(n.stray) + costEmpty*n.empty
	if n.broken {
		cost += costBroken
	}
	return tried{way{append(slices.Clip(from.manners), how), d.y, from.opened || n.sheets > 0, cost}, n.joined, n.sheets}
}

// blank is an empty sheet of tables, to measure by.
func (w *writer) blank() *blank {
	if w.plain == nil {
		w.plain = w.set.sheet(entry{}, false)
		w.plain.Items = nil
	}
	return w.plain
}

// tally counts what speaks against a way to lay out an item.
type tally struct {
	sheets, stray int
	empty         float64
	broken        bool
	joined        bool
}

// left notes how empty a sheet is that is left.
func (n *tally) left(room draw.Box, y float64) {
	if y >= room.Min.Y {
		n.empty += max(0, 2*(y-room.Min.Y)/room.Height()-1)
	}
}
