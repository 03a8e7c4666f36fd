package file

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// Keys gives the keys of the group at a path, in the order of the file.
func (d *Document) Keys(path string) []string {
	n := d.find(path)
	if n == nil || n.Kind != yaml.MappingNode {
		return nil
	}
	var out []string
	for i := 0; i+1 < len(n.Content); i += 2 {
		out = append(out, n.Content[i].Value)
	}
	return out
}

// Rename gives a named value another name, everywhere it is used. The error is an *Error.
func (d *Document) Rename(from, to string) error {
	old := d.find("names." + from)
	switch {
	case old == nil:
		return &Error{File: d.name, Path: "names", Read: from, Want: "there is no value of this name"}
	case !goodName(to):
		return &Error{File: d.name, Path: "names", Read: to, Want: badName}
	case d.find("names."+to) != nil:
		return &Error{File: d.name, Path: "names", Read: to, Want: "another value has this name already"}
	}
	next := d.Clone()
	if err := next.Set("names."+to, old.Value); err != nil {
		return err
	}
	if err := next.replace(from, func(string) string { return to }); err != nil {
		return err
	}
	next.Remove("names." + from)
	*d = *next
	return nil
}

// Inline takes a named value out and puts what stands for it where its name stood, so that every size stays as it is. The
// error is an *Error.
func (d *Document) Inline(name string) error {
	old := d.find("names." + name)
	if old == nil {
		return &Error{File: d.name, Path: "names", Read: name, Want: "there is no value of this name"}
	}
	value := strings.TrimSpace(old.Value)
	next := d.Clone()
	err := next.replace(name, func(use string) string {
		if use == name || !strings.ContainsFunc(value, func(r rune) bool { return r != '.' && (r < '0' || r > '9') }) {
			return value
		}
		return "(" + value + ")"
	})
	if err != nil {
		return err
	}
	next.Remove("names." + name)
	*d = *next
	return nil
}

// Uses gives the paths of the numbers that a named value stands in, sorted.
func (d *Document) Uses(name string) []string {
	var out []string
	for path, text := range d.numbers(name) {
		if renamed(text, name, name+"-") != text {
			out = append(out, path)
		}
	}
	slices.Sort(out)
	return out
}

// replace puts something else in the place of a name wherever it is used; put is given the whole text of each use.
func (d *Document) replace(name string, put func(use string) string) error {
	texts := d.numbers(name)
	for _, path := range d.Uses(name) {
		if err := d.Set(path, renamed(texts[path], name, put(strings.TrimSpace(texts[path])))); err != nil {
			return err
		}
	}
	return nil
}

// numbers are the texts of every number of the document but a named value's own, by path.
func (d *Document) numbers(name string) map[string]string {
	texts, out := map[string]string{}, map[string]string{}
	flatten(d.root, "", texts)
	for path, text := range texts {
		if text, number := strings.CutPrefix(text, "="); number && path != "names."+name && countable(path) {
			out[path] = text
		}
	}
	return out
}

func countable(path string) bool {
	_, number := kindAt(path)
	return number || strings.HasPrefix(path, "names.")
}

// renamed puts a name in the place of another in an expression. A word behind a number is a unit
// and stays.
func renamed(text, from, to string) string {
	var out strings.Builder
	e := expression{text: text}
	for e.pos < len(text) {
		start := e.pos
		if !letter(text[e.pos]) {
			out.WriteByte(text[e.pos])
			e.pos++
			continue
		}
		for e.pos < len(text) && e.inName() {
			e.pos++
		}
		word := text[start:e.pos]
		if word == from && !behindNumber(text[:start]) {
			word = to
		}
		out.WriteString(word)
	}
	return out.String()
}

func behindNumber(before string) bool {
	before = strings.TrimRight(before, " ")
	return before != "" && strings.ContainsAny(before[len(before)-1:], "0123456789.")
}

// List gives the texts of the list at a path as they are typed, in square brackets; "" when there
// is none.
func (d *Document) List(path string) string {
	n := d.find(path)
	if n == nil || n.Kind != yaml.SequenceNode || len(n.Content) == 0 {
		return ""
	}
	texts := make([]string, len(n.Content))
	for i, c := range n.Content {
		texts[i] = c.Value
	}
	return "[" + strings.Join(texts, ", ") + "]"
}
