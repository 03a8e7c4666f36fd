package pattern

import (
	"fmt"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/tongue"
	"splaywright/render/draw"
)

// Options is how patterns are laid out. What is left at 0 takes the usual value.
type Options struct {
	Sheet   string         // one of form.Sheets; "" = A4. Sheets stand upright.
	Margin  measure.Length // what the printer leaves blank round the sheet; 0 = 6.5 mm
	Overlap measure.Length // of neighbouring sheets; 0 = 10 mm
	// AcrossBar and DownBar are what the bars of 100 mm measured on a printed sheet. The patterns are
	// drawn larger or smaller by as much, so that they come out right.
	AcrossBar, DownBar measure.Length
	Style              measure.Style
	// Tongue is the language of the words; nil is English.
	Tongue *tongue.Tongue
}

// The usual settings: most printers leave less than a quarter of an inch blank (common practice).
const (
	usualMargin  measure.Length = 6.5
	usualOverlap measure.Length = 10
	bar                         = 100.0 // mm
	inchBar                     = 4 * 25.4
)

// A bar that measures outside these was read wrongly, or the sheet was fitted to another size.
const (
	shortestBar = 85.0
	longestBar  = 115.0
)

// sizes are the sheets, upright: ISO 216 and ANSI Y14.1 (8.5 × 11 and 11 × 17 in).
var sizes = map[string]draw.Point{
	"A4": {X: 210, Y: 297}, "A3": {X: 297, Y: 420}, "A2": {X: 420, Y: 594}, "Letter": {X: 215.9, Y: 279.4}, "Tabloid": {X: 279.4, Y: 431.8},
}

// Fill completes the options; the error says in shop words what cannot be.
func (o Options) Fill() (Options, error) {
	if o.Sheet == "" {
		o.Sheet = "A4"
	}
	if o.Margin == 0 {
		o.Margin = usualMargin
	}
	if o.Overlap == 0 {
		o.Overlap = usualOverlap
	}
	for _, b := range []*measure.Length{&o.AcrossBar, &o.DownBar} {
		if *b == 0 {
			*b = bar
		}
		if !(b.MM() >= shortestBar && b.MM() <= longestBar) {
			return o, fmt.Errorf("a bar of 100 mm that measures %s is too far off to put right: print at 100 %%, not fitted to the page, and measure again (%g to %g mm will do)",
				measure.Style{Step: 0.1}.FormatUnit(*b), shortestBar, longestBar)
		}
	}
	size, ok := sizes[o.Sheet]
	if !ok {
		return o, fmt.Errorf("patterns cannot be laid out on %q; there are %s", o.Sheet, strings.Join(form.Sheets, ", "))
	}
	if o.Margin < 0 || o.Overlap < 0 {
		return o, fmt.Errorf("the margin and the overlap of patterns must not be negative")
	}
	l := o.layout(size)
	if need := o.leastWidth(); size.X-2*o.Margin.MM() < need {
		return o, fmt.Errorf("a margin of %s leaves too little of a sheet %s wide: the bars and what stands beside them need %.0f mm", o.Style.FormatUnit(o.Margin), o.Style.FormatUnit(measure.Length(size.X)), need)
	}
	if most := min(l.Width(), l.Height()) / 2; o.Overlap.MM() > most {
		return o, fmt.Errorf("an overlap of %s is too much: a sheet holds %.0f × %.0f mm of a pattern", o.Style.FormatUnit(o.Overlap), l.Width(), l.Height())
	}
	return o, nil
}

// leastWidth that a printer must reach for the bars with what stands beside them and the strips round the window.
func (o Options) leastWidth() float64 { return stripLeft + inchBar*o.fx() + barNames + stripRight }

// fx and fy are the corrections across and down the sheet.
func (o Options) fx() float64 { return bar / o.AcrossBar.MM() }
func (o Options) fy() float64 { return bar / o.DownBar.MM() }

// corrected tells whether a bar measured other than 100 mm.
func (o Options) corrected() bool { return o.AcrossBar != bar || o.DownBar != bar }

// say puts a text of the patterns into their language, and with fills one of its formats.
func (o Options) say(english string) string { return o.Tongue.Say(english) }

func (o Options) with(format string, figures ...any) string { return o.Tongue.Fill(format, figures...) }

// layout is the window of a sheet: what shows a piece of the pattern.
func (o Options) layout(size draw.Point) draw.Box {
	m := o.Margin.MM()
	return draw.Box{
		Min: draw.Point{X: m + stripLeft, Y: m + stripBelow},
		Max: draw.Point{X: size.X - m - stripRight, Y: size.Y - m - stripAbove},
	}
}

// The strips round the window, mm: bars at the left and below, words above, marks all round.
const (
	stripLeft  = 13.0
	stripBelow = 14.0
	stripRight = 6.5
	stripAbove = 14.5
	barNames   = 56.0 // beside the bars across: their names, and what to heed
)
