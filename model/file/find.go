package file

import (
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// find gives the node at a path, nil when there is none.
func (d *Document) find(path string) *yaml.Node {
	n := d.root
	if path == "" {
		return n
	}
	for _, key := range strings.Split(path, ".") {
		if n = child(n, key); n == nil {
			return nil
		}
	}
	return n
}

// child gives the value under a key, or the item of a list by its number from 0.
func child(n *yaml.Node, key string) *yaml.Node {
	switch n.Kind {
	case yaml.MappingNode:
		if i := keyIndex(n, key); i >= 0 {
			return n.Content[i+1]
		}
	case yaml.SequenceNode:
		if i, err := strconv.Atoi(key); err == nil && i >= 0 && i < len(n.Content) {
			return n.Content[i]
		}
	}
	return nil
}

// keyIndex is where a key stands in a group's contents, -1 when it does not.
func keyIndex(n *yaml.Node, key string) int {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return i
		}
	}
	return -1
}

func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }

// cut splits a path into all but its last key and that key.
func cut(path string) (parent, key string) {
	if i := strings.LastIndexByte(path, '.'); i >= 0 {
		return path[:i], path[i+1:]
	}
	return "", path
}
