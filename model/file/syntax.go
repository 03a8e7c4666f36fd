package file

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"splaywright/model/word"
)

// spot is a place in a text, from 1; a zero spot is none.
type spot struct{ line, column int }

// spotAt is the place of a byte. A column counts characters.
func spotAt(src []byte, at int) spot {
	s := newSource(src)
	start := s.lineStart(at)
	line := 1
	for line < len(s.lines) && s.lines[line] <= at {
		line++
	}
	return spot{line, 1 + utf8.RuneCountInString(s.text[min(start, at):at])}
}

// notText refuses bytes that are no plain text, with the place of the first: another encoding, a
// character that does not print, no text at all.
func notText(name string, src []byte) *Error {
	if wide(src) {
		return &Error{File: name, Line: 1, Column: 1, Want: "this text is in UTF-16, and UTF-8 is read here; save it again with the encoding UTF-8, which an editor offers under Save as"}
	}
	if bytes.IndexByte(src, 0) >= 0 && !utf8.Valid(src) {
		return &Error{File: name, Line: 1, Column: 1, Want: "this is no text but a picture or another program's file; plain text is expected"}
	}
	for at := 0; at < len(src); {
		c, size := utf8.DecodeRune(src[at:])
		if why := word.Unprinted(c, size); why != "" {
			p := spotAt(src, at)
			return &Error{File: name, Line: p.line, Column: p.column, Want: why}
		}
		at += size
	}
	return nil
}

// wide tells UTF-16 by its mark, or by a NUL in every other of the first bytes.
func wide(src []byte) bool {
	if bytes.HasPrefix(src, []byte{0xff, 0xfe}) || bytes.HasPrefix(src, []byte{0xfe, 0xff}) {
		return true
	}
	head := src[:min(len(src), 64)&^1]
	var even, odd int
	for i := 0; i+1 < len(head); i += 2 {
		if head[i] == 0 {
			even++
		}
		if head[i+1] == 0 {
			odd++
		}
	}
	half := len(head) / 2
	return half >= 4 && (even*4 > half*3 && odd == 0 || odd*4 > half*3 && even == 0)
}

// syntax says in plain words why the library refused a text. The library's message begins with
// "yaml: line 3: "; its line is that of a group's beginning at times, so that what can be seen in
// the text itself goes first.
func syntax(name string, src []byte, err error) *Error {
	text := strings.TrimPrefix(err.Error(), "yaml: ")
	line := 1 // of which the library says nothing
	if _, serr := fmt.Sscanf(text, "line %d:", &line); serr == nil {
		_, text, _ = strings.Cut(text, ": ")
	}
	e := &Error{File: name}
	b := bracketsOf(string(src))
	tab, astray := tabIndent(src, line), spot{}
	if strings.Contains(text, "expected key") {
		astray = outOfLine(src)
	}
	switch {
	case b.deep != spot{}:
		e.Line, e.Column = b.deep.line, b.deep.column
		e.Want = fmt.Sprintf("nested too deeply for a design; at most %d brackets stand within one another", maxDepth)
	case tab != spot{}:
		e.Line, e.Column = tab.line, tab.column
		e.Want = "tabs are not read as indents; use spaces, such as two for each level"
	case b.open != spot{}:
		e.Line, e.Column = b.open.line, b.open.column
		e.Read = string(b.mark)
		e.Want = fmt.Sprintf("this is never closed; put %c where it ends", closing(b.mark))
	case astray != spot{}:
		e.Line, e.Column = astray.line, astray.column
		e.Want = "this line stands under no other; keys of one group stand under one another with the same indent"
	default:
		e.Line = line
		e.Column, e.Want = plainWords(lineOf(src, line), text)
	}
	return e
}

// tabIndent is the place of the first tab that stands in the indent of a line near the one given.
func tabIndent(src []byte, near int) spot {
	for line := max(near-1, 1); line <= near+1; line++ {
		text := lineOf(src, line)
		indent := text[:len(text)-len(strings.TrimLeft(text, " \t"))]
		if i := strings.IndexByte(indent, '\t'); i >= 0 && strings.TrimSpace(text) != "" {
			return spot{line, i + 1}
		}
	}
	return spot{}
}

// outOfLine is the place of the first line whose indent is that of no line before it that it could
// stand under.
func outOfLine(src []byte) spot {
	var indents []int
	s := newSource(src)
	for line, at := range s.lines {
		text := s.text[at:s.lineEnd(at)]
		words := strings.TrimLeft(text, " ")
		if words == "" || words[0] == '#' {
			continue
		}
		indent, back := len(text)-len(words), false
		for n := len(indents); n > 0 && indents[n-1] > indent; n = len(indents) {
			indents, back = indents[:n-1], true
		}
		if n := len(indents); back && (n == 0 || indents[n-1] != indent) {
			return spot{line + 1, indent + 1}
		}
		indents = append(indents, indent)
		for strings.HasPrefix(words, "- ") {
			words = strings.TrimLeft(words[1:], " ")
			indents = append(indents, len(text)-len(words))
		}
	}
	return spot{}
}

// lineOf is a line's text, from 1, "" when there is none.
func lineOf(src []byte, line int) string {
	s := newSource(src)
	if line < 1 || line > len(s.lines) {
		return ""
	}
	at := s.lines[line-1]
	return s.text[at:s.lineEnd(at)]
}

// plainWords gives the column that a refused line is at fault in, as far as it can be told, and
// what is wrong with it.
func plainWords(line, message string) (column int, want string) {
	column = 1 + len(line) - len(strings.TrimLeft(line, " \t"))
	at := func(i int) int {
		if i < 0 {
			return column
		}
		return 1 + utf8.RuneCountInString(line[:i])
	}
	has := func(s string) bool { return strings.Contains(message, s) }
	switch {
	case has("mapping values are not allowed"):
		return at(strings.LastIndex(line, ": ")), "a value of words cannot hold a colon with a blank behind it; put the value in quotes, such as title: \"Step: low\", or begin a new line for a new key"
	case has("cannot start any token"):
		return at(strings.IndexAny(line, "@`%\t")), "a value cannot begin with this character; put the value in quotes"
	case has("could not find expected ':'"):
		return column, "a key is expected here with a colon and a blank behind it, such as title: Step"
	case has("did not find expected key"):
		return column, "the group that begins here holds a line that is no key of it; keys of one group stand under one another, each with a colon and a blank"
	case has("block sequence entries are not allowed"), has("did not find expected '-' indicator"):
		return column, "items of a list stand under one another, each on a line of its own behind a hyphen and a blank"
	case has("max depth"):
		return column, "nested too deeply for a design"
	}
	return column, fmt.Sprintf("this is not read as a design: %+s", message)
}
