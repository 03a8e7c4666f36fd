// Package papers puts the whole set of papers together as named files: one PDF of every sheet,
// an SVG of each view, a CSV of each table and one workbook of them all, a page for a browser, the
// derived result, a PNG preview and, when asked for, the full-size patterns of each part.
package papers

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
	"unicode"

	"splaywright/export/csv"
	"splaywright/export/derived"
	"splaywright/export/html"
	"splaywright/export/pdf"
	"splaywright/export/png"
	"splaywright/export/svg"
	"splaywright/export/xlsx"
	"splaywright/model/form"
	"splaywright/model/tongue"
	"splaywright/model/yield"
	"splaywright/render/draw"
	"splaywright/render/pattern"
	"splaywright/render/sheet"
	"splaywright/render/table"
)

// Options is how the set is made. The zero value takes everything from the design.
type Options struct {
	Sheet      string // one of form.Sheets; "" = the design's
	Projection string // "first", "third"; "" = the design's
	// Patterns are the full-size patterns, written even where the design leaves them out; nil = as the
	// design has it. Their sheet is that of the set unless they say otherwise.
	Patterns *pattern.Options
	// Tongue is the language of what people read on the papers, where the design names none; nil is English. The
	// derived result and the names of files are the same in every language.
	Tongue *tongue.Tongue
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
	return newTask(context.Background(), p, o, nil).files()
}

// task is the making of one set.
type task struct {
	ctx   context.Context
	p     *form.Piece
	o     Options
	so    sheet.Options
	want  form.Papers
	speak *tongue.Tongue
	step  Progress
	tell  func(Progress)
	base  string
	pages []draw.Page // of the whole set

	onHand func() (yield.Result, error) // the plan of the boards on hand, found once
	bought func() (yield.Result, error) // what to buy, found once
}

func newTask(ctx context.Context, p *form.Piece, o Options, tell func(Progress)) *task {
	t := &task{ctx: ctx, p: p, o: o, want: p.Design.Papers, tell: tell, base: slug(p.Title)}
	t.onHand = sync.OnceValues(func() (yield.Result, error) { return yield.Solve(t.ctx, t.p) })
	t.bought = sync.OnceValues(t.shop)
	t.want.Patterns.On = t.want.Patterns.On || o.Patterns != nil
	t.speak = o.Tongue
	if code := t.want.Tongue; code != "" && code != t.speak.Code() {
		t.speak = tongue.Load(code)
	}
	as := *p
	if r := &as.Design.Round; !r.Said {
		r.Comma = t.speak.Comma()
	}
	as.Design = as.Design.Named(t.speak.Fill)
	p, t.p = &as, &as
	t.so = sheet.Options{Tongue: t.speak, Sheet: o.Sheet, Projection: o.Projection, Style: p.Design.Style(), Wants: t.want.Wants, Seen: t.drawn, Apart: t.want.WantsAs(form.AsSingle)}
	return t
}

func (t *task) files() ([]File, error) {
	if t.p.Stopped() {
		return nil, fmt.Errorf("%q has findings that stop it; no papers are written for a piece that cannot be cut", t.p.Title)
	}
	set, err := sheet.Set(t.ctx, t.p, t.so)
	if err != nil {
		return nil, err
	}
	for _, paper := range set {
		t.pages = append(t.pages, paper.Pages...)
	}
	plans, err := t.plans()
	if err != nil {
		return nil, err
	}
	out := t.sheets(set)
	out = append(out, t.tables(plans)...)
	for _, plan := range plans {
		out = append(out, t.planned(plan)...)
	}
	if t.want.Wants(form.PaperPatterns) {
		full, err := t.patterns(t.patternOptions())
		if err != nil {
			return out, err
		}
		out = append(out, full...)
	}
	if err := t.ctx.Err(); err != nil {
		return nil, err
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("%q: nothing is left to write: none of the papers that were chosen has anything on it, as the kinds of files that were chosen", t.p.Title)
	}
	return out, nil
}

// sheets are the PDFs, the derived result and the preview.
func (t *task) sheets(set []sheet.Paper) []File {
	var out []File
	if t.want.WantsAs(form.AsPDF) && len(t.pages) > 0 {
		out = append(out, t.pdf(t.base+".pdf", t.pages, t.p.Title, t.speak.Say("Working papers: drawings, cut list, saw settings, marking, boring")))
	}
	if t.want.WantsAs(form.AsSingle) {
		for _, paper := range set {
			out = append(out, t.pdf(paper.Name+".pdf", paper.Pages, t.p.Title+": "+t.speak.Say(strings.ReplaceAll(paper.Name, "-", " ")), t.speak.Say("Working papers")))
		}
	}
	if t.want.WantsAs(form.AsJSON) {
		out = append(out, File{t.base + ".json", func(w io.Writer) error { return derived.Write(w, t.p) }})
	}
	if t.want.WantsAs(form.AsPNG) && len(t.pages) > 0 {
		out = append(out, File{t.base + ".png", func(w io.Writer) error { return png.Write(w, t.pages[0], previewDots) }})
	}
	return out
}

// pdf is a file of pages that tells how far it is and can be cancelled before each sheet.
func (t *task) pdf(name string, pages []draw.Page, title, subject string) File {
	return File{name, func(w io.Writer) error {
		return pdf.Write(w, pages, pdf.Meta{Title: title, Subject: subject, Sheet: func(n int) error {
			return t.sheet(n, len(pages))
		}})
	}}
}

// tables are the page for a screen, the workbook, the views and the tables.
func (t *task) tables(plans []plan) []File {
	wanted := table.Of(table.All(t.p, t.so.Style), t.want.Wants)
	tables := table.AllIn(wanted, t.speak)
	var views, small []sheet.Named
	if t.want.Wants(form.PaperDrawings) && t.want.WantsAs(form.AsSVG) {
		views = sheet.Views(t.p, t.speak)
	}
	if t.want.Wants(form.PaperDrawings) && t.want.WantsAs(form.AsHTML) {
		small = sheet.Fitted(t.p, t.speak, html.Wide, html.High)
	}
	var out []File
	if t.want.WantsAs(form.AsHTML) && len(small)+len(tables)+len(plans) > 0 {
		out = append(out, File{t.base + ".html", func(w io.Writer) error { return t.onePage(w, small, wanted, plans) }})
	}
	if t.want.WantsAs(form.AsXLSX) && len(tables)+len(plans) > 0 {
		out = append(out, File{t.base + ".xlsx", func(w io.Writer) error { return t.workbook(w, tables, plans) }})
	}
	if t.want.WantsAs(form.AsSVG) {
		for _, v := range views {
			out = append(out, File{"view-" + slug(v.Name) + ".svg", func(w io.Writer) error { return svg.Write(w, v.Page) }})
		}
	}
	if t.want.WantsAs(form.AsCSV) {
		for _, tab := range tables {
			out = append(out, File{slug(tab.ID) + ".csv", func(w io.Writer) error { return csv.Write(w, tab) }})
		}
	}
	return out
}

// onePage writes the page for a screen: every picture and table, the plans of boards, and the cautions.
func (t *task) onePage(w io.Writer, views []sheet.Named, tables []table.Table, plans []plan) error {
	piece := html.Part{}
	for _, tab := range tables {
		piece.Tables = append(piece.Tables, tab.Filled().In(t.speak))
	}
	for _, v := range views {
		piece.Pictures = append(piece.Pictures, html.Picture{Caption: v.Caption, Page: v.Page})
	}
	parts := []html.Part{piece}
	for _, plan := range plans {
		shown, err := t.onScreen(plan)
		if err != nil {
			return err
		}
		parts = append(parts, shown...)
	}
	return html.Write(w, html.Content{Language: t.speak.Code(), Title: t.p.Title, Intro: overall(t.p, t.speak), Parts: parts,
		Cautions: sheet.Cautions(t.p, t.speak), Before: t.speak.Say("Before you cut")})
}

// workbook writes all tables, those of the plans of boards last.
func (t *task) workbook(w io.Writer, tables []table.Table, plans []plan) error {
	all := slices.Clone(tables)
	for _, of := range plans {
		told, err := t.told(of)
		if err != nil {
			return err
		}
		all = append(all, slices.Concat(told.over, told.boards)...)
	}
	return xlsx.Write(w, all, xlsx.Meta{Title: t.p.Title})
}

// overall is the piece's outside in a line.
func overall(p *form.Piece, speak *tongue.Tongue) string {
	o, show := p.Overall, p.Design.Style().FormatUnit
	text := speak.Fill("%s high; %s × %s on top, %s × %s on the floor.", show(o.Height), show(o.WidthTop), show(o.DepthTop), show(o.WidthFloor), show(o.DepthFloor))
	return p.Design.Style().Text(text)
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
