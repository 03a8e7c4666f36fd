package joint

import (
	"math"

	"splaywright/model/measure"
)

// Habits of the trade that fill in what a design leaves out.
const (
	// UsualPin: pins about 3/8 in (10 mm).
	// “How to size dovetails”, woodworkingcreations.us
	UsualPin measure.Length = 10
	// UsualHalfPin: about 1/4 in where it is narrowest, so that it does not break. Popular
	// Woodworking no. 154 (Apr 2006) p. 71 (read second-hand).
	UsualHalfPin measure.Length = 6
	// TailPitch: a tail to each inch of width, less one (2 in: 1, 3 in: 2, 4 in: 3, 5 in: 4).
	// Same page as UsualPin.
	TailPitch = measure.Inch
	// NarrowestRoot a tail is given by the count that follows from the width: the narrowest
	// chisel, 1/8 in (common practice).
	NarrowestRoot measure.Length = 3
	// halfPinShare of a pin that a half pin gets where both follow from the tails.
	halfPinShare = 0.6
	// sumNoise is how far, in parts of the width, sizes that are all given may miss the width
	// before they contradict each other: a typed figure's last digit, far below what can be sawn.
	sumNoise = 1e-6
)

// Wish is what a design says about the tails of a corner. A nil pointer was left out.
type Wish struct {
	Width    measure.Length // on the tail board's outer face at the end arris
	Tails    *int
	Tail     *measure.Length
	Pin      *measure.Length
	HalfPin  *measure.Length
	Widths   []measure.Length // uneven tails from the front; overrides Tails and Tail
	Mirrored bool             // Widths runs from the edge to the middle
	Taper    measure.Length   // what a tail loses in width from the arris to its baseline
}

// Layout is how a corner is divided: half pin, tail, pin, tail, …, half pin.
type Layout struct {
	Tails        []Span // from the front edge, on the tail board's outer face at the end arris
	Widths       []measure.Length
	Pin, HalfPin measure.Length
}

// Lay divides the width of a corner. What the wish leaves out follows by the habits above:
//
//   - the count from the width (TailPitch), fewer where tails would come to a point;
//   - pin and half pin from UsualPin and UsualHalfPin, less on a narrow board, while the tails take the rest;
//   - where the tails are given, the half pins take the rest; where neither pin nor half pin is
//     given they share the rest, a half pin getting 0.6 of a pin.
//
// The error is a *Misfit.
func Lay(w Wish) (Layout, error) {
	if !(w.Width > 0) || math.IsInf(float64(w.Width), 0) {
		return Layout{}, &Misfit{Kind: NoWidth, Figure: w.Width}
	}
	if err := w.positive(); err != nil {
		return Layout{}, err
	}
	widths, err := w.tails()
	if err != nil {
		return Layout{}, err
	}
	l := Layout{Widths: widths}
	if l.Pin, l.HalfPin, err = w.pins(widths); err != nil {
		return Layout{}, err
	}
	l.place()
	return l, w.check(l)
}

// positive refuses sizes that are given as nothing or less.
func (w Wish) positive() error {
	if w.Tails != nil && *w.Tails < 1 {
		return &Misfit{Kind: NoTails, Figure: measure.Length(*w.Tails), Limit: 1}
	}
	for _, s := range []struct {
		size *measure.Length
		path string
	}{{w.Tail, "corners.tail"}, {w.Pin, "corners.pin"}, {w.HalfPin, "corners.half-pin"}} {
		if s.size != nil && !(*s.size > 0) {
			return &Misfit{Kind: NoSize, Figure: *s.size, Sizes: []string{s.path}}
		}
	}
	for _, t := range w.Widths {
		if !(t > 0) {
			return &Misfit{Kind: NoSize, Figure: t, Sizes: []string{"corners.tail-widths"}}
		}
	}
	return nil
}

// tails gives the width of every tail.
func (w Wish) tails() ([]measure.Length, error) {
	if len(w.Widths) > 0 {
		return w.uneven()
	}
	n := w.count()
	t := w.evenTail(n)
	out := make([]measure.Length, n)
	for i := range out {
		out[i] = t
	}
	return out, nil
}

// uneven writes the tail widths out in full. Mirrored widths run to the middle and back; an odd
// count of tails says that the last one is the middle tail and comes once.
func (w Wish) uneven() ([]measure.Length, error) {
	out := append([]measure.Length(nil), w.Widths...)
	if w.Mirrored {
		last := len(w.Widths)
		if w.Tails != nil && *w.Tails == 2*last-1 {
			last--
		}
		for i := last - 1; i >= 0; i-- {
			out = append(out, w.Widths[i])
		}
		if w.Tails != nil && *w.Tails != len(out) {
			return nil, &Misfit{Kind: OtherCount, Figure: measure.Length(len(out)), Limit: measure.Length(*w.Tails)}
		}
	}
	return out, nil
}

// usual gives the pin and half pin that are used where none is given; less on a narrow board.
func (w Wish) usual() (pin, half measure.Length) {
	pin, half = min(UsualPin, w.Width/8), min(UsualHalfPin, w.Width/10)
	if w.Pin != nil {
		pin = *w.Pin
	}
	if w.HalfPin != nil {
		half = *w.HalfPin
	}
	return pin, half
}

// count of even tails.
func (w Wish) count() int {
	if w.Tails != nil {
		return *w.Tails
	}
	pin, half := w.usual()
	if w.Tail != nil {
		n := math.Round(float64((w.Width - 2*half + pin) / (*w.Tail + pin)))
		return int(math.Max(1, math.Min(n, maxTails)))
	}
	n := int(math.Max(1, math.Min(math.Round(float64(w.Width/TailPitch))-1, maxTails)))
	for n > 1 && w.evenTail(n)-w.Taper < NarrowestRoot {
		n--
	}
	return n
}

// maxTails bounds the count that follows from a width, against a width of miles.
const maxTails = 400

// evenTail is the width of each of n tails.
func (w Wish) evenTail(n int) measure.Length {
	if w.Tail != nil {
		return *w.Tail
	}
	pin, half := w.usual()
	return (w.Width - 2*half - measure.Length(n-1)*pin) / measure.Length(n)
}

// pins gives pin and half pin from what the tails leave.
func (w Wish) pins(tails []measure.Length) (pin, half measure.Length, err error) {
	rest, gaps := w.Width, measure.Length(len(tails)-1)
	for _, t := range tails {
		rest -= t
	}
	pin, half = w.usual()
	switch {
	case len(w.Widths) == 0 && w.Tail == nil:
		return pin, half, nil // the tails took what these leave
	case w.Pin != nil && w.HalfPin != nil:
		if sum := w.Width - rest + gaps*pin + 2*half; math.Abs(float64(sum-w.Width)) > sumNoise*float64(w.Width) {
			return 0, 0, w.contradiction(sum, tails, pin, half)
		}
		return pin, half, nil
	case w.Pin != nil || gaps == 0 && w.HalfPin == nil:
		return pin, (rest - gaps*pin) / 2, nil
	case w.HalfPin != nil && gaps > 0:
		return (rest - 2*half) / gaps, half, nil
	case w.HalfPin != nil:
		if math.Abs(float64(rest-2*half)) > sumNoise*float64(w.Width) {
			return 0, 0, w.contradiction(w.Width-rest+2*half, tails, pin, half)
		}
		return pin, half, nil
	}
	pin = rest / (gaps + 2*halfPinShare)
	return pin, halfPinShare * pin, nil
}

// contradiction is sizes that are all given and do not add up to the width.
func (w Wish) contradiction(sum measure.Length, tails []measure.Length, pin, half measure.Length) error {
	return &Misfit{Kind: Contradiction, Figure: sum, Limit: w.Width, Layout: Layout{Widths: tails, Pin: pin, HalfPin: half}}
}

// place sets the tails side by side from the front edge.
func (l *Layout) place() {
	at := l.HalfPin
	for _, t := range l.Widths {
		l.Tails = append(l.Tails, Span{at, at + t})
		at += t + l.Pin
	}
}

// check refuses what cannot be cut: a tail, pin or half pin without width.
func (w Wish) check(l Layout) error {
	for i, t := range l.Widths {
		if !(t > 0) {
			return &Misfit{Kind: TailsTooMany, Figure: t, Tail: i + 1, Layout: l}
		}
		if root := t - w.Taper; !(root > 0) {
			return &Misfit{Kind: TailToPoint, Figure: t, Limit: w.Taper, Tail: i + 1, Layout: l}
		}
	}
	if !(l.HalfPin > 0) {
		return &Misfit{Kind: HalfPinGone, Figure: l.HalfPin, Layout: l}
	}
	if len(l.Widths) > 1 && !(l.Pin > 0) {
		return &Misfit{Kind: PinGone, Figure: l.Pin, Layout: l}
	}
	return nil
}
