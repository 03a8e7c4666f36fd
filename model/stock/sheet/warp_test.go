package sheet

import (
	"testing"

	"splaywright/model/stock"
)

// A long part does not come out of a bent board that still yields two short ones, and the plan takes the flat board for it,
// although it is the dearer one.
func TestBentBoardsYieldShortParts(t *testing.T) {
	bent, flat := one(1600, 200, 25), one(1600, 260, 25)
	bent.Name, bent.Bow = "bent", 10
	flat.Name = "flat"
	short, long := part("short", 700, 180, 22, 2), part("long", 1500, 180, 22, 1)
	p := solve(t, stock.Task{Boards: []stock.Board{bent, flat}, Demands: []stock.Demand{short}})
	if len(p.Layouts) != 1 || p.Layouts[0].Board != 0 || len(p.Misfits) > 0 { // 10 · (700/1600)² = 1.9
		t.Errorf("short parts: %+v", p.Layouts)
	}
	p = solve(t, stock.Task{Boards: []stock.Board{bent, flat}, Demands: []stock.Demand{long}})
	if len(p.Layouts) != 1 || p.Layouts[0].Board != 1 {
		t.Errorf("the long part: %+v", p.Layouts)
	}
	p = solve(t, stock.Task{Boards: []stock.Board{bent}, Demands: []stock.Demand{long}})
	if len(p.Misfits) != 1 || p.Misfits[0].Board != -1 {
		t.Errorf("the long part of the bent board: %+v", p)
	}
	flat.Width = bent.Width // but for the bow its twin
	p = solve(t, stock.Task{Boards: []stock.Board{bent, flat}, Demands: []stock.Demand{long}})
	if len(p.Layouts) != 1 || p.Layouts[0].Board != 1 {
		t.Errorf("the long part of twins: %+v", p)
	}
}

// A part as wide as a cupped board is too thin there; its strips are not, so that it is glued up.
func TestCuppedBoardsYieldStrips(t *testing.T) {
	cupped := one(1600, 320, 25)
	cupped.Cup = 6
	panel := part("panel", 700, 300, 22, 1)
	panel.Glue = true
	p := solve(t, stock.Task{Boards: []stock.Board{cupped}, Demands: []stock.Demand{panel}})
	if len(p.Glued) != 1 || p.Glued[0].Strips != 2 || len(p.Misfits) > 0 {
		t.Errorf("%+v", p)
	}
	cupped.Cup = 3
	if p = solve(t, stock.Task{Boards: []stock.Board{cupped}, Demands: []stock.Demand{panel}}); len(p.Glued) != 0 || len(p.Misfits) > 0 {
		t.Errorf("3 mm of cup are 2.6 in it: %+v", p)
	}
}

// Parts of a run along the grain that differ in thickness each may lose no more than may be planed off.
func TestRunsOfSeveralThicknesses(t *testing.T) {
	for _, c := range []struct {
		planing float64
		fits    bool
	}{{0, true}, {10, true}, {5, false}} {
		p := solve(t, stock.Task{Boards: []stock.Board{one(1600, 200, 30)}, Saw: stock.Saw{Planing: c.planing},
			Demands: []stock.Demand{part("side", 400, 180, 20, 1), part("top", 600, 180, 27, 1)},
			Runs:    []stock.Run{{Name: "round", Parts: []int{0, 1}}}})
		if (len(p.Misfits) == 0) != c.fits {
			t.Errorf("%g mm may be planed off: %+v", c.planing, p.Misfits)
		}
	}
}
