package field_test

import (
	"errors"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/app/field"
	"splaywright/app/look"
	"splaywright/app/say"
	"splaywright/model/file"
	"splaywright/model/measure"
	"splaywright/model/part"
)

func newField(t *testing.T, s field.Spec) (*field.Field, fyne.Window) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme{})
	f := field.New(s)
	w := test.NewTempWindow(t, f)
	w.Resize(fyne.NewSize(320, 200))
	return f, w
}

func TestSaidInBothUnits(t *testing.T) {
	for _, c := range []struct {
		value any
		units measure.Unit
		want  string
	}{
		{260 * measure.Millimetre, measure.Metric, "260 mm ≈ 10 15/64\""},
		{9.375 * measure.Inch, measure.Imperial, "9 3/8\" ≈ 238.13 mm"},
		{measure.Inch, measure.Metric, "25.4 mm = 1\""},
		{6 * measure.Degree, measure.Metric, "6° = 1:9.5"},
		{measure.Angle(0), measure.Metric, "0°"},
		{4, measure.Metric, "4"},
		{"white oak", measure.Metric, ""},
		{nil, measure.Metric, ""},
	} {
		if got := field.Said(c.value, c.units); got != c.want {
			t.Errorf("%v is said as %q, want %q", c.value, got, c.want)
		}
	}
}

func TestTypingIsPassedOnLetterByLetter(t *testing.T) {
	f, _ := newField(t, field.Spec{Path: "splay.ends", Label: "Sides lean"})
	var got []string
	ended := 0
	f.Changed = func(text string) { got = append(got, text) }
	f.Done = func() { ended++ }
	test.Type(f.Input(), "1:8")
	if want := "1 1: 1:8"; strings.Join(got, " ") != want {
		t.Errorf("passed on %q, want %q", got, want)
	}
	f.Input().FocusLost()
	if ended == 0 {
		t.Error("leaving the field did not end the typing")
	}
}

func TestWhatTheProgramPutsInIsNotTyping(t *testing.T) {
	f, _ := newField(t, field.Spec{Label: "Height"})
	f.Changed = func(text string) { t.Errorf("%q was passed on as typed", text) }
	f.Put(field.State{Text: "260"})
	if f.Text() != "260" {
		t.Errorf("the field shows %q", f.Text())
	}
}

func TestASpaceBeingTypedIsLeftAlone(t *testing.T) {
	f, _ := newField(t, field.Spec{Label: "Sides lean"})
	test.Type(f.Input(), "6 ")
	f.Put(field.State{Text: "6"})
	if f.Text() != "6 " {
		t.Errorf("the field shows %q in the middle of typing", f.Text())
	}
}

func TestAnErrorTakesThePlaceOfWhatWasUnderstood(t *testing.T) {
	f, _ := newField(t, field.Spec{Label: "Height"})
	f.Put(field.State{Text: "260", Said: "260 mm"})
	if f.SaidText() != "260 mm" {
		t.Errorf("said %q", f.SaidText())
	}
	f.Put(field.State{Text: "tall", Said: "260 mm", Err: &file.Error{File: "x.yaml", Line: 3, Column: 4, Read: "tall", Want: "a length such as 260"}})
	if got := f.SaidText(); !strings.Contains(got, "tall") || !strings.Contains(got, "a length") || strings.Contains(got, "x.yaml") {
		t.Errorf("said %q", got)
	}
	f.Put(field.State{Text: "tall", Err: errors.New("no")})
	if f.SaidText() != "no" {
		t.Errorf("said %q", f.SaidText())
	}
}

func TestAnEmptyFieldSaysWhatFollows(t *testing.T) {
	f, _ := newField(t, field.Spec{Label: "Tail"})
	f.Put(field.State{Follows: "51 mm"})
	if f.SaidText() != "follows: 51 mm" {
		t.Errorf("said %q", f.SaidText())
	}
}

func TestChoicesEndTheirStepAtOnce(t *testing.T) {
	f, _ := newField(t, field.Spec{Label: "Joint", Choices: []string{"butt", "housing"}})
	f.Put(field.State{Text: "butt"})
	var got string
	ended := false
	f.Changed = func(text string) { got = text }
	f.Done = func() { ended = true }
	f.Input().(interface{ SetSelected(string) }).SetSelected("housing")
	if got != "housing" || !ended {
		t.Errorf("passed on %q, ended %v", got, ended)
	}
}

// A long finding wraps inside the column and makes the field taller instead of wider.
func TestAFindingWrapsBelowTheField(t *testing.T) {
	f, w := newField(t, field.Spec{Label: "Pin, wide"})
	low := f.MinSize()
	f.Put(field.State{Text: "2", Findings: []part.Finding{{Level: part.Warning, Text: "The pin is 2 mm wide, narrower than the kerf of 3.2 mm: a saw cannot cut between the tails. Make it 4 mm or leave out a tail."}}})
	w.Canvas().Capture()
	high := f.MinSize()
	if high.Width != low.Width {
		t.Errorf("the field asks for a width of %v, it was %v", high.Width, low.Width)
	}
	if high.Height < low.Height+30 {
		t.Errorf("the field is %v high with a finding of several lines, it was %v", high.Height, low.Height)
	}
	f.Put(field.State{Text: "10"})
	if got := f.MinSize().Height; got > low.Height+1 {
		t.Errorf("the finding is gone and the field still %v high, it was %v", got, low.Height)
	}
}

// A text that is longer than its field ends at the field's rim, under what stands at its right end: nothing of it is painted
// beyond, and the padlock stays where it is seen. With the keyboard in the field the text follows the cursor.
func TestALongTextStaysInItsField(t *testing.T) {
	f, w := newField(t, field.Spec{Path: "size.depth", Label: "Depth", Lock: true, Turns: true})
	rightmost := func() (x int) { // of the dots that differ from the window's own colour
		img := w.Canvas().Capture()
		back := img.At(img.Bounds().Max.X-1, img.Bounds().Max.Y-1)
		for y := range img.Bounds().Max.Y {
			for i := range img.Bounds().Max.X {
				if img.At(i, y) != back {
					x = max(x, i)
				}
			}
		}
		return x
	}
	long := "plank - 2 * (3 mm) + (size.height - 2 * boards.side.thickness) / 12"
	f.Put(field.State{Text: long})
	w.Resize(fyne.NewSize(500, 200)) // wider than the field, so that what runs out of it shows
	f.Resize(fyne.NewSize(320, 60))
	rim := int(f.Position().X) + 320
	if got := rightmost(); got > rim {
		t.Errorf("the text reaches to %d, the field to %d", got, rim)
	}
	w.Canvas().Focus(f.Input())
	f.Input().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	test.Type(f.Input(), "7")
	if f.Text() != long+"7" {
		t.Errorf("typed behind its end it reads %q", f.Text())
	}
	f.Input().FocusLost()
	if got := rightmost(); got > rim {
		t.Errorf("after typing the text reaches to %d, the field to %d", got, rim)
	}
}

// A choice that is said by a word of its own is shown when the design has it.
func TestAChoiceWithASenseIsShown(t *testing.T) {
	was := say.Tongue().Code()
	defer say.Use(was)
	for _, code := range []string{"en", "de", "ja"} {
		say.Use(code)
		f, _ := newField(t, field.Spec{Path: "size.taken-at", Label: "Taken at the", Choices: []string{"top", "floor"}, Senses: map[string]string{"top": "top|way"}})
		for _, text := range []string{"top", "floor", "top", ""} {
			if f.Put(field.State{Text: text}); f.Text() != text {
				t.Errorf("%s: the design has %q, the field %q", code, text, f.Text())
			}
		}
	}
}

// What an empty field is when nothing is typed stands in it from the start, whether or not a state has been put.
func TestAnEmptyFieldShowsItsHint(t *testing.T) {
	typed, _ := newField(t, field.Spec{Label: "Depth", Hint: "right through"})
	typed.Put(field.State{})
	if got := typed.Placeholder(); got != "right through" {
		t.Errorf("a place to type shows %q", got)
	}
	chosen, _ := newField(t, field.Spec{Label: "Edge", Hint: "all that is felt", Choices: []string{"ends", "edges"}})
	chosen.Put(field.State{})
	if got := chosen.Placeholder(); got != "all that is felt" {
		t.Errorf("a list shows %q", got)
	}
}

// A name that takes two lines stands beside its input and what is said of it: nothing is pushed down by it.
func TestWhatIsSaidStandsBelowTheInput(t *testing.T) {
	put := func(label string) (top float32, height float32) {
		f, w := newField(t, field.Spec{Label: label})
		f.Put(field.State{Text: "75", Said: "75 mm"})
		f.Resize(fyne.NewSize(320, f.MinSize().Height))
		w.Canvas().Capture()
		return f.SaidAt().Y, f.MinSize().Height
	}
	short, low := put("Depth")
	long, high := put("From the middle of it")
	if short != long {
		t.Errorf("what is said stands at %v, beside a name of two lines at %v", short, long)
	}
	if high < low {
		t.Errorf("a field with a name of two lines is %v high, lower than %v", high, low)
	}
}

func TestAnswersAreYesAndNo(t *testing.T) {
	f, _ := newField(t, field.Spec{Label: "Plugged", Choices: []string{"true", "false"}, Senses: map[string]string{"true": "yes", "false": "no"}})
	f.Put(field.State{Follows: "false"})
	if got := f.Placeholder(); got != "no" {
		t.Errorf("what follows is said as %q", got)
	}
}
