package sheet

import (
	"slices"

	"splaywright/model/stock"
)

// set is a choice of boards that the bounds do not rule out.
type set struct {
	boards uint64
	cost   float64
	spare  float64
}

// mostSets is how many choices of boards are listed one by one.
const mostSets = 1 << 17

// twin says that parts come from one board as from the other, for the same price.
func twin(a, b stock.Board) bool {
	return a.Timber == b.Timber && a.Length == b.Length && a.Width == b.Width && a.Thickness == b.Thickness && a.Warp == b.Warp && a.Price == b.Price &&
		slices.Equal(a.Outline, b.Outline) && slices.Equal(a.Avoid, b.Avoid)
}

// twins are, of each shape, the last one before it that is as large, as dear and as spoilt but was entered by itself, or -1.
func (s *search) twins() []int {
	out := slices.Repeat([]int{-1}, len(s.shapes))
	for i, sh := range s.shapes {
		for j := i - 1; j >= 0; j-- {
			if o := s.shapes[j]; o.board != sh.board && twin(s.t.Boards[o.board], s.t.Boards[sh.board]) {
				out[i] = j
				break
			}
		}
	}
	return out
}

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
	twins := s.twins()
	var walk func(i int, boards uint64, cost float64)
	walk = func(i int, boards uint64, cost float64) {
		if i == len(s.shapes) {
			if spare, ok := s.bounds.may(boards); ok {
				all = append(all, set{boards, cost, spare})
			}
			return
		}
		if n := twins[i]; n >= 0 && boards>>n&1 == 0 { // the one before it would do as well
			walk(i+1, boards, cost)
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
