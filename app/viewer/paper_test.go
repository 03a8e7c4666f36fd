package viewer

import (
	"testing"

	"splaywright/export/png"
	"splaywright/render/draw"
)

// However a frame falls between the dots, its ground reaches to the last row and column of the picture.
func TestTheGroundLeavesNoLightEdge(t *testing.T) {
	dark := draw.Ink{R: 0x23, G: 0x2a, B: 0x31}
	for _, w := range []float64{40, 40.03, 40.11, 40.2} {
		img := png.Render(draw.Page{Width: w, Height: w, Items: []draw.Item{sheetOf(w, w, dark)}}, 4)
		b := img.Bounds()
		for i := range b.Dx() {
			for _, c := range []struct{ x, y int }{{i, 0}, {i, b.Dy() - 1}, {0, i}, {b.Dx() - 1, i}} {
				if at := img.RGBAAt(c.x, c.y); at.R != dark.R || at.G != dark.G || at.B != dark.B {
					t.Fatalf("a frame of %v mm: dot %d, %d is %v", w, c.x, c.y, at)
				}
			}
		}
	}
}
