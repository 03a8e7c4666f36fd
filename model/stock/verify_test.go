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
	cuts := plan.Layouts[0].Cuts(3)
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
		{"not through", "right through", func(_ *Task, p *Plan) { p.Layouts[0].Root.Pieces[0].X2 = 900 }},
		{"outside the piece", "outside the piece", func(_ *Task, p *Plan) { p.Layouts[0].Root.Pieces[1].Y2 = 201 }},
		{"run", "run", func(t *Task, p *Plan) {
			t.Runs = []Run{{Name: "r", Parts: []int{1, 0}}}
			piece(p, 0).Run, piece(p, 1).Run = 1, 1
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
