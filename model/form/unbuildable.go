package form

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"splaywright/model/part"
	"splaywright/model/solid"
)

// cannotBeCut tells of a board and what is wrong with it.
const cannotBeCut = "%s cannot be cut as it stands: %s."

// unbuildable reports walls that do not close. The sizes named are those of the features that are
// concerned and then the board's own.
func (b *board) unbuildable(err error, show shown) part.Finding {
	f := stop(part.CannotBeCut, "", 0, 0, "")
	f.Parts = []string{b.part.ID}
	reason := err.Error()
	var e *solid.BuildError
	if errors.As(err, &e) {
		tags := unique(e.Tags)
		slices.Sort(tags) // so that equal trouble on two boards reads the same
		reason = strings.Replace(e.Reason, "the slot ", "a shape ", 1) + " (" + list(tags) + ")"
		for _, tag := range e.Tags {
			f.Sizes = append(f.Sizes, b.sizesOf[tag]...)
			if strings.HasPrefix(tag, "tail ") || strings.HasPrefix(tag, "half pin") || strings.HasPrefix(tag, "pin ") {
				f.Sizes = append(f.Sizes, "corners.half-pin", "corners.tails", "corners.pin", "corners.tail")
			}
		}
	}
	name, _, _ := strings.Cut(b.part.Name, ",") // the two sides go by one name
	if text := b.trouble(err, show); text != "" {
		for _, g := range b.part.Features { // what the text names without the core's word
			if tag := shapeTag(g); strings.Contains(text, "into the "+tag+";") {
				f.Sizes = append(f.Sizes, b.sizesOf[tag]...)
			}
		}
		f.Sizes = unique(append(f.Sizes, b.sizes...))
		f.Text = fmt.Sprintf(cannotBeCut, name, text)
		return f
	}
	f.Sizes = unique(append(f.Sizes, b.sizes...))
	f.Text = fmt.Sprintf(cannotBeCut, name, reason)
	if e != nil {
		f.Text += b.meeting(e.Tags)
	}
	return f
}

// meeting says where the features stand that run into each other, and what would part them.
func (b *board) meeting(tags []string) string {
	var where []string
	for _, tag := range unique(tags) {
		for _, f := range b.part.Features {
			if shapeTag(f) == tag {
				where = append(where, fmt.Sprintf("%s about %.0f mm along and %.0f mm across", tag, f.Centre[0], f.Centre[1]))
				break
			}
		}
	}
	switch len(where) {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf(" From the middle of the board stands %s: move it or make it smaller.", where[0])
	}
	slices.Sort(where)
	return fmt.Sprintf(" From the middle of the board stand %s: move them apart or make one of them smaller.", list(where))
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
