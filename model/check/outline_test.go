package check

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/part"
)

// apartClosed are pairs whose distance is known in closed form.
func TestApartClosedForms(t *testing.T) {
	square := polygon{{0, 0}, {10, 0}, {10, 10}, {0, 10}}
	for name, c := range map[string]struct {
		a, b shape
		want float64
	}{
		"two holes side by side":       {disc{mgl64.Vec2{0, 0}, 5}, disc{mgl64.Vec2{30, 40}, 10}, 35},
		"two holes that overlap":       {disc{mgl64.Vec2{0, 0}, 5}, disc{mgl64.Vec2{3, 4}, 10}, -10},
		"hole beside a slot's end":     {disc{mgl64.Vec2{50, 0}, 5}, capsule{mgl64.Vec2{0, 0}, mgl64.Vec2{20, 0}, 4}, 21},
		"hole beside a slot's flank":   {disc{mgl64.Vec2{10, 30}, 5}, capsule{mgl64.Vec2{0, 0}, mgl64.Vec2{20, 0}, 4}, 21},
		"hole beside a square's side":  {disc{mgl64.Vec2{5, 20}, 4}, square, 6},
		"hole at a square's corner":    {disc{mgl64.Vec2{13, 14}, 2}, square, 3},
		"hole inside a square":         {disc{mgl64.Vec2{5, 8}, 1}, square, -3},
		"squares overlapping by three": {square, polygon{{7, 0}, {17, 0}, {17, 10}, {7, 10}}, -3},
	} {
		got, n := apart(c.a, c.b)
		if math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%s: %.9f apart, want %.9f", name, got, c.want)
		}
		if back, _ := apart(c.b, c.a); math.Abs(back-got) > 1e-6 {
			t.Errorf("%s: %.9f one way, %.9f the other", name, got, back)
		}
		if math.Abs(n.Len()-1) > 1e-12 {
			t.Errorf("%s: direction %v is not of length 1", name, n)
		}
	}
}

// contains is the second route: whether a point lies in a feature, from its definition.
func contains(f part.Feature, p mgl64.Vec2) bool {
	d := p.Sub(f.Centre)
	sin, cos := math.Sincos(-f.Angle.Radians())
	d = mgl64.Vec2{cos*d[0] - sin*d[1], sin*d[0] + cos*d[1]}
	l, w := f.Length.MM(), f.Width.MM()
	switch f.Kind {
	case part.Hole:
		return d.Len() <= l/2
	case part.Arch:
		radius := (l*l/4 + w*w) / (2 * w)
		return d[0] <= 1e-9 && d.Sub(mgl64.Vec2{radius - w, 0}).Len() <= radius+1e-9
	}
	along := math.Max(0, math.Abs(d[0])-(l/2-w/2))
	return math.Hypot(along, d[1]) <= w/2
}

func drawFeature(t *rapid.T, label string) part.Feature {
	f := part.Feature{
		Kind:   rapid.SampledFrom([]part.FeatureKind{part.Hole, part.Slot, part.HandHole, part.Arch}).Draw(t, label+" kind"),
		Centre: mgl64.Vec2{rapid.Float64Range(-60, 60).Draw(t, label+" x"), rapid.Float64Range(-60, 60).Draw(t, label+" y")},
		Angle:  measureAngle(rapid.Float64Range(-180, 180).Draw(t, label+" angle")),
		Length: measureLength(rapid.Float64Range(20, 80).Draw(t, label+" length")),
	}
	f.Width = f.Length * measureLength(rapid.Float64Range(0.1, 0.5).Draw(t, label+" share"))
	if f.Kind == part.Hole {
		f.Width = f.Length
	}
	return f
}

// The support of an outline is the farthest of the points that lie in the feature.
func TestSupportAgainstPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFeature(t, "feature")
		s, ok := outline(f)
		if !ok {
			t.Fatal("no outline")
		}
		n := direction(rapid.Float64Range(0, 2*math.Pi).Draw(t, "direction"))
		far := math.Inf(-1)
		const grid = 120 // in the feature's own frame, so that the ends of a chord are among the points
		size := f.Length.MM()
		across := mgl64.Vec2{-direction(f.Angle.Radians())[1], direction(f.Angle.Radians())[0]}
		for i := range grid + 1 {
			for j := range grid + 1 {
				p := f.Centre.Add(direction(f.Angle.Radians()).Mul((float64(i)/grid - 0.5) * 2 * size)).Add(across.Mul((float64(j)/grid - 0.5) * 2 * size))
				if contains(f, p) {
					far = math.Max(far, n.Dot(p))
				}
			}
		}
		cell := 2 * size / grid
		if got := s.support(n); got < far-1e-9 || got > far+3*cell {
			t.Fatalf("support %.4f, the farthest point of a grid of %.3f mm %.4f (%+v)", got, cell, far, f)
		}
	})
}

// Moving one of two outlines by the distance told, in the direction told, makes them touch.
func TestApartIsTheWayToTouch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, g := drawFeature(t, "first"), drawFeature(t, "second")
		a, _ := outline(f)
		b, _ := outline(g)
		gap, n := apart(a, b)
		f.Centre = f.Centre.Add(n.Mul(gap))
		moved, _ := outline(f)
		if left, _ := apart(moved, b); math.Abs(left) > 1e-4 {
			t.Fatalf("%.6f apart; after moving by that, %.6f are left", gap, left)
		}
	})
}

// The quick look never says that two outlines are farther apart than they are.
func TestFartherIsNeverWrong(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, _ := outline(drawFeature(t, "first"))
		b, _ := outline(drawFeature(t, "second"))
		gap, _ := apart(a, b)
		if than := gap + 1e-6; farther(a, b, than) {
			t.Fatalf("%.6f apart, but told to be farther than %.6f", gap, than)
		}
		if than := gap - 20; gap > 40 && !farther(a, b, than/2) {
			t.Fatalf("%.6f apart, and not even half of that was seen", gap)
		}
	})
}

// Where two outlines are apart no point is in both; where they overlap by more than a grid's
// cell, one is.
func TestApartAgainstPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, g := drawFeature(t, "first"), drawFeature(t, "second")
		a, _ := outline(f)
		b, _ := outline(g)
		gap, _ := apart(a, b)
		both := false
		const grid = 150
		for i := range grid + 1 {
			for j := range grid + 1 {
				p := f.Centre.Add(mgl64.Vec2{(float64(i)/grid - 0.5) * 2.2 * f.Length.MM(), (float64(j)/grid - 0.5) * 2.2 * f.Length.MM()})
				both = both || contains(f, p) && contains(g, p)
			}
		}
		cell := 2.2 * f.Length.MM() / grid
		if both && gap > 1e-9 {
			t.Fatalf("a point lies in both, but they are told to be %.4f apart", gap)
		}
		if !both && gap < -4*cell {
			t.Fatalf("no point lies in both, but they are told to overlap by %.4f", -gap)
		}
	})
}

func BenchmarkApart(b *testing.B) {
	s, _ := outline(part.Feature{Kind: part.Arch, Length: 150, Width: 45})
	hole := disc{mgl64.Vec2{-80, 10}, 12}
	for b.Loop() {
		apart(s, hole)
	}
}
