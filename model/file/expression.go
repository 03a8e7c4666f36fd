package file

import (
	"fmt"
	"math"
	"strings"

	"splaywright/model/measure"
)

// An expression is made of quantities as measure.Literal reads them, names, the sizes of the design
// by their path (size.height), + - * / with blanks around a minus, brackets, and the functions below.
// A slash with no blank beside it between whole numbers makes a fraction (9 3/8 in, 3/4 in is one
// length); with a blank, or beside a name or a bracket, it divides (size.height / 5). A hyphen
// before a letter belongs to the name it stands in (pin-width). Lengths and angles are kept apart:
// a sum is of one kind, a product has at most one side with a unit. A bare number added to a length
// is in the design's units, added to an angle in degrees.

const (
	maxExpression = 400 // characters
	maxNesting    = 40
)

// lookup gives what a name or path stands for.
type lookup func(name string) (measure.Quantity, error)

type expression struct {
	text  string
	pos   int
	depth int
	unit  measure.Length // of bare numbers
	look  lookup
}

// exprError is a refusal at a place in the text.
type exprError struct {
	pos    int
	reason string
}

func (e *exprError) Error() string { return e.reason }

// errElsewhere tells that what a name stands for was refused at its own place.
type errElsewhere struct{ name string }

func (e *errElsewhere) Error() string {
	return fmt.Sprintf("%+s is not understood where it is given", e.name)
}

// evaluate works out a text that has gone through measure.Plain.
func evaluate(text string, unit measure.Length, look lookup) (measure.Quantity, error) {
	e := &expression{text: text, unit: unit, look: look}
	if len(text) > maxExpression {
		return measure.Quantity{}, e.fail("longer than %d characters; work parts of it out under names and use those", maxExpression)
	}
	q, err := e.sum()
	if err != nil {
		return q, err
	}
	if e.blanks(); e.pos < len(e.text) {
		return q, e.fail("%q is not understood here", clip(e.text[e.pos:]))
	}
	return q, nil
}

func (e *expression) fail(format string, args ...any) error {
	return &exprError{e.pos, fmt.Sprintf(format, args...)}
}

func (e *expression) blanks() {
	for e.pos < len(e.text) && e.text[e.pos] == ' ' {
		e.pos++
	}
}

// take moves past one of the characters in set and gives it, 0 when none of them comes next.
func (e *expression) take(set string) byte {
	e.blanks()
	if e.pos < len(e.text) && strings.IndexByte(set, e.text[e.pos]) >= 0 {
		e.pos++
		return e.text[e.pos-1]
	}
	return 0
}

func (e *expression) sum() (measure.Quantity, error) {
	a, err := e.product()
	for err == nil {
		op := e.take("+-")
		if op == 0 {
			return a, nil
		}
		at := e.pos - 1
		var b measure.Quantity
		if b, err = e.product(); err != nil {
			break
		}
		a, b = become(a, b.Kind, e.unit), become(b, a.Kind, e.unit)
		if a.Kind != b.Kind {
			return a, &exprError{at, fmt.Sprintf("%s and %s cannot be added or taken from each other; both must be lengths or both angles, such as size.height + 5 mm or splay.ends + 1 deg", called(a.Kind), called(b.Kind))}
		}
		if op == '+' {
			a.Value += b.Value
		} else {
			a.Value -= b.Value
		}
	}
	return a, err
}

func (e *expression) product() (measure.Quantity, error) {
	a, err := e.signed()
	for err == nil {
		op := e.take("*/")
		if op == 0 {
			return a, nil
		}
		at := e.pos - 1
		var b measure.Quantity
		if b, err = e.signed(); err != nil {
			break
		}
		if op == '*' {
			a, err = times(a, b, at)
		} else {
			a, err = over(a, b, at)
		}
	}
	return a, err
}

// become gives a bare number the unit that it has as a length or an angle.
func become(q measure.Quantity, kind measure.Kind, unit measure.Length) measure.Quantity {
	switch {
	case q.Kind != measure.Number:
		return q
	case kind == measure.OfLength:
		return measure.Quantity{Kind: kind, Value: float64(measure.Of(q.Value, unit))}
	case kind == measure.OfAngle:
		return measure.Quantity{Kind: kind, Value: q.Value * float64(measure.Degree)}
	}
	return q
}

func times(a, b measure.Quantity, at int) (measure.Quantity, error) {
	switch {
	case a.Kind == measure.Number:
		return measure.Quantity{Kind: b.Kind, Value: a.Value * b.Value}, nil
	case b.Kind == measure.Number:
		return measure.Quantity{Kind: a.Kind, Value: a.Value * b.Value}, nil
	}
	return a, &exprError{at, fmt.Sprintf("%s times %s is no size; multiply by a bare number, such as size.height * 2", called(a.Kind), called(b.Kind))}
}

func over(a, b measure.Quantity, at int) (measure.Quantity, error) {
	switch {
	case b.Value == 0:
		return a, &exprError{at, "this divides by zero; another number is expected below the slash, such as size.height / 5"}
	case b.Kind == measure.Number:
		return measure.Quantity{Kind: a.Kind, Value: a.Value / b.Value}, nil
	case a.Kind == b.Kind:
		return measure.Quantity{Kind: measure.Number, Value: a.Value / b.Value}, nil
	}
	return a, &exprError{at, fmt.Sprintf("%s over %s is no size; divide by a bare number, or a size by one of its own kind, such as size.height / 5", called(a.Kind), called(b.Kind))}
}

func (e *expression) signed() (measure.Quantity, error) {
	if e.depth++; e.depth > maxNesting {
		return measure.Quantity{}, e.fail("brackets nested too deeply; work parts of it out under names and use those")
	}
	defer func() { e.depth-- }()
	if op := e.take("+-"); op != 0 {
		q, err := e.signed()
		if op == '-' {
			q.Value = -q.Value
		}
		return q, err
	}
	return e.primary()
}

func (e *expression) primary() (measure.Quantity, error) {
	if e.take("(") != 0 {
		q, err := e.sum()
		if err == nil && e.take(")") == 0 {
			err = e.fail("a closing bracket is missing, such as that of (size.height - 20) / 3")
		}
		return q, err
	}
	if e.blanks(); e.pos == len(e.text) {
		return measure.Quantity{}, e.fail("something is missing at the end; a number or a name is expected")
	}
	switch c := e.text[e.pos]; {
	case c >= '0' && c <= '9' || c == '.':
		return e.literal()
	case letter(c):
		return e.named()
	}
	return measure.Quantity{}, e.fail("%q is not understood here; a number such as 260 or 9 3/8 in, or a name, is expected", clip(e.text[e.pos:]))
}

func (e *expression) literal() (measure.Quantity, error) {
	rest := e.text[e.pos:]
	q, n, err := measure.Literal(rest)
	if err != nil {
		return q, e.fail("%v", err)
	}
	if n < len(rest) && (letter(rest[n]) || rest[n] == '_') {
		return q, e.fail("%q is not understood after the number; lengths end in mm, cm, m, in or ft, angles in deg", clip(rest[n:]))
	}
	e.pos += n
	return q, nil
}

func letter(c byte) bool { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' }

// named reads a name, a path, or a function with its arguments.
func (e *expression) named() (measure.Quantity, error) {
	start := e.pos
	for e.pos < len(e.text) && e.inName() {
		e.pos++
	}
	name := e.text[start:e.pos]
	if e.take("(") != 0 {
		return e.call(name, start)
	}
	q, err := e.look(name)
	if err != nil {
		if _, elsewhere := err.(*errElsewhere); elsewhere {
			return q, err
		}
		return q, &exprError{start, err.Error()}
	}
	return q, nil
}

func (e *expression) inName() bool {
	c := e.text[e.pos]
	if letter(c) || c >= '0' && c <= '9' || c == '_' {
		return true
	}
	next := e.pos+1 < len(e.text)
	return next && (c == '-' && letter(e.text[e.pos+1]) || c == '.' && (letter(e.text[e.pos+1]) || e.text[e.pos+1] >= '0' && e.text[e.pos+1] <= '9'))
}

func (e *expression) call(name string, start int) (measure.Quantity, error) {
	var args []measure.Quantity
	for {
		q, err := e.sum()
		if err != nil {
			return q, err
		}
		args = append(args, q)
		if e.take(";") != 0 {
			continue
		}
		if e.take(")") == 0 {
			return q, e.fail("a closing bracket is missing; sizes in a function are parted by semicolons")
		}
		break
	}
	q, reason := apply(name, alike(args, e.unit))
	if reason != "" {
		return q, &exprError{start, reason}
	}
	return q, nil
}

// alike gives bare numbers the kind of the arguments beside them.
func alike(args []measure.Quantity, unit measure.Length) []measure.Quantity {
	kind := measure.Number
	for _, a := range args {
		if a.Kind != measure.Number {
			kind = a.Kind
		}
	}
	for i := range args {
		args[i] = become(args[i], kind, unit)
	}
	return args
}

// functions are what an expression may call, with how many arguments each takes (-1: one or more).
var functions = map[string]int{"min": -1, "max": -1, "round": 2, "tan": 1, "sin": 1, "cos": 1, "asin": 1, "acos": 1, "atan": 1, "sqrt": 1}

// calls show how each function that takes a fixed count is written.
var calls = map[string]string{
	"round": "round(size.width / 7; 5 mm)", "tan": "tan(splay.ends)", "sin": "sin(splay.ends)", "cos": "cos(splay.ends)",
	"asin": "asin(30 / 445)", "acos": "acos(440 / 445)", "atan": "atan(1 / 8)", "sqrt": "sqrt(2)",
}

func apply(name string, args []measure.Quantity) (q measure.Quantity, reason string) {
	want, ok := functions[name]
	switch {
	case !ok:
		return q, fmt.Sprintf("there is no function %q; there are min, max, round, tan, sin, cos, asin, acos, atan, sqrt", name)
	case want >= 0 && len(args) != want:
		return q, fmt.Sprintf("%+s takes %d, parted by semicolons, such as %+s", name, want, calls[name])
	}
	a := args[0]
	switch name {
	case "min", "max":
		return extreme(name, args)
	case "round":
		if a.Kind != args[1].Kind || args[1].Value <= 0 {
			return q, "round takes a size and a step of the same kind above zero, such as round(size.width / 7; 5 mm)"
		}
		return measure.Quantity{Kind: a.Kind, Value: math.Round(a.Value/args[1].Value) * args[1].Value}, ""
	case "atan", "asin", "acos":
		return inverse(name, a)
	case "sqrt":
		if a.Kind != measure.Number || a.Value < 0 {
			return q, "sqrt takes a bare number of zero or more, such as sqrt(2); a length is multiplied by it: size.width * sqrt(2)"
		}
		return measure.Quantity{Kind: measure.Number, Value: math.Sqrt(a.Value)}, ""
	}
	return trig(name, a)
}

// inverse gives the angle of a bare number, one length over another.
func inverse(name string, a measure.Quantity) (q measure.Quantity, reason string) {
	f := map[string]func(float64) float64{"atan": math.Atan, "asin": math.Asin, "acos": math.Acos}[name]
	switch bare := a.Kind == measure.Number; {
	case name == "atan" && !bare:
		return q, "atan takes a bare number, such as a run over a rise"
	case name != "atan" && (!bare || math.Abs(a.Value) > 1):
		return q, fmt.Sprintf("%+s takes a bare number from -1 to 1, one side of a triangle over its longest, such as %+s", name, calls[name])
	}
	return measure.Quantity{Kind: measure.OfAngle, Value: f(a.Value)}, ""
}

func trig(name string, a measure.Quantity) (q measure.Quantity, reason string) {
	if a.Kind != measure.OfAngle {
		return q, fmt.Sprintf("%+s takes an angle, such as 6 deg", name)
	}
	f := map[string]func(float64) float64{"tan": math.Tan, "sin": math.Sin, "cos": math.Cos}[name]
	return measure.Quantity{Kind: measure.Number, Value: f(a.Value)}, ""
}

func extreme(name string, args []measure.Quantity) (best measure.Quantity, reason string) {
	best = args[0]
	for _, a := range args[1:] {
		if a.Kind != best.Kind {
			return best, fmt.Sprintf("%+s takes sizes of one kind, such as %+s(size.width; 300 mm)", name, name)
		}
		if (name == "min") == (a.Value < best.Value) {
			best = a
		}
	}
	return best, ""
}

func called(k measure.Kind) string {
	switch k {
	case measure.OfLength:
		return "a length"
	case measure.OfAngle:
		return "an angle"
	}
	return "a bare number"
}
