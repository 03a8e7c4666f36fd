package sheet

import (
	"math"
	"slices"

	"splaywright/model/stock/lp"
)

// need is units that come from certain kinds of boards alone, and what they are worth together.
type need struct {
	rows  []bool // of each kind of board: whether one of the units may come from it
	worth float64
}

// needs are those of the units of every choice of boards there is, and of all units.
func (b *bounds) needs(prices []float64, first []int) []need {
	var out []need
	all := make([]bool, len(first))
	add := func(rows []bool) {
		if !slices.ContainsFunc(out, func(n need) bool { return slices.Equal(n.rows, rows) }) {
			out = append(out, need{rows: rows})
		}
	}
	rows := make([][]bool, len(b.kinds))
	for k, u := range b.kinds {
		rows[k] = make([]bool, len(first))
		for n, i := range first {
			rows[k][n] = u.may(i)
			all[n] = all[n] || rows[k][n]
		}
		add(rows[k])
	}
	add(all)
	for i := range out {
		for k := range b.kinds {
			if within := !slices.ContainsFunc(indices(rows[k]), func(n int) bool { return !out[i].rows[n] }); within {
				out[i].worth += prices[k] * float64(b.count[k])
			}
		}
	}
	return out
}

func indices(set []bool) []int {
	var out []int
	for n, in := range set {
		if in {
			out = append(out, n)
		}
	}
	return out
}

// kindsOfBoards are the first shape of each kind of board and how many there are of it.
func (s *search) kindsOfBoards() (first []int, count []float64) {
	for i, sh := range s.shapes {
		if i > 0 && s.shapes[i-1].board == sh.board {
			count[len(count)-1]++
			continue
		}
		first, count = append(first, i), append(count, 1)
	}
	return first, count
}

// firsts are, of each shape, the first of its kind of board.
func (s *search) firsts() []int {
	out := make([]int, len(s.shapes))
	for i, sh := range s.shapes {
		if out[i] = i; i > 0 && s.shapes[i-1].board == sh.board {
			out[i] = out[i-1]
		}
	}
	return out
}

// cheapest bounds the cost where the choices of boards are too many to list: boards in parts, as much of each as yields
// what every need is worth. enough is false when all boards together do not.
func (s *search) cheapest() (bound float64, enough bool) {
	first, count := s.kindsOfBoards()
	most := s.bounds.rules[0].most
	areas := make([]float64, len(s.bounds.kinds))
	for k, u := range s.bounds.kinds {
		areas[k] = u.area()
	}
	needs := s.bounds.needs(areas, first)
	worth := make([]float64, len(needs))
	dear := 0.0
	for j, n := range needs {
		worth[j] = n.worth
		all := 0.0
		for row, i := range first {
			if n.rows[row] {
				all += count[row] * most[i]
				dear = max(dear, 2*s.shapes[i].cost/max(most[i], 1e-9))
			}
		}
		if all < n.worth*(1-1e-9) {
			return 0, false
		}
	}
	l := lp.New(worth, dear*float64(len(needs)), count)
	for row, i := range first {
		c := lp.Column{Cost: s.shapes[i].cost, Tag: row, Row: []int{len(needs) + row}, Val: []float64{1}}
		for j, n := range needs {
			if n.rows[row] {
				c.Row, c.Val = append(c.Row, j), append(c.Val, most[i])
			}
		}
		l.Add(c)
	}
	l.Run() // whatever it comes to, its prices bound the cost
	prices := make([]float64, len(needs))
	for j := range needs {
		prices[j] = max(0, l.Price(j))
		bound += prices[j] * worth[j]
	}
	for row, i := range first {
		yields := 0.0
		for j, n := range needs {
			if n.rows[row] {
				yields += prices[j] * most[i]
			}
		}
		bound += count[row] * min(0, s.shapes[i].cost-yields)
	}
	return max(0, bound), true
}

// mostSums is how many costs of choices of boards are worked out.
const mostSums = 50_000

// whole raises a bound to the next cost that boards taken whole can have, none beyond the given one.
func (s *search) whole(bound, upTo float64) float64 {
	first, count := s.kindsOfBoards()
	upTo *= 1 + 1e-9
	sums := []float64{0}
	for row, i := range first {
		c := s.shapes[i].cost
		from := sums
		for n := 1.0; n <= count[row] && c > 0 && n*c <= upTo; n++ {
			for _, v := range from {
				if v+n*c <= upTo {
					sums = append(sums, v+n*c)
				}
			}
			if len(sums) > 20*mostSums {
				return bound
			}
		}
		slices.Sort(sums)
		sums = slices.CompactFunc(sums, func(a, b float64) bool { return math.Abs(b-a) < 1e-10*upTo })
		if len(sums) > mostSums {
			return bound
		}
	}
	for _, v := range sums {
		if v >= bound*(1-1e-9) {
			return max(bound, v*(1-1e-9))
		}
	}
	return bound
}
