// Package svg writes one drawn page as an SVG file in true millimetres.
package svg

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"splaywright/render/draw"
)

// Write writes the page. Width and height are in mm and one user unit is 1 mm; texts stay texts.
// The same page gives the same bytes.
func Write(w io.Writer, p draw.Page) error {
	s := &writer{w: bufio.NewWriter(w), height: p.Height}
	s.printf(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	s.printf(`<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s">`+"\n",
		num(p.Width), num(p.Height), num(p.Width), num(p.Height))
	s.printf("<title>%s</title>\n", escape(p.Title))
	s.printf(`<g fill="none" stroke-linejoin="round" stroke-linecap="round" font-family="%s">`+"\n", families)
	for _, it := range p.Items {
		switch it := it.(type) {
		case draw.Path:
			s.path(it)
		case draw.Text:
			s.text(it)
		}
	}
	s.printf("</g>\n</svg>\n")
	if s.err != nil {
		return s.err
	}
	return s.w.Flush()
}

// families are the fonts that a viewer may take, the first that has a letter: those that the page was laid out with,
// then Japanese ones that come with systems, then whatever it has. Without the second a viewer would look for Japanese
// among all fonts by itself, and may find a Chinese one, in which some letters have another shape.
const families = "'Noto Sans', 'BIZ UDPGothic', 'Noto Sans CJK JP', 'Noto Sans JP', 'Hiragino Sans', 'Yu Gothic', Meiryo, 'IPAexGothic', sans-serif"

type writer struct {
	w      *bufio.Writer
	height float64
	err    error
}

func (s *writer) printf(format string, args ...any) {
	if s.err == nil {
		_, s.err = fmt.Fprintf(s.w, format, args...)
	}
}

func (s *writer) path(p draw.Path) {
	s.printf(`<path d="%s"`, s.data(p.Segs))
	if p.Filled {
		s.printf(` fill="%s"`, colour(p.Fill))
	}
	if p.Pen.Width > 0 {
		s.printf(` stroke="%s" stroke-width="%s"`, colour(p.Pen.Ink), num(p.Pen.Width))
	}
	if len(p.Pen.Dash) > 0 {
		parts := make([]string, len(p.Pen.Dash))
		for i, d := range p.Pen.Dash {
			parts[i] = num(d)
		}
		s.printf(` stroke-dasharray="%s" stroke-linecap="butt"`, strings.Join(parts, " "))
	}
	s.about(p.Layer, p.Ref)
	s.printf("/>\n")
}

// text also gives the length that the line takes in our font, so that a viewer without that font
// still fits it to its place.
func (s *writer) text(t draw.Text) {
	x, y := num(t.At.X), num(s.height-t.At.Y)
	s.printf(`<text x="%s" y="%s" font-size="%s" fill="%s"`, x, y, num(draw.Em(t.Size)), colour(t.Ink))
	if t.Bold {
		s.printf(` font-weight="bold"`)
	}
	if t.Align != draw.Left {
		s.printf(` text-anchor="%s"`, [...]string{draw.Centre: "middle", draw.Right: "end"}[t.Align])
	}
	if t.Turn != 0 {
		s.printf(` transform="rotate(%s %s %s)"`, num(-t.Turn), x, y)
	}
	s.printf(` textLength="%s" lengthAdjust="spacingAndGlyphs"`, num(draw.TextWidth(t.Text, t.Size, t.Bold)))
	s.about(t.Layer, t.Ref)
	s.printf(">%s</text>\n", escape(t.Text))
}

func (s *writer) about(layer, ref string) {
	if layer != "" {
		s.printf(` class="%s"`, escape(layer))
	}
	if ref != "" {
		s.printf(` data-ref="%s"`, escape(ref))
	}
}

func (s *writer) data(segs []draw.Seg) string {
	var b strings.Builder
	for _, g := range segs {
		switch g.Kind {
		case draw.Move:
			b.WriteString("M" + s.point(g.P[2]))
		case draw.Line:
			b.WriteString("L" + s.point(g.P[2]))
		case draw.Curve:
			b.WriteString("C" + s.point(g.P[0]) + " " + s.point(g.P[1]) + " " + s.point(g.P[2]))
		case draw.Close:
			b.WriteString("Z")
		}
	}
	return b.String()
}

func (s *writer) point(p draw.Point) string { return num(p.X) + "," + num(s.height-p.Y) }

// num writes a number to a tenth of a micrometre without idle zeros.
func num(v float64) string {
	t := strconv.FormatFloat(v, 'f', 4, 64)
	t = strings.TrimRight(strings.TrimRight(t, "0"), ".")
	if t == "-0" {
		return "0"
	}
	return t
}

func colour(i draw.Ink) string { return fmt.Sprintf("#%02x%02x%02x", i.R, i.G, i.B) }

// escape makes text safe in content and attributes; characters that XML 1.0 forbids become the
// replacement character.
func escape(t string) string {
	t = strings.Map(func(r rune) rune {
		if r < 0x20 && r != '\t' && r != '\n' && r != '\r' || r == 0xFFFE || r == 0xFFFF {
			return '\uFFFD'
		}
		return r
	}, strings.ToValidUTF8(t, "\uFFFD"))
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;").Replace(t)
}
