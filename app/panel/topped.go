package panel

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
)

// Topped puts one thing on top and gives another what is left below. Tab comes to them in that order; in the library's own
// border it comes to the middle first.
func Topped(top, body fyne.CanvasObject) *fyne.Container {
	return container.New(layout.NewBorderLayout(top, nil, nil, nil), top, body)
}
