package measure

import "math"

// alike, mm or radians, is what two figures may differ by and be the same but for rounding in binary.
const alike = 1e-9

// mostDecimals that a figure is shown by to tell it from another.
const mostDecimals = 9

// Apart prints two lengths with their units as FormatUnit does, but so that they read differently where they are: a
// figure that is a hair beyond its limit has as many decimals more as it takes, and so has the limit.
func (s Style) Apart(a, b Length) (first, second string) {
	if math.Abs(float64(a-b)) < alike {
		return s.FormatUnit(a), s.FormatUnit(b)
	}
	first, second = s.apart(a, b)
	if s.Both {
		one, two := s.other().apart(a, b)
		first, second = first+" ("+one+")", second+" ("+two+")"
	}
	return first, second
}

// apart is Apart in one unit.
func (s Style) apart(a, b Length) (first, second string) {
	first, second = s.one(a), s.one(b)
	x, y, from := float64(a), float64(b), 1
	if s.Unit == Imperial {
		x, y, from = a.Inches(), b.Inches(), 3
	}
	if first == second {
		first, second = Decimals(x, y, from)
	}
	return first + s.mark(), second + s.mark()
}

// Decimals prints two numbers with so many decimals, or with more where they would read alike and differ.
func Decimals(a, b float64, least int) (first, second string) {
	for n := least; ; n++ {
		first, second = Fixed(a, n), Fixed(b, n)
		if first != second || n >= mostDecimals || math.Abs(a-b) < alike {
			return first, second
		}
	}
}

// AnglesApart prints two angles as FormatAngle does to a tenth of a degree, with more decimals where they would read alike
// and differ.
func AnglesApart(a, b Angle) (first, second string) {
	first, second = FormatAngle(a, Degree/10), FormatAngle(b, Degree/10)
	if first != second || math.Abs(float64(a-b)) < alike {
		return first, second
	}
	first, second = Decimals(a.Degrees(), b.Degrees(), 2)
	return first + "°", second + "°"
}
