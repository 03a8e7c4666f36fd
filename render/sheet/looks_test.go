package sheet

import (
	"testing"

	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/render/draw"
	"splaywright/render/view"
)

func TestWhereThePictorialIsSeenFrom(t *testing.T) {
	d := formtest.WorkedExample()
	turn := -20 * measure.Degree
	d.Papers.EyeHeight, d.Papers.EyeDistance, d.Papers.Turn = 1200, 3000, &turn
	p := model.Derive(d)
	if e := EyeOf(p); e.Height != 1200 || e.Distance != 3000 || e.Turn > -19.999 || e.Turn < -20.001 {
		t.Errorf("the design's eye is taken as %+v", e)
	}
	// An eye in the piece steps back until it sees all of it, and the sheet says so.
	d.Papers.EyeHeight, d.Papers.EyeDistance = 100, 50
	p = model.Derive(d)
	scene := view.NewScene(p, flattening)
	e := ClearEye(p, scene)
	if _, ok := scene.Lens(e); !ok || e.Distance <= 50 {
		t.Errorf("stepped back to %+v", e)
	}
}

// A view from below is drawn where something is to be seen there, and not where the design wants none.
func TestTheSheetFromBelow(t *testing.T) {
	count := func(none bool) int {
		d := formtest.Full()
		d.Papers.NoBottom = none
		n := 0
		for _, page := range Papers(model.Derive(d), Options{}) {
			for _, it := range page.Items {
				if text, ok := textOf(it); ok && text == "Seen from below" {
					n++
				}
			}
		}
		return n
	}
	if n := count(false); n != 1 {
		t.Errorf("%d views from below, want 1", n)
	}
	if n := count(true); n != 0 {
		t.Errorf("%d views from below where none is wanted", n)
	}
}

func textOf(it draw.Item) (string, bool) {
	t, ok := it.(draw.Text)
	return t.Text, ok
}
