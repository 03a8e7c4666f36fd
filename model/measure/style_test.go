package measure

import "testing"

// What people who have a comma before decimals type is what files have with a point; what could be thousands as well stays.
func TestPointed(t *testing.T) {
	for typed, want := range map[string]string{
		"27,5": "27.5", "1,25 m": "1.25 m", "31,5 cm": "31.5 cm", "27.5": "27.5", "27,": "27", "27": "27", "": "", "size.height / 2,5": "size.height / 2.5",
		"1,5 + 2,25 in": "1.5 + 2.25 in", "1.250,5": "1.250,5", "1,250,000": "1,250,000", "-0,5": "-0.5", "9 3/8 in": "9 3/8 in", "1:9,5": "1:9.5",
	} {
		if got := Pointed(typed); got != want {
			t.Errorf("%q is %q, want %q", typed, got, want)
		}
	}
}
