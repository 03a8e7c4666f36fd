package papers

import (
	"io"
	"slices"
	"sync"

	"splaywright/export/csv"
	"splaywright/export/pdf"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/yield"
	"splaywright/render/draw"
	"splaywright/render/sheet"
	"splaywright/render/table"
)

// boardPlan are the files of the board plan of a piece that has boards on hand: its sheets and its
// tables.
func (t *task) boardPlan() []File {
	if len(t.p.Design.OnHand) == 0 {
		return nil
	}
	return t.planned("board-plan", "Board plan: which part comes out of which board", t.onHand, sheet.BoardPlan, table.BoardPlanIDs, table.BoardPlan)
}

// woodToBuy are the files of what to buy: the shopping list with the plan of what is bought. They are written where the
// design tells what the yard sells, or where they are asked for by name.
func (t *task) woodToBuy() ([]File, error) {
	d := t.p.Design
	if len(d.ToBuy)+len(d.Yard) == 0 && !slices.Contains(t.want.Only, form.PaperToBuy) {
		return nil, nil
	}
	switch boards, err := yield.Offered(t.p); {
	case err != nil:
		return nil, err
	case len(boards) == 0:
		return nil, nil
	}
	ids := table.ToBuyIDs
	if !slices.ContainsFunc(d.Yard, func(y form.Yard) bool { return y.Grade != "" }) {
		ids = ids[:1]
	}
	return t.planned("wood-to-buy", "Wood to buy, and what comes out of it", t.shop, sheet.WoodToBuy, ids, table.ToBuy), nil
}

// shop finds what to buy; where that is only what is missing, beside the plan of the boards on hand that is written too.
func (t *task) shop() (yield.Result, error) {
	if !t.p.Design.Plan.Missing || len(t.p.Design.OnHand) == 0 {
		return yield.Buy(t.ctx, t.p)
	}
	onHand, err := t.onHand()
	if err != nil {
		return onHand, err
	}
	return yield.BuyMissing(t.ctx, t.p, onHand)
}

// planned are the files of a plan, which is made once, when the first of them is written: its sheets, and tables.
func (t *task) planned(name, subject string, find func() (yield.Result, error),
	pages func(*form.Piece, yield.Result, sheet.Options) []draw.Page, ids []string, tables func(yield.Result, measure.Style) []table.Table) []File {
	solve := sync.OnceValues(find)
	var out []File
	if t.want.WantsAs(form.AsPDF) || t.want.WantsAs(form.AsSingle) {
		out = append(out, File{name + ".pdf", func(w io.Writer) error {
			r, err := solve()
			if err != nil {
				return err
			}
			return pdf.Write(w, pages(t.p, r, t.so), pdf.Meta{Title: t.p.Title, Subject: t.speak.Say(subject)})
		}})
	}
	if !t.want.WantsAs(form.AsCSV) {
		return out
	}
	for i, id := range ids {
		out = append(out, File{id + ".csv", func(w io.Writer) error {
			r, err := solve()
			if err != nil {
				return err
			}
			return csv.Write(w, tables(r, t.so.Style)[i].In(t.speak))
		}})
	}
	return out
}
