package app

import (
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/app/viewer"
	"splaywright/model/form"
	"splaywright/render/sheet"
	"splaywright/render/view"
	"splaywright/render/wood"
)

// apartBar slides the parts of the pictorial off each other along the ways in which they come home, the
// last that goes on first.
type apartBar struct {
	slider *widget.Slider
	said   *widget.Label
	all    fyne.CanvasObject
	work   session.Latest
	asked  int
	whole  viewer.Sight
	moves  int
	want   float64 // where the person left the slider; a piece with fewer moves shows less of it
}

func newApartBar(w *Window) *apartBar {
	b := &apartBar{slider: widget.NewSlider(0, 1), said: widget.NewLabel("")}
	b.work.Spawn = w.spawn
	b.slider.Step = 0.02
	b.said.Truncation = fyne.TextTruncateEllipsis
	b.slider.OnChanged = func(to float64) {
		b.want = to
		w.slideApart()
	}
	name := widget.NewLabel(say.It("Apart"))
	b.all = container.NewBorder(nil, nil, name, nil, container.NewGridWithColumns(2, b.slider, b.said))
	return b
}

// together tells whether the pictorial shows the piece whole.
func (b *apartBar) together() bool { return b.slider.Value <= 0 || b.moves == 0 }

// showWhole takes another piece, with its picture where that was made ahead, and tells whether it is shown. Parts that
// stood apart wait for the order in which this one comes apart.
func (b *apartBar) showWhole(w *Window, s viewer.Sight, a *viewer.Ahead) bool {
	b.whole = s
	if !b.together() {
		a.Drop()
		return false
	}
	return w.turner.SetPiece(s, a)
}

// takeOrder takes the order in which the piece goes together; parts that stood apart stand as far apart again.
func (b *apartBar) takeOrder(w *Window) {
	was := b.together()
	b.moves = len(w.s.Looked().Assembly.Moves)
	b.slider.Max = max(1, float64(b.moves))
	if b.moves == 0 {
		b.slider.Disable()
	} else {
		b.slider.Enable()
	}
	b.slider.Value = min(b.want, b.slider.Max)
	b.slider.Refresh()
	if !was || !b.together() {
		w.slideApart()
	}
}

// slideApart shows the piece as far apart as the slider says.
func (w *Window) slideApart() {
	b, p := w.apart, w.s.Looked()
	b.asked++
	if p == nil || b.together() {
		b.said.SetText("")
		w.turner.SetPiece(b.whole, nil)
		return
	}
	b.said.SetText(comesOff(p, b.slider.Value))
	n, steps, eye := b.asked, b.slider.Value, b.whole.Eye
	b.work.Do(func() {
		moved := sheet.Apart(p, steps)
		s := viewer.Sight{Scene: view.NewScene(moved, sheet.Flattening), Eye: eye}
		s.Subject = wood.NewSubject(moved, s.Scene)
		s.Diagonal = spread(s.Scene, diagonal(p))
		fyne.Do(func() {
			if n == b.asked {
				w.turner.SetPiece(s, nil)
			}
		})
	})
}

// spread is the largest extent of a scene from any side, at least that of the whole piece.
func spread(s *view.Scene, whole float64) float64 {
	sum := 0.0
	for _, d := range []view.Direction{view.Front, view.End, view.Top} {
		pic := s.Project(d)
		w, h := pic.Max.X-pic.Min.X, pic.Max.Y-pic.Min.Y
		sum += (w*w + h*h) / 2 // each direction is met in two of the three
	}
	return max(whole, math.Sqrt(sum))
}

// comesOff says which parts are on their way.
func comesOff(p *form.Piece, steps float64) string {
	k := len(p.Assembly.Moves) - int(math.Ceil(steps))
	if k < 0 || k >= len(p.Assembly.Moves) {
		return ""
	}
	var names []string
	for _, id := range p.Assembly.Moves[k].Parts {
		if q := p.Part(id); q != nil {
			names = append(names, q.Mark+" "+say.It(q.Name))
		}
	}
	return strings.Join(names, ", ")
}
