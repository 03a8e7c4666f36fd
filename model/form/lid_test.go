package form_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// chest of 18 mm boards, dovetailed, with a lid and two battens; sizes worked out by hand below.
func chest() form.Design {
	depth, clearance := measure.Length(7), measure.Length(0.5)
	return form.Design{
		Title: "Chest", Form: "chest", Timber: "white oak",
		Size:    form.Size{Height: 420, Width: 800, Depth: 400},
		Boards:  form.Boards{Side: form.Board{Thickness: 18}},
		Corners: form.Corners{Joint: form.ThroughDovetail},
		Bottom:  &form.Bottom{Thickness: 12, Joint: form.InGroove, Up: 40, Depth: &depth, Clearance: &clearance},
		Lid: &form.Lid{Thickness: 20, Overhang: 15, Battens: &form.Battens{Width: 60, Thickness: 20, Inset: 4, Count: 2,
			Screws: &form.Screws{Gauge: 8, Length: 32, Count: 3, FromEnd: 40}}},
	}
}

func box(t *testing.T, p *form.Piece, id string, length, width, thickness float64) {
	t.Helper()
	b := p.Part(id).Blank
	if math.Abs(b.Length.MM()-length) > 1e-9 || math.Abs(b.Width.MM()-width) > 1e-9 || math.Abs(b.Thickness.MM()-thickness) > 1e-9 {
		t.Errorf("%s: %v, want %g × %g × %g", id, b, length, width, thickness)
	}
}

func TestPlumbChest(t *testing.T) {
	p := form.Build(chest())
	if p.Stopped() {
		t.Fatal(p.Findings[0].Text)
	}
	box(t, p, "front", 800, 400, 18)
	box(t, p, "end-left", 400, 400, 18)
	box(t, p, "bottom", 800-36+13, 400-36+13, 12)
	box(t, p, "lid", 830, 430, 20)
	box(t, p, "batten-1", 400-36-8, 60, 20)
	if o := p.Overall; math.Abs(o.WidthTop.MM()-830) > 1e-9 || math.Abs(o.WidthFloor.MM()-800) > 1e-9 || o.Height != 420 {
		t.Errorf("overall %v", o)
	}
	// the battens' middles: 4 mm and half a batten from the ends' inner faces
	for id, x := range map[string]float64{"batten-1": -(382 - 4 - 30), "batten-2": 382 - 4 - 30} {
		if at := p.Part(id).Place.Col(3).Vec3(); at.Sub(mgl64.Vec3{x, 0, 380}).Len() > 1e-9 {
			t.Errorf("%s at %v", id, at)
		}
	}
	if n := len(p.Part("lid").Bores); n != 6 {
		t.Errorf("%d pilots in the lid, want 6", n)
	}
}

// A chest that leans is wider at the floor; the battens clear its walls where the room is least.
func TestLeaningChest(t *testing.T) {
	d := chest()
	d.Splay.Front, d.Splay.Ends = 5*measure.Degree, 8*measure.Degree
	p := form.Build(d)
	if p.Stopped() {
		t.Fatal(p.Findings[0].Text)
	}
	if o := p.Overall; math.Abs((o.WidthFloor-o.WidthTop+30).MM()-2*400*math.Tan(8*math.Pi/180)) > 1e-9 {
		t.Errorf("800 at the rim of 400 mm walls, and %g on the floor", o.WidthFloor.MM())
	}
	want := 400 - 2*18/math.Cos(5*math.Pi/180) - 8 // at the rim, where it is narrowest
	if got := p.Part("batten-1").Blank.Length.MM(); math.Abs(got-want) > 1e-9 {
		t.Errorf("batten %g long, want %g", got, want)
	}
}

func TestLidsThatCannotBe(t *testing.T) {
	for id, change := range map[string]func(*form.Design){
		"overhang-below-nothing": func(d *form.Design) { d.Lid.Overhang = -3 },
		"seat-not-level":         func(d *form.Design) { d.Splay.EdgeCut = form.EdgeSquare },
		"battens-without-room":   func(d *form.Design) { d.Lid.Battens.Width = 500 },
		"batten-count":           func(d *form.Design) { d.Lid.Battens.Count = 60 },
		"batten-in-the-wall":     func(d *form.Design) { d.Lid.Battens.Inset = -1 },
		"no-room-for-walls":      func(d *form.Design) { d.Lid.Thickness = 430 },
	} {
		d := chest()
		change(&d)
		p := form.Build(d)
		if len(p.Findings) == 0 || p.Findings[0].ID != id {
			t.Errorf("%s: findings %v", id, p.Findings)
		}
	}
}
