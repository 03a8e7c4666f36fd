package table

import (
	"strings"
	"unicode/utf8"
)

func pad(text string, width int, a Align) string {
	room := width - utf8.RuneCountInString(text)
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

// wrap breaks text between words, and a word that is wider than a line inside itself.
func wrap(text string, width int) []string {
	var lines []string
	line, used := "", 0
	for _, word := range strings.Fields(text) {
		for utf8.RuneCountInString(word) > width {
			if used > 0 {
				lines, line, used = append(lines, line), "", 0
			}
			runes := []rune(word)
			lines, word = append(lines, string(runes[:width])), string(runes[width:])
		}
		n := utf8.RuneCountInString(word)
		switch {
		case n == 0:
		case used == 0:
			line, used = word, n
		case used+1+n <= width:
			line, used = line+" "+word, used+1+n
		default:
			lines, line, used = append(lines, line), word, n
		}
	}
	if used > 0 || len(lines) == 0 {
		lines = append(lines, line)
	}
	return lines
}
