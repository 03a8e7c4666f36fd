package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// told lays out what is said of a plan, what of it has no place, and the boards below. Long trouble takes a share of the height
// and is moved in it; the room that all of it asks for does not grow with what is said, or the window would shift its parts when
// a plan comes.
type told struct{ b *boards }

// What trouble takes of the height at most, and what of it is seen in any case: two lines of it.
const (
	troubleShare = 0.4
	troubleLeast = 2
)

// Layout gives each its room from above.
func (t told) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	line, below, picture := objects[0], objects[1], objects[2]
	y := line.MinSize().Height
	line.Move(fyne.Position{})
	line.Resize(fyne.NewSize(size.Width, y))
	if below.Visible() {
		below.Move(fyne.NewPos(0, y))
		t.b.trouble.Resize(fyne.NewSize(size.Width, t.b.trouble.Size().Height)) // breaks its lines
		high := min(t.b.belowAll.MinSize().Height, max(troubleShare*(size.Height-y), t.least()))
		below.Resize(fyne.NewSize(size.Width, high))
		y += high
	}
	picture.Move(fyne.NewPos(0, y))
	picture.Resize(fyne.NewSize(size.Width, max(0, size.Height-y)))
}

// least is the height of the lines that are seen in any case, or of all where there are fewer.
func (t told) least() float32 {
	line := fyne.MeasureText("M", theme.Size(theme.SizeNameCaptionText), fyne.TextStyle{}).Height
	return min(t.b.belowAll.MinSize().Height, troubleLeast*line+2*theme.InnerPadding())
}

// MinSize is that of the line and the boards: they make room for trouble among themselves.
func (t told) MinSize(objects []fyne.CanvasObject) fyne.Size {
	out := fyne.Size{}
	for i, o := range objects {
		if least := o.MinSize(); i != 1 {
			out = fyne.NewSize(max(out.Width, least.Width), out.Height+least.Height)
		}
	}
	return out
}
