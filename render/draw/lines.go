package draw

import (
	"strings"
	"unicode/utf8"
)

// Piece is a stretch of a text that no line is broken in. Apart tells that a blank stands before it.
type Piece struct {
	Text  string
	Apart bool
}

// notFirst and notLast are the signs that Japanese begins and ends no line with (JIS X 4051, from memory).
const (
	notFirst = "、。，．・：；？！ー々）」』】〉》〕］｝”’ぁぃぅぇぉっゃゅょゎァィゥェォッャュョヮヵヶ％°…–—"
	notLast  = "（「『【〈《〔［｛“‘"
)

// Pieces takes a text apart where its lines may be broken: at blanks, and before and after Japanese letters as
// far as the signs between them let it.
func Pieces(s string) []Piece {
	var out []Piece
	for _, word := range strings.Fields(s) {
		apart, from := len(out) > 0, 0
		for i, r := range word {
			if i == 0 {
				continue
			}
			before, _ := utf8.DecodeLastRuneInString(word[:i])
			if !breaks(before, r) {
				continue
			}
			out = append(out, Piece{word[from:i], apart})
			apart, from = false, i
		}
		out = append(out, Piece{word[from:], apart})
	}
	return out
}

// breaks tells whether a line may be broken between two letters of a word.
func breaks(a, b rune) bool {
	if !Foreign(a) && !Foreign(b) {
		return false
	}
	return !strings.ContainsRune(notLast, a) && !strings.ContainsRune(notFirst, b) && !strings.ContainsRune(narrowNotFirst, b) && !strings.ContainsRune(narrowNotLast, a)
}

// The same of Latin signs beside Japanese letters.
const (
	narrowNotFirst = ")],.;:!?%"
	narrowNotLast  = "(["
)

// Foreign tells whether a letter belongs to a script that is written without blanks between words: kana, Chinese
// characters, and the signs and wide letters that go with them.
func Foreign(r rune) bool {
	return r >= 0x2E80 && r <= 0x9FFF || r >= 0xF900 && r <= 0xFAFF || r >= 0xFF00 && r <= 0xFFEF
}
