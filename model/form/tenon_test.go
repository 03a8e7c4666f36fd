package form_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

func volumes(p *form.Piece) float64 {
	sum := 0.0
	for _, q := range p.Parts {
		sum += q.Volume
	}
	return sum
}

// anyTenon is a butted stool of any lean with one stretcher, tenoned anyhow.
func anyTenon(t *rapid.T) form.Design {
	size := func(name string, lo, hi float64) measure.Length {
		return measure.Length(rapid.Float64Range(lo, hi).Draw(t, name))
	}
	lean := rapid.Float64Range(-15, 30).Draw(t, "ends")
	if math.Abs(lean) < 0.001 {
		lean = 0
	}
	d := formtest.WorkedExample()
	d.Size.Height, d.Size.Width = 400, 600
	d.Splay.Ends = measure.Angle(lean) * measure.Degree
	d.Corners = form.Corners{Joint: form.Butt}
	d.Boards.Side.Thickness = size("side", 12, 40)
	s := form.Stretcher{
		Width: size("width", 30, 90), Thickness: size("thickness", 12, 40), BelowTop: size("below top", 20, 150), Across: measure.Length(rapid.IntRange(-40, 40).Draw(t, "across")),
		Set:   rapid.SampledFrom([]string{form.OnEdge, form.Flat}).Draw(t, "set"),
		Joint: rapid.SampledFrom([]string{form.ThroughTenon, form.HousedTenon}).Draw(t, "joint"),
	}
	if rapid.Bool().Draw(t, "sizes typed") {
		s.Tenon = &form.Tenon{
			Width: s.Width * measure.Length(rapid.Float64Range(0.5, 1).Draw(t, "of the width")), Thickness: s.Thickness * measure.Length(rapid.Float64Range(0.3, 0.9).Draw(t, "of the thickness")),
			Proud: size("proud", 0, 6), Flare: size("flare", 0.5, 4), Wedges: new(rapid.IntRange(0, 3).Draw(t, "wedges")),
		}
		if *s.Tenon.Wedges == 0 {
			s.Tenon.Flare = 0
		}
		if s.Joint == form.HousedTenon {
			s.Tenon.Proud, s.Tenon.Flare, s.Tenon.Wedges = 0, 0, nil
		}
	}
	d.Stretchers = []form.Stretcher{s}
	return d
}

// A tenoned stretcher fills its mortises: sides, stretcher and wedges come to what they do with a butted
// one, save what stands proud and the little behind the slots that the wedges do not reach.
func TestTenonsFillTheirMortises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyTenon(t)
		p := form.Build(d)
		if p.Stopped() {
			for _, f := range p.Findings {
				if f.ID != "slots-leave-no-tenon" {
					t.Fatalf("stopped: %s", f.Text)
				}
			}
			t.Skip("no room for the slots")
		}
		for _, q := range p.Parts {
			if err := q.Solid.Check(); err != nil {
				t.Fatalf("%s: %v", q.ID, err)
			}
		}
		plain := d
		plain.Stretchers = []form.Stretcher{d.Stretchers[0]}
		plain.Stretchers[0].Joint, plain.Stretchers[0].Tenon = form.Butt, nil
		want := volumes(form.Build(plain))
		n := p.Design.Stretchers[0].Tenon
		cos := math.Cos(d.Splay.Ends.Radians())
		for _, j := range p.Joints {
			if j.Tenon == nil {
				continue
			}
			want += (n.Proud * n.Width * n.Thickness).MM() / cos
			if w := j.Tenon.Wedges; w != nil {
				high, level := n.Width, n.Thickness
				if d.Stretchers[0].Set == form.Flat {
					high, level = level, high
				}
				_ = high
				want -= w.Gap
				// Past the outer face a wedge goes on widening: the slot's kerf is filled and more.
				long := d.Boards.Side.Thickness.MM() * 0.8 / cos
				out := n.Proud.MM() / cos
				open := n.Flare.MM() / float64(*n.Wedges)
				want += float64(*n.Wedges) * level.MM() * out * (open + open*(out+long)/long)
			}
		}
		near(t, "volume", volumes(p), want, 1e-9*want)
	})
}

// O22 of the open cases: boards 1 in thick that lean 15° have mortises 1/cos 15° = 1.035 in long for each
// inch of tenon, and the two faces' openings lie 0.268 in apart.
// https://tinyshopww.blogspot.com/2023/11/another-step-stool.html
func TestMortiseOfALeaningBoard(t *testing.T) {
	d := formtest.WorkedExample()
	d.Size.Height, d.Splay.Ends = 300, 15*measure.Degree
	d.Boards.Side.Thickness = measure.Inch
	d.Stretchers = []form.Stretcher{{Width: 2 * measure.Inch, Thickness: 20, BelowTop: 60, Joint: form.ThroughTenon,
		Tenon: &form.Tenon{Width: measure.Inch, Wedges: new(0)}}}
	p := form.Build(d)
	if p.Stopped() {
		t.Fatal(p.Findings[0].Text)
	}
	for _, j := range p.Joints {
		if j.Tenon == nil {
			continue
		}
		at := func(z float64, k int) float64 { // along the slope on a face
			w := j.Tenon.Mortise[k]
			return (w.D - w.N[2]*z) / w.N[0]
		}
		in := func(mm float64) float64 { return mm / measure.Inch.MM() }
		thick := d.Boards.Side.Thickness.MM()
		within(t, "long, outer face", in(math.Abs(at(0, 1)-at(0, 3))), 1.035, 5e-4)
		within(t, "long, inner face", in(math.Abs(at(-thick, 1)-at(-thick, 3))), 1.035, 5e-4)
		within(t, "between the faces", in(math.Abs(at(0, 1)-at(-thick, 1))), 0.268, 5e-4)
		within(t, "lean of the shoulders", j.Tenon.Lean.Degrees(), 15, 1e-9)
	}
}

// The mortise's openings are in the solid where the figures say, on both faces.
func TestMortiseIsWhereItsFiguresSay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := form.Build(anyTenon(t))
		if p.Stopped() {
			t.Skip("no room for the slots")
		}
		for _, j := range p.Joints {
			if j.Tenon == nil {
				continue
			}
			q := p.Part(j.TailBoard)
			levels := []float64{-q.Blank.Thickness.MM()}
			if j.Kind == form.ThroughTenon {
				levels = append(levels, 0)
			}
			for _, z := range levels {
				for i := range 4 {
					at, ok := threeMeet(j.Tenon.Mortise[i], j.Tenon.Mortise[(i+1)%4], solid.Plane{N: mgl64.Vec3{0, 0, 1}, D: z})
					if !ok || !hasVertex(q, at) {
						t.Fatalf("%s: no corner of the mortise at %v", q.ID, at)
					}
				}
			}
		}
	})
}

func threeMeet(a, b, c solid.Plane) (mgl64.Vec3, bool) {
	m := mgl64.Mat3FromRows(a.N, b.N, c.N)
	if math.Abs(m.Det()) < 1e-6 {
		return mgl64.Vec3{}, false
	}
	return m.Inv().Mul3x1(mgl64.Vec3{a.D, b.D, c.D}), true
}

func hasVertex(q *part.Part, at mgl64.Vec3) bool {
	for _, v := range q.Solid.Vertices {
		if v.Sub(at).Len() < 1e-7 {
			return true
		}
	}
	return false
}

// Tenons that cannot be, each with its reason; and two odd ones that can.
func TestTenonMuseum(t *testing.T) {
	for name, c := range map[string]struct {
		s  form.Stretcher
		id string
	}{
		"as wide as the stretcher": {form.Stretcher{Joint: form.ThroughTenon, Tenon: &form.Tenon{Width: 60}}, ""},
		"as thick as it too":       {form.Stretcher{Joint: form.ThroughTenon, Tenon: &form.Tenon{Width: 60, Thickness: 20}}, ""},
		"wider":                    {form.Stretcher{Joint: form.ThroughTenon, Tenon: &form.Tenon{Width: 61}}, "tenon-out-of-the-stretcher"},
		"thicker":                  {form.Stretcher{Joint: form.HousedTenon, Tenon: &form.Tenon{Thickness: 21}}, "tenon-out-of-the-stretcher"},
		"less than nothing":        {form.Stretcher{Joint: form.HousedTenon, Tenon: &form.Tenon{Width: -5}}, "tenon-out-of-the-stretcher"},
		"housed right through":     {form.Stretcher{Joint: form.HousedTenon, Tenon: &form.Tenon{Depth: 20}}, "tenon-through"},
		"hollow instead of proud":  {form.Stretcher{Joint: form.ThroughTenon, Tenon: &form.Tenon{Proud: -1}}, "tenon-below-nothing"},
		"a flare for nothing":      {form.Stretcher{Joint: form.ThroughTenon, Tenon: &form.Tenon{Wedges: new(0), Flare: 1}}, "flare-without-wedges"},
		"a dozen wedges":           {form.Stretcher{Joint: form.ThroughTenon, Tenon: &form.Tenon{Wedges: new(12)}}, "wedge-count"},
		"slots that eat it up":     {form.Stretcher{Joint: form.ThroughTenon, Tenon: &form.Tenon{Wedges: new(3), Slot: 9}}, "slots-leave-no-tenon"},
		"screws besides":           {form.Stretcher{Joint: form.ThroughTenon, Screws: &form.Screws{Gauge: 8, Length: 40, Count: 2}}, "screws-with-tenon"},
		"no joint for it":          {form.Stretcher{Joint: form.Butt, Tenon: &form.Tenon{}}, "tenon-without-joint"},
	} {
		t.Run(name, func(t *testing.T) {
			d := formtest.WorkedExample()
			c.s.Width, c.s.Thickness, c.s.BelowTop = 60, 20, 40
			d.Stretchers = []form.Stretcher{c.s}
			p := form.Build(d)
			got := ""
			for _, f := range p.Findings {
				got = f.ID
			}
			if got != c.id {
				t.Errorf("found %q, want %q: %+v", got, c.id, p.Findings)
			}
		})
	}
}

// Driven home the wedges spread the tenon into the mouth of its mortise: on the outer face tenon, less its slots, and
// wedges are as high as the mortise, and nowhere on the way in are they higher, so that nothing is crushed. Heights are
// read from the solids and the mortise's planes, at stations from the slots' roots to the outer face.
func TestDrivenWedgesFillTheMouth(t *testing.T) {
	seen := 0
	rapid.Check(t, func(t *rapid.T) {
		d := anyTenon(t)
		p := form.Build(d)
		if p.Stopped() {
			t.Skip("no room for the slots")
		}
		n := p.Design.Stretchers[0].Tenon
		high := n.Width.MM()
		if d.Stretchers[0].Set == form.Flat {
			high = n.Thickness.MM()
		}
		for _, j := range p.Joints {
			if j.Tenon == nil || j.Tenon.Wedges == nil {
				continue
			}
			seen++
			side := p.Part(j.TailBoard)
			outer := solid.Plane{N: mgl64.Vec3{0, 0, 1}}.Transform(side.Place)
			for _, share := range []float64{0.2, 0.4, 0.7, 1} { // of the way from the inner face to the outer
				station := outer
				station.D -= side.Blank.Thickness.MM() * (1 - share)
				mouth := heightAt(j.Tenon.Mortise[3].Transform(side.Place), station) - heightAt(j.Tenon.Mortise[1].Transform(side.Place), station)
				driven := high
				for _, id := range j.Tenon.Wedges.Parts {
					w := p.Part(id)
					var lower, upper float64
					for _, c := range w.Cuts {
						plane := solid.Plane{N: c.Normal, D: c.Offset}.Transform(w.Place)
						switch {
						case c.Kind == part.Rip && plane.N[2] < 0:
							lower = heightAt(plane, station)
						case c.Kind == part.Rip:
							upper = heightAt(plane, station)
						}
					}
					driven += upper - lower - n.Slot.MM()
				}
				if share == 1 {
					near(t, "height on the outer face", driven, mouth, 1e-9*mouth)
				}
				if driven > mouth+1e-9 {
					t.Fatalf("at %g of the way out tenon and wedges are %.6f high in a mortise of %.6f", share, driven, mouth)
				}
			}
		}
	})
	if seen < 20 {
		t.Errorf("only %d wedged tenons", seen)
	}
}

// heightAt is where a plane and a station cross, above the floor in the middle of the piece.
func heightAt(a, station solid.Plane) float64 {
	p, _ := threeMeet(a, station, solid.Plane{N: mgl64.Vec3{0, 1, 0}})
	return p[2]
}
