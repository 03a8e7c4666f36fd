package sheet

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"splaywright/model/stock"
)

// shatter cuts a rectangle apart at random, by cuts right through with kerf between, and returns the pieces as parts.
func shatter(r *rand.Rand, l, w, kerf float64, t *stock.Task) {
	const least = 60
	long, wide := l > 2*least+kerf, w > 2*least+kerf
	if !long && !wide || r.IntN(6) == 0 && l < 900 {
		d := stock.Demand{Name: fmt.Sprint("part ", len(t.Demands)), Length: l, Width: w, Thickness: 20, Count: 1}
		if r.IntN(8) == 0 {
			d.Length, d.Width, d.Turn = w, l, true
		}
		t.Demands = append(t.Demands, d)
		return
	}
	if long && (!wide || r.IntN(2) == 0) {
		c := least + r.Float64()*(l-2*least-kerf)
		shatter(r, c, w, kerf, t)
		shatter(r, l-c-kerf, w, kerf, t)
		return
	}
	c := least + r.Float64()*(w-2*least-kerf)
	shatter(r, l, c, kerf, t)
	shatter(r, l, w-c-kerf, kerf, t)
}

// Parts that fill some of the boards without any waste but the kerf: the bound may not exceed what those boards cost,
// and nobody may call the task impossible.
func TestBoundsAreSound(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 4))
	tight := 0
	for n := range 40 {
		task := stock.Task{Saw: stock.Saw{Kerf: 3.2 * float64(r.IntN(2)), TrimEnds: 10, TrimEdges: 3}}
		known := 0.0
		filled := 1 + r.IntN(3)
		for i := range filled + r.IntN(4) {
			b := one(700+1200*r.Float64(), 110+120*r.Float64(), 22)
			b.Name = fmt.Sprint("board ", i)
			task.Boards = append(task.Boards, b)
			if i < filled {
				known += b.Area()
				shatter(r, b.Length-20, b.Width-6, task.Saw.Kerf, &task)
			}
		}
		r.Shuffle(len(task.Demands), func(a, b int) { task.Demands[a], task.Demands[b] = task.Demands[b], task.Demands[a] })
		ctx, stop := context.WithTimeout(context.Background(), 60*time.Millisecond)
		p, err := Solve(ctx, task)
		stop()
		if err != nil {
			t.Fatal(err)
		}
		if err := stock.Verify(task, p); err != nil {
			t.Fatalf("task %d: %v", n, err)
		}
		if p.Short || len(p.Misfits) > 0 || p.Bound > known*(1+1e-9) {
			t.Fatalf("task %d: short %v, misfits %v, bound %g, but the boards of %g suffice", n, p.Short, p.Misfits, p.Bound, known)
		}
		if p.Bound > known*0.98 {
			tight++
		}
	}
	t.Logf("the bound came within 2 %% of the known cost in %d of 40", tight)
	if tight < 20 {
		t.Errorf("the bound is weak: within 2 %% in %d of 40", tight)
	}
}
