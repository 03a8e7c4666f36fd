package sheet

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"splaywright/model/stock"
)

// everyWay is the most that a board of whole millimetres yields, of every cut at every millimetre, both ways. A cut takes
// the kerf, or what is left where that is less.
type everyWay struct {
	kerf  int
	items []item
	avoid [][4]int
	known map[[4]int]float64
}

func (e *everyWay) of(x1, y1, x2, y2 int) float64 {
	if x2 <= x1 || y2 <= y1 {
		return 0
	}
	key := [4]int{x1, y1, x2, y2}
	if v, ok := e.known[key]; ok {
		return v
	}
	best := 0.0
	for _, it := range e.items {
		if it.l == x2-x1 && it.w == y2-y1 && it.value > best && e.sound(x1, y1, x2, y2) {
			best = it.value
		}
	}
	for c := x1 + 1; c < x2; c++ {
		best = max(best, e.of(x1, y1, c, y2)+e.of(min(x2, c+e.kerf), y1, x2, y2))
	}
	for c := y1 + 1; c < y2; c++ {
		best = max(best, e.of(x1, y1, x2, c)+e.of(x1, min(y2, c+e.kerf), x2, y2))
	}
	best = max(best, e.of(x1+1, y1, x2, y2), e.of(x1, y1+1, x2, y2))
	e.known[key] = best
	return best
}

func (e *everyWay) sound(x1, y1, x2, y2 int) bool {
	for _, a := range e.avoid {
		if x1 < a[2] && a[0] < x2 && y1 < a[3] && a[1] < y2 {
			return false
		}
	}
	return true
}

// What a board with places to avoid is said to yield at most is no less than what every way tried out yields, nor more
// than it would yield without them; with fine rounding it is mostly that exactly.
func TestKnottyBoardsAgainstEveryWay(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 6))
	exact, spoilt, seen := 0, 0, 0
	const all = 100
	for n := range all {
		l, w, kerf := 14+r.IntN(14), 8+r.IntN(8), r.IntN(3)
		e := &everyWay{kerf: kerf, known: map[[4]int]float64{}}
		sh := &shape{root: stock.Rect{X1: 0, Y1: 0, X2: float64(l), Y2: float64(w)}}
		for range 1 + r.IntN(3) {
			x, y, a, b := r.IntN(l), r.IntN(w), 1+r.IntN(4), 1+r.IntN(4)
			e.avoid = append(e.avoid, [4]int{x, y, x + a, y + b})
			sh.blots = append(sh.blots, stock.Blot{Rect: stock.Rect{X1: float64(x), Y1: float64(y), X2: float64(x + a), Y2: float64(y + b)}})
		}
		var grown []item
		for range 2 + r.IntN(3) {
			it := item{l: 2 + r.IntN(l/2), w: 1 + r.IntN(w/2)}
			it.value = float64(it.l*it.w) * (0.8 + 0.4*r.Float64())
			e.items = append(e.items, it)
			grown = append(grown, item{it.l + kerf, it.w + kerf, it.value})
		}
		want := e.of(0, 0, l, w)
		table := newTable(l+kerf, w+kerf, grown, false)
		most := table.of(l+kerf, w+kerf)
		for _, step := range [2]float64{1, 0.5} {
			f := int(1 / step)
			fine := table
			if f > 1 {
				var items []item
				for _, it := range grown {
					items = append(items, item{it.l * f, it.w * f, it.value})
				}
				fine = newTable((l+kerf)*f, (w+kerf)*f, items, false)
			}
			{
				k := fine.around((l+kerf)*f, (w+kerf)*f, sh.inSteps(float64(kerf), [2]float64{step, step}))
				if k.work > knottedWork {
					continue
				}
				got := k.value
				used := make([]int, len(grown))
				k.use(k.all, used)
				worth := 0.0
				for i, n := range used {
					worth += float64(n) * grown[i].value
				}
				if math.Abs(worth-got) > 1e-9*got {
					t.Fatalf("board %d: %g, but its cutting %v is worth %g", n, got, used, worth)
				}
				if got < want-1e-9 || got > most+1e-9 {
					t.Fatalf("board %d, step %g: %g, but %g can be had, %g without places to avoid\n%d by %d, kerf %d, %v, %v", n, step, got, want, most, l, w, kerf, e.items, e.avoid)
				}
				if step == 1 {
					seen++
					if got < want+1e-9 {
						exact++
					}
					if want < most-1e-9 {
						spoilt++
					}
				}
			}
		}
	}
	t.Logf("%d of %d exact, %d spoilt", exact, seen, spoilt)
	if spoilt < all/3 || exact < all*2/3 {
		t.Errorf("%d of %d exact, %d spoilt", exact, seen, spoilt)
	}
}

// crumble cuts a rectangle apart at random, by cuts right through with kerf between.
func crumble(r *rand.Rand, q stock.Rect, kerf float64, piece func(q stock.Rect)) {
	const least = 60
	long, wide := q.Length() > 2*least+kerf, q.Width() > 2*least+kerf
	if !long && !wide || r.IntN(6) == 0 && q.Length() < 900 {
		piece(q)
		return
	}
	one, two := q, q
	if long && (!wide || r.IntN(2) == 0) {
		one.X2 = q.X1 + least + r.Float64()*(q.Length()-2*least-kerf)
		two.X1 = one.X2 + kerf
	} else {
		one.Y2 = q.Y1 + least + r.Float64()*(q.Width()-2*least-kerf)
		two.Y1 = one.Y2 + kerf
	}
	crumble(r, one, kerf, piece)
	crumble(r, two, kerf, piece)
}

// Boards that are known to yield all parts, since these were cut from them at random and some became places to avoid, are
// not ruled out, nor is the bound above what they cost, while what these places spoil rules out other choices.
func TestNoKnottyChoiceThatDoesIsRuledOut(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 32))
	aware, all := 0, 0
	for n := range 8 {
		task := stock.Task{Saw: stock.Saw{Kerf: 3.2 * float64(n%2), TrimEnds: 10, TrimEdges: 3}}
		filled := 2 + r.IntN(2)
		for i := range filled + 4 {
			b := one(700+700*r.Float64(), 110+90*r.Float64(), 22)
			b.Name = fmt.Sprint("board ", i)
			crumble(r, stock.Rect{X1: 10, Y1: 3, X2: b.Length - 10, Y2: b.Width - 3}, task.Saw.Kerf, func(q stock.Rect) {
				a := stock.Avoid{What: "knot", X: q.X1, Y: q.Y1, Length: q.Length(), Width: q.Width()}
				switch {
				case r.IntN(5) > 0:
					if i < filled {
						task.Demands = append(task.Demands, part(fmt.Sprint("part ", len(task.Demands)), q.Length(), q.Width(), 20, 1))
					}
					return
				case r.IntN(2) == 0: // a round one, which touches the parts round about
					a = stock.Avoid{What: "knot", X: (q.X1 + q.X2) / 2, Y: (q.Y1 + q.Y2) / 2, Diameter: min(q.Length(), q.Width())}
				}
				b.Avoid = append(b.Avoid, a)
			})
			task.Boards = append(task.Boards, b)
		}
		c := askedOf(t, n, task, filled)
		for _, k := range c.ways {
			if k.around {
				aware++
			}
		}
		all += len(c.s.bounds.rules) - 1
	}
	t.Logf("%d rules, %d ways to cut round places to avoid", all, aware)
	if all < 10 || aware < 20 {
		t.Errorf("%d rules, %d ways to cut round places to avoid", all, aware)
	}
}

// Boards that a plan is known for are filled again, more often than not.
func TestSingleChoicesAreFilled(t *testing.T) {
	s := searchOf(mixed(4, 20, 7))
	s.ctx = context.Background()
	sets, _ := s.sets()
	s.lower = sets[0].cost
	s.start()
	s.book = newBook(s)
	before := s.best
	if before.area > 0 {
		t.Fatal("no plan to begin with")
	}
	best := s.fit(sets, 4_000_000)
	if !best.better(before) || best.area > 0 || best.cost >= before.cost {
		t.Errorf("cost %g, before %g, %g left over", best.cost, before.cost, best.area)
	}
	if again := s.fit(sets, 4_000_000); again.cost != best.cost || !slices.Equal(again.owner, best.owner) {
		t.Errorf("cost %g and then %g for the same task", best.cost, again.cost)
	}
}
