package table

import (
	"splaywright/model/measure"
	"splaywright/model/tongue"
)

// In gives the table as people read it, in their language: title, heads, units, cells and notes, but not what its rows
// are about, and figures below nothing with a minus sign. Its numbers stay. nil is English.
func (t Table) In(speak *tongue.Tongue) Table {
	out := t
	out.Title = speak.Say(t.Title)
	out.Notes = make([]string, len(t.Notes))
	for i, n := range t.Notes {
		out.Notes[i] = measure.Minus(speak.Say(n))
	}
	out.Columns = make([]Column, len(t.Columns))
	for i, c := range t.Columns {
		if !c.Own {
			c.Head = speak.Say(c.Head)
		}
		c.Unit = speak.Say(c.Unit)
		out.Columns[i] = c
	}
	out.Rows = make([][]Cell, len(t.Rows))
	for i, row := range t.Rows {
		cells := make([]Cell, len(row))
		for k, c := range row {
			if !c.Own {
				c.Text = measure.Minus(speak.Say(c.Text))
			}
			cells[k] = c
		}
		out.Rows[i] = cells
	}
	return out
}

// AllIn gives each of several tables in another language.
func AllIn(list []Table, speak *tongue.Tongue) []Table {
	out := make([]Table, len(list))
	for i, t := range list {
		out[i] = t.In(speak)
	}
	return out
}
