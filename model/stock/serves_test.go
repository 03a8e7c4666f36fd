package stock

import "testing"

// A board of no timber serves any part, and a part of no timber comes from any board; else they are of one.
func TestBoardsServeTheirTimber(t *testing.T) {
	for _, c := range []struct {
		board, part string
		serves      bool
	}{{"oak", "oak", true}, {"oak", "ash", false}, {"", "ash", true}, {"oak", "", true}} {
		task := Task{Boards: []Board{{Timber: c.board, Length: 900, Width: 200, Thickness: 25}}}
		if got := task.Serves(0, Demand{Timber: c.part, Length: 400, Width: 100, Thickness: 22}); got != c.serves {
			t.Errorf("a part of %q from a board of %q: %v", c.part, c.board, got)
		}
	}
}

// A part that may lie either way has to come from the board either way: of 25 a cup of 3 in all the width leaves 22 across and
// 24.25 along, where the part lies over half of the width.
func TestBoardsServePartsThatTurn(t *testing.T) {
	for _, c := range []struct {
		thick, planing float64
		turn, serves   bool
	}{{24, 0, false, true}, {24, 0, true, false}, {22, 0, true, true}, {22, 2.5, true, true}, {22, 2, true, false}} {
		task := Task{Boards: []Board{{Length: 900, Width: 200, Thickness: 25, Warp: Warp{Cup: 3}}}, Saw: Saw{Planing: c.planing}}
		if got := task.Serves(0, Demand{Length: 200, Width: 100, Thickness: c.thick, Turn: c.turn}); got != c.serves {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// A run of several timbers comes from no board; one of several thicknesses from a board that is no more than may be planed off
// thicker than the thinnest.
func TestBoardsServeRuns(t *testing.T) {
	demands := []Demand{{Timber: "oak", Length: 400, Width: 100, Thickness: 20, Count: 1}, {Timber: "oak", Length: 300, Width: 100, Thickness: 24, Count: 1}}
	for _, c := range []struct {
		name   string
		change func(t *Task)
		serves bool
	}{
		{"of one timber", func(*Task) {}, true},
		{"of two timbers", func(t *Task) { t.Demands[1].Timber = "ash" }, false},
		{"planed by 5", func(t *Task) { t.Saw.Planing = 5 }, true},
		{"planed by 4", func(t *Task) { t.Saw.Planing = 4 }, false},
		{"too thin for the second", func(t *Task) { t.Boards[0].Thickness = 23 }, false},
		{"bent in the first", func(t *Task) { t.Boards[0].Bow = 30 }, false}, // 30 · (400/900)² = 5.9 of 5
		{"bent a little", func(t *Task) { t.Boards[0].Bow = 9 }, true},       // 1.8 of 5, and 1 of 1 in the second
	} {
		task := Task{Boards: []Board{{Length: 900, Width: 200, Thickness: 25}}, Demands: append([]Demand(nil), demands...)}
		c.change(&task)
		if got := task.ServesRun(0, Run{Parts: []int{0, 1}}); got != c.serves {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}
