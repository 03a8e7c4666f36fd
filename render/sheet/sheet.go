// Package sheet lays drawings, dimensions and tables out on sheets of paper: frame and title block,
// views placed by projection at a standard scale, a sheet for every part, the tables, what was
// noticed, and the usual cautions. All places are paper millimetres.
package sheet

import (
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/tongue"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// Options is how sheets are made. Empty texts take what the design says, then A4 and first angle.
type Options struct {
	Sheet      string // one of form.Sheets
	Projection string // "first", "third"
	// Wants tells which papers of a set are drawn; nil draws all. Seen is told of each sheet by its title.
	Wants     func(paper string) bool
	Seen      func(title string)
	Apart     bool // every paper on sheets of its own, as for files of their own
	Style     measure.Style
	Turn, Tip float64 // of the pictorial, degrees; both 0 = the usual one
	Dark      bool    // light ink on dark ground, for the window only
	// Tongue is the language of the words; nil is English.
	Tongue *tongue.Tongue

	// Width and Height of a drawing table, mm; 0 = the sheet's. A smaller one shows larger values
	// beside smaller views.
	Width, Height float64
}

// Named is one view as a picture of its own.
type Named struct {
	Name    string // the same in every language
	Caption string
	Page    draw.Page
}

// The usual pictorial: from the right, in front and above, steep enough to show the top.
const (
	usualTurn = 35
	usualTip  = 25
)

// flattening is the chord error of curves in the pictures, mm of the piece.
const flattening = 0.05

// fill completes the options from the design.
func (o Options) fill(p *form.Piece) Options {
	if o.Sheet == "" {
		o.Sheet = p.Design.Papers.Sheet
	}
	if _, ok := sizes[o.Sheet]; !ok {
		o.Sheet = "A4"
	}
	if o.Projection == "" {
		o.Projection = p.Design.Papers.Projection
	}
	if o.Projection != "third" {
		o.Projection = "first"
	}
	if o.Style == (measure.Style{}) {
		o.Style = p.Design.Style()
	}
	if o.Turn == 0 && o.Tip == 0 {
		o.Turn, o.Tip = usualTurn, usualTip
	}
	return o
}

// say puts a text of the drawings into their language, and with fills one of its formats.
func (o Options) say(english string) string { return o.Tongue.Say(english) }

func (o Options) with(format string, figures ...any) string { return o.Tongue.Fill(format, figures...) }

func (o Options) wants(paper string) bool { return o.Wants == nil || o.Wants(paper) }

// sizes are the sheets, lying: ISO 216 and ANSI Y14.1 (8.5 × 11 and 11 × 17 in).
var sizes = map[string][2]float64{
	"A4": {297, 210}, "A3": {420, 297}, "A2": {594, 420}, "Letter": {279.4, 215.9}, "Tabloid": {431.8, 279.4},
}

// ink is the colours of a picture.
type ink struct{ paper, line, faint, soft draw.Ink }

var (
	onPaper = ink{paper: draw.Ink{R: 255, G: 255, B: 255}, line: draw.Ink{R: 23, G: 26, B: 30}, faint: draw.Ink{R: 95, G: 101, B: 108}, soft: draw.Ink{R: 236, G: 238, B: 238}}
	onDark  = ink{paper: draw.Ink{R: 30, G: 33, B: 36}, line: draw.Ink{R: 232, G: 233, B: 228}, faint: draw.Ink{R: 150, G: 156, B: 160}, soft: draw.Ink{R: 48, G: 52, B: 56}}
)

func (o Options) ink() ink {
	if o.Dark {
		return onDark
	}
	return onPaper
}

// Line widths of ISO 128-2, the 0.5 and 0.25 group; the dashes are 12 and 3 widths long (ISO 128-21).
const (
	wideLine   = 0.5
	narrowLine = 0.25
)

// pen is how a kind of line of a picture is drawn.
func (i ink) pen(k view.Kind) draw.Pen {
	switch k {
	case view.Hidden:
		return draw.Pen{Width: narrowLine, Dash: []float64{12 * narrowLine, 3 * narrowLine}, Ink: i.faint}
	case view.Smooth:
		return draw.Pen{Width: narrowLine, Ink: i.faint}
	}
	return draw.Pen{Width: wideLine, Ink: i.line}
}

// label is a length as dimensions show it; the title block tells the unit, and with both units that the
// other stands in brackets.
func (o Options) label(l measure.Length) string { return o.Style.Format(l) }

// joints are the options with lengths shown as joints are marked.
func (o Options) joints() Options {
	o.Style = o.Style.Joints()
	return o
}

// degrees is an angle as dimensions show it: to a tenth.
func degrees(a measure.Angle) string {
	return measure.FormatAngle(a, measure.Degree/10)
}
