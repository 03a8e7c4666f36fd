package file

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// add puts a value at a path where nothing stands yet, with the groups that are missing on the way.
func (d *Document) add(path string, value *yaml.Node) error {
	at, rest := "", strings.Split(path, ".")
	n := d.root
	for len(rest) > 1 {
		next := child(n, rest[0])
		if next == nil {
			break
		}
		at, rest, n = join(at, rest[0]), rest[1:], next
	}
	for _, key := range rest {
		if strings.Trim(key, "0123456789") == "" {
			return &Error{File: d.name, Path: path, Want: fmt.Sprintf("the list has no item %+s; items are counted from 0", key)}
		}
	}
	for i := len(rest) - 1; i > 0; i-- {
		value = group(rest[i], value)
	}
	switch {
	case isNull(n):
		whole := group(rest[0], value)
		return d.change(path,
			func(root *yaml.Node) error { return replace(root, at, whole) },
			func(s *source) (patch, error) { return s.overwrite(n, flow(whole, true)) })
	case n.Kind != yaml.MappingNode:
		return &Error{File: d.name, Path: path, Want: fmt.Sprintf("%+s is not a group of keys and values", at)}
	}
	return d.enter(path, at, rest[0], value, nil)
}

// enter puts a key with its value into the group at a path, behind the key that it follows in the
// order of the format. lines is how the value is written in a group that has a line for each key;
// nil = on one line.
func (d *Document) enter(path, at, key string, value *yaml.Node, lines func(indent, newline string) string) error {
	n := d.find(at)
	i := before(n, pattern(at), key)
	return d.change(path,
		func(root *yaml.Node) error {
			m := (&Document{root: root}).find(at)
			m.Content = slices.Insert(m.Content, 2*i, plain(key), value)
			return nil
		},
		func(s *source) (patch, error) {
			if n.Style&yaml.FlowStyle != 0 {
				return s.enterFlow(n, i, flow(plain(key), true)+": "+flow(value, true))
			}
			return s.enterLine(n, i, flow(plain(key), false)+":", value, lines)
		})
}

func group(key string, value *yaml.Node) *yaml.Node {
	return &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map", Style: yaml.FlowStyle, Content: []*yaml.Node{plain(key), value}}
}

// before is before which of a group's keys a new one belongs.
func before(n *yaml.Node, at, key string) int {
	order := shape[at]
	mine, place := slices.Index(order, key), -1
	for i := 0; i+1 < len(n.Content); i += 2 {
		if k := slices.Index(order, n.Content[i].Value); k >= 0 && k < mine {
			place = i/2 + 1
		}
	}
	if place < 0 {
		return len(n.Content) / 2
	}
	return place
}

func (s *source) enterFlow(n *yaml.Node, i int, entry string) (patch, error) {
	if i > 0 {
		at, err := s.end(n.Content[2*i-1])
		return patch{at, at, ", " + entry}, err
	}
	at := s.start(n) + 1
	if len(n.Content) > 0 {
		entry += ", "
	}
	return patch{at, at, entry}, nil
}

func (s *source) enterLine(n *yaml.Node, i int, key string, value *yaml.Node, lines func(indent, newline string) string) (patch, error) {
	if i == 0 {
		return patch{}, errNoPlace
	}
	at, err := s.end(n.Content[2*i-1])
	if err != nil {
		return patch{}, err
	}
	at = s.lineEnd(at)
	indent := strings.Repeat(" ", n.Content[0].Column-1)
	text := " " + flow(value, false)
	if lines != nil {
		text = lines(indent, s.newline())
	}
	return patch{at, at, s.newline() + indent + key + text + s.last(at)}, nil
}

// last is a line break where the text ends without one.
func (s *source) last(at int) string {
	if at == len(s.text) {
		return s.newline()
	}
	return ""
}

// Append puts a new item with the fields given at the end of the list at a path, which is made where
// it is missing. A field's key may be a path within the item (screws.gauge). The error is an *Error.
func (d *Document) Append(path string, fields ...[2]string) error {
	item := &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map", Style: yaml.FlowStyle}
	for _, f := range fields {
		if word, why := place(path + ".0." + f[0]); why != "" {
			return &Error{File: d.name, Path: path, Read: word, Want: why}
		}
		put(item, strings.Split(f[0], "."), f[1])
	}
	n := d.find(path)
	if n == nil || isNull(n) || len(n.Content) == 0 && n.Kind == yaml.SequenceNode {
		return d.begin(path, n, item)
	}
	if n.Kind != yaml.SequenceNode {
		return &Error{File: d.name, Path: path, Want: "this is not a list"}
	}
	return d.change(path,
		func(root *yaml.Node) error {
			list := (&Document{root: root}).find(path)
			list.Content = append(list.Content, item)
			return nil
		},
		func(s *source) (patch, error) {
			at, err := s.end(n.Content[len(n.Content)-1])
			if err != nil || n.Style&yaml.FlowStyle != 0 {
				return patch{at, at, ", " + flow(item, true)}, err
			}
			at = s.lineEnd(at)
			return patch{at, at, s.newline() + strings.Repeat(" ", n.Column-1) + "- " + flow(item, true) + s.last(at)}, nil
		})
}

// put sets a value in a new group.
func put(m *yaml.Node, keys []string, text string) {
	if len(keys) == 1 {
		m.Content = append(m.Content, plain(keys[0]), plain(text))
		return
	}
	next := child(m, keys[0])
	if next == nil {
		next = &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map", Style: yaml.FlowStyle}
		m.Content = append(m.Content, plain(keys[0]), next)
	}
	put(next, keys[1:], text)
}

// begin makes a list of one item, in the place of an empty one if there is one.
func (d *Document) begin(path string, old, item *yaml.Node) error {
	list := &yaml.Node{Kind: yaml.SequenceNode, Tag: "!!seq", Content: []*yaml.Node{item}}
	at, key := cut(path)
	line := func(indent, newline string) string { return newline + indent + "  - " + flow(item, true) }
	switch parent := d.find(at); {
	case parent == nil || parent.Kind != yaml.MappingNode:
		return &Error{File: d.name, Path: path, Want: fmt.Sprintf("there is no group %+s to put this into", at)}
	case old == nil:
		return d.enter(path, at, key, list, line)
	}
	return d.change(path,
		func(root *yaml.Node) error { return replace(root, path, list) },
		func(s *source) (patch, error) { return s.beginList(old, flow(list, true), d.inFlow(path), line) })
}

// beginList puts the first item below the key whose list was empty, and keeps a comment behind it.
func (s *source) beginList(old *yaml.Node, oneLine string, inFlow bool, lines func(indent, newline string) string) (patch, error) {
	p, err := s.overwrite(old, oneLine)
	if err != nil || inFlow {
		return p, err
	}
	end := s.lineEnd(p.to)
	rest := strings.TrimSpace(s.text[p.to:end])
	from := p.from
	if rest == "" {
		from = len(strings.TrimRight(s.text[:from], " "))
	}
	start := s.lineStart(p.from)
	indent := s.text[start : start+len(s.text[start:])-len(strings.TrimLeft(s.text[start:], " "))]
	return patch{from, end, rest + lines(indent, s.newline()) + s.last(end)}, nil
}
