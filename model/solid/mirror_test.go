package solid

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawEased is a random board with openings and a pocket, all edges of its outer face rounded where that can be.
func drawEased(t *rapid.T) (Board, *Solid) {
	b, _, _ := drawBoard(t)
	if b.Thickness > 12 {
		b.Pockets = []Pocket{{Tag: "recess", Depth: 4, Walls: block(150, 18, 0, 3*deg)}}
	}
	rounded := b
	for _, w := range b.Outline {
		rounded.Slots = append(rounded.Slots, easing(upFace, w.Plane, 0, 0, 3))
	}
	for _, b := range []Board{rounded, b} {
		if s, err := b.Build(); err == nil {
			return b, s
		}
	}
	b.Pockets = nil // an opening is in its way
	s, err := b.Build()
	if err != nil {
		t.Fatal(err)
	}
	return b, s
}

// The mirror image of a solid is the solid of the mirrored board: as large, whole, with its wood where the other's is not.
func TestMirrorImages(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, s := drawEased(t)
		m := rapid.SampledFrom([]Mirror{MirroredX, MirroredY}).Draw(t, "mirror")
		image := m.Solid(s)
		if err := image.Check(); err != nil {
			t.Fatal(err)
		}
		if v, w := image.Volume(), s.Volume(); math.Abs(v-w) > exact*w || image.Genus() != s.Genus() {
			t.Errorf("volume %.15g with %d holes, of the board %.15g with %d", v, image.Genus(), w, s.Genus())
		}
		if image.Like() != s || image.Mirror != m {
			t.Error("it does not know what it is the mirror image of")
		}
		lo, hi := s.Bounds()
		from, to := image.Bounds()
		for k := range 3 { // the one's least is the other's greatest
			p, q := m.Point(lo), m.Point(hi)
			if math.Abs(from[k]-min(p[k], q[k])) > 1e-9 || math.Abs(to[k]-max(p[k], q[k])) > 1e-9 {
				t.Errorf("the image reaches from %v to %v, the board from %v to %v", from, to, lo, hi)
				break
			}
		}
		for i := range 30 { // a lattice with irrational steps, so that none lies in a face
			p := lo
			for k, step := range []float64{0.8191725133961645, 0.6710436067037893, 0.5497004779019703} {
				at := step * float64(i+1)
				p[k] += (hi[k] - lo[k]) * (at - math.Floor(at))
			}
			if image.Contains(m.Point(p)) != s.Contains(p) {
				t.Errorf("%v", p)
			}
		}
		mesh, own := m.Mesh(s.Flatten(0.1)), image.Flatten(0.1)
		if err := mesh.Check(); err != nil {
			t.Error(err)
		}
		if v, w := mesh.Volume(), own.Volume(); math.Abs(v-w) > 1e-9*w || len(mesh.Faces) != len(own.Faces) || len(mesh.Vertices) != len(own.Vertices) {
			t.Errorf("flattened %.12g of %d faces and %d corners; the image flattened %.12g of %d and %d",
				v, len(mesh.Faces), len(mesh.Vertices), w, len(own.Faces), len(own.Vertices))
		}
		for i, e := range mesh.Edges {
			if o := own.Edges[i]; e.Edge >= 0 && (e.Smooth != o.Smooth || e.Edge != o.Edge) {
				t.Errorf("edge %d", i)
			}
		}
		mirrored := m.Board(&b, &Board{})
		other, err := mirrored.Build()
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(other.Volume()-s.Volume()) > exact*s.Volume() || len(other.Faces) != len(s.Faces) || len(other.Edges) != len(s.Edges) {
			t.Errorf("the mirrored board has %.15g mm³, %d faces, %d edges; the board %.15g, %d, %d",
				other.Volume(), len(other.Faces), len(other.Edges), s.Volume(), len(s.Faces), len(s.Edges))
		}
		again := m.Board(&mirrored, &b)
		if !b.Twin(&again, Names{}) {
			t.Error("mirrored twice it is another board")
		}
	})
}

// The curves of an image lie where those of the board do, counted so that equal angles share a ruling there too.
func TestMirroredArcs(t *testing.T) {
	mitres := 0
	rapid.Check(t, func(t *rapid.T) {
		_, s := drawEased(t)
		m := rapid.SampledFrom([]Mirror{MirroredX, MirroredY}).Draw(t, "mirror")
		image := m.Solid(s)
		for i := range image.Edges {
			e := &image.Edges[i]
			for _, h := range []HalfEdge{{i, true}, {i, false}} {
				c, of := image.curveOf(h), s.curveOf(h)
				if c.Kind == Straight {
					continue
				}
				if c.Twin {
					mitres++
				}
				face := e.Left
				if !h.Forward {
					face = e.Right
				}
				k := rapid.Float64Range(0, 1).Draw(t, "along")
				at := c.T0 + (c.T1-c.T0)*k
				p, want := c.at(at), m.Point(of.at(of.T1+(of.T0-of.T1)*k))
				if p.Sub(want).Len() > 1e-9 {
					t.Errorf("%v, want %v", p, want)
				}
				if r := image.Faces[face].Round; r != nil {
					x, y := r.frame()
					out := p.Sub(r.ruling(x, y, c.Base+at))
					if out.Sub(r.Axis.Mul(out.Dot(r.Axis))).Len() > 1e-9 {
						t.Errorf("%v lies %v off its ruling", p, out)
					}
				}
			}
		}
	})
	if !t.Failed() && mitres == 0 {
		t.Error("no rounds met in a mitre")
	}
}
