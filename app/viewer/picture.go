// Package viewer shows drawings of the piece: the drawing table and a pictorial that turns.
// A drawing is one picture, made away from the window's goroutine at the size of the dots.
package viewer

import (
	"image"
	"image/color"
	"math"
	"sync/atomic"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"splaywright/app/session"
	"splaywright/render/draw"
)

// painter makes a picture of w × h dots, and tells what is drawn where: a page whose width is
// that of the picture. It holds all it needs and runs on any goroutine. It may paint over old, which may be nil.
type painter func(old *image.RGBA, w, h int) (*image.RGBA, draw.Page)

// picture shows what a painter makes, and keeps showing the old picture until the new is ready.
type picture struct {
	raster *canvas.Raster
	work   session.Latest
	asked  uint64 // number of the newest picture asked for
	shown  *image.RGBA
	spare  atomic.Pointer[image.RGBA] // what was shown before; the canvas has taken its copy
	page   draw.Page                  // what is drawn on the picture that is shown
	lit    func(ref string) bool
	w, h   int            // dots of the place on screen
	scale  float64        // dots a window unit, as far as is known
	begin  func() painter // called on the window's goroutine; nil painter = nothing to show
	blank  func() color.Color
	given  func() // called when the window's painter is given a picture; nil = nobody asks
}

func newPicture(begin func() painter, blank func() color.Color) *picture {
	p := &picture{begin: begin, blank: blank}
	p.raster = canvas.NewRaster(p.generate)
	return p
}

// place tells how large the place on screen is, so that a picture for it can be made before the window's painter says how
// many dots it has there.
func (p *picture) place(size fyne.Size) {
	p.raster.Resize(size)
	if p.scale <= 0 {
		p.scale = 1
		if s := float64(fyne.CurrentApp().Settings().Scale()); s > 0 { // 0 = as the display has it
			p.scale = s
		}
	}
	p.w, p.h = int(math.Round(float64(size.Width)*p.scale)), int(math.Round(float64(size.Height)*p.scale))
}

// generate is called by the window's painter and only hands out what is there.
func (p *picture) generate(w, h int) image.Image {
	if w != p.w || h != p.h {
		p.w, p.h = w, h
		if size := p.raster.Size(); size.Width > 0 {
			p.scale = float64(w) / float64(size.Width)
		}
		p.redraw()
	}
	if p.shown == nil {
		return filled(w, h, p.blank())
	}
	if p.given != nil {
		p.given()
	}
	return p.shown
}

// redraw asks for a new picture.
func (p *picture) redraw() {
	paint := p.begin()
	if paint == nil || p.w <= 0 || p.h <= 0 {
		return
	}
	p.asked++
	n, w, h := p.asked, p.w, p.h
	p.work.Do(func() {
		img, page := paint(p.spare.Swap(nil), w, h)
		fyne.Do(func() { p.show(n, img, page) })
	})
}

func (p *picture) show(n uint64, img *image.RGBA, page draw.Page) {
	if n != p.asked {
		p.spare.Store(img) // overtaken
		return
	}
	p.put(img, page)
}

func (p *picture) put(img *image.RGBA, page draw.Page) {
	if p.shown != img {
		p.spare.Store(p.shown)
	}
	p.shown, p.page = img, page
	p.raster.Refresh()
}

// Ahead is a picture of what is still to come, painted where that is made.
type Ahead struct {
	of    *picture
	asked uint64
	w, h  int
	shown *image.RGBA
	page  draw.Page
}

// ahead gives what makes pictures ahead for the place as it is now, nil when it has no dots yet.
func (p *picture) ahead() func(painter) *Ahead {
	if p.w <= 0 || p.h <= 0 {
		return nil
	}
	a := Ahead{of: p, asked: p.asked, w: p.w, h: p.h}
	return func(paint painter) *Ahead {
		made := a
		made.shown, made.page = paint(p.spare.Swap(nil), a.w, a.h)
		return &made
	}
}

// take shows a picture that was made ahead, unless another has been asked for since, as when the sheet was moved or
// another part lit; then a new one is asked for.
func (p *picture) take(a *Ahead) bool {
	if a == nil {
		p.redraw()
		return false
	}
	if a.asked != p.asked || a.w != p.w || a.h != p.h {
		a.Drop()
		p.redraw()
		return false
	}
	p.asked++ // what is still being made is older
	p.put(a.shown, a.page)
	return true
}

// Drop says that a picture will not be shown.
func (a *Ahead) Drop() {
	if a != nil {
		a.of.spare.Store(a.shown)
	}
}
