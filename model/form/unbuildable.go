package form

import (
	"errors"
	"slices"
	"strings"

	"splaywright/model/part"
	"splaywright/model/solid"
)

// unbuildable reports walls that do not close. The sizes named are those of the features that are
// concerned and then the board's own.
func (b *board) unbuildable(err error) part.Finding {
	f := stop(part.CannotBeCut, "", 0, 0, "")
	f.Parts = []string{b.part.ID}
	reason := err.Error()
	var e *solid.BuildError
	if errors.As(err, &e) {
		tags := unique(e.Tags)
		slices.Sort(tags) // so that equal trouble on two boards reads the same
		reason = e.Reason + " (" + list(tags) + ")"
		for _, tag := range e.Tags {
			f.Sizes = append(f.Sizes, b.sizesOf[tag]...)
		}
	}
	f.Sizes = unique(append(f.Sizes, b.sizes...))
	name, _, _ := strings.Cut(b.part.Name, ",") // the two sides go by one name
	f.Text = name + " cannot be cut as it stands: " + reason + "."
	return f
}

// unique keeps the first of equal words.
func unique(words []string) []string {
	var out []string
	seen := map[string]bool{}
	for _, w := range words {
		if !seen[w] {
			seen[w] = true
			out = append(out, w)
		}
	}
	return out
}
