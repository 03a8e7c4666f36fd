package form

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
	"splaywright/model/timber"
)

// edge is one of the straight cuts that bound a board, as a plane in the world.
type edge struct {
	id    string
	kind  part.CutKind
	plane solid.Plane
	pair  string
}

// board is a part before it is built.
type board struct {
	part      *part.Part
	back      mgl64.Mat4 // world to part frame
	thickness float64
	// around are the cuts counter-clockwise as seen from outside, beginning with the one that looks
	// along −y. Most boards have four: along −y, +x, +y and −x.
	around []edge
	shape  solid.Board // in the part frame
	sizes  []string    // paths in the design file that shape it
	// sizesOf gives the paths that shape a wall, pocket or bore by its tag.
	sizesOf map[string][]string
	uncut   bool          // a stop finding tells already why it has no solid
	rounds  []rounding    // rounded edges, cut after all else as far as nothing stands in their way
	rounded solid.Board   // the shape with those that could be cut
	free    []freeCut     // what rounding the piece's free edges takes
	planes  []solid.Plane // see surfaces
	met     []bool        // by free cut: it met wood
}

// newBoard begins a part between its cuts; see board.around.
func newBoard(p *part.Part, place mgl64.Mat4, thickness float64, around ...edge) *board {
	p.Place = place
	b := &board{part: p, back: part.Back(place), thickness: thickness, around: around, sizesOf: map[string][]string{}}
	b.shape.Thickness = thickness
	return b
}

// local brings a world plane into the part frame.
func (b *board) local(p solid.Plane) solid.Plane { return p.Transform(b.back) }

// localPoint brings a world point into the part frame.
func (b *board) localPoint(p mgl64.Vec3) mgl64.Vec3 { return b.back.Mul4x1(p.Vec4(1)).Vec3() }

// localWay brings a world direction into the part frame.
func (b *board) localWay(v mgl64.Vec3) mgl64.Vec3 { return b.back.Mul4x1(v.Vec4(0)).Vec3() }

// wall is the straight wall that a cut makes.
func (b *board) wall(e edge) solid.Wall { return solid.Wall{Tag: e.id, Plane: b.local(e.plane)} }

// walls brings world walls into the part frame, turned round when they are walked from back to front.
func (b *board) walls(in []solid.Wall, reverse bool) []solid.Wall {
	out := make([]solid.Wall, len(in))
	for i, w := range in {
		at := i
		if reverse {
			at = len(in) - 1 - i
		}
		w.Plane = b.local(w.Plane)
		out[at] = w
	}
	return out
}

// finish cuts the board: cuts, blank, solid, volume and mass. like is a twin that is cut already, nil = none.
func (b *board) finish(allowance Allowance, timbers timber.Book, show shown, like *twin) []part.Finding {
	p := b.part
	b.readCuts()
	b.readFaceLength()
	density := 0.0 // kg/mm³
	if d, ok := timbers.Find(p.Timber); ok {
		density = d.Density12 * 1e-9
	}
	var found []part.Finding
	if like != nil {
		b.copyOf(like)
	} else {
		found = b.build(show)
	}
	lo, hi := b.extent()
	if p.Solid != nil {
		if like == nil {
			p.Volume, p.Middle = p.Shape().Weigh()
		}
		p.Mass = density * p.Volume
		lo, hi = p.Solid.Bounds()
	}
	size := hi.Sub(lo)
	p.Blank = part.Box{Length: measure.Length(size[0]), Width: measure.Length(size[1]), Thickness: measure.Length(b.thickness)}
	p.Rough = part.Box{
		Length:    p.Blank.Length + allowance.Length,
		Width:     p.Blank.Width + allowance.Width,
		Thickness: p.Blank.Thickness + allowance.Thickness,
	}
	return found
}

// build makes the solid.
func (b *board) build(show shown) []part.Finding {
	if b.uncut {
		return nil
	}
	if met := b.metFaces(show); len(met) > 0 {
		return met
	}
	s, err := b.shape.Build()
	if err != nil {
		return []part.Finding{b.unbuildable(err, show)}
	}
	b.part.Solid = s
	return append(b.round(), b.finishFree()...)
}

// cutOrder is how papers list the cuts of a board of four: the two across the grain first.
var cutOrder = []int{3, 1, 0, 2}

func (b *board) readCuts() {
	corners, n := b.corners(0), len(b.around)
	for i := range n {
		if n == len(cutOrder) {
			i = cutOrder[i]
		}
		e := b.around[i]
		c := part.CutOf(e.id, e.kind, b.local(e.plane))
		c.Length = measure.Length(corners[(i+1)%n].Sub(corners[i]).Len())
		c.Pair = e.pair
		b.part.Cuts = append(b.part.Cuts, c)
	}
}

// corners of the cuts at a height z of the part frame; the i-th is where cut i begins.
func (b *board) corners(z float64) []mgl64.Vec3 {
	level := solid.Plane{N: worldZ, D: z}
	n := len(b.around)
	out := make([]mgl64.Vec3, n)
	before := b.local(b.around[n-1].plane)
	for i := range out {
		at := b.local(b.around[i].plane)
		out[i] = meet(before, at, level)
		before = at
	}
	return out
}

func (b *board) readFaceLength() {
	if len(b.around) != len(cutOrder) {
		b.part.FaceLength.Outer, b.part.FaceLength.Inner = b.span(0), b.span(-b.thickness)
		return
	}
	b.part.FaceLength.Outer, b.part.FaceLength.Inner = b.middle(0), b.middle(-b.thickness)
}

// middle is the length along the grain, from end to end, half way between the edges at a height z of the part
// frame: between edges that taper it runs where the board is half as long.
func (b *board) middle(z float64) measure.Length {
	var y float64
	for _, c := range b.corners(z) {
		y += c[1] / float64(len(b.around))
	}
	from, to := b.local(b.around[3].plane), b.local(b.around[1].plane)
	at := func(p solid.Plane) float64 { return (p.D - p.N[1]*y - p.N[2]*z) / p.N[0] }
	return measure.Length(at(to) - at(from))
}

// span is how far the cuts reach along the grain at a height z of the part frame.
func (b *board) span(z float64) measure.Length {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range b.corners(z) {
		lo, hi = min(lo, c[0]), max(hi, c[0])
	}
	return measure.Length(hi - lo)
}

// extent is the box round the cuts on both faces.
func (b *board) extent() (lo, hi mgl64.Vec3) {
	outer, inner := b.corners(0), b.corners(-b.thickness)
	lo, hi = outer[0], outer[0]
	for _, c := range append(outer, inner...) {
		for k := range 3 {
			lo[k], hi[k] = min(lo[k], c[k]), max(hi[k], c[k])
		}
	}
	return lo, hi
}

// meet is the point that three planes share.
func meet(a, b, c solid.Plane) mgl64.Vec3 {
	bc, ca, ab := b.N.Cross(c.N), c.N.Cross(a.N), a.N.Cross(b.N)
	sum := bc.Mul(a.D).Add(ca.Mul(b.D)).Add(ab.Mul(c.D))
	return sum.Mul(1 / a.N.Dot(bc))
}

// list joins words as a sentence does.
func list(words []string) string {
	text := ""
	for i, w := range words {
		switch {
		case i == 0:
		case i == len(words)-1:
			text += " and "
		default:
			text += ", "
		}
		text += w
	}
	return text
}
