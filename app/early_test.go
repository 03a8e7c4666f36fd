package app

import (
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/app/look"
	"splaywright/app/session"
)

// The first pictures do without the Japanese letters, unless a language or a title needs them.
func TestTheFirstLook(t *testing.T) {
	w := open(t, Options{})
	for _, c := range []struct {
		code, title string
		early       bool
		want        bool
	}{{"en", "Reading-nook step", true, true}, {"de", "Fußbank ½", true, true}, {"ja", "Reading-nook step", true, false},
		{"en", "読書の踏み台", true, false}, {"en", "Reading-nook step", false, false}} {
		inTongue(t, c.code)
		w.early = nil
		if c.early {
			w.early = &early{}
		}
		if got := w.firstTheme(c.title).Early; got != c.want {
			t.Errorf("%s, %s, first window of a run %v: early is %v", c.code, c.title, c.early, got)
		}
	}
}

// Words and lines are as large with the Japanese letters as without them, so that nothing moves when they come.
func TestNothingMovesWithTheWholeLook(t *testing.T) {
	a := test.NewTempApp(t)
	s, err := session.FromExample("reading-nook-step")
	if err != nil {
		t.Fatal(err)
	}
	texts := []string{"M", "260.0 mm high, 420.0 × 250.0 mm on the floor, 4.2 kg", "9 3/8 in, 10° – 1:7", s.Design().Title, "Größe Ändern: “½″”"}
	for _, style := range []fyne.TextStyle{{}, {Bold: true}} {
		for _, text := range append(texts, strings.Join(texts, " ")) {
			a.Settings().SetTheme(look.Theme{Early: true})
			before := fyne.MeasureText(text, 13, style)
			a.Settings().SetTheme(look.Theme{})
			if after := fyne.MeasureText(text, 13, style); after != before {
				t.Errorf("%q (bold %v) is %v large at first, %v after", text, style.Bold, before, after)
			}
		}
	}
}

// What comes before the pictures, such as what was understood of a size, does not let the window be shown without them.
func TestTheWindowWaitsForItsFirstPictures(t *testing.T) {
	e := &early{open: true, come: make(chan struct{}, 1)}
	var done []string
	e.do(func() { done = append(done, "text") })
	go func() {
		time.Sleep(5 * time.Millisecond)
		e.do(func() {
			e.pictured()
			done = append(done, "pictures")
		})
	}()
	e.wait()
	if want := []string{"text", "pictures"}; !slices.Equal(done, want) {
		t.Errorf("%v came before the window is shown, want %v", done, want)
	}
}

// It is shown all the same where they take too long, with what has come.
func TestTheWindowDoesNotWaitForEver(t *testing.T) {
	e := &early{open: true, come: make(chan struct{}, 1)}
	told := false
	e.do(func() { told = true })
	e.wait()
	if !told || e.open {
		t.Errorf("what came is done: %v; it still waits: %v", told, e.open)
	}
}
