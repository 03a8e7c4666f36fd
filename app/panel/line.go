package panel

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// line is a label of one line that ends in an ellipsis where it has no room for its text. A label that is told to end so by
// itself looks for its end anew whenever it is refreshed, which takes as long as a picture of a small piece.
type line struct {
	label *widget.Label
	text  string // all of it
}

func newLine() *line { return &line{label: widget.NewLabel("")} }

func (l *line) size() float32 {
	if l.label.SizeName == "" {
		return theme.Size(theme.SizeNameText)
	}
	return theme.Size(l.label.SizeName)
}

// wide is the width of the label with all of its text.
func (l *line) wide() float32 {
	return fyne.MeasureText(l.text, l.size(), l.label.TextStyle).Width + 2*theme.InnerPadding() + 1
}

// fit shows as much of the text as a label of a width has room for.
func (l *line) fit(width float32) {
	if text := fitted(l.text, l.size(), l.label.TextStyle, width-2*theme.InnerPadding()); l.label.Text != text {
		l.label.SetText(text)
	}
}

func (l *line) importance(of widget.Importance) {
	if l.label.Importance != of {
		l.label.Importance = of
		l.label.Refresh()
	}
}
