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
		Way:   func(x, y float64) string { return fmt.Sprintf("%.3f", math.Hypot(x, y)) },
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
