package file

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/timber"
)

const (
	mostYard  = 30 // rows
	mostSizes = 20 // lengths or widths of one
)

// yard reads what a yard sells by the foot.
func (r *reader) yard(to *[]form.Yard) taker {
	return r.list(func(n *yaml.Node, path string, i int) {
		if r.more(n, path, i, mostYard, "rows of a yard") {
			return
		}
		var y form.Yard
		r.group(fields{
			"timber":               r.text(&y.Timber),
			"grade":                r.grade(&y.Grade),
			"sold":                 r.sold(&y.Sold),
			"lengths":              r.sizes(&y.Lengths),
			"widths":               r.sizes(&y.Widths),
			"price-per-board-foot": r.price(&y.PerBoardFoot),
			"price-per-foot":       r.price(&y.PerFoot),
		})(n, path)
		if second := child(n, "price-per-foot"); second != nil && child(n, "price-per-board-foot") != nil {
			r.refuse(second, join(path, "price-per-foot"), 0, second.Value, "wood has one price here: by the board foot or by the foot of length")
		}
		*to = append(*to, y)
	})
}

// sold reads the words that wood is asked for by.
func (r *reader) sold(to *string) taker {
	return func(n *yaml.Node, path string) {
		r.text(to)(n, path)
		if *to == "" {
			return
		}
		if _, err := timber.Asked(*to); err != nil {
			r.refuse(n, path, 0, n.Value, err.Error())
		}
	}
}

// sizes reads a list of lengths.
func (r *reader) sizes(to *[]measure.Length) taker {
	return r.list(func(n *yaml.Node, path string, i int) {
		if i == mostSizes {
			r.refuse(n, path, 0, n.Value, fmt.Sprintf("more than %d sizes are not taken", mostSizes))
		}
		if i >= mostSizes {
			return
		}
		*to = append(*to, 0)
		r.length(&(*to)[i], aboveZero)(n, path)
	})
}
