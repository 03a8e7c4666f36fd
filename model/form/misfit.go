package form

import (
	"fmt"
	"math"
	"strings"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// misfit turns a layout that cannot be cut into a finding that says what would do.
func (b *assembly) misfit(m *joint.Misfit, c joint.Corner) part.Finding {
	text, sizes, unit := b.misfitText(m, c)
	if m.Sizes != nil {
		sizes = m.Sizes
	}
	f := stop(string(m.Kind), text, m.Figure.MM(), m.Limit.MM(), unit, sizes...)
	f.Parts = []string{c.Tail.ID, c.Pin.ID}
	return f
}

func (b *assembly) misfitText(m *joint.Misfit, c joint.Corner) (text string, sizes []string, unit string) {
	const tails = "corners.tails" // or their widths, see Used
	width := b.show(c.Width())
	switch m.Kind {
	case joint.NoTails:
		return "A dovetailed corner needs at least one tail.", []string{tails}, ""
	case joint.NoSize:
		return "Tails, pins and half pins must be wider than nothing.", nil, "mm"
	case joint.OtherCount:
		return fmt.Sprintf("The tail widths, mirrored, make %g tails, but %g are asked for.", m.Figure.MM(), m.Limit.MM()),
			[]string{"corners.tails", "corners.tail-widths"}, ""
	case joint.Contradiction:
		return b.addUp(m, c), []string{"corners.tail", "corners.pin", "corners.half-pin", tails}, "mm"
	case joint.TailToPoint:
		return b.tailToPoint(m, c), []string{tails, "corners.slope", "corners.pin"}, "mm"
	case joint.TailsTooMany:
		return fmt.Sprintf("%s cannot fit in %s: pins and half pins alone take more. %s",
			plural(len(m.Layout.Widths), "tail", "tails"), width, b.ways(c, smaller)), []string{tails, "corners.pin", "corners.half-pin"}, "mm"
	case joint.HalfPinGone:
		return fmt.Sprintf("The tails and pins leave nothing for the half pins: they are %s too wide for a corner of %s. %s",
			b.show(-2*m.Figure), width, b.ways(c, smaller)), []string{tails, "corners.tail", "corners.pin"}, "mm"
	case joint.PinGone:
		return fmt.Sprintf("The tails and half pins leave nothing for the pins: they are %s too wide for a corner of %s. %s",
			b.show(-m.Figure*measure.Length(len(m.Layout.Widths)-1)), width, b.ways(c, smaller)), []string{tails, "corners.tail", "corners.half-pin"}, "mm"
	}
	return fmt.Sprintf("The corner has no width (%s).", b.show(m.Figure)), []string{"size.depth", "splay.edges"}, "mm"
}

// addUp tells what the sizes typed take, against what there is.
func (b *assembly) addUp(m *joint.Misfit, c joint.Corner) string {
	k := b.d.Corners
	n := len(m.Layout.Widths)
	tails := plural(n, "tail", "tails")
	if len(k.TailWidths) == 0 {
		tails += fmt.Sprintf(" of %s", b.show(*k.Tail))
	}
	if n > 1 {
		tails += ", " + plural(n-1, "pin", "pins") + fmt.Sprintf(" of %s", b.show(m.Layout.Pin))
	}
	over, word, otherwise := m.Figure-m.Limit, "too much", smaller
	if over < 0 {
		over, word, otherwise = -over, "too little", "Wider tails, or more of them, would do."
	}
	return fmt.Sprintf("%s and two half pins of %s take %s, and the corner is %s wide: %s %s. %s",
		tails, b.show(m.Layout.HalfPin), b.show(m.Figure), b.show(c.Width()), b.show(over), word, b.ways(c, otherwise))
}

// tailToPoint says how wide the tail would have to be, and the slope that would leave it a root.
func (b *assembly) tailToPoint(m *joint.Misfit, c joint.Corner) string {
	slope := measure.Angle(math.Atan(m.Figure.MM() / (2 * c.Run())))
	return fmt.Sprintf("Tail %d is %s wide at its end and comes to a point before its baseline: it must be wider than %s, or slope less than %.1f°. %s",
		m.Tail, b.show(m.Figure), b.atLeast(m.Limit), math.Floor(slope.Degrees()*10)/10, b.ways(c, smaller))
}

// wish is what the design says about the tails of a corner.
func (k Corners) wish(c joint.Corner) joint.Wish {
	return joint.Wish{
		Width: c.Width(), Tails: k.Tails, Tail: k.Tail, Pin: k.Pin, HalfPin: k.HalfPin,
		Widths: k.TailWidths, Mirrored: k.Mirrored, Taper: c.Taper(),
	}
}

const smaller = "Smaller tails and pins or a wider board would do."

// ways names the changes of a single size, or of the count, that give a layout which can be cut;
// otherwise is said where there is none.
func (b *assembly) ways(c joint.Corner, otherwise string) string {
	typed := b.d.Corners.wish(c)
	var ways []string
	try := func(w joint.Wish, say func(joint.Layout) string) {
		if l, err := joint.Lay(w); err == nil && cuttable(w, l) {
			ways = append(ways, say(l))
		}
	}
	if l, ok := fewer(typed); ok {
		ways = append(ways, fmt.Sprintf("ask for %s", plural(len(l.Widths), "even tail", "even tails")))
	}
	leave := func(what string, size func(joint.Layout) measure.Length) func(joint.Layout) string {
		return func(l joint.Layout) string { return fmt.Sprintf("leave %s out (%s follows)", what, b.show(size(l))) }
	}
	if typed.Tail != nil {
		w := typed
		w.Tail = nil
		try(w, leave("the tail", func(l joint.Layout) measure.Length { return l.Widths[0] }))
	}
	if typed.Pin != nil {
		w := typed
		w.Pin = nil
		try(w, leave("the pin", func(l joint.Layout) measure.Length { return l.Pin }))
	}
	if typed.HalfPin != nil {
		w := typed
		w.HalfPin = nil
		try(w, leave("the half pin", func(l joint.Layout) measure.Length { return l.HalfPin }))
	}
	switch len(ways) {
	case 0:
		return otherwise
	case 1:
		return fmt.Sprintf("To clear it, %s.", ways[0])
	}
	return fmt.Sprintf("Any one of these clears it: %s.", strings.Join(ways, ", or "))
}

// cuttable tells that nothing of a layout is narrower than the narrowest chisel.
func cuttable(w joint.Wish, l joint.Layout) bool {
	least := l.HalfPin
	if len(l.Widths) > 1 {
		least = min(least, l.Pin)
	}
	for _, t := range l.Widths {
		least = min(least, t-w.Taper)
	}
	return least >= joint.NarrowestRoot
}

// fewer finds the largest count of even tails below the one asked for that can be cut with the
// other sizes as they are.
func fewer(w joint.Wish) (joint.Layout, bool) {
	from := len(w.Widths)
	if from == 0 && w.Tails != nil {
		from = *w.Tails
	}
	w.Widths = nil
	for n := min(from, 200) - 1; n >= 1; n-- {
		w.Tails = &n
		if l, err := joint.Lay(w); err == nil && cuttable(w, l) {
			return l, true
		}
	}
	return joint.Layout{}, false
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
