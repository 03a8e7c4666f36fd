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
		return f.ID == part.CannotBeCut && slices.ContainsFunc(found, func(g part.Finding) bool {
			return g.ID != f.ID && g.Level == part.Stop && subset(f.Parts, g.Parts) && slices.ContainsFunc(f.Sizes, func(s string) bool {
				return !wholeBoard(s) && slices.Contains(g.Sizes, s)
			})
		})
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

func subset(all, of []string) bool {
	for _, s := range all {
		if !slices.Contains(of, s) {
			return false
		}
	}
	return true
}
