package app

import (
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"splaywright/assets"
)

// Where decimals have a comma, they have it below every size, in findings and in what is measured too.
func TestNoPointStandsWhereACommaBelongs(t *testing.T) {
	inTongue(t, "de")
	point, comma := regexp.MustCompile(`\d\.\d`), regexp.MustCompile(`\d,\d`)
	commas, found := 0, 0
	for _, e := range assets.Examples() {
		w := open(t, Options{Example: e.Name})
		if d := w.s.Design(); d.Round.Said && !d.Round.Comma {
			continue // it wants points
		}
		for _, path := range w.sizes.Paths() {
			said := w.sizes.Field(path).SaidText()
			if point.MatchString(said) {
				t.Errorf("%s: below %s stands %q", e.Name, path, said)
			}
			commas += len(comma.FindAllString(said, -1))
		}
		w.set("allowance.length", "3.5")
		lookAt(w.findings.Object(), fyne.NewPos(0, 0), 0, false, func(s seenAt) {
			if strings.HasPrefix(s.text, "Quelle") {
				return // numbers of tables, addresses
			}
			if point.MatchString(s.text) {
				t.Errorf("%s: it is found %q", e.Name, s.text)
			}
			found += len(comma.FindAllString(s.text, -1))
		})
		if got := w.sayAngle(0.1); point.MatchString(got) {
			t.Errorf("%s: an angle is said %q", e.Name, got)
		}
	}
	if commas < 50 || found < 5 {
		t.Errorf("only %d commas were seen, and %d in findings", commas, found)
	}
}

// What is bought, and the plan of it, has commas too.
func TestWhatIsBoughtHasCommas(t *testing.T) {
	inTongue(t, "de")
	w := open(t, Options{Example: "reading-nook-step"})
	if err := w.s.Append("yard", [2]string{"grade", "1C"}, [2]string{"price-per-board-foot", "9.50"}); err != nil {
		t.Fatal(err)
	}
	w.changed()
	w.openTabOf(buyTab)
	tb, ok := w.tab(buyTab).Shown()
	if !ok || tb.ID != "wood-to-buy" || len(tb.Rows) == 0 {
		t.Fatalf("%+v", tb)
	}
	point := regexp.MustCompile(`\d\.\d\d\b`)
	for _, row := range tb.Rows {
		for _, c := range row {
			if point.MatchString(c.Text) {
				t.Errorf("%s", c.Text)
			}
		}
	}
	for _, n := range tb.Notes {
		if point.MatchString(n) {
			t.Errorf("%s", n)
		}
	}
}

// Where decimals have a comma a typed one is read, in sizes, prices and dialogs; the file has the point, and elsewhere a comma
// is asked about as before.
func TestATypedCommaIsReadWhereDecimalsHaveOne(t *testing.T) {
	inTongue(t, "de")
	w := open(t, Options{Example: "reading-nook-step"})
	f := typeInto(t, w, "boards.top.thickness", "20,5")
	if got := w.s.Piece().Part("top").Blank.Thickness.MM(); got != 20.5 {
		t.Errorf("20,5 is %g mm", got)
	}
	if got := w.s.Text("boards.top.thickness"); got != "20.5" {
		t.Errorf("the file has %q", got)
	}
	if f.Text() != "20.5" {
		t.Errorf("the field gives %q", f.Text())
	}
	typeInto(t, w, "title", "Hocker 2,5")
	if got := w.s.Text("title"); got != "Hocker 2,5" {
		t.Errorf("the title is %q", got)
	}
	r := newResizing(w)
	r.entries["size.height"].SetText("300,5")
	if got := r.sizes(); len(got) != 1 || got[0].Text != "300.5" {
		t.Errorf("resizing asks for %v", got)
	}
	if err := w.s.Change("decimals", [2]string{"round.decimal", "point"}); err != nil {
		t.Fatal(err)
	}
	w.changed()
	typeInto(t, w, "boards.top.thickness", "21,5")
	if got := w.s.Text("boards.top.thickness"); got != "21,5" || w.s.Reads() {
		t.Errorf("where decimals have a point 21,5 is taken as %q", got)
	}
}
