package sheet

import (
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/tongue"
	"splaywright/render/dimension"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// figure is a view drawn at a scale; the world's origin is at 0, 0. Later it is shifted to its place.
type figure struct {
	*dimension.Sketch
	dir   view.Direction
	scale float64
	ink   ink
	axes  [][2]draw.Point // centre lines, drawn by Finish
	rings []ring          // holes drawn simplified

	hidden bool // hidden lines are drawn
	lone   bool // of one part by itself
}

// newFigure draws a picture, small holes simplified. Hidden lines are left out of pictorials, where
// they only confuse.
func newFigure(pic *view.Picture, scale float64, i ink, hidden bool, small ...shaft) *figure {
	f := emptyFigure(pic.Direction, scale, i)
	f.hidden = hidden
	f.strokes(f.thinned(f.simplify(pic.Lines, small)), hidden)
	return f
}

// fineFigure draws a picture of parts that stand by themselves: rows of lines that crowd are the ends of boards
// there, which nothing else draws, so they stay, in narrow lines.
func fineFigure(pic *view.Picture, scale float64, i ink, hidden bool, small ...shaft) *figure {
	f := emptyFigure(pic.Direction, scale, i)
	f.hidden, f.lone = hidden, true
	list := f.stretches(f.simplify(pic.Lines, small), view.Hidden)
	if scale < 1 {
		list = finer(thin(list))
	}
	f.strokes(list, hidden)
	return f
}

// finer marks the visible lines that stand in crowds, and leaves out the hidden ones.
func finer(list []*stretch) []*stretch {
	open := uncrowded(list)
	var out []*stretch
	n := 0
	for _, l := range list {
		if n < len(open) && open[n] == l {
			n++ // both are in one order
		} else {
			l.fine = true
		}
		if !l.fine || l.Kind == view.Visible {
			out = append(out, l)
		}
	}
	return out
}

func (f *figure) strokes(lines []*stretch, hidden bool) {
	points := 0
	for i := range lines {
		points += len(lines[i].pts)
	}
	f.Room(len(lines), points)
	for _, kind := range []view.Kind{view.Hidden, view.Smooth, view.Visible} {
		if kind == view.Hidden && !hidden {
			continue
		}
		for i := range lines {
			l := lines[i]
			if l.Kind != kind {
				continue
			}
			pen := f.ink.pen(kind)
			if l.fine {
				pen.Width = narrowLine
			}
			f.stroke(l, pen)
		}
	}
}

func emptyFigure(d view.Direction, scale float64, i ink) *figure {
	return &figure{Sketch: dimension.New(dimension.Practice(i.line)), dir: d, scale: scale, ink: i}
}

// stroke draws a line of the picture; an arc stays one.
func (f *figure) stroke(l *stretch, pen draw.Pen) {
	if l.Arc != nil {
		f.Curve(l.Arc.Segs(f.scale), l.pts, pen, l.Kind.String(), l.Part)
		return
	}
	f.Line(l.pts, pen, l.Kind.String(), l.Part)
}

func (f *figure) scaled(pts []draw.Point) []draw.Point {
	out := make([]draw.Point, len(pts))
	for i, p := range pts {
		out[i] = draw.Point{X: p.X * f.scale, Y: p.Y * f.scale}
	}
	return out
}

// at is where a place of the picture, mm of the piece, lies in the figure.
func (f *figure) at(x, y float64) draw.Point { return draw.Point{X: x * f.scale, Y: y * f.scale} }

// ratio is a scale with its name.
type ratio struct {
	name string
	of   float64
}

// The scales, the largest first. In millimetres those of ISO 5455 (1, 2 and 5 with powers of ten) and
// between them 1:2.5, 1:3, 1:4, 1:6, 1:8 and so on, preferred numbers of ISO 3, rounded: the standard lets intermediate
// scales be chosen, and a step of 2 would leave sheets half empty. In inches those of scale rules: 6, 4, 3, 2,
// 1 1/2, 1, 3/4, 1/2, 3/8, 1/4 and 1/8 in to the foot (common practice).
var (
	metricScales = []ratio{
		{"2:1", 2}, {"1:1", 1}, {"1:2", 1.0 / 2}, {"1:2.5", 1 / 2.5}, {"1:3", 1.0 / 3}, {"1:4", 1.0 / 4}, {"1:5", 1.0 / 5}, {"1:6", 1.0 / 6}, {"1:8", 1.0 / 8},
		{"1:10", 1.0 / 10}, {"1:12.5", 1 / 12.5}, {"1:16", 1.0 / 16}, {"1:20", 1.0 / 20}, {"1:25", 1.0 / 25}, {"1:40", 1.0 / 40}, {"1:50", 1.0 / 50}, {"1:100", 1.0 / 100},
	}
	inchScales = []ratio{
		{"2:1", 2}, {"1:1", 1}, {"1:2", 1.0 / 2}, {"1:3", 1.0 / 3}, {"1:4", 1.0 / 4}, {"1:6", 1.0 / 6}, {"1:8", 1.0 / 8}, {"1:12", 1.0 / 12}, {"1:16", 1.0 / 16},
		{"1:24", 1.0 / 24}, {"1:32", 1.0 / 32}, {"1:48", 1.0 / 48}, {"1:96", 1.0 / 96},
	}
)

// scales are those that go with the unit of the sizes.
func (o Options) scales() []ratio {
	if o.Style.Unit == measure.Imperial {
		return inchScales
	}
	return metricScales
}

// Views gives each view of the piece as a picture at full size: front, end, top, bottom, pictorial, isometric, as it
// will look, the sections through the middle, and the true face of each part. No two have the same name.
func Views(p *form.Piece, speak *tongue.Tongue) []Named {
	return views(p, speak, func(*view.Picture) float64 { return 1 })
}

// Fitted are Views for a screen, each drawn as small as fits in so much room, mm, or at full size.
func Fitted(p *form.Piece, speak *tongue.Tongue, wide, high float64) []Named {
	return views(p, speak, func(pic *view.Picture) float64 {
		return min(1, wide/max(pic.Max.X-pic.Min.X, 1), high/max(pic.Max.Y-pic.Min.Y, 1))
	})
}

// views draws each view in the scale that its picture is to have.
func views(p *form.Piece, speak *tongue.Tongue, scale func(*view.Picture) float64) []Named {
	scene := view.NewScene(p, flattening)
	var out []Named
	put := func(name, caption string, f *figure) {
		out = append(out, Named{name, caption, alone(p.Title+", "+caption, f)})
	}
	for _, d := range []view.Direction{view.Front, view.End, view.Top, view.Bottom, view.Pictorial(usualTurn, usualTip), view.Isometric} {
		square := d.Name != "pictorial" && d.Name != view.Isometric.Name
		pic := scene.Project(d)
		put(d.Name, speak.Sense(captions[d.Name]), newFigure(pic, scale(pic), onPaper, square))
	}
	if page, ok := Look(p, scene, portraitWide); ok {
		caption := speak.Say("as it will look")
		page.Title = p.Title + ", " + caption
		out = append(out, Named{"look", caption, page})
	}
	for _, c := range cutsOf(p, Options{}) {
		if s := view.NewSection(p, flattening, c.Cut); len(s.Faces) > 0 {
			name := "section " + c.letter + "-" + c.letter
			put(name, speak.Fill("section %s", c.letter+"-"+c.letter), sectionFigure(p, s, scale(s.Picture), Options{Tongue: speak}, map[string]bool{}))
		}
	}
	for _, q := range p.Parts {
		if q.Solid == nil {
			continue
		}
		pic := partScene(q).Project(faceView)
		put("face of "+q.ID, speak.Fill("%s, outer face", speak.Say(q.Name)), newFigure(pic, scale(pic), onPaper, true))
	}
	return out
}

// captions are the names of views as languages know them.
var captions = map[string]string{"front": "front|view", "end": "end|view", "top": "top|view", "bottom": "bottom|view", "pictorial": "pictorial|view", "isometric": "isometric|view"}

// alone makes a page that fits round a figure.
func alone(title string, f *figure) draw.Page { return fitting(title, f.Finish()) }

// fitting makes a page that fits round what is drawn.
func fitting(title string, items []draw.Item) draw.Page {
	const margin = 5
	b := draw.Bounds(items).Grow(margin)
	if b.Empty() {
		return draw.Page{Title: title, Width: 2 * margin, Height: 2 * margin}
	}
	return draw.Page{Title: title, Width: b.Width(), Height: b.Height(), Items: draw.Moved(items, draw.Point{X: -b.Min.X, Y: -b.Min.Y})}
}
