package png

import (
	"fmt"
	"math"
	"testing"

	"splaywright/render/draw"
)

// A narrow line is as heavy as its width says, whichever way it runs and wherever it falls between the
// dots: lines drawn by snapping to dots come out twice as heavy in some directions as in others.
func TestALineIsEquallyHeavyInEveryDirection(t *testing.T) {
	const long, dots = 30.0, 6.0
	for _, width := range []float64{0.25, 0.35, 0.5, 0.7} {
		for deg := 0.0; deg < 180; deg += 7.5 {
			for _, off := range []float64{0, 0.03, 0.07, 0.11} {
				t.Run(fmt.Sprintf("%g mm at %g° moved %g", width, deg, off), func(t *testing.T) {
					sin, cos := math.Sincos(deg * math.Pi / 180)
					c := draw.Point{X: 20 + off, Y: 20 + off}
					p := draw.Page{Width: 40, Height: 40, Items: []draw.Item{draw.Path{
						Segs: draw.Polyline([]draw.Point{{X: c.X - long/2*cos, Y: c.Y - long/2*sin}, {X: c.X + long/2*cos, Y: c.Y + long/2*sin}}),
						Pen:  draw.Pen{Width: width},
					}}}
					got, want := darkness(Render(p, dots))/dots/dots, long*width
					if math.Abs(got-want) > 0.015*want+width*width { // wide lines have round ends
						t.Errorf("ink covers %.3f mm², want %.3f mm²", got, want)
					}
				})
			}
		}
	}
}
