package dimension

import (
	"fmt"
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"splaywright/export/png"
	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
)

var (
	ink  = draw.Ink{R: 20, G: 24, B: 28}
	wide = draw.Pen{Width: 0.5, Ink: ink}
)

func pt(x, y float64) draw.Point { return draw.Point{X: x, Y: y} }

// page puts a finished sketch on paper.
func page(k *Sketch) draw.Page {
	items := k.Finish()
	b := draw.Bounds(items).Grow(5)
	return draw.Page{Title: "sketch", Width: b.Width(), Height: b.Height(), Items: draw.Moved(items, draw.Point{X: -b.Min.X, Y: -b.Min.Y})}
}

func look(t *testing.T, name string, p draw.Page) {
	dir := os.Getenv("SPLAYWRIGHT_LOOK")
	if dir == "" {
		return
	}
	f, err := os.Create(dir + "/" + name + ".png")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Write(f, p, 6); err != nil {
		t.Fatal(err)
	}
}

// side is the true face of a splayed side with an arch, as a drawing of hand-made data.
func side() *Sketch {
	k := New(Practice(ink))
	p := []draw.Point{pt(0, 0), pt(100, -8), pt(100, 48), pt(0, 40), pt(0, 0)}
	k.Line(p, wide, "visible", "side")
	k.Linear(Below, p[0], p[1], "263.5", "side")
	k.Linear(Below, p[0], pt(10, 0), "20.1", "side")
	k.Linear(Below, pt(10, 0), pt(14, 0), "8", "side")
	k.Linear(Below, pt(14, 0), pt(60, 0), "115", "side")
	k.Linear(RightOf, p[1], p[2], "140", "side")
	k.Linear(RightOf, pt(100, 10), pt(100, 30), "50", "side")
	k.Running(LeftOf, Mark{pt(0, 0), "0", ""}, []Mark{{pt(0, 4), "10", ""}, {pt(0, 5), "12.5", ""}, {pt(0, 20), "50", ""}, {pt(0, 40), "100", ""}})
	k.Running(Above, Mark{pt(0, 40), "0", ""}, []Mark{{pt(30, 42.4), "75", ""}, {pt(31, 42.4), "77.5", ""}})
	k.Angle(p[0], -math.Atan2(8, 100), 0, [2]float64{100, 0}, []float64{70, 60, 50}, "4.6°", "splay.edges")
	k.Leader(pt(60, 20), true, "4 holes Ø5", "hole")
	k.Leader(pt(100, 20), false, "R 85", "arch")
	return k
}

func TestNothingOverlapsOnASide(t *testing.T) {
	p := page(side())
	look(t, "side", p)
	for _, o := range drawtest.Overlaps(p) {
		t.Error(o)
	}
}

func TestTheOverlapCheckSeesOverlaps(t *testing.T) {
	text := draw.Text{At: pt(50, 50), Size: 2.5, Text: "263.5"}
	for name, other := range map[string]draw.Item{
		"a text on it":        draw.Text{At: pt(54, 48), Size: 2.5, Turn: 90, Text: "20.1"},
		"a line through it":   draw.Path{Segs: draw.Polyline([]draw.Point{pt(40, 40), pt(60, 60)})},
		"a circle through it": draw.Path{Segs: draw.Circle(pt(50, 51), 3)},
	} {
		p := draw.Page{Width: 100, Height: 100, Items: []draw.Item{text, other}}
		if len(drawtest.Overlaps(p)) == 0 {
			t.Errorf("%s was not noticed", name)
		}
	}
	apart := draw.Page{Width: 100, Height: 100, Items: []draw.Item{text, draw.Path{Segs: draw.Polyline([]draw.Point{pt(40, 49), pt(70, 49)})}}}
	if got := drawtest.Overlaps(apart); len(got) != 0 {
		t.Errorf("a line below a text is no overlap: %v", got)
	}
}

// Whatever a sheet may ask for about a view (running rows have a side to themselves), no value lies on another or on a line.
func TestRandomDimensionsDoNotOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := New(Practice(ink))
		num := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		w, h := num("w", 60, 150), num("h", 40, 90)
		k.Line([]draw.Point{pt(0, 0), pt(w, 0), pt(w, h), pt(0, h), pt(0, 0)}, wide, "visible", "")
		label := rapid.SampledFrom([]string{"8", "20.1", "263.5", "10 3/8", "263.5 mm (10 3/8″)"})
		for i := range rapid.IntRange(0, 5).Draw(t, "linears") {
			s := [...]Side{Below, Above, RightOf}[rapid.IntRange(0, 2).Draw(t, "side")]
			grid := func(name string, lo, hi float64) float64 {
				return 7 * float64(rapid.IntRange(int(math.Ceil(lo/7)), int(hi/7)).Draw(t, name))
			}
			x, y := grid("x", 0, w-14), grid("y", 0, h-14)
			k.Linear(s, pt(x, y), pt(grid("to x", x+7, w), grid("to y", y+7, h)), label.Draw(t, fmt.Sprint("label ", i)), "")
		}
		marks := make([]Mark, rapid.IntRange(0, 9).Draw(t, "marks"))
		for i := range marks {
			marks[i] = Mark{At: pt(0, num("at", 0, h)), Label: label.Draw(t, "mark")}
		}
		if len(marks) > 0 {
			k.Running(LeftOf, Mark{At: pt(0, 0), Label: "0"}, marks)
		}
		k.Leader(pt(num("x", 0, w), num("y", 0, h)), true, "hole Ø25", "")
		for _, o := range drawtest.Overlaps(page(k)) {
			t.Error(o)
		}
	})
}

// Notes in one line and in two, with the places that they point at anywhere on a board: no line runs through a note, and
// none is shut in under the line of another.
func TestRandomNotesDoNotOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := New(Practice(ink))
		num := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		w, h := num("w", 60, 120), num("h", 20, 50)
		k.Line([]draw.Point{pt(0, 0), pt(w, 0), pt(w, h), pt(0, h), pt(0, 0)}, wide, "visible", "")
		marks := make([]Mark, rapid.IntRange(2, 7).Draw(t, "marks"))
		for i := range marks {
			marks[i] = Mark{At: pt(w, h*float64(i+1)/float64(len(marks))), Label: "214.0"}
		}
		k.Running(RightOf, Mark{At: pt(w, 0), Label: "0"}, marks)
		for i := range rapid.IntRange(2, 4).Draw(t, "notes") {
			text := rapid.SampledFrom([]string{"Ø25", "housing, 6.0 deep", "2 × Ø9.5 counterbore × 8.0\nØ4.4 clearance"}).Draw(t, "note")
			at := pt(w*(float64(i)+num("x", 0.2, 0.8))/4, h*num("y", 0.1, 0.9))
			k.Leader(at, true, text, "")
		}
		for _, o := range drawtest.Overlaps(page(k)) {
			t.Error(o)
		}
	})
}

func TestSpreadKeepsOrderAndRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOfN(rapid.Float64Range(0, 50), 1, 20).Draw(t, "want")
		for i := 1; i < len(want); i++ {
			want[i] = max(want[i], want[i-1])
		}
		got := spread(want, 3)
		for i := range got {
			if i > 0 && got[i]-got[i-1] < 3-1e-9 {
				t.Fatalf("%v lie nearer than 3", got)
			}
			if len(want) == 1 && got[0] != want[0] {
				t.Fatalf("a lone place moved from %v to %v", want, got)
			}
		}
	})
}

// A row with more values than it has room for has them in two columns: in the standard's smallest letters, none on
// another, and none much farther from its place than the half that is too many.
func TestACrowdedRowStandsInTwoColumns(t *testing.T) {
	for _, s := range []Side{LeftOf, RightOf, Above, Below} {
		for _, n := range []int{8, 22, 26} {
			k := New(Practice(ink))
			const long = 62.5
			k.Line([]draw.Point{pt(0, 0), pt(long, 0), pt(long, long), pt(0, long), pt(0, 0)}, wide, "visible", "board")
			at := func(u float64) draw.Point {
				if s.upright() {
					return pt(map[Side]float64{LeftOf: 0, RightOf: long}[s], u)
				}
				return pt(u, map[Side]float64{Below: 0, Above: long}[s])
			}
			var marks []Mark
			for i := 1; i < n; i++ {
				u := long * float64(i) / float64(n-1)
				marks = append(marks, Mark{at(u), fmt.Sprintf("%.1f", 4*u), "row"})
			}
			k.Running(s, Mark{at(0), "0", "row"}, marks)
			p := page(k)
			look(t, fmt.Sprintf("row %d %d", s, n), p)
			for _, v := range drawtest.Overlaps(p) {
				t.Errorf("%d values on side %d: %s", n, s, v)
			}
			columns, off := map[int]bool{}, 0.0
			edge := 0.0
			for _, it := range p.Items {
				if path, ok := it.(draw.Path); ok && path.Layer == "visible" {
					b := draw.Bounds([]draw.Item{path})
					if edge = b.Min.X; s.upright() {
						edge = b.Min.Y
					}
				}
			}
			for _, it := range p.Items {
				v, ok := it.(draw.Text)
				if !ok || v.Text == "0" {
					continue
				}
				if v.Size < 2.5 {
					t.Errorf("a value is %g mm high", v.Size)
				}
				var value float64
				fmt.Sscanf(v.Text, "%g", &value)
				u, w := v.At.Y+v.Size/2, v.At.X
				if !s.upright() {
					u, w = v.At.X-v.Size/2, v.At.Y
				}
				columns[int(math.Round(w))] = true
				off = max(off, math.Abs(u-edge-value/4))
			}
			if want := map[int]int{8: 1, 22: 2, 26: 2}[n]; len(columns) != want {
				t.Errorf("%d values on side %d stand in %d columns, want %d", n, s, len(columns), want)
			}
			if off > 4 {
				t.Errorf("%d values on side %d: one stands %.1f mm beside its place", n, s, off)
			}
		}
	}
}

// A mark stands well apart from a note where there is another place, and close to it rather than not at all.
func TestAMarkDoesNotReadOnFromANote(t *testing.T) {
	for _, c := range []struct {
		name   string
		places []draw.Point
		want   float64
	}{
		{"a farther place", []draw.Point{{X: 46, Y: 20}, {X: 60, Y: 20}}, 60},
		{"no other", []draw.Point{{X: 46, Y: 20}}, 46},
	} {
		k := New(Practice(draw.Ink{}))
		k.Line([]draw.Point{{}, {X: 100}, {X: 100, Y: 40}, {Y: 40}, {}}, draw.Pen{Width: 0.5}, "visible", "")
		k.Leader(draw.Point{X: 8, Y: 14}, true, "4 × pilot, centred", "", 45)
		k.Stamp(Stamp{Mark: "7"}, c.places)
		found := false
		for _, it := range k.Finish() {
			if m, ok := it.(draw.Text); ok && m.Layer == "mark" {
				found = true
				if m.At.X != c.want {
					t.Errorf("%s: the mark stands at %g, want %g", c.name, m.At.X, c.want)
				}
			}
		}
		if !found {
			t.Errorf("%s: no mark", c.name)
		}
	}
}

// What stands below the line of a note has that line to itself: no other note comes between them.
func TestNothingComesUnderTheShelfOfANote(t *testing.T) {
	for _, x := range []float64{30, 34, 38, 42, 46} {
		k := New(Practice(draw.Ink{}))
		k.Line([]draw.Point{{}, {X: 100}}, draw.Pen{Width: 0.5}, "visible", "")
		k.Leader(draw.Point{X: 20, Y: 4}, true, "a long line over it all\nshort", "", 60)
		k.Leader(draw.Point{X: x, Y: 2}, true, "top", "", 120, 60)
		var shelf draw.Box
		for _, it := range k.Finish() {
			switch n := it.(type) {
			case draw.Path:
				if len(n.Segs) == 3 && shelf.Width() == 0 {
					a, b := n.Segs[1].P[2], n.Segs[2].P[2]
					shelf = draw.Box{Min: draw.Point{X: min(a.X, b.X), Y: a.Y - 3}, Max: draw.Point{X: max(a.X, b.X), Y: a.Y}}
				}
			case draw.Text:
				if n.Text == "top" && draw.Bounds([]draw.Item{n}).Meets(shelf) {
					t.Errorf("pointing at %g the note stands at %v, under the shelf %v", x, n.At, shelf)
				}
			}
		}
	}
}
