package measure

import (
	"fmt"
	"math"
	"strings"
)

// Farthest is the longest length that is taken for one: 100 m. Anything longer is a slip of the unit.
const Farthest Length = 100_000

// vulgar are the fractions that have a character of their own.
var vulgar = strings.NewReplacer(
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⅓", " 1/3", "⅔", " 2/3", "⅕", " 1/5", "⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5", "⅙", " 1/6", "⅚", " 5/6",
	"⁄", "/", "′", "'", "’", "'", "″", `"`, "”", `"`, "“", `"`, "º", "°", "−", "-", "–", "-",
	"\u00a0", " ", "\u202f", " ", "\u2009", " ", "\t", " ",
)

// Plain writes fractions, primes, signs and blanks that have characters of their own in the plain
// ones that Literal reads.
func Plain(text string) string { return vulgar.Replace(text) }

// ParseLength reads a length as a woodworker types it: "9 3/8", "9-3/8", `2' 3 1/2"`, "26 cm",
// ".75", with a minus sign before it if need be. A bare number is in the unit given. The error is
// an *Error that quotes the text and says what would be read.
func ParseLength(text string, bare Unit) (Length, error) {
	q, err := parse(text)
	if err != nil {
		return 0, err
	}
	l := Length(q.Value)
	switch q.Kind {
	case OfAngle:
		return 0, &Error{text, "this is an angle; a length is expected, such as 260, 26 cm or 9 3/8 in"}
	case Number:
		if bare == Imperial {
			l = Of(q.Value, Inch)
		}
	}
	if math.Abs(float64(l)) > float64(Farthest) {
		return 0, &Error{text, "longer than 100 m; is the unit right? A length such as 260 mm or 10 1/4 in is expected"}
	}
	return l, nil
}

// ParseAngle reads an angle: degrees ("7", "7 deg", "7°") or a ratio of run to rise ("1:8"). It must
// be less than half a turn either way. The error is an *Error.
func ParseAngle(text string) (Angle, error) {
	q, err := parse(text)
	if err != nil {
		return 0, err
	}
	a := Angle(q.Value)
	switch q.Kind {
	case OfLength:
		return 0, &Error{text, "this is a length; an angle is expected, such as 7, 7 deg or 1:8"}
	case Number:
		a *= Degree
	}
	if math.Abs(a.Degrees()) >= 180 {
		return 0, &Error{text, "an angle is less than 180 degrees either way, such as 7 deg or 1:8"}
	}
	return a, nil
}

// parse reads a whole text as one quantity with an optional sign.
func parse(text string) (Quantity, error) {
	plain := strings.TrimSpace(Plain(text))
	if plain == "" {
		return Quantity{}, &Error{text, "nothing is typed here; a number is expected, such as 260 or 9 3/8 in"}
	}
	if why := Trouble(plain); why != "" {
		return Quantity{}, &Error{text, why}
	}
	sign := 1.0
	if rest, ok := strings.CutPrefix(plain, "-"); ok {
		sign, plain = -1, strings.TrimLeft(rest, " ")
	} else if rest, ok := strings.CutPrefix(plain, "+"); ok {
		plain = strings.TrimLeft(rest, " ")
	}
	q, n, err := Literal(plain)
	if err != nil {
		return Quantity{}, &Error{text, err.Error()}
	}
	if rest := strings.TrimSpace(plain[n:]); rest != "" {
		return Quantity{}, &Error{text, fmt.Sprintf("%q is not understood after the number; lengths end in mm, cm, m, in or ft, angles in deg", rest)}
	}
	q.Value *= sign
	return q, nil
}

// shopWords mean "a little more" or "a little less", and not the same little to everyone.
var shopWords = []string{"strong", "heavy", "light", "weak", "full", "bare", "scant", "shy", "proud", "fat", "big", "plus", "minus", "about", "approx"}

// Trouble says why a text that people do type cannot be taken as it stands; "" when it can.
func Trouble(text string) string {
	lower := strings.ToLower(text)
	for _, w := range strings.FieldsFunc(lower, func(r rune) bool { return !isLetter(r) }) {
		for _, s := range shopWords {
			if w == s {
				return fmt.Sprintf("%q means a sixteenth to one crew and a thirty-second to another; type the size itself, such as 25/32 in", s)
			}
		}
		switch w {
		case "nan", "inf", "infinity":
			return "this is not a number; a size is expected, such as 260 or 9 3/8 in"
		}
	}
	if strings.Contains(text, ",") {
		return fmt.Sprintf("a comma may divide thousands or decimals, so it is not read; type %s with a point, or a fraction",
			strings.Replace(text, ",", ".", 1))
	}
	if exponent(lower) {
		return "powers of ten are not read; type the number in full, such as 1000 for 1e3"
	}
	return ""
}

// exponent tells whether an e stands between a digit and another digit or sign.
func exponent(s string) bool {
	for i := 1; i+1 < len(s); i++ {
		if s[i] != 'e' || !(digits(s[i-1:]) > 0 || s[i-1] == '.') {
			continue
		}
		if next := s[i+1]; digits(s[i+1:]) > 0 || next == '-' || next == '+' {
			return true
		}
	}
	return false
}
