package sheet

import (
	"slices"

	"splaywright/model/stock/lp"
)

// pricing is how many pairs of places may be compared while prices are looked for.
const pricing = 1_000_000_000

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
	rows := slices.Repeat([]int{-1}, len(s.shapes))
	for row, i := range first {
		rows[i] = row
	}
	p := &pricer{s: s, need: need, limit: limit, rows: rows, middle: b.fair(s.shapes[first[0]].cost, first[0])}
	for n, grids := range b.rough {
		p.Master, p.grids = lp.New(need, dear, limit), grids
		s.known(p.Master, first)
		for _, c := range p.ways { // in larger steps they seem to yield too much: they only give the prices a hold
			c.Cost *= coarser
			p.Add(c)
		}
		p.ways = nil
		p.run(efforts[n])
	}
	return s.ruleOut(sets, p.middle)
}

// coarser is how much dearer a way of cutting counts in smaller steps than it was found in.
const coarser = 1.06

// effort is how far prices are looked for: rounds, how far prices keep to the best ones yet, so that they do not swing
// from unit to unit, and how near the bound is to come to the programme's value.
type effort struct {
	rounds     int
	hold, near float64
}

// efforts go with fewPlaces.
var efforts = [...]effort{{60, 0.8, 1e-3}, {14, 0.5, 2e-4}}

// pricer looks for prices by a linear programme.
type pricer struct {
	*lp.Master
	s           *search
	grids       []*grid
	need, limit []float64
	rows        []int     // of each shape: its limit; -1 where one before it is alike
	middle      []float64 // the best prices yet
	ways        []lp.Column
	work        int
}

func (p *pricer) run(e effort) {
	best, _ := p.grow(p.middle)
	for range e.rounds {
		if p.s.over() || p.work > pricing || !p.Run() {
			return
		}
		prices := slices.Clone(p.middle)
		for k := range prices {
			prices[k] = e.hold*p.middle[k] + (1-e.hold)*max(0, p.Price(k))
		}
		bound, grew := p.grow(prices)
		if bound > best {
			p.middle, best = prices, bound
			p.s.lower = max(p.s.lower, bound*(1-1e-9))
		}
		switch {
		case !grew && e.hold < 0.01, best >= p.Value()*(1-e.near):
			return
		case !grew:
			e.hold /= 2
		}
	}
}

// grow adds the ways of cutting that are best at the prices; it returns what these bound.
func (p *pricer) grow(prices []float64) (bound float64, grew bool) {
	need := len(p.need)
	for k, v := range prices {
		bound += v * p.need[k]
	}
	for _, y := range yieldsOf(p.grids, prices) {
		p.work += y.pairs()
		for n, i := range y.boards {
			row := p.rows[i]
			if row < 0 {
				continue
			}
			cost := p.s.shapes[i].cost
			bound += p.limit[row] * min(0, cost-y.of(n))
			used := y.used(n)
			gain := -cost + p.Price(need+row)
			for k, n := range used {
				gain += float64(n) * p.Price(k)
			}
			if gain > 1e-7*cost {
				c := pattern(used, need+row, cost)
				p.Add(c)
				p.ways = append(p.ways, c)
				grew = true
			}
		}
	}
	return bound, grew
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
	s.bounds.rule(slices.Clone(prices), s.shapes)
	return s.allowed(sets)
}

// allowed are the sets that the last rule does not forbid.
func (s *search) allowed(sets []set) []set {
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
