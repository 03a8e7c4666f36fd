package file

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// Set puts a text, as a person typed it, under a path; keys that are missing are made. The rest of
// the file stays byte for byte. It fails when the path leads through something that is no group or
// list, or past the end of a list; whether the text means anything is told by Design.
func (d *Document) Set(path, text string) error {
	if n := d.find(path); n != nil {
		if n.Kind != yaml.ScalarNode {
			return d.refusal(path, text, "a group of keys stands here, not a value")
		}
		return d.change(path, text, func(c *Document) bool { return c.replace(c.find(path), text) })
	}
	group, missing := path, []string{}
	for d.find(group) == nil {
		var key string
		group, key = cut(group)
		missing = append([]string{key}, missing...)
	}
	n := d.find(group)
	if n.Kind != yaml.MappingNode && !isNull(n) {
		return d.refusal(path, text, "there is no such place in the design; a new item is added to its list first")
	}
	raw := quoted(text)
	for i := len(missing) - 1; i > 0; i-- {
		raw = "{" + missing[i] + ": " + raw + "}"
	}
	return d.change(path, text, func(c *Document) bool { return c.insert(c.find(group), missing[0], raw) })
}

func (d *Document) refusal(path, text, want string) error {
	e := &Error{File: d.name, Path: path, Read: text, Want: want}
	if n := d.find(path); n != nil {
		e.Line, e.Column = n.Line, n.Column
	}
	return e
}

// change splices in a copy and keeps it only when the text is read back.
func (d *Document) change(path, text string, splice func(c *Document) bool) error {
	c := d.Clone()
	if splice(c) && c.parse() == nil && c.Text(path) == text {
		*d = *c
		return nil
	}
	return d.recode(path, text)
}

// recode sets a value in the tree and writes the whole file anew. It is the way out where the text
// cannot be spliced; comments stay, blank lines do not.
func (d *Document) recode(path, text string) error {
	c := d.Clone()
	n := c.find(path)
	if n == nil {
		return d.refusal(path, text, "there is no room for this in the design as it is written")
	}
	n.Value, n.Tag, n.Style = text, "!!str", yaml.DoubleQuotedStyle
	out, err := yaml.Marshal(c.root)
	if err != nil {
		return d.refusal(path, text, fmt.Sprintf("this cannot be written: %v", err))
	}
	c.src = out
	if err := c.parse(); err != nil || c.Text(path) != text {
		return d.refusal(path, text, "this cannot be written into a design")
	}
	*d = *c
	return nil
}

// replace puts a new text in a scalar's place.
func (d *Document) replace(n *yaml.Node, text string) bool {
	start, end, ok := d.scalarSpan(n)
	if ok {
		raw := quoted(text)
		if start == end { // nothing stood behind the key
			raw = " " + raw
		}
		d.src = slices.Concat(d.src[:start], []byte(raw), d.src[end:])
	}
	return ok
}

// insert puts a key with a value, written out, at the end of a group.
func (d *Document) insert(n *yaml.Node, key, raw string) bool {
	entry := key + ": " + raw
	switch {
	case isNull(n):
		at := d.offset(n.Line, n.Column) + len(n.Value)
		d.src = slices.Concat(d.src[:at], []byte(" {"+entry+"}"), d.src[at:])
	case n.Style&yaml.FlowStyle != 0:
		return d.insertFlow(n, entry)
	default:
		indent := n.Content[0].Column - 1
		d.insertLine(d.lastLine(n), strings.Repeat(" ", indent)+entry)
	}
	return true
}

func (d *Document) insertFlow(n *yaml.Node, entry string) bool {
	end, ok := d.flowEnd(d.offset(n.Line, n.Column))
	if !ok {
		return false
	}
	at := len(bytes.TrimRight(d.src[:end], " \n,"))
	if len(n.Content) > 0 {
		entry = ", " + entry
	}
	d.src = slices.Concat(d.src[:at], []byte(entry), d.src[end:])
	return true
}

// insertLine puts a line behind the line of that number.
func (d *Document) insertLine(after int, line string) {
	at := d.offset(after+1, 1)
	if at > 0 && d.src[at-1] != '\n' {
		line = "\n" + line
	}
	d.src = slices.Concat(d.src[:at], []byte(line+"\n"), d.src[at:])
}

// quoted writes a text so that it is read back as that text, plain where that can be.
func quoted(text string) string {
	for _, form := range []string{"k: %s", "{k: %s}", "[%s]"} {
		var doc yaml.Node
		if err := yaml.Unmarshal(fmt.Appendf(nil, form, text), &doc); err != nil || len(doc.Content) != 1 {
			return doubleQuoted(text)
		}
		top := doc.Content[0]
		n := top.Content[len(top.Content)-1]
		if len(top.Content) > 2 || n.Kind != yaml.ScalarNode || n.Value != text || n.Style != 0 || n.Anchor != "" || isNull(n) || doc.FootComment != "" || n.LineComment != "" {
			return doubleQuoted(text)
		}
	}
	return text
}

func doubleQuoted(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r < ' ' || r == 0x7f || r == 0x85 || r == 0xa0 || r == 0x2028 || r == 0x2029 || r == 0xfeff:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// Append adds an item, a group of keys with their values as typed, to the list at a path. The list
// is made when it is missing.
func (d *Document) Append(path string, fields ...[2]string) error {
	parts := make([]string, len(fields))
	for i, f := range fields {
		parts[i] = f[0] + ": " + quoted(f[1])
	}
	item := "{" + strings.Join(parts, ", ") + "}"
	before := d.Len(path)
	c := d.Clone()
	n := c.find(path)
	ok := true
	switch {
	case n == nil:
		ok = c.appendList(path, item)
	case isNull(n):
		at := c.offset(n.Line, n.Column) + len(n.Value)
		c.src = slices.Concat(c.src[:at], []byte(" ["+item+"]"), c.src[at:])
	case n.Kind != yaml.SequenceNode:
		ok = false
	case n.Style&yaml.FlowStyle != 0:
		ok = c.insertFlow(n, item)
	default:
		c.insertLine(c.lastLine(n), strings.Repeat(" ", n.Column-1)+"- "+item)
	}
	if !ok || c.parse() != nil || c.Len(path) != before+1 {
		return d.refusal(path, item, "no item can be added here")
	}
	*d = *c
	return nil
}

// appendList writes a new list under a top key, or inside the group that the path names.
func (d *Document) appendList(path, item string) bool {
	parent, key := cut(path)
	if parent != "" {
		n := d.find(parent)
		return n != nil && n.Kind == yaml.MappingNode && d.insert(n, key, "["+item+"]")
	}
	if d.root.Style&yaml.FlowStyle != 0 {
		return d.insert(d.root, key, "["+item+"]")
	}
	indent := strings.Repeat(" ", d.root.Content[0].Column-1)
	d.insertLine(d.lastLine(d.root), indent+key+":\n"+indent+"  - "+item)
	return true
}

// Remove takes out what stands at a path, key and all. It does nothing when nothing stands there.
func (d *Document) Remove(path string) {
	if d.find(path) == nil {
		return
	}
	c := d.Clone()
	if c.cutOut(path) && c.parse() == nil && c.removed(d, path) {
		*d = *c
		return
	}
	c = d.Clone()
	c.prune(path)
	out, err := yaml.Marshal(c.root)
	if err != nil {
		return
	}
	if c.src = out; c.parse() == nil {
		*d = *c
	}
}

// removed tells whether exactly the one entry is gone.
func (d *Document) removed(was *Document, path string) bool {
	parent, _ := cut(path)
	n, old := d.find(parent), was.find(parent)
	if n == nil || n.Kind != old.Kind && !isNull(n) {
		return false
	}
	gone := 1
	if old.Kind == yaml.MappingNode {
		gone = 2
	}
	return len(n.Content) == len(old.Content)-gone
}

// prune takes the entry out of the tree.
func (d *Document) prune(path string) {
	parent, key := cut(path)
	n := d.find(parent)
	if n.Kind == yaml.MappingNode {
		i := keyIndex(n, key)
		n.Content = slices.Delete(n.Content, i, i+2)
		return
	}
	i := slices.Index(n.Content, d.find(path))
	n.Content = slices.Delete(n.Content, i, i+1)
}

// cutOut takes the entry out of the text.
func (d *Document) cutOut(path string) bool {
	parent, key := cut(path)
	n, v := d.find(parent), d.find(path)
	first := v
	if n.Kind == yaml.MappingNode {
		first = n.Content[keyIndex(n, key)]
	}
	if n.Style&yaml.FlowStyle != 0 {
		return d.cutFlow(n, first, v)
	}
	from, to := d.offset(first.Line, 1), d.offset(d.lastLine(v)+1, 1)
	if len(n.Content) <= 2 && parent != "" && (n.Kind == yaml.MappingNode || len(n.Content) == 1) {
		return false // the last entry: the group's own key would be left with nothing
	}
	if lead := strings.TrimLeft(string(d.src[from:d.offset(first.Line, first.Column)]), " -"); lead != "" {
		return false
	}
	if n.Kind == yaml.MappingNode && bytes.ContainsRune(d.src[from:d.offset(first.Line, first.Column)], '-') {
		return false // the first key of a list's item carries the hyphen
	}
	d.src = slices.Concat(d.src[:from], d.src[to:])
	return true
}

// cutFlow takes an entry out of a group or list in brackets, with one comma.
func (d *Document) cutFlow(n, first, v *yaml.Node) bool {
	from := d.offset(first.Line, first.Column)
	var to int
	ok := true
	switch {
	case v.Kind == yaml.ScalarNode:
		_, to, ok = d.scalarSpan(v)
	default:
		to, ok = d.flowEnd(d.offset(v.Line, v.Column))
		to++
	}
	if !ok {
		return false
	}
	rest := bytes.TrimLeft(d.src[to:], " ")
	if len(rest) > 0 && rest[0] == ',' {
		to = len(d.src) - len(bytes.TrimLeft(rest[1:], " "))
	} else {
		from = len(bytes.TrimRight(d.src[:from], " ,"))
	}
	d.src = slices.Concat(d.src[:from], d.src[to:])
	return true
}

// New gives the shortest design that can be read: a stool with the sizes given as they are typed.
func New(title, units, height, width, depth string) *Document {
	text := fmt.Sprintf("splaywright: 1\ntitle: %s\nunits: %s\nform: stool\nsize: {height: %s, width: %s, depth: %s, taken-at: top}\n",
		quoted(title), quoted(units), quoted(height), quoted(width), quoted(depth))
	d := &Document{name: "new design", src: []byte(text)}
	if err := d.parse(); err != nil {
		panic(fmt.Sprintf("file: a new design is not read: %v", err))
	}
	return d
}
