package form_test

import (
	"math"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Tolerances of the properties.
const (
	volumeNoise = 1e-12 // of the volume
	lengthNoise = 1e-9  // mm
	angleNoise  = 1e-9  // rad
)

func near(t *rapid.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Fatalf("%s: %.15g, want %.15g", what, got, want)
	}
}

// Tails and pins fill the corner: the parts together are as large as the top and the sides
// would be if one of them ran through.
func TestCornersAreFilled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, p := built(t)
		g := geoOf(d)
		want := g.topVolume(g.side) + 2*g.sideVolume(g.h)
		if d.Corners.TailsOn == form.OnSide {
			want = g.topVolume(0) + 2*g.sideVolume(g.h-g.top)
		}
		sum := 0.0
		for _, q := range p.Parts {
			sum += q.Volume
		}
		near(t, "volume", sum, want, volumeNoise*want)
	})
}

// A point in a corner lies in one board only, and a point of the corner's core in one for sure.
func TestPointsLieInOneBoard(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, p := built(t)
		g := geoOf(d)
		for range 40 {
			u := func(name string) float64 { return rapid.Float64Range(1e-4, 1-1e-4).Draw(t, name) }
			down, in := g.top*u("down"), g.side*u("in")
			y := (2*u("along") - 1) * g.d / 2
			if math.Abs(y) > g.d/2-2*(down+g.side)*math.Abs(math.Tan(g.b)) {
				continue // where the edges of the two boards part
			}
			x := g.w/2 + down*math.Tan(g.a) - in/math.Cos(g.a)
			at, boards := mgl64.Vec3{x, y, g.h - down}, 0
			for _, q := range p.Parts {
				if q.Solid.Contains(local(q, at)) {
					boards++
				}
			}
			if boards != 1 {
				t.Fatalf("%v lies in %d boards", at, boards)
			}
		}
	})
}

func local(q *part.Part, world mgl64.Vec3) mgl64.Vec3 {
	return part.Back(q.Place).Mul4x1(world.Vec4(1)).Vec3()
}

func TestSolidsAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p := built(t)
		for _, q := range p.Parts {
			if err := q.Solid.Check(); err != nil {
				t.Fatalf("%s: %v", q.ID, err)
			}
			if q.Solid.Genus() != 0 {
				t.Fatalf("%s: %d holes", q.ID, q.Solid.Genus())
			}
			near(t, q.ID+" normals", q.Solid.AreaNormalSum().Len(), 0, 1e-12*q.Solid.Area())
			lo, hi := mgl64.Vec3{1e9, 1e9, 1e9}, mgl64.Vec3{-1e9, -1e9, -1e9}
			for _, v := range q.Solid.Vertices {
				for k := range 3 {
					lo[k], hi[k] = min(lo[k], v[k]), max(hi[k], v[k])
				}
			}
			size := hi.Sub(lo)
			near(t, q.ID+" length", q.Blank.Length.MM(), size[0], lengthNoise)
			near(t, q.ID+" width", q.Blank.Width.MM(), size[1], lengthNoise)
			near(t, q.ID+" thickness", q.Blank.Thickness.MM(), size[2], lengthNoise)
		}
	})
}

func TestSidesAreMirrorImages(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p := built(t)
		l, r := p.Part("side-left").Solid, p.Part("side-right").Solid
		if len(l.Vertices) != len(r.Vertices) {
			t.Fatalf("%d and %d corners", len(l.Vertices), len(r.Vertices))
		}
		for _, v := range l.Vertices {
			v[1] = -v[1]
			least := math.Inf(1)
			for _, w := range r.Vertices {
				least = min(least, w.Sub(v).Len())
			}
			near(t, "mirrored corner", least, 0, lengthNoise)
		}
	})
}

// notTooFine leaves out a design with a pin so fine that it is no size when it is typed: what follows
// from uneven tails may be finer, and is judged by its own check.
func notTooFine(t *rapid.T, d form.Design) {
	const least = 0.1 // mm
	if d.Corners.Pin != nil && *d.Corners.Pin < least || d.Corners.HalfPin != nil && *d.Corners.HalfPin < least {
		t.Skip("a pin finer than any size that is typed")
	}
}

func TestSizesScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, p := built(t)
		k := rapid.Float64Range(0.3, 4).Draw(t, "scale")
		by := func(l *measure.Length) { *l *= measure.Length(k) }
		by(&d.Size.Height)
		by(&d.Size.Width)
		by(&d.Size.Depth)
		by(&d.Boards.Top.Thickness)
		by(&d.Boards.Side.Thickness)
		pin, half := *d.Corners.Pin, *d.Corners.HalfPin
		by(&pin)
		by(&half)
		d.Corners.Pin, d.Corners.HalfPin, d.Corners.Tail = &pin, &half, nil
		d.Corners.TailWidths = slices.Clone(d.Corners.TailWidths)
		for i := range d.Corners.TailWidths {
			by(&d.Corners.TailWidths[i])
		}
		q := form.Build(d)
		notTooFine(t, d)
		if q.Stopped() {
			t.Fatalf("stopped: %s", q.Findings[0].Text)
		}
		for i, was := range p.Parts {
			near(t, was.ID, q.Parts[i].Volume, was.Volume*k*k*k, 1e-11*was.Volume*k*k*k)
		}
	})
}

func TestTakenAtTopAndFloorAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, p := built(t)
		d.Size.Width, d.Size.Depth = p.Overall.WidthFloor, p.Overall.DepthFloor
		d.Size.TakenAt, d.Corners.Tail = form.AtFloor, nil
		q := form.Build(d)
		notTooFine(t, d)
		if q.Stopped() {
			t.Fatalf("stopped: %s", q.Findings[0].Text)
		}
		for i, was := range p.Parts {
			near(t, was.ID, q.Parts[i].Volume, was.Volume, 1e-11*was.Volume)
			near(t, was.ID+" length", q.Parts[i].Blank.Length.MM(), was.Blank.Length.MM(), lengthNoise)
		}
		near(t, "width at the top", q.Overall.WidthTop.MM(), p.Overall.WidthTop.MM(), lengthNoise)
	})
}

// What is resolved builds the same piece again.
func TestResolvedDesignBuildsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p := built(t)
		q := form.Build(p.Design)
		notTooFine(t, p.Design)
		if q.Stopped() {
			t.Fatalf("stopped: %s", q.Findings[0].Text)
		}
		for i, was := range p.Parts {
			near(t, was.ID, q.Parts[i].Volume, was.Volume, 1e-11*was.Volume)
		}
	})
}

// Closed forms of the trade against the planes of the placed parts.
func TestCornerAngles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, p := built(t)
		a, s := d.Splay.Ends.Radians(), d.Corners.Slope.Radians()
		j := p.Joints[1]
		near(t, "dihedral", j.Dihedral.Radians(), math.Pi/2+a, angleNoise)
		near(t, "pin angle", j.PinAngle.Radians(), math.Atan(math.Tan(s)/math.Cos(a)), angleNoise)
		near(t, "baseline", j.Baseline.Outer.MM()*math.Cos(a), thickness(p, j.PinBoard), lengthNoise)
		near(t, "pin baseline", j.PinBaseline.Outer.MM()*math.Cos(a), thickness(p, j.TailBoard), lengthNoise)
		tail, pin := p.Part(j.TailBoard), p.Part(j.PinBoard)
		for _, f := range tail.Solid.Faces {
			corner := tail.Solid.Vertices[tail.Solid.Edges[f.Loops[0][0].Edge].From]
			if f.Tag != "tail 1 front cheek" || tail.ID == "top" && corner[0] < 0 {
				continue // the top has one at its left end too
			}
			near(t, "cheek tilt", math.Asin(math.Abs(f.Plane.N[2])), j.CheekTilt.Radians(), angleNoise)
			grain := tail.Place.Mul4x1(f.Plane.N.Vec4(0)).Vec3().Dot(pin.Place.Col(0).Vec3())
			near(t, "cheek along the pin board's grain", grain, 0, angleNoise)
			line := f.Plane.N.Cross(mgl64.Vec3{0, 0, 1}).Normalize()
			near(t, "slope from the grain", math.Atan2(math.Abs(line[1]), math.Abs(line[0])), s, angleNoise)
		}
	})
}

func thickness(p *form.Piece, id string) float64 { return p.Part(id).Blank.Thickness.MM() }

func TestEdgeCutsOfASide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, p := built(t)
		a, b := d.Splay.Ends.Radians(), d.Splay.Edges.Radians()
		for _, c := range p.Part("side-right").Cuts[2:] {
			near(t, c.ID+" taper", c.Swing.Radians(), math.Abs(math.Atan(math.Tan(b)*math.Cos(a))), 1e-7)
			tilt := 0.0
			if d.Splay.EdgeCut == form.EdgeFlush {
				tilt = math.Abs(math.Asin(math.Sin(a) * math.Sin(b)))
			}
			near(t, c.ID+" tilt", c.Tilt.Radians(), tilt, angleNoise)
		}
	})
}
