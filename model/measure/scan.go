package measure

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Kind tells what a quantity is a quantity of.
type Kind int

// The kinds of quantity.
const (
	Number Kind = iota // no unit
	OfLength
	OfAngle
)

// Quantity is a number with what it counts: a bare number, millimetres or radians.
type Quantity struct {
	Kind  Kind
	Value float64
}

// Error says why a text is not a length or an angle, and what would be.
type Error struct {
	Text   string // as typed
	Reason string
}

// Error quotes the text and gives the reason.
func (e *Error) Error() string { return fmt.Sprintf("%q: %s", e.Text, e.Reason) }

// Literal reads the quantity that text begins with and tells how many bytes it takes. It reads
// whole numbers, decimals with a point, fractions (3/8), whole numbers with a fraction (9 3/8,
// 9-3/8), any of these with a unit, feet followed by inches, and a ratio of two numbers (1:8, the
// angle whose run is 1 over a rise of 8). A hyphen with no blank beside it, between a whole
// number and a fraction, belongs to the number; so does a single slash with no blank beside it
// between whole numbers. Text must have gone through Plain.
func Literal(text string) (Quantity, int, error) {
	v, n, err := number(text)
	if err != nil {
		return Quantity{}, 0, err
	}
	if strings.HasPrefix(text[n:], ":") {
		return ratio(text, v, n)
	}
	name, m := unitAt(text[n:])
	if name == "" {
		return Quantity{Number, v}, n, nil
	}
	n += m
	if name == "deg" {
		return Quantity{OfAngle, v * float64(Degree)}, n, nil
	}
	l := float64(Of(v, unitLengths[name]))
	if name == "ft" {
		inches, k, err := inchesAfterFeet(text[n:])
		if err != nil {
			return Quantity{}, 0, err
		}
		return Quantity{OfLength, l + inches}, n + k, nil
	}
	return Quantity{OfLength, l}, n, nil
}

func ratio(text string, run float64, n int) (Quantity, int, error) {
	rise, m, err := number(text[n+1:])
	if err != nil {
		return Quantity{}, 0, fmt.Errorf("a ratio is two numbers such as 1:8: %w", err)
	}
	if rise == 0 {
		return Quantity{}, 0, fmt.Errorf("a ratio over 0 has no angle; 1:8 means 1 across in 8 along")
	}
	return Quantity{OfAngle, math.Atan(run / rise)}, n + 1 + m, nil
}

// inchesAfterFeet reads the inches that may follow feet, in millimetres.
func inchesAfterFeet(text string) (mm float64, n int, err error) {
	skip := blanks(text)
	if rest := text[skip:]; rest == "" || !startsNumber(rest) {
		return 0, 0, nil
	}
	v, m, err := number(text[skip:])
	if err != nil {
		return 0, 0, err
	}
	n = skip + m
	switch name, k := unitAt(text[n:]); name {
	case "in":
		return float64(Of(v, Inch)), n + k, nil
	case "":
		return float64(Of(v, Inch)), n, nil
	default:
		return 0, 0, fmt.Errorf("feet can only be followed by inches, not by %+s, such as 2 ft 3 1/2 in", name)
	}
}

func startsNumber(s string) bool {
	return s[0] >= '0' && s[0] <= '9' || s[0] == '.'
}

func blanks(s string) int { return len(s) - len(strings.TrimLeft(s, " ")) }

func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// longest is how many digits a number may have; more is a slip, not a size.
const longest = 15

// number reads an unsigned number without a unit.
func number(s string) (float64, int, error) {
	whole := digits(s)
	if whole > longest {
		return 0, 0, fmt.Errorf("a number with %d digits is no size; fewer are expected, such as 260 or 9 3/8 in", whole)
	}
	if err := eights(s); err != nil {
		return 0, 0, err
	}
	if whole < len(s) && s[whole] == '.' {
		return decimal(s, whole)
	}
	if whole == 0 {
		return 0, 0, fmt.Errorf("a number is expected, such as 260 or 9 3/8 in")
	}
	v, err := strconv.ParseFloat(s[:whole], 64)
	if err != nil {
		return 0, 0, fmt.Errorf("a number is expected: %w", err)
	}
	if f, n, err := fraction(s[whole:], "/"); n > 0 || err != nil { // 3/8
		if err != nil {
			return 0, 0, err
		}
		return v / f, whole + n, nil
	}
	f, n, err := fractionAfter(s[whole:])
	if err != nil {
		return 0, 0, err
	}
	return v + f, whole + n, nil
}

// eights refuses a number that begins with a 0 too many: it is a slip, or was meant in eights as
// some programs read it.
func eights(s string) error {
	n := digits(s)
	if n < 2 || s[0] != '0' {
		return nil
	}
	end := n
	if end < len(s) && s[end] == '.' {
		end += 1 + digits(s[end+1:])
	}
	plain := strings.TrimLeft(s[:n-1], "0") + s[n-1:end] // the last digit stays, even a 0
	return fmt.Errorf("a number does not begin with 0, as some programs would read it in eights; type %s", plain)
}

func decimal(s string, whole int) (float64, int, error) {
	part := digits(s[whole+1:])
	if whole+part == 0 {
		return 0, 0, fmt.Errorf("a point with no digit beside it is no number; type it such as 0.75")
	}
	if part > longest {
		return 0, 0, fmt.Errorf("a number with %d decimals is no size; fewer are expected, such as 0.75", part)
	}
	n := whole + 1 + part
	if n < len(s) && s[n] == '.' {
		return 0, 0, fmt.Errorf("a number has one decimal point, such as 12.75")
	}
	if n < len(s) && s[n] == '/' {
		return 0, 0, fmt.Errorf("a fraction is made of whole numbers, such as 3/8")
	}
	v, err := strconv.ParseFloat(s[:n], 64)
	if err != nil {
		return 0, 0, fmt.Errorf("a number is expected: %w", err)
	}
	return v, n, nil
}

// fraction reads sep and a whole number; n is 0 when s does not go on like that.
func fraction(s, sep string) (below float64, n int, err error) {
	rest, ok := strings.CutPrefix(s, sep)
	if !ok || digits(rest) == 0 {
		return 0, 0, nil
	}
	d := digits(rest)
	if d > longest {
		return 0, 0, fmt.Errorf("a number with %d digits is no size; fewer are expected, such as 260 or 9 3/8 in", d)
	}
	if err := eights(rest); err != nil {
		return 0, 0, err
	}
	below, err = strconv.ParseFloat(rest[:d], 64)
	if err != nil {
		return 0, 0, fmt.Errorf("a number is expected: %w", err)
	}
	if below == 0 {
		return 0, 0, fmt.Errorf("a fraction over 0 has no value; another number is expected below the slash, such as 3/8")
	}
	return below, len(sep) + d, nil
}

// fractionAfter reads the fraction that may follow a whole number: " 3/8" or "-3/8".
func fractionAfter(s string) (v float64, n int, err error) {
	skip := blanks(s)
	if skip == 0 && strings.HasPrefix(s, "-") {
		skip = 1
	}
	if skip == 0 {
		return 0, 0, nil
	}
	d := digits(s[skip:])
	if d == 0 || d > longest {
		return 0, 0, nil
	}
	below, m, err := fraction(s[skip+d:], "/")
	if err != nil || m == 0 {
		return 0, 0, err
	}
	if err := eights(s[skip:]); err != nil {
		return 0, 0, err
	}
	above, err := strconv.ParseFloat(s[skip:skip+d], 64)
	if err != nil {
		return 0, 0, fmt.Errorf("a number is expected: %w", err)
	}
	if above >= below {
		return 0, 0, fmt.Errorf("%s/%s after a whole number is not less than one; a smaller part is expected, such as 9 3/8", s[skip:skip+d], s[skip+d+1:skip+d+m])
	}
	return above / below, skip + d + m, nil
}

var unitLengths = map[string]Length{
	"mm": Millimetre, "cm": 10, "m": 1000, "in": Inch, "ft": Foot,
}

// unitWords are the ways to write a unit, longest first where one begins another.
var unitWords = []struct{ word, unit string }{
	{"millimetres", "mm"}, {"millimeters", "mm"}, {"centimetres", "cm"}, {"centimeters", "cm"},
	{"degrees", "deg"}, {"degree", "deg"}, {"inches", "in"}, {"inch", "in"}, {"feet", "ft"}, {"foot", "ft"},
	{"metres", "m"}, {"meters", "m"}, {"deg", "deg"}, {"mm", "mm"}, {"cm", "cm"}, {"in", "in"}, {"ft", "ft"},
	{"m", "m"}, {`"`, "in"}, {"''", "in"}, {"'", "ft"}, {"°", "deg"},
}

// unitAt reads the unit that s begins with, blanks before it included; "" when there is none.
func unitAt(s string) (unit string, n int) {
	skip := blanks(s)
	rest := s[skip:]
	for _, u := range unitWords {
		if len(rest) >= len(u.word) && strings.EqualFold(rest[:len(u.word)], u.word) && endsWord(u.word, rest[len(u.word):]) {
			return u.unit, skip + len(u.word)
		}
	}
	return "", 0
}

// UnitOf gives the unit that a length was typed with, as ParseLength and Literal read it: feet and inches are Imperial, the
// others Metric. ok is false where no unit of length stands behind the number.
func UnitOf(text string) (u Unit, ok bool) {
	plain := strings.TrimLeft(Plain(text), " +-")
	_, n, err := number(plain)
	if err != nil {
		return Metric, false
	}
	switch name, _ := unitAt(plain[n:]); name {
	case "in", "ft":
		return Imperial, true
	case "", "deg":
		return Metric, false
	}
	return Metric, true
}

// endsWord tells whether a unit's letters stop where the unit does: "m" is no unit in "mast".
func endsWord(word, rest string) bool {
	last, _ := utf8.DecodeLastRuneInString(word)
	if rest == "" || !isLetter(last) {
		return true
	}
	next, _ := utf8.DecodeRuneInString(rest)
	return !isLetter(next) && next != '_' && next != '.' && (next < '0' || next > '9')
}

func isLetter(r rune) bool { return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' }
