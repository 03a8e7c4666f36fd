package panel

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
)

// backed puts a colour of the theme behind an object; the colour follows the theme.
type backed struct {
	widget.BaseWidget
	name fyne.ThemeColorName
	top  fyne.CanvasObject
}

// Backed puts a colour of the theme behind an object.
func Backed(name fyne.ThemeColorName, o fyne.CanvasObject) fyne.CanvasObject {
	b := &backed{name: name, top: o}
	b.ExtendBaseWidget(b)
	return b
}

func (b *backed) CreateRenderer() fyne.WidgetRenderer {
	r := &backedRenderer{b: b, rect: canvas.NewRectangle(color.Transparent)}
	r.objects = []fyne.CanvasObject{r.rect, b.top}
	r.rect.FillColor = theme.Color(b.name)
	return r
}

type backedRenderer struct {
	b       *backed
	rect    *canvas.Rectangle
	objects []fyne.CanvasObject
}

func (r *backedRenderer) Layout(s fyne.Size) {
	r.rect.Resize(s)
	r.b.top.Resize(s)
}

func (r *backedRenderer) MinSize() fyne.Size           { return r.b.top.MinSize() }
func (r *backedRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *backedRenderer) Destroy()                     {}

func (r *backedRenderer) Refresh() {
	r.rect.FillColor = theme.Color(r.b.name)
	r.rect.Refresh()
	r.b.top.Refresh()
}

// section is a group with its heading, which folds it.
type section struct {
	widget.BaseWidget
	title  string
	head   *heading
	body   *fyne.Container
	all    *fyne.Container
	remove *keyed.Button // nil = what it holds stays
	folded bool
	arrow  *widget.Icon
}

func newSection(title string, remove func(), body ...fyne.CanvasObject) *section {
	s := &section{title: title, body: container.NewVBox(body...), arrow: widget.NewIcon(theme.MenuDropDownIcon())}
	name := widget.NewLabel(say.It(title))
	name.TextStyle.Bold = true
	var right fyne.CanvasObject
	if remove != nil {
		b := keyed.NewButtonWithIcon("", theme.DeleteIcon(), remove)
		b.Importance = widget.LowImportance
		s.remove, right = b, b
	}
	s.head = newHeading(container.NewBorder(nil, nil, s.arrow, right, name), s.fold)
	s.all = container.NewVBox(s.head, container.New(bodyPad{}, s.body))
	s.ExtendBaseWidget(s)
	return s
}

// fold folds the section, or unfolds it.
func (s *section) fold() {
	s.folded = !s.folded
	if s.folded {
		s.body.Hide()
		s.arrow.SetResource(theme.MenuExpandIcon())
	} else {
		s.body.Show()
		s.arrow.SetResource(theme.MenuDropDownIcon())
	}
	s.all.Refresh()
	s.Refresh()
}

func (s *section) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(s.all) }

// bodyPad keeps the fields off the rim of the column.
type bodyPad struct{}

const (
	padSides = 8
	padBelow = 6
)

func (bodyPad) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(padSides, 0))
		o.Resize(fyne.NewSize(size.Width-2*padSides, max(0, size.Height-padBelow)))
	}
}

func (bodyPad) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var out fyne.Size
	for _, o := range objects {
		if o.Visible() {
			out = out.Max(o.MinSize().Add(fyne.NewSize(2*padSides, padBelow)))
		}
	}
	return out
}
