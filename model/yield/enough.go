package yield

import (
	"cmp"
	"context"
	"math"
	"slices"
	"time"

	"splaywright/model/stock"
	"splaywright/model/stock/sheet"
	"splaywright/model/timber"
)

// A grade promises clear wood on a share of a board's surface, not where it lies. A plan of graded boards is enough when,
// of each timber, grade and thickness, its parts take no more surface than is promised.
//
// enough makes a plan so: by boards that are kept whole beside those that are cut, or by other boards where these cost less.
func enough(ctx context.Context, t stock.Task, p stock.Plan) (stock.Plan, error) {
	lacking := slices.DeleteFunc(p.Lots(t), func(l stock.Lot) bool { return l.Lacks() == 0 })
	if len(lacking) == 0 {
		return p, nil
	}
	best := withSpares(t, p)
	for _, lot := range lacking {
		other, err := otherBoards(ctx, t, p, lot, best)
		if err != nil {
			return p, err
		}
		if other.Layouts != nil {
			best = other
		}
	}
	best.Bound = max(p.Bound, leastPromised(t))
	best.Proven = len(best.Left)+len(best.Misfits) == 0 && best.Cost <= best.Bound*(1+1e-9)
	for i, n := range taken(t, best) { // a yard has as many as are asked for
		t.Boards[i].Count = max(t.Boards[i].Count, n)
	}
	return best, nil
}

func taken(t stock.Task, p stock.Plan) []int {
	out := make([]int, len(t.Boards))
	for _, l := range p.Layouts {
		out[l.Board]++
	}
	return out
}

// withSpares adds the cheapest whole boards to every lot that lacks clear wood.
func withSpares(t stock.Task, p stock.Plan) stock.Plan {
	p.Layouts = slices.Clone(p.Layouts)
	for _, lot := range p.Lots(t) {
		if lot.Lacks() == 0 {
			continue
		}
		for _, board := range cheapest(goods(t, spareKinds(t, p, lot)), lot.Lacks()) {
			b := t.Boards[board]
			p.Layouts = append(p.Layouts, stock.Layout{Board: board, Root: &stock.Piece{Rect: stock.Rect{X2: b.Length, Y2: b.Width}, Kind: stock.Spare}})
			p.Cost += t.Cost(board)
		}
	}
	slices.SortStableFunc(p.Layouts, func(a, b stock.Layout) int { return a.Board - b.Board })
	return p
}

// spareKinds are the boards of a lot that any of its parts could come out of, so that whichever a knot takes can be cut
// again; where no board is large enough for all of them, those that the plan cuts from.
func spareKinds(t stock.Task, p stock.Plan, lot stock.Lot) []int {
	var long, wide float64
	var used []int
	for _, i := range lot.Boards {
		used = append(used, p.Layouts[i].Board)
		for _, q := range Cuttings(p.Layouts[i]) {
			long, wide = max(long, q.Length()), max(wide, q.Width())
		}
	}
	var out []int
	for i, b := range t.Boards {
		if lot.Has(b) && holds(t, i, long, wide) {
			out = append(out, i)
		}
	}
	if len(out) == 0 {
		slices.Sort(used)
		return slices.Compact(used)
	}
	return out
}

// Cuttings are the pieces of a board that have to be clear in one: parts, strips of them, and what is kept together.
func Cuttings(l stock.Layout) []*stock.Piece {
	var out []*stock.Piece
	var walk func(q *stock.Piece)
	walk = func(q *stock.Piece) {
		if q.Kind == stock.Part || q.Run > 0 {
			out = append(out, q)
			return
		}
		for _, c := range q.Pieces {
			walk(c)
		}
	}
	walk(l.Root)
	return out
}

// good is a board that could be bought, by what it costs and the surface that can be counted on.
type good struct {
	board int
	cost  float64
	units int
}

func goods(t stock.Task, boards []int) []good {
	var out []good
	for _, i := range boards {
		clear := t.Boards[i].Area()
		if t.Boards[i].Sold.Grade != "" {
			clear = t.Boards[i].Sold.Clear
		}
		if n := int(math.Ceil(clear/timber.CuttingUnit - 1e-9)); n > 0 {
			out = append(out, good{i, t.Cost(i), n})
		}
	}
	return out
}

// cheapest are the boards that cost least and have so many mm² of clear wood together, any number of each; of those that cost
// the same, the fewest, and of these those with the most.
func cheapest(from []good, area float64) []int {
	want := unitsFor(area)
	type state struct {
		cost                float64
		boards, units, last int
	}
	less := func(a, b state) bool {
		if math.Abs(a.cost-b.cost) > 1e-9 {
			return a.cost < b.cost
		}
		return cmp.Or(cmp.Compare(a.boards, b.boards), cmp.Compare(b.units, a.units)) < 0
	}
	best := make([]state, want+1) // of so many units or more
	for n := 1; n <= want; n++ {
		best[n] = state{cost: math.Inf(1), last: -1}
		for k, g := range from {
			rest := best[max(0, n-g.units)]
			if c := (state{rest.cost + g.cost, rest.boards + 1, rest.units + g.units, k}); less(c, best[n]) {
				best[n] = c
			}
		}
	}
	var out []int
	for n := want; n > 0 && best[n].last >= 0; {
		g := from[best[n].last]
		out = append(out, g.board)
		n = max(0, n-g.units)
	}
	return out
}

// unitsFor is how many whole cutting units hold so many mm².
func unitsFor(area float64) int {
	return int(math.Ceil((area - stock.ClearSlack) / timber.CuttingUnit))
}

// leastPromised bounds the cost of boards that promise, of each timber, what its parts take, wherever they lie.
func leastPromised(t stock.Task) float64 {
	area := map[string]float64{}
	for _, d := range t.Demands {
		area[d.Timber] += d.Length * d.Width * float64(d.Count)
	}
	for _, r := range t.Runs {
		for _, k := range r.Parts {
			d := t.Demands[k]
			if n := len(r.Leaves()); r.Kind == stock.Resawn && n > 1 {
				area[d.Timber] -= d.Length * d.Width * (1 - 1/float64(n))
			}
		}
	}
	sum, most, shared := 0., 0., false
	for name, want := range area {
		var boards []int
		for i, b := range t.Boards {
			if name == "" || b.Timber == "" || b.Timber == name {
				boards = append(boards, i)
			}
			shared = shared || b.Timber == ""
		}
		cost := 0.
		for _, i := range cheapest(goods(t, boards), want) {
			cost += t.Cost(i)
		}
		sum, most = sum+cost, max(most, cost)
	}
	if _, any := area[""]; shared || any { // a board may count for several timbers
		return most
	}
	return sum
}

const (
	mostChoices = 20_000 // of boards that are listed for a lot
	mostTried   = 40     // of them that a plan is looked for
)

// otherBoards looks for a plan that cuts a lot's parts from other boards, of any grade, chosen so that they promise enough,
// the cheapest first; there may be none (no layouts) that is better than the best that is known.
func otherBoards(ctx context.Context, t stock.Task, p stock.Plan, lot stock.Lot, best stock.Plan) (stock.Plan, error) {
	kinds := instead(t, p, lot)
	elsewhere, rest, area := taken(t, p), p.Cost, 0.
	var pieces []*stock.Piece // that come out of boards of these kinds
	for _, l := range p.Layouts {
		if !slices.Contains(kinds, l.Board) {
			continue
		}
		pieces = append(pieces, Cuttings(l)...)
		l.Shares(func(q *stock.Piece, share float64) {
			if q.Kind == stock.Part {
				area += share * q.Area()
			}
		})
	}
	for _, i := range kinds {
		rest -= float64(elsewhere[i]) * t.Cost(i)
		elsewhere[i] = 0
	}
	do := func(boards []int) bool { return roomFor(t, pieces, boards) }
	for _, choice := range choices(goods(t, kinds), unitsFor(area), best.Cost-rest, do) {
		if ctx.Err() != nil {
			break
		}
		count := slices.Clone(elsewhere)
		for _, board := range choice {
			count[board]++
		}
		try, stop := within(ctx, 4)
		q, err := planFrom(try, t, count)
		stop()
		if err != nil {
			return q, err
		}
		if len(q.Left)+len(q.Misfits) == 0 {
			if q = withSpares(t, q); better(q, best) {
				return q, nil
			}
		}
	}
	return stock.Plan{}, nil
}

// within is a share of the time that is left.
func within(ctx context.Context, share int) (context.Context, context.CancelFunc) {
	if end, ok := ctx.Deadline(); ok {
		return context.WithTimeout(ctx, time.Until(end)/time.Duration(share))
	}
	return context.WithCancel(ctx)
}

// instead are the boards that each part of a lot may come from by its timber and thickness.
func instead(t stock.Task, p stock.Plan, lot stock.Lot) []int {
	var out []int
	for i := range t.Boards {
		serves := true
		for _, k := range lot.Boards {
			p.Layouts[k].Each(func(q *stock.Piece, _ int) {
				switch {
				case q.Kind == stock.Resaw && q.Run > 0:
					whole := t.Runs[q.Run-1].Whole(t)
					whole.Timber = lot.Timber
					serves = serves && t.Serves(i, whole)
				case q.Kind == stock.Part && (q.Run == 0 || t.Runs[q.Run-1].Kind == stock.Along):
					d := t.Demands[q.Demand]
					d.Timber, d.Length, d.Width, d.Turn = lot.Timber, q.Length(), q.Width(), false
					serves = serves && t.Serves(i, d)
				}
			})
		}
		if serves {
			out = append(out, i)
		}
	}
	return out
}

// better tells whether a plan costs less than another or, for as much, keeps fewer boards whole.
func better(p, than stock.Plan) bool {
	spares := func(p stock.Plan) (n int) {
		for _, l := range p.Layouts {
			if l.Root.Kind == stock.Spare {
				n++
			}
		}
		return n
	}
	return p.Cost < than.Cost*(1-1e-9) || p.Cost <= than.Cost*(1+1e-9) && spares(p) < spares(than)
}

// roomFor tells whether each of some pieces fits one of the boards by itself.
func roomFor(t stock.Task, pieces []*stock.Piece, boards []int) bool {
	return !slices.ContainsFunc(pieces, func(q *stock.Piece) bool {
		return !slices.ContainsFunc(boards, func(k int) bool { return holds(t, k, q.Length(), q.Width()) })
	})
}

// holds tells whether a board is long and wide enough for a piece, its trims taken off.
func holds(t stock.Task, board int, long, wide float64) bool {
	b := t.Boards[board]
	return b.Length-2*t.Saw.TrimEnds >= long-stock.Slack && b.Width-2*t.Saw.TrimEdges >= wide-stock.Slack
}

// choices lists sets of boards that will do and have so many units together, at most a board more than that takes, and cost no more
// than a limit, the cheapest first.
func choices(from []good, units int, limit float64, do func(boards []int) bool) [][]int {
	type set struct {
		boards []int
		cost   float64
	}
	slices.SortStableFunc(from, func(a, b good) int { return cmp.Compare(a.cost, b.cost) })
	var out []set
	seen := 0
	var add func(first, units int, cost float64, boards []int, more bool)
	add = func(first, units int, cost float64, boards []int, more bool) {
		if seen++; seen > mostChoices {
			return
		}
		if units <= 0 {
			if do(boards) {
				out = append(out, set{slices.Clone(boards), cost})
			}
			if more {
				return
			}
			more = true // one board more than that: the parts may not lie side by side in fewer
		}
		for k := first; k < len(from) && cost+from[k].cost <= limit*(1+1e-9); k++ {
			add(k, units-from[k].units, cost+from[k].cost, append(boards, from[k].board), more)
		}
	}
	add(0, units, 0, nil, false)
	slices.SortStableFunc(out, func(a, b set) int { return cmp.Or(cmp.Compare(a.cost, b.cost), len(a.boards)-len(b.boards)) })
	var boards [][]int
	for _, s := range out[:min(mostTried, len(out))] {
		boards = append(boards, s.boards)
	}
	return boards
}

// planFrom plans the task from so many of each of its boards.
func planFrom(ctx context.Context, t stock.Task, count []int) (stock.Plan, error) {
	own := t
	own.Boards = nil
	var index []int
	for i, n := range count {
		if n > 0 {
			b := t.Boards[i]
			b.Count = n
			own.Boards, index = append(own.Boards, b), append(index, i)
		}
	}
	p, err := sheet.Solve(ctx, own)
	if err != nil {
		return p, err
	}
	for i := range p.Layouts {
		p.Layouts[i].Board = index[p.Layouts[i].Board]
	}
	for i := range p.Misfits {
		if p.Misfits[i].Board >= 0 {
			p.Misfits[i].Board = index[p.Misfits[i].Board]
		}
	}
	return p, nil
}
