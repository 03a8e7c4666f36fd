package line

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"
)

// exhaust finds the least cost by trying every way to put the parts, one after the other, into bars; it returns
// false when the stock on hand does not suffice. Whole lengths only; it shares nothing with Solve.
func exhaust(t Task) (int, bool) {
	var lengths []int
	for _, p := range t.Parts {
		for range p.Count {
			lengths = append(lengths, int(p.Length))
		}
	}
	type bar struct{ stock, room int }
	best := 1 << 40
	left := make([]int, len(t.Stocks))
	for i, s := range t.Stocks {
		left[i] = s.Limit
		if s.Limit == 0 {
			left[i] = len(lengths)
		}
	}
	var bars []bar
	var place func(i, cost int)
	place = func(i, cost int) {
		if cost >= best {
			return
		}
		if i == len(lengths) {
			best = cost
			return
		}
		size := lengths[i] + int(t.Kerf)
		for b := range bars {
			if bars[b].room >= size {
				bars[b].room -= size
				place(i+1, cost)
				bars[b].room += size
			}
		}
		for s, k := range t.Stocks {
			room := int(k.Length-2*t.Trim) + int(t.Kerf)
			if left[s] == 0 || room < size {
				continue
			}
			c := int(k.Length)
			if k.Price > 0 {
				c = int(math.Round(k.Price * 100))
			}
			left[s]--
			bars = append(bars, bar{s, room - size})
			place(i+1, cost+c)
			bars = bars[:len(bars)-1]
			left[s]++
		}
	}
	place(0, 0)
	return best, best < 1<<40
}

func TestSmallTasksAgainstEveryWay(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	short := 0
	for n := range 400 {
		task := Task{Kerf: float64(r.IntN(4)), Trim: float64(r.IntN(3))}
		priced := r.IntN(2) == 0
		for range 1 + r.IntN(3) {
			s := Stock{Name: "s", Length: float64(60 + r.IntN(60)), Limit: r.IntN(4)}
			if priced {
				s.Price = float64(100+r.IntN(900)) / 100
			}
			task.Stocks = append(task.Stocks, s)
		}
		for range 1 + r.IntN(4) {
			task.Parts = append(task.Parts, Part{Name: "p", Length: float64(8 + r.IntN(50)), Count: 1 + r.IntN(2)})
		}
		want, ok := exhaust(task)
		got, err := Solve(context.Background(), task)
		var no *NotEnough
		switch {
		case !ok:
			short++
			if !errors.As(err, &no) || !no.Proven {
				t.Fatalf("task %d: %v; want a proof that the stock runs out\n%+v", n, err, task)
			}
			continue
		case err != nil:
			t.Fatalf("task %d: %v\n%+v", n, err, task)
		}
		if err := Verify(task, got); err != nil {
			t.Fatalf("task %d: %v", n, err)
		}
		cost := float64(want)
		if priced {
			cost /= 100
		}
		if d := got.Cost - cost; d > 1e-6 || d < -1e-6 || !got.Proven {
			t.Fatalf("task %d: cost %g, proven %v; every way tried: %g\n%+v", n, got.Cost, got.Proven, cost, task)
		}
	}
	if short == 0 || short > 300 {
		t.Errorf("%d of 400 tasks lacked stock; the mixture is off", short)
	}
}

func TestPartLongerThanAnyStock(t *testing.T) {
	_, err := Solve(context.Background(), Task{
		Stocks: []Stock{{Name: "8 ft", Length: 2438.4}, {Name: "6 ft", Length: 1828.8}},
		Parts:  []Part{{Name: "rail", Length: 2430, Count: 1}}, Kerf: 3.2, Trim: 10})
	var long *TooLong
	if !errors.As(err, &long) {
		t.Fatalf("got %v", err)
	}
	if d := long.Longest - 2418.4; d > 1e-6 || d < -1e-6 {
		t.Errorf("longest %g, want 2418.4", long.Longest)
	}
	if !strings.Contains(err.Error(), "11.6 mm short") {
		t.Errorf("%v", err)
	}
}

func TestImpossibleInput(t *testing.T) {
	part := []Part{{Name: "rail", Length: 300, Count: 1}}
	for name, task := range map[string]Task{
		"no stock":       {Parts: part},
		"no length":      {Parts: part, Stocks: []Stock{{Name: "a"}}},
		"negative kerf":  {Parts: part, Stocks: []Stock{{Name: "a", Length: 900}}, Kerf: -1},
		"half priced":    {Parts: part, Stocks: []Stock{{Name: "a", Length: 900, Price: 3}, {Name: "b", Length: 800}}},
		"negative count": {Parts: []Part{{Name: "rail", Length: 300, Count: -1}}, Stocks: []Stock{{Name: "a", Length: 900}}},
	} {
		if _, err := Solve(context.Background(), task); err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
}

// A stopped search still gives a plan that holds, and does not claim what it did not prove.
func TestStoppedSearchIsHonest(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	for _, k := range read(t, "triplets.txt")[:5] {
		p, err := Solve(ctx, k.task)
		if err != nil {
			t.Fatal(err)
		}
		if err := Verify(k.task, p); err != nil {
			t.Error(err)
		}
		if p.Proven || p.Gap() <= 0 {
			t.Errorf("%s: proven %v, gap %g with %d bars", k.name, p.Proven, p.Gap(), p.Number())
		}
	}
}

func TestVerifyFindsFaults(t *testing.T) {
	task := Task{Stocks: []Stock{{Name: "a", Length: 1000, Limit: 2}}, Parts: []Part{{"x", 400, 3}, {"y", 300, 1}}, Kerf: 3, Trim: 5}
	good, err := Solve(context.Background(), task)
	if err != nil || Verify(task, good) != nil {
		t.Fatal(err, Verify(task, good))
	}
	for name, bars := range map[string][]Bar{
		"too long":     {{0, []int{0, 0, 1}, 1}, {0, []int{0}, 1}},
		"one missing":  {{0, []int{0, 0}, 1}, {0, []int{0}, 1}},
		"too many":     {{0, []int{0, 0}, 2}, {0, []int{1}, 1}},
		"no such part": {{0, []int{7}, 1}},
		"past limit":   {{0, []int{0}, 3}, {0, []int{1}, 1}},
	} {
		p := good
		p.Bars = bars
		p.Cost = 0
		for _, b := range bars {
			p.Cost += 1000 * float64(b.Count)
		}
		p.Bound = 0
		if Verify(task, p) == nil {
			t.Errorf("%s: passed", name)
		}
	}
}

// Lengths too fine for a table are searched instead: the answer stays the same.
func TestFineLengths(t *testing.T) {
	for _, k := range read(t, "pm_u.txt")[:30] {
		for i := range k.task.Parts {
			k.task.Parts[i].Length -= 0.00131
		}
		p, err := Solve(context.Background(), k.task)
		if err != nil {
			t.Fatal(err)
		}
		if err := Verify(k.task, p); err != nil {
			t.Error(err)
		}
		if !p.Proven || p.Number() > k.optimum {
			t.Errorf("%s: %d, proven %v, known %d", k.name, p.Number(), p.Proven, k.optimum)
		}
	}
}

func BenchmarkSets(b *testing.B) {
	for _, set := range sets {
		all := read(b, set.file)
		b.Run(set.file, func(b *testing.B) {
			for b.Loop() {
				worst := time.Duration(0)
				for _, k := range all {
					start := time.Now()
					if p, err := Solve(context.Background(), k.task); err != nil || !p.Proven {
						b.Fatal(err, p.Proven)
					}
					worst = max(worst, time.Since(start))
				}
				b.ReportMetric(float64(worst.Microseconds())/1000, "worst-ms")
			}
		})
	}
}

func BenchmarkPaperMachine(b *testing.B) {
	for b.Loop() {
		if p, err := Solve(context.Background(), paper()); err != nil || !p.Proven {
			b.Fatal(err)
		}
	}
}
