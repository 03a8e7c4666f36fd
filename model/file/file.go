// Package file reads and writes design files. A file is read strictly: whatever is not understood
// is refused with its position, what was read and what would be accepted. Edits are spliced into
// the text, so that comments, blank lines, order and the numbers as typed survive.
package file

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"splaywright/model/timber"
)

// Version is the version of the design file that this package writes. It reads it and all before.
const Version = 1

// The limits of a design file. A design is a page or two; more is not a design.
const (
	MaxBytes = 1 << 20 // 1 MiB
	maxDepth = 12      // nested lists and groups
	maxWidth = 500     // keys of a group, items of a list
	maxTold  = 100     // errors; more are not read by anyone
)

// Error is one thing that was not understood.
type Error struct {
	File         string
	Line, Column int    // from 1; 0 when there is no place to point to
	Path         string // "size.height", "stretchers.0.width"
	Read         string // what stands there
	Want         string // why it is refused and what would be accepted
}

// Error gives place, path, what was read and what would do on one line.
func (e *Error) Error() string { return e.In(func(english string) string { return english }) }

// In is Error with what is wrong said in another language.
func (e *Error) In(say func(english string) string) string {
	var b strings.Builder
	b.WriteString(e.File)
	if e.Line > 0 {
		fmt.Fprintf(&b, ":%d:%d", e.Line, e.Column)
	}
	b.WriteString(": ")
	if e.Path != "" {
		b.WriteString(e.Path + ": ")
	}
	want := say(e.Want)
	if e.Read != "" && !strings.HasPrefix(want, fmt.Sprintf("%q: ", e.Read)) { // what is wrong may quote it already
		fmt.Fprintf(&b, "%q: ", clip(e.Read))
	}
	b.WriteString(want)
	return b.String()
}

// clip keeps a quoted text from filling the screen.
func clip(s string) string {
	if r := []rune(s); len(r) > 80 {
		return string(r[:80]) + "…"
	}
	return s
}

// Errors is everything that was not understood, in the order of the file.
type Errors []*Error

// Error gives one line an error.
func (e Errors) Error() string { return e.In(func(english string) string { return english }) }

// In is Error with what is wrong said in another language.
func (e Errors) In(say func(english string) string) string {
	lines := make([]string, len(e))
	for i, one := range e {
		lines[i] = one.In(say)
	}
	return strings.Join(lines, "\n")
}

// Document is a design file as text with what stands where in it.
type Document struct {
	name string
	src  []byte
	root *yaml.Node // the top group

	before, after timber.Book // see Know
}

// Know gives the document timbers that a person keeps elsewhere, before and after those that it tells of itself. They
// go with its copies and are not written.
func (d *Document) Know(before, after timber.Book) { d.before, d.after = before, after }

// Read reads a design file. The name is for messages. It refuses (as Errors) what is not a design
// file at all: too large, not text of this form, aliases, tags, repeated keys; what the values say
// is read by Design.
func Read(r io.Reader, name string) (*Document, error) {
	src, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return nil, Errors{{File: name, Want: fmt.Sprintf("the file cannot be read: %s", err)}}
	}
	if len(src) > MaxBytes {
		return nil, Errors{{File: name, Want: "larger than 1 MiB; a design is a page or two of text"}}
	}
	d := &Document{name: name, src: src}
	if err := d.parse(); err != nil {
		return nil, err
	}
	return d, nil
}

// parse reads src into root.
func (d *Document) parse() error {
	if e := notText(d.name, d.src); e != nil {
		return Errors{e}
	}
	dec := yaml.NewDecoder(bytes.NewReader(d.src))
	var doc yaml.Node
	switch err := dec.Decode(&doc); {
	case errors.Is(err, io.EOF):
		return Errors{{File: d.name, Want: "the file is empty; a design begins with splaywright: 1"}}
	case err != nil:
		return Errors{syntax(d.name, d.src, err)}
	}
	var next yaml.Node
	switch err := dec.Decode(&next); {
	case errors.Is(err, io.EOF):
	case err != nil:
		return Errors{syntax(d.name, d.src, err)}
	default:
		return Errors{{File: d.name, Line: next.Line, Column: next.Column, Want: "a second document follows; a file holds one design"}}
	}
	root := doc.Content[0]
	if root.Kind != yaml.MappingNode {
		return Errors{{File: d.name, Line: root.Line, Column: root.Column, Read: root.Value,
			Want: "a design is a list of keys and values and begins with splaywright: 1"}}
	}
	s := scrutiny{name: d.name, src: newSource(d.src)}
	s.look(root, "", 0)
	if len(s.errs) > 0 {
		return s.errs
	}
	d.root = root
	return nil
}

// scrutiny refuses what the format allows and a design does not.
type scrutiny struct {
	name string
	src  *source
	errs Errors
}

func (s *scrutiny) refuse(n *yaml.Node, path, read, want string) {
	s.errs = append(s.errs, &Error{s.name, n.Line, n.Column, path, read, want})
}

func (s *scrutiny) look(n *yaml.Node, path string, depth int) {
	switch {
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		s.refuse(n, path, "", "anchors (&) and aliases (*) are not used in a design; put the value under names and use its name")
		return
	case n.Style&yaml.TaggedStyle != 0 || s.src.at(n) == '!':
		s.refuse(n, path, n.Tag, "tags (!) are not used in a design; put a text that begins with ! in quotes, or leave the tag out")
		return
	case depth > maxDepth:
		s.refuse(n, path, "", fmt.Sprintf("nested too deeply for a design; at most %d groups and lists stand within one another", maxDepth))
		return
	case len(n.Content)/width(n) > maxWidth:
		s.refuse(n, path, "", fmt.Sprintf("a design has at most %d keys or items in one place", maxWidth))
		return
	case len(s.errs) >= maxTold:
		return
	}
	switch n.Kind {
	case yaml.MappingNode:
		s.keys(n, path, depth)
	case yaml.SequenceNode:
		for i, c := range n.Content {
			s.look(c, join(path, fmt.Sprint(i)), depth+1)
		}
	}
}

func (s *scrutiny) keys(n *yaml.Node, path string, depth int) {
	seen := map[string]int{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		switch {
		case k.Kind != yaml.ScalarNode:
			s.refuse(k, path, "", "a key is a word")
			continue
		case k.Anchor != "" || k.Style&yaml.TaggedStyle != 0 || s.src.at(k) == '!':
			s.refuse(k, path, k.Value, "anchors and tags are not used in a design")
		case k.Value == "<<":
			s.refuse(k, path, k.Value, "merging (<<) is not used in a design; write the keys out")
			continue
		}
		at := join(path, k.Value)
		if line, twice := seen[k.Value]; twice {
			s.refuse(k, at, k.Value, fmt.Sprintf("this key stands already in line %d; keep one of the two", line))
			continue
		}
		seen[k.Value] = k.Line
		s.look(v, at, depth+1)
	}
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// Bytes gives the text of the file as it stands.
func (d *Document) Bytes() []byte { return bytes.Clone(d.src) }

// Clone gives a document that can be edited apart from this one.
func (d *Document) Clone() *Document {
	return &Document{name: d.name, src: bytes.Clone(d.src), root: copied(d.root), before: d.before, after: d.after}
}

// copied is a tree of its own that says the same. A document has no aliases.
func copied(n *yaml.Node) *yaml.Node {
	c := *n
	c.Content = slices.Clone(n.Content)
	for i, child := range c.Content {
		c.Content[i] = copied(child)
	}
	return &c
}

// Text gives the scalar at a path as it was typed, "" when there is none.
func (d *Document) Text(path string) string {
	if n := d.find(path); n != nil && n.Kind == yaml.ScalarNode && n.Tag != "!!null" {
		return n.Value
	}
	return ""
}

// Len gives how many items the list at a path has.
func (d *Document) Len(path string) int {
	if n := d.find(path); n != nil && n.Kind == yaml.SequenceNode {
		return len(n.Content)
	}
	return 0
}
