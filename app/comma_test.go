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
