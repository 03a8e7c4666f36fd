package form

import (
	"errors"

	"splaywright/model/part"
	"splaywright/model/solid"
)

// unbuildable reports walls that do not close. The sizes named are those of the features that are
// concerned and then the board's own.
func (b *board) unbuildable(err error) part.Finding {
	f := stop("part-cannot-be-cut", "", 0, 0, "")
	f.Parts = []string{b.part.ID}
	reason := err.Error()
	var e *solid.BuildError
	if errors.As(err, &e) {
		reason = e.Reason + " (" + list(unique(e.Tags)) + ")"
		for _, tag := range e.Tags {
			f.Sizes = append(f.Sizes, b.sizesOf[tag]...)
		}
	}
	f.Sizes = unique(append(f.Sizes, b.sizes...))
	f.Text = b.part.Name + " cannot be cut as it stands: " + reason + "."
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
