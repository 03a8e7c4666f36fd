package file

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// retype puts a number in the place of a number, as typing and sliders do many times a second. The text around it reads as
// before, so it is not read again. It is false, and has done nothing, where more than that is at stake.
func (d *Document) retype(old *yaml.Node, text string) bool {
	if old.Kind != yaml.ScalarNode || old.Style != 0 || !isNumber(old.Value) || !isNumber(text) {
		return false
	}
	from := newSource(d.src).start(old)
	to, longer := from+len(old.Value), len(text)-len(old.Value)
	if to > len(d.src) || string(d.src[from:to]) != old.Value || len(d.src)+longer > MaxBytes {
		return false
	}
	d.src = slices.Concat(d.src[:from], []byte(text), d.src[to:])
	shift(d.root, old, longer)
	old.Value, old.Tag = text, ""
	old.Tag = old.ShortTag()
	return true
}

// isNumber tells whether a text is a number, a fraction or a number with a word, which needs no quotes wherever it stands.
func isNumber(text string) bool {
	return text != "" && text[0] >= '0' && text[0] <= '9' && text[len(text)-1] != ' ' &&
		strings.Trim(text, "0123456789./ abcdefghijklmnopqrstuvwxyz") == ""
}

// shift moves what stands behind a node on its line.
func shift(n, after *yaml.Node, by int) {
	if n.Line == after.Line && n.Column > after.Column {
		n.Column += by
	}
	for _, c := range n.Content {
		shift(c, after, by)
	}
}
