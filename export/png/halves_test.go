package png

import (
	"bytes"
	"image"
	"testing"

	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
)

// An image that is painted in halves side by side is the same to the last bit as one that is painted as a whole, with
// nothing lost or twice at the seam.
func TestHalvesMakeTheWhole(t *testing.T) {
	busy := drawtest.Busy(500)
	busy.Items = append(busy.Items, turned(busy)...)
	for name, page := range map[string]draw.Page{"every kind of item": drawtest.Page(), "lines and turned texts": busy} {
		for _, dots := range []float64{1.7, 3, 4.31} {
			halves := Render(page, dots)
			h := halves.Rect.Dy()
			if h < inHalves {
				t.Fatalf("%s: %d dots high is painted as a whole", name, h)
			}
			whole := image.NewRGBA(halves.Rect)
			paint(whole, page, dots, 0, h)
			if !bytes.Equal(halves.Pix, whole.Pix) {
				t.Errorf("%s at %g dots a mm differs", name, dots)
			}
		}
	}
}

// turned are texts at many angles, all over the page.
func turned(p draw.Page) []draw.Item {
	var out []draw.Item
	for i := range 60 {
		at := draw.Point{X: p.Width * float64(i%10) / 10, Y: p.Height * (0.3 + 0.4*float64(i)/60)}
		out = append(out, draw.Text{At: at, Text: "12 3/8 qy", Size: 3.5, Turn: float64(i * 13), Align: draw.Align(i % 3)})
	}
	return out
}
