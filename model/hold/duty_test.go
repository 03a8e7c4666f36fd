package hold_test

import (
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
	"splaywright/model/measure"
)

// Ratings of 200, 225, 250, 300 and 375 lb: https://blog.ansi.org/2018/11/standard-stepstools-ansi-asc-a14-11-2018/?amp=1 .
// 150 kg, the most that EN 14183 provides for, are 330.7 lb. A rating is never rounded up to.
func TestDutyRatings(t *testing.T) {
	for _, c := range []struct{ load, want float64 }{
		{150, 300}, {90, 0}, {90.7, 0}, {91, 200}, {102, 200}, {103, 225}, {113, 225}, {114, 250}, {136, 250}, {137, 300}, {170, 300}, {171, 375}, {2000, 375},
		{200 * 0.45359237, 200}, {375 * 0.45359237, 375}, {0, 0},
	} {
		if got := hold.DutyRating(c.load); got != c.want {
			t.Errorf("%g kg: %g lb, want %g", c.load, got, c.want)
		}
	}
}

// The standard is for step stools up to 36 in; a load below the least rating is noted, and above it is for the reader to judge.
func TestTheLoadBesideDutyRatings(t *testing.T) {
	d := formtest.WorkedExample()
	if f := figure(t, d, "duty-rating"); f.Value != 300 || f.Unit != "lb" || f.Limit != 0 || f.Over() {
		t.Errorf("150 kg: %+v", f)
	}
	d.Use.Load = 80
	f := figure(t, d, "duty-rating")
	near(t, "80 kg in lb", f.Value, 176.37, 0.005)
	if f.Limit != 200 || !f.Over() {
		t.Errorf("80 kg: %+v", f)
	}
	told := false
	for _, n := range hold.Run(form.Build(d)) {
		told = told || n.ID == "duty-rating" && strings.Contains(n.Text, "176 lb, less than 200 lb; what would do: a load of 91 kg or more")
	}
	if !told {
		t.Errorf("a load of 80 kg is not noted: %+v", hold.Run(form.Build(d)))
	}
}

func TestDutyInWords(t *testing.T) {
	const in = measure.Inch
	for _, c := range []struct {
		height measure.Length
		load   int
		says   []string
	}{
		{260, 150, []string{"150 kg (331 lb), answers to a duty rating of 300 lb", "up to 36 in", "nothing was tested", "not said to conform"}},
		{36 * in, 171, []string{"a duty rating of 375 lb"}},
		{36*in + 1, 150, []string{"up to 36 in; this piece is 915.4 mm high"}},
		{260, 60, []string{"60 kg (132 lb), is less than the least duty rating of step stools, 200 lb", "not said to conform"}},
	} {
		d := formtest.WorkedExample()
		d.Size.Height, d.Use.Load = c.height, c.load
		p := form.Build(d)
		if p.Stopped() {
			t.Fatal(p.Findings)
		}
		for _, words := range c.says {
			if got := hold.Duty(p); !strings.Contains(got, words) {
				t.Errorf("%v mm, %d kg: %q does not say %q", c.height.MM(), c.load, got, words)
			}
		}
		has := false
		for _, f := range hold.Figures(p) {
			has = has || f.ID == "duty-rating"
		}
		if has != (c.height <= 36*in) {
			t.Errorf("%v mm: rated %v", c.height.MM(), has)
		}
	}
	if got := hold.Duty(form.Build(formtest.LetterBox())); got != "" {
		t.Errorf("a tray: %q", got)
	}
}

// A design that names no load is reckoned with no less than seats and step stools are published for: 250 lb (1112 N) at any point of a
// bench, 2010 ADA Standards §903, https://www.corada.com/documents/2010ADAStandards/903 ; users to 110 kg, EN 1022,
// https://standards.iteh.ai/catalog/standards/cen/5dd9a28d-52d9-4e07-b0e5-b9f9d752a899/en-1022-2018 ; 150 kg on a step stool, EN 14183,
// https://technickenormy.cz/csn-en-14183-schudky ; 950 N of seat fatigue, ISO 7173 (a scan),
// https://www.mealir.com/iso-7173-1989-pdf-download-furniture-chairs-and-stools-determination-of-strength-and-durability.html
func TestTheUsualLoadIsWhatSeatsArePublishedFor(t *testing.T) {
	d := formtest.WorkedExample()
	d.Use = form.Use{}
	load := float64(form.Build(d).Design.Use.Load) * 9.80665
	for what, least := range map[string]float64{"ADA bench": 1112, "EN 1022 user": 110 * 9.80665, "EN 14183": 150 * 9.80665, "ISO 7173 fatigue": 950} {
		if load < least-1e-9 {
			t.Errorf("%s: %.0f N are reckoned with, %.0f N published", what, load, least)
		}
	}
	near(t, "250 lb in newtons", 250*0.45359237*9.80665, 1112, 0.5)
}
