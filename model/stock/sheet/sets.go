package sheet

import "slices"

// set is a choice of boards that the bounds do not rule out.
type set struct {
	boards uint64
	cost   float64
	spare  float64
}

// mostSets is how many choices of boards are listed one by one.
const mostSets = 1 << 17

// sets lists every choice of boards that may hold all units, cheapest first; listed is false where there are too
// many choices.
func (s *search) sets() (all []set, listed bool) {
	ways := 1.0
	for i := 0; i < len(s.shapes); {
		j := i
		for j < len(s.shapes) && s.shapes[j].board == s.shapes[i].board {
			j++
		}
		ways *= float64(j - i + 1)
		i = j
	}
	if ways > mostSets || len(s.shapes) > 64 {
		return nil, false
	}
	var walk func(i int, boards uint64, cost float64)
	walk = func(i int, boards uint64, cost float64) {
		if i == len(s.shapes) {
			if spare, ok := s.bounds.may(boards); ok {
				all = append(all, set{boards, cost, spare})
			}
			return
		}
		j := i // boards alike are taken in order
		for j < len(s.shapes) && s.shapes[j].board == s.shapes[i].board {
			j++
		}
		walk(j, boards, cost)
		for k := i; k < j; k++ {
			boards |= 1 << k
			cost += s.shapes[k].cost
			walk(j, boards, cost)
		}
	}
	walk(0, 0, 0)
	slices.SortFunc(all, func(a, b set) int {
		switch {
		case a.cost < b.cost:
			return -1
		case a.cost > b.cost:
			return 1
		case a.spare > b.spare:
			return -1
		case a.spare < b.spare:
			return 1
		}
		return 0
	})
	if f := s.small; f != nil && len(all)*f.size*f.size*len(s.shapes)/4 <= mostWork {
		all = slices.DeleteFunc(all, func(c set) bool { return !f.may(c.boards) })
	}
	return all, true
}
