// Package papers puts the whole set of papers together as named files: one PDF of every sheet,
// an SVG of each view, a CSV of each table and one workbook of them all, a page for a browser, the
// derived result, a PNG preview and, when asked for, the full-size patterns of each part.
package papers

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"splaywright/export/csv"
	"splaywright/export/derived"
	"splaywright/export/html"
	"splaywright/export/pdf"
	"splaywright/export/png"
	"splaywright/export/svg"
	"splaywright/export/xlsx"
	"splaywright/model/form"
	"splaywright/render/pattern"
	"splaywright/render/sheet"
	"splaywright/render/table"
)

// Options is how the set is made. The zero value takes everything from the design.
type Options struct {
	Sheet      string // "A4", "A3", "Letter", "Tabloid"; "" = the design's
	Projection string // "first", "third"; "" = the design's
	// Patterns are the full-size patterns; nil leaves them out. Their sheet is that of the set unless they say otherwise.
	Patterns *pattern.Options
}

// previewDots is the preview's resolution: dots per millimetre of paper, about 100 a inch.
const previewDots = 4

// File is one file of the set.
type File struct {
	Name  string
	Write func(io.Writer) error
}

// Files lists the set for a piece, in a fixed order. A piece that a finding stops has no papers:
// a sheet that cannot be cut from must not reach the saw.
func Files(p *form.Piece, o Options) ([]File, error) {
	if p.Stopped() {
		return nil, fmt.Errorf("%q has findings that stop it; no papers are written for a piece that cannot be cut", p.Title)
	}
	so := sheet.Options{Sheet: o.Sheet, Projection: o.Projection, Style: p.Design.Style()}
	pages := sheet.Papers(p, so)
	base := slug(p.Title)
	out := []File{
		{base + ".pdf", func(w io.Writer) error {
			return pdf.Write(w, pages, pdf.Meta{Title: p.Title, Subject: "Working papers: drawings, cut list, saw settings, marking, boring"})
		}},
		{base + ".json", func(w io.Writer) error { return derived.Write(w, p) }},
	}
	if len(pages) > 0 {
		out = append(out, File{base + ".png", func(w io.Writer) error { return png.Write(w, pages[0], previewDots) }})
	}
	views, tables := sheet.Views(p), table.All(p, so.Style)
	out = append(out,
		File{base + ".html", func(w io.Writer) error { return html.Write(w, onePage(p, views, tables)) }},
		File{base + ".xlsx", func(w io.Writer) error { return xlsx.Write(w, tables, xlsx.Meta{Title: p.Title}) }})
	for _, v := range views {
		out = append(out, File{"view-" + slug(v.Name) + ".svg", func(w io.Writer) error { return svg.Write(w, v.Page) }})
	}
	for _, t := range tables {
		out = append(out, File{slug(t.ID) + ".csv", func(w io.Writer) error { return csv.Write(w, t) }})
	}
	out = append(out, boardPlan(p, so)...)
	if o.Patterns == nil {
		return out, nil
	}
	po := *o.Patterns
	if po.Sheet == "" {
		po.Sheet = o.Sheet
	}
	full, err := patterns(p, po)
	return append(out, full...), err
}

// onePage is what the page for a screen shows: every picture and table, and the cautions.
func onePage(p *form.Piece, views []sheet.Named, tables []table.Table) html.Content {
	c := html.Content{Title: p.Title, Intro: overall(p), Tables: tables, Cautions: sheet.Cautions()}
	for _, v := range views {
		c.Pictures = append(c.Pictures, html.Picture{Caption: v.Name, Page: v.Page})
	}
	return c
}

// overall is the piece's outside in a line.
func overall(p *form.Piece) string {
	o, show := p.Overall, p.Design.Style().FormatUnit
	return fmt.Sprintf("%s high; %s × %s on top, %s × %s on the floor.", show(o.Height), show(o.WidthTop), show(o.DepthTop), show(o.WidthFloor), show(o.DepthFloor))
}

// Write writes the set into dir, which is made when it is missing, and gives the names written.
// Each file is complete or absent: it is written beside its place and then moved there.
func Write(dir string, p *form.Piece, o Options) ([]string, error) {
	files, err := Files(p, o)
	if err != nil {
		return nil, err
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return nil, fmt.Errorf("folder for the papers: %w", err)
	}
	var names []string
	for _, f := range files {
		var buf bytes.Buffer
		if err := f.Write(&buf); err != nil {
			return names, fmt.Errorf("%s: %w", f.Name, err)
		}
		if err := place(dir, f.Name, buf.Bytes()); err != nil {
			return names, err
		}
		names = append(names, f.Name)
	}
	return names, nil
}

// Place puts data at a path, whole or not at all: it is written beside its place and then moved there.
func Place(path string, data []byte) error {
	dir, name := filepath.Split(path)
	if dir == "" {
		dir = "."
	}
	return place(dir, name, data)
}

func place(dir, name string, data []byte) error {
	tmp, err := os.CreateTemp(dir, "."+name+"-*")
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	defer func() { _ = os.Remove(tmp.Name()) }() // nothing is left there once it has moved
	_, err = tmp.Write(data)
	if cerr := tmp.Close(); err == nil {
		err = cerr
	}
	if err == nil {
		err = os.Chmod(tmp.Name(), 0o644)
	}
	if err == nil {
		err = os.Rename(tmp.Name(), filepath.Join(dir, name))
	}
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}

// slug makes a file name of a title: lower case words joined by hyphens.
func slug(title string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(title) {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	if s := strings.Trim(b.String(), "-"); s != "" {
		return s
	}
	return "piece"
}
