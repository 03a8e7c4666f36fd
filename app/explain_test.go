package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"splaywright/app/field"
	"splaywright/app/panel"
)

// The size that the keyboard comes to is explained: its name, what it is, what it must keep to, and a sketch.
func TestTheSizeThatIsTypedIsExplained(t *testing.T) {
	w := open(t, Options{})
	w.win.Resize(fyne.NewSize(1000, 700))
	for _, c := range []struct{ path, name, text, limit, sketch string }{
		{"corners.pin", "Pin, wide", "between two tails", "0 or more", "pin"},
		{"splay.ends", "Sides lean", "from plumb", "lies flat", "lean-ends"},
		{"form", "Form", "kind of piece", "", "piece"},
		{"features.0.width", "Width", "arch", "above zero", "arch-width"},
	} {
		w.win.Canvas().Focus(w.sizes.Field(c.path).Input())
		name, text, limit, sketch := w.card.Said()
		if name != c.name || !strings.Contains(text, c.text) || !strings.Contains(limit, c.limit) || c.limit == "" && limit != "" || sketch != c.sketch {
			t.Errorf("%s: %q, %q, %q, %q", c.path, name, text, limit, sketch)
		}
	}
}

// A tap on a size's name brings the keyboard to it; Tab beyond the foot of the column scrolls it on.
func TestTheKeyboardBringsItsSizeIntoView(t *testing.T) {
	w := open(t, Options{})
	w.win.Resize(fyne.NewSize(1000, 700))
	w.sizes.Field("size.depth").Tapped(&fyne.PointEvent{})
	if w.win.Canvas().Focused() != w.sizes.Field("size.depth").Input() {
		t.Error("the keyboard is not at the depth")
	}
	inView := func(f *field.Field) bool {
		y := w.app.Driver().AbsolutePositionForObject(f).Y - w.app.Driver().AbsolutePositionForObject(w.sizes.Object()).Y
		return y >= 0 && y+f.Size().Height <= w.sizes.Object().Size().Height
	}
	for range 60 {
		w.win.Canvas().(interface{ FocusNext() }).FocusNext()
		for _, path := range []string{"splay.ends", "corners.pin", "stretchers.0.width", "use.load", "papers.sheet"} {
			f := w.sizes.Field(path)
			if f.Input() == w.win.Canvas().Focused() && !inView(f) {
				t.Errorf("%s has the keyboard out of sight", path)
			}
		}
	}
}

// The card folds away and stays folded in the next window.
func TestTheCardStaysFolded(t *testing.T) {
	w := open(t, Options{})
	w.win.Resize(fyne.NewSize(1000, 700))
	high := w.card.Size().Height
	test.TapCanvas(w.win.Canvas(), fyne.CurrentApp().Driver().AbsolutePositionForObject(w.card).AddXY(20, 10))
	if got := w.card.Size().Height; got >= high {
		t.Errorf("folded it is %v high, it was %v", got, high)
	}
	if other := w.another(); other.card.Size().Height >= high {
		t.Error("another window does not know of it")
	}
}

// Of a named value the card says where it stands, and once the name is gone it says nothing of it any more.
func TestANamedValueSaysWhereItStands(t *testing.T) {
	w := open(t, Options{})
	if err := w.s.Change("name foot", [2]string{"names.foot", "52"}); err != nil {
		t.Fatal(err)
	}
	w.changed()
	typeInto(t, w, "stretchers.0.width", "foot + 8")
	typeInto(t, w, "size.height", "foot * 5")
	w.win.Canvas().Focus(w.sizes.Field("names.foot").Input())
	if _, _, where, _ := w.card.Said(); where != "It stands in: height; stretcher 1, width." {
		t.Errorf("the card says %q", where)
	}
	w.pick("names.foot", panel.Remove)
	if name, _, where, sketch := w.card.Said(); name != "About this size" || where != "" || sketch != "" {
		t.Errorf("the name is gone, and the card says %q, %q, %q", name, where, sketch)
	}
}

// A tap on the state of the strip goes to what it tells of: the text that is not understood, else the findings.
func TestTheStateLeadsToWhatItTellsOf(t *testing.T) {
	w := open(t, Options{})
	typeInto(t, w, "papers.eye-height", "high")
	w.win.Canvas().Unfocus()
	w.strip.OnState()
	if w.win.Canvas().Focused() != w.sizes.Field("papers.eye-height").Input() {
		t.Error("the keyboard is not at the text that is not understood")
	}
	typeInto(t, w, "papers.eye-height", "")
	w.strip.OnState()
	if got := w.openTab(); got != findingsTab {
		t.Errorf("the state leads to %q", got)
	}
}

// A field at the foot of the column stays under the pointer while that is down, and is brought to where it is seen whole when
// it is up: had it moved before, the release would fall beside it and take the keyboard away again.
func TestAFieldDoesNotMoveUnderThePointer(t *testing.T) {
	w := open(t, Options{})
	w.win.Resize(fyne.NewSize(1000, 700))
	d := w.app.Driver()
	foot := d.AbsolutePositionForObject(w.sizes.Object()).Y + w.sizes.Object().Size().Height
	at := func(f *field.Field) float32 { return d.AbsolutePositionForObject(f.Input().(fyne.CanvasObject)).Y }
	for _, path := range w.sizes.Paths() {
		f := w.sizes.Field(path)
		e, is := f.Input().(desktop.Mouseable)
		y := at(f)
		if !is || y > foot-4 || y < foot-100 {
			continue
		}
		e.MouseDown(&desktop.MouseEvent{Button: desktop.MouseButtonPrimary})
		if at(f) != y {
			t.Errorf("%s moves from %v to %v while the pointer is down", path, y, at(f))
		}
		if w.win.Canvas().Focused() != f.Input() {
			t.Errorf("%s has no keyboard", path)
		}
		e.MouseUp(&desktop.MouseEvent{Button: desktop.MouseButtonPrimary})
		foot := d.AbsolutePositionForObject(w.sizes.Object()).Y + w.sizes.Object().Size().Height
		if bottom := at(f) + f.Size().Height; bottom > foot {
			t.Errorf("%s ends at %v, below the column's foot at %v", path, bottom, foot)
		}
		return
	}
	t.Fatal("no field stands at the foot of the column")
}
