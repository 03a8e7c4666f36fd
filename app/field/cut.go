package field

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// cut shows an object as far as its place goes: a text that is longer than its field ends at the field's rim. The library's
// own clip gives its content all the width that it wants, and so would put what stands at the right end out of sight.
type cut struct {
	widget.BaseWidget
	of fyne.CanvasObject
}

func newCut(of fyne.CanvasObject) *cut {
	c := &cut{of: of}
	c.ExtendBaseWidget(c)
	return c
}

// CreateRenderer is for Fyne.
func (c *cut) CreateRenderer() fyne.WidgetRenderer {
	return cutRenderer{widget.NewSimpleRenderer(c.of)}
}

type cutRenderer struct{ fyne.WidgetRenderer }

// IsClip tells the window's painter to cut off what goes beyond.
func (cutRenderer) IsClip() {}

// tools are what stands at the right end of a place to type, over the end of a long text.
type tools struct {
	widget.BaseWidget
	of fyne.CanvasObject
}

func newTools(of fyne.CanvasObject) *tools {
	t := &tools{of: of}
	t.ExtendBaseWidget(t)
	return t
}

// CreateRenderer is for Fyne.
func (t *tools) CreateRenderer() fyne.WidgetRenderer {
	r := &toolsRenderer{t: t, back: canvas.NewRectangle(color.Transparent)}
	r.back.FillColor = theme.Color(theme.ColorNameInputBackground)
	return r
}

type toolsRenderer struct {
	t    *tools
	back *canvas.Rectangle
}

// rim and foot are what the ground leaves free of the field's own rim, above and below, window units.
const rim, foot = 2, 3

func (r *toolsRenderer) Layout(size fyne.Size) {
	r.back.Move(fyne.NewPos(0, rim))
	r.back.Resize(size.Subtract(fyne.NewSize(rim, rim+foot)))
	r.t.of.Resize(size)
}

// least is what the ground covers where there are no tools, window units: the room that letters keep from the rim.
const least = 4

func (r *toolsRenderer) MinSize() fyne.Size           { return r.t.of.MinSize().Max(fyne.NewSize(least, 0)) }
func (r *toolsRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.back, r.t.of} }
func (r *toolsRenderer) Destroy()                     {}

func (r *toolsRenderer) Refresh() {
	r.back.FillColor = theme.Color(theme.ColorNameInputBackground)
	r.back.Refresh()
	r.t.of.Refresh()
}
