package app

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"splaywright/app/field"
	"splaywright/app/panel"
	"splaywright/model/part"
)

// Decimals are written as people write them where the settings say they are; what was typed stays.
func TestDecimalsOfTheLocale(t *testing.T) {
	for locale, want := range map[string]bool{
		"de_DE.UTF-8": true, "fr_FR": true, "pt_BR": true, "sv_SE.UTF-8": true,
		"de_CH.UTF-8": false, "en_US.UTF-8": false, "ja_JP.UTF-8": false, "es_MX": false, "C": false, "": false,
	} {
		get := func(k string) string { return map[string]string{"LANG": locale}[k] }
		if got := CommaFor(get); got != want {
			t.Errorf("%q: %v", locale, got)
		}
	}
	w := open(t, Options{Example: "reading-nook-step", Comma: true})
	cells := column(t, w, "Cut list", "Length")
	if len(cells) == 0 || !strings.Contains(cells[0], ",") || strings.Contains(cells[0], ".") {
		t.Errorf("lengths are %q", cells)
	}
	if said := panel.OverallText(w.s.Piece()); !strings.Contains(said, "474,5") || strings.Contains(said, "474.5") {
		t.Errorf("over all it says %q", said)
	}
	if w.s.Text("size.height") != "260" || w.s.Dirty() {
		t.Error("a design that was only begun counts as changed")
	}
}

// Numbers that are to be in inches keep their millimetres, in the fields and in the piece; one step back has all as it was.
func TestUnitsAreChosenAndThePieceStays(t *testing.T) {
	w := open(t, Options{Example: "boot-room-chest"})
	text, before := string(w.s.Document().Bytes()), w.s.Piece()
	height := w.sizes.Field("size.height").Text()
	choose := func(unit string) { w.sizes.Field("units").Input().(*field.Chooser).SetSelected(unit) }
	choose("in")
	f := w.sizes.Field("size.height")
	if got := f.Text(); got != height+" mm" {
		t.Errorf("the height was %s and reads %s", height, got)
	}
	if said := f.SaidText(); !strings.HasPrefix(said, "≈ 17 21/64") || !strings.Contains(said, "440 mm") {
		t.Errorf("of the height it says %q", said)
	}
	after := w.s.Piece()
	if len(w.s.Errors()) > 0 || !slices.EqualFunc(before.Parts, after.Parts, func(a, b *part.Part) bool { return a.ID == b.ID && a.Blank == b.Blank }) {
		t.Errorf("the piece is another one; errors: %v", w.s.Errors())
	}
	if before.Overall != after.Overall {
		t.Errorf("over all it was %v and is %v", before.Overall, after.Overall)
	}
	if cells := column(t, w, "Cut list", "Length"); len(cells) == 0 || !strings.Contains(cells[0], "/") {
		t.Errorf("lengths are %q", cells)
	}
	w.win.Canvas().Focus(f.Input())
	f.Input().TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if got := w.s.Text("size.height"); got != "441 mm" {
		t.Errorf("one step up is %s", got)
	}
	w.undo()
	choose("mm")
	if got := w.sizes.Field("size.height").Text(); got != height+" mm" || w.s.Piece().Overall != before.Overall {
		t.Errorf("in millimetres again the height is %s and the piece %v", got, w.s.Piece().Overall)
	}
	w.undo()
	w.undo()
	if got := string(w.s.Document().Bytes()); got != text {
		t.Errorf("two steps back the design reads\n%s", got)
	}
	if undone := w.s.Undone(); len(undone) == 0 || !strings.Contains(undone[0], "mm → in") {
		t.Errorf("taken back: %q", undone)
	}
}
