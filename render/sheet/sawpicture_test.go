package sheet

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model/solid"
	"splaywright/render/draw"
	"splaywright/render/table"
)

// Every way a board lies in the examples' saw settings has its picture, and each picture shows all it
// is made of.
func TestEveryWayAtTheSawHasItsPicture(t *testing.T) {
	for name, p := range examplePieces(t) {
		tab := table.SawSettings(p, p.Design.Style())
		ways := waysIn(tab)
		for _, row := range tab.Rows {
			if len(row) > 1 && row[1].Text != "" && !slices.ContainsFunc(ways, func(w sawWay) bool { return strings.HasPrefix(row[1].Text, w.begins) }) {
				t.Errorf("%s: no picture for %q", name, row[1].Text)
			}
		}
	}
	var page draw.Page
	y := 10.0
	for _, w := range sawWays {
		pic := w.draw(Options{})
		page.Items = append(page.Items, draw.Moved(pic.items, draw.Point{X: 60, Y: y - pic.box.Min.Y})...)
		y += pic.box.Height() + 6
		seen := map[string]bool{}
		for _, it := range pic.items {
			if path, ok := it.(draw.Path); ok {
				seen[path.Ref] = true
			}
		}
		for _, q := range w.parts(w.usual) {
			if !seen[q.ID] {
				t.Errorf("%s: the %s is not seen", w.label, q.ID)
			}
			lo, _ := q.Solid.Bounds()
			if q.ID == "board" && lo.Z() != -boardThick {
				t.Errorf("%s: the board is %.2f thick", w.label, -lo.Z())
			}
		}
	}
	page.Width, page.Height = 120, y
	look(t, "saw", []draw.Page{page})
}

// No two of a picture's parts share wood: what is in each other's way would be drawn wrong.
func TestBoardsAtTheSawLieClear(t *testing.T) {
	for _, w := range sawWays {
		for _, set := range []sawSet{{}, {swing: true}, {tilt: true}, {true, true}} {
			parts := w.parts(set)
			for i, a := range parts {
				for _, b := range parts[:i] {
					if a.ID == "blade" && b.ID == "table" {
						continue // it stands in the table's slot
					}
					v, err := solid.Overlap(a.Solid, b.Solid, a.Place.Inv().Mul4(b.Place))
					if err != nil || v > 0.01 {
						t.Errorf("%s, %+v: %s and %s share %.2f mm³ (%v)", w.label, set, a.ID, b.ID, v, err)
					}
				}
			}
		}
	}
}
