package word

import (
	"fmt"
	"unicode/utf8"
)

// Unprinted says why a character has no place in a file of plain text, nothing for one that has. It takes what
// utf8.DecodeRune gives.
func Unprinted(c rune, size int) string {
	switch {
	case c == utf8.RuneError && size == 1:
		return "this character is not in UTF-8; save the text again with the encoding UTF-8, which an editor offers under Save as"
	case c == '\t' || c == '\n' || c == '\r' || c == 0x85:
		return ""
	case c < ' ' || c >= 0x7f && c < 0xa0 || c == 0xfffe || c == 0xffff:
		return fmt.Sprintf("a character that does not print stands here (U+%04X); take it out, plain text is expected", c)
	}
	return ""
}
