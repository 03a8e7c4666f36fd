package file

import (
	"errors"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// errNoPlace tells that where a node ends cannot be told from the text: a block of lines, a value
// over several lines.
var errNoPlace = errors.New("the end of a value cannot be told")

// source finds nodes in the text that they were read from.
type source struct {
	text  string
	lines []int // where each line begins
}

const mark = "\uFEFF" // may stand before the first character

func newSource(src []byte) *source {
	s := &source{text: string(src)}
	start := 0
	if strings.HasPrefix(s.text, mark) {
		start = len(mark)
	}
	s.lines = []int{start}
	for i := start; i < len(s.text); {
		n := lineBreak(s.text[i:])
		if n == 0 {
			i++
			continue
		}
		i += n
		s.lines = append(s.lines, i)
	}
	return s
}

// lineBreak is the length of the line break that s begins with, as YAML has them; 0 when there is none.
func lineBreak(s string) int {
	if s == "" || s[0] >= ' ' && s[0] < 0x7f {
		return 0
	}
	for _, b := range []string{"\r\n", "\n", "\r", "\u0085", "\u2028", "\u2029"} {
		if strings.HasPrefix(s, b) {
			return len(b)
		}
	}
	return 0
}

// at is the byte that a node begins with, 0 at the end of the text.
func (s *source) at(n *yaml.Node) byte {
	if at := s.start(n); at < len(s.text) {
		return s.text[at]
	}
	return 0
}

// start is where a node begins.
func (s *source) start(n *yaml.Node) int {
	if n.Line < 1 || n.Line > len(s.lines) {
		return len(s.text)
	}
	at := s.lines[n.Line-1]
	for range n.Column - 1 {
		if at >= len(s.text) {
			break
		}
		_, size := utf8.DecodeRuneInString(s.text[at:])
		at += size
	}
	return at
}

// end is where a node ends.
func (s *source) end(n *yaml.Node) (int, error) {
	at := s.start(n)
	if n.Kind == yaml.ScalarNode {
		return s.scalarEnd(n, at)
	}
	flow := n.Style&yaml.FlowStyle != 0
	if len(n.Content) > 0 {
		last, err := s.end(n.Content[len(n.Content)-1])
		if err != nil || !flow {
			return last, err
		}
		at = last
	} else {
		at++
	}
	at = s.skip(at)
	if at >= len(s.text) || s.text[at] != ']' && s.text[at] != '}' {
		return 0, errNoPlace
	}
	return at + 1, nil
}

func (s *source) scalarEnd(n *yaml.Node, at int) (int, error) {
	rest := s.text[at:]
	switch {
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return 0, errNoPlace
	case n.Style&yaml.SingleQuotedStyle != 0:
		for i := 1; i < len(rest); i++ {
			if rest[i] != '\'' {
				continue
			}
			if i+1 == len(rest) || rest[i+1] != '\'' {
				return at + i + 1, nil
			}
			i++
		}
	case n.Style&yaml.DoubleQuotedStyle != 0:
		for i := 1; i < len(rest); i++ {
			switch rest[i] {
			case '\\':
				i++
			case '"':
				return at + i + 1, nil
			}
		}
	case strings.HasPrefix(rest, n.Value):
		return at + len(n.Value), nil
	}
	return 0, errNoPlace
}

// skip moves past blanks, line breaks, comments and commas in a flow group.
func (s *source) skip(at int) int {
	for at < len(s.text) {
		switch c := s.text[at]; {
		case c == ' ' || c == '\t' || c == ',':
			at++
		case lineBreak(s.text[at:]) > 0:
			at += lineBreak(s.text[at:])
		case c == '#':
			at = s.lineEnd(at)
		default:
			return at
		}
	}
	return at
}

// lineEnd is where the line ends that at stands in, before its break.
func (s *source) lineEnd(at int) int {
	for at < len(s.text) && lineBreak(s.text[at:]) == 0 {
		at++
	}
	return at
}

// lineStart is where the line begins that at stands in.
func (s *source) lineStart(at int) int {
	start := s.lines[0]
	for _, l := range s.lines {
		if l > at {
			break
		}
		start = l
	}
	return start
}

// newline is how this text breaks its lines.
func (s *source) newline() string {
	if len(s.lines) > 1 && strings.HasSuffix(s.text[:s.lines[1]], "\r\n") {
		return "\r\n"
	}
	return "\n"
}
