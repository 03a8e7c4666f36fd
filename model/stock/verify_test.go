package stock

import (
	"math"
	"strings"
	"testing"
)

// good is a plan made by hand: a board of 1000 by 200 with a knot, two parts and an offcut.
func good() (Task, Plan) {
	t := Task{
		Boards: []Board{{Name: "shelf", Length: 1000, Width: 200, Thickness: 25,
			Avoid: []Avoid{{What: "knot", From: RightFar, X: 100, Y: 20, Length: 40, Width: 30}}}},
		Demands: []Demand{
			{Name: "top", Length: 400, Width: 150, Thickness: 22, Count: 1},
			{Name: "rail", Length: 600, Width: 30, Thickness: 22, Count: 1}},
		Saw: Saw{Kerf: 3, TrimEnds: 5, Keep: 40},
	}
	top := &Piece{Rect: Rect{5, 33, 405, 183}, Kind: Part}
	rail := &Piece{Rect: Rect{5, 0, 605, 30}, Kind: Part, Demand: 1}
	root := &Piece{Rect: Rect{5, 0, 995, 200}, Kind: Rip, Pieces: []*Piece{
		{Rect: Rect{5, 0, 995, 30}, Kind: Crosscut, Pieces: []*Piece{rail, {Rect: Rect{608, 0, 995, 30}}}},
		{Rect: Rect{5, 33, 995, 200}, Kind: Crosscut, Pieces: []*Piece{
			{Rect: Rect{5, 33, 405, 200}, Kind: Rip, Pieces: []*Piece{top, {Rect: Rect{5, 186, 405, 200}}}},
			{Rect: Rect{408, 33, 995, 200}, Kind: Offcut}}}}}
	return t, Plan{Layouts: []Layout{{Board: 0, Root: root}}, Cost: 200_000, Bound: 200_000, Proven: true}
}

func TestGoodPlanPasses(t *testing.T) {
	task, plan := good()
	if err := Verify(task, plan); err != nil {
		t.Fatal(err)
	}
	b := plan.Balance(task)
	if b.Parts != 400*150+600*30 || b.Offcuts != 587*167 || math.Abs(b.Waste-(b.Boards-b.Parts-b.Offcuts)) > 1e-9 {
		t.Errorf("%+v", b)
	}
	cuts := plan.Layouts[0].Cuts(task)
	if len(cuts) != 4 || cuts[0] != (Cut{Kind: Rip, At: 30, From: 5, To: 995, KeepNear: true, KeepFar: true}) {
		t.Errorf("%+v", cuts)
	}
	if c := cuts[1]; c.Kind != Crosscut || c.At != 605 || c.KeepFar {
		t.Errorf("the rail's end: %+v", c)
	}
}

// Each change spoils the plan in one way and the verifier must say so.
func TestVerifierFindsFaults(t *testing.T) {
	for _, c := range []struct {
		name, says string
		spoil      func(*Task, *Plan)
	}{
		{"knot in the part", "lies on knot", func(t *Task, _ *Plan) { t.Boards[0].Avoid[0].X = 700 }},
		{"round knot", "lies on hole", func(t *Task, _ *Plan) {
			t.Boards[0].Avoid = []Avoid{{What: "hole", X: 200, Y: 195, Diameter: 30}}
		}},
		{"outline", "edge runs through", func(t *Task, _ *Plan) {
			t.Boards[0].Outline = []Point{{0, 0}, {1000, 0}, {1000, 200}, {0, 170}}
		}},
		{"beside the wood", "beside the wood", func(t *Task, _ *Plan) {
			t.Boards[0].Outline = []Point{{700, 0}, {1000, 0}, {1000, 200}, {700, 200}}
		}},
		{"kerf", "for the saw", func(t *Task, _ *Plan) { t.Saw.Kerf = 4 }},
		{"trim", "in the trim", func(t *Task, _ *Plan) { t.Saw.TrimEnds = 6 }},
		{"size", "comes out", func(t *Task, _ *Plan) { t.Demands[0].Width = 151 }},
		{"grain", "runs across", func(_ *Task, p *Plan) { piece(p, 0).Turned = true }},
		{"count", "wanted", func(t *Task, _ *Plan) { t.Demands[1].Count = 2 }},
		{"thickness", "does not come from", func(t *Task, _ *Plan) { t.Demands[0].Thickness = 26 }},
		{"planing", "does not come from", func(t *Task, _ *Plan) { t.Saw.Planing = 2 }},
		{"boards", "on hand", func(_ *Task, p *Plan) { p.Layouts = append(p.Layouts, p.Layouts[0]) }},
		{"cost", "cost stated", func(_ *Task, p *Plan) { p.Cost = 1 }},
		{"proof", "called proven", func(_ *Task, p *Plan) { p.Bound = 1 }},
		{"stages", "direction of cut", func(t *Task, _ *Plan) { t.Saw.Stages = 2 }},
		{"first cut", "wrong way", func(t *Task, _ *Plan) { t.Saw.First = CrosscutFirst }},
		{"first cut across", "wrong way", func(t *Task, p *Plan) {
			t.Saw.First = RipFirst
			p.Layouts[0].Root = p.Layouts[0].Root.Pieces[1]
		}},
		{"thickness in a run", "rail of 26 mm does not come", func(t *Task, p *Plan) {
			t.Runs, t.Demands[1].Thickness = []Run{{Name: "r", Parts: []int{0, 1}}}, 26
			piece(p, 0).Run, piece(p, 1).Run, piece(p, 1).Nth = 1, 1, 1
		}},
		{"timber", "does not come from", func(t *Task, _ *Plan) { t.Boards[0].Timber, t.Demands[0].Timber = "ash", "oak" }},
		{"not through", "right through", func(_ *Task, p *Plan) { p.Layouts[0].Root.Pieces[0].X2 = 900 }},
		{"outside the piece", "outside the piece", func(_ *Task, p *Plan) { p.Layouts[0].Root.Pieces[1].Y2 = 201 }},
		{"run", "run", func(t *Task, p *Plan) {
			t.Runs = []Run{{Name: "r", Parts: []int{1, 0}}}
			piece(p, 0).Run, piece(p, 1).Run = 1, 1
			piece(p, 0).Nth = 1
		}},
		{"glue-up", "do not make", func(_ *Task, p *Plan) { p.Glued = []GlueUp{{Demand: 0, Strips: 2, Width: 70}} }},
	} {
		task, plan := good()
		c.spoil(&task, &plan)
		err := Verify(task, plan)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func piece(p *Plan, demand int) (found *Piece) {
	p.Layouts[0].Each(func(q *Piece, _ int) {
		if q.Kind == Part && q.Demand == demand {
			found = q
		}
	})
	return found
}

func TestImpossibleTasks(t *testing.T) {
	for name, spoil := range map[string]func(*Task){
		"no length":       func(t *Task) { t.Boards[0].Length = 0 },
		"outline outside": func(t *Task) { t.Boards[0].Outline = []Point{{0, 0}, {1001, 0}, {500, 200}} },
		"outline crossed": func(t *Task) { t.Boards[0].Outline = []Point{{0, 0}, {900, 150}, {900, 0}, {0, 200}} },
		"two corners":     func(t *Task) { t.Boards[0].Outline = []Point{{0, 0}, {900, 150}} },
		"sizeless knot":   func(t *Task) { t.Boards[0].Avoid[0].Length = 0 },
		"both shapes":     func(t *Task) { t.Boards[0].Avoid[0].Diameter = 5 },
		"half priced":     func(t *Task) { t.Boards = append(t.Boards, t.Boards[0]); t.Boards[0].Price = 5 },
		"negative kerf":   func(t *Task) { t.Saw.Kerf = -1 },
		"not a number":    func(t *Task) { t.Demands[0].Width = math.NaN() },
		"run of one":      func(t *Task) { t.Runs = []Run{{Parts: []int{0}}} },
		"run too often":   func(t *Task) { t.Runs = []Run{{Parts: []int{0, 0}}} },
		"run of nothing":  func(t *Task) { t.Runs = []Run{{Parts: []int{0, 5}}} },
	} {
		task, _ := good()
		spoil(&task)
		if task.Check() == nil {
			t.Errorf("%s: accepted", name)
		}
	}
	task, _ := good()
	if err := task.Check(); err != nil {
		t.Error(err)
	}
}

func TestTheBoardWithoutAPriceIsNamed(t *testing.T) {
	task, _ := good()
	task.Boards = append(task.Boards, task.Boards[0], task.Boards[0])
	task.Boards[0].Price, task.Boards[1].Name, task.Boards[2].Name = 5, "barn door", "shelf"
	if err := task.Check(); err == nil || !strings.Contains(err.Error(), `1 of 3 boards have a price, "barn door" has none`) {
		t.Errorf("%v", err)
	}
}

func TestPlacesAreMeasuredFromEndAndEdge(t *testing.T) {
	b := Board{Length: 1000, Width: 200, Thickness: 25}
	for _, c := range []struct {
		a    Avoid
		want Rect
	}{
		{Avoid{From: LeftNear, X: 100, Y: 20, Length: 40, Width: 30}, Rect{100, 20, 140, 50}},
		{Avoid{From: RightNear, X: 100, Y: 20, Length: 40, Width: 30}, Rect{860, 20, 900, 50}},
		{Avoid{From: LeftFar, X: 100, Y: 20, Length: 40, Width: 30}, Rect{100, 150, 140, 180}},
		{Avoid{From: RightFar, X: 100, Y: 20, Length: 40, Width: 30}, Rect{860, 150, 900, 180}},
		{Avoid{From: RightFar, X: 100, Y: 20, Diameter: 20}, Rect{890, 170, 910, 190}},
	} {
		if got := c.a.On(b).Rect; got != c.want {
			t.Errorf("%+v: %+v, want %+v", c.a, got, c.want)
		}
	}
}

// opened is a plan made by hand of four walls out of two boards that are sawn from one: a front of 300 and an end of 200,
// the other end and the back under them, the saw 3 wide, the cut through the thickness 2.
func opened() (Task, Plan) {
	t := Task{
		Boards:  []Board{{Name: "plank", Length: 520, Width: 130, Thickness: 26}},
		Demands: []Demand{{Name: "long", Length: 300, Width: 120, Thickness: 12, Count: 2}, {Name: "short", Length: 200, Width: 120, Thickness: 12, Count: 2}},
		Runs:    []Run{{Name: "walls", Kind: Resawn, Parts: []int{0, 1, 0, 1}, Row: 2}},
		Saw:     Saw{Kerf: 3, Resaw: 2},
	}
	part := func(x1, x2 float64, demand, nth int) *Piece {
		return &Piece{Rect: Rect{x1, 0, x2, 120}, Kind: Part, Demand: demand, Run: 1, Nth: nth}
	}
	block := Rect{0, 0, 503, 120}
	walls := &Piece{Rect: block, Kind: Resaw, Run: 1, Pieces: []*Piece{
		{Rect: block, Kind: Crosscut, Run: 1, Pieces: []*Piece{part(0, 300, 0, 0), part(303, 503, 1, 1)}},
		{Rect: block, Kind: Crosscut, Run: 1, Pieces: []*Piece{part(0, 200, 1, 3), part(203, 503, 0, 2)}}}}
	root := &Piece{Rect: Rect{0, 0, 520, 130}, Kind: Rip, Pieces: []*Piece{
		{Rect: Rect{0, 0, 520, 120}, Kind: Crosscut, Pieces: []*Piece{walls, {Rect: Rect{506, 0, 520, 120}}}},
		{Rect: Rect{0, 123, 520, 130}}}}
	return t, Plan{Layouts: []Layout{{Board: 0, Root: root}}, Cost: 520 * 130, Bound: 520 * 130, Proven: true}
}

// Resawing comes when the board's face is cut up, in the middle of its thickness, and the cuts in the halves come last;
// each half has half of the face.
func TestResawnWallsPass(t *testing.T) {
	task, plan := opened()
	if err := Verify(task, plan); err != nil {
		t.Fatal(err)
	}
	if err := task.Check(); err != nil {
		t.Fatal(err)
	}
	if b := plan.Balance(task); math.Abs(b.Parts-(300+200)*120) > 1e-9 || math.Abs(b.Waste-(520*130-500*120)) > 1e-9 {
		t.Errorf("%+v", b)
	}
	cuts := plan.Layouts[0].Cuts(task)
	kinds := []Kind{Rip, Crosscut, Resaw, Crosscut, Crosscut}
	if len(cuts) != len(kinds) {
		t.Fatalf("%+v", cuts)
	}
	for i, c := range cuts {
		if c.Kind != kinds[i] || c.Leaf != max(0, i-2) {
			t.Errorf("cut %d: %+v", i+1, c)
		}
	}
	if c := cuts[2]; c.At != 12 || c.From != 0 || c.To != 503 { // 26 = 12 + 2 + 12
		t.Errorf("through the thickness: %+v", c)
	}
	if cuts[3].At != 300 || cuts[4].At != 200 {
		t.Errorf("in the halves: %+v", cuts[3:])
	}
}

// What a board is thicker than the run needs is shared out: each half keeps as much to be planed off.
func TestSpareThicknessIsSharedOut(t *testing.T) {
	task, plan := opened()
	task.Boards[0].Thickness, task.Demands[1].Thickness = 33, 14
	split := task.Runs[0].Split(task, 0)
	if need := task.Runs[0].Thickness(task); need != 14+2+14 {
		t.Errorf("%g mm are needed", need)
	}
	if len(split) != 2 || split[0] != 15.5 || split[1] != 15.5 || plan.Layouts[0].Cuts(task)[2].At != 15.5 {
		t.Errorf("%v", split)
	}
}

func TestVerifierFindsFaultsInWhatIsResawn(t *testing.T) {
	halves := func(p *Plan) []*Piece { return p.Layouts[0].Root.Pieces[0].Pieces[0].Pieces }
	for _, c := range []struct {
		name, says string
		spoil      func(*Task, *Plan)
	}{
		{"thickness", "to be resawn", func(t *Task, _ *Plan) { t.Boards[0].Thickness = 25.9 }},
		{"thickness of one part", "to be resawn", func(t *Task, _ *Plan) { t.Demands[1].Thickness = 12.1 }},
		{"saw", "to be resawn", func(t *Task, _ *Plan) { t.Saw.Resaw = 2.1 }},
		{"planing", "to be resawn", func(t *Task, _ *Plan) { t.Boards[0].Thickness, t.Saw.Planing = 30, 3 }},
		{"timber of one part", "to be resawn", func(t *Task, _ *Plan) { t.Boards[0].Timber, t.Demands[1].Timber = "oak", "ash" }},
		{"both from the left", "does not lie over itself", func(_ *Task, p *Plan) {
			end, back := halves(p)[1].Pieces[0], halves(p)[1].Pieces[1]
			back.X1, back.X2, end.X1, end.X2 = 0, 300, 303, 503
			halves(p)[1].Pieces[0], halves(p)[1].Pieces[1] = back, end
		}},
		{"order", "out of order", func(_ *Task, p *Plan) {
			halves(p)[0].Pieces[0].Nth, halves(p)[1].Pieces[1].Nth = 2, 0
			halves(p)[0].Pieces[1].Nth = 1
			halves(p)[1].Pieces[0].Nth = 1
		}},
		{"off the edge", "does not lie over itself", func(_ *Task, p *Plan) {
			for _, q := range halves(p)[1].Pieces {
				q.Y1, q.Y2 = 3, 123
			}
		}},
		{"gap in the grain", "does not run on", func(_ *Task, p *Plan) { halves(p)[0].Pieces[1].X1++; halves(p)[0].Pieces[1].X2++ }},
		{"one is missing", "3 parts here", func(_ *Task, p *Plan) { halves(p)[1].Pieces[0].Kind = Waste }},
	} {
		task, plan := opened()
		c.spoil(&task, &plan)
		if err := Verify(task, plan); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	for name, spoil := range map[string]func(*Run){
		"three in rows of two": func(r *Run) { r.Parts = r.Parts[:3] },
		"one row":              func(r *Run) { r.Row = 4 },
		"names":                func(r *Run) { r.IDs = []string{"front"} },
		"negative":             func(r *Run) { r.Row = -1 },
	} {
		task, _ := opened()
		if spoil(&task.Runs[0]); task.Check() == nil {
			t.Errorf("%s: accepted", name)
		}
	}
}
