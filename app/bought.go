package app

import (
	"slices"

	"splaywright/app/panel"
	"splaywright/model/stock"
	"splaywright/model/yield"
)

// bought are the boards of a plan of what to buy, of each kind as many as are taken.
func bought(r yield.Result) []stock.Board {
	number := make([]int, len(r.Task.Boards))
	for _, l := range r.Plan.Layouts {
		number[l.Board]++
	}
	var out []stock.Board
	for i, n := range number {
		if n > 0 {
			b := r.Task.Boards[i]
			b.Count, b.Sold, b.Unnamed = n, stock.AsSold{}, false // the name of the shopping list stays on it
			out = append(out, b)
		}
	}
	return out
}

// takeHome puts what the plan buys among the boards on hand, where it is planned again with what was there, each board as it
// turns out to be.
func (w *Window) takeHome() error {
	p := &w.plans.toBuy
	if !p.has {
		return nil
	}
	boards, onHand := bought(p.result), w.s.Design().OnHand
	if len(onHand) == 0 || slices.ContainsFunc(onHand, func(b stock.Board) bool { return b.Price == 0 }) {
		for i := range boards { // what is paid is paid, and a plan wants prices of all boards or of none
			boards[i].Price = 0
		}
	}
	if err := w.s.TakeBoards("put what was bought on hand", panel.OnHand, boards...); err != nil {
		return err
	}
	w.boards.which.SetSelectedIndex(0)
	w.boards.chosen = len(onHand)
	return nil
}
