// Package table turns a piece into the tables of its papers: cut list, saw settings,
// marking and boring. Screen, terminal, paper and CSV all show the same tables.
package table

// Align is how a column's cells stand.
type Align int

// Alignments.
const (
	Left Align = iota
	Right
	Centre
)

// Column is one column's head.
type Column struct {
	Head  string
	Unit  string // "mm", "in", "deg", ""
	Align Align
	// Line is what a length is measured on or along: "outer face", "plumb", "long point to long point".
	Line string
	Own  bool // the head is a person's own words, the same in every language
}

// Cell is what is shown, and the number behind it for CSV and later the spreadsheet.
type Cell struct {
	Text   string   // its lines apart by newlines
	Number *float64 // in the column's unit, unrounded; nil for words
	Own    bool     // a person's own words, the same in every language
}

// Table is one table of the papers.
type Table struct {
	ID      string // "cut-list", "saw-settings", "marking-…", "boring"
	Title   string
	Columns []Column
	Rows    [][]Cell
	Refs    []string // one a row: the part or "part/cut" that the row is about
	Notes   []string // below the table: conventions, cautions, sources
	Keys    int      // columns that tell rows apart, where a table goes on below itself; 0 = as its blanks show
}
