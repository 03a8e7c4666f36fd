package file

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/timber"
)

// grade reads what a grade of hardwood is called.
func (r *reader) grade(to *string) taker {
	return func(n *yaml.Node, path string) {
		g, ok := timber.FindGrade(n.Value)
		if n.Kind != yaml.ScalarNode || !ok {
			r.refuse(n, path, 0, n.Value, fmt.Sprintf("one of these is expected: %+s", strings.Join(timber.GradeNames(), ", ")))
			return
		}
		*to = g.Name
	}
}

// graded refuses a grade of wood that has none of these, and boards smaller than the smallest that bears theirs.
func (r *reader) graded(d *form.Design) {
	for i, y := range d.Yard {
		g, ok := timber.FindGrade(y.Grade)
		row := fmt.Sprintf("yard.%d", i)
		n := r.doc.find(join(row, "grade"))
		if !ok || n == nil {
			continue
		}
		if r.softwood(d, y) {
			r.refuse(n, join(row, "grade"), 0, n.Value, "this is a grade of hardwood, and its row is of softwood, which has grades of its own; take the grade out of the row")
			continue
		}
		longest, widest := largest(y.Lengths, g.Length), largest(y.Widths, g.Width)
		for k, l := range y.Lengths {
			if !g.LongEnough(l) {
				r.tooSmall(join(row, fmt.Sprintf("lengths.%d", k)), g, l, widest)
			}
		}
		for k, w := range y.Widths {
			if !g.WideEnough(w) {
				r.tooSmall(join(row, fmt.Sprintf("widths.%d", k)), g, longest, w)
			}
		}
	}
}

func largest(some []measure.Length, least measure.Length) measure.Length {
	for _, l := range some {
		least = max(least, l)
	}
	return least
}

// tooSmall refuses a length or a width that no board of a grade has, and says which grade has it.
func (r *reader) tooSmall(path string, g timber.Grade, length, width measure.Length) {
	n := r.doc.find(path)
	if n == nil {
		return
	}
	least := fmt.Sprintf("boards of %+s are %.0f in × %.0f ft at least, and half an inch narrower once they are kiln-dried", g.Name, g.Width.Inches(), g.Length.Inches()/12)
	if other, ok := timber.Bears(length, width); ok {
		r.refuse(n, path, 0, n.Value, fmt.Sprintf("%s; take it out, or give it a row with the grade %+s, whose boards are %.0f in × %.0f ft at least", least, other.Name, other.Width.Inches(), other.Length.Inches()/12))
		return
	}
	r.refuse(n, path, 0, n.Value, fmt.Sprintf("%s; take it out, or give it a row without a grade", least))
}

// softwood tells whether a row of a yard is of softwood, by the words that it is sold by or by its timber.
func (r *reader) softwood(d *form.Design, y form.Yard) bool {
	if y.Sold != "" {
		asked, err := timber.Asked(y.Sold)
		return err == nil && asked.Thickness.Ladder == timber.SoftwoodThickness
	}
	s, ok := slices.Concat(r.doc.before, d.Timbers, r.doc.after).Find(cmp.Or(y.Timber, d.Timber))
	return ok && s.Wood == timber.Softwood
}
