package word

import (
	"testing"

	"pgregory.net/rapid"
)

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"tails", "tails", 0}, {"tail", "tails", 1}, {"talis", "tails", 2}, {"", "pin", 3}, {"hieght", "height", 2}, {"oak", "ash", 3}} {
		if got := Distance(c.a, c.b); got != c.want {
			t.Errorf("%q to %q: %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

// It is a distance: the same both ways, nothing only between equal words, no detour shorter.
func TestDistanceIsOne(t *testing.T) {
	w := rapid.StringMatching(`[a-d]{0,7}`)
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := w.Draw(t, "a"), w.Draw(t, "b"), w.Draw(t, "c")
		if Distance(a, b) != Distance(b, a) || (Distance(a, b) == 0) != (a == b) || Distance(a, c) > Distance(a, b)+Distance(b, c) {
			t.Errorf("%q %q %q: %d %d %d", a, b, c, Distance(a, b), Distance(b, c), Distance(a, c))
		}
	})
}
