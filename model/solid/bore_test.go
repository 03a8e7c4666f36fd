package solid

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

// leaning is a direction down into the board, off square by a radians towards +x.
func leaning(a float64) mgl64.Vec3 { return mgl64.Vec3{math.Sin(a), 0, -math.Cos(a)} }

var through = math.Inf(1)

func TestBores(t *testing.T) {
	const h = 20
	plain := Board{Thickness: h, Outline: block(400, 250, 6*deg, 4*deg)}
	whole := build(t, plain).Volume()
	cyl := func(r, l float64) float64 { return math.Pi * r * r * l }
	end := plain.Outline[1].Plane
	for _, c := range []struct {
		name         string
		entry, axis  mgl64.Vec3
		steps        []Step
		removed      float64
		genus, faces int
	}{
		{"square through", mgl64.Vec3{10, 5, 0}, leaning(0), []Step{{5, through}}, cyl(5, h), 1, 2},
		{"leaning through", mgl64.Vec3{10, 5, 0}, leaning(6 * deg), []Step{{5, through}}, cyl(5, h/math.Cos(6*deg)), 1, 2},
		{"leaning 45 degrees", mgl64.Vec3{10, 5, 0}, leaning(45 * deg), []Step{{5, through}}, cyl(5, h*math.Sqrt2), 1, 2},
		{"from below", mgl64.Vec3{10, 5, -h}, mgl64.Vec3{0, 0, 1}, []Step{{5, through}}, cyl(5, h), 1, 2},
		{"blind, flat bottom", mgl64.Vec3{10, 5, 0}, leaning(6 * deg), []Step{{5, 12}}, cyl(5, 12), 0, 3},
		{"counterbore and clearance", mgl64.Vec3{10, 5, 0}, leaning(6 * deg), []Step{{6, 8}, {2.5, through}},
			cyl(6, 8) + cyl(2.5, h/math.Cos(6*deg)-8), 1, 5},
		{"counterbore, clearance, pilot", mgl64.Vec3{10, 5, 0}, leaning(10 * deg), []Step{{6, 6}, {2.5, 11}, {1.5, 16}},
			cyl(6, 6) + cyl(2.5, 5) + cyl(1.5, 5), 0, 9},
		{"pilot in the leaning end, square to it", mgl64.Vec3{200 + 10*math.Tan(6*deg), 30, -10}, end.N.Mul(-1), []Step{{1.5, 30}}, cyl(1.5, 30), 0, 3},
		{"pilot in the leaning end, along the grain", mgl64.Vec3{200 + 10*math.Tan(6*deg), 30, -10}, mgl64.Vec3{-1, 0, 0}, []Step{{1.5, 30}}, cyl(1.5, 30), 0, 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := plain
			b.Bores = []Bore{{Tag: "screw", Entry: c.entry, Axis: c.axis, Steps: c.steps}}
			s := build(t, b)
			near(t, "removed", whole-s.Volume(), c.removed, 1e-9)
			near(t, "volume", s.Volume(), whole-c.removed, exact)
			if s.Genus() != c.genus || len(s.Faces) != 6+c.faces {
				t.Errorf("genus %d, %d faces", s.Genus(), len(s.Faces))
			}
			m := s.Flatten(1e-3)
			if err := m.Check(); err != nil {
				t.Error(err)
			}
			if d := m.Volume() - s.Volume(); d < 0 || d > 1e-3*2*math.Pi*5*40 {
				t.Errorf("mesh is %g mm³ off", d)
			}
			deep := c.entry.Add(c.axis.Mul(3))
			if s.Contains(deep) || !s.Contains(deep.Add(mgl64.Vec3{0, 7, 0})) {
				t.Error("contains")
			}
		})
	}
}

func TestBoreThroughHousing(t *testing.T) {
	out := block(400, 250, 0, 0)
	b := Board{Thickness: 20, Outline: out,
		Pockets: []Pocket{{Tag: "housing", Depth: 6, Walls: groove(20, 38, out[0], out[2])}},
		Bores:   []Bore{{Tag: "screw", Entry: mgl64.Vec3{28, 0, 0}, Axis: leaning(3 * deg), Steps: []Step{{4, 5}, {2, through}}}}}
	s := build(t, b)
	near(t, "volume", s.Volume(), 400*250*20-18*250*6-math.Pi*(16*5+4*(14/math.Cos(3*deg)-5)), exact)
	if s.Genus() != 1 {
		t.Errorf("genus %d", s.Genus())
	}
}

func TestBoresThatBreakOut(t *testing.T) {
	out := block(400, 250, 6*deg, 0)
	hole := drillHole("hole", 50, 0, 12)
	for _, c := range []struct {
		name string
		bore Bore
		says string
	}{
		{"over the edge of the board", Bore{Entry: mgl64.Vec3{0, -123, 0}, Axis: leaning(0), Steps: []Step{{5, through}}}, "edge"},
		{"beside an opening's edge", Bore{Entry: mgl64.Vec3{50, 15, 0}, Axis: leaning(0), Steps: []Step{{5, 8}}}, "edge"},
		{"into an opening from the side", Bore{Entry: mgl64.Vec3{30, 0, 0}, Axis: leaning(45 * deg), Steps: []Step{{3, 20}}}, "breaks out"},
		{"too deep", Bore{Entry: mgl64.Vec3{0, 0, 0}, Axis: leaning(0), Steps: []Step{{3, 20}}}, "breaks out"},
		{"its bottom's rim comes out", Bore{Entry: mgl64.Vec3{0, 0, 0}, Axis: leaning(20 * deg), Steps: []Step{{6, 20}}}, "breaks out"},
		{"in the end, wider than the board is thick", Bore{Entry: mgl64.Vec3{-200 - 10*math.Tan(6*deg), 0, -10}, Axis: mgl64.Vec3{1, 0, 0}, Steps: []Step{{11, 30}}}, "edge"},
		{"out through two faces", Bore{Entry: mgl64.Vec3{196, 0, 0}, Axis: leaning(14 * deg), Steps: []Step{{2, through}}}, "edge"},
		{"in the air", Bore{Entry: mgl64.Vec3{300, 0, 0}, Axis: leaning(0), Steps: []Step{{2, through}}}, "does not start"},
		{"steps that widen", Bore{Entry: mgl64.Vec3{0, 0, 0}, Axis: leaning(0), Steps: []Step{{2, 5}, {3, 8}}}, "narrower"},
		{"steps that go back", Bore{Entry: mgl64.Vec3{0, 0, 0}, Axis: leaning(0), Steps: []Step{{4, 5}, {3, 4}}}, "deeper"},
		{"through before the last step", Bore{Entry: mgl64.Vec3{0, 0, 0}, Axis: leaning(0), Steps: []Step{{4, through}, {3, 4}}}, "deeper"},
		{"counterbore deeper than the board", Bore{Entry: mgl64.Vec3{0, 0, 0}, Axis: leaning(0), Steps: []Step{{4, 21}, {3, through}}}, "far face"},
		{"floor comes out of the leaning face", Bore{Entry: mgl64.Vec3{0, 0, 0}, Axis: leaning(45 * deg), Steps: []Step{{4, 3}, {3, through}}}, "shallow"},
		{"no steps", Bore{Entry: mgl64.Vec3{0, 0, 0}, Axis: leaning(0)}, "diameter"},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.bore.Tag = "screw 1"
			_, err := Board{Thickness: 20, Outline: out, Openings: []Loop{hole}, Bores: []Bore{c.bore}}.Build()
			var be *BuildError
			if !errors.As(err, &be) || be.Tags[0] != "screw 1" || !strings.Contains(be.Reason, c.says) {
				t.Fatalf("got %v, want a word of %q", err, c.says)
			}
		})
	}
	t.Run("two bores that cross", func(t *testing.T) {
		_, err := Board{Thickness: 20, Outline: out, Bores: []Bore{
			{Tag: "a", Entry: mgl64.Vec3{-200 - 10*math.Tan(6*deg), 0, -10}, Axis: mgl64.Vec3{1, 0, 0}, Steps: []Step{{3, 60}}},
			{Tag: "b", Entry: mgl64.Vec3{-160, 4, 0}, Axis: leaning(0), Steps: []Step{{3, 19}}},
		}}.Build()
		if err == nil {
			t.Fatal("built")
		}
	})
}
