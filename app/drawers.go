package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/look"
	"splaywright/app/panel"
	"splaywright/app/say"
)

// drawers shows one of several contents under a row of their names. Where the row is longer than its place it moves from name to
// name, so that the open one's is always read and none is cut in two; a button at its end lists them all. The library's own row hides what does not fit,
// the open one's name with it, and Tab does not come to it.
type drawers struct {
	widget.BaseWidget
	Items      []*container.TabItem
	OnSelected func(*container.TabItem)

	open    int
	heads   []*keyed.Head
	row     *fyne.Container
	place   *fyne.Container // as much of the row as there is room for
	offset  float32         // how far the row has moved to the left
	list    *keyed.Button
	content *fyne.Container
	all     fyne.CanvasObject
}

func newDrawers() *drawers {
	d := &drawers{open: -1, row: container.NewHBox(), content: container.NewStack()}
	clip := container.NewClip(container.New(moved{d}, d.row))
	clip.ExtendBaseWidget(clip) // the library does so only when it is first asked for its size
	d.place = container.New(wholeNames{d}, clip)
	d.list = keyed.NewButtonWithIcon("", theme.MenuDropDownIcon(), d.showAll)
	d.list.Importance = widget.LowImportance
	top := panel.Backed(look.Column, container.New(rowAndList{d.row}, d.place, d.list))
	d.all = panel.Topped(container.NewVBox(top, widget.NewSeparator()), d.content)
	d.ExtendBaseWidget(d)
	return d
}

// SetItems puts others in the place of what was there, and opens the first.
func (d *drawers) SetItems(items []*container.TabItem) {
	d.Items, d.heads, d.open = items, nil, -1
	d.row.RemoveAll()
	for i, it := range items {
		h := keyed.NewHead(it.Text, func() { d.SelectIndex(i) }, func(by int) { d.step(i, by) })
		h.WhenCome(func() { d.bring(i) })
		d.heads = append(d.heads, h)
		d.row.Add(h)
	}
	d.SelectIndex(0)
}

// SelectIndex opens one.
func (d *drawers) SelectIndex(i int) {
	if i < 0 || i >= len(d.Items) || i == d.open {
		return
	}
	d.open = i
	for n, h := range d.heads {
		h.Open(n == i)
	}
	d.content.Objects = []fyne.CanvasObject{d.Items[i].Content}
	d.content.Refresh()
	d.bring(i)
	if d.OnSelected != nil {
		d.OnSelected(d.Items[i])
	}
}

// SelectedIndex is the number of the open one, -1 while there is none.
func (d *drawers) SelectedIndex() int { return d.open }

// Selected is the open one, nil while there is none.
func (d *drawers) Selected() *container.TabItem {
	if d.open < 0 {
		return nil
	}
	return d.Items[d.open]
}

// step opens the one that many further on and gives its name the keyboard.
func (d *drawers) step(from, by int) {
	to := (from + by + len(d.Items)) % len(d.Items)
	d.SelectIndex(to)
	if c := fyne.CurrentApp().Driver().CanvasForObject(d); c != nil {
		c.Focus(d.heads[to])
	}
}

// bring moves the row so far that a name is read whole.
func (d *drawers) bring(i int) {
	h, wide := d.heads[i], d.place.Size().Width
	x, w := h.Position().X, h.Size().Width
	switch at := d.offset; {
	case wide <= 0:
	case x < at:
		d.move(x)
	case x+w > at+wide:
		d.move(x + w - wide)
	}
}

// move moves the row to where its left end is that far out of sight, or a little further: to where a name begins.
func (d *drawers) move(to float32) {
	to = min(to, d.row.MinSize().Width-d.place.Size().Width)
	d.offset = 0
	for i := 0; d.offset < to-rounding && i < len(d.heads); i++ {
		d.offset = d.heads[i].Position().X
	}
	d.row.Move(fyne.NewPos(-d.offset, 0))
	d.row.Refresh()
	d.place.Refresh()
}

// rounding, window units, is less than a dot.
const rounding = 0.5

// Scrolled moves the row by the wheel, a name at a time.
func (d *drawers) Scrolled(e *fyne.ScrollEvent) {
	on := e.Scrolled.DX+e.Scrolled.DY < 0
	to := d.offset
	for _, h := range d.heads {
		x := h.Position().X
		if on && x > d.offset+rounding {
			to = x
			break
		}
		if !on && x < d.offset-rounding {
			to = x
		}
	}
	d.move(to)
}

// showAll lists all names.
func (d *drawers) showAll() {
	var items []*fyne.MenuItem
	for i, it := range d.Items {
		item := fyne.NewMenuItem(it.Text, func() { d.SelectIndex(i) })
		item.Checked = i == d.open
		items = append(items, item)
	}
	c := fyne.CurrentApp().Driver().CanvasForObject(d)
	if c == nil {
		return
	}
	menu := widget.NewPopUpMenu(fyne.NewMenu(say.It("Tables"), items...), c)
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(d.list)
	size := menu.MinSize()
	menu.ShowAtPosition(fyne.NewPos(max(0, at.X+d.list.Size().Width-size.Width), max(0, min(at.Y+d.list.Size().Height, c.Size().Height-size.Height))))
}

// Resize keeps the open one's name in sight.
func (d *drawers) Resize(size fyne.Size) {
	d.BaseWidget.Resize(size)
	if d.open >= 0 {
		d.move(d.offset)
		d.bring(d.open)
	}
}

// CreateRenderer is for Fyne.
func (d *drawers) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(d.all) }

// wholeNames shows as much of the row as ends with a whole name.
type wholeNames struct{ d *drawers }

func (l wholeNames) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	wide := size.Width
	for _, h := range l.d.heads {
		if end := h.Position().X + h.Size().Width - l.d.offset; end > 0 && end <= size.Width+rounding {
			wide = end
		}
	}
	if l.d.row.MinSize().Width <= size.Width {
		wide = size.Width
	}
	objects[0].Resize(fyne.NewSize(wide, size.Height))
	objects[0].Move(fyne.Position{})
}

func (wholeNames) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }

// moved keeps the row where it has been moved to.
type moved struct{ d *drawers }

func (m moved) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(fyne.NewSize(max(size.Width, objects[0].MinSize().Width), size.Height))
	objects[0].Move(fyne.NewPos(-m.d.offset, 0))
}

func (moved) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(0, objects[0].MinSize().Height)
}

// rowAndList puts a button to the right of a row that has no room for all of it; where it has, the button is not seen.
type rowAndList struct{ row fyne.CanvasObject }

func (l rowAndList) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	place, list := objects[0], objects[1]
	wide := size.Width
	list.Hide()
	if l.row.MinSize().Width > wide {
		list.Show()
		wide -= list.MinSize().Width
	}
	place.Resize(fyne.NewSize(wide, size.Height))
	list.Move(fyne.NewPos(wide, 0))
	list.Resize(fyne.NewSize(size.Width-wide, size.Height))
}

func (l rowAndList) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(objects[1].MinSize().Width, l.row.MinSize().Height)
}
