package file

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// unitNames are what bare numbers may be in.
var unitNames = []string{"mm", "in"}

// SetUnits makes bare numbers count another unit, "mm" or "in", and leaves the piece as it is: a bare number that was a length
// gets the unit that it was in behind it, alone or in an expression, and a named value where lengths that use it ask for it. An
// expression that cannot be kept by that, or a name in it, is multiplied by one of the old unit, or it is written as what it
// came to. What is not understood stays as typed. The rounding step goes, so that papers print in the new unit as is usual
// there. The error is an *Error.
func (d *Document) SetUnits(to string) error {
	from := d.Text("units")
	if from == "" {
		from = unitNames[0]
	}
	if !slices.Contains(unitNames, to) {
		return &Error{File: d.name, Path: "units", Read: to, Want: fmt.Sprintf("one of these is expected: %+s", strings.Join(unitNames, ", "))}
	}
	next := d.Clone()
	if err := next.Set("units", to); err != nil {
		return err
	}
	if from != to && slices.Contains(unitNames, from) { // another word was no unit of anything
		next.Remove("round.to")
		if err := next.putAll(newMending(d, next, from).texts()); err != nil {
			return err
		}
	}
	*d = *next
	return nil
}

// putAll puts texts in the places of scalars, all at once where the text can be changed there. The error is an *Error.
func (d *Document) putAll(texts map[string]string) error {
	if d.splice(texts) {
		return nil
	}
	for _, path := range slices.Sorted(maps.Keys(texts)) {
		if err := d.Set(path, texts[path]); err != nil {
			return err
		}
	}
	return nil
}

// splice is putAll in the text alone; it is false, and has done nothing, where that does not do.
func (d *Document) splice(texts map[string]string) bool {
	want := map[string]string{}
	flatten(d.root, "", want)
	s := newSource(d.src)
	patches := make([]patch, 0, len(texts))
	for path, text := range texts {
		old, value := d.find(path), plain(text)
		value.Style = kept(old)
		p, err := s.overwrite(old, flow(value, d.inFlow(path)))
		if err != nil {
			return false
		}
		patches, want[path] = append(patches, p), "="+text
	}
	slices.SortFunc(patches, func(a, b patch) int { return a.from - b.from })
	var out []byte
	from := 0
	for _, p := range patches {
		out = append(append(out, d.src[from:p.from]...), p.text...)
		from = p.to
	}
	return d.take(append(out, d.src[from:]...), want)
}
