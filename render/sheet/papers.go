package sheet

import (
	"context"
	"slices"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/render/draw"
	"splaywright/render/table"
)

// Paper is one paper of a set: its name, one of form.PaperNames, and its sheets, numbered through the set.
type Paper struct {
	Name  string
	Pages []draw.Page
}

// Papers is the whole set, sheet by sheet: the piece, each kind of part, sections and details, the tables,
// and the cautions with what was not checked, as far as they are wanted. The same piece gives the same pages.
func Papers(p *form.Piece, o Options) []draw.Page {
	set, err := Set(context.Background(), p, o)
	if err != nil {
		panic("sheet: only a cancelled set fails: " + err.Error())
	}
	var pages []draw.Page
	for _, paper := range set {
		pages = append(pages, paper.Pages...)
	}
	return pages
}

// Set is the set paper by paper. Options.Seen is told of every sheet as it is drawn. The error is that of
// the context, once it is cancelled.
func Set(ctx context.Context, p *form.Piece, o Options) ([]Paper, error) {
	o = o.fill(p)
	o.Dark = false
	s := set{o: o, piece: p.Title, form: form.PieceWord(p), note: sizesNote(o), block: p.Design.Papers.Block}
	m := &maker{ctx: ctx, seen: o.Seen}
	if o.wants(form.PaperDrawings) {
		m.drawings(p, s)
	}
	m.tables(p, s)
	if o.wants(form.PaperCautions) {
		m.put(form.PaperCautions, func() []*blank { return cautionSheets(p, s) })
	}
	if m.general != nil && ctx.Err() == nil {
		m.papers[0].sheets[0] = m.general(listOf(m.papers))
	}
	return m.done()
}

// maker collects the sheets of a set until it is cancelled.
type maker struct {
	ctx     context.Context
	seen    func(title string)
	papers  []drawnPaper
	general func(list []listed) *blank // the first sheet, drawn last: it lists the others
}

type drawnPaper struct {
	name   string
	sheets []*blank
}

// put adds sheets to a paper, unless the set is cancelled.
func (m *maker) put(paper string, make func() []*blank) {
	if m.ctx.Err() != nil {
		return
	}
	sheets := make()
	if len(sheets) == 0 {
		return
	}
	if n := len(m.papers); n == 0 || m.papers[n-1].name != paper {
		m.papers = append(m.papers, drawnPaper{name: paper})
	}
	last := &m.papers[len(m.papers)-1]
	last.sheets = append(last.sheets, sheets...)
	if m.seen != nil {
		for _, b := range sheets {
			m.seen(b.entry.title)
		}
	}
}

func (m *maker) drawings(p *form.Piece, s set) {
	one := func(b *blank) []*blank {
		if b == nil {
			return nil
		}
		return []*blank{b}
	}
	m.put(form.PaperDrawings, func() []*blank { return one(&blank{entry: entry{title: s.o.say(generalTitle)}}) })
	m.general = func(list []listed) *blank { return general(p, s, list) }
	m.put(form.PaperDrawings, func() []*blank { return one(belowSheet(p, s)) })
	for _, group := range kinds(p) {
		m.put(form.PaperDrawings, func() []*blank { return one(partSheet(p, s, group)) })
	}
	m.put(form.PaperDrawings, func() []*blank { return sectionSheets(p, s) })
	m.put(form.PaperDrawings, func() []*blank { return one(togetherSheet(p, s)) })
	m.put(form.PaperDrawings, func() []*blank { return one(lookSheet(p, s)) })
}

// tables sets the tables of each paper from a sheet of its own on, so that it can go to its machine; but a paper begins
// on the last sheet of another where that saves a sheet, or one that stands half empty.
func (m *maker) tables(p *form.Piece, s set) {
	if m.ctx.Err() != nil {
		return
	}
	all := table.OnSheets(p, s.o.Style)
	if s.o.wants(form.PaperCautions) {
		withoutUnchecked(all, p)
	}
	w := &writer{set: s, piece: p, drawn: map[runAs]picture{}}
	var items []*item
	for _, name := range form.PaperNames {
		if s.o.wants(name) {
			items = append(items, w.items(name, table.Of(all, func(paper string) bool { return paper == name }))...)
		}
	}
	how := w.layOut(items)
	for from, to := 0, 0; from < len(items); from = to {
		name := items[from].paper
		for to = from; to < len(items) && items[to].paper == name; to++ {
		}
		m.put(name, func() []*blank {
			w.sheets = nil
			for i := from; i < to; i++ {
				w.lay(items[i], how[i])
			}
			return w.sheets
		})
	}
}

// withoutUnchecked takes the note on what was not looked into from the tables, since a sheet at the end says it.
func withoutUnchecked(all []table.Table, p *form.Piece) {
	note := table.NotCheckedNote(p)
	for i := range all {
		all[i].Notes = slices.DeleteFunc(all[i].Notes, func(n string) bool { return n == note })
	}
}

// done numbers the sheets.
func (m *maker) done() ([]Paper, error) {
	if err := m.ctx.Err(); err != nil {
		return nil, err
	}
	var all []*blank
	for _, d := range m.papers {
		all = append(all, d.sheets...)
	}
	pages := number(all)
	var out []Paper
	for _, d := range m.papers {
		n := len(d.sheets)
		out = append(out, Paper{Name: d.name, Pages: pages[:n:n]})
		pages = pages[n:]
	}
	return out, nil
}

// sizesNote tells in which unit sizes are and how they are rounded. The tolerance is common practice
// for furniture joinery made by one person, from memory.
func sizesNote(o Options) string {
	if o.Style.Both && o.Style.Unit == measure.Imperial {
		return "inches (mm); joints ±1/128, elsewhere ±1/32"
	}
	if o.Style.Both {
		return "mm (inches); joints ±0.2, elsewhere ±1"
	}
	if o.Style.Unit == measure.Imperial {
		return "inches; joints ±1/128, elsewhere ±1/32"
	}
	return "millimetres; joints ±0.2, elsewhere ±1"
}
