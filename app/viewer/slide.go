package viewer

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/render/draw"
	"splaywright/render/view"
)

// Slides is what takes single parts of the pictorial off along their ways.
type Slides struct {
	Way func(part string) (mgl64.Vec3, bool) // the direction in which a part leaves its place, one long; false = it has none
	At  func(part string) float64            // how far it has been taken, mm
	// To is called with how far a part is taken, mm, done when the pointer has let it go; Home when everything is
	// to go back; Took with the part that is taken hold of, also of one that has no way.
	To   func(part string, mm float64, done bool)
	Home func()
	Took func(part string)
}

// held is a part that the pointer has hold of.
type held struct {
	part  string
	from  float64 // where it was, mm
	start fyne.Position
	along draw.Point // window units a millimetre of its way, x to the right, y down
	now   float64
}

// How parts slide.
const (
	snap    = 8.0  // window units from its place at which a part goes home
	leastOn = 0.15 // of the picture's scale: a way that is seen shorter is followed by the pointer up and down
	farOff  = 0.8  // of the piece's diagonal: as far as a part goes
)

// Slide sets what takes parts off; with on, dragging a part takes it off without Shift.
func (t *Turner) Slide(s Slides, on bool) { t.slides, t.sliding = s, on }

// MouseDown remembers whether Shift is held.
func (t *Turner) MouseDown(e *desktop.MouseEvent) { t.shift = e.Modifier&fyne.KeyModifierShift != 0 }

// MouseUp has nothing to finish.
func (t *Turner) MouseUp(*desktop.MouseEvent) {}

// scale is window units a millimetre of the piece.
func (t *Turner) scale() float64 {
	return t.zoom * fitMargin * float64(min(t.size.Width, t.size.Height)) / t.sight.Diagonal
}

// looks gives the scene as it is seen now and the direction in which it is.
func (t *Turner) looks() (*view.Scene, view.Direction) {
	if t.near {
		if lens, ok := t.sight.Scene.Lens(*t.sight.eyeAt(t.turn, t.tip)); ok {
			return t.sight.Scene.Through(lens), lens.Direction
		}
	}
	return t.sight.Scene, view.Pictorial(t.turn, t.tip)
}

// PartAt is the part that is seen at a place of the pictorial; "" where there is none.
func (t *Turner) PartAt(at fyne.Position) string {
	if !t.sight.shows() || t.size.Width <= 0 {
		return ""
	}
	s, d := t.looks()
	mid := centre(s.Bounds(d))
	if b, ok := t.sight.still(d, t.near); ok {
		mid = centre(b)
	}
	return s.PartAt(d, draw.Point{
		X: mid.X + float64(at.X-t.size.Width/2)/t.scale(),
		Y: mid.Y - float64(at.Y-t.size.Height/2)/t.scale(),
	})
}

func centre(b draw.Box) draw.Point {
	return draw.Point{X: (b.Min.X + b.Max.X) / 2, Y: (b.Min.Y + b.Max.Y) / 2}
}

// still is the box of what keeps its place in the picture while single parts are off; false when nothing is.
func (s Sight) still(d view.Direction, near bool) (draw.Box, bool) {
	if s.Still == nil || near {
		return draw.Box{}, false
	}
	return s.Still.Bounds(d), true
}

// take takes hold of the part at a place, if dragging slides parts and it has a way.
func (t *Turner) take(at fyne.Position) *held {
	if t.slides.Way == nil || !t.sliding && !t.shift {
		return nil
	}
	part := t.PartAt(at)
	if part == "" {
		return nil
	}
	t.choose(part)
	way, ok := t.slides.Way(part)
	if !ok {
		t.stays = true
		return nil
	}
	_, d := t.looks()
	k := t.scale()
	along := draw.Point{X: way.Dot(d.Right) * k, Y: -way.Dot(d.Up) * k}
	if math.Hypot(along.X, along.Y) < leastOn*k { // it comes straight at the eye, or goes straight away
		along = draw.Point{Y: math.Copysign(k, way.Dot(d.Toward))}
	}
	return &held{part: part, from: t.slides.At(part), start: at, along: along}
}

func (t *Turner) choose(part string) {
	t.chosen = part
	if t.slides.Took != nil {
		t.slides.Took(part)
	}
}

// pull moves the part that is held to where the pointer has it on its way; near its place it goes home.
func (t *Turner) pull(at fyne.Position) {
	h := t.held
	long := h.along.X*h.along.X + h.along.Y*h.along.Y
	mm := h.from + (float64(at.X-h.start.X)*h.along.X+float64(at.Y-h.start.Y)*h.along.Y)/long
	h.now = t.within(mm, math.Sqrt(long))
	t.slides.To(h.part, h.now, false)
}

// within keeps a part on its way; unit is window units a millimetre.
func (t *Turner) within(mm, unit float64) float64 {
	if mm*unit < snap {
		return 0
	}
	return min(mm, farOff*t.sight.whole())
}

// whole is the diagonal of the piece with every part in its place, mm.
func (s Sight) whole() float64 {
	if s.Own > 0 {
		return s.Own
	}
	return s.Diagonal
}

// step takes the chosen part a step further off, or back.
func (t *Turner) step(by float64) {
	if t.slides.Way == nil || t.chosen == "" {
		return
	}
	if _, ok := t.slides.Way(t.chosen); !ok {
		return
	}
	one := t.sight.whole() / 20
	t.slides.To(t.chosen, max(0, min(t.slides.At(t.chosen)+by*one, farOff*t.sight.whole())), true)
}

// next chooses the part after the one that is chosen, round and round.
func (t *Turner) next(by int) {
	if !t.sight.shows() {
		return
	}
	parts := t.sight.Scene.Parts()
	if len(parts) == 0 {
		return
	}
	at := -1
	if by < 0 {
		at = 0
	}
	for i, p := range parts {
		if p == t.chosen {
			at = i
		}
	}
	n := len(parts)
	t.choose(parts[((at+by)%n+n)%n])
}

// Diagonal is what the picture is scaled by, mm.
func (t *Turner) Diagonal() float64 { return t.sight.Diagonal }
