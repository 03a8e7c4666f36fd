package papers

import (
	"context"
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
func boardPlan(p *form.Piece, so sheet.Options) []File {
	if len(p.Design.OnHand) == 0 {
		return nil
	}
	solve := sync.OnceValues(func() (yield.Result, error) { return yield.Solve(context.Background(), p) })
	out := []File{{"board-plan.pdf", func(w io.Writer) error {
		r, err := solve()
		if err != nil {
			return err
		}
		return pdf.Write(w, sheet.BoardPlan(p, r, so), pdf.Meta{Title: p.Title, Subject: "Board plan: which part comes out of which board"})
	}}}
	for i, name := range table.BoardPlanIDs {
		out = append(out, File{name + ".csv", func(w io.Writer) error {
			r, err := solve()
			if err != nil {
				return err
			}
			return csv.Write(w, table.BoardPlan(r, so.Style)[i])
		}})
	}
	return out
}
