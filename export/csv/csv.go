// Package csv writes tables as comma-separated values for other programs.
package csv

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"splaywright/render/table"
)

// Write writes a table: one line of heads with their units, then the rows. A cell with a number
// behind it is written as that number, unrounded, in the column's unit; other cells as their
// words, with hyphens for minus signs. Words that a spreadsheet would take for a formula are led by an apostrophe. Where rows
// are about a part or a cut, the last column "About" holds its id. Notes are left out: they are
// not data.
func Write(w io.Writer, t table.Table) error {
	out := csv.NewWriter(w)
	rows := [][]string{heads(t)}
	for i, row := range t.Rows {
		var line []string
		for _, c := range row {
			line = append(line, value(c))
		}
		if about(t) {
			line = append(line, harmless(t.Refs[i]))
		}
		rows = append(rows, line)
	}
	if err := out.WriteAll(rows); err != nil {
		return fmt.Errorf("table %q as CSV: %w", t.ID, err)
	}
	return nil
}

// about tells whether any row is about a part or a cut.
func about(t table.Table) bool {
	return slices.ContainsFunc(t.Refs, func(ref string) bool { return ref != "" })
}

func heads(t table.Table) []string {
	var line []string
	for _, c := range t.Columns {
		line = append(line, harmless(head(c)))
	}
	if about(t) {
		line = append(line, "About")
	}
	return line
}

func head(c table.Column) string {
	if c.Unit == "" {
		return c.Head
	}
	return c.Head + " (" + c.Unit + ")"
}

func value(c table.Cell) string {
	if c.Number != nil {
		return strconv.FormatFloat(*c.Number, 'f', -1, 64)
	}
	return harmless(strings.ReplaceAll(c.InOneLine(), "−", "-"))
}

// harmless keeps words from being read as a formula by the program that opens the file.
func harmless(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r", rune(text[0])) {
		return "'" + text
	}
	return text
}
