package app

import (
	"strings"
	"testing"

	"splaywright/app/field"
	"splaywright/app/panel"
	"splaywright/model/form"
	"splaywright/model/part"
)

func TestNamedValues(t *testing.T) {
	w := open(t, Options{})
	if err := w.s.Change("name foot", [2]string{"names.foot", "size.height / 5"}); err != nil {
		t.Fatal(err)
	}
	w.changed()
	if got := w.sizes.Field("names.foot").SaidText(); got != "52 mm ≈ 2 3/64\"" { // 260 / 5
		t.Errorf("below the named value stands %q", got)
	}
	typeInto(t, w, "boards.top.thickness", "foot / 2")
	if got := w.s.Piece().Design.Boards.Top.Thickness.MM(); got != 26 {
		t.Errorf("the top is %v thick", got)
	}
	if err := w.s.Rename("foot", "rise"); err != nil {
		t.Fatal(err)
	}
	w.changed()
	if got := w.sizes.Field("boards.top.thickness").Text(); got != "rise / 2" || w.sizes.Field("names.foot") != nil {
		t.Errorf("after renaming the thickness reads %q", got)
	}
	f := typeInto(t, w, "names.rise", "")
	if w.sizes.Field("names.rise") != f || !strings.Contains(f.SaidText(), "expected") {
		t.Errorf("a named value that is being retyped is gone, or says %q", f.SaidText())
	}
	w.undo()
	w.pick("names.rise", panel.Remove)
	if w.sizes.Field("names.rise") != nil {
		t.Error("the named value is still there")
	}
	if got := w.sizes.Field("boards.top.thickness").Text(); got != "(size.height / 5) / 2" || w.s.Piece().Design.Boards.Top.Thickness.MM() != 26 {
		t.Errorf("with its name gone the thickness reads %q", got)
	}
	w.undo()
	if got := w.sizes.Field("boards.top.thickness").Text(); got != "rise / 2" || w.sizes.Field("names.rise") == nil {
		t.Errorf("undo leaves the thickness as %q", got)
	}
}

func TestUnevenTails(t *testing.T) {
	w := open(t, Options{})
	typeInto(t, w, "corners.tail-widths", "[38, 52, 38]")
	if got := w.sizes.Field("corners.tail-widths").SaidText(); !strings.Contains(got, "= 128 mm") {
		t.Errorf("said %q", got)
	}
	if got := len(w.s.Design().Corners.TailWidths); got != 3 || w.sizes.Field("corners.tails") != nil || w.sizes.Field("corners.mirrored") == nil {
		t.Errorf("%d uneven tails, and the fields do not follow", got)
	}
	typeInto(t, w, "corners.tail-widths", "")
	if got := len(w.s.Design().Corners.TailWidths); got != 0 || w.sizes.Field("corners.tails") == nil {
		t.Errorf("%d uneven tails are left", got)
	}
}

func TestLoadAndAir(t *testing.T) {
	w := open(t, Options{})
	if got := w.sizes.Field("use.load").SaidText(); !strings.Contains(got, "150") {
		t.Errorf("the load left out says %q", got)
	}
	typeInto(t, w, "use.load", "90")
	if w.s.Design().Use.Load != 90 {
		t.Errorf("load %d", w.s.Design().Use.Load)
	}
}

// Every form can be chosen, has fields for all that its design reads, and undo brings the stool
// back as it was.
func TestEveryForm(t *testing.T) {
	w := open(t, Options{})
	before := string(w.s.Document().Bytes())
	for _, name := range form.Forms() {
		w.sizes.Field("form").Input().(*field.Chooser).SetSelected(name)
		if !w.s.Reads() || w.s.Piece().Form != name {
			t.Fatalf("as a %s: %v", name, w.s.Errors())
		}
		for _, a := range addsOf(w) {
			if a.Name {
				continue
			}
			if err := put(w.s, a); err != nil || !w.s.Reads() {
				t.Errorf("%s: %s: %v, %v", name, a.Label, err, w.s.Errors())
			}
			w.s.Undo()
		}
		w.undo()
		if string(w.s.Document().Bytes()) != before {
			t.Fatalf("undo after %s does not bring the stool back", name)
		}
	}
}

// A joint that is chosen leaves nothing behind that its fields do not show; one step back has it all again.
func TestAJointIsChosenAndTakenBack(t *testing.T) {
	w := open(t, Options{})
	choose := func(joint string) {
		w.sizes.Field("corners.joint").Input().(*field.Chooser).SetSelected(joint)
	}
	choose(form.Housing)
	typeInto(t, w, "corners.overhang", "15")
	choose(form.ThroughDovetail)
	if got := w.s.Document().Text("corners.overhang"); got != "" {
		t.Errorf("tails are left with an overhang of %s that no field shows", got)
	}
	for _, f := range w.s.Piece().Findings {
		if f.Level == part.Stop {
			t.Errorf("a stool in tails: %s", f.Text)
		}
	}
	w.undo()
	if got := w.sizes.Field("corners.overhang"); got == nil || got.Text() != "15" {
		t.Error("one step back does not bring the overhang back")
	}
	history := w.s.History()
	if last := history[len(history)-1]; !strings.Contains(last, "overhang") {
		t.Errorf("the step before is %q", last)
	}
	w.redo()
	history = w.s.History()
	if last := history[len(history)-1]; last != "corners, joint: housing → through dovetail" {
		t.Errorf("choosing a joint is called %q", last)
	}
}
