package view

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/solid"
	"splaywright/render/draw"
)

// A board 300 × 120 × 20 cut square and askew: the areas are those of the parallelograms that school
// geometry gives; askew, the section is 1/cos as long as the square one.
func TestSectionsOfPlainBoards(t *testing.T) {
	for _, c := range []struct {
		name string
		tilt float64 // of the board about Y, degrees
		dir  Direction
		want float64
	}{
		{"across the grain", 0, End, 120 * 20},
		{"along the grain", 0, Front, 300 * 20},
		{"flat", 0, Top, 300 * 120},
		{"across, leaning 30°", 30, End, 120 * 20 / math.Cos(math.Pi/6)},
		{"along, leaning 30°", 30, Front, 300 * 20},
		{"flat, leaning 60°", 60, Top, 120 * 20 / math.Sin(math.Pi/3)},
	} {
		m := box(-150, -60, -10, 150, 60, 10).Transform(mgl64.HomogRotate3DY(c.tilt * math.Pi / 180))
		s := section([]*solid.Mesh{m}, []string{"board"}, Cut{Direction: c.dir})
		if len(s.Faces) != 1 || math.Abs(s.Faces[0].Area()-c.want) > 1e-8*c.want || s.Behind != 0 {
			t.Errorf("%s: %d faces, %.9g mm² %g behind, want one of %.9g", c.name, len(s.Faces), s.Faces[0].Area(), s.Behind, c.want)
		}
	}
}

// A hole is a loop that runs the other way round and takes its area off: 60 × 60 less a regular polygon
// of 24 corners on a circle of 20, 12·r²·sin 15°.
func TestSectionOfAHole(t *testing.T) {
	m := prism(0, 20, []bool{false, true}, rect(0, 0, 60, 60), circle(30, 30, 20, 24, true))
	s := section([]*solid.Mesh{m}, []string{"board"}, Cut{Direction: Top, Depth: 10})
	want := 3600 - 12*400*math.Sin(math.Pi/12)
	if got := s.Faces[0].Area(); math.Abs(got-want) > 1e-8*want || len(s.Faces[0].Loops) != 2 {
		t.Errorf("%d loops, %.9g mm², want 2 and %.9g", len(s.Faces[0].Loops), got, want)
	}
	round := slices.IndexFunc(s.Lines, func(l Line) bool { return len(l.Points) > 20 })
	if round < 0 {
		t.Error("the rim of the hole is not one line")
	}
}

// What lies farther behind a cut than its reach is not drawn, and what lies nearer is: a post of 20 × 20 and 300 high on a
// board, cut near its top.
func TestSectionsReachSoFar(t *testing.T) {
	meshes := []*solid.Mesh{box(0, 0, 0, 20, 20, 300), box(-50, -50, -10, 70, 70, 0)}
	for _, c := range []struct {
		reach float64
		board bool
	}{{0, true}, {281, true}, {279, false}} {
		s := section(meshes, []string{"post", "board"}, Cut{Direction: Top, Depth: 280, Reach: c.reach})
		seen := map[string]bool{}
		for _, l := range s.Lines {
			seen[l.Part] = true
		}
		if !seen["post"] || seen["board"] != c.board {
			t.Errorf("a reach of %g mm shows %v", c.reach, seen)
		}
	}
}

// A plane in which a face lies steps back by a hair: what ends there is gone, what begins there is cut.
func TestPlaneInAFaceStepsBackAHair(t *testing.T) {
	near, far := box(0, -50, 0, 100, 0, 20), box(0, 0, 20, 100, 50, 60)
	s := section([]*solid.Mesh{near, far}, []string{"near", "far"}, Cut{Direction: Front, Depth: 0})
	if s.Behind != Hair {
		t.Errorf("the plane stepped back %g, want %g", s.Behind, Hair)
	}
	if len(s.Faces) != 1 || s.Faces[0].Part != "far" || math.Abs(s.Faces[0].Area()-4000) > 1e-6 {
		t.Errorf("cut: %v, want far alone, 4000 mm²", s.Faces)
	}
	for _, l := range s.Lines {
		if l.Part != "far" {
			t.Errorf("%s is still seen", l.Part)
		}
	}
}

// What was behind the plane is seen as before, and what the nearer half hid comes out.
func TestBehindThePlaneIsSeenAsRaysSeeIt(t *testing.T) {
	p := form.Build(formtest.Full())
	meshes, _ := flattened(p, 0.5)
	for _, c := range []Cut{{Direction: Front}, {Direction: End, Depth: 3}, {Direction: Top, Depth: 200}} {
		var left []*solid.Mesh
		for _, m := range meshes {
			if kept, _ := cutMesh(m, solid.Plane{N: c.Direction.Toward, D: c.Depth - behind(meshes, c)}); len(kept.Faces) > 0 {
				left = append(left, kept)
			}
		}
		s := scene(left...)
		for _, o := range (witness{s: s, d: c.Direction}).objections(s.Project(c.Direction), 1, rand.New(rand.NewPCG(7, 8))) {
			t.Errorf("%s: %s", c.Direction.Name, o)
		}
	}
}

// Both halves of a cut piece are closed, and together they are the whole.
func TestHalvesAreClosedAndMakeTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		meshes, _ := flattened(form.Build(anyStool(t)), 0.2)
		c := Cut{Direction: anyDirection(t), Depth: rapid.Float64Range(-150, 300).Draw(t, "depth")}
		at := c.Depth - behind(meshes, c)
		for _, m := range meshes {
			a, _ := cutMesh(m, solid.Plane{N: c.Direction.Toward, D: at})
			b, _ := cutMesh(m, solid.Plane{N: c.Direction.Toward.Mul(-1), D: -at})
			for _, half := range []*solid.Mesh{a, b} {
				if err := half.Check(); err != nil {
					t.Fatal(err)
				}
			}
			if got, want := a.Volume()+b.Volume(), m.Volume(); math.Abs(got-want) > 1e-8*want {
				t.Errorf("halves of %.9g and %.9g mm³, whole %.9g", a.Volume(), b.Volume(), want)
			}
		}
	})
}

// Between two corners' levels the section of a flattened solid is a square function of the level, so that
// two places of Gauss in each slice add up to the volume exactly; and that is the solid's own to within
// the flattening: its round faces' area times the chord error.
func TestSectionsAddUpToTheVolume(t *testing.T) {
	const tol = 0.05
	for _, d := range []form.Design{formtest.WorkedExample(), formtest.Full(), formtest.Housing()} {
		p := form.Build(d)
		meshes, ids := flattened(p, tol)
		for _, dir := range []Direction{Front, End, Pictorial(31, 17)} {
			for i, m := range meshes {
				got, want := bySections(m, ids[i], dir), m.Volume()
				if math.Abs(got-want) > 1e-7*want {
					t.Errorf("%s, %s, %s: sections add up to %.9g, the mesh holds %.9g", d.Title, ids[i], dir.Name, got, want)
				}
				whole := p.Part(ids[i]).Shape()
				if round := roundArea(m, whole); math.Abs(got-whole.Volume()) > tol*round+1e-7*want {
					t.Errorf("%s, %s: sections add up to %.9g, the solid holds %.9g; %.0f mm² are round", d.Title, ids[i], got, whole.Volume(), round)
				}
			}
		}
	}
}

func bySections(m *solid.Mesh, id string, d Direction) float64 {
	var levels []float64
	for _, v := range m.Vertices {
		levels = append(levels, d.Depth(v))
	}
	slices.Sort(levels)
	sum := 0.0
	for i := 1; i < len(levels); i++ {
		lo, hi := levels[i-1], levels[i]
		for _, g := range []float64{-1, 1} {
			at := (lo+hi)/2 + g*(hi-lo)/(2*math.Sqrt(3))
			if hi-lo < 1e-5 {
				continue // thinner than the hair: it weighs nothing
			}
			kept, lid := cutMesh(m, solid.Plane{N: d.Toward, D: at})
			sum += (hi - lo) / 2 * CutFace{id, pictured(kept, lid, d)}.Area()
		}
	}
	return sum
}

// roundArea is the area of the strips that stand for round faces.
func roundArea(m *solid.Mesh, s *solid.Solid) float64 {
	sum := 0.0
	for _, f := range m.Faces {
		if s.Faces[f.Face].Round != nil {
			var a mgl64.Vec3
			for i := range f.Loops[0] {
				a = a.Add(m.Vertices[f.Loops[0][i]].Cross(m.Vertices[f.Loops[0][(i+1)%len(f.Loops[0])]]))
			}
			sum += a.Len() / 2
		}
	}
	return sum
}

// flatness is how far what is cut may be flattened, mm.
const flatness = 0.02

// Points thrown on a section are in the wood if and only if they are in its loops, but for those nearer to a loop than the
// hair, or nearer to the surface than the flattening, which a cut that grazes a round meets far from the loop; and the share
// of them is the area's.
func TestSectionsAgainstPointsThrown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := form.Build(anyStool(t))
		c := Cut{Direction: anyDirection(t), Depth: rapid.Float64Range(-120, 120).Draw(t, "depth")}
		s := NewSection(p, flatness, c)
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
		for _, f := range s.Faces {
			pointsThrown(t, p, s, f, r)
		}
	})
}

func pointsThrown(t *rapid.T, p *form.Piece, s *Section, f CutFace, r *rand.Rand) {
	const n, near = 400, 0.25
	q := p.Part(f.Part)
	back, d := q.Place.Inv(), s.Cut.Direction
	box := draw.EmptyBox()
	for _, l := range f.Loops {
		for _, pt := range l {
			box = box.Add(pt)
		}
	}
	hits := 0
	for range n {
		at := draw.Point{X: box.Min.X + r.Float64()*box.Width(), Y: box.Min.Y + r.Float64()*box.Height()}
		in, gap := inLoops(f.Loops, at)
		if in {
			hits++
		}
		w := d.Right.Mul(at.X).Add(d.Up.Mul(at.Y)).Add(d.Toward.Mul(s.Cut.Depth - s.Behind))
		if wood, sure := inWood(q.Shape(), mgl64.TransformCoordinate(w, back)); wood != in && gap > near && sure {
			t.Errorf("%s at %.3f, %.3f: wood %v, section %v", f.Part, at.X, at.Y, wood, in)
		}
	}
	share := f.Area() / (box.Width() * box.Height())
	if off := math.Abs(float64(hits)/n - share); off > lucky(n, share)+1e-9 {
		t.Errorf("%s: %d of %d points hit, the area is %.4f of the box", f.Part, hits, n, share)
	}
}

// inWood tells whether a point lies in a solid, and whether it lies farther from its surface than the flattening.
func inWood(s *solid.Solid, at mgl64.Vec3) (in, sure bool) {
	in = s.Contains(at)
	for k := range 3 {
		for _, off := range []float64{-2 * flatness, 2 * flatness} {
			to := at
			to[k] += off
			if s.Contains(to) != in {
				return in, false
			}
		}
	}
	return in, true
}

// lucky is how far the share of n points that hit may be off by chance: six standard deviations, and where so few hit
// or miss that these say nothing, the bound of Bernstein's inequality that chance passes once in a thousand million
// times: t²/2 = ln(2e9)·(variance + t/3).
func lucky(n, share float64) float64 {
	variance := n * share * (1 - share)
	if variance >= 10 {
		return 6 * math.Sqrt(variance) / n
	}
	l := math.Log(2e9)
	return (l/3 + math.Sqrt(l*l/9+2*l*variance)) / n
}

// inLoops tells whether a point lies inside, and how far from the nearest line.
func inLoops(loops [][]draw.Point, p draw.Point) (bool, float64) {
	in, gap := false, math.Inf(1)
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			if (a.Y <= p.Y) != (b.Y <= p.Y) && a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) < p.X {
				in = !in
			}
			dx, dy := b.X-a.X, b.Y-a.Y
			u := min(max(((p.X-a.X)*dx+(p.Y-a.Y)*dy)/max(dx*dx+dy*dy, 1e-30), 0), 1)
			gap = min(gap, math.Hypot(p.X-a.X-u*dx, p.Y-a.Y-u*dy))
		}
	}
	return in, gap
}

func anyStool(t *rapid.T) form.Design {
	d := rapid.SampledFrom([]func() form.Design{formtest.WorkedExample, formtest.Full, formtest.Housing, formtest.Butt}).Draw(t, "start")()
	d.Size.Height = measure.Length(rapid.IntRange(200, 600).Draw(t, "height"))
	d.Splay.Ends = measure.Angle(rapid.IntRange(0, 15).Draw(t, "ends")) * measure.Degree
	d.Splay.Edges = measure.Angle(rapid.IntRange(0, 8).Draw(t, "edges")) * measure.Degree
	return d
}
