package file

import (
	"fmt"
	"slices"

	"gopkg.in/yaml.v3"

	"splaywright/model/form"
	"splaywright/model/tongue"
)

func (r *reader) papers(p *form.Papers) taker {
	return r.group(fields{
		"sheet":      r.choice(&p.Sheet, form.Sheets...),
		"projection": r.choice(&p.Projection, "first", "third"),
		"eye-height": r.length(&p.EyeHeight, aboveZero), "eye-distance": r.length(&p.EyeDistance, aboveZero),
		"turn":   r.maybeTurn(&p.Turn),
		"bottom": r.no(&p.NoBottom),
		"tongue": r.choice(&p.Tongue, tongue.Codes()...),
		"only":   r.choices(&p.Only, form.PaperNames),
		"as":     r.choices(&p.As, form.PaperKinds),
		"patterns": r.group(fields{
			"on":      r.yes(&p.Patterns.On),
			"bar-x":   r.length(&p.Patterns.BarX, aboveZero),
			"bar-y":   r.length(&p.Patterns.BarY, aboveZero),
			"margin":  r.length(&p.Patterns.Margin, aboveZero),
			"overlap": r.length(&p.Patterns.Overlap, aboveZero),
		}),
		"owner":       r.text(&p.Block.Owner),
		"drawn-by":    r.text(&p.Block.DrawnBy),
		"approved-by": r.text(&p.Block.ApprovedBy),
		"date":        r.text(&p.Block.Date),
		"number":      r.text(&p.Block.Number),
	})
}

// choices reads a list of some of the words, each once.
func (r *reader) choices(to *[]string, words []string) taker {
	var list []string
	item := r.list(func(n *yaml.Node, path string, _ int) {
		word := ""
		r.choice(&word, words...)(n, path)
		switch {
		case word == "":
		case slices.Contains(list, word):
			r.refuse(n, path, 0, word, fmt.Sprintf("%+s stands here twice; once is enough", word))
		default:
			list = append(list, word)
		}
	})
	return func(n *yaml.Node, path string) {
		list = nil
		item(n, path)
		*to = list
	}
}

func (r *reader) round(to *form.Round) taker {
	decimal := ""
	return func(n *yaml.Node, path string) {
		r.group(fields{
			"to":      r.length(&to.To, aboveZero),
			"both":    r.yes(&to.Both),
			"decimal": r.choice(&decimal, "point", "comma"),
		})(n, path)
		to.Comma, to.Said = decimal == "comma", decimal != ""
	}
}
