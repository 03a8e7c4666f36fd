package draw

import (
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"splaywright/assets"
)

// Piece is a stretch of a text that no line is broken in. Apart tells that a blank stands before it, Seam that the line
// before ends with a hyphen when it is broken here.
type Piece struct {
	Text        string
	Apart, Seam bool
}

var seams = sync.OnceValue(assets.Seams)

// seamed takes a word apart where it may be hyphenated; what stands before and behind its letters stays with it.
func seamed(word string) []string {
	const long = 8 // bytes; shorter words stay whole
	if len(word) < long {
		return []string{word}
	}
	from := strings.IndexFunc(word, unicode.IsLetter)
	if from < 0 {
		return []string{word}
	}
	to := from + strings.IndexFunc(word[from:]+" ", func(r rune) bool { return !unicode.IsLetter(r) })
	parts := seams()[word[from:to]]
	if len(parts) < 2 {
		return []string{word}
	}
	parts = slices.Clone(parts)
	parts[0] = word[:from] + parts[0]
	parts[len(parts)-1] += word[to:]
	return parts
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
			out = append(out, Piece{word[from:i], apart, false})
			apart, from = false, i
		}
		for i, part := range seamed(word[from:]) {
			out = append(out, Piece{part, apart && i == 0, i > 0})
		}
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
