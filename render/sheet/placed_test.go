package sheet

import (
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// A line drawn upright through the middle of the front view cuts the plane X = 0; drawn upward one looks
// at it from the right. A level one through the top view cuts Y = 0, drawn to the right seen from the front.
func TestCutAlongALine(t *testing.T) {
	p := examplePieces(t)["reading-nook-step"]
	_, shown := Scaled3(p, three(p), Options{Width: 200, Height: 150, Projection: "first", Style: p.Design.Style()})
	if len(shown.Views) != 3 {
		t.Fatalf("%d views", len(shown.Views))
	}
	front, top := shown.Views[0], shown.Views[2]
	mid := func(b draw.Box) draw.Point { return draw.Point{X: (b.Min.X + b.Max.X) / 2, Y: (b.Min.Y + b.Max.Y) / 2} }
	for _, c := range []struct {
		name     string
		from, to draw.Point
		like     view.Direction
		depth    float64
	}{
		{"upward through the front", draw.Point{X: mid(front.Box).X, Y: front.Box.Min.Y - 3}, draw.Point{X: mid(front.Box).X, Y: front.Box.Max.Y + 3}, view.End, 0},
		{"downward through the front", draw.Point{X: mid(front.Box).X, Y: front.Box.Max.Y}, draw.Point{X: mid(front.Box).X, Y: front.Box.Min.Y}, view.Left, 0},
		{"to the right through the top", draw.Point{X: top.Box.Min.X, Y: mid(top.Box).Y}, draw.Point{X: top.Box.Max.X, Y: mid(top.Box).Y}, view.Front, 0},
		{"to the right through the front, 100 up", draw.Point{X: front.Box.Min.X, Y: front.At.Y + 100*shown.Scale}, draw.Point{X: front.Box.Max.X, Y: front.At.Y + 100*shown.Scale}, view.Bottom, -100},
	} {
		cut, ok := shown.CutAlong(c.from, c.to)
		if !ok {
			t.Errorf("%s: no view is crossed", c.name)
			continue
		}
		if d := cut.Direction.Toward.Sub(c.like.Toward).Len(); d > 1e-9 || math.Abs(cut.Depth-c.depth) > 1e-6 {
			t.Errorf("%s: seen from %v at %g", c.name, cut.Direction.Toward, cut.Depth)
		}
		if math.Abs(cut.Direction.Toward[2]) < 0.9 && cut.Direction.Up[2] < 0.999 {
			t.Errorf("%s: up is %v", c.name, cut.Direction.Up)
		}
		page, hit := SectionPage(p, cut, Options{Width: 150, Height: 120, Style: p.Design.Style()})
		if box := draw.Bounds(page.Items); !hit || box.Width() > 150.01 || box.Height() > 120.01 {
			t.Errorf("%s: drawn over %v", c.name, box)
		}
	}
	if _, ok := shown.CutAlong(draw.Point{X: 1, Y: 1}, draw.Point{X: 1.5, Y: 1}); ok {
		t.Error("a line shorter than a line cut")
	}
}

// A place inside a view is that view's, one close by the nearest's, and one far from all is nobody's.
func TestViewAt(t *testing.T) {
	shown := Shown{Scale: 1, Views: []Placed{
		{Box: draw.Box{Min: draw.Point{X: 10, Y: 10}, Max: draw.Point{X: 50, Y: 40}}},
		{Box: draw.Box{Min: draw.Point{X: 60, Y: 10}, Max: draw.Point{X: 80, Y: 40}}},
	}}
	for _, c := range []struct {
		x, y float64
		want int
	}{{30, 20, 0}, {70, 20, 1}, {54, 20, 0}, {56, 20, 1}, {70, 51, 1}, {70, 53, -1}, {30, -9, -1}} {
		if got := shown.ViewAt(draw.Point{X: c.x, Y: c.y}); got != c.want {
			t.Errorf("at %g, %g lies view %d, want %d", c.x, c.y, got, c.want)
		}
	}
}

// three are a piece's pictures for a drawing table in first angle.
func three(p *form.Piece) (out [3]*view.Picture) {
	scene := view.NewScene(p, flattening)
	for i, d := range Directions3("first") {
		out[i] = scene.Project(d)
	}
	return out
}
