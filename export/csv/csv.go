// Package csv writes tables as comma-separated values for other programs.
package csv

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"splaywright/render/table"
)

// Write writes a table: one line of heads with their units, then the rows. A cell with a number
// behind it is written as that number, unrounded, in the column's unit; other cells as their
// words. Words that a spreadsheet would take for a formula are led by an apostrophe. Notes are
// left out: they are not data.
func Write(w io.Writer, t table.Table) error {
	out := csv.NewWriter(w)
	heads := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = harmless(head(c))
	}
	rows := [][]string{heads}
	for _, row := range t.Rows {
		line := make([]string, len(row))
		for i, c := range row {
			line[i] = value(c)
		}
		rows = append(rows, line)
	}
	if err := out.WriteAll(rows); err != nil {
		return fmt.Errorf("table %q as CSV: %w", t.ID, err)
	}
	return nil
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
	return harmless(c.Text)
}

// harmless keeps words from being read as a formula by the program that opens the file.
func harmless(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r", rune(text[0])) {
		return "'" + text
	}
	return text
}
