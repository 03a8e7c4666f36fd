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
