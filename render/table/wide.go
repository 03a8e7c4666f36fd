package table

import "splaywright/render/draw"

// columnsOf is how many columns of a terminal a text takes: Japanese letters take two each.
func columnsOf(text string) int {
	n := 0
	for _, r := range text {
		n++
		if draw.Foreign(r) {
			n++
		}
	}
	return n
}
