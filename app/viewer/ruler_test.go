package viewer

import (
	"testing"

	"splaywright/model/measure"
	"splaywright/render/draw"
)

// A number of a ruler is seen whole or not at all, wherever the drawing has been moved to.
func TestNumbersOfRulersAreWhole(t *testing.T) {
	const w, h, zoom = 300.0, 200.0, 3.0
	r := Ruler{Scale: 0.2, Unit: measure.Metric, Zero: draw.Point{X: 60, Y: 40}}
	seen := 0
	for at := range 200 {
		for _, it := range r.items(draw.Point{X: float64(at) / 4, Y: float64(at) / 3}, w, h, zoom, draw.Ink{}, draw.Ink{}) {
			text, ok := it.(draw.Text)
			if !ok || text.Text == "mm" {
				continue
			}
			seen++
			long := draw.TextWidth(text.Text, text.Size, false)
			if text.Turn == 0 && text.At.X+long > w || text.Turn == 90 && text.At.Y+long > h-rulerWide/zoom {
				t.Fatalf("moved by %d: %q at %v runs over the end", at, text.Text, text.At)
			}
		}
	}
	if seen < 1000 {
		t.Fatalf("%d numbers seen", seen)
	}
}

// However small the views are drawn, of a piece that somebody has typed a few noughts too many for as well, no number of a ruler
// runs into the next.
func TestNumbersOfRulersStandApart(t *testing.T) {
	const w, h, zoom = 300.0, 200.0, 3.0
	for _, unit := range []measure.Unit{measure.Metric, measure.Imperial} {
		for scale := 10.0; scale > 1e-7; scale /= 1.7 {
			r := Ruler{Scale: scale, Unit: unit, Zero: draw.Point{X: 60, Y: 40}}
			end, seen := 0.0, 0
			for _, it := range r.items(draw.Point{}, w, h, zoom, draw.Ink{}, draw.Ink{}) {
				text, ok := it.(draw.Text)
				if !ok || text.Turn != 0 || text.Align == draw.Centre {
					continue
				}
				if seen++; seen > 1 && text.At.X < end {
					t.Errorf("at 1:%.3g the number %q begins %.1f mm before the one before it ends", 1/scale, text.Text, end-text.At.X)
					break
				}
				end = text.At.X + draw.TextWidth(text.Text, text.Size, false)
			}
			if seen == 0 {
				t.Errorf("at 1:%.3g there is no number", 1/scale)
			}
		}
	}
}
