package form_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// In every joint that ends flush, a top and its sides fill the same room: the parts come to one volume, with
// what is glued in. The dovetailed ones are held against another solid library elsewhere. So do those that
// are let in come to what a butted top and its sides do.
func TestCornersOfATopFill(t *testing.T) {
	flush := []string{form.HalfBlindDovetail, form.FingerJoint, form.Mitre, form.SplinedMitre, form.KeyedMitre}
	rapid.Check(t, func(t *rapid.T) {
		size := func(name string, lo, hi float64) measure.Length {
			return measure.Length(rapid.Float64Range(lo, hi).Draw(t, name))
		}
		d := form.Design{Form: rapid.SampledFrom([]string{"stool", form.Steps}).Draw(t, "form"), Timber: "ash"}
		d.Size = form.Size{Height: size("height", 380, 600), Width: size("width", 700, 1000), Depth: size("depth", 240, 400)}
		d.Splay.Ends = measure.Angle(rapid.Float64Range(-6, 25).Draw(t, "ends")) * measure.Degree
		d.Splay.Edges = measure.Angle(rapid.Float64Range(-3, 9).Draw(t, "edges")) * measure.Degree
		d.Splay.EdgeCut = form.EdgeFlush // cut square, edges part from the top's within the corner
		d.Boards.Top.Thickness, d.Boards.Side.Thickness = size("top", 14, 30), size("side", 14, 30)
		d.Corners.TailsOn = rapid.SampledFrom([]string{form.OnTop, form.OnSide}).Draw(t, "tails on")
		of := func(joint string) float64 {
			d.Corners.Joint = joint
			p := form.Build(d)
			if p.Stopped() {
				t.Fatalf("%s: %s", joint, p.Findings[0].Text)
			}
			for _, q := range p.Parts {
				if err := q.Solid.Check(); err != nil {
					t.Fatalf("%s: %s: %v", joint, q.ID, err)
				}
			}
			return volumes(p)
		}
		want := of(form.ThroughDovetail)
		for _, joint := range flush {
			near(t, joint, of(joint), want, 1e-9*want)
		}
		want = of(form.Butt)
		near(t, form.GrooveTongue, of(form.GrooveTongue), want, 1e-9*want)
		near(t, form.Housing, of(form.Housing), want, 1e-9*want)
	})
}

// In shop words: where a top and its sides end in each joint, 400 wide and 10° splayed.
func TestWhereATopEnds(t *testing.T) {
	for _, c := range []struct {
		joint, on string
		top, side float64
	}{
		{form.HalfBlindDovetail, form.OnTop, 400 - 2*20.0/3/cos10, 240 / cos10},
		{form.HalfBlindDovetail, form.OnSide, 400, (240 - 20.0/3) / cos10},
		{form.FingerJoint, form.OnTop, 400, 240 / cos10},
		{form.Mitre, "", 400, 240 / cos10},
		{form.KeyedMitre, "", 400, 240 / cos10},
	} {
		d := formtest.WorkedExample()
		d.Size = form.Size{Height: 240, Width: 400, Depth: 260}
		d.Splay = form.Splay{Ends: 10 * measure.Degree}
		d.Boards.Top.Thickness, d.Boards.Side.Thickness = 20, 20
		d.Corners = form.Corners{Joint: c.joint, TailsOn: c.on}
		p := form.Build(d)
		if p.Stopped() {
			t.Fatalf("%s: %s", c.joint, p.Findings[0].Text)
		}
		for id, want := range map[string]float64{"top": c.top, "side-left": c.side} {
			if got := p.Part(id).FaceLength.Outer.MM(); math.Abs(got-want) > 1e-9 {
				t.Errorf("%s, tails on %q: %s is %.6f long outside, want %.6f", c.joint, c.on, id, got, want)
			}
		}
	}
}

const cos10 = 0.984807753012208 // of 10°
