package keyed

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// closely puts boxes and choices one below the other without room between, as wide as the widest of them.
type closely struct{}

func (l closely) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y, wide := float32(0), min(size.Width, l.MinSize(objects).Width)
	for _, o := range objects {
		h := o.MinSize().Height
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(wide, h))
		y += h
	}
}

func (closely) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var out fyne.Size
	for _, o := range objects {
		least := o.MinSize()
		out = fyne.NewSize(max(out.Width, least.Width), out.Height+least.Height)
	}
	return out
}

// Checks is a column of boxes of which any number may be ticked.
type Checks struct {
	widget.BaseWidget
	Options   []string
	Selected  []string // what is ticked, in the order in which it was
	OnChanged func([]string)

	boxes []*Check
	all   *fyne.Container
}

// NewChecks makes a box for each of some texts, with those of them ticked that are selected.
func NewChecks(options, selected []string, changed func([]string)) *Checks {
	c := &Checks{Options: options, Selected: selected, OnChanged: changed, all: container.New(closely{})}
	for _, o := range options {
		box := NewCheck(o, nil)
		box.Checked = slices.Contains(selected, o)
		box.OnChanged = func(on bool) { c.tick(o, on) }
		c.boxes = append(c.boxes, box)
		c.all.Add(box)
	}
	c.ExtendBaseWidget(c)
	return c
}

func (c *Checks) tick(option string, on bool) {
	c.Selected = slices.DeleteFunc(slices.Clone(c.Selected), func(s string) bool { return s == option })
	if on {
		c.Selected = append(c.Selected, option)
	}
	if c.OnChanged != nil {
		c.OnChanged(c.Selected)
	}
}

// SetSelected ticks the boxes of some texts and no others.
func (c *Checks) SetSelected(texts []string) {
	for _, box := range c.boxes {
		box.SetChecked(slices.Contains(texts, box.Text))
	}
}

// CreateRenderer is for Fyne.
func (c *Checks) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(c.all) }

// Choice is a column of texts of which one is chosen.
type Choice struct {
	widget.BaseWidget
	Options   []string
	Selected  string
	OnChanged func(string)

	lines []*line
	all   *fyne.Container
}

// NewChoice makes a choice among texts, the first of which is chosen.
func NewChoice(options []string, changed func(string)) *Choice {
	c := &Choice{Options: options, Selected: options[0], OnChanged: changed, all: container.New(closely{})}
	for _, o := range options {
		l := newLine(c, o)
		c.lines = append(c.lines, l)
		c.all.Add(l)
	}
	c.ExtendBaseWidget(c)
	return c
}

// SetSelected chooses a text.
func (c *Choice) SetSelected(text string) {
	if c.Selected == text {
		return
	}
	c.Selected = text
	for _, l := range c.lines {
		l.Refresh()
	}
	if c.OnChanged != nil {
		c.OnChanged(text)
	}
}

// step chooses the text that many further on, and gives its line the keyboard.
func (c *Choice) step(from *line, by int) {
	to := c.lines[(slices.Index(c.lines, from)+by+len(c.lines))%len(c.lines)]
	if on := fyne.CurrentApp().Driver().CanvasForObject(c); on != nil {
		on.Focus(to)
	}
	c.SetSelected(to.text)
}

// CreateRenderer is for Fyne.
func (c *Choice) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(c.all) }

// line is one text of a choice.
type line struct {
	widget.BaseWidget
	of             *Choice
	text           string
	come           func()
	focused, under bool // has the keyboard, lies under the pointer
}

var (
	_ fyne.Focusable    = (*line)(nil)
	_ fyne.Tappable     = (*line)(nil)
	_ desktop.Hoverable = (*line)(nil)
)

func newLine(of *Choice, text string) *line {
	l := &line{of: of, text: text}
	l.ExtendBaseWidget(l)
	return l
}

// Tapped chooses the text.
func (l *line) Tapped(*fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(l); c != nil {
		c.Focus(l)
	}
	l.of.SetSelected(l.text)
}

// FocusGained shows that the keyboard has come.
func (l *line) FocusGained() {
	l.focused = true
	l.Refresh()
	came(l.come)
}

// WhenCome says what is done then.
func (l *line) WhenCome(do func()) { l.come = do }

// FocusLost shows that it has gone.
func (l *line) FocusLost() { l.focused = false; l.Refresh() }

// MouseIn shows that the pointer has come.
func (l *line) MouseIn(*desktop.MouseEvent) { l.under = true; l.Refresh() }

// MouseMoved has nothing to add.
func (l *line) MouseMoved(*desktop.MouseEvent) {}

// MouseOut shows that it has gone.
func (l *line) MouseOut() { l.under = false; l.Refresh() }

// TypedRune chooses with the space bar.
func (l *line) TypedRune(r rune) {
	if r == ' ' {
		l.of.SetSelected(l.text)
	}
}

// TypedKey goes on with the arrows.
func (l *line) TypedKey(k *fyne.KeyEvent) {
	switch {
	case passes(l, k):
	case k.Name == fyne.KeyDown:
		l.of.step(l, 1)
	case k.Name == fyne.KeyUp:
		l.of.step(l, -1)
	}
}

// CreateRenderer is for Fyne.
func (l *line) CreateRenderer() fyne.WidgetRenderer {
	r := &lineRenderer{l: l, ground: canvas.NewRectangle(nil), mark: widget.NewIcon(nil), text: canvas.NewText(l.text, nil)}
	r.ground.CornerRadius = theme.Size(theme.SizeNameInputRadius)
	r.Refresh()
	return r
}

type lineRenderer struct {
	l      *line
	ground *canvas.Rectangle
	mark   *widget.Icon
	text   *canvas.Text
}

func (r *lineRenderer) Layout(size fyne.Size) {
	pad, icon := theme.InnerPadding(), theme.Size(theme.SizeNameInlineIcon)
	r.ground.Resize(size)
	r.mark.Move(fyne.NewPos(pad, (size.Height-icon)/2))
	r.mark.Resize(fyne.NewSquareSize(icon))
	r.text.Move(fyne.NewPos(2*pad+icon, 0))
	r.text.Resize(fyne.NewSize(size.Width-3*pad-icon, size.Height))
}

func (r *lineRenderer) MinSize() fyne.Size {
	pad, icon := theme.InnerPadding(), theme.Size(theme.SizeNameInlineIcon)
	text := r.text.MinSize()
	return fyne.NewSize(3*pad+icon+text.Width, 2*pad+max(icon, text.Height))
}

func (r *lineRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.mark, r.text}
}

func (r *lineRenderer) Destroy() {}

func (r *lineRenderer) Refresh() {
	r.mark.SetResource(theme.RadioButtonIcon())
	if r.l.of.Selected == r.l.text {
		r.mark.SetResource(theme.NewPrimaryThemedResource(theme.RadioButtonCheckedIcon()))
	}
	ground := theme.ColorNameHover
	if r.l.focused {
		ground = theme.ColorNameFocus
	}
	r.ground.FillColor = theme.Color(ground)
	r.ground.Hidden = !r.l.focused && !r.l.under
	r.ground.Refresh()
	r.text.Color, r.text.TextSize = theme.Color(theme.ColorNameForeground), theme.Size(theme.SizeNameText)
	r.text.Refresh()
}
