package form_test

import (
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// Inputs at the edge of sense, each with the right piece or a finding that says what is wrong.
func TestWallMuseum(t *testing.T) {
	lean := func(front, ends float64) func(*form.Design) {
		return func(d *form.Design) {
			d.Splay.Front, d.Splay.Ends = measure.Angle(front)*measure.Degree, measure.Angle(ends)*measure.Degree
		}
	}
	dovetail := func(then func(*form.Corners)) func(*form.Design) {
		return func(d *form.Design) {
			d.Corners.Joint = form.ThroughDovetail
			then(&d.Corners)
		}
	}
	l := func(mm float64) *measure.Length { v := measure.Length(mm); return &v }
	for _, c := range []struct {
		name   string
		change func(*form.Design)
		id     string // "" = it is built
	}{
		{"no splay", lean(0, 0), ""},
		{"45 degrees all round", lean(45, 45), ""},
		{"leaning inward", lean(-20, -15), ""},
		{"one board upright, one leaning", lean(0, 25), ""},
		{"less than a saw can see", lean(1e-9, 1e-9), ""},
		{"past where a board stands", lean(80, 10), "angle-out-of-reach"},
		{"so far that the walls meet on the floor", lean(70, 70), "walls-meet"},
		{"one tail", dovetail(func(k *form.Corners) { k.Tails = new(1) }), ""},
		{"no tail", dovetail(func(k *form.Corners) { k.Tails = new(0) }), "no-tails"},
		{"a pin of nothing", dovetail(func(k *form.Corners) { k.Pin = l(0) }), "size-not-above-nothing"},
		{"a tail as wide as the board", dovetail(func(k *form.Corners) { k.Tails, k.Tail = new(1), l(95) }), "half-pin-has-no-room"},
		{"sixty tails", dovetail(func(k *form.Corners) { k.Tails = new(60) }), "tails-cannot-fit"},
		{"tails on the top", dovetail(func(k *form.Corners) { k.TailsOn = form.OnTop }), "word-unknown"},
		{"boards thicker than half the piece is deep", func(d *form.Design) { d.Boards.Side.Thickness = 150 }, "walls-meet"},
		{"a negative overhang", func(d *form.Design) { d.Corners.Joint, d.Corners.Overhang = form.Housing, -5 }, "overhang-below-nothing"},
		{"an overhang without a housing", func(d *form.Design) { d.Corners.Overhang = 5 }, "overhang-without-housing"},
		{"a housing through the board", func(d *form.Design) { d.Corners.Joint, d.Corners.Depth = form.Housing, l(12) }, "housing-through"},
		{"a lap as thick as the board", func(d *form.Design) { d.Corners.Joint, d.Corners.Lap = form.HalfBlindDovetail, l(12) }, "lap-out-of-the-board"},
		{"a stretcher", func(d *form.Design) { d.Stretchers = []form.Stretcher{{Width: 40}} }, "stretchers-of-a-stool"},
		{"flush edges", func(d *form.Design) { d.Splay.EdgeCut = form.EdgeFlush }, "word-unknown"},
		{"square edges", func(d *form.Design) { d.Splay.EdgeCut = form.EdgeSquare }, ""},
		{"no height", func(d *form.Design) { d.Size.Height = 0 }, "size-not-above-nothing"},
	} {
		joints := form.WallJoints()
		for _, joint := range joints {
			d := tray(10, 6, joint)
			if c.change(&d); d.Corners.Joint != joint && joint != joints[0] {
				continue // the change asks for one joint alone
			}
			if c.name == "45 degrees all round" {
				d.Size.Height = 50
			}
			p := form.Build(d)
			switch {
			case c.id == "" && p.Stopped():
				t.Errorf("%s, %s: stopped: %s", c.name, joint, p.Findings[0].Text)
			case c.id != "" && (len(p.Findings) == 0 || p.Findings[0].ID != c.id):
				if c.name == "an overhang without a housing" && joint == form.Housing {
					continue
				}
				t.Errorf("%s, %s: want %s, got %+v", c.name, joint, c.id, p.Findings)
			}
			for _, q := range p.Parts {
				if q.Solid != nil {
					if err := q.Solid.Check(); err != nil {
						t.Errorf("%s, %s: %s: %v", c.name, joint, q.ID, err)
					}
				}
			}
		}
	}
}
