package table

import (
	"fmt"
	"sort"
	"strings"

	"splaywright/model/form"
	"splaywright/model/part"
)

// group is a set of equal parts: cut from the same blank by the same cuts to the same volume.
// A left and a right part that mirror each other are equal in that sense.
type group []*part.Part

// groups keeps the order in which the parts first appear.
func groups(p *form.Piece) []group {
	var order []group
	at := map[string]int{}
	for _, q := range p.Parts {
		key := likeness(q)
		i, seen := at[key]
		if !seen {
			i = len(order)
			at[key] = i
			order = append(order, nil)
		}
		order[i] = append(order[i], q)
	}
	return order
}

// likeness is equal for parts that one entry of the cut list can stand for. A micrometre and a
// hundred-thousandth of a degree are taken as the same.
func likeness(q *part.Part) string {
	var cuts []string
	for _, c := range q.Cuts {
		cuts = append(cuts, fmt.Sprintf("%s %.5f %.5f %t %.3f",
			c.Kind, c.Swing.Degrees(), c.Tilt.Degrees(), c.OuterLonger, c.Length.MM()))
	}
	sort.Strings(cuts)
	return fmt.Sprintf("%s|%.3f %.3f %.3f|%.3f %.3f %.3f|%.1f|%s", q.Timber,
		q.Blank.Length.MM(), q.Blank.Width.MM(), q.Blank.Thickness.MM(),
		q.Rough.Length.MM(), q.Rough.Width.MM(), q.Rough.Thickness.MM(),
		q.Volume, strings.Join(cuts, ","))
}

func (g group) marks() string {
	var marks []string
	for _, q := range g {
		if q.Mark != "" {
			marks = append(marks, q.Mark)
		}
	}
	sort.Strings(marks)
	return strings.Join(marks, ", ")
}

func (g group) name() string {
	var names []string
	for _, q := range g {
		names = append(names, q.Name)
	}
	return joinNames(names)
}

// joinNames writes "Side, left" and "Side, right" as "Side, left and right".
func joinNames(names []string) string {
	if len(names) == 1 {
		return names[0]
	}
	stem, _, found := strings.Cut(names[0], ", ")
	var tails []string
	for _, n := range names {
		s, tail, ok := strings.Cut(n, ", ")
		if !ok || s != stem {
			found = false
		}
		tails = append(tails, tail)
	}
	if found {
		return stem + ", " + and(tails)
	}
	return and(names)
}

func and(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	last := len(list) - 1
	return strings.Join(list[:last], ", ") + " and " + list[last]
}
