package app

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/stock"
	"splaywright/model/yield"
	"splaywright/render/table"
)

// planPatience is how long a better plan is looked for.
const planPatience = 3 * time.Second

// planning is the window's two board plans: from the boards on hand and from those to buy.
type planning struct{ onHand, toBuy boardPlan }

func (p *planning) spawn(f func(func())) { p.onHand.work.Spawn, p.toBuy.work.Spawn = f, f }

// boardPlan is a board plan that is worked out beside everything else.
type boardPlan struct {
	work   session.Latest
	task   stock.Task // what the newest plan asked for is made from
	asked  uint64     // its number
	since  time.Time
	cancel context.CancelFunc
	busy   bool
	halted bool // the person has had enough
	result yield.Result
	err    error
	has    bool
}

// forget drops the plan; what is still being looked for will not be shown.
func (p *boardPlan) forget() {
	p.asked++
	p.halt()
	p.task, p.has, p.err, p.busy, p.halted = stock.Task{}, false, nil, false, false
}

func (p *boardPlan) halt() {
	if p.cancel != nil {
		p.cancel()
		p.cancel = nil
	}
}

// ask looks for a plan of a task, unless that is what there is or is being looked for; shown is called on the window's
// goroutine when it has been found, and never with a plan of another task.
func (p *boardPlan) ask(t stock.Task, patience time.Duration, find func(context.Context) (yield.Result, error), shown func()) bool {
	if (p.has || p.busy || p.err != nil) && reflect.DeepEqual(t, p.task) {
		return false
	}
	p.forget()
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	p.task, p.cancel, p.busy, p.since = t, cancel, true, time.Now()
	n := p.asked
	p.work.Do(func() {
		r, err := guardedPlan(ctx, find)
		cancel()
		fyne.Do(func() {
			if n != p.asked {
				return // overtaken
			}
			p.result, p.err, p.has, p.busy, p.cancel = r, err, err == nil, false, nil
			shown()
		})
	})
	return true
}

// guardedPlan makes a mistake of the program an error: it must not take the unsaved design down with it.
func guardedPlan(ctx context.Context, find func(context.Context) (yield.Result, error)) (r yield.Result, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("the boards could not be planned: %v", p)
		}
	}()
	return find(ctx)
}

// askForPlans looks for the plans that can be seen.
func (w *Window) askForPlans() {
	if w.s == nil || w.s.Looked() == nil || w.tabs.Selected() == nil {
		return // the window is being built
	}
	piece := w.s.Looked()
	seen := w.openTab()
	if seen == boardPlanTab || seen == boardsTab && w.boards.list == panel.OnHand {
		w.askForPlan(&w.plans.onHand, piece, piece.Design.OnHand, yield.Solve)
	}
	if seen == buyTab || seen == boardsTab && w.boards.list == panel.ToBuy {
		offered, err := yield.Offered(piece)
		if err != nil {
			offered = piece.Design.ToBuy // the plan says what is wrong
		}
		if piece.Design.Plan.Missing { // what is bought hangs on them too
			offered = slices.Concat(offered, piece.Design.OnHand)
		}
		w.askForPlan(&w.plans.toBuy, piece, offered, yield.Shop)
	}
}

func (w *Window) askForPlan(p *boardPlan, piece *form.Piece, boards []stock.Board, find func(context.Context, *form.Piece) (yield.Result, error)) {
	for _, f := range piece.Findings {
		if f.Level == part.Stop {
			p.forget()
			p.err = fmt.Errorf("something stops the piece: %s", f.Text)
			w.showPlans()
			return
		}
	}
	if p.err != nil && p.task.Demands == nil { // a stop that is gone
		p.err = nil
	}
	t := yield.Task(piece)
	t.Boards = boards
	patience := planPatience
	if p == &w.plans.toBuy && piece.Design.Plan.Missing {
		patience *= 2 // for the plan of the boards on hand as much as it has by itself
	}
	if p.ask(t, patience, func(ctx context.Context) (yield.Result, error) { return find(ctx, piece) }, w.showPlans) && p.busy {
		w.showPlans()
		w.watchPlan(p)
	}
}

// watchPlan shows how long a plan has been looked for.
func (w *Window) watchPlan(p *boardPlan) {
	if w.spawn != nil {
		return // in tests the work is done
	}
	n := p.asked
	time.AfterFunc(session.Patience, func() {
		w.do(func() {
			if p.busy && p.asked == n {
				w.showPlans() // what the last one says stands no longer
			}
		})
	})
	go func() {
		tick := time.NewTicker(200 * time.Millisecond)
		defer tick.Stop()
		for going := true; going; {
			select {
			case <-w.stop:
				return
			case <-tick.C:
			}
			fyne.DoAndWait(func() {
				if going = p.busy && p.asked == n; going {
					w.boards.progress(p)
				}
			})
		}
	}()
}

// showPlans shows both plans as they stand.
func (w *Window) showPlans() {
	st := styleOf(w.s.Design())
	if p := &w.plans.onHand; p.has {
		w.showPlan(boardPlanTab, table.Told(table.BoardPlan(p.result, st)))
	} else if !p.fresh() {
		w.showNoPlan(boardPlanTab, panel.OnHand, p)
	}
	if p := &w.plans.toBuy; p.has {
		w.showPlan(buyTab, table.Bought(p.result, st))
	} else if !p.fresh() {
		w.showNoPlan(buyTab, panel.ToBuy, p)
	}
	w.boards.update(w)
}

// noBoards says of either list that it is empty: the errors name keys of the design file, which nobody sees here.
var noBoards = map[string]string{
	panel.OnHand: say.Key("There is no plan, since there are no boards on hand yet. List them with their lengths, widths and thicknesses."),
	panel.ToBuy:  say.Key("There is no plan, since there are no boards to buy yet. List what the yard has, with prices, or what it asks for a board foot."),
}

// showNoPlan says in a tab why there is no plan, and where no boards are known offers to list them.
func (w *Window) showNoPlan(tab, list string, p *boardPlan) {
	why := panel.Blank{Said: p.standing()}
	if errors.Is(p.err, yield.ErrNoBoards) || errors.Is(p.err, yield.ErrNothingToBuy) {
		why.Label, why.Do = say.Key("List boards"), func() {
			w.boards.which.SetSelectedIndex(slices.Index([]string{panel.OnHand, panel.ToBuy}, list))
			w.openTabOf(boardsTab)
		}
		why.Said = say.It(noBoards[list])
	}
	show := w.tab(tab)
	if p.busy {
		show.Await(why.Said)
		return
	}
	show.WhenBlank(why)
	show.Set(blankPlan(tab))
}

// blankPlan is a plan of which nothing but why is shown.
func blankPlan(tab string) []table.Table {
	return []table.Table{{Title: say.It(tab), Columns: []table.Column{{Head: say.It("Board")}}}}
}

// showPlan shows the tables of a plan, and of one in which nothing has a place what is said of it.
func (w *Window) showPlan(tab string, plan []table.Table) {
	plan = say.Tables(plan)
	if slices.ContainsFunc(plan, func(t table.Table) bool { return len(t.Rows) > 0 }) {
		w.tab(tab).Set(plan)
		return
	}
	var why []string
	for _, t := range plan {
		why = append(why, t.Notes...)
	}
	w.tab(tab).WhenBlank(panel.Blank{Said: strings.Join(why, "\n")})
	w.tab(tab).Set(blankPlan(tab))
}

// standing says why there is no plan.
func (p *boardPlan) standing() string {
	switch {
	case p.busy:
		return say.It("A plan is being looked for.")
	case p.err != nil:
		why := strings.TrimRight(say.Error(p.err), ".。") // a finding is a whole sentence, an error is not
		return say.With("There is no plan: %s.", why)
	}
	return say.It("There is no plan yet.")
}
