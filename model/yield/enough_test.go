package yield

import (
	"context"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/timber"
)

// anyYard is two rows of a yard with a few sizes of a grade each, or of none.
func anyYard(t *rapid.T) []form.Yard {
	var out []form.Yard
	for range 2 {
		y := form.Yard{Sold: "4/4", PerBoardFoot: float64(rapid.IntRange(2, 16).Draw(t, "price")),
			Grade: rapid.SampledFrom(append(timber.GradeNames(), "")).Draw(t, "grade")}
		for range 2 {
			y.Widths = append(y.Widths, measure.Length(rapid.IntRange(10, 14).Draw(t, "width"))*measure.Inch)
		}
		y.Lengths = []measure.Length{measure.Length(rapid.IntRange(8, 12).Draw(t, "length")) * foot}
		out = append(out, y)
	}
	return out
}

// What is bought is promised, is no cheaper than its bound, and no set of up to four boards that holds and promises the parts
// is cheaper than the bound; what is called proven is not dearer than any of these.
func TestWhatIsBoughtIsEnoughAndTheLeast(t *testing.T) {
	dearer, looked := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		d := plumbStep(measure.Length(rapid.IntRange(300, 1300).Draw(t, "width")), measure.Length(rapid.IntRange(150, 900).Draw(t, "height")))
		d.Yard = anyYard(t)
		p := form.Build(d)
		r, err := Buy(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		if r.Short() {
			return // no board is large enough
		}
		for _, l := range r.Plan.Lots(r.Task) {
			if l.Lacks() > 0 {
				t.Errorf("%+v lacks %.0f mm²", l, l.Lacks())
			}
		}
		if r.Plan.Cost < r.Plan.Bound*(1-1e-9) {
			t.Errorf("%.2f is below its bound %.2f", r.Plan.Cost, r.Plan.Bound)
		}
		least, found := leastByTrying(t, p, r)
		if !found {
			return
		}
		looked++
		if least < r.Plan.Bound*(1-1e-9) || r.Plan.Proven && least < r.Plan.Cost*(1-1e-9) {
			t.Errorf("%.2f would do; %.2f is bought, bound %.2f, proven %v", least, r.Plan.Cost, r.Plan.Bound, r.Plan.Proven)
		}
		if least < r.Plan.Cost*(1-1e-9) {
			dearer++
		}
	})
	t.Logf("of %d purchases %d were dearer than need be", looked, dearer)
	if looked == 0 || 10*dearer > looked {
		t.Errorf("of %d purchases %d were dearer than need be", looked, dearer)
	}
}

// leastByTrying is the least that up to four boards cost of which the parts come out and that promise enough.
func leastByTrying(t *rapid.T, p *form.Piece, r Result) (least float64, found bool) {
	offered := r.Task
	counts := make([]int, len(offered.Boards))
	var try func(from, left int, cost float64)
	try = func(from, left int, cost float64) {
		if found && cost >= least*(1-1e-9) {
			return
		}
		if cost > 0 && promises(t, offered, counts) {
			least, found = cost, true
			return
		}
		if left == 0 {
			return
		}
		for i := from; i < len(counts); i++ {
			counts[i]++
			try(i, left-1, cost+offered.Cost(i))
			counts[i]--
		}
	}
	try(0, 4, 0)
	return least, found
}

// promises tells whether the parts come out of just these boards within what is promised of them.
func promises(t *rapid.T, task stock.Task, counts []int) bool {
	q, err := planFrom(context.Background(), task, counts)
	if err != nil {
		t.Fatal(err)
	}
	if len(q.Left)+len(q.Misfits) > 0 {
		return false
	}
	for board, n := range taken(task, q) {
		for range counts[board] - n { // not cut, and so to spare
			q.Layouts = append(q.Layouts, stock.Layout{Board: board, Root: &stock.Piece{Kind: stock.Spare}})
		}
	}
	for _, l := range q.Lots(task) {
		if l.Lacks() > 0 {
			return false
		}
	}
	return true
}
