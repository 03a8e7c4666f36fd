package file

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"splaywright/model/measure"
)

// reading fills a design from a document and keeps everything that is not understood.
type reading struct {
	doc *Document
	v   *values
}

func (r *reading) refuse(n *yaml.Node, path, want string) {
	r.v.errs = append(r.v.errs, &Error{r.doc.name, n.Line, n.Column, path, n.Value, want})
}

// sorted gives what was not understood in the order of the file, nil when all was.
func (r *reading) sorted() error {
	if len(r.v.errs) == 0 {
		return nil
	}
	slices.SortStableFunc(r.v.errs, func(a, b *Error) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return r.v.errs
}

// group checks the keys of a group and tells whether there is one.
func (r *reading) group(path string) bool {
	n := r.doc.find(path)
	if n == nil || isNull(n) {
		return false
	}
	if n.Kind != yaml.MappingNode {
		r.refuse(n, path, "a group of keys and values is expected here")
		return false
	}
	known := shape[pattern(path)]
	for i := 0; i+1 < len(n.Content); i += 2 {
		k := n.Content[i]
		why := ""
		if path == "names" {
			why = nameTrouble(k.Value)
		} else if !slices.Contains(known, k.Value) {
			why = unknown(k.Value, known)
		}
		if why != "" {
			r.refuse(k, join(path, k.Value), why)
		}
	}
	return true
}

// list gives how many items a list has and refuses what is no list.
func (r *reading) list(path string) int {
	n := r.doc.find(path)
	if n == nil || isNull(n) {
		return 0
	}
	if n.Kind != yaml.SequenceNode {
		r.refuse(n, path, "a list is expected here: [ … ], or items that begin with a hyphen")
		return 0
	}
	if len(n.Content) > maxItems {
		r.refuse(n, path, fmt.Sprintf("a list of %d is no design; at most %d", len(n.Content), maxItems))
		return 0
	}
	return len(n.Content)
}

// maxItems bounds a list of a design: stretchers, features, tails.
const maxItems = 500

// need refuses a group without a value that has no sensible one to follow from.
func (r *reading) need(path, why string) bool {
	if r.doc.find(path) != nil {
		return true
	}
	at, _ := cut(path)
	for at != "" && r.doc.find(at) == nil {
		at, _ = cut(at)
	}
	n := r.doc.find(at)
	r.v.errs = append(r.v.errs, &Error{r.doc.name, n.Line, n.Column, path, "", why})
	return false
}

// scalar gives the node with a single value at a path, nil when there is none.
func (r *reading) scalar(path string) *yaml.Node {
	n := r.doc.find(path)
	switch {
	case n == nil:
		return nil
	case n.Kind != yaml.ScalarNode:
		r.refuse(n, path, "one value is expected here")
		return nil
	case isNull(n):
		r.refuse(n, path, "a value is missing here; leave the key out where it is to follow")
		return nil
	}
	return n
}

// text reads any words.
func (r *reading) text(at *string, path string) {
	n := r.scalar(path)
	switch {
	case n == nil:
	case strings.TrimSpace(n.Value) == "":
		r.refuse(n, path, "nothing stands here; words are expected")
	case len(n.Value) > maxText:
		r.refuse(n, path, fmt.Sprintf("longer than %d characters", maxText))
	case strings.ContainsFunc(n.Value, func(c rune) bool { return c < ' ' || c == 0x7f }):
		r.refuse(n, path, "one line of words is expected")
	default:
		*at = n.Value
	}
}

// maxText bounds a title or the name of a timber, in bytes.
const maxText = 300

// word reads one of the words given. later are those that a design may have one day.
func word[T ~string](r *reading, at *T, path string, given []string, later ...string) {
	n := r.scalar(path)
	if n == nil {
		return
	}
	switch {
	case slices.Contains(given, n.Value):
		*at = T(n.Value)
	case slices.Contains(later, n.Value):
		r.refuse(n, path, "this is not made yet; there are "+strings.Join(given, ", "))
	default:
		want := "one of " + strings.Join(given, ", ") + " is expected"
		if near := nearest(n.Value, given); near != "" {
			want += "; did you mean " + near + "?"
		}
		r.refuse(n, path, want)
	}
}

func (r *reading) flag(at *bool, path string) {
	n := r.scalar(path)
	switch {
	case n == nil:
	case n.Value == "true" || n.Value == "false":
		*at = n.Value == "true"
	default:
		r.refuse(n, path, "true or false is expected")
	}
}

// reach is the range a value may have.
type reach struct {
	ok   func(x float64) bool
	want string
}

var (
	anySize = reach{func(float64) bool { return true }, ""}
	above0  = reach{func(x float64) bool { return x > 0 }, "a size above 0 is expected"}
	from0   = reach{func(x float64) bool { return x >= 0 }, "a size of 0 or more is expected"}
)

// between is a range of angles in degrees, its ends left out.
func between(low, high float64) reach {
	return reach{func(x float64) bool { d := x / float64(measure.Degree); return d > low && d < high },
		fmt.Sprintf("an angle between %g and %g degrees is expected", low, high)}
}

// number reads a value of the kind that its key has.
func (r *reading) number(path string, in reach) (x float64, ok bool) {
	n := r.doc.find(path)
	if n == nil {
		return 0, false
	}
	q, ok := r.v.at(path)
	if ok && !in.ok(q.Value) {
		want := in.want
		if shown, is := r.v.expression(n, q); is {
			want = "this comes to " + shown + "; " + want
		}
		r.refuse(n, path, want)
		return 0, false
	}
	return q.Value, ok
}

func (r *reading) length(at *measure.Length, path string, in reach) {
	if x, ok := r.number(path, in); ok {
		*at = measure.Length(x)
	}
}

func (r *reading) maybe(at **measure.Length, path string, in reach) {
	if x, ok := r.number(path, in); ok {
		l := measure.Length(x)
		*at = &l
	}
}

func (r *reading) angle(at *measure.Angle, path string, in reach) {
	if x, ok := r.number(path, in); ok {
		*at = measure.Angle(x)
	}
}

// count reads a whole number.
func (r *reading) count(at *int, path string, low, high int) bool {
	x, ok := r.number(path, reach{func(x float64) bool {
		return nearWhole(x) && x > float64(low)-0.5 && x < float64(high)+0.5
	}, fmt.Sprintf("a whole number from %d to %d is expected", low, high)})
	if ok {
		*at = int(math.Round(x))
	}
	return ok
}

// nearWhole tells whether a number is whole but for the noise of arithmetic.
func nearWhole(x float64) bool { return math.Abs(x-math.Round(x)) < 1e-9 }
