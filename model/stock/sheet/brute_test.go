package sheet

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"splaywright/model/stock"
)

// brute tries every way to cut whole-millimetre parts from one board with rectangular places to avoid: every cut at
// every millimetre, both ways, every division of the parts. It shares nothing with the planner.
type brute struct {
	kerf  int
	parts [][2]int
	avoid [][4]int
	known map[[5]int]bool
}

func (b *brute) can(x1, y1, x2, y2, set int) bool {
	if set == 0 {
		return true
	}
	if x2 <= x1 || y2 <= y1 {
		return false
	}
	key := [5]int{x1, y1, x2, y2, set}
	if v, ok := b.known[key]; ok {
		return v
	}
	v := b.try(x1, y1, x2, y2, set)
	b.known[key] = v
	return v
}

func (b *brute) try(x1, y1, x2, y2, set int) bool {
	area := 0
	for i, p := range b.parts {
		if set>>i&1 == 1 {
			area += p[0] * p[1]
			if set == 1<<i && p[0] == x2-x1 && p[1] == y2-y1 {
				for _, a := range b.avoid {
					if x1 < a[2] && a[0] < x2 && y1 < a[3] && a[1] < y2 {
						return false
					}
				}
				return true
			}
		}
	}
	if area > (x2-x1)*(y2-y1) {
		return false
	}
	// A cut wastes kerf; one that shaves an edge wastes less.
	for c := x1 + 1; c < x2; c++ {
		if b.divide(set, func(s int) bool { return b.can(x1, y1, c, y2, s) }, func(s int) bool { return b.can(min(x2, c+b.kerf), y1, x2, y2, s) }) {
			return true
		}
	}
	for c := y1 + 1; c < y2; c++ {
		if b.divide(set, func(s int) bool { return b.can(x1, y1, x2, c, s) }, func(s int) bool { return b.can(x1, min(y2, c+b.kerf), x2, y2, s) }) {
			return true
		}
	}
	return b.can(x1+1, y1, x2, y2, set) || b.can(x1, y1+1, x2, y2, set)
}

func (b *brute) divide(set int, one, other func(int) bool) bool {
	for s := set; ; s = (s - 1) & set {
		if one(s) && other(set&^s) {
			return true
		}
		if s == 0 {
			return false
		}
	}
}

func smallTask(r *rand.Rand, avoid bool) (stock.Task, *brute) {
	l, w := 9+r.IntN(6), 5+r.IntN(5)
	b := &brute{kerf: r.IntN(2), known: map[[5]int]bool{}}
	t := stock.Task{Boards: []stock.Board{{Name: "b", Length: float64(l), Width: float64(w), Thickness: 1}}, Saw: stock.Saw{Kerf: float64(b.kerf)}}
	if avoid {
		for range 1 + r.IntN(2) {
			x, y := r.IntN(l), r.IntN(w)
			a := stock.Avoid{What: "knot", X: float64(x), Y: float64(y), Length: float64(1 + r.IntN(2)), Width: float64(1 + r.IntN(2))}
			t.Boards[0].Avoid = append(t.Boards[0].Avoid, a)
			b.avoid = append(b.avoid, [4]int{x, y, x + int(a.Length), y + int(a.Width)})
		}
	}
	for i := range 2 + r.IntN(4) {
		p := [2]int{2 + r.IntN(l*3/5), 1 + r.IntN(w*2/3)}
		b.parts = append(b.parts, p)
		t.Demands = append(t.Demands, stock.Demand{Name: fmt.Sprint("p", i), Length: float64(p[0]), Width: float64(p[1]), Thickness: 1, Count: 1})
	}
	return t, b
}

// Every plan holds, nothing that can be done is called proven impossible, and the planner finds what every way tried
// out finds.
func TestSmallBoardsAgainstEveryWay(t *testing.T) {
	for _, avoid := range []bool{false, true} {
		r := rand.New(rand.NewPCG(11, 5))
		can, missed, proofs := 0, 0, 0
		const all = 120
		for n := range all {
			task, b := smallTask(r, avoid)
			p, err := Solve(context.Background(), task)
			if err != nil {
				t.Fatal(err)
			}
			if err := stock.Verify(task, p); err != nil {
				t.Fatalf("task %d: %v\n%+v", n, err, task)
			}
			found := len(p.Left)+len(p.Misfits) == 0
			want := b.can(0, 0, int(task.Boards[0].Length), int(task.Boards[0].Width), 1<<len(b.parts)-1)
			switch {
			case found && !want:
				t.Fatalf("task %d: planned what cannot be cut\n%+v", n, task)
			case want && (p.Short || len(p.Misfits) > 0):
				t.Fatalf("task %d: called impossible, can be cut\n%+v", n, task)
			case want && !found:
				missed++
				t.Logf("task %d can be cut, no plan found: %+v", n, task)
			}
			if want {
				can++
			} else if p.Short || len(p.Misfits) > 0 {
				proofs++
			}
		}
		t.Logf("avoid %v: %d of %d can be cut, %d missed; %d of %d impossible ones proven", avoid, can, all, missed, proofs, all-can)
		if missed > 0 || can < all/5 || can > all*9/10 {
			t.Errorf("avoid %v: %d missed of %d", avoid, missed, can)
		}
		if !avoid && proofs != all-can {
			t.Errorf("on sound boards %d of %d impossible tasks proven", proofs, all-can)
		}
	}
}
