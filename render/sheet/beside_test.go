package sheet

import (
	"math"
	"slices"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/draw"
)

// All pieces stand on one scale and one floor: what is drawn of each is as wide as the piece at the
// scale of the others, and nothing leaves the page.
func TestBesideKeepsOneScale(t *testing.T) {
	all := examplePieces(t)
	pieces := []*form.Piece{all["reading-nook-step"], all["reading-nook-bench"], all["boot-room-chest"]}
	for i, p := range pieces { // rounded feet are a little less wide than sizes over all, which are taken sharp
		d := p.Design
		d.Features = slices.DeleteFunc(slices.Clone(d.Features), func(f form.Feature) bool { return f.Kind == string(part.RoundOver) })
		pieces[i] = model.Derive(d)
	}
	page := Beside(pieces, Options{Style: pieces[0].Design.Style(), Width: 320, Height: 200})
	if b := draw.Bounds(page.Items); b.Min.X < -1e-6 || b.Min.Y < -1e-6 || b.Max.X > page.Width+1e-6 || b.Max.Y > page.Height+1e-6 {
		t.Errorf("drawn over %v on a page of %g × %g", b, page.Width, page.Height)
	}
	var scales, floors []float64
	for _, p := range pieces {
		var own []draw.Item
		for _, it := range page.Items {
			if q, is := it.(draw.Path); is && q.Ref == p.Title && q.Layer != "over" && q.Layer != "key" {
				q.Pen.Width = 0
				own = append(own, q)
			}
		}
		box, v := draw.Bounds(own), p.Overall
		wide := max(v.WidthTop, v.WidthFloor, v.DepthTop, v.DepthFloor).MM()
		scales, floors = append(scales, box.Width()/wide), append(floors, box.Min.Y)
	}
	for i := range scales {
		if math.Abs(scales[i]-scales[0]) > 1e-6 || math.Abs(floors[i]-floors[0]) > 1e-6 || scales[0] <= 0 {
			t.Errorf("scales %v, floors %v", scales, floors)
		}
	}
}

// Beside a piece as high as a house the person is a speck: no word runs into another.
func TestWordsBesideASmallPerson(t *testing.T) {
	d := examplePieces(t)["reading-nook-step"].Design
	for _, high := range []measure.Length{260, 900, 2500, 6000, 20000} {
		d.Size.Height = high
		page := Beside([]*form.Piece{model.Derive(d)}, Options{Style: d.Style(), Width: 320, Height: 200})
		var boxes []draw.Box
		for _, it := range page.Items {
			if text, is := it.(draw.Text); is && text.Layer == "person" {
				box := draw.Bounds([]draw.Item{text})
				for _, o := range boxes {
					if box.Min.Y < o.Max.Y && o.Min.Y < box.Max.Y {
						t.Errorf("%g high: %q runs into another", high.MM(), text.Text)
					}
				}
				boxes = append(boxes, box)
			}
		}
		if high < 2500 && len(boxes) == 0 {
			t.Errorf("%g high: nothing stands beside the person", high.MM())
		}
	}
}
