package table

import "strings"

// InOneLine is a cell's text for where it can have no lines, a file of records or the clipboard. Lines are sentences or
// what follows a colon, so a blank keeps them apart.
func (c Cell) InOneLine() string { return strings.ReplaceAll(c.Text, "\n", " ") }

// Lines are the lines of a text, each broken by how where it is too wide.
func Lines(text string, how func(line string) []string) []string {
	var out []string
	for line := range strings.SplitSeq(text, "\n") {
		out = append(out, how(line)...)
	}
	return out
}

// Widest is the width of a text's widest line.
func Widest[N int | float32 | float64](text string, of func(line string) N) N {
	var wide N
	for line := range strings.SplitSeq(text, "\n") {
		wide = max(wide, of(line))
	}
	return wide
}
