package file

import (
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// Remove takes out what stands at a path, with its key or its place in a list. A group or list that
// has nothing left goes with it. What is not there is no error.
func (d *Document) Remove(path string) {
	if path == "" || d.find(path) == nil {
		return
	}
	at, key := cut(path)
	for at != "" && entries(d.find(at)) == 1 {
		path = at
		at, key = cut(at)
	}
	n := d.find(at)
	i := entryIndex(n, key)
	if i < 0 {
		return
	}
	_ = d.change(path, // the tree without an entry can always be written
		func(root *yaml.Node) error {
			m := (&Document{root: root}).find(at)
			w := width(m)
			m.Content = slices.Delete(m.Content, w*i, w*(i+1))
			return nil
		},
		func(s *source) (patch, error) { return s.takeOut(n, i) })
}

// width is how many nodes an entry of a group or list takes.
func width(n *yaml.Node) int {
	if n.Kind == yaml.MappingNode {
		return 2
	}
	return 1
}

func entries(n *yaml.Node) int { return len(n.Content) / width(n) }

func entryIndex(n *yaml.Node, key string) int {
	if n.Kind == yaml.MappingNode {
		if i := keyIndex(n, key); i >= 0 {
			return i / 2
		}
		return -1
	}
	i, err := strconv.Atoi(key)
	if err != nil {
		return -1
	}
	return i
}

// takeOut is the patch that removes entry i of a group or list.
func (s *source) takeOut(n *yaml.Node, i int) (patch, error) {
	w := width(n)
	from := s.start(n.Content[w*i])
	to, err := s.end(n.Content[w*(i+1)-1])
	if err != nil {
		return patch{}, err
	}
	more := i+1 < entries(n)
	if n.Style&yaml.FlowStyle != 0 {
		switch {
		case more:
			return patch{from, s.start(n.Content[w*(i+1)]), ""}, nil
		case i > 0:
			from, err = s.end(n.Content[w*i-1])
			return patch{from, to, ""}, err
		}
		return patch{from, to, ""}, nil
	}
	line := s.lineStart(from)
	if strings.Trim(s.text[line:from], " -") != "" {
		return patch{}, errNoPlace
	}
	if w == 2 && strings.Contains(s.text[line:from], "-") && more { // first key behind the hyphen of an item
		return patch{from, s.start(n.Content[w*(i+1)]), ""}, nil
	}
	to = s.lineEnd(to)
	return patch{line, to + lineBreak(s.text[to:]), ""}, nil
}
