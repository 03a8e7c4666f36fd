// Package keyed has what takes the keyboard, as the window's library makes it, but for two things: it tells when the
// keyboard comes to it, so that it can be brought to where it is seen, and it leaves the keys of the window to the window.
// The library gives a key to what has the keyboard and to nobody else.
package keyed

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// passes gives a key of the window to the canvas that an object stands on, and tells whether it is one.
func passes(o fyne.CanvasObject, k *fyne.KeyEvent) bool {
	switch k.Name {
	case fyne.KeyEscape, fyne.KeyF1, fyne.KeyF6, fyne.KeyF11:
		if c := fyne.CurrentApp().Driver().CanvasForObject(o); c != nil && c.OnTypedKey() != nil {
			c.OnTypedKey()(k)
		}
		return true
	}
	return false
}

// came calls what wants to know; nil = nobody does.
func came(tell func()) {
	if tell != nil {
		tell()
	}
}

// Button is a button.
type Button struct {
	widget.Button
	Came    func() // the keyboard has come; nil = nobody asks
	focused bool
}

// NewButton makes a button that does something.
func NewButton(label string, do func()) *Button { return NewButtonWithIcon(label, nil, do) }

// NewButtonWithIcon makes a button with a picture.
func NewButtonWithIcon(label string, icon fyne.Resource, do func()) *Button {
	b := &Button{}
	b.Text, b.Icon, b.OnTapped = label, icon, do
	b.ExtendBaseWidget(b)
	return b
}

// FocusGained tells that the keyboard has come.
func (b *Button) FocusGained() {
	b.focused = true
	b.Button.FocusGained()
	came(b.Came)
}

// FocusLost is for Fyne.
func (b *Button) FocusLost() {
	b.focused = false
	b.Button.FocusLost()
}

// WhenCome says what is done when the keyboard comes.
func (b *Button) WhenCome(do func()) { b.Came = do }

// CreateRenderer is for Fyne.
func (b *Button) CreateRenderer() fyne.WidgetRenderer {
	return &rimmed{b.Button.CreateRenderer(), newRim(), func(m rim) { m.show(b.focused, theme.ColorNameForeground) }}
}

// TypedKey presses the button with Enter as with the space bar.
func (b *Button) TypedKey(k *fyne.KeyEvent) {
	switch {
	case passes(b, k):
	case k.Name == fyne.KeyReturn || k.Name == fyne.KeyEnter:
		b.Tapped(nil)
	default:
		b.Button.TypedKey(k)
	}
}

// Check is a box to tick.
type Check struct {
	widget.Check
	come func()
}

// NewCheck makes a box.
func NewCheck(label string, changed func(bool)) *Check {
	c := &Check{}
	c.Text, c.OnChanged = label, changed
	c.ExtendBaseWidget(c)
	return c
}

// WhenCome says what is done when the keyboard comes.
func (c *Check) WhenCome(do func()) { c.come = do }

// FocusGained tells that the keyboard has come.
func (c *Check) FocusGained() {
	c.Check.FocusGained()
	came(c.come)
}

// TypedKey leaves the keys of the window to the window.
func (c *Check) TypedKey(k *fyne.KeyEvent) {
	if !passes(c, k) {
		c.Check.TypedKey(k)
	}
}

// Select is a list to choose from.
type Select struct {
	widget.Select
	come func()
}

// NewSelect makes a list.
func NewSelect(options []string, changed func(string)) *Select {
	s := &Select{}
	s.Options, s.OnChanged = options, changed
	s.ExtendBaseWidget(s)
	return s
}

// WhenCome says what is done when the keyboard comes.
func (s *Select) WhenCome(do func()) { s.come = do }

// FocusGained tells that the keyboard has come.
func (s *Select) FocusGained() {
	s.Select.FocusGained()
	came(s.come)
}

// TypedKey leaves the keys of the window to the window.
func (s *Select) TypedKey(k *fyne.KeyEvent) {
	if !passes(s, k) {
		s.Select.TypedKey(k)
	}
}

// Slider is a slider.
type Slider struct{ widget.Slider }

// NewSlider makes a slider.
func NewSlider(least, most float64) *Slider {
	s := &Slider{}
	s.Min, s.Max, s.Step, s.Orientation = least, most, 1, widget.Horizontal
	s.ExtendBaseWidget(s)
	return s
}

// TypedKey leaves the keys of the window to the window.
func (s *Slider) TypedKey(k *fyne.KeyEvent) {
	if !passes(s, k) {
		s.Slider.TypedKey(k)
	}
}

// List is a list of lines.
type List struct{ widget.List }

// NewList makes a list.
func NewList(length func() int, create func() fyne.CanvasObject, update func(widget.ListItemID, fyne.CanvasObject)) *List {
	l := &List{}
	l.Length, l.CreateItem, l.UpdateItem = length, create, update
	l.ExtendBaseWidget(l)
	return l
}

// TypedKey leaves the keys of the window to the window.
func (l *List) TypedKey(k *fyne.KeyEvent) {
	if !passes(l, k) {
		l.List.TypedKey(k)
	}
}

// Table is a table.
type Table struct {
	widget.Table
	rim     rim
	focused bool
}

// NewTable makes a table.
func NewTable(length func() (rows, cols int), create func() fyne.CanvasObject, update func(widget.TableCellID, fyne.CanvasObject)) *Table {
	t := &Table{rim: newRim()}
	t.Length, t.CreateCell, t.UpdateCell = length, create, update
	t.ExtendBaseWidget(t)
	return t
}

// FocusGained shows that the keyboard has come.
func (t *Table) FocusGained() {
	t.focused = true
	t.Table.FocusGained()
	t.showRim(t.rim)
}

func (t *Table) showRim(m rim) { m.show(t.focused, theme.ColorNamePrimary) }

// FocusLost shows that it has gone.
func (t *Table) FocusLost() {
	t.focused = false
	t.Table.FocusLost()
	t.showRim(t.rim)
}

// CreateRenderer is for Fyne.
func (t *Table) CreateRenderer() fyne.WidgetRenderer {
	return &rimmed{t.Table.CreateRenderer(), t.rim, t.showRim}
}

// TypedKey leaves the keys of the window to the window.
func (t *Table) TypedKey(k *fyne.KeyEvent) {
	if !passes(t, k) {
		t.Table.TypedKey(k)
	}
}
