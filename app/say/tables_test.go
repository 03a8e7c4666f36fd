package say_test

import (
	"slices"
	"testing"

	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/tongue"
	"splaywright/render/table"
)

// pieces are those of the examples.
func pieces(t *testing.T) []*form.Piece {
	t.Helper()
	var out []*form.Piece
	for _, e := range filetest.Examples(t) {
		d := e.Design
		out = append(out, model.Derive(d))
		if d.Form == "chest" || d.Form == "steps" { // plumb, with other cuts that are alike
			d.Splay = form.Splay{}
			out = append(out, model.Derive(d))
		}
	}
	return out
}

// tableTexts are all the texts of the tables of the examples, findings among them.
func tableTexts(t *testing.T) []string {
	t.Helper()
	var out []string
	for _, p := range pieces(t) {
		for _, tb := range table.All(p, p.Design.Style()) {
			out = append(append(out, tb.Title), tb.Notes...)
			for _, c := range tb.Columns {
				out = append(out, c.Head, c.Unit)
			}
			for _, r := range tb.Rows {
				for _, c := range r {
					out = append(out, c.Text)
				}
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func TestTablesAreSaidWhole(t *testing.T) {
	for _, code := range others() {
		speak := tongue.Load(code)
		unsaid := map[string]bool{}
		check := func(where, text string) {
			if _, whole := speak.Read(text); !whole && !unsaid[text] {
				unsaid[text] = true
				t.Errorf("%s: %s: %q is not said whole", code, where, text)
			}
		}
		for _, p := range pieces(t) {
			for _, tb := range table.All(p, p.Design.Style()) {
				check(tb.ID, tb.Title)
				for _, n := range tb.Notes {
					check(tb.ID+", below", n)
				}
				for i, c := range tb.Columns {
					check(tb.ID+", head", c.Head)
					check(tb.ID+", unit", c.Unit)
					for _, r := range tb.Rows {
						if i < len(r) {
							check(tb.ID+", "+c.Head, r[i].Text)
						}
					}
				}
			}
		}
	}
}
