package sheet

import (
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// Every part has its name on the sheet, and the order stands below.
func TestTheSheetOfTheAssemblyNamesEveryPart(t *testing.T) {
	p := model.Derive(formtest.Full())
	var sheet *draw.Page
	for _, page := range Papers(p, Options{}) {
		if page.Title == "How it goes together" {
			sheet = &page
			break
		}
	}
	if sheet == nil {
		t.Fatal("no sheet shows how it goes together")
	}
	all := texts(*sheet)
	for _, q := range p.Parts {
		if !strings.Contains(all, q.Mark+" "+q.Name) {
			t.Errorf("%s is not named", q.Name)
		}
	}
	if !strings.Contains(all, "Order: ") {
		t.Error("the order is missing")
	}
}

func texts(p draw.Page) string {
	var b strings.Builder
	for _, it := range p.Items {
		if t, ok := it.(draw.Text); ok {
			b.WriteString(t.Text + "\n")
		}
	}
	return b.String()
}

// What is shown apart goes home along its way: the end of each line is the part's own end, and a part
// that goes on later stands farther off.
func TestPartsAreDrawnOffTheWayTheyCame(t *testing.T) {
	p := model.Derive(formtest.WorkedExample())
	e := explode(p)
	if len(e.ways) != len(p.Parts)-1 {
		t.Fatalf("%d ways home for %d parts", len(e.ways), len(p.Parts))
	}
	last := 0.
	for k, m := range p.Assembly.Moves {
		off := e.ways[k].from.Sub(e.ways[k].to)
		if off.Normalize().Add(m.Ways[0]).Len() > 1e-9 {
			t.Errorf("move %d is drawn off along %.3v, it comes along %.3v", k, off, m.Ways[0])
		}
		if off.Len() <= last {
			t.Errorf("move %d stands no farther off than the one before", k)
		}
		last = off.Len()
	}
	for i, q := range p.Parts {
		shown := e.piece.Parts[i]
		if shown.Solid != q.Solid {
			t.Errorf("%s is another board when shown apart", q.ID)
		}
		if moved := shown.Place.Col(3).Sub(q.Place.Col(3)).Len(); (moved == 0) != (q.ID == p.Assembly.First[0]) || math.IsNaN(moved) {
			t.Errorf("%s is drawn off by %g", q.ID, moved)
		}
	}
}

// Every way home runs along the part's way, from a board to a board: it neither begins nor ends in the air, and no board
// that stands before it is drawn across.
func TestWaysHomeBeginAndEndOnBoards(t *testing.T) {
	d := view.Pictorial(usualTurn, usualTip)
	for name, p := range examplePieces(t) {
		e := explode(p)
		front := newFronts(view.NewScene(e.piece, flattening), d)
		way := map[string]mgl64.Vec3{}
		for _, m := range p.Assembly.Moves {
			for i, id := range m.Parts {
				if _, known := way[id]; !known { // what is put together aside goes on as one after that
					way[id] = m.Ways[i].Normalize()
				}
			}
		}
		for _, w := range e.ways {
			if got := w.to.Sub(w.from).Normalize(); got.Sub(way[w.part]).Len() > 0.02 {
				t.Errorf("%s: the line of %s runs along %.2v, the part comes along %.2v", name, w.part, got, way[w.part])
			}
		}
		lines := e.seenWays(d, front)
		if len(p.Parts) > 1 && len(lines) == 0 {
			t.Errorf("%s: no way home is drawn", name)
		}
		for _, l := range lines {
			if !front.onWood(l[0], l[1]) || !front.onWood(l[1], l[0]) {
				t.Errorf("%s: a way home from %.0f, %.0f to %.0f, %.0f begins or ends in the air", name, l[0].X, l[0].Y, l[1].X, l[1].Y)
			}
		}
	}
}

// The order names parts by their numbers, as numbers go.
func TestTheOrderCountsAsNumbersDo(t *testing.T) {
	p := &form.Piece{}
	for _, mark := range []string{"10", "9", "11", "2", "4", "5"} {
		p.Parts = append(p.Parts, &part.Part{ID: "key-" + mark, Mark: mark})
	}
	if got := marks(p, []string{"key-10", "key-2", "key-11", "key-9", "key-4", "key-5"}); got != "2 + 4 + 5 + 9–11" {
		t.Error(got)
	}
}

// Splines do not mind which goes in first: the order takes them together, and they stand off alike.
func TestSplinesGoInOneByOne(t *testing.T) {
	d := form.Design{Title: "ring", Form: "ring", Timber: "black walnut"}
	d.Size.Height, d.Size.Width, d.Size.Staves = 500, 320, 6
	d.Splay.Ends, d.Boards.Side.Thickness = -4*measure.Degree, 14
	d.Corners.Joint = form.SplinedMitre
	p := model.Derive(d)
	if got := together(p, Options{}.fill(p)); !strings.Contains(got, "then 6, then 7–12, one by one.") {
		t.Error(got)
	}
	far := map[float64]int{}
	for i, q := range Apart(p, float64(len(p.Assembly.Moves))).Parts {
		if q.Slip == "" {
			continue
		}
		off := q.Place.Col(3).Sub(p.Parts[i].Place.Col(3)).Vec3()
		far[math.Round(off.Len())]++
		if off.Z() <= 0 {
			t.Errorf("%s stands below its place, off by %.1v", q.Name, off)
		}
	}
	for _, n := range far {
		if len(far) > 3 || n < 2 { // with a stave that stands off itself, a spline stands elsewhere
			t.Errorf("splines stand off by %v", far)
			break
		}
	}
}
