package papers

import (
	"io"

	"splaywright/export/svg"
	"splaywright/model/form"
	"splaywright/render/draw"
	"splaywright/render/pattern"
)

// patternOptions are those asked for with what the design says where they say nothing.
func (t *task) patternOptions() pattern.Options {
	var o pattern.Options
	if t.o.Patterns != nil {
		o = *t.o.Patterns
	}
	of := t.want.Patterns
	o.Tongue = t.speak
	if o.Sheet == "" {
		o.Sheet = t.o.Sheet
	}
	if o.AcrossBar == 0 {
		o.AcrossBar = of.BarX
	}
	if o.DownBar == 0 {
		o.DownBar = of.BarY
	}
	if o.Margin == 0 {
		o.Margin = of.Margin
	}
	if o.Overlap == 0 {
		o.Overlap = of.Overlap
	}
	return o
}

// OnePage ends the name of a pattern's file that has all of it on one page, as large as it takes.
const OnePage = "-one-page.pdf"

// patterns lists the files of the full-size patterns of each part that has any, pattern-PART.pdf and its
// like: the sheets to be joined, all on one page for a plotter, and the same page for a cutter.
func (t *task) patterns(o pattern.Options) ([]File, error) {
	sets, err := pattern.Sets(t.p, o)
	if err != nil {
		return nil, err
	}
	subject := t.speak.Say("Full-size patterns: check the bars before cutting")
	var out []File
	for _, s := range sets {
		name, title := "pattern-"+slug(s.Name.ID), t.p.Title+": "+s.Name.Words
		if t.want.WantsAs(form.AsPDF) || t.want.WantsAs(form.AsSingle) {
			out = append(out, t.pdf(name+".pdf", s.Sheets, title, subject), t.pdf(name+OnePage, []draw.Page{s.Whole}, title, subject))
		}
		if t.want.WantsAs(form.AsSVG) {
			out = append(out, File{name + ".svg", func(w io.Writer) error { return svg.Write(w, s.Whole) }})
		}
	}
	return out, nil
}
