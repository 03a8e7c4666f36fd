package yield

import (
	"context"
	"slices"
	"strings"
	"testing"

	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/stock"
)

// Parts of pieces made together are those of one, so many times over, each with its name said once; each piece has its
// own run for the grain.
func TestTasksOfSeveralPieces(t *testing.T) {
	for _, e := range filetest.Examples(t) {
		for _, kind := range []string{"", "run", "resawn"} {
			d := e.Design
			d.Plan.Run, d.Plan.Resawn = kind == "run", kind == "resawn"
			one := Task(form.Build(d))
			d.Plan.Pieces = 3
			three := Task(form.Build(d))
			if len(three.Demands) != len(one.Demands) || len(three.Runs) != 3*len(one.Runs) {
				t.Errorf("%s %s: %d kinds of parts in %d runs, of one piece %d in %d", e.Name, kind, len(three.Demands), len(three.Runs), len(one.Demands), len(one.Runs))
				continue
			}
			for i, have := range three.Demands {
				want := one.Demands[i]
				if want.Count *= 3; have != want {
					t.Errorf("%s: %+v, want %+v", e.Name, have, want)
				}
			}
			for n, r := range three.Runs {
				if !slices.Equal(r.Parts, one.Runs[0].Parts) || strings.HasSuffix(r.IDs[0], "/3") != (n == 2) {
					t.Errorf("%s: run %d is %v, of one piece %v", e.Name, n+1, r, one.Runs[0])
				}
			}
		}
	}
}

// Steps from boards that yield just one each: every part of every step has its place once. Where the boards are for fewer, the
// parts of the last are bought.
func TestPiecesMadeTogether(t *testing.T) {
	of := func(n int, onHand ...stock.Board) form.Design {
		d := step(onHand...)
		d.Plan.Pieces = n
		return d
	}
	shelf := func(n int) (out []stock.Board) {
		for range n {
			out = append(out, plank(700, 280), plank(520, 280))
		}
		return out
	}
	for _, c := range []struct {
		pieces, boards, left int
	}{{1, 1, 0}, {2, 2, 0}, {3, 3, 0}, {3, 2, 3}} {
		d := of(c.pieces, shelf(c.boards)...)
		r, err := Solve(context.Background(), form.Build(d))
		if err != nil {
			t.Fatal(err)
		}
		left := 0
		for _, l := range r.Plan.Left {
			left += l.Count
		}
		ids := map[string]bool{}
		for _, q := range r.Which() {
			ids[q.ID] = true
		}
		if r.Pieces != c.pieces || left != c.left || len(ids) != 3*c.pieces-left {
			t.Errorf("%d steps from wood for %d: %d parts without a place, %d with one, for %d pieces", c.pieces, c.boards, left, len(ids), r.Pieces)
		}
		rest := shop(t, d)
		if len(rest.OnHand) != 3*c.pieces-left || rest.Pieces != c.pieces || parted(rest) != left {
			t.Errorf("%d steps from wood for %d: %d parts are there, %d bought", c.pieces, c.boards, len(rest.OnHand), parted(rest))
		}
	}
}

// parted counts the parts that a plan yields.
func parted(r Result) int {
	parts := map[*part.Part]bool{}
	for _, q := range r.Which() {
		parts[q] = true
	}
	return len(parts)
}
