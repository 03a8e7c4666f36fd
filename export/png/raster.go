package png

import (
	"image"
	"math"

	"splaywright/render/draw"
)

// raster fills outlines on an image by exact area coverage. Each figure touches only the dots it
// covers, row by row, so a drawing of thousands of short lines costs what its ink costs and not
// what its paper costs.
type raster struct {
	img      *image.RGBA
	w        int
	from, to int         // rows that are painted; what lies outside is left alone
	cover    []float32   // signed area changes, one a dot, and two more a row; all zero between figures
	lo       []int32     // first touched dot of each row
	hi       []int32     // last touched dot of each row
	runs     draw.Chords // of the path that is painted
	letters  map[letter]*draw.Chords
	y0       int // rows touched by the figure
	y1       int
}

// spare keeps the room of finished rasters: the window paints its pictures again and again. A sync.Pool would give it away
// whenever the program collects, which the window does after every key press.
var spare = make(chan *raster, 4)

// newRaster makes a raster for the rows of an image from one up to another.
func newRaster(img *image.RGBA, from, to int) *raster {
	w, rows := img.Rect.Dx(), to-from
	var r *raster
	select {
	case r = <-spare:
	default:
		r = new(raster)
	}
	if cap(r.cover) < (w+2)*rows {
		r.cover = make([]float32, (w+2)*rows)
	}
	if cap(r.lo) < rows {
		r.lo, r.hi = make([]int32, rows), make([]int32, rows)
	}
	r.cover, r.lo, r.hi = r.cover[:(w+2)*rows], r.lo[:rows], r.hi[:rows]
	r.img, r.w, r.from, r.to = img, w, from, to
	for y := range r.lo {
		r.lo[y], r.hi[y] = int32(w), -1
	}
	r.y0, r.y1 = to, from-1
	return r
}

// letter is a glyph cut as finely as its size wants, in parts of the em.
type letter struct {
	glyph *draw.Glyph
	tol   float64
}

// mostLetters are kept cut: those of a picture, and of a few sizes of the window before.
const mostLetters = 400

func (r *raster) letter(g *draw.Glyph, tol float64) *draw.Chords {
	l := letter{g, tol}
	if runs := r.letters[l]; runs != nil {
		return runs
	}
	if r.letters == nil || len(r.letters) >= mostLetters {
		r.letters = map[letter]*draw.Chords{}
	}
	runs := &draw.Chords{}
	runs.Cut(g.Segs, tol)
	r.letters[l] = runs
	return runs
}

// done gives the raster's room back.
func (r *raster) done() {
	r.img = nil
	select {
	case spare <- r:
	default:
	}
}

// edge adds one directed side of a figure, in dots, y down.
func (r *raster) edge(a, b draw.Point) {
	if a.Y == b.Y {
		return
	}
	sign := float32(1)
	if a.Y > b.Y {
		a, b, sign = b, a, -1
	}
	if b.Y <= float64(r.from) || a.Y >= float64(r.to) {
		return
	}
	slope := (b.X - a.X) / (b.Y - a.Y)
	top, bottom := max(a.Y, float64(r.from)), min(b.Y, float64(r.to))
	y := int(top)
	r.y0 = min(r.y0, y)
	for from := top; from < bottom; y++ {
		to := min(float64(y+1), bottom)
		x0 := a.X + (from-a.Y)*slope
		x1 := a.X + (to-a.Y)*slope
		r.row(y, x0, x1, sign*float32(to-from))
		from = to
	}
	r.y1 = max(r.y1, y-1)
}

// row spreads a side's height within one row over the dots that it crosses: each dot gets what lies
// to the right of the side within it, the dot after it the rest.
func (r *raster) row(y int, x0, x1 float64, dy float32) {
	limit := float64(r.w)
	if x0 > x1 {
		x0, x1 = x1, x0
	}
	x0, x1 = min(max(x0, 0), limit), min(max(x1, 0), limit)
	i0, i1 := int(x0), int(x1)
	at := y - r.from
	line := r.cover[at*(r.w+2) : (at+1)*(r.w+2)]
	r.lo[at] = min(r.lo[at], int32(i0))
	r.hi[at] = max(r.hi[at], int32(min(i1+1, r.w)))
	if i0 == i1 {
		left := float32((x0+x1)/2 - float64(i0))
		line[i0] += dy * (1 - left)
		line[i0+1] += dy * left
		return
	}
	per := dy / float32(x1-x0)
	put := func(i int, a, b float64) {
		part := per * float32(b-a)
		left := float32((a+b)/2 - float64(i))
		line[i] += part * (1 - left)
		line[i+1] += part * left
	}
	put(i0, x0, float64(i0+1))
	between := line[i0+1 : i1+1]
	for i := 1; i < len(between); i++ {
		between[i-1] += per / 2
		between[i] += per / 2
	}
	put(i1, float64(i1), x1)
}

// fill lays the ink on the dots of the figure whose sides were added since the last fill.
func (r *raster) fill(ink draw.Ink) {
	for y := max(r.y0, r.from); y <= r.y1 && y < r.to; y++ {
		at := y - r.from
		lo, hi := int(r.lo[at]), int(r.hi[at])
		r.lo[at], r.hi[at] = int32(r.w), -1
		if hi < lo {
			continue
		}
		line := r.cover[at*(r.w+2) : (at+1)*(r.w+2)]
		pix := r.img.Pix[y*r.img.Stride : y*r.img.Stride+4*r.w]
		sum := float32(0)
		for x := lo; x <= hi; {
			sum += line[x]
			line[x] = 0
			from := x
			if x++; x <= hi && line[x] == 0 {
				x += none(line[x : hi+1]) // as much ink as before
			}
			switch {
			case from >= r.w || sum <= faint && sum >= -faint:
			case x == from+1:
				blend(pix[4*from:4*from+4], ink, sum)
			default:
				lay(pix[4*from:4*min(x, r.w)], ink, sum)
			}
		}
		line[min(hi+1, r.w+1)] = 0
	}
	r.y0, r.y1 = r.to, r.from-1
}

// none counts the places at the beginning where nothing changes. Grounds have hundreds in every row, so eight are looked at
// at a time.
func none(changes []float32) int {
	n := len(changes)
	for ; len(changes) >= 8; changes = changes[8:] {
		c := changes[:8:8]
		if math.Float32bits(c[0])|math.Float32bits(c[1])|math.Float32bits(c[2])|math.Float32bits(c[3])|
			math.Float32bits(c[4])|math.Float32bits(c[5])|math.Float32bits(c[6])|math.Float32bits(c[7]) != 0 {
			break
		}
	}
	for len(changes) > 0 && changes[0] == 0 {
		changes = changes[1:]
	}
	return n - len(changes)
}

// lay puts equal ink on dots that follow each other; full ink on many is copied, which is several times as fast.
func lay(dots []uint8, ink draw.Ink, cover float32) {
	const many = 32
	if len(dots) < 4*many || cover < full && cover > -full {
		for ; len(dots) >= 4; dots = dots[4:] {
			blend(dots[:4:4], ink, cover)
		}
		return
	}
	flood(dots, ink)
}

// full is coverage that differs from all of a dot by less than a step of colour.
const full = 0.998

// faint is coverage that would not change a dot.
const faint = 1.0 / 512

func blend(dot []uint8, ink draw.Ink, cover float32) {
	if cover < 0 {
		cover = -cover
	}
	if cover >= full {
		dot[0], dot[1], dot[2] = ink.R, ink.G, ink.B
		return
	}
	a := int32(cover*256 + 0.5)
	if a == 0 {
		return
	}
	dot[0] += uint8((int32(ink.R) - int32(dot[0])) * a >> 8)
	dot[1] += uint8((int32(ink.G) - int32(dot[1])) * a >> 8)
	dot[2] += uint8((int32(ink.B) - int32(dot[2])) * a >> 8)
}

// stroke draws one straight stretch of line as a slim rectangle, w dots wide, with its ends square.
func (r *raster) stroke(a, b draw.Point, w float64, ink draw.Ink) {
	dx, dy := b.X-a.X, b.Y-a.Y
	n := draw.Length(dx, dy)
	if n == 0 {
		return
	}
	ox, oy := -dy/n*w/2, dx/n*w/2
	p := [4]draw.Point{{X: a.X + ox, Y: a.Y + oy}, {X: b.X + ox, Y: b.Y + oy}, {X: b.X - ox, Y: b.Y - oy}, {X: a.X - ox, Y: a.Y - oy}}
	for i := range p {
		r.edge(p[i], p[(i+1)&3])
	}
	r.fill(ink)
}

// dot draws a round joint or end of a line, w dots across.
func (r *raster) dot(c draw.Point, w float64, ink draw.Ink) {
	const sides = 12
	at := func(i int) draw.Point {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
		return draw.Point{X: c.X + w/2*cos, Y: c.Y + w/2*sin}
	}
	for i := range sides {
		r.edge(at(i), at(i+1))
	}
	r.fill(ink)
}
