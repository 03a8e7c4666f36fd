package sheet

import (
	"slices"

	"splaywright/model/stock/lp"
)

// pricing is how many pairs of places may be compared while prices are looked for.
const pricing = 300_000_000

// sharpen looks for prices of the units that rule out cheap sets of boards, by the linear relaxation over all ways to
// cut a board: each board taken in parts, each unit as often as wanted. It returns the sets that remain.
func (s *search) sharpen(sets []set) []set {
	b := s.bounds
	first, limit := s.kindsOfBoards()
	dear := 0.0
	for _, sh := range s.shapes {
		dear += sh.cost
	}
	need := make([]float64, len(b.kinds))
	for k, n := range b.count {
		need[k] = float64(n)
	}
	l := lp.New(need, dear, limit)
	s.known(l, first)
	middle, best := b.fair(s.shapes[first[0]].cost, first[0]), 0.0
	const rounds = 400
	work := 0
	hold := 0.8 // how far prices keep to the best ones yet, so that they do not swing from unit to unit
	for range rounds {
		if s.over() || work > pricing || !l.Run() {
			break
		}
		prices := make([]float64, len(need))
		bound := 0.0
		for k := range prices {
			prices[k] = hold*middle[k] + (1-hold)*max(0, l.Price(k))
			bound += prices[k] * need[k]
		}
		grew := false
		for row, i := range first {
			worth, used := b.rough[i].yield(prices)
			work += b.rough[i].pairs
			bound += limit[row] * min(0, s.shapes[i].cost-worth)
			gain := -s.shapes[i].cost + l.Price(len(need)+row)
			for k, n := range used {
				gain += float64(n) * l.Price(k)
			}
			if gain > 1e-7*s.shapes[i].cost {
				l.Add(pattern(used, len(need)+row, s.shapes[i].cost))
				grew = true
			}
		}
		if bound > best {
			middle, best = prices, bound
			s.lower = max(s.lower, bound*(1-1e-9))
		}
		switch {
		case !grew && hold < 0.01, best >= l.Value()*(1-1e-4):
			return s.ruleOut(sets, middle)
		case !grew:
			hold /= 2
		}
	}
	return s.ruleOut(sets, middle)
}

// fair are prices by area, such that the first board is worth its cost.
func (b *bounds) fair(cost float64, shape int) []float64 {
	prices := make([]float64, len(b.kinds))
	for k, u := range b.kinds {
		prices[k] = u.area() * cost / max(b.rules[0].most[shape], 1)
	}
	return prices
}

// ruleOut adds a rule and drops the sets it forbids.
func (s *search) ruleOut(sets []set, prices []float64) []set {
	if !slices.ContainsFunc(prices, func(v float64) bool { return v > 0 }) {
		return sets
	}
	if len(sets) == 0 {
		return nil
	}
	s.bounds.rule(slices.Clone(prices))
	last := &bounds{rules: s.bounds.rules[len(s.bounds.rules)-1:]}
	sets = slices.DeleteFunc(sets, func(c set) bool { _, ok := last.may(c.boards); return !ok })
	if len(sets) > 0 {
		s.lower = max(s.lower, sets[0].cost)
	}
	return sets
}

// pattern is a way to cut a board.
func pattern(used []int, row int, cost float64) lp.Column {
	c := lp.Column{Cost: cost, Tag: row, Row: []int{row}, Val: []float64{1}}
	for k, n := range used {
		if n > 0 {
			c.Row, c.Val = append(c.Row, k), append(c.Val, float64(n))
		}
	}
	return c
}

// known offers the ways of cutting of the best plan.
func (s *search) known(l *lp.Master, first []int) {
	b := s.bounds
	for row, i := range first {
		for j := i; j < len(s.shapes) && s.shapes[j].board == s.shapes[i].board; j++ {
			used := make([]int, len(b.kinds))
			for k, o := range s.best.owner {
				if o == j {
					used[slices.IndexFunc(b.kinds, s.us[k].same)]++
				}
			}
			l.Add(pattern(used, len(b.kinds)+row, s.shapes[i].cost))
		}
	}
}
