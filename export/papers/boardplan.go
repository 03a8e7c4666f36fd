package papers

import (
	"io"
	"slices"

	"splaywright/export/csv"
	"splaywright/export/html"
	"splaywright/export/pdf"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/yield"
	"splaywright/render/draw"
	"splaywright/render/sheet"
	"splaywright/render/table"
)

// plan is one of the plans of boards that go with a piece: of those on hand, or of those to buy.
type plan struct {
	name, subject string
	find          func() (yield.Result, error) // made once, when the first of its files is written
	pages         func(*form.Piece, yield.Result, sheet.Options) []draw.Page
	first         func(yield.Result, measure.Style) []table.Table // what stands before the boards; nil = nothing
	ids           []string                                        // of its tables
	tables        func(yield.Result, measure.Style) []table.Table
}

// plans are those that are wanted and that there is something for.
func (t *task) plans() ([]plan, error) {
	var out []plan
	if t.want.Wants(form.PaperBoardPlan) && len(t.p.Design.OnHand) > 0 {
		out = append(out, plan{name: "board-plan", subject: "Board plan: which part comes out of which board", find: t.onHand,
			pages: sheet.BoardPlan, ids: table.BoardPlanIDs, tables: table.BoardPlan})
	}
	if t.want.Wants(form.PaperToBuy) {
		bought, err := t.woodToBuy()
		if err != nil {
			return nil, err
		}
		out = append(out, bought...)
	}
	return out, nil
}

// woodToBuy is the shopping list with the plan of what is bought. It is written where the design tells what the yard sells, or
// where it is asked for by name.
func (t *task) woodToBuy() ([]plan, error) {
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
	return []plan{{name: "wood-to-buy", subject: "Wood to buy, and what comes out of it", find: t.bought,
		pages: sheet.WoodToBuy, first: table.ToBuy, ids: ids, tables: table.ToBuy}}, nil
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

// planned are the files of a plan: its sheets, and tables.
func (t *task) planned(of plan) []File {
	var out []File
	if t.want.WantsAs(form.AsPDF) || t.want.WantsAs(form.AsSingle) {
		out = append(out, File{of.name + ".pdf", func(w io.Writer) error {
			r, err := of.find()
			if err != nil {
				return err
			}
			return pdf.Write(w, of.pages(t.p, r, t.so), pdf.Meta{Title: t.p.Title, Subject: t.speak.Say(of.subject)})
		}})
	}
	if !t.want.WantsAs(form.AsCSV) {
		return out
	}
	for i, id := range of.ids {
		out = append(out, File{id + ".csv", func(w io.Writer) error {
			r, err := of.find()
			if err != nil {
				return err
			}
			return csv.Write(w, of.tables(r, t.so.Style)[i].In(t.speak))
		}})
	}
	return out
}

// planTables are the tables of a plan as people read them: what stands over all, and how the boards are cut.
type planTables struct {
	over, boards []table.Table
	plan         yield.Result
}

func (t *task) told(of plan) (planTables, error) {
	r, err := of.find()
	if err != nil {
		return planTables{}, err
	}
	out := planTables{plan: r}
	if of.first != nil {
		out.over = table.AllIn(table.Told(of.first(r, t.so.Style)), t.speak)
	}
	if of.first == nil || len(r.Plan.Layouts) > 0 { // else what it says of the plan stands there already
		out.boards = table.AllIn(table.Told(table.BoardPlan(r, t.so.Style)), t.speak)
	}
	return out, nil
}

// onScreen is a plan on the page for a screen: its boards, and how they are cut.
func (t *task) onScreen(of plan) ([]html.Part, error) {
	told, err := t.told(of)
	if err != nil {
		return nil, err
	}
	over := min(1, len(told.boards)) // how each board is used stands over the boards
	cut := html.Part{Tables: told.boards[over:]}
	for _, page := range sheet.BoardPictures(t.p, told.plan, t.so, html.Wide) {
		cut.Pictures = append(cut.Pictures, html.Picture{Page: page, Tall: true})
	}
	return []html.Part{{Tables: slices.Concat(told.over, told.boards[:over])}, cut}, nil
}
