package app

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/app/viewer"
	"splaywright/assets"
	"splaywright/model"
	"splaywright/render/view"
)

// Pictures of the examples, window units; twice as many dots, for fine screens.
const (
	cardWidth  = 220
	cardHeight = 150
)

// card is the picture of an example and its sizes.
type card struct {
	picture *canvas.Image
	sizes   *widget.Label
}

// gallery offers the built-in examples as pictures, to begin a new design with.
func (w *Window) gallery() {
	room := w.win.Canvas().Size()
	columns := max(1, min(3, int((room.Width-80)/cardWidth)))
	grid := container.NewGridWithColumns(columns)
	var d *plain
	var first *keyed.Button
	for _, e := range assets.Examples() {
		c := newCard()
		begin := keyed.NewButton(say.It(e.Title), func() {
			d.Hide()
			w.guard("begin a new design", func() { w.beginWith(e.Name) })
		})
		begin.Importance = widget.LowImportance
		if first == nil {
			first = begin
		}
		grid.Add(container.NewBorder(nil, container.NewVBox(begin, c.sizes), nil, nil, newTappable(c.picture, begin.OnTapped)))
		w.portray(e.Name, c)
	}
	blank := keyed.NewButton(say.It("Open a file…"), func() {
		d.Hide()
		w.open()
	})
	hint := widget.NewLabel(say.It("Begin with one of these and type your own sizes. Every one of them is only a few numbers: a step becomes a bench when three of them change."))
	hint.Wrapping = fyne.TextWrapWord
	d = w.closable(say.It("A new design"), keyed.NewScroll(container.NewVBox(hint, grid)), blank)
	d.first = first
	d.Resize(w.whole(float32(columns)*cardWidth+80, 4*cardHeight+120))
	w.show(d)
}

// beginWith opens an example and brings the keyboard to its first size, where the sizes are seen.
func (w *Window) beginWith(example string) {
	w.newFrom(example)
	if !w.panes.small {
		w.goTo("size.height")
	}
}

func newCard() *card {
	c := &card{picture: canvas.NewImageFromImage(image.NewRGBA(image.Rect(0, 0, 1, 1))), sizes: widget.NewLabel("")}
	c.picture.FillMode = canvas.ImageFillContain
	c.picture.SetMinSize(fyne.NewSize(cardWidth, cardHeight))
	c.sizes.Wrapping = fyne.TextWrapWord
	c.sizes.Importance = widget.LowImportance
	c.sizes.Alignment = fyne.TextAlignCenter
	c.sizes.SizeName = theme.SizeNameCaptionText
	return c
}

// portray makes the picture of an example away from the window.
func (w *Window) portray(name string, c *card) {
	inks := viewer.SheetInks()
	w.elsewhere(func() {
		s, err := session.FromExample(name)
		if err != nil {
			return // its button tells when it is tapped
		}
		p := model.Derive(spoken(s.Design()))
		img := viewer.Portrait(view.NewScene(p, chords(p.Design)), diagonal(p), 2*cardWidth, 2*cardHeight, inks)
		text := panel.OverallText(p)
		fyne.Do(func() {
			c.picture.Image = img
			c.picture.Refresh()
			c.sizes.SetText(text)
		})
	})
}

// tappable makes a picture do something when it is tapped.
type tappable struct {
	widget.BaseWidget
	shown fyne.CanvasObject
	do    func()
}

func newTappable(o fyne.CanvasObject, do func()) *tappable {
	t := &tappable{shown: o, do: do}
	t.ExtendBaseWidget(t)
	return t
}

// Tapped does it.
func (t *tappable) Tapped(*fyne.PointEvent) { t.do() }

func (t *tappable) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(t.shown) }

// prefSeen is the preference that tells that the examples have been offered once.
const prefSeen = "seen-examples"

// welcome offers the examples to somebody who starts the program for the first time and has
// brought no file.
func (w *Window) welcome() {
	if w.s.Path() != "" || w.opening != nil || w.app.Preferences().Bool(prefSeen) {
		return
	}
	w.app.Preferences().SetBool(prefSeen, true)
	w.hints.begin() // under the examples
	w.gallery()
}
