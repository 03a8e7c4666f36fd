package sheet

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// Shown is how a page of views stands on a drawing table: their scale, and where each lies.
type Shown struct {
	Scale float64 // 0 = nothing is shown
	Views []Placed
}

// Placed is one view on a page: the way one looks, where the world's origin lies on the page, mm, and
// the room that the piece takes there.
type Placed struct {
	Direction view.Direction
	At        draw.Point
	Box       draw.Box
}

// placedAt is a view whose picture has been drawn at a scale, moved by d.
func placedAt(pic *view.Picture, scale float64, d draw.Point) Placed {
	return Placed{pic.Direction, d, draw.Box{
		Min: draw.Point{X: pic.Min.X*scale + d.X, Y: pic.Min.Y*scale + d.Y},
		Max: draw.Point{X: pic.Max.X*scale + d.X, Y: pic.Max.Y*scale + d.Y},
	}}
}

// moved shows the same views elsewhere on the page.
func moved(views []Placed, d draw.Point) []Placed {
	out := make([]Placed, len(views))
	for i, v := range views {
		v.At = draw.Point{X: v.At.X + d.X, Y: v.At.Y + d.Y}
		v.Box = v.Box.Moved(d)
		out[i] = v
	}
	return out
}

// ViewAt gives the number of the view in which a place on the page lies, or beside which it does, within aroundView; the
// nearest where that holds for several, and -1 where it holds for none.
func (s Shown) ViewAt(p draw.Point) int {
	best, at := aroundView, -1
	for i, v := range s.Views {
		dx := max(v.Box.Min.X-p.X, p.X-v.Box.Max.X, 0)
		dy := max(v.Box.Min.Y-p.Y, p.Y-v.Box.Max.Y, 0)
		if far := math.Hypot(dx, dy); far <= best {
			best, at = far, i
		}
	}
	return at
}

// aroundView, mm, is how far outside the piece a line may begin that is drawn across a view.
const aroundView = 12.0

// leastCut, mm on the page, is the shortest line that cuts.
const leastCut = 2.0

// CutAlong is the plane that stands on a line drawn across one of the views, square to the page; one
// looks at the section from the right of the way the line was drawn. It is not ok where the line crosses
// no view or is too short to have a direction.
func (s Shown) CutAlong(from, to draw.Point) (view.Cut, bool) {
	dx, dy := to.X-from.X, to.Y-from.Y
	long := math.Hypot(dx, dy)
	if s.Scale <= 0 || long < leastCut {
		return view.Cut{}, false
	}
	mid := draw.Point{X: (from.X + to.X) / 2, Y: (from.Y + to.Y) / 2}
	for _, v := range s.Views {
		b := v.Box.Grow(aroundView)
		if mid.X < b.Min.X || mid.X > b.Max.X || mid.Y < b.Min.Y || mid.Y > b.Max.Y {
			continue
		}
		right, up := v.Direction.Right, v.Direction.Up
		toward := right.Mul(dy / long).Sub(up.Mul(dx / long)) // to the right of the line
		d := view.Square("section", toward, v.Direction.Toward)
		if math.Abs(toward[2]) < 0.9 { // what is up in the world stays up where it can
			d = view.Square("section", toward, mgl64.Vec3{0, 0, 1})
		}
		at := right.Mul((mid.X - v.At.X) / s.Scale).Add(up.Mul((mid.Y - v.At.Y) / s.Scale))
		return view.Cut{Direction: d, Depth: at.Dot(toward)}, true
	}
	return view.Cut{}, false
}

// SectionPage draws a section by itself, filling the room; false where the plane misses the wood.
func SectionPage(p *form.Piece, c view.Cut, o Options) (draw.Page, bool) {
	o = o.fill(p)
	s := view.NewSection(p, flattening, c)
	if len(s.Faces) == 0 {
		return draw.Page{}, false
	}
	size := sizes[o.Sheet]
	if o.Width > 0 && o.Height > 0 {
		size = [2]float64{o.Width, o.Height}
	}
	all := draw.Box{Max: draw.Point{X: size[0], Y: size[1]}}
	page := draw.Page{Title: p.Title, Width: size[0], Height: size[1]}
	page.Items = append(page.Items, draw.Path{Segs: draw.Rect(all), Filled: true, Fill: o.ink().paper, Layer: "paper"})
	room := all.Grow(-tableMargin)
	scale := min(room.Width()/(s.Max.X-s.Min.X), room.Height()/(s.Max.Y-s.Min.Y)) * 0.8
	for range 30 {
		items := sectionFigure(p, s, scale, o, map[string]bool{}).Finish()
		if box := draw.Bounds(items); fitsIn(box, room) {
			page.Items = append(page.Items, draw.Moved(items, draw.Point{
				X: room.Min.X - box.Min.X + (room.Width()-box.Width())/2, Y: room.Min.Y - box.Min.Y + (room.Height()-box.Height())/2})...)
			break
		}
		scale *= 0.93
	}
	return page, true
}
