package sheet

import (
	"fmt"
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"splaywright/export/pdf"
	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
)

// designs are those that every sheet test goes over.
func designs() map[string]form.Design {
	return map[string]form.Design{
		"worked": formtest.WorkedExample(), "full": formtest.Full(), "housing": formtest.Housing(), "butt": formtest.Butt(), "forty tails": fortyTails(),
	}
}

// fortyTails is a bench with more positions in a row than a sheet is high.
func fortyTails() form.Design {
	d := formtest.WorkedExample()
	d.Size.Width, d.Size.Depth = 1400, 700
	d.Splay.Ends = 12 * measure.Degree
	d.Corners.Tails, d.Corners.TailsOn = new(40), "side"
	d.Corners.Pin, d.Corners.HalfPin = nil, nil
	return d
}

// allowed are the layers whose filled grounds lie under texts on purpose.
var allowed = []string{"tint", "paper"}

func TestNoTextOverlaps(t *testing.T) {
	for name, d := range designs() {
		p := model.Derive(d)
		both := measure.Style{Unit: measure.Imperial, Step: measure.Inch / 32, Both: true}
		for _, o := range []Options{{}, {Sheet: "A3", Projection: "third"}, {Sheet: "Letter"}, {Sheet: "Tabloid", Style: both}} {
			look(t, name+o.Sheet, Papers(p, o))
			for _, page := range Papers(p, o) {
				for _, v := range drawtest.Overlaps(page, allowed...) {
					t.Errorf("%s %s: %s", name, o.Sheet, v)
				}
			}
		}
		for _, v := range drawtest.Overlaps(Table3(p, Options{Sheet: "A3", Dark: true}), allowed...) {
			t.Errorf("%s, drawing table: %s", name, v)
		}
	}
}

// Random stools, from a child's step to a bench, in one unit: no text lies on a text or a line on any
// sheet. With both units side by side the values are three times as long; that is tested on the
// designs above only.
func TestNoTextOverlapsOnRandomStools(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := randomDesign(t)
		p := model.Derive(d)
		o := Options{Sheet: rapid.SampledFrom([]string{"A4", "A3", "Letter", "Tabloid"}).Draw(t, "sheet"), Projection: rapid.SampledFrom([]string{"first", "third"}).Draw(t, "projection")}
		pages := []draw.Page{Table3(p, o)}
		if !p.Stopped() { // a stopped piece is shown on the screen but gets no papers
			pages = append(pages, Papers(p, o)...)
		}
		for _, page := range pages {
			for _, v := range drawtest.Overlaps(page, allowed...) {
				t.Error(v)
			}
		}
		for _, page := range pages[1:] {
			outside(t, page)
		}
	})
}

// outside complains of what is drawn beyond the frame or in the title block.
func outside(t interface{ Errorf(string, ...any) }, p draw.Page) {
	frame := draw.Box{Min: draw.Point{X: filing, Y: margin}, Max: draw.Point{X: p.Width - margin, Y: p.Height - margin}}
	title := draw.Box{Min: draw.Point{X: frame.Max.X - block, Y: frame.Min.Y}, Max: draw.Point{X: frame.Max.X, Y: frame.Min.Y + smallBlock}}
	for _, it := range p.Items {
		layer := ""
		switch it := it.(type) {
		case draw.Path:
			layer = it.Layer
		case draw.Text:
			layer = it.Layer
		}
		if layer == "frame" {
			continue
		}
		b := draw.Bounds([]draw.Item{it})
		inside := b.Min.X >= frame.Min.X && b.Min.Y >= frame.Min.Y && b.Max.X <= frame.Max.X && b.Max.Y <= frame.Max.Y // which nothing is that lies nowhere
		if !inside || b.Meets(title) {
			t.Errorf("%s: something of layer %s lies at %.1f, %.1f … %.1f, %.1f, outside the room for it", p.Title, layer, b.Min.X, b.Min.Y, b.Max.X, b.Max.Y)
		}
	}
}

func randomDesign(t *rapid.T) form.Design {
	mm := func(name string, lo, hi int) measure.Length {
		return measure.Length(rapid.IntRange(lo, hi).Draw(t, name))
	}
	deg := func(name string, lo, hi int) measure.Angle {
		return measure.Angle(rapid.IntRange(lo*2, hi*2).Draw(t, name)) * measure.Degree / 2
	}
	d := rapid.SampledFrom([]func() form.Design{formtest.WorkedExample, formtest.Full, formtest.Housing, formtest.Butt}).Draw(t, "start")()
	d.Size.Height, d.Size.Width, d.Size.Depth = mm("height", 180, 700), mm("width", 260, 1500), mm("depth", 160, 450)
	d.Splay.Ends, d.Splay.Edges = deg("ends", -4, 18), deg("edges", 0, 8)
	d.Boards.Top.Thickness, d.Boards.Side.Thickness = mm("top", 14, 38), mm("side", 14, 38)
	if d.Corners.Tails != nil {
		d.Corners.Tails = new(rapid.IntRange(1, 9).Draw(t, "tails"))
	}
	if rapid.Bool().Draw(t, "inches") {
		d.Units, d.Round = measure.Imperial, form.Round{To: measure.Inch / 32, Unit: measure.Imperial}
	}
	return d
}

// look writes a set as PDF for a person to look at.
func look(t *testing.T, name string, pages []draw.Page) {
	dir := os.Getenv("SPLAYWRIGHT_LOOK")
	if dir == "" {
		return
	}
	f, err := os.Create(fmt.Sprintf("%s/%s.pdf", dir, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := pdf.Write(f, pages, pdf.Meta{Title: name}); err != nil {
		t.Fatal(err)
	}
}

// The scale that is told is the one that is drawn: the width at the floor spans as much paper.
func TestTheTableTellsItsScale(t *testing.T) {
	p := model.Derive(formtest.WorkedExample())
	page, shown := Scaled3(p, three(p), Options{Width: 200, Height: 150})
	scale := shown.Scale
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, it := range page.Items {
		if path, ok := it.(draw.Path); ok && path.Ref == "side-left" && path.Layer == "visible" {
			b := draw.Bounds([]draw.Item{path})
			if b.Min.Y > page.Height/2 && b.Max.X < page.Width/2 { // in the front view
				lo, hi = min(lo, b.Min.Y), max(hi, b.Max.Y)
			}
		}
	}
	if want := p.Overall.Height.MM() * scale; scale <= 0 || math.Abs(hi-lo-want) > 1 { // pens have a width
		t.Errorf("the left side is %v mm high on the table, at a scale of %v it would be %v", hi-lo, scale, want)
	}
}
