package table

import (
	"strings"

	"splaywright/render/draw"
)

func pad(text string, width int, a Align) string {
	room := width - columnsOf(text)
	if room <= 0 {
		return text
	}
	switch a {
	case Right:
		return strings.Repeat(" ", room) + text
	case Centre:
		return strings.Repeat(" ", room/2) + text + strings.Repeat(" ", room-room/2)
	}
	return text + strings.Repeat(" ", room)
}

// wrap breaks text between words, Japanese between most letters, and a word that is wider than a line inside itself.
func wrap(text string, width int) []string {
	var lines []string
	line, used := "", 0
	for _, p := range wholeWords(text) {
		word, space := p.Text, 0
		for columnsOf(word) > width {
			if used > 0 {
				lines, line, used = append(lines, line), "", 0
			}
			n := fitting(word, width)
			lines, word = append(lines, word[:n]), word[n:]
		}
		if p.Apart {
			space = 1
		}
		n := columnsOf(word)
		switch {
		case n == 0:
		case used == 0:
			line, used = word, n
		case used+space+n <= width:
			line, used = line+strings.Repeat(" ", space)+word, used+space+n
		default:
			lines, line, used = append(lines, line), word, n
		}
	}
	if used > 0 || len(lines) == 0 {
		lines = append(lines, line)
	}
	return lines
}

// wholeWords are the pieces of a text without hyphenating any.
func wholeWords(text string) []draw.Piece {
	var out []draw.Piece
	for _, p := range draw.Pieces(text) {
		if n := len(out); p.Seam && n > 0 {
			out[n-1].Text += p.Text
			continue
		}
		out = append(out, p)
	}
	return out
}

// fitting is how many bytes of a word fit a width, one letter at least.
func fitting(word string, width int) int {
	for i, r := range word {
		if i > 0 && columnsOf(word[:i+len(string(r))]) > width {
			return i
		}
	}
	return len(word)
}
