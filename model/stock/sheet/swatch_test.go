package sheet

import (
	"context"
	"math"
	"testing"

	"splaywright/model/stock"
)

// Every swatch is as large as the units it is made of side by side, takes none too often, wastes little, and may be
// cut from every board it names.
func TestSwatchesHoldWhatTheySay(t *testing.T) {
	found := 0
	for seed := range uint64(2) {
		for _, task := range []stock.Task{mixed(seed, 60, 12), many(seed), equal(seed)} {
			s := searchOf(task)
			b := newBook(s)
			if b == nil {
				t.Fatal("sixty parts have no room in tallies")
			}
			for n := range b.swatches[1:] {
				checkSwatch(t, s, b, int32(n+1))
			}
			found += len(b.swatches)
		}
	}
	if found < 1000 {
		t.Errorf("only %d swatches in six tasks", found)
	}
}

// searchOf is a search for the task that has not begun.
func searchOf(task stock.Task) *search {
	s, _, _ := searchAnd(task)
	return s
}

// searchAnd gives what is glued up and what no board yields too.
func searchAnd(task stock.Task) (*search, []stock.GlueUp, []stock.Misfit) {
	var shapes []*shape
	for i, b := range task.Boards {
		for range b.Number() {
			shapes = append(shapes, newShape(task, i))
		}
	}
	us, glued, misfits := units(task, shapes)
	return newSearch(context.Background(), task, shapes, us), glued, misfits
}

func checkSwatch(t *testing.T, s *search, b *book, n int32) {
	t.Helper()
	c := b.swatches[n]
	used := make([]int, len(s.bounds.kinds))
	l, w := b.measure(s, n, used)
	area, units := 0.0, 0
	var tallied tally
	for k, m := range used {
		u := s.bounds.kinds[k]
		area += float64(m) * (u.l + s.t.Saw.Kerf) * (u.w + s.t.Saw.Kerf)
		units += m
		if m > s.bounds.count[k] {
			t.Errorf("swatch %d takes kind %d %d times of %d", n, k, m, s.bounds.count[k])
		}
		f := b.fields[k]
		tallied[f.word] += uint64(m) << f.at
		for i := range s.shapes {
			if m > 0 && c.boards>>i&1 == 1 && !u.may(i) {
				t.Errorf("swatch %d: kind %d does not come from board %d", n, k, i)
			}
		}
	}
	if math.Abs(l-c.l)+math.Abs(w-c.w) > 1e-9 || math.Abs(area-c.cover) > 1e-6 || units != c.units || tallied != c.used {
		t.Errorf("swatch %d: %g by %g of %d units that cover %g, says %+v", n, l, w, units, area, c)
	}
	if area < (1-swatchWaste)*l*w-1e-6 {
		t.Errorf("swatch %d: %.4f of it is waste", n, 1-area/(l*w))
	}
}

// measure adds a swatch up again.
func (b *book) measure(s *search, n int32, used []int) (l, w float64) {
	c := b.swatches[n]
	if c.a == 0 {
		used[c.b]++
		u, k := s.bounds.kinds[c.b], s.t.Saw.Kerf
		if c.turned {
			return u.w + k, u.l + k
		}
		return u.l + k, u.w + k
	}
	l1, w1 := b.measure(s, c.a, used)
	l2, w2 := b.measure(s, c.b, used)
	if c.along {
		return l1 + l2, max(w1, w2)
	}
	return max(l1, l2), w1 + w2
}

// Quilts made of swatches fill a board better than quilts of single units, by more than a hundredth of it on average.
func TestSwatchesFillBoards(t *testing.T) {
	with, without, boards := 0.0, 0.0, 0.0
	for seed := range uint64(2) {
		s := searchOf(mixed(seed, 60, 12))
		b := newBook(s)
		w := newSewer(s, 1)
		left := make([]int, len(s.us))
		for i := range left {
			left[i] = i
		}
		for i, sh := range s.shapes {
			l, wide := sh.root.Length()+s.t.Saw.Kerf, sh.root.Width()+s.t.Saw.Kerf
			fill := func(b *book) float64 {
				ks, _ := w.kinds(left, i, 0)
				w.q.book, w.q.board = b, 1<<i
				if !w.q.lay(l, wide, 120, 45, ks) {
					t.Fatal("no room for the kinds")
				}
				return w.q.patches[w.q.of(l, wide)].worth / (l * wide)
			}
			with, without, boards = with+fill(b), without+fill(nil), boards+1
		}
	}
	t.Logf("%.4f of a board filled with swatches, %.4f without", with/boards, without/boards)
	if with < without+0.01*boards || with > boards {
		t.Errorf("%.4f of a board filled with swatches, %.4f without", with/boards, without/boards)
	}
}
