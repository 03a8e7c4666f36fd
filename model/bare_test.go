package model_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// shapes of designs that nobody would build: every form and joint with screws, stretchers, bottoms and shapes of any size,
// anywhere.
type shapes struct{ *rand.Rand }

func (r shapes) l(lo, hi float64) measure.Length {
	return measure.Length(lo + (hi-lo)*r.Float64())
}

func (r shapes) pick(words ...string) string { return words[r.IntN(len(words))] }

func (r shapes) design(name string) form.Design {
	d := plain(name, r.pick(jointsOf(name)...))
	d.Splay.Ends = measure.Angle(r.IntN(30)-8) * measure.Degree
	if r.IntN(3) == 0 && d.Corners.Joint != form.Mitre {
		d.Corners.Screws = &form.Screws{Gauge: 4 + 2*r.IntN(5), Length: r.l(20, 70), Count: 1 + r.IntN(4), FromEnd: r.l(3, 60), Counterbore: r.l(0, 9)}
	}
	if r.IntN(4) == 0 {
		shoulder, depth := r.l(0, 12), r.l(1, 17)
		d.Corners.Stop, d.Corners.Shoulder, d.Corners.Depth = r.l(0, 60), &shoulder, &depth
	}
	on := []string{"side", "top"}
	if form.OnSides(name) {
		d.Splay.Edges = measure.Angle(r.IntN(16)-4) * measure.Degree
		for range r.IntN(3) {
			d.Stretchers = append(d.Stretchers, r.stretcher())
		}
	} else {
		on = map[bool][]string{true: {"stave-1", "side"}, false: {"front", "end", "side"}}[name == "ring"]
		if r.IntN(2) == 0 {
			d.Bottom = &form.Bottom{Thickness: r.l(4, 14), Joint: r.pick(form.InGroove, form.InRabbet, form.ScrewedOn)}
		}
	}
	for range r.IntN(4) {
		d.Features = append(d.Features, form.Feature{
			On: r.pick(on...), Kind: r.pick("arch", "hand hole", "slot", "hole", "groove", "notch", "chamfer", "round-over", "taper", "ogee"),
			X: r.l(-150, 150), Y: r.l(-80, 80), Width: r.l(5, 160), Rise: r.l(4, 60), Length: r.l(20, 180), Depth: r.l(2, 20), Diameter: r.l(4, 40), Radius: r.l(1, 10),
		})
	}
	return d
}

func (r shapes) stretcher() form.Stretcher {
	s := form.Stretcher{Width: r.l(20, 90), Thickness: r.l(8, 30), BelowTop: r.l(0, 200), Across: r.l(-90, 90), Joint: r.pick(form.StretcherJoints()...), Set: r.pick(form.OnEdge, form.Flat)}
	switch s.Joint {
	case form.Housing:
		s.Depth = r.l(2, 14)
	case form.Butt:
		s.Screws = &form.Screws{Gauge: 8, Length: r.l(30, 60), Count: 1 + r.IntN(3), FromEnd: r.l(3, 30)}
	}
	return s
}

// A board that cannot be cut is never told so barely: the finding says which two things meet and where, or which edge is run
// over, and what would do.
func TestNoBoardIsBarelyUncut(t *testing.T) {
	r := shapes{rand.New(rand.NewPCG(3, 14))}
	told := 0
	for n := range 1200 {
		name := form.Forms()[n%len(form.Forms())]
		p := model.Derive(r.design(name))
		for _, f := range p.Findings {
			if f.ID != part.CannotBeCut {
				continue
			}
			told++
			says := func(words string) bool { return strings.Contains(f.Text, words) }
			if !(says(" runs ") || says(" is cut off by ") || says(" cuts through ")) || !says("move ") || !says("smaller") && !says("shallower") || len(f.Sizes) == 0 {
				t.Errorf("%s, %s: %s", name, p.Design.Corners.Joint, f.Text)
			}
		}
	}
	if told < 5 {
		t.Errorf("only %d boards could not be cut", told)
	}
}

// Stretchers of every joint at the edge of sense, under each form that has them: built, or stopped by what is wrong.
func TestStretcherMuseum(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*form.Design)
		ids    []string
	}{
		"as it is": {func(*form.Design) {}, nil},
		"no splay": {func(d *form.Design) { d.Splay = form.Splay{} }, nil},
		"45 degrees": {func(d *form.Design) {
			d.Splay.Ends = 45 * measure.Degree
			d.Size.Height, d.Size.LowerHeight, d.Size.Width = 200, 100, 900
		}, []string{"taper-into-joint", "screw-comes-out", "counterbore-shallow"}},
		"as thick as the depth": {func(d *form.Design) { d.Stretchers[0].Thickness = d.Size.Depth }, nil},
		"above the top":         {func(d *form.Design) { d.Stretchers[0].BelowTop = -5 }, []string{"stretcher-in-the-top"}},
		"past the edge":         {func(d *form.Design) { d.Stretchers[0].Across = 400 }, []string{"stretcher-past-edge", "screw-over-edge", "mortise-through-edge"}},
		"under the floor":       {func(d *form.Design) { d.Stretchers[0].BelowTop = 900 }, []string{"stretcher-below-floor", "stretcher-past-floor"}},
		"no width":              {func(d *form.Design) { d.Stretchers[0].Width = 0 }, []string{"size-not-above-nothing"}},
	} {
		for _, f := range []string{"stool", form.Steps} {
			for _, joint := range form.StretcherJoints() {
				d := plain(f, form.Butt)
				s := form.Stretcher{Width: 50, Thickness: 18, BelowTop: 30, Joint: joint}
				if joint == form.Housing {
					s.Depth = 6
				}
				if joint == form.Butt {
					s.Screws = &form.Screws{Gauge: 8, Length: 50, Count: 2, FromEnd: 14}
				}
				d.Stretchers = []form.Stretcher{s}
				c.change(&d)
				exhibit(t, name+", "+f+", "+joint, model.Derive(d), c.ids)
			}
		}
	}
}
