package measure

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Style is how lengths are printed. Rounding happens here and nowhere else.
type Style struct {
	Unit Unit
	Step Length // the nearest of which is printed; 0 = 0.5 mm, or 1/32 in
	Both bool   // the other unit is printed behind, in brackets
	// Comma divides decimals by a comma, "12,5", in what people read; see Text.
	Comma bool

	joints bool // see Joints
}

// Joints is the style of figures that joints are marked from: in the step of all else, but never coarser than half a
// millimetre or 1/64 in, since a joint is made finer than a board is cut.
func (s Style) Joints() Style {
	s.joints = true
	return s
}

// Text gives a text as the style's readers expect its figures: negative ones with a minus sign, and decimals as
// they are, or with commas in place of the points between digits. Addresses, and words with several points such as
// dates and versions, stay.
func (s Style) Text(text string) string {
	text = Minus(text)
	if !s.Comma || !strings.Contains(text, ".") {
		return text
	}
	words := strings.Split(text, " ")
	for i, w := range words {
		if !strings.Contains(w, "//") && !strings.Contains(w, "www.") {
			words[i] = withComma(w)
		}
	}
	return strings.Join(words, " ")
}

// Pointed gives a number, or a term of numbers, that was typed by someone who has a comma before decimals as files have it:
// with a point. A comma that ends the text is one whose decimals are still to come and is left out. Numbers with several commas,
// or a point as well, are ambiguous and stay.
func Pointed(text string) string {
	text = numeral.ReplaceAllStringFunc(text, func(n string) string {
		if strings.Count(n, ",") == 1 && !strings.Contains(n, ".") {
			return strings.Replace(n, ",", ".", 1)
		}
		return n
	})
	return strings.TrimSuffix(text, ".")
}

// numeral is a run of digits with what divides them.
var numeral = regexp.MustCompile(`[0-9][0-9.,]*`)

// Minus puts the minus sign (U+2212) in place of the hyphen before negative figures, as on drawings: a hyphen is
// half as long and is lost before a digit. Hyphens in words, ranges, dates and addresses stay.
func Minus(text string) string {
	if !strings.Contains(text, "-") {
		return text
	}
	return negative.ReplaceAllString(text, "$1−$2")
}

// negative is a hyphen before a figure at the beginning of a word.
var negative = regexp.MustCompile(`(^|[\s(\[×])-([0-9])`)

// pointed is a number with one point or several.
var pointed = regexp.MustCompile(`\d+(\.\d+)+`)

// withComma changes the point of each number that has one.
func withComma(word string) string {
	return pointed.ReplaceAllStringFunc(word, func(n string) string {
		if strings.Count(n, ".") > 1 {
			return n
		}
		return strings.Replace(n, ".", ",", 1)
	})
}

// The steps that are printed to when none is chosen.
const (
	DefaultStep     Length = 0.5
	DefaultFraction Length = Inch / 32
)

// The coarsest steps that joints are marked to: a rule's finest lines.
const (
	JointStep     Length = 0.5
	JointFraction Length = Inch / 64
)

// step is the style's step, never 0.
func (s Style) step() Length {
	usual, finest := DefaultStep, JointStep
	if s.Unit == Imperial {
		usual, finest = DefaultFraction, JointFraction
	}
	if s.Step > 0 {
		usual = s.Step
	}
	if s.joints {
		return min(usual, finest)
	}
	return usual
}

// other is the style of the length in brackets.
func (s Style) other() Style {
	if s.Unit == Imperial {
		return Style{Unit: Metric, joints: s.joints}
	}
	return Style{Unit: Imperial, joints: s.joints}
}

// Round gives the length that is shown and how much it is more than the true one.
func (s Style) Round(l Length) (shown, off Length) {
	st := s.step()
	if below := s.parts(); below > 0 {
		shown = Of(math.Round(l.Inches()*float64(below))/float64(below), Inch)
	} else {
		shown = Length(math.Round(float64(l/st))) * st
	}
	return shown, shown - l
}

// parts is how many steps make an inch; 0 when they do not come out even, or the style is metric.
func (s Style) parts() int64 {
	parts := float64(Inch / s.step())
	below := int64(math.Round(parts))
	if s.Unit != Imperial || below < 1 || math.Abs(parts-float64(below)) > 1e-6 {
		return 0
	}
	return below
}

// Running gives the positions at which the steps end, from one edge. Each is rounded from the true
// sum, so that the roundings do not add up.
func (s Style) Running(steps []Length) []Length {
	out := make([]Length, len(steps))
	var sum Length
	for i, l := range steps {
		sum += l
		out[i], _ = s.Round(sum)
	}
	return out
}

// Format prints a length without its unit: "263.5", "10 3/8"; with Both "263.5 (10 3/8)".
func (s Style) Format(l Length) string {
	out := s.one(l)
	if s.Both {
		out += " (" + s.other().one(l) + ")"
	}
	return out
}

// Exact is the style for figures that have to add up, such as thicknesses and the saw cut between them: hundredths of a
// millimetre or 1/64 in, whatever is rounded to, and in one unit.
func (s Style) Exact() Style {
	s.Step, s.Both = Millimetre/100, false
	if s.Unit == Imperial {
		s.Step = Inch / 64
	}
	return s
}

// FormatUnit prints a length with its unit: "263.5 mm", `10 3/8"`; with Both `263.5 mm (10 3/8")`.
func (s Style) FormatUnit(l Length) string {
	out := s.one(l) + s.mark()
	if s.Both {
		o := s.other()
		out += " (" + o.one(l) + o.mark() + ")"
	}
	return out
}

func (s Style) mark() string {
	if s.Unit == Imperial {
		return `"`
	}
	return " mm"
}

func (s Style) one(l Length) string {
	if s.Unit == Imperial {
		return s.fraction(l)
	}
	shown, _ := s.Round(l)
	return Fixed(float64(shown), decimals(float64(s.step())))
}

// fraction prints inches as a whole number and a reduced fraction when the step is a part of an
// inch that a rule has, otherwise as a decimal.
func (s Style) fraction(l Length) string {
	below := s.parts()
	if below == 0 {
		shown, _ := s.Round(l)
		return Fixed(shown.Inches(), 3)
	}
	n := int64(math.Round(float64(l/Inch) * float64(below)))
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, above := n/below, n%below
	if above == 0 {
		return sign + strconv.FormatInt(whole, 10)
	}
	g := gcd(above, below)
	f := fmt.Sprintf("%d/%d", above/g, below/g)
	if whole == 0 {
		return sign + f
	}
	return fmt.Sprintf("%s%d %s", sign, whole, f)
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// decimals is how many decimals a step needs, at most 4.
func decimals(step float64) int {
	for n := range 4 {
		if x := step * math.Pow10(n); math.Abs(x-math.Round(x)) < 1e-9 {
			return n
		}
	}
	return 4
}

// Fixed prints a number to so many decimals, a zero without a sign.
func Fixed(x float64, n int) string {
	out := strconv.FormatFloat(x, 'f', n, 64)
	if strings.Trim(out, "-0.") == "" {
		return strings.TrimPrefix(out, "-")
	}
	return out
}

// FormatAngle prints degrees to the nearest step: "6.0°"; with step 0 to two decimals.
func FormatAngle(a Angle, step Angle) string {
	if step <= 0 {
		return Fixed(a.Degrees(), 2) + "°"
	}
	shown := math.Round(float64(a/step)) * step.Degrees()
	return Fixed(shown, decimals(math.Round(step.Degrees()*1e9)/1e9)) + "°"
}

// Ratio prints an angle as run to rise with one decimal, as a bevel gauge is set: "1:7.1". No
// lean at all is "0:1"; beyond 45° the run is the longer: "1.7:1".
func Ratio(a Angle) string {
	sign := ""
	if a < 0 {
		sign, a = "-", -a
	}
	t := math.Tan(float64(a))
	switch {
	case t < 5e-5:
		return "0:1"
	case t <= 1:
		return sign + "1:" + short(1/t)
	}
	return sign + short(t) + ":1"
}

// short drops a decimal that is zero.
func short(x float64) string { return strings.TrimSuffix(Fixed(x, 1), ".0") }
