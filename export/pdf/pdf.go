// Package pdf writes drawn pages as one PDF file: fonts embedded, text that can be searched,
// every page in its own size, and the same bytes for the same pages.
package pdf

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"splaywright/assets"
	"splaywright/render/draw"
)

// Meta is what the file says about itself.
type Meta struct {
	Title, Subject string
	// Sheet is asked before each page, by its number from 1; an error of it ends the writing. nil = go on.
	Sheet func(n int) error
}

// undated stands in the two date fields that the format's reader expects, so that papers written
// twice from one design are one and the same file.
var undated = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// pointsPerMM: a PDF point is 1/72 in.
const pointsPerMM = 72 / 25.4

// Write writes the pages. Positions are exact to 0.002 mm: the format's writer keeps two decimals
// of a point.
func Write(w io.Writer, pages []draw.Page, m Meta) error {
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: 210, Ht: 297}})
	f.SetCreationDate(undated)
	f.SetModificationDate(undated)
	f.SetCatalogSort(true)
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.SetTitle(m.Title, true)
	f.SetSubject(m.Subject, true)
	f.SetCreator("Splaywright "+assets.Version(), true)
	f.SetProducer("Splaywright", true)
	f.SetDisplayMode("fullpage", "single")
	f.AddUTF8FontFromBytes("noto", "", assets.FontBytes(false))
	f.AddUTF8FontFromBytes("noto", "B", assets.FontBytes(true))
	if japanese(pages) {
		f.AddUTF8FontFromBytes("biz", "", assets.JapaneseFont(false))
		f.AddUTF8FontFromBytes("biz", "B", assets.JapaneseFont(true))
	}
	f.SetLineCapStyle("round")
	f.SetLineJoinStyle("round")
	for i, p := range pages {
		if m.Sheet != nil {
			if err := m.Sheet(i + 1); err != nil {
				return err
			}
		}
		writePage(f, p)
	}
	var made bytes.Buffer
	if err := f.Output(&made); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	doc, err := packed(made.Bytes())
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	_, err = w.Write(doc)
	return err
}

// japanese tells whether any text of the pages needs the Japanese font.
func japanese(pages []draw.Page) bool {
	for _, p := range pages {
		for _, it := range p.Items {
			if t, ok := it.(draw.Text); ok && slices.ContainsFunc(draw.Runs(t.Text), func(r draw.Run) bool { return r.Face == draw.Japanese }) {
				return true
			}
		}
	}
	return false
}

func writePage(f *fpdf.Fpdf, p draw.Page) {
	f.AddPageFormat("P", fpdf.SizeType{Wd: p.Width, Ht: p.Height})
	f.Bookmark(p.Title, 0, 0)
	c := canvas{f: f, height: p.Height}
	for _, it := range p.Items {
		switch it := it.(type) {
		case draw.Path:
			c.path(it)
		case draw.Text:
			c.text(it)
		}
	}
}

// canvas turns y up into the writer's y down.
type canvas struct {
	f      *fpdf.Fpdf
	height float64
}

func (c canvas) path(p draw.Path) {
	style := ""
	if p.Filled {
		c.f.SetFillColor(int(p.Fill.R), int(p.Fill.G), int(p.Fill.B))
		style = "F"
	}
	if p.Pen.Width > 0 {
		c.f.SetDrawColor(int(p.Pen.Ink.R), int(p.Pen.Ink.G), int(p.Pen.Ink.B))
		c.f.SetLineWidth(p.Pen.Width)
		c.dash(p.Pen.Dash)
		style += "D"
	}
	if style == "" {
		return
	}
	for _, s := range p.Segs {
		switch s.Kind {
		case draw.Move:
			c.f.MoveTo(s.P[2].X, c.height-s.P[2].Y)
		case draw.Line:
			c.f.LineTo(s.P[2].X, c.height-s.P[2].Y)
		case draw.Curve:
			c.f.CurveBezierCubicTo(s.P[0].X, c.height-s.P[0].Y, s.P[1].X, c.height-s.P[1].Y, s.P[2].X, c.height-s.P[2].Y)
		case draw.Close:
			c.f.ClosePath()
		}
	}
	c.f.DrawPath(style)
}

func (c canvas) dash(dash []float64) {
	c.f.SetDashPattern(dash, 0)
	if len(dash) > 0 {
		c.f.SetLineCapStyle("butt")
	} else {
		c.f.SetLineCapStyle("round")
	}
}

func (c canvas) text(t draw.Text) {
	c.f.SetTextColor(int(t.Ink.R), int(t.Ink.G), int(t.Ink.B))
	x, y := t.At.X, c.height-t.At.Y
	left := x - draw.TextWidth(t.Text, t.Size, t.Bold)*[...]float64{draw.Left: 0, draw.Centre: 0.5, draw.Right: 1}[t.Align]
	if t.Turn == 0 {
		c.runs(left, y, t)
		return
	}
	c.f.TransformBegin()
	c.f.TransformRotate(t.Turn, x, y)
	c.runs(left, y, t)
	c.f.TransformEnd()
}

// runs sets each stretch of a text in its font, one after the other.
func (c canvas) runs(left, y float64, t draw.Text) {
	style := ""
	if t.Bold {
		style = "B"
	}
	for _, r := range draw.Runs(t.Text) {
		family := [...]string{draw.Latin: "noto", draw.Japanese: "biz"}[r.Face]
		c.f.SetFont(family, style, draw.Em(t.Size)*pointsPerMM)
		c.f.Text(left, y, r.Text)
		left += draw.TextWidth(r.Text, t.Size, t.Bold)
	}
}
