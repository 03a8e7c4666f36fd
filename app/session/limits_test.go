package session

import (
	"strings"
	"testing"
)

// The limits are those of the reader: what they name is what it says of a text beyond them.
func TestLimits(t *testing.T) {
	s, err := FromExample("reading-nook-step")
	if err != nil {
		t.Fatal(err)
	}
	before := string(s.Document().Bytes())
	for path, want := range map[string]string{
		"size.height":               "above zero",
		"splay.ends":                "less than that",
		"stretchers.0.below-top":    "0 or more",
		"corners.tails":             "from 1 to 400",
		"corners.slope":             "below 90",
		"corners.overhang":          "",
		"stretchers.0.screws.gauge": "from 4 to 14",
	} {
		if got := s.Limit(path); want == "" && got != "" || !strings.Contains(got, want) {
			t.Errorf("%s: %q, want %q in it", path, got, want)
		}
	}
	if string(s.Document().Bytes()) != before || s.Dirty() {
		t.Error("asking for a limit changed the design")
	}
}
