package field

import (
	"testing"

	"splaywright/model/measure"
)

// A number goes on by a step on its grid and stays written as it was; an expression is left alone.
func TestStepped(t *testing.T) {
	mm, in := measure.Metric, measure.Imperial
	inch := func(x float64) measure.Length { return measure.Length(x) * measure.Inch }
	for _, c := range []struct {
		text string
		now  any
		by   int
		bare measure.Unit
		want string
	}{
		{"260", measure.Length(260), 1, mm, "261"},
		{"260.4", measure.Length(260.4), 1, mm, "261"},
		{"260.4", measure.Length(260.4), -1, mm, "260"},
		{"26 cm", measure.Length(260), 1, mm, "261 mm"},
		{"9 3/8 in", inch(9.375), 1, mm, "9 7/16 in"},
		{`9 3/8"`, inch(9.375), -1, mm, "9 5/16 in"},
		{"10 1/4", inch(10.25), 10, in, "10 7/8"},
		{"12 IN", inch(12), 1, mm, "12 1/16 in"},
		{"1 foot", inch(12), 1, mm, "12 1/16 in"},
		{"-5 Inches", inch(-5), 1, mm, "-4 15/16 in"},
		{"300 MM", measure.Length(300), 1, in, "301 mm"},
		{"0.3 Meters", measure.Length(300), -1, in, "299 mm"},
		{"", measure.Length(51.3), 1, mm, "52"},
		{"6", 6 * measure.Degree, 1, mm, "6.5"},
		{"6 deg", 6 * measure.Degree, -1, mm, "5.5 deg"},
		{"1:9.5", measure.Angle(0.1049), 1, mm, "6.5"},
		{"4", 4, 1, mm, "5"},
		{"", 9, -1, mm, "8"},
		{"", "as many as are needed", 1, mm, "1"},
		{"", "as many as are needed", -1, mm, "1"},
	} {
		got, ok := Stepped(c.text, c.now, c.by, UsualSteps, c.bare)
		if !ok || got != c.want {
			t.Errorf("%q by %d: %q, %v; want %q", c.text, c.by, got, ok, c.want)
		}
	}
	for _, text := range []string{"foot * 2", "size.height / 5", "tall"} {
		if got, ok := Stepped(text, measure.Length(52), 1, UsualSteps, mm); ok {
			t.Errorf("%q became %q", text, got)
		}
	}
	if _, ok := Stepped("white oak", "white oak", 1, UsualSteps, mm); ok {
		t.Error("a word was turned")
	}
}
