package file

import (
	"slices"
	"testing"
)

// Every key that holds a number says what it counts, so that a bare one gets the unit of the design, a name in it is renamed and an
// angle is refused where a length is meant. These hold words, yes or no.
func TestEveryKeyOfANumberCountsSomething(t *testing.T) {
	wordy := words(`splaywright title units form timber name kind volume-at source joint over tails-on mirrored plug under set at stand on
		edge from face flat-table both decimal sheet projection bottom owner drawn-by approved-by date number grain sawn note what
		first run resawn glue-up missing grade sold taken-at measured edge-cut names`)
	for group, keys := range shape {
		for _, key := range keys {
			path := join(group, key)
			if _, inner := shape[path]; inner || key == "#" {
				continue
			}
			if _, counts := kindAt(path); counts == slices.Contains(wordy, key) {
				t.Errorf("%s: it counts something: %v", path, counts)
			}
		}
	}
}
