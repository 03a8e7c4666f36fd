package sheet

import (
	"math"
	"testing"

	"splaywright/render/draw"
	"splaywright/render/view"
)

func cutFace(corners ...draw.Point) view.CutFace {
	return view.CutFace{Loops: [][]draw.Point{corners}}
}

// Where the inside angle of two boards that are cut through is told: at the corner that opens by so much, drawn by hand.
func TestInsideAngleStandsAtItsCorner(t *testing.T) {
	slope := math.Tan(11 * math.Pi / 180)
	x := func(y float64) float64 { return 100 - slope*(60-y) } // inner face of a side that leans out, lower further left
	for _, c := range []struct {
		name string
		a, b view.CutFace
		open float64
		want draw.Point
	}{
		{"square butt", cutFace(draw.Point{}, draw.Point{X: 100}, draw.Point{X: 100, Y: 20}, draw.Point{Y: 20}),
			cutFace(draw.Point{X: 100}, draw.Point{X: 120}, draw.Point{X: 120, Y: 80}, draw.Point{X: 100, Y: 80}), 90, draw.Point{X: 100, Y: 20}},
		{"mitre of a square frame", cutFace(draw.Point{}, draw.Point{X: 100}, draw.Point{X: 80, Y: 20}, draw.Point{Y: 20}),
			cutFace(draw.Point{X: 100}, draw.Point{X: 100, Y: 90}, draw.Point{X: 80, Y: 90}, draw.Point{X: 80, Y: 20}), 90, draw.Point{X: 80, Y: 20}},
		{"shoulders on a side that leans by 11°", cutFace(draw.Point{X: 200, Y: 0}, draw.Point{X: 200, Y: 60}, draw.Point{X: x(60), Y: 60}, draw.Point{X: x(50), Y: 50},
			draw.Point{X: x(50) - 20, Y: 50}, draw.Point{X: x(10) - 20, Y: 10}, draw.Point{X: x(10), Y: 10}, draw.Point{X: x(0), Y: 0}),
			view.CutFace{Loops: [][]draw.Point{
				{{X: x(50), Y: 50}, {X: x(90), Y: 90}, {X: x(90) - 20, Y: 90}, {X: x(50) - 20, Y: 50}},
				{{X: x(-40), Y: -40}, {X: x(10), Y: 10}, {X: x(10) - 20, Y: 10}, {X: x(-40) - 20, Y: -40}}}}, 101, draw.Point{X: x(0), Y: 0}},
	} {
		if got := insideCorner(touchingAt(c.a, c.b), []view.CutFace{c.a, c.b}, c.open); math.Hypot(got.X-c.want.X, got.Y-c.want.Y) > 1e-9 {
			t.Errorf("%s: told at %v, it is at %v", c.name, got, c.want)
		}
	}
}

// A window that would cut the foot off a leaning board at a corner is widened; one that a board runs through from side to
// side is not.
func TestWindowsTakeWholeCorners(t *testing.T) {
	w := draw.Box{Max: draw.Point{X: 100, Y: 100}}
	for _, c := range []struct {
		name string
		loop []draw.Point
		want draw.Box
	}{
		{"leans out at the foot", []draw.Point{{X: 20, Y: 150}, {X: 40, Y: 150}, {X: 15, Y: -50}, {X: -15, Y: -50}}, draw.Box{Min: draw.Point{X: -6.25}, Max: w.Max}},
		{"lies right through", []draw.Point{{X: -500, Y: 40}, {X: 500, Y: 40}, {X: 500, Y: 60}, {X: -500, Y: 60}}, w},
		{"inside", []draw.Point{{X: 20, Y: 20}, {X: 40, Y: 20}, {X: 40, Y: 60}}, w},
		{"leans down at the right", []draw.Point{{X: -50, Y: 40}, {X: 150, Y: -20}, {X: 150, Y: 0}, {X: -50, Y: 60}}, draw.Box{Min: draw.Point{Y: -5}, Max: w.Max}},
	} {
		got := wholeCorners(w, [][]draw.Point{c.loop}, 12)
		for _, d := range []float64{got.Min.X - c.want.Min.X, got.Min.Y - c.want.Min.Y, got.Max.X - c.want.Max.X, got.Max.Y - c.want.Max.Y} {
			if math.Abs(d) > 1e-9 {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
			}
		}
	}
}
