// Package field is one size of a design on the screen: a place to type anything that the design
// file reads, what was understood by it, and what is wrong with it or was noticed about it.
package field

import (
	"strconv"
	"strings"

	"splaywright/app/say"
	"splaywright/model/form"
	"splaywright/model/measure"
)

// Reading is the value of a field in a design: a measure.Length, a list of them, a measure.Angle,
// an int, a string or a bool; nil when it was left out.
type Reading func(d *form.Design) any

// Spec is what a field is about.
type Spec struct {
	Path    string // in the design file
	Label   string
	Value   Reading
	Choices []string          // the only texts there are; nil = anything may be typed
	Senses  map[string]string // what a choice is said by where its word means several things: "top|way"
	Offers  []string          // texts to pick from besides typing
	Hint    string            // what stands in the field while it is empty
	Menu    []string          // what can be done besides typing
	Turns   bool              // it is a number that arrows turn
	Number  bool              // it is a number without arrows: a price, a value of the person's own
	Lock    bool              // it can be kept when the piece is resized
	Long    bool              // its text is longer than its field as a rule: it stands below it whole
}

// said are the choices as they are said.
func (s Spec) said() []string {
	out := make([]string, len(s.Choices))
	for i, c := range s.Choices {
		out[i] = s.word(c)
	}
	return out
}

// word is how one choice is said.
func (s Spec) word(choice string) string {
	if key, ok := s.Senses[choice]; ok {
		return say.Sense(key)
	}
	return say.It(choice)
}

// Said says a value as it was understood: a length in both units, an angle in degrees and as
// a ratio. It is empty for words, which need no saying.
func Said(v any, u measure.Unit) string {
	switch v := v.(type) {
	case measure.Length:
		return SaidLength(v, u)
	case []measure.Length:
		return saidList(v, u)
	case measure.Angle:
		return SaidAngle(v)
	case int:
		return strconv.Itoa(v)
	}
	return ""
}

// How closely lengths are said in the other unit.
const (
	mmStep   = 0.01 * measure.Millimetre
	inchStep = measure.Inch / 64
)

// SaidLength says a length in the design's unit first and in the other one second; "≈" tells
// that it had to be rounded to be said.
func SaidLength(l measure.Length, u measure.Unit) string {
	mm, mmOff := in(l, measure.Metric, mmStep)
	inch, inchOff := in(l, measure.Imperial, inchStep)
	first, second, firstOff, secondOff := mm, inch, mmOff, inchOff
	if u == measure.Imperial {
		first, second, firstOff, secondOff = inch, mm, inchOff, mmOff
	}
	if firstOff {
		first = "≈ " + first
	}
	if secondOff {
		return first + " ≈ " + second
	}
	return first + " = " + second
}

// saidList says lengths one after the other and what they come to.
func saidList(list []measure.Length, u measure.Unit) string {
	step := measure.Length(mmStep)
	if u == measure.Imperial {
		step = inchStep
	}
	var texts []string
	var sum measure.Length
	for _, l := range list {
		text, _ := in(l, u, step)
		texts = append(texts, text)
		sum += l
	}
	all, _ := in(sum, u, step)
	return strings.Join(texts, " + ") + " = " + all
}

// in says a length in one unit and tells whether it had to be rounded for that.
func in(l measure.Length, u measure.Unit, step measure.Length) (text string, rounded bool) {
	st := measure.Style{Unit: u, Step: step}
	_, off := st.Round(l)
	return plain(st.FormatUnit(l)), off > noise || off < -noise
}

// noise is what arithmetic in double precision leaves of a length that is exact.
const noise = 1e-6 * measure.Millimetre

// SaidAngle says an angle in degrees and, unless it is 0, as a ratio.
func SaidAngle(a measure.Angle) string {
	deg := plain(measure.FormatAngle(a, 0))
	if a == 0 {
		return deg
	}
	return deg + " = " + measure.Ratio(a)
}

// plain drops zeros that say nothing: "260.00 mm" is "260 mm".
func plain(text string) string {
	end := strings.LastIndexAny(text, "0123456789") + 1
	number, unit := text[:end], text[end:]
	if strings.Contains(number, ".") {
		number = strings.TrimRight(strings.TrimRight(number, "0"), ".")
	}
	return number + unit
}
