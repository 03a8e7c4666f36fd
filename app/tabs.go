package app

import (
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/render/table"
)

// maker makes the tables of one tab.
type maker struct {
	title string
	make  func(*form.Piece, measure.Style) []table.Table // nil = they follow from more than the sizes
	after func(*form.Piece, measure.Style) []table.Table // makes those of a piece that has been looked over
}

// tab is one tab of the drawer.
type tab struct {
	maker
	show *panel.Tables
}

func newTables() []maker {
	one := func(f func(*form.Piece, measure.Style) table.Table) func(*form.Piece, measure.Style) []table.Table {
		return func(p *form.Piece, s measure.Style) []table.Table { return []table.Table{f(p, s)} }
	}
	return []maker{
		{title: "Cut list", make: one(table.CutList)},
		{title: "Saw settings", make: one(table.SawSettings)},
		{title: "Marking", make: table.Marking},
		{title: "Boring", make: one(table.Boring)},
		{title: "Steps", after: one(table.Steps)},
		{title: "Sizes", make: table.Outside},
		{title: "Will it hold", make: one(table.Holding)},
		{title: costTab, make: one(table.Cost)},
		{title: boardPlanTab},
		{title: buyTab},
	}
}

// Tabs whose tables follow from a board plan, which takes longer than the piece.
const (
	costTab      = "Cost"
	boardPlanTab = "Board plan"
	buyTab       = "Wood to buy"
	boardsTab    = "Boards"
	findingsTab  = "Findings"
)

func newTabs() []tab {
	var out []tab
	for _, m := range newTables() {
		out = append(out, tab{m, panel.NewTables()})
	}
	return out
}

// sayBlank says what would fill the table of costs, and offers to begin with it.
func (w *Window) sayBlank() {
	w.tab(costTab).WhenBlank(panel.Blank{
		Text:  say.Key("No prices are told yet. Type what wood, screws, plugs or finish cost, and here stands what the piece comes to."),
		Label: say.Key("Type prices"), Do: func() { w.goTo("cost.wood-per-m3") },
	})
}

// goTo brings the keyboard to a size, and the size to where it is seen.
func (w *Window) goTo(path string) {
	if w.panes.small {
		w.panes.choose(0)
	}
	w.sizes.Unfold(path)
	if f := w.sizes.Field(path); f != nil {
		w.win.Canvas().Focus(f.Input())
	}
}

// goToState goes to what the strip tells of: the first text that is not understood, or the findings.
func (w *Window) goToState() {
	if path := w.sizes.Wrong(); path != "" {
		w.goTo(path)
		return
	}
	if w.panes.small {
		w.panes.choose(len(w.panes.parts) - 1)
	}
	w.openTabOf(findingsTab)
}

// look tells the tables which of them can be seen.
func (w *Window) look() {
	for i, t := range w.tables {
		t.show.Look(i == w.tabs.SelectedIndex())
	}
	w.askForPlans()
}

// openTab is the title of the open tab, in English; "" while the window is being built.
func (w *Window) openTab() string { return w.titleOf(w.tabs.SelectedIndex()) }

// titleOf is the title of a tab, in English; "" for none.
func (w *Window) titleOf(i int) string {
	switch {
	case i < 0:
		return ""
	case i < len(w.tables):
		return w.tables[i].title
	case i == len(w.tables):
		return boardsTab
	}
	return findingsTab
}

// tab gives the tables of a tab by its title.
func (w *Window) tab(title string) *panel.Tables {
	for _, t := range w.tables {
		if t.title == title {
			return t.show
		}
	}
	return nil
}
