package draw

import (
	"math"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"splaywright/assets"
)

// CapHeight is the height of capitals as a part of the em (OS/2 table of Noto Sans: 714 of 1000).
const CapHeight = 0.714

// Descent and Ascent are how far letters reach below the baseline and above it, as parts of the
// height of capitals. They bound brackets, fraction digits and the tails of g and y.
const (
	Descent = 0.30
	Ascent  = 1.08
)

// Em gives the font size, mm, whose capitals are size mm tall.
func Em(size float64) float64 { return size / CapHeight }

// Glyph is one character's outline in parts of the em, y up, and its advance.
type Glyph struct {
	Advance float64
	Segs    []Seg
	here    bool // in the font; else it is the empty box
}

// Face is a font that texts are set in, plain or bold.
type Face int

// Latin is Noto Sans, whose letters come first; Japanese is BIZ UDPGothic, for those that it lacks.
const (
	Latin Face = iota
	Japanese
)

// face is one parsed font with the glyphs that were asked for.
type face struct {
	font   *sfnt.Font
	mu     sync.RWMutex
	glyphs map[rune]*Glyph
}

// faces are parsed when the first of their letters is asked for: plain and bold of each Face.
var faces = [2][2]func() *face{
	{sync.OnceValue(func() *face { return parseFace(assets.FontBytes(false)) }), sync.OnceValue(func() *face { return parseFace(assets.FontBytes(true)) })},
	{sync.OnceValue(func() *face { return parseFace(assets.JapaneseFont(false)) }), sync.OnceValue(func() *face { return parseFace(assets.JapaneseFont(true)) })},
}

func parseFace(data []byte) *face {
	f, err := sfnt.Parse(data)
	if err != nil {
		panic("draw: embedded font: " + err.Error())
	}
	return &face{font: f, glyphs: map[rune]*Glyph{}}
}

func faceFor(f Face, bold bool) *face {
	if bold {
		return faces[f][1]()
	}
	return faces[f][0]()
}

// FaceOf tells which font a character is set in. One that none of them has counts as Latin.
func FaceOf(r rune) Face {
	if r < firstForeign || faceFor(Latin, false).has(r) || !faceFor(Japanese, false).has(r) {
		return Latin
	}
	return Japanese
}

// firstForeign is the first character that Noto Sans need not be asked for: letters below have it there.
const firstForeign = 0x180

// Run is a stretch of a text that is set in one font.
type Run struct {
	Face Face
	Text string
}

// Runs takes a text apart into what is set in one font; a space goes with what stands before it.
func Runs(s string) []Run {
	var out []Run
	from, face := 0, Latin
	for i, r := range s {
		f := FaceOf(r)
		if r == ' ' && i > 0 {
			f = face
		}
		if f != face && i > from {
			out = append(out, Run{face, s[from:i]})
			from = i
		}
		face = f
	}
	if from < len(s) {
		out = append(out, Run{face, s[from:]})
	}
	return out
}

// HasGlyph tells whether a character can be drawn.
func HasGlyph(r rune) bool {
	return faceFor(Latin, false).has(r) || faceFor(Japanese, false).has(r)
}

// GlyphOf gives a character's outline. One that the fonts lack shows as their empty box.
func GlyphOf(r rune, bold bool) *Glyph { return faceFor(FaceOf(r), bold).glyph(r) }

// has tells whether the font has a character.
func (f *face) has(r rune) bool { return f.glyph(r).here }

func (f *face) glyph(r rune) *Glyph {
	f.mu.RLock()
	g := f.glyphs[r]
	f.mu.RUnlock()
	if g != nil {
		return g
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	if g = f.glyphs[r]; g == nil {
		g = f.load(r)
		f.glyphs[r] = g
	}
	return g
}

// load reads a glyph at a size of one unit a dot, so that no figure is rounded.
func (f *face) load(r rune) *Glyph {
	var buf sfnt.Buffer
	index, err := f.font.GlyphIndex(&buf, r)
	if err != nil {
		index = 0
	}
	units := float64(f.font.UnitsPerEm())
	ppem := fixed.I(int(f.font.UnitsPerEm()))
	advance, err := f.font.GlyphAdvance(&buf, index, ppem, font.HintingNone)
	if err != nil {
		panic("draw: embedded font: " + err.Error())
	}
	g := &Glyph{Advance: float64(advance) / 64 / units, here: index != 0}
	segs, err := f.font.LoadGlyph(&buf, index, ppem, nil)
	if err != nil {
		panic("draw: embedded font: " + err.Error())
	}
	at := func(p fixed.Point26_6) Point {
		return Point{float64(p.X) / 64 / units, -float64(p.Y) / 64 / units}
	}
	for _, s := range segs {
		g.add(s, at)
	}
	if len(g.Segs) > 0 {
		g.Segs = append(g.Segs, Seg{Kind: Close})
	}
	return g
}

func (g *Glyph) add(s sfnt.Segment, at func(fixed.Point26_6) Point) {
	switch s.Op {
	case sfnt.SegmentOpMoveTo:
		if len(g.Segs) > 0 {
			g.Segs = append(g.Segs, Seg{Kind: Close})
		}
		g.Segs = append(g.Segs, Seg{Kind: Move, P: [3]Point{2: at(s.Args[0])}})
	case sfnt.SegmentOpLineTo:
		g.Segs = append(g.Segs, Seg{Kind: Line, P: [3]Point{2: at(s.Args[0])}})
	case sfnt.SegmentOpQuadTo:
		from := g.Segs[len(g.Segs)-1].P[2]
		c, to := at(s.Args[0]), at(s.Args[1])
		g.Segs = append(g.Segs, Seg{Kind: Curve, P: [3]Point{
			{from.X + (c.X-from.X)*2/3, from.Y + (c.Y-from.Y)*2/3},
			{to.X + (c.X-to.X)*2/3, to.Y + (c.Y-to.Y)*2/3}, to}})
	case sfnt.SegmentOpCubeTo:
		g.Segs = append(g.Segs, Seg{Kind: Curve, P: [3]Point{at(s.Args[0]), at(s.Args[1]), at(s.Args[2])}})
	}
}

// tallAscent is how far the tallest Japanese letters reach above the baseline, as part of the height of
// capitals (their highest contour stands at 0.85 of the em).
const tallAscent = 1.2

// ascent of a line of text, as a part of the height of capitals.
func ascent(s string) float64 {
	for _, r := range s {
		if r >= firstForeign && FaceOf(r) == Japanese {
			return tallAscent
		}
	}
	return Ascent
}

// TextWidth gives the length of a line of text, mm, whose capitals are size mm tall.
func TextWidth(s string, size float64, bold bool) float64 {
	sum := 0.0
	for _, r := range s {
		sum += GlyphOf(r, bold).Advance
	}
	return sum * Em(size)
}

// Box gives the four corners of the room that the text takes, from the lower left one round
// counter-clockwise as the text is read.
func (t Text) Box() [4]Point {
	w := TextWidth(t.Text, t.Size, t.Bold)
	left := -w * [...]float64{Left: 0, Centre: 0.5, Right: 1}[t.Align]
	lo, hi := -Descent*t.Size, ascent(t.Text)*t.Size
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	turn := func(x, y float64) Point { return Point{t.At.X + x*cos - y*sin, t.At.Y + x*sin + y*cos} }
	return [4]Point{turn(left, lo), turn(left+w, lo), turn(left+w, hi), turn(left, hi)}
}
