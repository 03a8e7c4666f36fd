package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"splaywright/app/look"
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/assets"
	"splaywright/model/tongue"
)

// A name may take two lines beside its field; none of its words is wider than one.
func TestNamesOfFieldsFitBesideThem(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{})
	for _, code := range tongue.Codes() {
		inTongue(t, code)
		for _, e := range assets.Examples() {
			w := open(t, Options{Example: e.Name})
			d := w.s.Design()
			for _, g := range panel.Groups(&d, nil, nil) {
				for _, f := range g.Fields {
					text := say.It(f.Label)
					if code == "ja" { // breaks anywhere
						continue
					}
					for _, word := range strings.Fields(text) {
						if got := fyne.MeasureText(word, theme.TextSize(), fyne.TextStyle{}).Width; got > 108-2*theme.InnerPadding() {
							t.Errorf("%s: %q of %q is %.0f wide", code, word, text, got)
						}
					}
				}
			}
		}
	}
}
