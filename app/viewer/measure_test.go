package viewer

import (
	"fmt"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/render/draw"
)

// Faces are seen as lines: two parallel ones are a way apart, square to them; two that lean are an angle
// apart; a corner and a face are the way square to the face apart.
func TestMeasureFaces(t *testing.T) {
	test.NewTempApp(t)
	line := func(a, b draw.Point) draw.Item {
		return draw.Path{Segs: draw.Polyline([]draw.Point{a, b}), Layer: "visible", Ref: "top"}
	}
	table := NewTable()
	table.Spawn(func(f func()) { f() })
	table.size = fyne.NewSize(500, 500)
	table.SetPage(draw.Page{Width: 100, Height: 100, Items: []draw.Item{
		line(draw.Point{X: 10, Y: 10}, draw.Point{X: 90, Y: 10}),
		line(draw.Point{X: 10, Y: 40}, draw.Point{X: 90, Y: 40}),
		line(draw.Point{X: 20, Y: 60}, draw.Point{X: 80, Y: 60 + 60*math.Tan(math.Pi/18)}),
	}})
	table.Measure(true, Gauging{
		Way: func(x, y float64) (short, whole string) {
			whole = fmt.Sprintf("%.3f", math.Hypot(x, y))
			return whole, whole
		},
		Angle: func(a float64) string { return fmt.Sprintf("%.3f deg", a*180/math.Pi) },
	})
	tap := func(x, y float64) { table.mark(table.Place(draw.Point{X: x, Y: y})) }
	for _, c := range []struct {
		name string
		a, b [2]float64
		want string
	}{
		{"two level faces", [2]float64{30, 10.3}, [2]float64{70, 39.8}, "30.000"},
		{"a level and a leaning face", [2]float64{30, 40.2}, [2]float64{50, 65.3}, "10.000 deg"},
		{"a corner and a face", [2]float64{10.4, 39.7}, [2]float64{50, 10.1}, "30.000"},
		{"two corners", [2]float64{10.2, 10.2}, [2]float64{90, 40}, fmt.Sprintf("%.3f", math.Hypot(80, 30))},
	} {
		tap(c.a[0], c.a[1])
		tap(c.b[0], c.b[1])
		if got := table.Measured(); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// What was measured never lies on its own ends, and is seen whole wherever there is room for it; a line is drawn out to a foot
// beyond its end.
func TestMeasuredWordsLeaveTheEndsFree(t *testing.T) {
	seen := draw.Box{Max: draw.Point{X: 100, Y: 100}}
	for _, ends := range [][2]draw.Point{
		{{X: 50, Y: 50}, {X: 50, Y: 52}}, {{X: 50, Y: 50}, {X: 53, Y: 50}}, {{X: 10, Y: 50}, {X: 90, Y: 50}}, {{X: 97, Y: 50}, {X: 98, Y: 53}},
		{{X: 2, Y: 98}, {X: 4, Y: 99}}, {{X: 50, Y: 99}, {X: 50, Y: 97}}, {{X: 3, Y: 2}, {X: 3, Y: 3}}, {{X: 50, Y: 20}, {X: 50, Y: 80}},
	} {
		for _, zoom := range []float64{2, 4} {
			g := Gauge{points: 2, ends: ends, short: "24.0 mm"}
			text, back := g.words(draw.Ink{}, draw.Ink{}, zoom, seen)
			box := draw.Bounds([]draw.Item{text, back})
			for _, p := range ends {
				if near(box, p, gaugeDot/zoom) {
					t.Errorf("%v at %g: the words at %v lie on %v", ends, zoom, box, p)
				}
			}
			if in := seen.Grow(1e-9); box.Join(in) != in {
				t.Errorf("%v at %g: the words at %v are not seen whole", ends, zoom, box)
			}
		}
	}
	line := [2]draw.Point{{X: 10, Y: 10}, {X: 90, Y: 10}}
	for _, c := range []struct{ foot, from draw.Point }{{draw.Point{X: 5, Y: 10}, line[0]}, {draw.Point{X: 95, Y: 10}, line[1]}, {draw.Point{X: 50, Y: 10}, draw.Point{X: 50, Y: 10}}} {
		if got := nearerEnd(line, c.foot); got != c.from {
			t.Errorf("to %v the line is drawn out from %v, want %v", c.foot, got, c.from)
		}
	}
}
