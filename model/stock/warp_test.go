package stock

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// slab is how thick a flat slab is to be had of a piece of a bent board, both faces planed: what its faces, sampled all over
// the piece, leave between the two parallel planes that lie best. Tilting the planes is tried out, by halving a convex
// miss. x0 and y0 are where the piece lies, from the board's middle.
func slab(b Board, length, width, x0, y0 float64) float64 {
	const n = 8
	high := func(x, y float64) float64 {
		x, y = x0+x, y0+y
		return 4*b.Bow*x*x/(b.Length*b.Length) + 4*b.Cup*y*y/(b.Width*b.Width) + b.Twist*x*y/(b.Length*b.Width)
	}
	spread := func(p, q float64) float64 {
		lo, hi := math.Inf(1), math.Inf(-1)
		for i := range n + 1 {
			for j := range n + 1 {
				x, y := length*(float64(i)/n-0.5), width*(float64(j)/n-0.5)
				h := high(x, y) - p*x - q*y
				lo, hi = min(lo, h), max(hi, h)
			}
		}
		return hi - lo
	}
	least := func(at float64, f func(float64) float64) float64 {
		lo, hi := -at, at
		for range 60 {
			a, c := lo+(hi-lo)/3, hi-(hi-lo)/3
			if f(a) < f(c) {
				hi = c
			} else {
				lo = a
			}
		}
		return f((lo + hi) / 2)
	}
	steep := 8 * (b.Bow + b.Cup + b.Twist) / min(b.Length, b.Width)
	return b.Thickness - least(steep, func(p float64) float64 { return least(steep, func(q float64) float64 { return spread(p, q) }) })
}

// What the formula leaves of a bent board is what planes laid over its sampled faces leave: as much for bow alone, cup
// alone, twist alone and bow with cup, wherever the piece lies; and never more for all three together.
func TestFlatAgainstPlanesLaidOverTheFaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(lo, hi float64, name string) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		b := Board{Length: mm(300, 3000, "length"), Width: mm(80, 400, "width"), Thickness: mm(20, 60, "thickness")}
		which := rapid.IntRange(1, 7).Draw(t, "bow 1, cup 2, twist 4")
		if which&1 != 0 {
			b.Bow = mm(0.1, 15, "bow")
		}
		if which&2 != 0 {
			b.Cup = mm(0.1, 8, "cup")
		}
		if which&4 != 0 {
			b.Twist = mm(0.1, 12, "twist")
		}
		l, w := b.Length*mm(0.1, 1, "long"), b.Width*mm(0.1, 1, "wide")
		x0, y0 := (b.Length-l)*mm(-0.5, 0.5, "x"), (b.Width-w)*mm(-0.5, 0.5, "y")
		got, want := b.Flat(l, w), slab(b, l, w, x0, y0)
		if got > want+1e-6 {
			t.Errorf("%.6f mm are promised of %+v for %.1f × %.1f, %.6f are there", got, b, l, w, want)
		}
		if which <= 4 && which != 0 && got < want-1e-6 {
			t.Errorf("%.6f mm are told of %+v for %.1f × %.1f, %.6f are there", got, b, l, w, want)
		}
	})
}

// Worked by hand, in inches where a source has them.
func TestFlatOfBoards(t *testing.T) {
	const in = 25.4
	long := Board{Length: 2400, Width: 200, Thickness: 25, Warp: Warp{Bow: 12, Cup: 2, Twist: 6}}
	for _, c := range []struct {
		name       string
		b          Board
		l, w, want float64
	}{
		{"2-1/4 in flattened whole comes to 2-1/16 (see Warp)", Board{Length: 60 * in, Width: 12 * in, Thickness: 2.25 * in, Warp: Warp{Cup: 3. / 16 * in}}, 60 * in, 12 * in, (2 + 1./16) * in},
		{"all of it", long, 2400, 200, 25 - 12 - 2 - 3},
		{"a quarter of the length, half the width", long, 600, 100, 25 - 12./16 - 2./4 - 6./16},
		{"longer than the board: no worse than the board", long, 3000, 200, 25 - 12 - 2 - 3},
		{"flat", Board{Length: 900, Width: 200, Thickness: 25}, 900, 200, 25},
	} {
		if got := c.b.Flat(c.l, c.w); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
}

func TestWarpThatCannotBe(t *testing.T) {
	for at, spoil := range map[string]func(*Board){
		"bow":   func(b *Board) { b.Bow = 900 },
		"cup":   func(b *Board) { b.Cup = -0.1 },
		"twist": func(b *Board) { b.Twist = math.NaN() },
	} {
		b := Board{Name: "shelf", Length: 900, Width: 200, Thickness: 25}
		spoil(&b)
		fault, ok := b.Check().(*Fault)
		if !ok || fault.At != at || !strings.Contains(fault.Text, "shelf") {
			t.Errorf("%s: %v", at, fault)
		}
	}
}

// A plan of a board that bends too far for a part is no plan; the verifier bends the board by itself.
func TestVerifierBendsBoards(t *testing.T) {
	for _, c := range []struct {
		name string
		warp Warp
		says string
	}{
		{"top keeps 22.001 mm of cup", Warp{Cup: 2.999 * 200 * 200 / (150. * 150)}, ""},
		{"top keeps 21.999", Warp{Cup: 3.001 * 200 * 200 / (150. * 150)}, "top of 22 mm does not come"},
		{"rail keeps 22.001 mm of bow", Warp{Bow: 2.999 * 1000 * 1000 / (600. * 600)}, ""},
		{"rail keeps 21.999", Warp{Bow: 3.001 * 1000 * 1000 / (600. * 600)}, "rail of 22 mm does not come"},
		{"top keeps 22.001 mm of twist", Warp{Twist: 2.999 * 2 * 1000 * 200 / (400. * 150)}, ""},
		{"top keeps 21.999 ", Warp{Twist: 3.001 * 2 * 1000 * 200 / (400. * 150)}, "top of 22 mm does not come"},
	} {
		task, plan := good()
		task.Boards[0].Warp = c.warp
		switch err := Verify(task, plan); {
		case c.says == "" && err != nil:
			t.Errorf("%s: %v", c.name, err)
		case c.says != "" && (err == nil || !strings.Contains(err.Error(), c.says)):
			t.Errorf("%s: %v", c.name, err)
		}
	}
	task, plan := opened()
	task.Boards[0].Thickness, task.Boards[0].Bow = 27, 1.01
	whole := task.Runs[0].Whole(task)
	task.Boards[0].Bow *= math.Pow(task.Boards[0].Length/whole.Length, 2)
	if err := Verify(task, plan); err == nil || !strings.Contains(err.Error(), "to be resawn") {
		t.Errorf("26 mm of a board of 27 that bends by 1.01: %v", err)
	}
	task.Boards[0].Bow *= 0.99 / 1.01
	if err := Verify(task, plan); err != nil {
		t.Errorf("26 mm of a board of 27 that bends by 0.99: %v", err)
	}
	if split := task.Runs[0].Split(task, 0); math.Abs(split[0]-12.005) > 1e-9 || math.Abs(split[1]-12.005) > 1e-9 {
		t.Errorf("halves %v", split)
	}
}

// What a layout says of flattening is of its worst piece.
func TestFlattened(t *testing.T) {
	task, plan := good()
	if _, _, ok := plan.Layouts[0].Flattened(task); ok {
		t.Error("of a flat board")
	}
	task.Boards[0].Bow = 5
	least, most, ok := plan.Layouts[0].Flattened(task)
	if want := 5 * 0.6 * 0.6; !ok || math.Abs(most-want) > 1e-9 || math.Abs(least-(25-want)) > 1e-9 {
		t.Errorf("%g left, %g lost", least, most)
	}
	task, plan = opened()
	task.Boards[0].Bow = 0.5
	whole := task.Runs[0].Whole(task)
	if least, _, ok := plan.Layouts[0].Flattened(task); !ok || math.Abs(least-task.Boards[0].Flat(whole.Length, whole.Width)) > 1e-9 {
		t.Errorf("what is resawn: %g", least)
	}
}
