package file

import (
	"bytes"

	"gopkg.in/yaml.v3"
)

// offset gives where in the text a line and column (from 1, in characters) lie.
func (d *Document) offset(line, column int) int {
	at := 0
	for ; line > 1; line-- {
		i := bytes.IndexByte(d.src[at:], '\n')
		if i < 0 {
			return len(d.src)
		}
		at += i + 1
	}
	for ; column > 1 && at < len(d.src); column-- {
		at++
		for at < len(d.src) && d.src[at]&0xC0 == 0x80 { // the rest of a character
			at++
		}
	}
	return at
}

// scalarSpan gives from where to where a scalar on one line stands, quotes included; ok is false for
// one that runs over several lines.
func (d *Document) scalarSpan(n *yaml.Node) (start, end int, ok bool) {
	start = d.offset(n.Line, n.Column)
	rest := d.src[start:]
	switch {
	case n.Style&yaml.DoubleQuotedStyle != 0:
		end = closing(rest, '"')
	case n.Style&yaml.SingleQuotedStyle != 0:
		end = closing(rest, '\'')
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return 0, 0, false
	default:
		end = len(n.Value)
		if !bytes.HasPrefix(rest, []byte(n.Value)) {
			return 0, 0, false
		}
	}
	if end < 0 || bytes.IndexByte(rest[:end], '\n') >= 0 {
		return 0, 0, false
	}
	return start, start + end, true
}

// closing gives how far a quoted scalar reaches, -1 when its end is not found.
func closing(s []byte, quote byte) int {
	for i := 1; i < len(s); i++ {
		switch {
		case s[i] == '\\' && quote == '"':
			i++
		case s[i] == quote && quote == '\'' && i+1 < len(s) && s[i+1] == quote:
			i++
		case s[i] == quote:
			return i + 1
		}
	}
	return -1
}

// flowEnd gives where the bracket is that closes the group or list in brackets starting at start.
func (d *Document) flowEnd(start int) (end int, ok bool) {
	depth := 0
	for i := start; i < len(d.src); i++ {
		switch c := d.src[i]; c {
		case '{', '[':
			depth++
		case '}', ']':
			if depth--; depth == 0 {
				return i, true
			}
		case '"', '\'':
			if i > 0 && wordByte(d.src[i-1]) {
				continue // an inch or foot mark inside a plain scalar
			}
			n := closing(d.src[i:], c)
			if n < 0 {
				return 0, false
			}
			i += n - 1
		case '#':
			if i > 0 && (d.src[i-1] == ' ' || d.src[i-1] == '\n') {
				if n := bytes.IndexByte(d.src[i:], '\n'); n >= 0 {
					i += n
				}
			}
		}
	}
	return 0, false
}

func wordByte(c byte) bool {
	return letter(c) || c >= '0' && c <= '9' || c == '"' || c == '\'' || c == '.'
}

// lastLine is the last line that a node stands on.
func (d *Document) lastLine(n *yaml.Node) int {
	last := n.Line
	if n.Kind == yaml.ScalarNode {
		if _, _, one := d.scalarSpan(n); !one {
			return d.blockEnd(n)
		}
	}
	if n.Style&yaml.FlowStyle != 0 {
		if end, ok := d.flowEnd(d.offset(n.Line, n.Column)); ok {
			return 1 + bytes.Count(d.src[:end], []byte("\n"))
		}
	}
	for _, c := range n.Content {
		last = max(last, d.lastLine(c))
	}
	return last
}

// blockEnd is the last line of a scalar over several lines: up to the next line that is not deeper.
func (d *Document) blockEnd(n *yaml.Node) int {
	lines := bytes.Split(d.src, []byte("\n"))
	last := n.Line
	for i := n.Line; i < len(lines); i++ {
		text := bytes.TrimLeft(lines[i], " ")
		if len(text) > 0 && len(lines[i]) == len(text) {
			break
		}
		if len(text) > 0 {
			last = i + 1
		}
	}
	return last
}
