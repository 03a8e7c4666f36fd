package file

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"splaywright/model/measure"
)

// kinds is what each key that holds a number counts. A key means the same wherever it stands.
var kinds = map[string]measure.Kind{}

func init() {
	for _, k := range strings.Fields("height width depth lower-height lower-width thickness bow cup twist tail pin half-pin overhang overhang-edges length from-end counterbore below-top across rise diameter radius hollow x y kerf resaw to tail-widths up clearance lap inset set-in trim-ends trim-edges keep keep-width narrowest planing pitch eye-height eye-distance bar-x bar-y margin overlap lengths widths width-top width-floor depth-top depth-floor height-whole height-left height-right") {
		kinds[k] = measure.OfLength
	}
	for _, k := range strings.Fields("ends edges middle front back end-left end-right slope angle step max-swing max-tilt turn cradle") {
		kinds[k] = measure.OfAngle
	}
	for _, k := range strings.Fields("tails gauge count pieces staves load dry damp price wood-per-m3 wood-per-board-foot waste each-screw each-plug finish-per-m2 specific-gravity side-hardness modulus-of-elasticity modulus-of-rupture change-radial change-tangential price-per-m3 price-per-board-foot price-per-foot") {
		kinds[k] = measure.Number
	}
}

// values works out what the numbers of a document come to, each once.
type values struct {
	doc   *Document
	bare  measure.Unit
	done  map[string]result
	stack []string
	errs  Errors
}

type result struct {
	q  measure.Quantity
	ok bool
}

func newValues(d *Document) *values {
	v := &values{doc: d, done: map[string]result{}}
	if d.Text("units") == "in" {
		v.bare = measure.Imperial
	}
	return v
}

// kindAt gives what the number at a path counts; named values keep the kind they have.
func kindAt(path string) (kind measure.Kind, known bool) {
	parent, key := cut(path)
	if strings.HasPrefix(path, "names.") {
		return 0, false
	}
	if k, ok := kinds[key]; ok {
		return k, true
	}
	if strings.Trim(key, "0123456789") != "" {
		return 0, false
	}
	_, list := cut(parent)
	k, ok := kinds[list] // an item of tail-widths
	return k, ok
}

// at works out the number at a path. What is not understood is put on the list of errors once.
func (v *values) at(path string) (measure.Quantity, bool) {
	if r, ok := v.done[path]; ok {
		return r.q, r.ok
	}
	n := v.doc.find(path)
	if n == nil {
		return measure.Quantity{}, false
	}
	v.stack = append(v.stack, path)
	q, ok := v.work(n, path)
	v.stack = v.stack[:len(v.stack)-1]
	v.done[path] = result{q, ok}
	return q, ok
}

func (v *values) work(n *yaml.Node, path string) (measure.Quantity, bool) {
	if n.Kind != yaml.ScalarNode || isNull(n) {
		v.refuse(n, path, 0, n.Value, "a value is missing here; a number or an expression is expected"+hint(path))
		return measure.Quantity{}, false
	}
	text := strings.TrimSpace(measure.Plain(n.Value))
	q, err := evaluate(text, v.unit(), v.look)
	if err != nil {
		v.refuseAt(n, path, text, err)
		return q, false
	}
	return v.fit(n, path, q)
}

// refuseAt puts a failed expression on the list, unless what failed is refused where it stands.
func (v *values) refuseAt(n *yaml.Node, path, text string, err error) {
	var at *exprError
	if !errors.As(err, &at) {
		return
	}
	if why := measure.Trouble(text); why != "" {
		v.refuse(n, path, 0, n.Value, why)
		return
	}
	v.refuse(n, path, utf8.RuneCountInString(text[:min(at.pos, len(text))]), n.Value, at.reason+hint(path))
}

// unit is what a bare number is that stands for a length.
func (v *values) unit() measure.Length {
	if v.bare == measure.Imperial {
		return measure.Inch
	}
	return measure.Millimetre
}

// fit gives a bare number the unit of its place and refuses what is of another kind.
func (v *values) fit(n *yaml.Node, path string, q measure.Quantity) (measure.Quantity, bool) {
	if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
		v.refuse(n, path, 0, n.Value, "this comes to no number")
		return q, false
	}
	want, known := kindAt(path)
	if known {
		q = become(q, want, v.unit())
	}
	switch {
	case known && q.Kind != want:
		v.refuse(n, path, 0, n.Value, fmt.Sprintf("this is %s, and %s is expected%s", called(q.Kind), called(want), hint(path)))
	case q.Kind == measure.OfLength && math.Abs(q.Value) > float64(measure.Farthest):
		v.refuse(n, path, 0, n.Value, "longer than 100 m; is the unit right? A length such as 260 mm or 10 1/4 in is expected")
	case q.Kind == measure.OfAngle && math.Abs(measure.Angle(q.Value).Degrees()) >= 180:
		v.refuse(n, path, 0, n.Value, "an angle is less than 180 degrees either way"+hint(path))
	default:
		return q, true
	}
	return q, false
}

func hint(path string) string {
	switch k, known := kindAt(path); {
	case !known:
		return ""
	case k == measure.OfLength:
		return "; a length such as 260, 26 cm or 9 3/8 in would do"
	case k == measure.OfAngle:
		return "; an angle such as 6, 6 deg or 1:9.5 would do"
	}
	return "; a whole number such as 4 would do"
}

// look gives what a name in an expression stands for: one of names, or a size by its path.
func (v *values) look(name string) (measure.Quantity, error) {
	path := v.pathOf(name)
	if _, number := kindAt(path); !number && !strings.HasPrefix(path, "names.") || v.doc.find(path) == nil {
		return measure.Quantity{}, fmt.Errorf("nothing is called %q here; %sit would stand under names, or be a size such as size.height", name, v.near(name))
	}
	for i, p := range v.stack {
		if p == path {
			round := append(append([]string{}, v.stack[i:]...), path)
			for j := range round {
				round[j] = strings.TrimPrefix(round[j], "names.")
			}
			return measure.Quantity{}, fmt.Errorf("this goes round in a circle: %+s; give one of them a size of its own, such as 52 mm", strings.Join(round, " → "))
		}
	}
	q, ok := v.at(path)
	if !ok {
		return q, &errElsewhere{name}
	}
	return q, nil
}

// typedIn gives the unit that a length was typed with: the first in its expression, names and sizes that it uses included.
// ok is false where all its numbers are bare. seen are paths that were asked after already.
func (v *values) typedIn(path string, seen map[string]bool) (u measure.Unit, ok bool) {
	if seen[path] {
		return u, false
	}
	seen[path] = true
	text := plainly(v.doc.Text(path))
	scan(text, func(from, to int, kind measure.Kind) {
		switch {
		case ok:
		case kind == measure.OfLength:
			u, ok = measure.UnitOf(text[from:to])
		case kind == aWord:
			u, ok = v.typedIn(v.pathOf(text[from:to]), seen)
		}
	})
	return u, ok
}

// pathOf is where what a name in an expression stands for would be.
func (v *values) pathOf(name string) string {
	if path := "names." + name; v.doc.find(path) != nil {
		return path
	}
	return name
}

// near asks after the name or size that a mistyped name is nearest to.
func (v *values) near(name string) string {
	var known []string
	all := map[string]string{}
	flatten(v.doc.root, "", all)
	for path := range all {
		if short, is := strings.CutPrefix(path, "names."); is {
			known = append(known, short)
		} else if _, number := kindAt(path); number {
			known = append(known, path)
		}
	}
	slices.Sort(known)
	if k := Nearest(name, known); k != "" {
		return fmt.Sprintf("did you mean %+s? Otherwise ", k)
	}
	return ""
}

func (v *values) refuse(n *yaml.Node, path string, shift int, read, want string) {
	if n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0 {
		shift++
	}
	v.errs = append(v.errs, &Error{v.doc.name, n.Line, n.Column + shift, path, read, want})
}

// expression tells whether the number at a path is more than a plain quantity, and what it comes to.
func (v *values) expression(n *yaml.Node, path string) (shown string, is bool) {
	text := strings.TrimLeft(strings.TrimSpace(measure.Plain(n.Value)), "+- ")
	if _, m, err := measure.Literal(text); err == nil && m == len(text) {
		return "", false
	}
	q, ok := v.at(path)
	return v.shown(q), ok
}

// shown prints a value finer than any rule is read.
func (v *values) shown(q measure.Quantity) string {
	switch q.Kind {
	case measure.OfLength:
		fine := measure.Style{Unit: v.bare, Step: 0.01, Both: true}
		if v.bare == measure.Imperial {
			fine.Step = measure.Inch / 64
		}
		return fine.FormatUnit(measure.Length(q.Value))
	case measure.OfAngle:
		a := measure.Angle(q.Value)
		return measure.FormatAngle(a, 0) + " (" + measure.Ratio(a) + ")"
	}
	return fmt.Sprintf("%.6g", q.Value)
}

// Value gives what the number at a path comes to, printed; ok is false when there is none or it is
// not understood.
func (d *Document) Value(path string) (shown string, ok bool) {
	q, ok := d.Quantity(path)
	if !ok {
		return "", false
	}
	return newValues(d).shown(q), true
}

// Quantity gives what the number at a path comes to; ok is false when there is none or it is not understood.
func (d *Document) Quantity(path string) (q measure.Quantity, ok bool) {
	if d.find(path) == nil {
		return measure.Quantity{}, false
	}
	return newValues(d).at(path)
}
