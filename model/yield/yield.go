// Package yield turns a piece and the boards on hand into the task of a board plan, and puts a plan
// into the words of the shop.
package yield

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/stock"
	"splaywright/model/stock/sheet"
)

// NarrowestStrip of a glue-up is what a design that names none gets (common practice).
const NarrowestStrip = 50 * measure.Millimetre

// jointing is planed off a strip's two edges together, millimetres (common practice).
const jointing = 3.0

// ErrNoBoards says that there is nothing to cut from.
var ErrNoBoards = errors.New("there are no boards on hand; list them under boards-on-hand, each with length, width and thickness")

// Result is a board plan for a piece.
type Result struct {
	Task  stock.Task
	Plan  stock.Plan
	Parts [][]*part.Part // the parts that each demand stands for
	// OnHand are the parts that are not bought since boards on hand yield them; none where wood for the whole piece is bought.
	OnHand []*part.Part
	// Aside counts the boards on hand whose price the plan leaves aside since others have none.
	Aside int
	// Pieces is how many are made together.
	Pieces int
}

// Solve plans which part comes out of which board and has the plan checked by the verifier, which shares
// nothing with the solver. It looks for a better plan until the context ends.
func Solve(ctx context.Context, p *form.Piece) (Result, error) {
	boards, aside := pricesAside(p.Design.OnHand)
	r, err := solve(ctx, p, boards, ErrNoBoards)
	r.Aside = aside
	return r, err
}

// pricesAside takes the prices off boards on hand where some have one and others none, and says how many had: what is paid
// is paid, and boards without a price cannot be held against it.
func pricesAside(boards []stock.Board) ([]stock.Board, int) {
	priced := 0
	for _, b := range boards {
		if b.Price > 0 {
			priced++
		}
	}
	if priced == 0 || priced == len(boards) {
		return boards, 0
	}
	boards = slices.Clone(boards)
	for i := range boards {
		boards[i].Price = 0
	}
	return boards, priced
}

// ErrNothingToBuy says that no boards of the yard are known.
var ErrNothingToBuy = errors.New("there are no boards to buy; list what the yard has under boards-to-buy, each with length, width, thickness and price, or give the price of a board foot under yard, timbers or cost")

// mostBought is how many of each board the yard is taken to have when its count is left out.
const mostBought = 12

// Buy finds the cheapest boards to buy that yield the piece.
func Buy(ctx context.Context, p *form.Piece) (Result, error) {
	boards, err := Offered(p)
	if err != nil {
		return Result{Task: Task(p)}, err
	}
	asSold := slices.Clone(boards)
	for i := range boards {
		if boards[i].Count == 0 {
			boards[i].Count = min(mostBought, max(2, len(made(p).Parts)))
		}
		if s := boards[i].Sold; s.Words != "" {
			// What the ladder says is left with both faces clean, so that no more is allowed for planing.
			boards[i].Thickness = s.Surfaced + p.Design.Allowance.Thickness.MM()
		}
	}
	first, stop := ctx, context.CancelFunc(func() {})
	if slices.ContainsFunc(boards, func(b stock.Board) bool { return b.Sold.Grade != "" }) {
		first, stop = within(ctx, 2) // other boards may be tried after it
	}
	r, err := plan(first, p, boards, ErrNothingToBuy)
	stop()
	if err == nil {
		r.Plan, err = enough(ctx, r.Task, r.Plan)
	}
	if err == nil {
		err = r.verify()
	}
	for i := range r.Task.Boards {
		r.Task.Boards[i].Thickness = asSold[i].Thickness
	}
	return r, err
}

func solve(ctx context.Context, p *form.Piece, boards []stock.Board, none error) (Result, error) {
	r, err := plan(ctx, p, boards, none)
	if err != nil {
		return r, err
	}
	return r, r.verify()
}

// verify has the plan checked by what shares nothing with the solver.
func (r Result) verify() error {
	if err := stock.Verify(r.Task, r.Plan); err != nil {
		return fmt.Errorf("board plan: the plan that was found does not stand up to its check: %w", err)
	}
	return nil
}

func plan(ctx context.Context, p *form.Piece, boards []stock.Board, none error) (Result, error) {
	r := Result{Task: Task(p), Pieces: max(p.Design.Plan.Pieces, 1)}
	p = made(p)
	r.Task.Boards = slices.Clone(boards)
	for i := range boards {
		r.Task.Boards[i].Timber = spelled(p, boards[i].Timber)
	}
	if len(boards) == 0 {
		return r, none
	}
	r.Parts = make([][]*part.Part, len(r.Task.Demands))
	for _, q := range p.Parts {
		for i, d := range r.Task.Demands {
			if alike(d, demandOf(p, q)) {
				r.Parts[i] = append(r.Parts[i], q)
				break
			}
		}
	}
	var err error
	if r.Plan, err = sheet.Solve(ctx, r.Task); err != nil {
		return r, fmt.Errorf("board plan: %w", err)
	}
	return r, nil
}

// Short tells whether some parts have no place.
func (r Result) Short() bool { return len(r.Plan.Misfits)+len(r.Plan.Left) > 0 }

// spelled is a timber's name as it is written for the first part of it; as it is where no part is.
func spelled(p *form.Piece, name string) string {
	for _, q := range p.Parts {
		if name != "" && p.Design.Timbers.Same(q.Timber, name) {
			return q.Timber
		}
	}
	return name
}

func demandOf(p *form.Piece, q *part.Part) stock.Demand {
	_, r := q.Lying()
	return stock.Demand{ID: q.ID, Name: q.Name, Length: r.Length.MM(), Width: r.Width.MM(), Thickness: r.Thickness.MM(),
		Count: 1, Timber: spelled(p, q.Timber), Glue: p.Design.Plan.GlueUp}
}

// Task is what a board plan for the piece is made from, or for several of it that are made together: its parts in their
// rough sizes, equal ones counted together, and the boards on hand.
func Task(p *form.Piece) stock.Task {
	p = made(p)
	d := p.Design
	t := stock.Task{Boards: d.OnHand, Saw: saw(d)}
	index := map[string]int{} // by part id
	said := map[string]bool{}
	for _, q := range p.Parts {
		want := demandOf(p, q)
		for i, have := range t.Demands {
			if alike(have, want) {
				t.Demands[i].Count++
				if !said[q.Name] {
					t.Demands[i].Name += " and " + lower(q.Name)
				}
				index[q.ID] = i
			}
		}
		said[q.Name] = true
		if _, known := index[q.ID]; !known {
			index[q.ID] = len(t.Demands)
			t.Demands = append(t.Demands, want)
		}
	}
	t.Runs = runs(p, index)
	return t
}

// alike tells whether two demands are the same board to get out. They differ by rounding noise only
// where they mirror each other.
func alike(a, b stock.Demand) bool {
	near := func(x, y float64) bool { return x-y < 1e-3 && y-x < 1e-3 }
	return a.Timber == b.Timber && near(a.Length, b.Length) && near(a.Width, b.Width) && near(a.Thickness, b.Thickness)
}

func lower(name string) string {
	if name == "" {
		return name
	}
	return string(name[0]|0x20) + name[1:]
}

func saw(d form.Design) stock.Saw {
	s := stock.Saw{
		Kerf: d.Saw.Kerf.MM(), TrimEnds: d.Plan.TrimEnds.MM(), TrimEdges: d.Plan.TrimEdges.MM(),
		Keep: cmp.Or(d.Plan.Keep, d.Plan.KeepWidth).MM(), KeepWidth: cmp.Or(d.Plan.KeepWidth, d.Plan.Keep).MM(),
		Resaw: d.Saw.Resaw.MM(), Planing: d.Plan.Planing.MM(),
		Glue: stock.Glue{Narrowest: d.Plan.Narrowest.MM(), Joint: jointing},
	}
	switch d.Plan.First {
	case form.CrosscutFirst:
		s.First = stock.CrosscutFirst
	case form.RipFirst:
		s.First = stock.RipFirst
	}
	if s.Glue.Narrowest == 0 {
		s.Glue.Narrowest = NarrowestStrip.MM()
	}
	return s
}
