package table

import (
	"strings"
	"testing"
)

// The notes on saw settings say by what the set figures are rounded, or why they are not.
func TestSawStepIsTold(t *testing.T) {
	for name, want := range map[string]string{
		"reading-nook-step": "rounded to the saw's step of 0.1°.",
		"hallway-bench":     "so are the set figures, since the design does not say how finely the saw is set (saw.step).",
	} {
		p := example(t, name)
		if notes := strings.Join(SawSettings(p, p.Design.Style()).Notes, "\n"); !strings.Contains(notes, want) {
			t.Errorf("%s: %q is not said:\n%s", name, want, notes)
		}
	}
}
