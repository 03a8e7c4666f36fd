package papers

import (
	"io"
	"sync"

	"splaywright/export/csv"
	"splaywright/export/pdf"
	"splaywright/model/form"
	"splaywright/model/yield"
	"splaywright/render/sheet"
	"splaywright/render/table"
)

// boardPlan are the files of the board plan of a piece that has boards on hand: its sheets and its
// tables. The plan is made once, when the first of them is written.
func (t *task) boardPlan() []File {
	if len(t.p.Design.OnHand) == 0 {
		return nil
	}
	solve := sync.OnceValues(func() (yield.Result, error) { return yield.Solve(t.ctx, t.p) })
	var out []File
	if t.want.WantsAs(form.AsPDF) || t.want.WantsAs(form.AsSingle) {
		out = append(out, File{"board-plan.pdf", func(w io.Writer) error {
			r, err := solve()
			if err != nil {
				return err
			}
			return pdf.Write(w, sheet.BoardPlan(t.p, r, t.so), pdf.Meta{Title: t.p.Title, Subject: "Board plan: which part comes out of which board"})
		}})
	}
	if !t.want.WantsAs(form.AsCSV) {
		return out
	}
	for i, name := range table.BoardPlanIDs {
		out = append(out, File{name + ".csv", func(w io.Writer) error {
			r, err := solve()
			if err != nil {
				return err
			}
			return csv.Write(w, table.BoardPlan(r, t.so.Style)[i])
		}})
	}
	return out
}
