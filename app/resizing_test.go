package app

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"splaywright/app/keyed"
	"splaywright/app/say"
	"splaywright/model/remedy"
	"splaywright/model/resize"
	"splaywright/model/tongue"
)

// From step to bench: the footprint held under a greater height, what changes shown before it is
// done, and one step back.
func TestResizeHoldsTheFootprint(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	floor := w.s.Piece().Overall.WidthFloor.MM()
	r := newResizing(w)
	r.entries["size.height"].SetText("300")
	r.lean.SetSelected(resize.Footprint)
	shown, ok := r.changes.Shown()
	if !ok || len(shown.Rows) == 0 {
		t.Fatal("nothing is shown of what would change")
	}
	if w.s.Text("size.height") != "260" {
		t.Error("the design changed before Resize was pressed")
	}
	r.apply()
	if got := w.s.Piece().Overall; got.Height.MM() != 300 || got.WidthFloor.MM()-floor > 1e-3 || floor-got.WidthFloor.MM() > 1e-3 {
		t.Errorf("%+v, floor was %g", got, floor)
	}
	if h := w.s.History(); !strings.Contains(h[len(h)-1], "footprint held") {
		t.Errorf("history: %q", h)
	}
	w.undo()
	if w.s.Text("size.height") != "260" || w.s.Text("splay.ends") != "6" {
		t.Errorf("undone to %s, %s", w.s.Text("size.height"), w.s.Text("splay.ends"))
	}
}

// A size that the person keeps is not changed for a hold: the dialog says so, and nothing is lost.
func TestResizeLeavesWhatIsKept(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	w.sizes.Field("splay.ends").Locked(true)
	if said := w.sizes.Field("splay.ends").SaidText(); !strings.Contains(said, "kept when resizing") {
		t.Errorf("the field says %q", said)
	}
	r := newResizing(w)
	r.entries["size.height"].SetText("300")
	r.lean.SetSelected(resize.Footprint)
	if !strings.Contains(saidIn(r), "Sides lean would have to change") {
		t.Errorf("the dialog says %q", saidIn(r))
	}
	r.entries["size.height"].SetText("tall")
	if !strings.Contains(saidIn(r), "tall") {
		t.Errorf("the dialog says %q", saidIn(r))
	}
	w.lock("size.width", true)
	if !newResizing(w).entries["size.width"].Disabled() {
		t.Error("a width that is kept can be typed")
	}
}

// A finding is asked what would do, an offer accepted, and the finding is gone; undo brings it back.
func TestOfferAccepted(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	typeInto(t, w, "size.width", "1100")
	typeInto(t, w, "boards.top.thickness", "15")
	sags := func() (at int) {
		for i, f := range w.s.Piece().Findings {
			if f.ID == "top-sags" {
				return i
			}
		}
		return -1
	}
	i := sags()
	if i < 0 {
		t.Fatal("the top does not sag")
	}
	var offers []remedy.Offer
	f := w.s.Piece().Findings[i]
	w.whatWouldDo(f)
	under := w.findings.Under(f)
	if got, want := under.Size().Height, under.MinSize().Height; got < want {
		t.Errorf("the offers need %v of height and have %v", want, got)
	}
	b := buttonsIn(w.findings.Object(), "Accept")
	if len(b) == 0 {
		t.Fatalf("nothing is offered: %v", offers)
	}
	test.Tap(b[0])
	if sags() >= 0 {
		t.Error("it still sags")
	}
	w.undo()
	if sags() < 0 {
		t.Error("undo did not bring it back")
	}
}

// By the keyboard alone: the button that asks hands the keyboard over to the first of the offers.
func TestAnOfferIsAcceptedByTheKeyboard(t *testing.T) {
	w := onScreen(t)
	typeInto(t, w, "size.width", "1400") // the top sags
	w.openTabOf(findingsTab)
	c := w.win.Canvas()
	ask := buttonsIn(w.findings.Object(), "What would do?")
	if len(ask) == 0 {
		t.Fatalf("nothing to ask about in %q", w.findings.Texts())
	}
	c.Focus(ask[0])
	ask[0].TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	b, is := c.Focused().(*keyed.Button)
	if !is || b.Text != "Accept" {
		t.Fatalf("the keyboard is at %T", c.Focused())
	}
	was := w.findings.Texts()[0]
	if b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnter}); slices.Contains(w.findings.Texts(), was) {
		t.Error("the finding is still there")
	}
	if now, is := c.Focused().(fyne.CanvasObject); !is || !seen(w, now) {
		t.Errorf("accepted, the keyboard is at %T, which is gone", c.Focused())
	}
}

// What resizing would bring up is told in whole sentences before it is done.
func TestResizingTellsWhatItBringsUp(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	r := newResizing(w)
	r.entries["size.width"].SetText("1400")
	if got := saidIn(r); !strings.Contains(got, "1 note") || !strings.Contains(got, "Sag of the top") {
		t.Errorf("it says %q", got)
	}
}

// buttonsIn finds the buttons of a name below an object.
func buttonsIn(o fyne.CanvasObject, text string) []*keyed.Button {
	switch o := o.(type) {
	case *keyed.Button:
		if o.Text == text {
			return []*keyed.Button{o}
		}
	case *fyne.Container:
		var out []*keyed.Button
		for _, c := range o.Objects {
			out = append(out, buttonsIn(c, text)...)
		}
		return out
	case *container.Scroll:
		return buttonsIn(o.Content, text)
	case *keyed.Reading:
		return buttonsIn(o.Scroll, text)
	}
	return nil
}

// saidIn is what a resizing says besides its table.
func saidIn(r *resizing) string {
	var out []string
	lookAt(r.said, fyne.Position{}, 0, false, func(s seenAt) {
		if s.kind == "label" {
			out = append(out, s.text)
		}
	})
	return strings.Join(out, "\n")
}

// What cannot be held is said as what stops a piece, with its mark, and where the table of changes stood nothing is claimed.
func TestWhatCannotBeHeldIsSaidAsAStop(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	r := newResizing(w)
	r.entries["size.height"].SetText("450")
	r.lean.SetSelected(resize.LegLength)
	if said := saidIn(r); !strings.HasPrefix(said, "Stop: ") || !strings.Contains(said, "the leg length cannot be held") {
		t.Errorf("it says %q", said)
	}
	if shown, _ := r.changes.Shown(); len(shown.Rows) != 0 {
		t.Errorf("%d changes are shown of what cannot be", len(shown.Rows))
	}
	r.entries["size.height"].SetText("250")
	if shown, _ := r.changes.Shown(); len(shown.Rows) == 0 || strings.Contains(saidIn(r), "cannot be held") {
		t.Errorf("mended, it shows %d changes and says %q", len(shown.Rows), saidIn(r))
	}
}

// In a language with a decimal comma the comparison has it too, and what is noticed as before is not new for that.
func TestResizingHasTheCommaOfTheLanguage(t *testing.T) {
	say.Use("de")
	t.Cleanup(func() { say.Use(tongue.English) })
	w := open(t, Options{Example: "pantry-steps"})
	w.s.Set("round.to", "0.5")
	w.changed()
	before := w.s.Looked()
	if len(before.Findings) == 0 {
		t.Fatal("nothing is noticed")
	}
	tried := trialOf(before, w.s.Design())
	if len(tried.fresh) != 0 {
		t.Errorf("new is %q", tried.fresh[0].Text)
	}
	for _, row := range tried.changes[0].Rows {
		for _, c := range row {
			if strings.Contains(c.Text, "nearest") || strings.Contains(c.Text, ".") && !strings.Contains(c.Text, "Nr.") {
				t.Errorf("it says %q", c.Text)
			}
		}
	}
}
