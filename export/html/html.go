// Package html writes the papers as one page that needs nothing beside itself: no network, no
// script, no other file.
package html

import (
	"bytes"
	"fmt"
	"html/template"
	"io"
	"strings"
	"unicode/utf8"

	"splaywright/export/svg"
	"splaywright/render/draw"
	"splaywright/render/sheet"
	"splaywright/render/table"
)

// Picture is a drawing with the words under it; "" = what it is stands in it.
type Picture struct {
	Caption string
	Page    draw.Page
	Tall    bool // as wide as all are, however high
}

// Content is what the page shows, in order.
type Content struct {
	Language string // its code; "" = English
	Title    string
	Intro    string // a line under the title
	Parts    []Part
	Before   string // over the cautions
	Cautions []sheet.Caution
}

// Part is a stretch of the page: pictures, and the tables below them.
type Part struct {
	Pictures []Picture
	Tables   []table.Table
}

// Write writes the page. The same content gives the same bytes; every text is escaped.
func Write(w io.Writer, c Content) error {
	view := struct {
		Content
		Drawn []drawnPart
	}{Content: c}
	if view.Language == "" {
		view.Language = "en"
	}
	for _, part := range c.Parts {
		d := drawnPart{Tables: part.Tables}
		for _, p := range part.Pictures {
			s, err := inline(p)
			if err != nil {
				return fmt.Errorf("picture %q: %w", p.Caption, err)
			}
			d.Pictures = append(d.Pictures, drawn{p.Caption, s})
		}
		view.Drawn = append(view.Drawn, d)
	}
	if err := page.Execute(w, view); err != nil {
		return fmt.Errorf("HTML page: %w", err)
	}
	return nil
}

type drawnPart struct {
	Pictures []drawn
	Tables   []table.Table
}

type drawn struct {
	Caption string
	SVG     template.HTML
}

// inline is a drawing as an element of the page: without the XML head that a file of its own has, and no larger than most.
func inline(pic Picture) (template.HTML, error) {
	p := pic.Page
	by := min(1, (Wide+air)/p.Width)
	if !pic.Tall {
		by = min(by, (High+air)/p.Height)
	}
	var b bytes.Buffer
	if err := svg.Write(&b, p); err != nil {
		return "", err
	}
	_, rest, found := bytes.Cut(b.Bytes(), []byte(" viewBox="))
	if !found {
		return "", fmt.Errorf("the drawing has no SVG element with a size")
	}
	// Our own writer escapes every text in it.
	return template.HTML(fmt.Sprintf(`<svg width="%.1fmm" height="%.1fmm" viewBox=%s`, p.Width*by, p.Height*by, rest)), nil
}

// How large a picture is shown at most, mm, but for the air round it: two of most fit beside each other. What is larger is made
// smaller, lines and words with it.
const (
	High = 90
	Wide = 270

	air = 20
)

var page = template.Must(template.New("page").Funcs(template.FuncMap{"head": head, "side": side, "stand": stand}).Parse(`<!doctype html>
<html lang="{{.Language}}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{{.Title}}</title>
<style>
body { font: 16px/1.45 "Noto Sans", "Liberation Sans", "BIZ UDPGothic", "Noto Sans CJK JP", "Yu Gothic", sans-serif; color: #201d1a; background: #fdfbf5; max-width: 72rem; margin: 0 auto; padding: 1.5rem; }
h1 { margin: 0 0 .2rem; } h2 { margin: 2rem 0 .5rem; font-size: 1.2rem; }
figure { display: inline-block; margin: 0 1.5rem 1rem 0; vertical-align: top; max-width: 100%; }
figure svg { max-width: 100%; height: auto; } figcaption { color: #6b6257; font-size: .9rem; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; font-size: .9rem; font-variant-numeric: tabular-nums; }
th { border-bottom: 2px solid #201d1a; text-align: left; vertical-align: bottom; } td { border-bottom: 1px solid #ded5c4; white-space: nowrap; vertical-align: top; }
th, td { padding: .25rem .6rem; } .r { text-align: right; } .c { text-align: center; }
td.t { white-space: pre-line; min-width: 12rem; }
.note { color: #4c453d; font-size: .9rem; max-width: 60rem; margin: .3rem 0; }
@media print { body { max-width: none; padding: 0; background: none; } h2, figure, tr { break-inside: avoid; } h2 { break-after: avoid; } thead { display: table-header-group; } }
</style>
</head>
<body>
<h1>{{.Title}}</h1>
<p class="note">{{.Intro}}</p>
{{range .Drawn}}{{range .Pictures}}<figure>{{.SVG}}{{with .Caption}}<figcaption>{{.}}</figcaption>{{end}}</figure>
{{end}}{{range .Tables}}<h2>{{.Title}}</h2>
{{if .Columns}}<div class="wide"><table>
<thead><tr>{{range .Columns}}<th{{side .Align}}>{{head .}}</th>{{end}}</tr></thead>
<tbody>{{$columns := .Columns}}
{{range .Rows}}<tr>{{range $i, $cell := .}}<td{{stand (index $columns $i).Align $cell.Text}}>{{$cell.Text}}</td>{{end}}</tr>
{{end}}</tbody></table></div>
{{end}}{{range .Notes}}<p class="note">{{.}}</p>
{{end}}{{end}}{{end}}{{if .Cautions}}<h2>{{.Before}}</h2>
{{range .Cautions}}<p class="note"><strong>{{.Head}}:</strong> {{.Text}}</p>
{{end}}{{end}}</body>
</html>
`))

func head(c table.Column) string {
	switch c.Unit {
	case "":
		return c.Head
	case "deg":
		return c.Head + " (°)"
	}
	return c.Head + " (" + c.Unit + ")"
}

// most is how many letters of words a cell may have before its lines are broken.
const most = 40

// stand is the class of a cell: long sentences are broken, and lines of their own kept.
func stand(a table.Align, text string) template.HTMLAttr {
	if a == table.Left && (strings.Contains(text, "\n") || utf8.RuneCountInString(text) > most) {
		return ` class="t"`
	}
	return side(a)
}

// side is the class that puts a column's cells where they stand on paper.
func side(a table.Align) template.HTMLAttr {
	switch a {
	case table.Right:
		return ` class="r"`
	case table.Centre:
		return ` class="c"`
	}
	return ""
}
