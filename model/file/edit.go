package file

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// patch replaces a stretch of the text.
type patch struct {
	from, to int
	text     string
}

// change edits the document. node makes the change in the tree; splice says where the text is to be
// changed for the same. Where the spliced text does not read as the changed tree, the tree is written
// out instead, which keeps comments and order but not blank lines.
func (d *Document) change(path string, node func(root *yaml.Node) error, splice func(s *source) (patch, error)) error {
	want := d.Clone()
	if err := node(want.root); err != nil {
		return &Error{File: d.name, Path: path, Want: err.Error()}
	}
	values := map[string]string{}
	flatten(want.root, "", values)
	if p, err := splice(newSource(d.src)); err == nil {
		text := bytes.Join([][]byte{d.src[:p.from], []byte(p.text), d.src[p.to:]}, nil)
		if d.take(text, values) {
			return nil
		}
	}
	var out bytes.Buffer
	enc := yaml.NewEncoder(&out)
	enc.SetIndent(2)
	if err := enc.Encode(want.root); err != nil {
		return &Error{File: d.name, Path: path, Want: fmt.Sprintf("this cannot be written: %s", err)}
	}
	if !d.take(out.Bytes(), values) {
		return &Error{File: d.name, Path: path, Want: "this cannot be written into the file"}
	}
	return nil
}

// take makes text the document's if it reads as the values wanted.
func (d *Document) take(text []byte, want map[string]string) bool {
	if len(text) > MaxBytes {
		return false
	}
	next := &Document{name: d.name, src: text, before: d.before, after: d.after}
	if next.parse() != nil {
		return false
	}
	got := map[string]string{}
	flatten(next.root, "", got)
	if !maps.Equal(got, want) {
		return false
	}
	*d = *next
	return true
}

// flatten lists what every path of a tree holds.
func flatten(n *yaml.Node, path string, out map[string]string) {
	switch {
	case n.Kind == yaml.MappingNode:
		out[path] = "{" + strconv.Itoa(len(n.Content)/2)
		for i := 0; i+1 < len(n.Content); i += 2 {
			flatten(n.Content[i+1], join(path, n.Content[i].Value), out)
		}
	case n.Kind == yaml.SequenceNode:
		out[path] = "[" + strconv.Itoa(len(n.Content))
		for i, c := range n.Content {
			flatten(c, join(path, strconv.Itoa(i)), out)
		}
	case isNull(n):
		out[path] = "~"
	default:
		out[path] = "=" + n.Value
	}
}

// Set puts text at a path as a person types it. Groups that are missing are made; an item of a list
// must be there. A list of values is typed in square brackets. The error is an *Error.
func (d *Document) Set(path, text string) error {
	if word, why := place(path); why != "" {
		return &Error{File: d.name, Path: path, Read: word, Want: why}
	}
	value, err := typed(path, text)
	if err != nil {
		return &Error{File: d.name, Path: path, Read: text, Want: err.Error()}
	}
	if old := d.find(path); old != nil {
		if value.Kind == yaml.ScalarNode && d.retype(old, text) {
			return nil
		}
		if old.Kind == yaml.ScalarNode && value.Kind == yaml.ScalarNode {
			value.Style = kept(old)
		}
		return d.change(path,
			func(root *yaml.Node) error { return replace(root, path, value) },
			func(s *source) (patch, error) { return s.overwrite(old, flow(value, d.inFlow(path))) })
	}
	return d.add(path, value)
}

// plainLists are the lists of values that are typed as one text, each with an example.
var plainLists = map[string]string{
	"corners.tail-widths": "[38, 52, 38]",
	"yard.#.lengths":      "[6 ft, 8 ft, 10 ft]",
	"yard.#.widths":       "[6 in, 8 in, 10 in]",
	"papers.only":         "[drawings, cut-list, steps]",
	"papers.as":           "[pdf, svg]",
}

// typed makes a node of a typed text.
func typed(path, text string) (*yaml.Node, error) {
	_, single := shape[pattern(path)]
	if !single {
		return plain(text), nil
	}
	like, isList := plainLists[pattern(path)]
	if !isList {
		return nil, errors.New(instead(path))
	}
	var doc yaml.Node
	if yaml.Unmarshal([]byte(text), &doc) == nil && len(doc.Content) == 1 && doc.Content[0].Kind == yaml.SequenceNode {
		s := scrutiny{src: newSource([]byte(text))}
		s.look(doc.Content[0], path, maxDepth-1)
		if len(s.errs) == 0 {
			return doc.Content[0], nil
		}
	}
	return nil, fmt.Errorf("a list in square brackets is expected, such as %+s", like)
}

// instead says what to set where a path leads to a group or a list of groups.
func instead(path string) string {
	inner := shape[pattern(path)]
	if !slices.Equal(inner, []string{"#"}) {
		return fmt.Sprintf("this is a group, not a value; set one of its keys: %+s", path+"."+strings.Join(inner, ", "+path+"."))
	}
	if item := shape[pattern(join(path, "#"))]; len(item) > 0 {
		return fmt.Sprintf("this is a list of groups, not a value; set a key of one item, such as %+s", join(path, "0."+item[0]))
	}
	return "this is a list of groups, not a value"
}

func plain(text string) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: text}
}

// kept is the quoting that a new text takes over: that of a text that had no need of it.
func kept(old *yaml.Node) yaml.Style {
	if bare(old.Value, true) {
		return old.Style & (yaml.SingleQuotedStyle | yaml.DoubleQuotedStyle)
	}
	return 0
}

// bare tells whether a text can stand without quotes.
func bare(text string, inFlow bool) bool {
	src := "k: " + text
	if inFlow {
		src = "{k: " + text + ", z: 1}"
	}
	var doc yaml.Node
	if yaml.Unmarshal([]byte(src), &doc) != nil || len(doc.Content) != 1 {
		return false
	}
	m := doc.Content[0]
	if m.Kind != yaml.MappingNode || len(m.Content) != map[bool]int{false: 2, true: 4}[inFlow] {
		return false
	}
	v := m.Content[1]
	return v.Kind == yaml.ScalarNode && v.Value == text && v.Style == 0 && v.Anchor == "" && v.Tag != "!!null" && v.Tag != "!!merge"
}

// flow writes a node on one line.
func flow(n *yaml.Node, inFlow bool) string {
	parts := make([]string, 0, len(n.Content))
	switch n.Kind {
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			parts = append(parts, flow(n.Content[i], true)+": "+flow(n.Content[i+1], true))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case yaml.SequenceNode:
		for _, c := range n.Content {
			parts = append(parts, flow(c, true))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	simple := !strings.ContainsFunc(n.Value, func(c rune) bool {
		return c < ' ' || c == 0x7f || c == 0x85 || c == 0x2028 || c == 0x2029 || c == 0xFEFF
	})
	switch {
	case isNull(n):
		return "~"
	case n.Style&yaml.DoubleQuotedStyle != 0 || !simple:
		return strconv.Quote(n.Value)
	case n.Style&yaml.SingleQuotedStyle == 0 && bare(n.Value, inFlow):
		return n.Value
	case n.Style&yaml.SingleQuotedStyle == 0 && !strings.ContainsAny(n.Value, `"\`):
		return `"` + n.Value + `"`
	}
	return "'" + strings.ReplaceAll(n.Value, "'", "''") + "'"
}

// inFlow tells whether what stands at a path stands within brackets.
func (d *Document) inFlow(path string) bool {
	for path != "" {
		path, _ = cut(path)
		if n := d.find(path); n != nil && n.Style&yaml.FlowStyle != 0 {
			return true
		}
	}
	return false
}

// overwrite is the patch that puts text in the place of a node.
func (s *source) overwrite(n *yaml.Node, text string) (patch, error) {
	from := s.start(n)
	to := from
	if !isNull(n) || n.Value != "" {
		var err error
		if to, err = s.end(n); err != nil {
			return patch{}, err
		}
	}
	if from == to && from > 0 && s.text[from-1] != ' ' {
		text = " " + text
	}
	return patch{from, to, text}, nil
}

// replace puts a node in the place of the one at a path.
func replace(root *yaml.Node, path string, value *yaml.Node) error {
	parent, key := cut(path)
	n := (&Document{root: root}).find(parent)
	if n == nil {
		return fmt.Errorf("there is nothing at %+s", parent)
	}
	old := child(n, key)
	for i, c := range n.Content {
		if c == old && (n.Kind == yaml.SequenceNode || i%2 == 1) {
			next := *value
			next.HeadComment, next.LineComment, next.FootComment = c.HeadComment, c.LineComment, c.FootComment
			n.Content[i] = &next
			return nil
		}
	}
	return fmt.Errorf("there is nothing at %+s", path)
}
