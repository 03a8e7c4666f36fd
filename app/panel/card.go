package panel

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/look"
	"splaywright/app/say"
	"splaywright/export/png"
	"splaywright/render/draw"
	"splaywright/render/sketch"
)

// Size of a sketch in the window; it has twice as many dots, for fine screens.
const (
	sketchWide = 96
	sketchHigh = sketchWide * sketch.Height / sketch.Width
	sketchDots = 2 * sketchWide / sketch.Width // a millimetre
)

// Card explains one size: its name, a sketch that shows it, a sentence or two, and what it must keep to. Its
// heading folds it.
type Card struct {
	widget.BaseWidget
	// OnFold is called when the person folds the card, or unfolds it.
	OnFold func(folded bool)

	name, text, limit *widget.Label
	arrow             *widget.Icon
	picture           *canvas.Image
	body, all         *fyne.Container
	sketch            string
	inks              sketch.Inks
	folded            bool
	moved             func() // called when the card needs another height
}

// NewCard makes a card that explains nothing yet.
func NewCard() *Card {
	c := &Card{name: widget.NewLabel(""), text: caption(), limit: caption(), arrow: widget.NewIcon(theme.MenuDropDownIcon())}
	c.name.TextStyle.Bold = true
	c.name.Truncation = fyne.TextTruncateEllipsis
	c.limit.Importance = widget.LowImportance
	c.picture = canvas.NewImageFromImage(image.NewRGBA(image.Rect(0, 0, 1, 1)))
	c.picture.FillMode = canvas.ImageFillContain
	said := container.NewVScroll(container.NewVBox(c.text, c.limit))
	c.body = container.New(beside{}, c.picture, said)
	head := newHeading(container.NewBorder(nil, nil, c.arrow, nil, c.name), c.toggle)
	head.under = said
	c.all = Topped(head, c.body)
	c.all.Objects = []fyne.CanvasObject{head, c.body}
	c.ExtendBaseWidget(c)
	c.Clear()
	return c
}

// Clear explains nothing.
func (c *Card) Clear() {
	c.Say(say.Key("About this size"), Explained{Text: say.Key("Tap the name of a size, or type into it, and here stands what it is.")}, "")
}

func caption() *widget.Label {
	l := widget.NewLabel("")
	l.SizeName = theme.SizeNameCaptionText
	l.Wrapping = fyne.TextWrapWord
	return l
}

// Say explains a size; limit says, in the language that is spoken, what it must keep to, "" where it need not.
func (c *Card) Say(name string, e Explained, limit string) {
	c.name.SetText(say.It(name))
	c.text.SetText(say.It(e.Text))
	c.limit.SetText(limit)
	c.limit.Hidden = limit == ""
	c.sketch = e.Sketch
	c.picture.Hidden = e.Sketch == ""
	c.paint()
	c.relay()
}

func (c *Card) relay() {
	c.all.Refresh()
	if c.moved != nil {
		c.moved()
	}
}

// Said gives what the card says: the name, the explanation, what the size must keep to, and the sketch's name.
func (c *Card) Said() (name, text, limit, sketch string) {
	return c.name.Text, c.text.Text, c.limit.Text, c.sketch
}

// Fold hides all but the card's heading, or shows it again.
func (c *Card) Fold(folded bool) {
	c.folded = folded
	c.body.Hidden = folded
	c.arrow.SetResource(theme.MenuDropDownIcon())
	if folded {
		c.arrow.SetResource(theme.MenuDropUpIcon())
	}
	c.relay()
}

// toggle folds the card, or unfolds it.
func (c *Card) toggle() {
	c.Fold(!c.folded)
	if c.OnFold != nil {
		c.OnFold(c.folded)
	}
}

// paint draws the sketch in the colours of the theme.
func (c *Card) paint() {
	c.inks = sketchInks()
	page, ok := sketch.Of(c.sketch, c.inks)
	if !ok {
		return
	}
	ground := draw.Path{Segs: draw.Rect(draw.Box{Max: draw.Point{X: page.Width, Y: page.Height}}), Filled: true, Fill: ink(theme.Color(look.Sheet))}
	page.Items = append([]draw.Item{ground}, page.Items...)
	c.picture.Image = png.Render(page, sketchDots)
	c.picture.Refresh()
}

// How much of the second colour is in what fills a sketch.
const (
	woodShare = 0.18
	tintShare = 0.38
)

func sketchInks() sketch.Inks {
	paper, line, strong := ink(theme.Color(look.Sheet)), ink(theme.Color(look.Faint)), ink(theme.Color(theme.ColorNamePrimary))
	return sketch.Inks{Line: line, Wood: mixed(paper, line, woodShare), Strong: strong, Tint: mixed(paper, strong, tintShare)}
}

func ink(c color.Color) draw.Ink {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	return draw.Ink{R: n.R, G: n.G, B: n.B}
}

func mixed(a, b draw.Ink, share float64) draw.Ink {
	of := func(x, y uint8) uint8 { return uint8(float64(x)*(1-share) + float64(y)*share) }
	return draw.Ink{R: of(a.R, b.R), G: of(a.G, b.G), B: of(a.B, b.B)}
}

// CreateRenderer is for Fyne.
func (c *Card) CreateRenderer() fyne.WidgetRenderer {
	return &cardRenderer{widget.NewSimpleRenderer(Backed(look.Column, c.all)), c}
}

type cardRenderer struct {
	fyne.WidgetRenderer
	c *Card
}

// Refresh paints the sketch anew where the theme has other colours.
func (r *cardRenderer) Refresh() {
	if r.c.inks != sketchInks() {
		r.c.paint()
	}
	r.WidgetRenderer.Refresh()
}

// beside puts the text to the right of the picture, or where there is no picture over the whole width.
type beside struct{}

func (beside) left(picture fyne.CanvasObject) float32 {
	if picture.Visible() {
		return padSides + sketchWide
	}
	return padSides / 2
}

func (b beside) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := b.left(objects[0])
	objects[0].Move(fyne.NewPos(padSides, padBelow))
	objects[0].Resize(fyne.NewSize(sketchWide, sketchHigh))
	objects[1].Move(fyne.NewPos(x, 0))
	objects[1].Resize(fyne.NewSize(size.Width-x, size.Height))
}

func (beside) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(2*sketchWide, sketchHigh+2*padBelow)
}

// needs is the height that shows the card whole at a width.
func (c *Card) needs(width float32) float32 {
	head := c.all.Objects[0].MinSize().Height
	if c.folded {
		return head
	}
	w := width - beside{}.left(c.picture)
	high := float32(0)
	for _, l := range []*widget.Label{c.text, c.limit} {
		if l.Visible() {
			l.Resize(fyne.NewSize(w, l.Size().Height))
			high += l.MinSize().Height + theme.Padding()
		}
	}
	if c.picture.Visible() {
		high = max(high, sketchHigh+2*padBelow)
	}
	return head + theme.Padding() + high
}

// underneath puts a card below a column; it takes the height that it needs, up to a share of the column's.
type underneath struct{ c *Card }

const cardShare = 0.4

func (u underneath) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	h := min(u.c.needs(size.Width), max(size.Height*cardShare, u.c.all.Objects[0].MinSize().Height))
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(fyne.NewSize(size.Width, size.Height-h))
	objects[1].Move(fyne.NewPos(0, size.Height-h))
	objects[1].Resize(fyne.NewSize(size.Width, h))
}

func (u underneath) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := objects[0].MinSize()
	return fyne.NewSize(max(least.Width, 2*sketchWide), least.Height+u.c.all.Objects[0].MinSize().Height)
}

// Under puts the card below a column.
func (c *Card) Under(column fyne.CanvasObject) fyne.CanvasObject {
	all := container.New(underneath{c}, column, c)
	c.moved = all.Refresh
	return all
}
