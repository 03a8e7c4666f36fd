package timber

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
)

// rows reads a built-in table of comma-separated values with the named columns, lines that begin with #
// left out, and hands each row on. What is refused is told with the table, the line and what the row
// calls itself in the column named.
func rows(text []byte, table string, columns []string, named int, take func(row []string) error) error {
	r := csv.NewReader(bytes.NewReader(text))
	r.Comment = '#'
	r.FieldsPerRecord = len(columns)
	head, err := r.Read()
	if err != nil {
		return fmt.Errorf("%s: %w", table, err)
	}
	if !slices.Equal(head, columns) {
		return fmt.Errorf("%s: the columns are %q, expected %q", table, head, columns)
	}
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return fmt.Errorf("%s: %w", table, err)
		}
		if err := take(row); err != nil {
			line, _ := r.FieldPos(0)
			return fmt.Errorf("%s, line %d (%s): %w", table, line, row[named], err)
		}
	}
}
