package panel

import (
	"fmt"
	"strings"

	"splaywright/app/field"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/timber"
)

// yardGroups are the rows of what a yard sells by the foot.
func yardGroups(d *form.Design, timbers []string) []Group {
	var out []Group
	for i := range d.Yard {
		out = append(out, yardGroup(i, timbers))
	}
	add := Add{Label: "Add wood of a yard", Path: "yard", Fields: [][2]string{{"sold", "4/4"}, {"price-per-board-foot", "10"}}}
	return append(out, Group{Title: "What the yard sells", Adds: []Add{add}})
}

func yardGroup(i int, timbers []string) Group {
	path := fmt.Sprintf("yard.%d", i)
	at := func(d *form.Design) form.Yard {
		if i < len(d.Yard) {
			return d.Yard[i]
		}
		return form.Yard{}
	}
	sizes := func(key, label, hint string, get func(form.Yard) []measure.Length) field.Spec {
		return field.Spec{Path: path + "." + key, Label: label, Hint: hint, Value: func(d *form.Design) any { return listed(get(at(d)), d.Units) }}
	}
	return Group{Title: fmt.Sprintf("Wood of the yard %d", i+1), Remove: path, Fields: []field.Spec{
		words(path+".timber", "Timber", func(d *form.Design) string { return at(d).Timber }, timbers...),
		words(path+".grade", "Grade", func(d *form.Design) string { return at(d).Grade }, timber.GradeNames()...),
		words(path+".sold", "Sold as", func(d *form.Design) string { return at(d).Sold }, "4/4", "5/4", "6/4", "8/4", "1 x 6", "1 x 8", "1 x 10", "2 x 6"),
		sizes("lengths", "Lengths", "such as [6 ft, 8 ft, 10 ft]", func(y form.Yard) []measure.Length { return y.Lengths }),
		sizes("widths", "Widths", "such as [6 in, 8 in, 10 in]", func(y form.Yard) []measure.Length { return y.Widths }),
		{Path: path + ".price-per-board-foot", Label: "Price, board foot", Number: true, Value: func(d *form.Design) any { return money(at(d).PerBoardFoot) }},
		{Path: path + ".price-per-foot", Label: "Price, foot of length", Number: true, Value: func(d *form.Design) any { return money(at(d).PerFoot) }},
	}}
}

// listed shows lengths as they are typed; nil where there are none.
func listed(all []measure.Length, u measure.Unit) any {
	if len(all) == 0 {
		return nil
	}
	st := measure.Style{Unit: u, Step: 0.1}
	if u == measure.Imperial {
		st.Step = measure.Inch / 16
	}
	var out []string
	for _, l := range all {
		out = append(out, st.FormatUnit(l))
	}
	return "[" + strings.Join(out, ", ") + "]"
}
