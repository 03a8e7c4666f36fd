package form_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// furnished is a random stool with any of the three joints, a stretcher, screws and openings.
func furnished(t *rapid.T) form.Design {
	d := stool(t)
	size := func(name string, lo, hi float64) measure.Length {
		return measure.Length(rapid.Float64Range(lo, hi).Draw(t, name))
	}
	screws := func(name string) *form.Screws {
		s := &form.Screws{Gauge: rapid.IntRange(4, 10).Draw(t, name+" gauge"), Length: size(name+" length", 60, 80), Count: 2, FromEnd: size(name+" from end", 14, 20)}
		if rapid.Bool().Draw(t, name+" bored deep") {
			s.Counterbore, s.Plug = 4, true
		}
		return s
	}
	if joint := rapid.SampledFrom([]string{form.ThroughDovetail, form.Butt, form.Housing}).Draw(t, "joint"); joint != form.ThroughDovetail {
		d.Corners = form.Corners{Joint: joint, Overhang: size("overhang", 0, 40), OverhangEdges: size("overhang edges", 0, 20), Screws: screws("corner")}
		if rapid.Bool().Draw(t, "flush") {
			d.Corners.Overhang, d.Corners.OverhangEdges = 0, 0
		}
	}
	d.Stretchers = []form.Stretcher{{
		Width: size("stretcher", 40, 70), Thickness: size("its thickness", 16, 24), BelowTop: size("below top", 0, 40),
		Set:    rapid.SampledFrom([]string{form.OnEdge, form.Flat}).Draw(t, "set"),
		Joint:  rapid.SampledFrom([]string{form.Butt, form.Housing}).Draw(t, "stretcher joint"),
		Across: size("across", -20, 20), Screws: screws("stretcher"),
	}}
	d.Features = []form.Feature{
		{On: "side", Kind: "arch", Width: size("arch", 40, 100), Rise: size("rise", 8, 20)},
		{On: "side", Kind: "hole", Diameter: size("hole", 8, 20), X: size("up", 40, 60), Y: size("to the back", -40, 40)},
		{On: "top", Kind: "hand hole", Length: size("grip", 40, 90), Width: size("its width", 10, 28), Angle: measure.Angle(rapid.Float64Range(-1, 1).Draw(t, "turned"))},
	}
	return d
}

// With every joint and opening: solids are closed, each has a hole for every bore and opening that
// goes through, the blank is the box round it, and the two sides are mirror images.
func TestFurnishedStools(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := form.Build(furnished(t))
		if p.Stopped() {
			t.Skip("does not fit: " + p.Findings[0].Text)
		}
		for _, q := range p.Parts {
			if err := q.Solid.Check(); err != nil {
				t.Fatalf("%s: %v", q.ID, err)
			}
			if got, want := q.Solid.Genus(), through(p, q.ID); got != want {
				t.Fatalf("%s: %d holes through, want %d", q.ID, got, want)
			}
			near(t, q.ID+" normals", q.Solid.AreaNormalSum().Len(), 0, 1e-10*q.Solid.Area())
			lo, hi := q.Solid.Bounds()
			for k, size := range []measure.Length{q.Blank.Length, q.Blank.Width, q.Blank.Thickness} {
				near(t, q.ID+" blank", size.MM(), hi[k]-lo[k], lengthNoise)
			}
		}
		l, r := p.Part("side-left"), p.Part("side-right")
		near(t, "volume of the sides", l.Volume, r.Volume, 1e-11*r.Volume)
		boresMirror(t, l, r)
	})
}

func boresMirror(t *rapid.T, l, r *part.Part) {
	if len(l.Bores) != len(r.Bores) {
		t.Fatalf("%d and %d bores", len(l.Bores), len(r.Bores))
	}
	for _, b := range l.Bores {
		least := math.Inf(1)
		for _, c := range r.Bores {
			if c.Purpose == b.Purpose && c.Diameter == b.Diameter {
				off := c.Entry.Sub(mgl64.Vec3{b.Entry[0], -b.Entry[1], b.Entry[2]})
				turn := c.Axis.Sub(mgl64.Vec3{b.Axis[0], -b.Axis[1], b.Axis[2]})
				least = min(least, off.Len()+turn.Len()+math.Abs(float64(c.Depth-b.Depth)))
			}
		}
		near(t, b.ID+" mirrored", least, 0, lengthNoise)
	}
}
