package hold_test

import (
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
)

// onCircle are n feet evenly round a circle.
func onCircle(n int, radius float64) []mgl64.Vec2 {
	var out []mgl64.Vec2
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out = append(out, mgl64.Vec2{radius * cos, radius * sin})
	}
	return out
}

// Feet on a circle: the nearest edge of their outline is cos(180/n) of its radius away, 0.500 for three and 0.707 for
// four; to be safe under any load on a round top they stand on 2.0 and 1.414 of its radius. Arithmetic to the question
// of https://www.ukworkshop.co.uk/threads/simple-side-table-lessons-learned.121466/ and
// http://lumberjocks.com/topics/255953 .
func TestHowFarFeetMustReach(t *testing.T) {
	for n, c := range map[int]struct{ edge, wide float64 }{3: {0.500, 2.0}, 4: {0.707, 1.414}} {
		within := func(feet []mgl64.Vec2) float64 { return minOf(hold.Inside(feet, mgl64.Vec2{})) }
		near(t, "nearest edge", within(onCircle(n, 1)), c.edge, 0.0005)
		near(t, "safe anywhere", within(onCircle(n, c.wide)), 1, 0.0005)
		// A load on the rim over the middle of an edge, own weight 1 in the middle: it lifts at edge/(1 − edge).
		middle := onCircle(n, 1)[0].Add(onCircle(n, 1)[1]).Normalize()
		out := -minOf(hold.Inside(onCircle(n, 1), middle))
		near(t, "lifts on the rim", hold.LiftsAt(out, 1, c.edge), c.edge/(1-c.edge), 0.005)
	}
}

func minOf(all []float64) float64 {
	least := math.Inf(1)
	for _, x := range all {
		least = min(least, x)
	}
	return least
}

// A bench of 48 in that weighs 40 lb under 180 lb at its very end: its feet stand 4.36 in inside, at most. The moments
// are those of https://dev.popularwoodworking.com/projects/workbenches-balancing-the-base-and-top .
func TestScaledBenchTips(t *testing.T) {
	const w, load, long = 40., 180., 48.
	near(t, "at 4.36 in", hold.LiftsAt(4.36, w, long/2-4.36), load, 0.3)
	near(t, "on the line", 1/hold.LiftsAt(0, w, long/2), 0, 0)
}

// The outline of what stands on the floor is read off the solids, and is the rectangle that the sizes say. A top that
// hangs over loses the load that statics says; one that does not stands under any.
func TestOutlineOfTheFeet(t *testing.T) {
	d := formtest.Housing()
	d.Splay.Ends, d.Splay.Edges, d.Features, d.Corners.Overhang, d.Corners.OverhangEdges = 0, 0, nil, 80, 0
	p := form.Build(d)
	feet := hold.Feet(p)
	if len(feet) != 4 {
		t.Fatalf("%d corners: %v", len(feet), feet)
	}
	for _, in := range hold.Inside(feet, mgl64.Vec2{}) {
		if half := d.Size.Width.MM() / 2; math.Abs(in-half) > 1e-6 && math.Abs(in-d.Size.Depth.MM()/2) > 1e-6 {
			t.Errorf("an edge %.3f from the middle; half the width is %.3f, half the depth %.3f", in, half, d.Size.Depth.MM()/2)
		}
	}
	f := figure(t, d, "lifts-at-edge")
	near(t, "lifts", f.Value, p.Overall.Mass*9.80665*d.Size.Width.MM()/2/80, 1e-6)
	if !f.Over() || !strings.Contains(f.What, "80.0 mm outside") {
		t.Errorf("%+v", f)
	}
	d.Corners.Overhang = 0
	for _, f := range hold.Figures(form.Build(d)) {
		if f.ID == "lifts-at-edge" {
			t.Errorf("feet as wide as the top, and %s", f.What)
		}
	}
}
