package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/panel"
)

// overlayText gives all the text of the dialog on top.
func overlayText(w *Window) string {
	top := w.win.Canvas().Overlays().Top()
	if top == nil {
		return ""
	}
	var out []string
	for _, o := range test.LaidOutObjects(top) {
		if l, ok := o.(*widget.Label); ok {
			out = append(out, l.Text)
		}
	}
	return strings.Join(out, "\n")
}

// tap taps a button of the dialog on top.
func tap(t *testing.T, w *Window, label string) {
	t.Helper()
	top := w.win.Canvas().Overlays().Top()
	if top == nil {
		t.Fatalf("there is no dialog to tap %q in", label)
	}
	for _, o := range test.LaidOutObjects(top) {
		switch b := o.(type) {
		case *widget.Button: // of the library's own dialogs
			if b.Text == label {
				test.Tap(b)
				return
			}
		case *keyed.Button:
			if b.Text == label {
				test.Tap(b)
				return
			}
		}
	}
	t.Fatalf("there is no button %q in\n%s", label, overlayText(w))
}

func addsOf(w *Window) []panel.Add {
	d := w.s.Design()
	var out []panel.Add
	for _, g := range panel.Groups(&d, nil, nil) {
		out = append(out, g.Adds...)
	}
	return out
}
