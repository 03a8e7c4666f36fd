package keyed

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// comes is what tells when the keyboard has come to it.
type comes interface {
	fyne.CanvasObject
	WhenCome(func())
}

// NewScroll makes a scroll that shows whatever in it the keyboard comes to, with room beside its content for its bar. What is
// in it is looked through once, so it holds all of it by then.
func NewScroll(body fyne.CanvasObject) *container.Scroll {
	s := container.NewVScroll(container.New(besideBar{}, body))
	follow(s, body)
	return s
}

func follow(s *container.Scroll, o fyne.CanvasObject) {
	switch o := o.(type) {
	case comes:
		o.WhenCome(func() { Bring(s, o) })
	case *Checks:
		follow(s, o.all)
	case *Choice:
		follow(s, o.all)
	case *widget.Form:
		for _, in := range o.Items {
			follow(s, in.Widget)
		}
	case *fyne.Container:
		for _, in := range o.Objects {
			follow(s, in)
		}
	}
}

// Bring scrolls so far that an object in a scroll is seen whole.
func Bring(s *container.Scroll, o fyne.CanvasObject) {
	d := fyne.CurrentApp().Driver()
	y := d.AbsolutePositionForObject(o).Y - d.AbsolutePositionForObject(s.Content).Y
	to := s.Offset
	switch high := s.Size().Height; {
	case y < to.Y:
		to.Y = y
	case y+o.Size().Height > to.Y+high:
		to.Y = min(y, y+o.Size().Height-high)
	default:
		return
	}
	s.ScrollToOffset(to)
}

// besideBar leaves room to the right for the bar of a scroll, which would lie over what reaches there.
type besideBar struct{}

func (besideBar) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Resize(fyne.NewSize(size.Width-theme.ScrollBarSize(), size.Height))
	}
}

func (besideBar) MinSize(objects []fyne.CanvasObject) fyne.Size {
	out := fyne.NewSize(theme.ScrollBarSize(), 0)
	for _, o := range objects {
		least := o.MinSize()
		out = fyne.NewSize(max(out.Width, least.Width+theme.ScrollBarSize()), max(out.Height, least.Height))
	}
	return out
}
