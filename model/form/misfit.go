package form

import (
	"fmt"
	"math"

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
	k := b.d.Corners
	tails := "corners.tails"
	if len(k.TailWidths) > 0 {
		tails = "corners.tail-widths"
	}
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
		return fmt.Sprintf("The tails, pins and half pins typed add up to %s, but the corner is %s wide; leave one of them out and it follows.",
			b.show(m.Figure), width), []string{"corners.tail", "corners.pin", "corners.half-pin", tails}, "mm"
	case joint.TailToPoint:
		return b.tailToPoint(m, c), []string{tails, "corners.slope", "corners.pin"}, "mm"
	case joint.TailsTooMany:
		return fmt.Sprintf("%s cannot fit in %s: pins and half pins alone take more. %s",
			plural(len(m.Layout.Widths), "tail"), width, b.fewerTails(c)), []string{tails, "corners.pin", "corners.half-pin"}, "mm"
	case joint.HalfPinGone:
		return fmt.Sprintf("The tails and pins leave nothing for the half pins: they are %s too wide for a corner of %s.",
			b.show(-2*m.Figure), width), []string{tails, "corners.tail", "corners.pin"}, "mm"
	case joint.PinGone:
		return fmt.Sprintf("The tails and half pins leave nothing for the pins in a corner of %s: they would be %s.",
			width, b.show(m.Figure)), []string{tails, "corners.tail", "corners.half-pin"}, "mm"
	}
	return fmt.Sprintf("The corner has no width (%s).", b.show(m.Figure)), []string{"size.depth", "splay.edges"}, "mm"
}

// tailToPoint says how wide the tail would have to be, and the slope that would leave it a root.
func (b *assembly) tailToPoint(m *joint.Misfit, c joint.Corner) string {
	slope := measure.Angle(math.Atan(m.Figure.MM() / (2 * c.Run())))
	return fmt.Sprintf("Tail %d is %s wide at its end and comes to a point before its baseline: it must be wider than %s, or slope less than %.1f°. %s",
		m.Tail, b.show(m.Figure), b.show(m.Limit), slope.Degrees(), b.fewerTails(c))
}

// fewerTails finds the largest count of even tails that can be cut with the pins as they are.
func (b *assembly) fewerTails(c joint.Corner) string {
	k := b.d.Corners
	w := joint.Wish{Width: c.Width(), Pin: k.Pin, HalfPin: k.HalfPin, Taper: c.Taper()}
	from := len(k.TailWidths)
	if from == 0 && k.Tails != nil {
		from = *k.Tails
	}
	for n := min(from, 200) - 1; n >= 1; n-- {
		w.Tails = &n
		if _, err := joint.Lay(w); err == nil {
			return fmt.Sprintf("%s would fit.", plural(n, "even tail"))
		}
	}
	return "Smaller pins or a wider board would do."
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
