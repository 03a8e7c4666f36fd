package file

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"splaywright/model/measure"
)

const (
	// sameValue is what two roundings of one value may be apart, of the value itself or of 1 where that is more.
	sameValue = 1e-12
	// everySubset is up to how many numbers all choices of them are tried; of more, each alone and all together.
	everySubset = 5
	// mostPasses bounds the search for named values that are lengths: each goes over all expressions of the design.
	mostPasses = 300
	// mostDecimals is how many measure reads.
	mostDecimals = 15
)

// mending finds texts by which the numbers of a document come to what they came to in another unit.
type mending struct {
	mark  string         // " mm", what is written behind numbers
	unit  measure.Length // that stands for
	was   *values        // before
	now   *Document      // a copy with the new unit, whose values are tried
	typed map[string]string
	nodes map[string]*yaml.Node // of now
	order []string              // paths of numbers, what they use before them
	uses  map[string][]string
	left  int // passes
}

func newMending(was, now *Document, from string) *mending {
	m := &mending{mark: " " + from, was: newValues(was), now: now.Clone(), typed: now.numbers(""),
		nodes: map[string]*yaml.Node{}, uses: map[string][]string{}, left: mostPasses}
	m.unit = m.was.unit()
	for _, path := range slices.Sorted(maps.Keys(m.typed)) {
		m.enter(path)
	}
	return m
}

// enter puts a number into the order behind what it uses. What goes round in a circle is refused anyhow.
func (m *mending) enter(path string) {
	if m.nodes[path] != nil {
		return
	}
	m.nodes[path] = m.now.find(path)
	for _, word := range wordsOf(plainly(m.typed[path])) {
		used := "names." + word
		if _, named := m.typed[used]; !named {
			used = word
		}
		if _, number := m.typed[used]; number {
			m.uses[path] = append(m.uses[path], used)
			m.enter(used)
		}
	}
	m.order = append(m.order, path)
}

// texts are those that are to be written, by path.
func (m *mending) texts() map[string]string {
	m.pass(m.named(), true)
	out := map[string]string{}
	for path, n := range m.nodes {
		if n.Value != m.typed[path] {
			out[path] = n.Value
		}
	}
	return out
}

// pass goes over all numbers and writes units behind them where that keeps them; given are other texts for some. It gives the
// numbers that are lost. The last pass loses none.
func (m *mending) pass(given map[string]string, last bool) (lost []string) {
	v := newValues(m.now)
	for _, path := range m.order {
		text := m.typed[path]
		if other, ok := given[path]; ok {
			text = other
		}
		if !m.keep(v, path, text, last) {
			m.try(v, path, text)
			lost = append(lost, path)
		}
	}
	return lost
}

// keep finds a text by which a number is what it was, and would be whatever the sizes it uses are; in the last pass any by which it
// is, for want of a better.
func (m *mending) keep(v *values, path, text string, last bool) bool {
	texts := append([]string{text}, m.markings(text, false)...)
	if last {
		texts = append(append(texts, m.times(text)), m.markings(text, true)...)
	}
	for _, t := range texts {
		if m.try(v, path, t) && m.steady(v, path, t) {
			return true
		}
	}
	return last && (slices.ContainsFunc(texts, func(t string) bool { return m.try(v, path, t) }) || m.exact(v, path))
}

// try puts a text at a path and tells whether the number is what it was. One that was not understood is left alone.
func (m *mending) try(v *values, path, text string) bool {
	m.nodes[path].Value = text
	delete(v.done, path)
	before, ok := m.was.at(path)
	if !ok {
		return true
	}
	after, ok := v.at(path)
	if !ok {
		return false
	}
	return m.match(path, before, after, v.unit())
}

// match tells whether a number is what it was, where bare ones counted the old unit and count a new one.
func (m *mending) match(path string, before, after measure.Quantity, unit measure.Length) bool {
	kind, known := kindAt(path)
	if known {
		after = become(after, kind, unit)
	} else {
		kind = after.Kind // a bare number may be a length wherever its name is used
	}
	return same(become(before, kind, m.unit), after)
}

func same(a, b measure.Quantity) bool {
	return a.Kind == b.Kind && math.Abs(a.Value-b.Value) <= sameValue*max(1, math.Abs(a.Value))
}

// otherSizes is by how much sizes are changed to see whether a text means what another meant: the larger of a size and a number
// is the same for now, whatever the number's unit is, as long as the size is the larger one.
var otherSizes = []float64{1.0 / 128, 1.0 / 8, 8, 128}

// steady tells whether a text comes to what was typed at a path for other sizes too.
func (m *mending) steady(v *values, path, text string) bool {
	if _, ok := m.was.at(path); !ok || len(m.uses[path]) == 0 {
		return true
	}
	for _, by := range otherSizes {
		before, wrong := evaluate(plainly(m.typed[path]), m.unit, m.scaled(m.was, by))
		after, err := evaluate(plainly(text), v.unit(), m.scaled(v, by))
		if (wrong == nil) != (err == nil) || err == nil && !m.match(path, before, after, v.unit()) {
			return false
		}
	}
	return true
}

func plainly(text string) string { return strings.TrimSpace(measure.Plain(text)) }

// scaled looks names up and changes those that were lengths.
func (m *mending) scaled(v *values, by float64) lookup {
	return func(name string) (measure.Quantity, error) {
		q, err := v.look(name)
		if was, no := m.was.look(name); no == nil && was.Kind == measure.OfLength {
			q.Value *= by
		}
		return q, err
	}
}

// times is an expression of bare numbers times one of the unit.
func (m *mending) times(text string) string {
	text = plainly(text)
	if words := wordsOf(text); len(words) != 1 || words[0] != text {
		text = "(" + text + ")"
	}
	return text + " * 1" + m.mark
}

// exact writes what a number came to.
func (m *mending) exact(v *values, path string) bool {
	q, _ := m.was.at(path)
	switch q.Kind {
	case measure.OfLength:
		return m.try(v, path, decimals(q.Value/float64(m.unit))+m.mark)
	case measure.OfAngle:
		return m.try(v, path, decimals(measure.Angle(q.Value).Degrees())+" deg")
	}
	return m.try(v, path, decimals(q.Value))
}

// decimals writes a number in full, as far as measure reads it.
func decimals(x float64) string {
	text := strconv.FormatFloat(x, 'f', -1, 64)
	if _, part, _ := strings.Cut(text, "."); len(part) > mostDecimals {
		text = strconv.FormatFloat(x, 'f', mostDecimals, 64)
	}
	return text
}

// named are the named values that are lengths wherever they are used, with the unit behind them: those that keep numbers which would
// be lost, and lose none.
func (m *mending) named() map[string]string {
	given := map[string]string{}
	lost := m.pass(given, false)
	for _, path := range slices.Clone(lost) {
		if !slices.Contains(lost, path) {
			continue
		}
		names := m.plainNames(path, map[string]bool{})
		for _, chosen := range subsets(len(names)) {
			if m.left--; m.left < 0 {
				return given
			}
			more := maps.Clone(given)
			for _, i := range chosen {
				more[names[i]] = m.asLength(names[i])
			}
			if now := m.pass(more, false); len(now) < len(lost) && within(now, lost) {
				given, lost = more, now
				break
			}
		}
	}
	return given
}

func within(some, all []string) bool {
	return !slices.ContainsFunc(some, func(s string) bool { return !slices.Contains(all, s) })
}

// plainNames are the named values without a unit that a number uses, itself or through others.
func (m *mending) plainNames(path string, seen map[string]bool) (out []string) {
	for _, used := range m.uses[path] {
		if seen[used] {
			continue
		}
		seen[used] = true
		q, ok := m.was.at(used)
		if ok && q.Kind == measure.Number && len(m.uses[used]) == 0 && strings.HasPrefix(used, "names.") {
			out = append(out, used)
		}
		out = append(out, m.plainNames(used, seen)...)
	}
	return out
}

// asLength is the text of a named value as a length.
func (m *mending) asLength(path string) string {
	before, _ := m.was.at(path)
	want := become(before, measure.OfLength, m.unit)
	v := newValues(m.now)
	for _, text := range m.markings(m.typed[path], false) {
		m.nodes[path].Value = text
		delete(v.done, path)
		if q, ok := v.at(path); ok && same(q, want) {
			return text
		}
	}
	return m.typed[path]
}
