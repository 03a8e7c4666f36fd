package sheet

import (
	"math"
	"testing"

	"splaywright/model/stock"
)

const inch = 25.4

// fits tells whether a board of one inch yields all the parts, and plans them.
func fits(t *testing.T, long, wide, kerf float64, parts ...stock.Demand) (stock.Plan, bool) {
	t.Helper()
	p := solve(t, stock.Task{Boards: []stock.Board{one(long*inch, wide*inch, inch)}, Demands: parts, Saw: stock.Saw{Kerf: kerf * inch}})
	return p, len(p.Left)+len(p.Misfits) == 0
}

func inches(name string, l, w float64, n int) stock.Demand {
	return part(name, l*inch, w*inch, inch, n)
}

// longest is the longest piece of waste that the plan leaves, inches.
func longest(p stock.Plan) float64 {
	most := 0.0
	for _, l := range p.Layouts {
		l.Each(func(q *stock.Piece, _ int) {
			if q.Kind == stock.Waste || q.Kind == stock.Offcut {
				most = math.Max(most, q.Length())
			}
		})
	}
	return most / inch
}

// Open cases: what shops have asked of a board and its kerf, each with the answer and the neighbour that just misses.
func TestKerfCases(t *testing.T) {
	for _, c := range []struct {
		source           string
		long, wide, kerf float64
		parts            []stock.Demand
		fits             bool
		left             float64 // in, the longest piece of waste; 0 = not said
	}{
		// (5.5 − 0.375)/4 = 1 9/32
		{"https://hsst.wordpress.com/2011/07/20/annoying-woodworking-math-problem-solved/", 12, 5.5, 0.125, []stock.Demand{inches("rip", 12, 1.28125, 4)}, true, 0},
		{"the same, a thousandth wider", 12, 5.5, 0.125, []stock.Demand{inches("rip", 12, 1.28225, 4)}, false, 0},
		// floor(96.125/8.125) = 11, and 6.625 left
		{"The Oklahoman of 2019-06-15: calculating lumber cuts can be tricky", 96, 4, 0.125, []stock.Demand{inches("block", 8, 4, 11)}, true, 6.625},
		{"the same, one block more", 96, 4, 0.125, []stock.Demand{inches("block", 8, 4, 12)}, false, 0},
		// two of 10 5/8 and one cut need 21.375
		{"http://protocolostomy.com/2006/12/31/heartbreaking-screwup-dont-do-this/", 21.375, 9, 0.125, []stock.Demand{inches("side", 10.625, 9, 2)}, true, 0},
		{"the same from a board a thousandth shorter", 21.374, 9, 0.125, []stock.Demand{inches("side", 10.625, 9, 2)}, false, 0},
		// 74 + 6 · 1/8 = 74.75, left 21.25
		{"plan of a step stool: pages of a private workshop", 96, 9, 0.125, []stock.Demand{inches("side", 15, 9, 2), inches("tread", 11, 9, 4)}, true, 21.25},
		// two stools need 108 of 96; sharing one piece of 16 they fit
		{"https://woodworkersjournal.com/making-classic-five-board-step-stool-project-plan", 96, 11.25, 0.125, []stock.Demand{inches("a", 16, 11.25, 2), inches("b", 18, 11.25, 2), inches("c", 20, 11.25, 2)}, false, 0},
		{"the same with one piece of 16 shared", 96, 11.25, 0.125, []stock.Demand{inches("a", 16, 11.25, 1), inches("b", 18, 11.25, 2), inches("c", 20, 11.25, 2)}, true, 0},
		// (96 − 45 − 1/4)/2 = 25.375
		{"https://popularwoodworking.com/projects/6-board-chest", 96, 18.5, 0.125, []stock.Demand{inches("lid", 45, 18.5, 1), inches("end", 25.375, 18.5, 2)}, true, 0},
		{"the same, ends a thousandth longer", 96, 18.5, 0.125, []stock.Demand{inches("lid", 45, 18.5, 1), inches("end", 25.376, 18.5, 2)}, false, 0},
	} {
		p, ok := fits(t, c.long, c.wide, c.kerf, c.parts...)
		if ok != c.fits || !ok && !p.Short {
			t.Errorf("%s: fits %v, want %v (proven short: %v)", c.source, ok, c.fits, p.Short)
		}
		if got := longest(p); c.left > 0 && math.Abs(got-c.left) > 1e-9 {
			t.Errorf("%s: %.4f in left, want %g", c.source, got, c.left)
		}
	}
}

// Open case "Heartbreaking screwup": the kerf falls on the waste side of the first piece, which is whole, and the plan
// says which side that is.
func TestTheKerfFallsOnTheWaste(t *testing.T) {
	p, ok := fits(t, 23, 9, 0.125, inches("side", 10.625, 9, 2))
	if !ok {
		t.Fatal("two sides do not fit")
	}
	for _, q := range parts(p) {
		if math.Abs(q.Length()-10.625*inch) > 1e-9 {
			t.Errorf("a side of %.4f in", q.Length()/inch)
		}
	}
	between, beside := 0, 0
	for _, c := range p.Layouts[0].Cuts(stock.Task{Boards: make([]stock.Board, 1), Saw: stock.Saw{Kerf: 0.125 * inch}}) {
		switch {
		case c.KeepNear && c.KeepFar:
			between++
		case c.KeepNear || c.KeepFar:
			beside++
		}
	}
	if between != 1 || beside != 1 {
		t.Errorf("%d cuts between two sides, %d with waste on one side; want one of each", between, beside)
	}
}

// Open case, four-corner grain match: a full inch resawn once with a cut of 1/16 leaves two boards of
// (1 − 1/16)/2 = 0.469 in, 3/32 more than sides of 3/8 need.
// https://www.woodcraft.com/blog_entries/tips-tricks-issue-82-how-to-grain-wrap-a-box
func TestResawnForFourCorners(t *testing.T) {
	for _, c := range []struct {
		thick float64
		fits  bool
	}{{0.375, true}, {0.375 + 3./32, true}, {0.375 + 3./32 + 0.001, false}} {
		task := stock.Task{Boards: []stock.Board{one(30*inch, 5*inch, inch)},
			Demands: []stock.Demand{part("side", 12*inch, 4*inch, c.thick*inch, 2)},
			Runs:    []stock.Run{{Name: "pair", Kind: stock.Resawn, Parts: []int{0, 0}}},
			Saw:     stock.Saw{Kerf: 0.125 * inch, Resaw: inch / 16}}
		if p := solve(t, task); (len(p.Misfits)+len(p.Left) == 0) != c.fits {
			t.Errorf("two sides of %.4f in from a full inch: fits %v", c.thick, !c.fits)
		}
	}
}
