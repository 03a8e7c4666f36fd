package stock

import "strings"

// Grains are the words for how the grain runs in a board, its better face up: which way it rises to that face decides from
// which end it is planed.
func Grains() []string {
	return []string{"straight", "rises to the right", "rises to the left", "wild"}
}

// Saws are the words for how a board was sawn from the log, which its end grain shows.
func Saws() []string { return []string{"flatsawn", "riftsawn", "quartersawn"} }

// Looks puts into a line what is told of a board besides its sizes.
func (b Board) Looks() string {
	var out []string
	for _, s := range []string{b.Sawn, b.grain(), b.face(), b.Note} {
		if s != "" {
			out = append(out, s)
		}
	}
	return strings.Join(out, "; ")
}

func (b Board) grain() string {
	switch b.Grain {
	case "":
		return ""
	case "straight", "wild":
		return b.Grain + " grain"
	}
	return "grain " + b.Grain
}

func (b Board) face() string {
	if b.Face == "" {
		return ""
	}
	return "better face: " + b.Face
}
