package sheet

import (
	"slices"
	"testing"
)

// The choices that are filled by themselves would all better the plan, cheaper and dearer ones of them, and the one with the most
// to spare of all in the dearer half is among them.
func TestChoicesToFillAreRoomy(t *testing.T) {
	for seed := range uint64(4) {
		s := searchOf(mixed(seed, 60, 12))
		sets, listed := s.sets()
		if !listed || len(sets) < 100 {
			t.Fatalf("%d: %d choices, listed %v", seed, len(sets), listed)
		}
		best := &layout{cost: sets[99].cost}
		n := slices.IndexFunc(sets, func(c set) bool { return c.cost >= best.cost })
		dearer := sets[n/2 : n]
		most, all := dearer[0], 0.0
		for _, c := range dearer {
			if all += c.spare; c.spare > most.spare {
				most = c
			}
		}
		some, sum := s.likely(sets, best), 0.0
		for k, c := range some {
			sum += c.spare
			if c.cost >= best.cost || k > 0 && c.cost < some[k-1].cost {
				t.Errorf("%d: a choice of %g for a plan of %g", seed, c.cost, best.cost)
			}
		}
		if len(some) != fitSets || !slices.Contains(some, most) || sum/fitSets <= all/float64(len(dearer)) {
			t.Errorf("%d: %d choices to fill with %g to spare, of all %g; the roomiest is among them: %v", seed, len(some),
				sum/fitSets, all/float64(len(dearer)), slices.Contains(some, most))
		}
		if few := s.likely(sets[:3], best); len(few) < fitters || few[0] != few[3] {
			t.Errorf("%d: three choices are tried by %d fitters", seed, len(few))
		}
	}
}
