package motion_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/motion"
	"splaywright/model/part"
)

func built(t testing.TB, d form.Design) *form.Piece {
	t.Helper()
	p := form.Build(d)
	if p.Stopped() {
		t.Fatalf("the design is stopped: %+v", p.Findings)
	}
	p.Assembly = motion.Assemble(p)
	return p
}

// rail gives the worked example a stretcher.
func rail(ends measure.Angle, tailsOn, joint string) form.Design {
	d := formtest.WorkedExample()
	d.Splay.Ends = ends * measure.Degree
	d.Corners.TailsOn = tailsOn
	d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, BelowTop: 40, Joint: joint, Depth: 6}}
	return d
}

// How a woodworker would put each together.
func TestAssemblyInShopWords(t *testing.T) {
	for name, c := range map[string]struct {
		d      form.Design
		atOnce bool
		stuck  bool
	}{
		"dovetailed, leaning: a side at a time along its slope":  {d: formtest.WorkedExample()},
		"butted stretcher comes in from below":                   {d: rail(6, "top", "butt")},
		"housed stretcher: all close at once":                    {d: rail(6, "top", "housing"), atOnce: true},
		"housed stretcher, tails on the sides: all at once":      {d: rail(0, "side", "housing")},
		"housed stretcher, upright: the top comes last":          {d: rail(0, "top", "housing")},
		"housed stretcher, sides that lean in open as they rise": {d: rail(-6, "top", "housing"), stuck: true},
		"butted top":        {d: formtest.Butt()},
		"top with housings": {d: formtest.Housing()},
		"everything":        {d: formtest.Full(), atOnce: true},
	} {
		t.Run(name, func(t *testing.T) {
			p := built(t, c.d)
			atOnce := false
			for _, m := range p.Assembly.Moves {
				atOnce = atOnce || m.AtOnce()
			}
			if atOnce != c.atOnce {
				t.Errorf("all at once: %t, want %t: %+v", atOnce, c.atOnce, p.Assembly)
			}
			f, stuck := motion.Finding(p)
			if stuck != c.stuck {
				t.Fatalf("stuck: %t, want %t: %+v", stuck, c.stuck, p.Assembly)
			}
			if stuck {
				if f.Level != part.Stop || len(f.Parts) != 4 || len(f.Sizes) == 0 {
					t.Errorf("%+v", f)
				}
				return
			}
			everyPartGoesHomeOnce(t, p)
		})
	}
}

func everyPartGoesHomeOnce(t testing.TB, p *form.Piece) {
	t.Helper()
	seen := map[string]int{}
	for _, id := range p.Assembly.First {
		seen[id]++
	}
	for _, m := range p.Assembly.Moves {
		for _, id := range m.Onto {
			if len(m.Parts) == 1 && seen[id] == 0 {
				t.Errorf("%s is moved onto %s, which is not there yet", m.Parts, id)
			}
		}
		for _, id := range m.Parts {
			seen[id]++
		}
	}
	for _, q := range p.Parts {
		if seen[q.ID] == 0 {
			t.Errorf("%s never goes home: %+v", q.ID, p.Assembly)
		}
	}
}

// A piece that could not be cut has nothing to put together.
func TestNothingGoesTogetherFromNothing(t *testing.T) {
	d := formtest.WorkedExample()
	many := 300
	d.Corners.Tails = &many
	if a := motion.Assemble(form.Build(d)); len(a.First)+len(a.Moves)+len(a.Stuck) > 0 {
		t.Errorf("%+v", a)
	}
	if a := motion.Assemble(&form.Piece{}); len(a.First) > 0 {
		t.Errorf("%+v", a)
	}
}

// Open case "Splay leg stool assembly", http://granitemountainwoodcraft.com/category/splay-leg-stool/ :
// the legs travel 2 for each 1 that the rail closes when 4·tan(splay) = 1, at 14.04°.
func TestTravelOfLegsAndRail(t *testing.T) {
	p := built(t, rail(measure.Angle(math.Atan(0.25)*180/math.Pi), "top", "housing"))
	for _, m := range p.Assembly.Moves {
		if !m.AtOnce() {
			continue
		}
		ways := map[string]mgl64.Vec3{}
		for i, id := range m.Parts {
			ways[id] = m.Ways[i]
		}
		left, right := ways["side-left"], ways["side-right"]
		closes := left.Sub(right)[0]
		if got := left[2] / closes; math.Abs(got-2) > 1e-9 {
			t.Errorf("the sides rise %.6f for each 1 that they close, want 2", got)
		}
		if r := ways["stretcher-1"]; math.Abs(r[2]-left[2]) > 1e-9 {
			t.Errorf("the stretcher rises %.6f, the sides %.6f", r[2], left[2])
		}
		return
	}
	t.Fatalf("nothing moves at once: %+v", p.Assembly)
}

// Drawn off the way it came, a part is clear of the others at every station: no point of its surface
// lies inside another's wood, nor the other way round. An independent route: solids and points, where
// the plan looks at faces that touch only.
func TestWaysAreFree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := formtest.WorkedExample()
		d.Splay.Ends = measure.Angle(rapid.Float64Range(0, 25).Draw(t, "ends")) * measure.Degree
		d.Splay.Edges = measure.Angle(rapid.Float64Range(-4, 10).Draw(t, "edges")) * measure.Degree
		d.Corners.TailsOn = rapid.SampledFrom([]string{"top", "side"}).Draw(t, "tails on")
		joint := rapid.SampledFrom([]string{"", "butt", "housing", "through tenon", "housed tenon"}).Draw(t, "stretcher")
		if joint != "" {
			d.Stretchers = []form.Stretcher{{Width: 50, Thickness: 20, BelowTop: 30, Joint: joint, Depth: 6}}
		}
		p := form.Build(d)
		if p.Stopped() {
			t.Skip("stopped: " + p.Findings[0].Text)
		}
		p.Assembly = motion.Assemble(p)
		for _, m := range p.Assembly.Moves {
			if p.Part(m.Parts[0]).Slip != part.Wedge { // a wedge drives the tenon apart
				provedFree(t, p, m)
			}
		}
		if len(p.Assembly.Stuck) > 0 {
			t.Fatalf("stuck: %v", p.Assembly.Stuck)
		}
	})
}

func provedFree(t *rapid.T, p *form.Piece, m form.Move) {
	place := func(id string, back float64) mgl64.Mat4 {
		for i, moving := range m.Parts {
			if moving == id {
				w := m.Ways[i].Mul(-back)
				return mgl64.Translate3D(w[0], w[1], w[2]).Mul4(p.Part(id).Place)
			}
		}
		return p.Part(id).Place
	}
	all := append(append([]string{}, m.Parts...), m.Onto...)
	for _, back := range []float64{0.3, 2, 7, 19, 60} {
		for _, a := range m.Parts {
			for _, b := range all {
				if a == b {
					continue
				}
				if at, hits := strikes(p.Part(a), place(a, back), p.Part(b), place(b, back)); hits {
					t.Fatalf("%s is %.4g mm from home and strikes %s at %.4v", a, back, b, at)
				}
				if at, hits := strikes(p.Part(b), place(b, back), p.Part(a), place(a, back)); hits {
					t.Fatalf("%s is %.4g mm from home and is struck by %s at %.4v", a, back, b, at)
				}
			}
		}
	}
}

// strikes looks for a point well inside the wood of both: the corners of the one, drawn a little
// towards its middle along its edges, in the other.
func strikes(a *part.Part, placeA mgl64.Mat4, b *part.Part, placeB mgl64.Mat4) (mgl64.Vec3, bool) {
	const deep = 0.05
	into := part.Back(placeB)
	for _, e := range a.Solid.Edges {
		from, to := a.Solid.Vertices[e.From], a.Solid.Vertices[e.To]
		mid := from.Add(to).Mul(0.5)
		inward := a.Solid.Faces[e.Left].Plane.N.Add(a.Solid.Faces[e.Right].Plane.N).Mul(-1)
		if inward.Len() < 0.1 || a.Solid.Faces[e.Left].Round != nil || a.Solid.Faces[e.Right].Round != nil {
			continue
		}
		local := mid.Add(inward.Normalize().Mul(deep))
		if !a.Solid.Contains(local) {
			continue
		}
		at := placeA.Mul4x1(local.Vec4(1)).Vec3()
		there := into.Mul4x1(at.Vec4(1)).Vec3()
		if b.Solid.Contains(there) && deepIn(b, there) {
			return at, true
		}
	}
	return mgl64.Vec3{}, false
}

// deepIn tells whether a point is in the wood with some of it all round, so that faces that only
// touch do not count.
func deepIn(b *part.Part, p mgl64.Vec3) bool {
	const round = 1e-4
	for k := range 3 {
		var d mgl64.Vec3
		d[k] = round
		if !b.Solid.Contains(p.Add(d)) || !b.Solid.Contains(p.Sub(d)) {
			return false
		}
	}
	return true
}

// The habit from square corners jams: off square, a side driven square to the top's face strikes it.
func TestTheSquareHabitJams(t *testing.T) {
	p := built(t, formtest.WorkedExample())
	if !motion.Free(p.Part("side-right"), p.Part("top"), p.Assembly.Moves[0].Ways[0].Mul(-1)) &&
		!motion.Free(p.Part("side-left"), p.Part("top"), p.Assembly.Moves[0].Ways[0].Mul(-1)) {
		t.Error("the planned way is not free")
	}
	if motion.Free(p.Part("side-right"), p.Part("top"), mgl64.Vec3{0, 0, -1}) {
		t.Error("straight down was said to be free at 6°")
	}
	if !motion.Free(p.Part("side-right"), p.Part("top"), mgl64.Vec3{math.Sin(6 * math.Pi / 180), 0, -math.Cos(6 * math.Pi / 180)}) {
		t.Error("along the side's grain was said to be blocked")
	}
}

func BenchmarkAssemble(b *testing.B) {
	for name, d := range map[string]form.Design{"example": formtest.WorkedExample(), "everything": formtest.Full()} {
		p := form.Build(d)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				motion.Assemble(p)
			}
		})
	}
}
