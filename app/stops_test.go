package app

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"splaywright/app/keyed"
)

// inColumn are the buttons of the column of sizes that stand on the screen, with their labels.
func inColumn(w *Window) []*keyed.Button {
	return buttonsUnder(w.sizes.Object())
}

func buttonsUnder(o fyne.CanvasObject) (out []*keyed.Button) {
	switch o := o.(type) {
	case *keyed.Button:
		return []*keyed.Button{o}
	case *fyne.Container:
		for _, in := range o.Objects {
			out = append(out, buttonsUnder(in)...)
		}
	case fyne.Widget:
		for _, in := range test.WidgetRenderer(o).Objects() {
			out = append(out, buttonsUnder(in)...)
		}
	}
	return out
}

// What is added by the keyboard or a tap has it: its first size can be typed at once.
func TestWhatIsAddedHasTheKeyboard(t *testing.T) {
	for _, tapped := range []bool{false, true} {
		w := onScreen(t)
		c := w.win.Canvas()
		var labels []string
		for _, b := range inColumn(w) {
			if b.Text != "" && !strings.HasSuffix(b.Text, "…") {
				labels = append(labels, b.Text)
			}
		}
		if len(labels) < 5 {
			t.Fatalf("there are %q to add", labels)
		}
		for _, label := range labels {
			before := w.sizes.Paths()
			all := inColumn(w)
			b := all[slices.IndexFunc(all, func(b *keyed.Button) bool { return b.Text == label })]
			if tapped {
				c.Unfocus()
				test.Tap(b)
			} else {
				c.Focus(b)
				press(w, fyne.KeySpace)
			}
			after := w.sizes.Paths()
			has := w.hasKeyboard()
			if len(after) > len(before) && (slices.Contains(before, has) || !slices.Contains(after, has)) {
				t.Errorf("%s, tapped: %v: the keyboard is at %q, %T", label, tapped, has, c.Focused())
			}
			w.undo()
		}
	}
}

// Where what has the keyboard is taken out, or goes with an undo, the keyboard stays in the column.
func TestTheKeyboardStaysInTheColumn(t *testing.T) {
	w := onScreen(t)
	c := w.win.Canvas()
	for range 20 {
		all := inColumn(w)
		at := slices.IndexFunc(all, func(b *keyed.Button) bool { return b.Icon != nil && b.Icon.Name() == theme.DeleteIcon().Name() })
		if at < 0 {
			break
		}
		c.Focus(all[at])
		press(w, fyne.KeySpace)
		now, is := c.Focused().(fyne.CanvasObject)
		if !is || !seen(w, now) {
			t.Fatalf("the keyboard is at %T, which is gone", c.Focused())
		}
	}
	for w.s.CanUndo() {
		w.undo()
	}
	c.Focus(w.sizes.Field("stretchers.1.width").Input())
	w.remove("stretchers.1")
	if now, is := c.Focused().(fyne.CanvasObject); !is || !seen(w, now) {
		t.Errorf("the keyboard is at %T, which is gone", c.Focused())
	}
}
