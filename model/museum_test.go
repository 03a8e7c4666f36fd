package model_test

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// plain is a piece of each form at shop sizes, with a joint.
func plain(name, joint string) form.Design {
	d := form.Design{
		Title: "Exhibit", Form: name, Timber: "white oak",
		Size:   form.Size{Height: 300, Width: 500, Depth: 320, Staves: 8},
		Splay:  form.Splay{Ends: 8 * measure.Degree, Edges: 4 * measure.Degree, Front: 6 * measure.Degree},
		Boards: form.Boards{Top: form.Board{Thickness: 20}, Side: form.Board{Thickness: 18}},
	}
	if !form.OnSides(name) {
		d.Splay.Edges, d.Boards.Top = 0, form.Board{}
	} else {
		d.Splay.Front = 0
	}
	if name == "ring" {
		d.Splay.Front, d.Size.Depth = 0, 0
	}
	d.Corners.Joint = joint
	return d
}

func jointsOf(string) []string { return form.CornerJoints() }

// Inputs at the edge of sense, over every form and joint: the right piece, or a stop with one of the
// ids that say what is wrong; never a part that is missing without a word.
func TestMuseum(t *testing.T) {
	l := func(mm float64) *measure.Length { v := measure.Length(mm); return &v }
	leans := func(deg float64) func(*form.Design) {
		return func(d *form.Design) {
			a := measure.Angle(deg) * measure.Degree
			d.Splay.Ends, d.Splay.Front, d.Splay.Edges = a, a, a
			if form.OnSides(d.Form) {
				d.Splay.Front = 0
				if d.Corners.Joint == form.HalfBlindDovetail && deg > 0 { // else the taper runs into a socket, which is told
					d.Corners.HalfPin = l(30)
				}
			} else {
				d.Splay.Edges = 0
			}
			d.Size.Height = 90
			d.Size.LowerHeight, d.Size.Width = 40, 800
			if d.Size.Depth > 0 {
				d.Size.Depth = 700
			}
		}
	}
	tails := func(then func(*form.Corners)) func(*form.Design) {
		return func(d *form.Design) { then(&d.Corners) }
	}
	for _, c := range []struct {
		name   string
		change func(*form.Design)
		joints string   // only with these; "" = with every one
		ids    []string // of the stops that may be; none = it is built
	}{
		{"as it is", func(*form.Design) {}, "", nil},
		{"no splay", leans(0), "", nil},
		{"45 degrees", leans(45), "", []string{"taper-into-joint"}},
		{"one tail", tails(func(k *form.Corners) { k.Tails = new(1) }), "dovetail", nil},
		{"no tail", tails(func(k *form.Corners) { k.Tails = new(0) }), "dovetail", []string{"no-tails"}},
		{"a tail as wide as the board", tails(func(k *form.Corners) { k.Tails, k.Tail, k.HalfPin = new(1), l(330), nil }), "dovetail",
			[]string{"half-pin-has-no-room", "sizes-contradict", "tails-cannot-fit"}},
		{"a pin of nothing", tails(func(k *form.Corners) { k.Tails, k.Pin = new(3), l(0) }), "dovetail", []string{"size-not-above-nothing"}},
		{"thickness over half the width", func(d *form.Design) { d.Boards.Side.Thickness = 270 }, "", []string{"walls-meet", "sides-meet", "lap-out-of-the-board"}},
		{"one finger", tails(func(k *form.Corners) { k.Tails = new(1) }), "finger", nil},
		{"no finger", tails(func(k *form.Corners) { k.Tails = new(0) }), "finger", []string{"no-tails"}},
		{"a finger as wide as the board", tails(func(k *form.Corners) { k.Tails, k.Tail = new(1), l(330) }), "finger",
			[]string{"half-pin-has-no-room", "sizes-contradict", "tails-cannot-fit"}},
		{"fingers with nothing between", tails(func(k *form.Corners) { k.Tails, k.Pin = new(3), l(0) }), "finger", []string{"size-not-above-nothing"}},
		{"three staves, or as it is", func(d *form.Design) {
			if d.Form == "ring" {
				d.Size.Staves = 3
			}
		}, "", nil},
		{"a negative overhang", func(d *form.Design) { d.Corners.Overhang = -5 }, "", []string{"overhang-below-nothing", "overhang-without-housing"}},
		{"a housing through the board", func(d *form.Design) { d.Corners.Depth = l(60) }, "housing", []string{"housing-through"}},
		{"no height", func(d *form.Design) { d.Size.Height = 0 }, "", []string{"size-not-above-nothing"}},
	} {
		for _, name := range form.Forms() {
			for _, joint := range jointsOf(name) {
				if !strings.Contains(joint, c.joints) {
					continue
				}
				d := plain(name, joint)
				c.change(&d)
				exhibit(t, c.name+", "+name+", "+joint, model.Derive(d), c.ids)
			}
		}
	}
}

func exhibit(t *testing.T, name string, p *form.Piece, ids []string) {
	t.Helper()
	var stops []string
	for _, f := range p.Findings {
		if f.ID == "" || f.Text == "" || f.Source == "" || len(f.Sizes) == 0 {
			t.Errorf("%s: half a finding: %+v", name, f)
		}
		if f.Level == part.Stop {
			stops = append(stops, f.ID+": "+f.Text)
			if !slices.Contains(ids, f.ID) {
				t.Errorf("%s: stopped by %s: %s", name, f.ID, f.Text)
			}
		}
	}
	if len(ids) > 0 && len(stops) == 0 && ids[0] != "taper-into-joint" { // which asks for tails and leaning edges
		t.Errorf("%s: nothing stops it", name)
	}
	if len(ids) == 0 && len(p.Parts) == 0 {
		t.Errorf("%s: no parts", name)
	}
	for _, q := range p.Parts {
		if q.Solid == nil && len(stops) == 0 {
			t.Errorf("%s: %s is missing without a word", name, q.ID)
		} else if q.Solid != nil {
			if err := q.Solid.Check(); err != nil {
				t.Errorf("%s: %s: %v", name, q.ID, err)
			}
		}
	}
}

// What meets inside a board is told with what, where and what would do.
func TestWhatMeetsIsTold(t *testing.T) {
	arch := func(y measure.Length) form.Feature {
		return form.Feature{On: "side", Kind: "arch", Width: 100, Rise: 30, Y: y}
	}
	groove := func(y measure.Length, face string) form.Feature {
		return form.Feature{On: "side", Kind: "groove", Width: 20, Depth: 10, Y: y, Face: face}
	}
	rail := func(below, across, deep measure.Length) form.Stretcher {
		return form.Stretcher{Width: 60, Thickness: 20, BelowTop: below, Across: across, Joint: form.Housing, Depth: deep}
	}
	for _, c := range []struct {
		name, form string
		change     func(*form.Design)
		id         string
		says       []string
	}{
		{"two arches", "stool", func(d *form.Design) { d.Features = []form.Feature{arch(-30), arch(30)} }, "openings-meet",
			[]string{"Arch 2 in the side runs 28.2 mm into arch 1", "move and shrink it"}},
		{"two housings", "stool", func(d *form.Design) { d.Stretchers = []form.Stretcher{rail(20, 0, 6), rail(40, 10, 6)} }, "stretchers-meet",
			[]string{"Stretcher 1 runs through stretcher 2", "10.0 mm across", "40.0 mm in height"}},
		{"a housing over the edge", "stool", func(d *form.Design) { d.Stretchers = []form.Stretcher{rail(60, 170, 6)} }, "stretcher-past-edge",
			[]string{"past the back edge", "towards the middle"}},
		{"housings of the two faces", form.Steps, func(d *form.Design) {
			deep := measure.Length(7)
			d.Corners.Depth = &deep
			d.Stretchers = []form.Stretcher{rail(110, 0, 12)}
			d.Stretchers[0].Under = form.UnderUpper
		}, "hollows-meet", []string{"side", "12.0 mm and 7.0 mm deep in a board of 18.0 mm", "4.0 mm less deep"}},
		{"a screw's hole in a housing", form.Steps, func(d *form.Design) {
			d.Size.Height, d.Size.LowerHeight = 300, 150
			d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, BelowTop: 125, Joint: form.Butt, Under: form.UnderUpper,
				Screws: &form.Screws{Gauge: 8, Length: 50, Count: 2, FromEnd: 15}}}
		}, part.CannotBeCut, []string{"The clearance hole of screw 2", "runs into the housing of the lower tread", "move one of them", "along the grain"}},
		{"grooves of the two faces", "stool", func(d *form.Design) { d.Features = []form.Feature{groove(0, "inner"), groove(12, "outer")} }, "hollows-meet",
			[]string{"groove 1", "groove 2", "two faces of the side"}},
	} {
		d := plain(c.form, form.Butt)
		if c.form == form.Steps {
			d.Corners.Joint = form.Housing
		}
		c.change(&d)
		p := model.Derive(d)
		i := slices.IndexFunc(p.Findings, func(f part.Finding) bool { return f.ID == c.id && f.Level == part.Stop })
		if i < 0 {
			t.Errorf("%s: not told: %+v", c.name, p.Findings)
			continue
		}
		for _, say := range c.says {
			if !strings.Contains(strings.ToLower(p.Findings[i].Text), strings.ToLower(say)) {
				t.Errorf("%s: %q does not say %q", c.name, p.Findings[i].Text, say)
			}
		}
	}
}
