package check

import (
	"slices"
	"strings"

	"splaywright/model/part"
)

// Explained leaves out a finding that a part cannot be cut where another stop says about the same
// part, and about one of the same sizes, what is the matter and what would clear it.
func Explained(found []part.Finding) []part.Finding {
	return slices.DeleteFunc(found, func(f part.Finding) bool {
		if f.ID != part.CannotBeCut {
			return false
		}
		for _, id := range f.Parts {
			if !slices.ContainsFunc(found, func(g part.Finding) bool { return explains(g, f, id) }) {
				return false
			}
		}
		return len(f.Parts) > 0
	})
}

// explains tells whether a stop says what is the matter with one part that cannot be cut.
func explains(g, f part.Finding, id string) bool {
	return g.ID != f.ID && g.Level == part.Stop && slices.Contains(g.Parts, id) && slices.ContainsFunc(f.Sizes, func(s string) bool {
		return !wholeBoard(s) && slices.Contains(g.Sizes, s)
	})
}

// wholeBoard tells of a size that shapes a board as a whole, so that it explains nothing in particular.
func wholeBoard(path string) bool {
	for _, begin := range []string{"size.", "boards.", "splay."} {
		if strings.HasPrefix(path, begin) {
			return true
		}
	}
	return false
}
