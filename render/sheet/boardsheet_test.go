package sheet

import (
	"context"
	"math"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/yield"
	"splaywright/render/draw"
)

func planned(t *testing.T) (*form.Piece, yield.Result) {
	t.Helper()
	d := formtest.Full()
	d.Plan.Keep = 120
	d.OnHand = []stock.Board{
		{Name: "gate rail", Length: 1050, Width: 290, Thickness: 28, Avoid: []stock.Avoid{
			{What: "hinge holes", From: stock.RightNear, X: 30, Length: 120, Width: 60}, {What: "knot", X: 400, Y: 150, Diameter: 40}}},
		{Name: "short end", Length: 720, Width: 300, Thickness: 27, Count: 2, Outline: []stock.Point{{X: 0, Y: 0}, {X: 720, Y: 10}, {X: 720, Y: 300}, {X: 0, Y: 300}}},
		{Name: "lath", Length: 900, Width: 90, Thickness: 27},
	}
	p := model.Derive(d)
	r, err := yield.Solve(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	return p, r
}

// Slabs with waney edges, splits and knots, planks that are only just long enough, narrow strips: no ring lies on a word, and
// no word on another.
func TestBoardPlansAreLegible(t *testing.T) {
	for _, d := range []form.Design{formtest.Full(), formtest.WorkedExample()} {
		for n, board := range []stock.Board{
			{Name: "slab", Length: 2400, Width: 400, Thickness: 40, Count: 2, Outline: []stock.Point{{X: 0, Y: 40}, {X: 900, Y: 10}, {X: 2400, Y: 20}, {X: 2400, Y: 380}, {X: 1300, Y: 400}, {X: 0, Y: 370}},
				Avoid: []stock.Avoid{{What: "split", X: 0, Y: 190, Length: 150, Width: 20}, {What: "knot", X: 900, Y: 200, Diameter: 60}}},
			{Name: "plank", Length: 1400, Width: 290, Thickness: 40, Count: 3},
			{Name: "short end", Length: 720, Width: 300, Thickness: 40, Count: 6, Avoid: []stock.Avoid{{What: "sapwood", X: 0, Y: 0, Length: 720, Width: 12}}},
			{Name: "beam", Length: 4200, Width: 300, Thickness: 60},
		} {
			for _, first := range []string{"", form.CrosscutFirst, form.RipFirst} {
				d.OnHand, d.Plan = []stock.Board{board}, form.Plan{TrimEnds: 15, Keep: measure.Length(60 * (n % 2)), First: first, GlueUp: true}
				p := model.Derive(d)
				r, err := yield.Solve(context.Background(), p)
				if err != nil {
					t.Fatal(err)
				}
				legible(t, BoardPlan(p, r, Options{}))
			}
		}
	}
}

// Every board that is cut is drawn with its name, every part in it with its name, and all of it keeps
// to the sheet.
func TestBoardPlanShowsEveryPart(t *testing.T) {
	p, r := planned(t)
	pages := BoardPlan(p, r, Options{})
	all := ""
	for _, page := range pages {
		all += texts(page)
		b := draw.Bounds(page.Items)
		if b.Min.X < -0.01 || b.Min.Y < -0.01 || b.Max.X > page.Width+0.01 || b.Max.Y > page.Height+0.01 {
			t.Errorf("a page of %g × %g is drawn from %v to %v", page.Width, page.Height, b.Min, b.Max)
		}
	}
	for _, q := range p.Parts {
		if !strings.Contains(all, q.Mark+" "+q.Name) {
			t.Errorf("%s is not in the plan", q.Name)
		}
	}
	for _, l := range r.Plan.Layouts {
		if name := r.Task.Boards[l.Board].Name; !strings.Contains(all, name) {
			t.Errorf("%s is not drawn", name)
		}
	}
}

// A part is drawn at the scale that the sheet names: read back from the drawing, 449 mm are 449 mm.
func TestBoardsAreDrawnToScale(t *testing.T) {
	p, r := planned(t)
	pages := BoardPlan(p, r, Options{})
	scale, _ := boardScale(Options{}.fill(p), 247*longBoard/longestOf(r))
	sizes := map[string]bool{}
	for _, it := range pages[0].Items {
		if path, ok := it.(draw.Path); ok && path.Layer == "part" {
			b := draw.Bounds([]draw.Item{path})
			for _, d := range r.Task.Demands {
				if math.Abs(b.Width()/scale-d.Length) < 1e-6 && math.Abs(b.Height()/scale-d.Width) < 1e-6 {
					sizes[d.ID] = true
				}
			}
		}
	}
	if len(sizes) == 0 {
		t.Error("no part is drawn in its size")
	}
}

// On a board that tapers the × of waste and the name of an offcut stand on the wood, not beside it.
func TestMarksStandOnTheWood(t *testing.T) {
	const near, far = 300, 120 // mm, its width at the left end and at the right
	d := formtest.Butt()
	d.Size.Depth, d.Plan.Keep = 180, 100
	d.OnHand = []stock.Board{{Name: "slab", Length: 2400, Width: near, Thickness: 30, Outline: []stock.Point{{X: 0, Y: 0}, {X: 2400, Y: 0}, {X: 2400, Y: far}, {X: 0, Y: near}}}}
	p := model.Derive(d)
	r, err := yield.Solve(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	slab, marks, names := draw.EmptyBox(), []draw.Box{}, 0
	for _, it := range BoardPlan(p, r, Options{})[0].Items {
		switch it := it.(type) {
		case draw.Path:
			if b := draw.Bounds([]draw.Item{it}); it.Layer == "waste" {
				marks = append(marks, b)
			} else if it.Layer == "visible" && slab.Width() < b.Width() {
				slab = b
			}
		case draw.Text:
			if it.Text == "offcut" {
				marks = append(marks, draw.Bounds([]draw.Item{it}))
				names++
			}
		}
	}
	if names == 0 || len(marks) < 2 {
		t.Fatalf("%d offcuts are named, %d marks", names, len(marks))
	}
	for _, b := range marks {
		along := (b.Max.X - slab.Min.X) / slab.Width()
		if wood := slab.Min.Y + slab.Height()*(near+(far-near)*along)/near; b.Max.Y > wood {
			t.Errorf("a mark reaches %.1f mm off the wood: %+v", b.Max.Y-wood, b)
		}
	}
}

func longestOf(r yield.Result) float64 {
	longest := 0.
	for _, l := range r.Plan.Layouts {
		longest = max(longest, r.Task.Boards[l.Board].Length)
	}
	return longest
}

// The lines that hatch a knot stay inside it.
func TestHatchingStaysInTheKnot(t *testing.T) {
	c := draw.Point{X: 10, Y: 20}
	for _, x := range []float64{-20, -5, 0, 3, 4.9, 8} {
		a, b, ok := inCircle(draw.Point{X: x, Y: 0}, draw.Point{X: x + 40, Y: 40}, c, 5)
		if !ok {
			continue
		}
		for _, p := range []draw.Point{a, b} {
			if math.Hypot(p.X-c.X, p.Y-c.Y) > 5+1e-9 {
				t.Errorf("from %g the hatch reaches %v", x, p)
			}
		}
	}
}

// Every place that was kept clear of parts is named on its board, and no text of a board lies on another.
func TestWhatWasAvoidedIsNamed(t *testing.T) {
	p, r := planned(t)
	page := BoardPlan(p, r, Options{})[0]
	var boxes []draw.Box
	var words []string
	for _, it := range page.Items {
		if s, ok := it.(draw.Text); ok && s.Layer != "frame" {
			boxes, words = append(boxes, draw.Bounds([]draw.Item{s})), append(words, s.Text)
		}
	}
	for _, l := range r.Plan.Layouts {
		for _, a := range r.Task.Boards[l.Board].Avoid {
			if !strings.Contains(texts(page), a.What) {
				t.Errorf("%s is not named", a.What)
			}
		}
	}
	for i := range boxes {
		for j := range i {
			a, b := boxes[i], boxes[j]
			if a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y {
				t.Errorf("%q lies on %q", words[i], words[j])
			}
		}
	}
}
