package sheet

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/render/draw"
	"splaywright/render/table"
)

// onlyTables are the papers that are tables alone.
func onlyTables(paper string) bool { return paper != form.PaperDrawings && paper != form.PaperCautions }

// The tables of an example take at most one sheet more than they would if every sheet were filled to its foot.
func TestTablesSaveSheets(t *testing.T) {
	for name, p := range examplePieces(t) {
		pages := Papers(p, Options{Wants: onlyTables})
		used, room := 0.0, 0.0
		for _, page := range pages {
			low, high := page.Height, 0.0
			for _, it := range page.Items {
				if s, ok := it.(draw.Text); ok && (s.Layer == "table" || s.Layer == "mark") {
					low, high = min(low, s.At.Y), max(high, s.At.Y)
				}
			}
			used += high - low
			room = page.Height - 2*margin - 2*inset - smallBlock
		}
		if least := int(math.Ceil(used / room)); len(pages) > least+1 {
			t.Errorf("%s: the tables take %d sheets, and there is no more on them than on %d", name, len(pages), least)
		}
	}
}

// A paper may go on where another ends, but not where each is written by itself.
func TestPapersApartBeginOnSheetsOfTheirOwn(t *testing.T) {
	for name, p := range examplePieces(t) {
		w := &writer{set: set{o: Options{Apart: true}.fill(p), piece: p.Title}, piece: p}
		var items []*item
		all := table.All(p, p.Design.Style())
		for _, paper := range form.PaperNames {
			items = append(items, w.items(paper, table.Of(all, func(of string) bool { return of == paper }))...)
		}
		for i, how := range w.layOut(items) {
			if i > 0 && items[i-1].paper != items[i].paper && how != fresh {
				t.Errorf("%s: %s begins where %s ends", name, items[i].paper, items[i-1].paper)
			}
		}
	}
}

// What was tried without drawing is what is drawn: as many sheets, filled as far down.
func TestDrawnAsTried(t *testing.T) {
	for name, p := range examplePieces(t) {
		for _, size := range form.Sheets {
			o := Options{Sheet: size}.fill(p)
			w := &writer{set: set{o: o, piece: p.Title}, piece: p}
			items := w.items("", table.All(p, p.Design.Style()))
			to, sheets := way{opened: true}, 0
			for i, how := range w.layOut(items) {
				next := w.try(to, items[i], how)
				to, sheets = next.way, sheets+next.sheets
				w.lay(items[i], how)
				if math.Abs(to.y-w.y) > 1e-6 {
					t.Fatalf("%s on %s, %q: drawn down to %.2f mm, tried to %.2f", name, size, items[i].t.Title, w.y, to.y)
				}
			}
			if len(w.sheets) == 0 || len(w.sheets) != sheets {
				t.Errorf("%s on %s: %d sheets drawn, %d tried", name, size, len(w.sheets), sheets)
			}
		}
	}
}

// rowsOf is a table of rows of given heights; true: it belongs to the row above.
func rowsOf(heights []float64, goesOn []bool) *grid {
	g := &grid{}
	for i, h := range heights {
		first := table.Cell{Text: "x"}
		if goesOn[i] {
			first = table.Cell{}
		}
		g.rows = append(g.rows, gridRow{height: h})
		g.t.Rows = append(g.t.Rows, []table.Cell{first})
	}
	return g
}

func TestWhereATableGoesOn(t *testing.T) {
	for _, c := range []struct {
		name        string
		rows        string // "x" begins a group, "." goes on with it; each 5 mm high
		left, sheet float64
		want        []int
	}{
		{"all of it fits", "xxxxxx", 31.1, 100, nil},
		{"the last row would go on alone: two come with it", "xxxxxxx", 31.1, 100, []int{4}},
		{"no more would stay than go on", "xxxx", 16.1, 100, []int{3}},
		{"three go on by themselves", "xxxxxxxxx", 31.1, 100, []int{6}},
		{"a group stays together", "xxxx..xx", 26.1, 100, []int{3}},
		{"the rows that come with the last are a whole group", "xxxxx..x", 36.1, 100, []int{4}},
		{"over three sheets, the last with one row", "xxxxxxxxxxxxx", 31.1, 31.1, []int{6, 10}},
	} {
		heights, goesOn := make([]float64, len(c.rows)), make([]bool, len(c.rows))
		for i, r := range c.rows {
			heights[i], goesOn[i] = 5, r == '.'
		}
		got := rowsOf(heights, goesOn).stops(c.left, c.sheet)
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
				break
			}
		}
	}
}

// Whatever the rows, what stands on each sheet finds room there, and no sheet is left without a row.
func TestTablesGoOnWhereThereIsRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 60).Draw(t, "rows")
		heights, goesOn := make([]float64, n), make([]bool, n)
		for i := range heights {
			heights[i] = rapid.Float64Range(4.8, 30).Draw(t, "height")
			goesOn[i] = i > 0 && rapid.IntRange(0, 3).Draw(t, "group") == 0
		}
		left, sheet := rapid.Float64Range(0, 140).Draw(t, "left"), rapid.Float64Range(40, 140).Draw(t, "sheet")
		g := rowsOf(heights, goesOn)
		from := 0
		for k, at := range append(g.stops(left, sheet), n) {
			room := sheet
			if k == 0 {
				room = left
			}
			if k > 0 && at <= from {
				t.Fatalf("sheet %d begins and ends with row %d", k, at)
			}
			if h := g.high(from, at); h > room {
				t.Errorf("rows %d to %d are %.1f mm high, and there is room for %.1f", from, at, h, room)
			}
			from = at
		}
	})
}
