package file

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"gopkg.in/yaml.v3"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// reader fills a design from a document and lists what it does not understand.
type reader struct {
	*values
}

// taker reads what stands under a key.
type taker func(n *yaml.Node, path string)

// fields are the keys of a group.
type fields map[string]taker

// Design reads every value. The error is an Errors with everything that was not understood, in the
// order of the file; the design is then not to be used.
func (d *Document) Design() (form.Design, error) {
	var out form.Design
	r := reader{newValues(d)}
	r.top(&out)
	r.lateUnits(&out)
	out.Timbers = slices.Concat(d.before, out.Timbers, d.after)
	if len(r.errs) > 0 {
		sort.SliceStable(r.errs, func(i, j int) bool {
			a, b := r.errs[i], r.errs[j]
			return a.Line < b.Line || a.Line == b.Line && a.Column < b.Column
		})
		return out, r.errs[:min(len(r.errs), maxTold)]
	}
	return out, nil
}

// lateUnits settles in which unit papers print: the one the rounding step was typed in.
func (r *reader) lateUnits(d *form.Design) {
	d.Units, d.Round.Unit = r.bare, r.bare
	if u, ok := r.typedIn("round.to", map[string]bool{}); ok {
		d.Round.Unit = u
	}
}

// group reads a group of keys; an unknown key is refused with the nearest known one.
func (r *reader) group(f fields, needed ...string) taker {
	return func(n *yaml.Node, path string) {
		if isNull(n) && len(needed) == 0 {
			return
		}
		if n.Kind != yaml.MappingNode {
			r.refuse(n, path, 0, n.Value, fmt.Sprintf("a group of keys is expected here: %+s", strings.Join(keysOf(f), ", ")))
			return
		}
		for i := 0; i+1 < len(n.Content); i += 2 {
			k, v := n.Content[i], n.Content[i+1]
			at := join(path, k.Value)
			take, ok := f[k.Value]
			if !ok {
				r.refuse(k, at, 0, k.Value, fmt.Sprintf("there is no such key here; %s", suggest(k.Value, keysOf(f))))
				continue
			}
			take(v, at)
		}
		for _, k := range needed {
			if keyIndex(n, k) < 0 {
				r.refuse(n, join(path, k), 0, "", missing(k))
			}
		}
	}
}

func keysOf(f fields) []string {
	keys := make([]string, 0, len(f))
	for k := range f {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}

// list reads the items of a list.
func (r *reader) list(item func(n *yaml.Node, path string, i int)) taker {
	return func(n *yaml.Node, path string) {
		if isNull(n) {
			return
		}
		if n.Kind != yaml.SequenceNode {
			r.refuse(n, path, 0, n.Value, "a list is expected here, each item on a line of its own behind a hyphen")
			return
		}
		for i, c := range n.Content {
			item(c, join(path, fmt.Sprint(i)), i)
		}
	}
}

// bounds of a number; a bound is part of what is allowed unless open says otherwise.
type bounds struct {
	low, high float64
	open      bool // low itself is refused
	say       string
}

var (
	anyLength   = bounds{math.Inf(-1), math.Inf(1), false, ""}
	aboveZero   = bounds{0, math.Inf(1), true, "it must be above zero, such as 20 mm or 3/4 in"}
	notNegative = bounds{0, math.Inf(1), false, "it cannot be negative; 0 or more is expected, such as 20 mm or 3/4 in"}
)

func (r *reader) inside(n *yaml.Node, path string, x float64, b bounds) bool {
	if x < b.low || x > b.high || b.open && x == b.low {
		want := b.say
		if shown, is := r.expression(n, path); is {
			want = fmt.Sprintf("this comes to %+s; %s", shown, want)
		}
		r.refuse(n, path, 0, n.Value, want)
		return false
	}
	return true
}

func (r *reader) length(to *measure.Length, b bounds) taker {
	return func(n *yaml.Node, path string) {
		if q, ok := r.at(path); ok && r.inside(n, path, q.Value, b) {
			*to = measure.Length(q.Value)
		}
	}
}

func (r *reader) maybeLength(to **measure.Length, b bounds) taker {
	return func(n *yaml.Node, path string) {
		var l measure.Length
		before := len(r.errs)
		r.length(&l, b)(n, path)
		if _, ok := r.at(path); ok && len(r.errs) == before {
			*to = &l
		}
	}
}

// lean is the range of a splay or a slope that is an angle at all; whether it can be cut is a finding.
var lean = bounds{-89, 89, false, "a board that leans 90 degrees lies flat; less than that is expected, such as 6 or 1:9.5"}

func (r *reader) angle(to *measure.Angle, low, high float64, say string) taker {
	return func(n *yaml.Node, path string) {
		q, ok := r.at(path)
		if ok && r.inside(n, path, measure.Angle(q.Value).Degrees(), bounds{low, high, false, say}) {
			*to = measure.Angle(q.Value)
		}
	}
}

// wholeSlack is what a count may be off a whole number by rounding in an expression.
const wholeSlack = 1e-9

func (r *reader) count(to *int, low, high int) taker {
	return func(n *yaml.Node, path string) {
		q, ok := r.at(path)
		if !ok {
			return
		}
		whole := math.Round(q.Value)
		if math.Abs(q.Value-whole) > wholeSlack {
			near := min(max(whole, float64(low)), float64(high))
			r.refuse(n, path, 0, n.Value, fmt.Sprintf("a whole number is expected here, such as %.0f", near))
			return
		}
		if whole < float64(low) || whole > float64(high) {
			near := min(max(whole, float64(low)), float64(high))
			r.refuse(n, path, 0, n.Value, fmt.Sprintf("a whole number from %d to %d is expected here, such as %.0f", low, high, near))
			return
		}
		*to = int(whole)
	}
}

func (r *reader) maybeCount(to **int, low, high int) taker {
	return func(n *yaml.Node, path string) {
		k := low - 1
		r.count(&k, low, high)(n, path)
		if k >= low {
			*to = &k
		}
	}
}

const longestText = 200

func (r *reader) text(to *string) taker {
	return func(n *yaml.Node, path string) {
		if n.Kind != yaml.ScalarNode {
			r.refuse(n, path, 0, "", fmt.Sprintf("words are expected here, such as %+s", wordsFor(path)))
			return
		}
		if len([]rune(n.Value)) > longestText {
			r.refuse(n, path, 0, n.Value, fmt.Sprintf("longer than %d characters; shorter words are expected, such as %+s", longestText, wordsFor(path)))
			return
		}
		if strings.ContainsFunc(n.Value, func(c rune) bool { return c < ' ' || c == 0x7f }) {
			r.refuse(n, path, 0, n.Value, "this holds a character that does not print; one line of words is expected")
			return
		}
		if isNull(n) || strings.TrimSpace(n.Value) == "" {
			r.refuse(n, path, 0, n.Value, fmt.Sprintf("nothing stands here; write words such as %+s, or leave the key out", wordsFor(path)))
			return
		}
		*to = n.Value
	}
}

// choice reads one of the words.
func (r *reader) choice(to *string, words ...string) taker {
	return func(n *yaml.Node, path string) {
		switch {
		case n.Kind == yaml.ScalarNode && slices.Contains(words, n.Value):
			*to = n.Value
		default:
			r.refuse(n, path, 0, n.Value, fmt.Sprintf("one of these is expected: %+s", strings.Join(words, ", ")))
		}
	}
}

// no reads true or false turned round, for what is so unless it is said not to be.
func (r *reader) no(to *bool) taker {
	return func(n *yaml.Node, path string) {
		yes := !*to
		r.yes(&yes)(n, path)
		*to = !yes
	}
}

func (r *reader) yes(to *bool) taker {
	return func(n *yaml.Node, path string) {
		switch {
		case n.Kind == yaml.ScalarNode && n.Value == "true":
			*to = true
		case n.Kind == yaml.ScalarNode && n.Value == "false":
			*to = false
		default:
			r.refuse(n, path, 0, n.Value, "true or false is expected here")
		}
	}
}
