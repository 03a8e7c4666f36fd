package sheet

import (
	"math"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
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
	if len(e.lines) != len(p.Parts)-1 {
		t.Fatalf("%d ways home for %d parts", len(e.lines), len(p.Parts))
	}
	last := 0.
	for k, m := range p.Assembly.Moves {
		l := e.lines[k]
		off := l[0].Sub(l[1])
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

// The way home of a part is drawn where one sees it: not across boards that stand before it.
func TestWaysHomeAreHiddenBehindBoards(t *testing.T) {
	for name, p := range examplePieces(t) {
		e := explode(p)
		scene := view.NewScene(e.piece, flattening)
		d := view.Pictorial(usualTurn, usualTip)
		front := newFronts(scene, d)
		for k, l := range e.lines {
			seen := 0.0
			whole := d.Point(l[1])
			whole.X, whole.Y = whole.X-d.Point(l[0]).X, whole.Y-d.Point(l[0]).Y
			for _, s := range front.open(d, l[0], l[1]) {
				seen += math.Hypot(s[1].X-s[0].X, s[1].Y-s[0].Y)
			}
			hidden := 0
			const steps = 400
			for i := range steps {
				at := l[0].Add(l[1].Sub(l[0]).Mul((float64(i) + 0.5) / steps))
				if front.hides(d.Point(at), at.Dot(d.Toward)) {
					hidden++
				}
			}
			want := (1 - float64(hidden)/steps) * math.Hypot(whole.X, whole.Y)
			if math.Abs(seen-want) > 0.04*math.Hypot(whole.X, whole.Y) {
				t.Errorf("%s, way %d: %.1f mm are drawn, %.1f are seen", name, k, seen, want)
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
