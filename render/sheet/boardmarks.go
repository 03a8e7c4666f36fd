package sheet

import (
	"slices"

	"splaywright/model/stock"
	"splaywright/render/draw"
)

// Sizes of marks on boards, mm.
const (
	crossArm   = 2.5 // of the × on waste, at most
	leastCross = 2.0 // waste smaller than this has none
	nameText   = 1.9 // height of the capitals of the name of a place to avoid
	nameOff    = 1.3 // between a place and its name beside it
)

// waste marks waste as at the bench: with an ×, clear of what stands there already.
func (d *boardDrawing) waste() {
	d.l.Each(func(q *stock.Piece, _ int) {
		if q.Kind == stock.Waste {
			d.cross(d.box(d.board.Room(q.Rect)))
		}
	})
}

func (d *boardDrawing) cross(box draw.Box) {
	w, h := box.Width(), box.Height()
	if w < leastCross || h < leastCross {
		return
	}
	r := min(crossArm, w/2-0.4, h/2-0.4)
	for _, along := range []float64{0.5, 0.25, 0.75, 0.12, 0.88} {
		for _, across := range []float64{0.5, 0.25, 0.75} {
			c := draw.Point{X: box.Min.X + max(r, min(w-r, along*w)), Y: box.Min.Y + max(r, min(h-r, across*h))}
			if !d.free(draw.Box{Min: c, Max: c}.Grow(r)) {
				continue
			}
			for _, up := range []float64{r, -r} {
				d.path(draw.Polyline([]draw.Point{{X: c.X - r, Y: c.Y - up}, {X: c.X + r, Y: c.Y + up}}), narrowLine, nil, "waste", "")
			}
			d.taken = append(d.taken, draw.Box{Min: c, Max: c}.Grow(r))
			return
		}
	}
}

// nameAvoid says what a place is that is not used: within it where there is room, otherwise beside, above or below it.
func (d *boardDrawing) nameAvoid(a stock.Avoid) {
	if a.What == "" {
		return
	}
	box := d.box(a.On(d.board).Rect)
	what := d.b.set.o.say(a.What) // the usual words are known, a person's own stay
	w, h := draw.TextWidth(what, nameText, false), nameText
	mid := draw.Point{X: (box.Min.X+box.Max.X)/2 - w/2, Y: (box.Min.Y+box.Max.Y)/2 - h/2}
	below := d.at.Y - nameOff - h // a line of names below the board
	tries := []draw.Point{{X: box.Max.X + nameOff, Y: mid.Y}, {X: box.Min.X - nameOff - w, Y: mid.Y},
		{X: mid.X, Y: box.Max.Y + nameOff}, {X: mid.X, Y: box.Min.Y - nameOff - h}}
	if w+nameOff < box.Width() && h+nameOff < box.Height() {
		tries = append([]draw.Point{mid}, tries...)
	}
	tries = append(tries, draw.Point{X: mid.X, Y: below}, draw.Point{X: mid.X + w + 2, Y: below}, draw.Point{X: mid.X - w - 2, Y: below})
	own := slices.Index(d.taken, box)
	for _, clearOfParts := range []bool{true, false} {
		for _, at := range tries {
			ground := draw.Box{Min: at, Max: draw.Point{X: at.X + w, Y: at.Y + h}}.Grow(0.4)
			if ground.Min.X < d.b.room.Min.X || ground.Max.X > d.b.room.Max.X || !d.freeBut(ground, own, at == mid) || clearOfParts && d.onPart(ground) {
				continue
			}
			d.b.Items = append(d.b.Items, draw.Path{Segs: draw.Rect(ground), Filled: true, Fill: d.b.ink.paper, Layer: "paper"})
			d.say(at.X, at.Y, nameText, what, false, d.b.ink.line)
			return
		}
	}
}

// onPart tells whether a box lies on what is made into a part.
func (d *boardDrawing) onPart(box draw.Box) bool {
	on := false
	d.l.Each(func(q *stock.Piece, _ int) {
		o := d.box(q.Rect)
		on = on || q.Kind == stock.Part && o.Meets(box)
	})
	return on
}

// free tells whether nothing that was drawn before stands in a box.
func (d *boardDrawing) free(box draw.Box) bool { return d.freeBut(box, -1, false) }

// freeBut leaves one of them out where that is wanted.
func (d *boardDrawing) freeBut(box draw.Box, but int, leave bool) bool {
	for i, o := range d.taken {
		if leave && i == but {
			continue
		}
		if o.Meets(box) {
			return false
		}
	}
	return true
}
