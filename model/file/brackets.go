package file

import (
	"strings"
	"unicode/utf8"
)

// brackets is what a text's brackets and quotes come to.
type brackets struct {
	deep spot // where more brackets stand within one another than a design has
	open spot // of the innermost bracket or quote that is never closed
	mark byte // [, {, " or '
}

// closing is what closes a bracket or a quote.
func closing(mark byte) byte {
	switch mark {
	case '[':
		return ']'
	case '{':
		return '}'
	}
	return mark
}

// bracketsOf walks a text that the library refused, to say where. It knows comments, quotes, and
// that a bracket within words of a block (title: a [b]) is none.
func bracketsOf(text string) (b brackets) {
	w := walk{text: strings.TrimPrefix(text, mark), line: 1, column: 1, fresh: true, blank: true}
	for w.at < len(w.text) {
		if !w.next(&b) {
			return b
		}
	}
	if n := len(w.open); n > 0 {
		b.open, b.mark = w.open[n-1].spot, w.open[n-1].mark
	}
	return b
}

type opened struct {
	spot
	mark byte
}

// walk is where in a text the walk stands.
type walk struct {
	text         string
	at           int
	line, column int
	fresh        bool // a value may begin here
	blank        bool // a blank or the beginning of the line stands before
	open         []opened
}

// next moves past a character, a comment or a quoted text; it gives false when what there is to say
// is said.
func (w *walk) next(b *brackets) bool {
	c := w.text[w.at]
	flow := len(w.open) > 0
	switch {
	case c == '#' && w.blank:
		for w.at < len(w.text) && lineBreak(w.text[w.at:]) == 0 {
			w.step()
		}
		return true
	case (c == '"' || c == '\'') && w.fresh:
		return w.quoted(c, b)
	case (c == '[' || c == '{') && (flow || w.fresh):
		w.open = append(w.open, opened{spot{w.line, w.column}, c})
		if len(w.open) > maxDepth {
			b.deep = spot{w.line, w.column}
			return false
		}
		w.fresh = true
	case (c == ']' || c == '}') && flow:
		w.open = w.open[:len(w.open)-1]
		w.fresh = false
	case c == ',' && flow, c == ':' && w.endsKey(flow), lineBreak(w.text[w.at:]) > 0:
		w.fresh = true
	case c == ' ' || c == '\t' || c == '-' && w.fresh:
	default:
		w.fresh = false
	}
	w.step()
	return true
}

// endsKey tells whether the colon here stands behind a key.
func (w *walk) endsKey(flow bool) bool {
	rest := w.text[w.at+1:]
	return rest == "" || strings.ContainsRune(" \t\r\n", rune(rest[0])) || flow && strings.ContainsRune(",[]{}\"'", rune(rest[0]))
}

// step moves past one character.
func (w *walk) step() {
	if n := lineBreak(w.text[w.at:]); n > 0 {
		w.at += n
		w.line, w.column, w.blank = w.line+1, 1, true
		return
	}
	c, n := utf8.DecodeRuneInString(w.text[w.at:])
	w.at += n
	w.column++
	w.blank = c == ' ' || c == '\t'
}

// quoted moves past a quoted text; false when it is never closed.
func (w *walk) quoted(q byte, b *brackets) bool {
	from := spot{w.line, w.column}
	for w.step(); w.at < len(w.text); w.step() {
		switch c := w.text[w.at]; {
		case q == '"' && c == '\\' && w.at+1 < len(w.text):
			w.step()
		case c == q && q == '\'' && strings.HasPrefix(w.text[w.at+1:], "'"):
			w.step()
		case c == q:
			w.step()
			w.fresh = false
			return true
		}
	}
	b.open, b.mark = from, q
	return false
}
