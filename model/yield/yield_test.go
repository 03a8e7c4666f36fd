package yield

import (
	"context"
	"errors"
	"testing"

	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/stock"
)

// Every part of the piece is wanted once, in its rough size; the two sides are one kind of board.
func TestTaskWantsEveryPartOnce(t *testing.T) {
	p := form.Build(formtest.Full())
	task := Task(p)
	wanted := 0
	for _, d := range task.Demands {
		wanted += d.Count
		q := p.Part(d.ID)
		if q == nil {
			t.Fatalf("%q is no part", d.ID)
		}
		if d.Length != q.Rough.Length.MM() || d.Width != q.Rough.Width.MM() || d.Thickness != q.Rough.Thickness.MM() {
			t.Errorf("%s: %+v, rough %+v", d.ID, d, q.Rough)
		}
	}
	if wanted != len(p.Parts) {
		t.Errorf("%d boards wanted for %d parts", wanted, len(p.Parts))
	}
	for _, d := range task.Demands {
		if d.ID == "side-left" && (d.Count != 2 || d.Name != "Side, left and side, right") {
			t.Errorf("sides: %d %q", d.Count, d.Name)
		}
	}
	if err := task.Check(); err != nil {
		t.Error(err)
	}
}

// The grain runs over the corners when side, top and side lie in one board in that order.
func TestARunGoesRoundThePiece(t *testing.T) {
	d := formtest.WorkedExample()
	if task := Task(form.Build(d)); len(task.Runs) > 0 {
		t.Errorf("a run that nobody asked for: %+v", task.Runs)
	}
	d.Plan.Run = true
	task := Task(form.Build(d))
	if len(task.Runs) != 1 {
		t.Fatalf("runs: %+v", task.Runs)
	}
	var ids []string
	for _, k := range task.Runs[0].Parts {
		ids = append(ids, task.Demands[k].ID)
	}
	if len(ids) != 3 || ids[0] != "side-left" || ids[1] != "top" || ids[2] != "side-left" {
		t.Errorf("the run is %v", ids)
	}
	if err := task.Check(); err != nil {
		t.Error(err)
	}
}

func TestSawAndBoardsComeFromTheDesign(t *testing.T) {
	d := formtest.WorkedExample()
	d.OnHand = []stock.Board{{Name: "plank", Length: 2000, Width: 300, Thickness: 27}}
	d.Plan = form.Plan{TrimEnds: 20, TrimEdges: 5, Keep: 150, First: form.RipFirst}
	task := Task(form.Build(d))
	if s := task.Saw; s.TrimEnds != 20 || s.TrimEdges != 5 || s.Keep != 150 || s.First != stock.RipFirst || s.Kerf != d.Saw.Kerf.MM() {
		t.Errorf("%+v", s)
	}
	if len(task.Boards) != 1 || task.Boards[0].Name != "plank" {
		t.Errorf("%+v", task.Boards)
	}
}

// The step's parts out of one plank: every part has its place, and the verifier agrees.
func TestTheStepOutOfOnePlank(t *testing.T) {
	d := formtest.WorkedExample()
	d.Allowance = form.Allowance{Length: 25, Width: 6, Thickness: 3}
	d.OnHand = []stock.Board{{Name: "plank", Length: 1300, Width: 300, Thickness: 27}}
	r, err := Solve(context.Background(), form.Build(d))
	if err != nil {
		t.Fatal(err)
	}
	if r.Short() || len(r.Plan.Layouts) != 1 {
		t.Fatalf("%+v", r.Plan)
	}
	placed := 0
	r.Plan.Layouts[0].Each(func(q *stock.Piece, _ int) {
		if q.Kind == stock.Part {
			placed++
		}
	})
	if placed != 3 || len(r.Parts[1]) != 2 {
		t.Errorf("%d parts are placed; the sides are %v", placed, r.Parts)
	}
	d.OnHand[0].Length = 900
	if r, err = Solve(context.Background(), form.Build(d)); err != nil || !r.Short() {
		t.Errorf("a plank too short: %v, %+v", err, r.Plan)
	}
	d.OnHand = nil
	if _, err = Solve(context.Background(), form.Build(d)); !errors.Is(err, ErrNoBoards) {
		t.Errorf("no boards: %v", err)
	}
}

// What is lost in flattening is the allowance of the thickness, 3/16 in: 7/8 leaves 11/16 clean and 2 1/4 leaves 2 1/16,
// neither a 64th more. https://www.woodweb.com/knowledge_base/RoughSawn_Thickness_Versus.html ;
// https://thelumbershack.co/thickness-is-lost-during-flattening/ . Wood of 1 1/16 green shrinks as that of 15/16 did, to
// 0.992, and leaves 0.80.
func TestUsableThickness(t *testing.T) {
	const in = 25.4
	for _, c := range []struct{ board, clean float64 }{{7. / 8, 11. / 16}, {2.25, 2 + 1./16}, {17. / 16 * (7. / 8) / (15. / 16), 0.80}} {
		for _, thick := range []float64{c.clean, c.clean + 1./64} {
			d := formtest.WorkedExample()
			d.Boards.Top.Thickness, d.Boards.Side.Thickness = measure.Length(thick*in), measure.Length(thick*in)
			d.Corners.Joint, d.Corners.Screws, d.Size.Height, d.Size.Width = form.Butt, nil, 400, 600
			d.Allowance = form.Allowance{Thickness: 3 * measure.Inch / 16}
			d.OnHand = []stock.Board{{Name: "plank", Length: 3000, Width: 300, Thickness: c.board * in}}
			r, err := Solve(context.Background(), form.Build(d))
			if err != nil {
				t.Fatal(err)
			}
			if fits := !r.Short(); fits != (thick == c.clean) {
				t.Errorf("%.3f in from %.3f in: %v", thick, c.board, fits)
			}
		}
	}
}

// The examples that name boards can be cut from them.
func TestExamplesWithBoardsCanBeCut(t *testing.T) {
	seen := 0
	for _, e := range filetest.Examples(t) {
		d := e.Design
		if len(d.OnHand) == 0 {
			continue
		}
		seen++
		r, err := Solve(context.Background(), form.Build(d))
		if err != nil || r.Short() || !r.Plan.Proven {
			t.Errorf("%s: %v, short %t, proven %t", e.Name, err, r.Short(), r.Plan.Proven)
		}
	}
	if seen < 2 {
		t.Errorf("%d examples name boards on hand, want two", seen)
	}
}

func BenchmarkPlanOfAStool(b *testing.B) {
	d := formtest.Full()
	knot := func(x, y float64) stock.Avoid { return stock.Avoid{What: "knot", X: x, Y: y, Diameter: 30} }
	d.OnHand = []stock.Board{
		{Name: "a", Length: 1100, Width: 280, Thickness: 30, Avoid: []stock.Avoid{knot(200, 60), knot(700, 200)}},
		{Name: "b", Length: 900, Width: 280, Thickness: 28, Avoid: []stock.Avoid{knot(100, 60), knot(600, 120)}},
		{Name: "c", Length: 800, Width: 120, Thickness: 28, Avoid: []stock.Avoid{knot(300, 60), knot(500, 20)}},
	}
	p := form.Build(d)
	for b.Loop() {
		if _, err := Solve(context.Background(), p); err != nil {
			b.Fatal(err)
		}
	}
}

// A long strip beside the parts is kept where the least width says so, and not where one figure is for both sides.
func TestAStripIsKept(t *testing.T) {
	for _, c := range []struct {
		long, wide measure.Length
		want       int
	}{{0, 0, 0}, {200, 0, 0}, {200, 40, 1}, {0, 40, 1}, {200, 51, 0}} {
		d := formtest.Butt()
		d.Plan = form.Plan{Keep: c.long, KeepWidth: c.wide, First: form.RipFirst}
		p := form.Build(d)
		long := 0.0
		for _, q := range p.Parts {
			long += q.Rough.Length.MM() + d.Saw.Kerf.MM()
		}
		p.Design.OnHand = []stock.Board{{Name: "plank", Length: long, Width: p.Parts[0].Rough.Width.MM() + d.Saw.Kerf.MM() + 50, Thickness: 40}}
		r, err := Solve(context.Background(), p)
		if err != nil || len(r.Plan.Layouts) != 1 {
			t.Fatal(err, r.Plan)
		}
		kept := 0
		r.Plan.Layouts[0].Each(func(q *stock.Piece, _ int) {
			if q.Kind == stock.Offcut {
				kept++
			}
		})
		if kept != c.want {
			t.Errorf("from %v by %v: %d kept, want %d", c.long, c.wide, kept, c.want)
		}
	}
}
