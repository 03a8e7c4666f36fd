package papers

import (
	"io"

	"splaywright/export/pdf"
	"splaywright/export/svg"
	"splaywright/model/form"
	"splaywright/render/draw"
	"splaywright/render/pattern"
)

// patternFiles are the files of each part that has patterns: the sheets to be joined, all on one
// page for a plotter, and the same page for a cutter.
var patternFiles = []struct {
	suffix string
	write  func(io.Writer, pattern.Set, pdf.Meta) error
}{
	{".pdf", func(w io.Writer, s pattern.Set, m pdf.Meta) error { return pdf.Write(w, s.Sheets, m) }},
	{"-one-page.pdf", func(w io.Writer, s pattern.Set, m pdf.Meta) error {
		return pdf.Write(w, []draw.Page{s.Whole}, m)
	}},
	{".svg", func(w io.Writer, s pattern.Set, _ pdf.Meta) error { return svg.Write(w, s.Whole) }},
}

// patterns lists the files of the full-size patterns: pattern-PART.pdf and its like.
func patterns(p *form.Piece, o pattern.Options) ([]File, error) {
	sets, err := pattern.Sets(p, o)
	if err != nil {
		return nil, err
	}
	var out []File
	for _, s := range sets {
		m := pdf.Meta{Title: p.Title + ": " + s.Name.Words, Subject: "Full-size patterns: check the bars before cutting"}
		for _, f := range patternFiles {
			out = append(out, File{"pattern-" + slug(s.Name.ID) + f.suffix, func(w io.Writer) error { return f.write(w, s, m) }})
		}
	}
	return out, nil
}
