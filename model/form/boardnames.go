package form

import (
	"slices"

	"splaywright/model/stock"
)

// What boards are called that nobody named, by their place in their list, counted from 1. Boards on hand and boards to buy stand
// together in plans of what is missing, and are told apart there.
const (
	NameOnHand = "board %d"
	NameToBuy  = "yard board %d"
)

// Named is a design whose unnamed boards are named in a language, which fill prints their formats in.
func (d Design) Named(fill func(format string, figures ...any) string) Design {
	d.OnHand = named(d.OnHand, NameOnHand, fill)
	d.ToBuy = named(d.ToBuy, NameToBuy, fill)
	return d
}

// named names unnamed boards; a list in which every board has a name of its own stays the same.
func named(list []stock.Board, format string, fill func(string, ...any) string) []stock.Board {
	if !slices.ContainsFunc(list, func(b stock.Board) bool { return b.Unnamed }) {
		return list
	}
	list = slices.Clone(list)
	for i := range list {
		if list[i].Unnamed {
			list[i].Name = fill(format, i+1)
		}
	}
	return list
}
