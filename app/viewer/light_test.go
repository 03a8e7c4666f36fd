package viewer

import (
	"testing"

	"fyne.io/fyne/v2"

	"splaywright/render/draw"
)

// A face that is lit keeps its place in the order of painting, or it would lie over what stands before it, and is told from
// its edges still.
func TestLitFacesStayBelowWhatIsNearer(t *testing.T) {
	wood, line := draw.Ink{R: 220, G: 180, B: 120}, draw.Ink{R: 70, G: 50, B: 40}
	face := func(ref string) draw.Path {
		return draw.Path{Filled: true, Fill: wood, Pen: draw.Pen{Width: 0.1, Ink: wood}, Layer: "wood", Ref: ref}
	}
	page := draw.Page{Items: []draw.Item{
		face("side"),
		draw.Path{Pen: draw.Pen{Width: 0.1, Ink: line}, Layer: "grain", Ref: "side"},
		draw.Path{Pen: draw.Pen{Width: 0.25, Ink: line}, Layer: "visible", Ref: "side"},
		face("top"),
	}}
	ink := draw.Ink{R: 120, G: 60, B: 20}
	got := lighted(page, func(ref string) bool { return ref == "side" }, ink).Items
	if len(got) != 4 {
		t.Fatalf("%d items", len(got))
	}
	at := func(i int) draw.Path { return got[i].(draw.Path) }
	if at(0).Layer != "wood" || at(1).Layer != "grain" || at(2).Ref != "top" || at(3).Layer != "visible" {
		t.Errorf("the order is %v %v %v %v", at(0), at(1), at(2), at(3))
	}
	if fill := at(0).Fill; fill == wood || fill == ink {
		t.Errorf("the lit face is painted in %v", fill)
	}
	if at(3).Pen.Ink != ink || at(2).Fill != wood {
		t.Error("the edges are not lit, or the other part is")
	}
}

// What is painted over by a nearer face does not come under the pointer.
func TestFacesBehindAreNotPointedAt(t *testing.T) {
	box := draw.Rect(draw.Box{Max: draw.Point{X: 50, Y: 50}})
	p := newPicture(nil, nil)
	p.page = draw.Page{Width: 100, Height: 100, Items: []draw.Item{
		draw.Path{Segs: box, Filled: true, Layer: "wood", Ref: "back"},
		draw.Path{Segs: []draw.Seg{draw.MoveTo(draw.Point{X: 52}), draw.LineTo(draw.Point{X: 52, Y: 60})}, Layer: "visible", Ref: "front"},
	}}
	if got := p.hit(fyne.NewPos(50.5, 75), fyne.NewSize(100, 100)); got.Ref != "front" {
		t.Errorf("the pointer is at %q", got.Ref)
	}
}
