package table_test

import (
	"context"
	"regexp"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/yield"
	"splaywright/render/table"
)

// pointed is a decimal point between digits, in what is no address.
var pointed = regexp.MustCompile(`\d\.\d`)

// Readers of commas find no decimal point in any table of any example, in its notes or in what is compared or bought.
func TestNoPointStandsAmongCommas(t *testing.T) {
	looked := 0
	look := func(name string, tb table.Table) {
		said := append([]string(nil), tb.Notes...)
		for _, r := range tb.Rows {
			for _, c := range r {
				said = append(said, c.Text)
			}
		}
		for _, text := range said {
			for _, w := range strings.Fields(text) {
				looked++
				if pointed.MatchString(w) && !strings.Contains(w, "//") && strings.Count(w, ".") == 1 {
					t.Errorf("%s, %s: %q", name, tb.ID, w)
				}
			}
		}
	}
	for _, e := range filetest.Examples(t) {
		d := e.Design
		d.Round.Comma, d.Round.Said = true, true
		p := model.Derive(d)
		style := p.Design.Style()
		tables := append(table.All(p, style), table.Compare([]*form.Piece{p, p}, style))
		if len(d.OnHand) > 0 {
			r, err := yield.Solve(context.Background(), p)
			if err != nil {
				t.Fatal(err)
			}
			tables = append(tables, table.BoardPlan(r, style)...)
		}
		if len(d.ToBuy)+len(d.Yard) > 0 {
			r, err := yield.Buy(context.Background(), p)
			if err != nil {
				t.Fatal(err)
			}
			tables = append(append(tables, table.ToBuy(r, style)...), table.BoardPlan(r, style)...)
		}
		for _, tb := range tables {
			look(e.Name, tb)
		}
	}
	if looked < 1000 {
		t.Errorf("only %d words were looked at", looked)
	}
}
