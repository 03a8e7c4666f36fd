package yield

import (
	"context"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/stock"
	"splaywright/model/stock/sheet"
)

// sawn does the cuts of a board's list, one after the other, on the board less its trims, and returns the pieces that lie
// on the bench then. A cut that does not run from edge to edge of one piece fails the test.
func sawn(t interface{ Fatalf(string, ...any) }, task stock.Task, l stock.Layout) []stock.Rect {
	b, s := task.Boards[l.Board], task.Saw
	bench := []stock.Rect{{X1: s.TrimEnds, Y1: s.TrimEdges, X2: b.Length - s.TrimEnds, Y2: b.Width - s.TrimEdges}}
	near := func(x, y float64) bool { return math.Abs(x-y) < 1e-6 }
	for n, c := range l.Cuts(task) {
		if c.Of != nil {
			continue
		}
		at := -1
		for i, r := range bench {
			if c.Kind == stock.Crosscut && near(c.From, r.Y1) && near(c.To, r.Y2) && c.At+s.Kerf > r.X1 && c.At < r.X2 ||
				c.Kind == stock.Rip && near(c.From, r.X1) && near(c.To, r.X2) && c.At+s.Kerf > r.Y1 && c.At < r.Y2 {
				at = i
			}
		}
		if at < 0 {
			t.Fatalf("cut %d, %+v, goes through none of %+v", n+1, c, bench)
		}
		one, two := bench[at], bench[at]
		if c.Kind == stock.Crosscut {
			one.X2, two.X1 = c.At, c.At+s.Kerf
		} else {
			one.Y2, two.Y1 = c.At, c.At+s.Kerf
		}
		bench = append(bench[:at], bench[at+1:]...)
		for i, r := range []stock.Rect{one, two} {
			if r.Length() <= 0 || r.Width() <= 0 {
				continue
			}
			if kept := [2]bool{c.KeepNear, c.KeepFar}[i]; !kept {
				for _, q := range partsIn(l, r) {
					t.Fatalf("cut %d calls waste what %+v lies in", n+1, q.Rect)
				}
			}
			bench = append(bench, r)
		}
	}
	return bench
}

// partsIn are the parts that lie in a rectangle.
func partsIn(l stock.Layout, r stock.Rect) (out []*stock.Piece) {
	l.Each(func(q *stock.Piece, _ int) {
		if x, y := (q.X1+q.X2)/2, (q.Y1+q.Y2)/2; q.Kind == stock.Part && x > r.X1 && x < r.X2 && y > r.Y1 && y < r.Y2 {
			out = append(out, q)
		}
	})
	return out
}

// freed fails where a part does not lie on the bench in its rough size, or by less than half a millimetre larger, when the
// list has been sawn.
func freed(t interface{ Fatalf(string, ...any) }, task stock.Task, p stock.Plan) {
	for _, l := range p.Layouts {
		bench := sawn(t, task, l)
		l.Each(func(q *stock.Piece, _ int) {
			if q.Kind != stock.Part && q.Kind != stock.Resaw || q.Kind == stock.Part && q.Run > 0 && task.Runs[q.Run-1].Kind == stock.Resawn {
				return
			}
			for _, r := range bench {
				if over := []float64{q.X1 - r.X1, r.X2 - q.X2, q.Y1 - r.Y1, r.Y2 - q.Y2}; slices.Min(over) > -1e-6 && slices.Max(over) < 0.5 {
					return
				}
			}
			t.Fatalf("%+v is not sawn free: %+v", q.Rect, bench)
		})
	}
}

// Whoever does the cuts of the list has every part in his hands, in its size, whatever the boards are like: with knots, with
// waney edges, hardly wider than a part, and sawn with blades thin and thick.
func TestTheCutsOfAListFreeEveryPart(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		mm := func(name string, from, to int) float64 { return float64(rapid.IntRange(from, to).Draw(rt, name)) }
		task := stock.Task{Saw: stock.Saw{Kerf: rapid.SampledFrom([]float64{0.5, 2.4, 3.2, 40}).Draw(rt, "kerf"), TrimEnds: mm("trim", 0, 20), TrimEdges: mm("edges", 0, 5),
			First: rapid.SampledFrom([]stock.First{stock.Either, stock.CrosscutFirst, stock.RipFirst}).Draw(rt, "first"), Keep: mm("keep", 0, 120)}}
		for i := range rapid.IntRange(1, 4).Draw(rt, "parts") {
			task.Demands = append(task.Demands, stock.Demand{Name: string(rune('a' + i)), Length: mm("length", 60, 500), Width: mm("width", 30, 200), Thickness: 20, Count: rapid.IntRange(1, 2).Draw(rt, "count")})
		}
		for range rapid.IntRange(1, 3).Draw(rt, "boards") {
			task.Boards = append(task.Boards, randomBoard(rt, task))
		}
		if n := task.Demands[0].Count; n == 2 && rapid.Bool().Draw(rt, "run") {
			task.Runs = []stock.Run{{Name: "run", Parts: []int{0, len(task.Demands) - 1}}}
		}
		if task.Check() != nil {
			return
		}
		ctx, stop := context.WithCancel(context.Background())
		stop()
		p, err := sheet.Solve(ctx, task)
		if err != nil {
			rt.Fatal(err)
		}
		if err := stock.Verify(task, p); err != nil {
			rt.Fatal(err)
		}
		freed(rt, task, p)
	})
}

// randomBoard is often as wide as a part, or by less than the saw wider.
func randomBoard(rt *rapid.T, task stock.Task) stock.Board {
	mm := func(name string, from, to int) float64 { return float64(rapid.IntRange(from, to).Draw(rt, name)) }
	d := rapid.SampledFrom(task.Demands).Draw(rt, "like")
	b := stock.Board{Name: "board", Thickness: 22, Length: mm("long", 200, 1500), Width: mm("wide", 60, 400)}
	if rapid.Bool().Draw(rt, "close") {
		b.Width = d.Width + 2*task.Saw.TrimEdges + mm("over", 0, 8)/2
		b.Length = d.Length + 2*task.Saw.TrimEnds + mm("longer", 0, 8)/2
	}
	if rapid.Bool().Draw(rt, "waney") {
		a, c := mm("near", 0, 30), mm("far", 0, 30)
		b.Outline = []stock.Point{{X: 0, Y: a}, {X: b.Length, Y: mm("other near", 0, 30)}, {X: b.Length, Y: b.Width - c}, {X: b.Length / 3, Y: b.Width}, {X: 0, Y: b.Width - c}}
	}
	for range rapid.IntRange(0, 2).Draw(rt, "knots") {
		b.Avoid = append(b.Avoid, stock.Avoid{What: "knot", From: stock.Corner(rapid.IntRange(0, 3).Draw(rt, "corner")), X: mm("x", 0, 300), Y: mm("y", 0, 60), Diameter: mm("across", 2, 60)})
	}
	return b
}
