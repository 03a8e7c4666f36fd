package png

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
)

var ink = draw.Ink{R: 0, G: 0, B: 0}

// darkness is the ink on the image in whole black dots.
func darkness(img *image.RGBA) float64 {
	sum := 0.0
	for y := img.Rect.Min.Y; y < img.Rect.Max.Y; y++ {
		for x := img.Rect.Min.X; x < img.Rect.Max.X; x++ {
			sum += 1 - float64(img.RGBAAt(x, y).R)/255
		}
	}
	return sum
}

func filled(pts ...draw.Point) draw.Page {
	return draw.Page{Width: 40, Height: 30, Items: []draw.Item{draw.Path{Segs: draw.Polygon(pts), Filled: true, Fill: ink}}}
}

func TestTheImageIsAsLargeAsThePage(t *testing.T) {
	img := Render(draw.Page{Width: 297, Height: 210}, 4)
	if got := img.Rect.Size(); got != (image.Point{X: 1188, Y: 840}) {
		t.Errorf("297 × 210 mm at 4 dots a mm is %v dots", got)
	}
	if c := img.RGBAAt(500, 400); c != (color.RGBA{R: 255, G: 255, B: 255, A: 255}) {
		t.Errorf("empty paper is %v, want white", c)
	}
}

// The ink of a triangle is its area, whatever its place: that is what exact coverage means.
func TestInkEqualsArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := func(name string, hi float64) float64 { return rapid.Float64Range(0, hi).Draw(t, name) }
		p := [3]draw.Point{{X: c("ax", 40), Y: c("ay", 30)}, {X: c("bx", 40), Y: c("by", 30)}, {X: c("cx", 40), Y: c("cy", 30)}}
		area := math.Abs((p[1].X-p[0].X)*(p[2].Y-p[0].Y)-(p[2].X-p[0].X)*(p[1].Y-p[0].Y)) / 2 * 4 // 2 × 2 dots a mm²
		img := Render(filled(p[:]...), 2)
		// Each dot on the outline is rounded to 1/256 of ink; 3 sides cross at most 420 dots.
		if got := darkness(img); math.Abs(got-area) > 420.0/256+0.5 {
			t.Fatalf("ink %.3f dots, area %.3f", got, area)
		}
	})
}

// What leaves the paper is cut off there and nothing comes back on the other side.
func TestFiguresBeyondThePaper(t *testing.T) {
	for _, c := range []struct {
		name string
		pts  []draw.Point
		want float64 // dots at 1 a mm
	}{
		{"all of it covered", []draw.Point{{X: -50, Y: -50}, {X: 90, Y: -50}, {X: 90, Y: 90}, {X: -50, Y: 90}}, 1200},
		{"left half", []draw.Point{{X: -50, Y: -50}, {X: 20, Y: -50}, {X: 20, Y: 90}, {X: -50, Y: 90}}, 600},
		{"upper quarter", []draw.Point{{X: 20, Y: 15}, {X: 90, Y: 15}, {X: 90, Y: 90}, {X: 20, Y: 90}}, 300},
		{"beside it", []draw.Point{{X: 50, Y: 5}, {X: 90, Y: 5}, {X: 90, Y: 20}, {X: 50, Y: 20}}, 0},
		{"left of it", []draw.Point{{X: -50, Y: 5}, {X: -9, Y: 5}, {X: -9, Y: 20}, {X: -50, Y: 20}}, 0},
	} {
		if got := darkness(Render(filled(c.pts...), 1)); math.Abs(got-c.want) > 0.01 {
			t.Errorf("%s: ink on %.2f dots, want %.0f", c.name, got, c.want)
		}
	}
}

func TestAHoleInAFigureStaysWhite(t *testing.T) {
	segs := append(draw.Rect(draw.Box{Min: draw.Point{X: 5, Y: 5}, Max: draw.Point{X: 25, Y: 25}}),
		draw.Polygon([]draw.Point{{X: 10, Y: 10}, {X: 10, Y: 20}, {X: 20, Y: 20}, {X: 20, Y: 10}})...)
	img := Render(draw.Page{Width: 40, Height: 30, Items: []draw.Item{draw.Path{Segs: segs, Filled: true, Fill: ink}}}, 1)
	if got := darkness(img); math.Abs(got-300) > 0.01 {
		t.Errorf("a 20 mm square with a 10 mm hole has ink on %.2f dots, want 300", got)
	}
}

func TestDashesCoverTheirShare(t *testing.T) {
	page := draw.Page{Width: 120, Height: 20, Items: []draw.Item{draw.Path{
		Segs: draw.Polyline([]draw.Point{{X: 10, Y: 10}, {X: 110, Y: 10}}), Pen: draw.Pen{Width: 1, Dash: []float64{6, 4}, Ink: ink}}}}
	if got := darkness(Render(page, 4)); math.Abs(got-60*16) > 8 {
		t.Errorf("100 mm of line 1 mm wide, 6 on and 4 off, has ink on %.1f dots, want 960", got)
	}
}

func TestWriteGivesTheSameReadablePicture(t *testing.T) {
	var a, b bytes.Buffer
	for _, w := range []*bytes.Buffer{&a, &b} {
		if err := Write(w, drawtest.Page(), 3); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("two writings of one page differ")
	}
	img, err := png.Decode(bytes.NewReader(a.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	if got := img.Bounds().Size(); got != (image.Point{X: 891, Y: 630}) {
		t.Errorf("read back as %v dots", got)
	}
	if dir := os.Getenv("SPLAYWRIGHT_LOOK"); dir != "" {
		_ = os.WriteFile(dir+"/sample.png", a.Bytes(), 0o644)
	}
}

func BenchmarkRender2000Lines(b *testing.B) {
	page := drawtest.Busy(2000)
	for b.Loop() {
		Render(page, 4)
	}
}
