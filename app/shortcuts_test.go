package app

import (
	"image/color"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/look"
)

// Shortcuts in the menus are as strong as the commands beside them, in every look.
func TestShortcutsInMenusAreReadable(t *testing.T) {
	w := open(t, Options{})
	for _, th := range []look.Theme{{}, {Dark: true}, {High: true}, {Dark: true, High: true}} {
		w.app.Settings().SetTheme(th)
		menu := widget.NewPopUpMenu(w.menu.main.Items[0], w.win.Canvas())
		menu.ShowAtPosition(fyne.NewPos(0, 0))
		seen := 0
		for _, o := range test.LaidOutObjects(menu) {
			text, is := o.(*canvas.Text)
			if !is || text.Text == "" || strings.Contains(text.Text, " ") {
				continue
			}
			seen++
			if a := color.NRGBAModel.Convert(text.Color).(color.NRGBA).A; a < 0xe0 {
				t.Errorf("%+v: %q is drawn with %d of 255", th, text.Text, a)
			}
		}
		if seen < 10 {
			t.Errorf("%+v: only %d texts in the menu", th, seen)
		}
		menu.Hide()
	}
}

// The menu marks the projection that the papers have, whether it was chosen there, follows from the unit or comes back by undo.
func TestTheProjectionIsMarked(t *testing.T) {
	w := open(t, Options{})
	is := func(when string, first bool) {
		t.Helper()
		if w.menu.first.Checked != first || w.menu.third.Checked == first {
			t.Errorf("%s first angle is marked: %v, third angle: %v", when, w.menu.first.Checked, w.menu.third.Checked)
		}
	}
	is("in millimetres", true)
	w.menu.third.Action()
	is("chosen", false)
	w.undo()
	is("undone", true)
	w.set("units", "in")
	is("in inches", false)
}
