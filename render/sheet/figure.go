package sheet

import (
	"splaywright/model/form"
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
	rings []shaft         // holes drawn simplified
}

// newFigure draws a picture, small holes simplified. Hidden lines are left out of pictorials, where
// they only confuse.
func newFigure(pic *view.Picture, scale float64, i ink, hidden bool, small ...shaft) *figure {
	f := &figure{Sketch: dimension.New(dimension.Practice(i.line)), dir: pic.Direction, scale: scale, ink: i}
	lines := f.simplify(pic.Lines, small)
	for _, kind := range []view.Kind{view.Hidden, view.Smooth, view.Visible} {
		if kind == view.Hidden && !hidden {
			continue
		}
		for _, l := range lines {
			if l.Kind == kind {
				f.Line(f.scaled(l.Points), i.pen(kind), kind.String(), l.Part)
			}
		}
	}
	return f
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

// scales of ISO 5455 with 2:1, the largest first.
var scales = []struct {
	name string
	of   float64
}{
	{"2:1", 2}, {"1:1", 1}, {"1:2", 0.5}, {"1:5", 0.2}, {"1:10", 0.1}, {"1:20", 0.05}, {"1:50", 0.02}, {"1:100", 0.01},
}

// Views gives each view of the piece as a picture at full size: front, end, top, pictorial, and the
// true face of each part. No two have the same name.
func Views(p *form.Piece) []Named {
	scene := view.NewScene(p, flattening)
	var out []Named
	for _, d := range []view.Direction{view.Front, view.End, view.Top, view.Pictorial(usualTurn, usualTip)} {
		out = append(out, Named{d.Name, alone(p.Title+", "+d.Name, newFigure(scene.Project(d), 1, onPaper, d.Name != "pictorial"))})
	}
	for _, q := range p.Parts {
		if q.Solid == nil {
			continue
		}
		pic := partScene(q).Project(faceView)
		out = append(out, Named{"face of " + q.ID, alone(p.Title+", "+q.Name, newFigure(pic, 1, onPaper, true))})
	}
	return out
}

// alone makes a page that fits round a figure.
func alone(title string, f *figure) draw.Page {
	const margin = 5
	items := f.Finish()
	b := draw.Bounds(items).Grow(margin)
	if b.Empty() {
		return draw.Page{Title: title, Width: 2 * margin, Height: 2 * margin}
	}
	return draw.Page{Title: title, Width: b.Width(), Height: b.Height(), Items: draw.Moved(items, draw.Point{X: -b.Min.X, Y: -b.Min.Y})}
}
