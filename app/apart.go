package app

import (
	"maps"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
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
	slider *keyed.Slider
	said   *widget.Label
	all    fyne.CanvasObject
	work   session.Latest
	asked  int
	whole  viewer.Sight
	moves  int
	want   float64 // where the person left the slider; a piece with fewer moves shows less of it

	slid  map[string]float64 // single parts off their places, mm
	about string             // the part that is spoken of; "" = none
	scale float64            // diagonal by which the picture is scaled while a part is dragged, mm; 0 = what it needs
}

func newApartBar(w *Window) *apartBar {
	b := &apartBar{slider: keyed.NewSlider(0, 1), said: widget.NewLabel(""), slid: map[string]float64{}}
	b.work.Spawn = w.spawn
	b.slider.Step = 0.02
	b.said.Truncation = fyne.TextTruncateEllipsis
	b.slider.OnChanged = func(to float64) {
		b.want, b.about = to, ""
		clear(b.slid) // one or the other
		w.slideApart()
	}
	name := widget.NewLabel(say.It("Apart"))
	b.said.SizeName = theme.SizeNameCaptionText
	b.said.SetText(say.It(slideHint))
	b.all = container.New(tight{}, container.NewBorder(nil, nil, name, nil, b.slider), b.said)
	return b
}

// slideHint stands below the slider while every part is in its place.
const slideHint = "Shift and drag takes a single part off."

// tight puts one object close below another: labels have room above their line already.
type tight struct{}

func (tight) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, o := range objects {
		h := o.MinSize().Height
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, h))
		y += h - closer
	}
}

func (tight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var out fyne.Size
	for _, o := range objects {
		least := o.MinSize()
		out = fyne.NewSize(max(out.Width, least.Width), out.Height+least.Height-closer)
	}
	return out.AddWidthHeight(0, closer)
}

// closer is how much nearer than usual, window units.
const closer = 8

// together tells whether the pictorial shows the piece whole.
func (b *apartBar) together() bool { return (b.slider.Value <= 0 || b.moves == 0) && len(b.slid) == 0 }

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
	b.said.SetText(b.saying(p))
	if p == nil || b.together() {
		w.turner.SetPiece(b.whole, nil)
		return
	}
	n, steps, whole, scale, slid := b.asked, b.slider.Value, b.whole, b.scale, maps.Clone(b.slid)
	b.work.Do(func() {
		moved := sheet.Apart(p, steps)
		if len(slid) > 0 {
			moved = sheet.Slid(p, slid)
		}
		s := viewer.Sight{Scene: view.NewScene(moved, chords(p.Design)), Eye: whole.Eye}
		s.Subject = wood.NewSubject(moved, s.Scene)
		s.Diagonal = spread(s.Scene, diagonal(p))
		if len(slid) > 0 {
			s.Still, s.Own, s.Diagonal = whole.Scene, whole.Diagonal, scale
			if scale == 0 {
				s.Diagonal = reaching(whole.Scene, s.Scene, whole.Diagonal)
			}
		}
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
