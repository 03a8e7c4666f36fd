// Package sketch draws the small pictures that say what a size is: a plain piece, joint, board or tool with
// the one thing that the size is about standing out. They are not to scale.
package sketch

import (
	"math"
	"slices"

	"splaywright/render/draw"
)

// Width and Height of a sketch, mm.
const (
	Width  = 44.0
	Height = 33.0
)

// Inks are the colours of a sketch.
type Inks struct {
	Line   draw.Ink // of what stands around
	Wood   draw.Ink // fills it
	Strong draw.Ink // what the size is about
	Tint   draw.Ink // fills what the size is about
}

// Of draws a sketch by its name; false when there is none.
func Of(name string, inks Inks) (draw.Page, bool) {
	f, ok := figures()[name]
	if !ok {
		return draw.Page{}, false
	}
	p := &pad{inks: inks}
	f(p)
	return draw.Page{Title: name, Width: Width, Height: Height, Items: p.items}, true
}

// Names are those of all sketches, sorted.
func Names() []string {
	var out []string
	for name := range figures() {
		out = append(out, name)
	}
	slices.Sort(out)
	return out
}

func figures() map[string]func(*pad) {
	out := map[string]func(*pad){}
	for _, group := range []map[string]func(*pad){stools(), walls(), plans(), tails(), joints(), tenons(), boards(), features(), edges(), saws(), shop(), pages()} {
		for name, f := range group {
			out[name] = f
		}
	}
	return out
}

// pad is what a sketch is drawn on.
type pad struct {
	inks  Inks
	items []draw.Item
}

// Pens of a sketch, mm.
const (
	thin   = 0.28
	thick  = 0.6
	arrow  = 2.8
	blunt  = 1.05 // half of an arrowhead's width
	beyond = 1.2  // an extension line beyond its dimension
)

func pt(x, y float64) draw.Point { return draw.Point{X: x, Y: y} }

func (p *pad) add(segs []draw.Seg, pen draw.Pen, fill *draw.Ink) {
	path := draw.Path{Segs: segs, Pen: pen}
	if fill != nil {
		path.Filled, path.Fill = true, *fill
	}
	p.items = append(p.items, path)
}

// wood is a board that stands around.
func (p *pad) wood(pts ...draw.Point) { p.shape(draw.Polygon(pts), false) }

// lit is a board that the size is about.
func (p *pad) lit(pts ...draw.Point) { p.shape(draw.Polygon(pts), true) }

// board is lit or stands around.
func (p *pad) board(lit bool, pts ...draw.Point) { p.shape(draw.Polygon(pts), lit) }

func (p *pad) shape(segs []draw.Seg, lit bool) {
	if lit {
		p.add(segs, draw.Pen{Width: thin, Ink: p.inks.Strong}, &p.inks.Tint)
		return
	}
	p.add(segs, draw.Pen{Width: thin, Ink: p.inks.Line}, &p.inks.Wood)
}

// line is a plain line, dashed one that is out of sight or stands for an axis.
func (p *pad) line(pts ...draw.Point) {
	p.add(draw.Polyline(pts), draw.Pen{Width: thin, Ink: p.inks.Line}, nil)
}

func (p *pad) dashed(pts ...draw.Point) {
	p.add(draw.Polyline(pts), draw.Pen{Width: thin, Dash: []float64{1.2, 0.8}, Ink: p.inks.Line}, nil)
}

// bold is a line that the size is about.
func (p *pad) bold(pts ...draw.Point) { p.boldPath(draw.Polyline(pts)) }

func (p *pad) boldPath(segs []draw.Seg) {
	p.add(segs, draw.Pen{Width: thick, Ink: p.inks.Strong}, nil)
}

// head is an arrowhead, blunter than on a drawing: it is seen small.
func (p *pad) head(tip, dir draw.Point) {
	n := math.Hypot(dir.X, dir.Y)
	u := pt(dir.X/n, dir.Y/n)
	back := pt(tip.X-u.X*arrow, tip.Y-u.Y*arrow)
	p.add(draw.Polygon([]draw.Point{tip, pt(back.X-u.Y*blunt, back.Y+u.X*blunt), pt(back.X+u.Y*blunt, back.Y-u.X*blunt)}), draw.Pen{}, &p.inks.Strong)
}

// span is the length from a to b, with its arrows inside, or outside where there is no room.
func (p *pad) span(a, b draw.Point) {
	d := pt(b.X-a.X, b.Y-a.Y)
	long := math.Hypot(d.X, d.Y)
	u := pt(d.X/long, d.Y/long)
	if long < 2.6*arrow {
		out := arrow + 1.6
		p.bold(pt(a.X-u.X*out, a.Y-u.Y*out), pt(a.X-2*u.X, a.Y-2*u.Y))
		p.bold(pt(b.X+2*u.X, b.Y+2*u.Y), pt(b.X+u.X*out, b.Y+u.Y*out))
		p.head(a, u)
		p.head(b, pt(-u.X, -u.Y))
		return
	}
	p.bold(pt(a.X+2*u.X, a.Y+2*u.Y), pt(b.X-2*u.X, b.Y-2*u.Y))
	p.head(a, pt(-u.X, -u.Y))
	p.head(b, u)
}

// across is a level length at a height, from x to x, with lines out from where it is measured.
func (p *pad) across(x1, x2, y, from float64) {
	p.out(pt(x1, from), pt(x1, y))
	p.out(pt(x2, from), pt(x2, y))
	p.span(pt(x1, y), pt(x2, y))
}

// up is an upright length, with lines out from where it is measured.
func (p *pad) up(x, y1, y2, from float64) {
	p.out(pt(from, y1), pt(x, y1))
	p.out(pt(from, y2), pt(x, y2))
	p.span(pt(x, y1), pt(x, y2))
}

// out is the line from what is measured to its length, and a little further.
func (p *pad) out(from, to draw.Point) {
	l := math.Hypot(to.X-from.X, to.Y-from.Y)
	if l < 0.3 {
		return
	}
	u := pt((to.X-from.X)/l, (to.Y-from.Y)/l)
	p.add(draw.Polyline([]draw.Point{pt(from.X+0.5*u.X, from.Y+0.5*u.Y), pt(to.X+beyond*u.X, to.Y+beyond*u.Y)}),
		draw.Pen{Width: thin, Ink: p.inks.Strong}, nil)
}

// turn is the angle at c from one direction to another, degrees counter-clockwise from right.
func (p *pad) turn(c draw.Point, r, from, to float64) {
	const deg = math.Pi / 180
	p.boldPath(draw.ArcPath(c, r, from*deg, to*deg))
	at := func(a, side float64) {
		s, k := math.Sincos(a * deg)
		p.head(pt(c.X+r*k, c.Y+r*s), pt(-s*side, k*side))
	}
	if math.Abs(to-from)*deg*r > 3*arrow {
		at(from, -1)
	}
	at(to, 1)
}

// ground is the floor that a piece stands on.
func (p *pad) ground(y float64) { p.line(pt(2, y), pt(Width-2, y)) }

// dot is a round mark.
func (p *pad) dot(c draw.Point, r float64, strong bool) {
	p.shape(draw.Circle(c, r), strong)
}

// grain is a few lines along a board's grain.
func (p *pad) grain(x1, x2 float64, ys ...float64) {
	for i, y := range ys {
		w := 0.5
		if i%2 == 1 {
			w = -0.5
		}
		third := (x2 - x1) / 3
		p.add([]draw.Seg{draw.MoveTo(pt(x1, y)), draw.CurveTo(pt(x1+third, y+w), pt(x2-third, y-w), pt(x2, y))}, draw.Pen{Width: thin, Ink: p.inks.Line}, nil)
	}
}

func box(x1, y1, x2, y2 float64) []draw.Point {
	return []draw.Point{pt(x1, y1), pt(x2, y1), pt(x2, y2), pt(x1, y2)}
}
