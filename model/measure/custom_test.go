package measure

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// NIST Special Publication 811 (2008), appendix B.8, to the digits that it prints there (from memory): the pound and the
// pound-force exact, the others rounded.
func TestUnitsOfAShopInInches(t *testing.T) {
	for _, c := range []struct {
		one        string // unit of ours
		from       float64
		unit       string
		digits     int
		inches     float64
		whereFound string
	}{
		{"kg", 0.45359237, "lb", 12, 1, "exact"},
		{"N", 4.4482216152605, "lbf", 12, 1, "exact"},
		{"mm", 25.4, "in", 12, 1, "exact"},
		{"MPa", 6.894757e-3, "psi", 6, 1, "6.894 757 E+03 Pa"},
		{"m²", 9.290304e-2, "ft²", 12, 1, "9.290 304 E−02, exact"},
		{"m³", 2.831685e-2, "ft³", 6, 1, "2.831 685 E−02"},
		{"cm³", 16.38706, "in³", 6, 1, "1.638 706 E−05 m³"},
		{"lb", 300, "lb", 12, 300, "a pound is one already"},
		{"%", 12, "%", 12, 12, "no length, no weight"},
	} {
		x, unit := Imperial.In(c.from, c.one)
		if unit != c.unit || math.Abs(x/c.inches-1) > math.Pow(10, -float64(c.digits)) {
			t.Errorf("%g %s are %.9g %s, want %g %s (%s)", c.from, c.one, x, unit, c.inches, c.unit, c.whereFound)
		}
		if x, unit := Metric.In(c.from, c.one); x != c.from || unit != c.one {
			t.Errorf("in millimetres %g %s are %g %s", c.from, c.one, x, unit)
		}
	}
}

// A stress is a force on an area, and a cubic foot is 1728 cubic inches: the same by another way.
func TestUnitsFollowFromEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(1e-3, 1e6).Draw(t, "x")
		of := func(x float64, unit string) float64 { y, _ := Imperial.In(x, unit); return y }
		same := func(what string, a, b float64) {
			if math.Abs(a/b-1) > 1e-12 {
				t.Errorf("%s: %.15g and %.15g", what, a, b)
			}
		}
		same("N/mm² on a square inch", of(x, "MPa"), of(x*25.4*25.4, "N"))
		same("cubic feet", of(x, "m³")*1728, of(x*1e6, "cm³"))
		same("square feet", of(x, "m²")*144, of(of(x*1e6, "mm"), "mm"))
		same("a weight pulls with its own pounds", of(x, "kg"), of(x*9.80665, "N"))
	})
}
