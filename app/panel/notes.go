package panel

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/say"
)

// notes stands below a table and says what its figures mean. It takes the room that the rows
// leave; where that is little, its heading gives it more.
type notes struct {
	widget.BaseWidget
	text   *widget.Label
	scroll *container.Scroll
	arrow  *widget.Icon
	all    *fyne.Container
	wide   bool // has been given more room
	moved  func()
}

func newNotes(moved func()) *notes {
	n := &notes{text: widget.NewLabel(""), arrow: widget.NewIcon(theme.MenuDropUpIcon()), moved: moved}
	n.text.Wrapping = fyne.TextWrapWord
	n.text.SizeName = theme.SizeNameCaptionText
	n.text.Importance = widget.LowImportance
	n.scroll = container.NewVScroll(n.text)
	head := newHeading(container.NewHBox(n.arrow, small(say.It("What the figures mean"))), n.toggle)
	head.under = n.scroll
	n.all = Topped(head, n.scroll)
	n.ExtendBaseWidget(n)
	return n
}

func small(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.SizeName = theme.SizeNameCaptionText
	return l
}

// toggle gives the notes more room, or takes it back.
func (n *notes) toggle() {
	n.wide = !n.wide
	if n.wide {
		n.arrow.SetResource(theme.MenuDropDownIcon())
	} else {
		n.arrow.SetResource(theme.MenuDropUpIcon())
	}
	n.moved()
}

func (n *notes) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(n.all) }

// head is the height of the heading alone.
func (n *notes) head() float32 { return n.all.MinSize().Height - n.scroll.MinSize().Height }

// needs is the height that shows the notes whole at a width.
func (n *notes) needs(width float32) float32 {
	n.text.Resize(fyne.NewSize(width, n.text.Size().Height))
	return n.head() + n.text.MinSize().Height + theme.Padding()
}

// stacked puts the chooser on top, then the grid, and the notes in the room that its rows leave.
type stacked struct{ t *Tables }

// Shares of the height that notes get at least when they are given room, and rows too small for
// a line of notes.
const (
	wideShare = 0.6
	tooLow    = 30
)

func (l stacked) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	t := l.t
	y := float32(0)
	if t.chooser.Visible() {
		h := t.chooser.MinSize().Height
		t.chooser.Resize(fyne.NewSize(size.Width, h))
		y = h
	}
	room := size.Height - y
	t.lay(size.Width)
	grid := min(room, t.gridHeight(size.Width))
	if t.notes.Visible() {
		least := t.notes.head()
		needs := t.notes.needs(size.Width)
		if t.notes.wide {
			least = min(needs, max(least, room*wideShare))
		}
		grid = min(grid, room-least)
		left := room - grid
		if left < least+tooLow && !t.notes.wide {
			left = least
			grid = room - least
		}
		t.notes.Move(fyne.NewPos(0, y+grid))
		t.notes.Resize(fyne.NewSize(size.Width, left))
	}
	t.grid.Move(fyne.NewPos(0, y))
	t.grid.Resize(fyne.NewSize(size.Width, max(0, grid)))
	t.blank.Move(fyne.NewPos(0, y))
	t.blank.Resize(fyne.NewSize(size.Width, max(0, room)))
	t.awaits.Move(fyne.NewPos(0, y))
	t.awaits.Resize(t.blank.Size())
}

func (l stacked) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(l.t.grid.MinSize().Width, l.t.grid.MinSize().Height+l.t.notes.head())
}
