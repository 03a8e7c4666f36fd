package form

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
	"splaywright/model/solid"
)

// side tells the two sides of a stool apart.
type side int

const (
	left side = iota
	right
)

// sign is +1 where the side's outer face looks along +X.
func (s side) sign() float64 { return float64(2*s - 1) }

func (s side) word() string { return [2]string{"left", "right"}[s] }

// called is what a part is called.
type called struct{ id, name string }

// The boards of a stool.
var (
	stoolTop   = called{"top", "Top"}
	stoolSides = [2]called{{"side-left", "Side, left"}, {"side-right", "Side, right"}}
)

// stand is a stool's planes in the world, all that its parts are cut by. Normals point out of
// the wood of the board that is named first.
type stand struct {
	d            Design // with its defaults
	topBoard     called
	under        string // of steps: which stretchers are its own
	sideBoards   [2]called
	ends, edges  float64
	lean         [2]float64 // of the sides from plumb, feet outward
	at           [2]float64 // X of the sides' outer planes at the upper face
	past         [2]bool    // the side runs on upward past the top, which is let into its face
	let          float64    // how deep the top goes into such a side
	height       float64
	width, depth float64 // at the top, where the sides' outer planes meet the upper face
	top, side    float64 // thicknesses

	upper, lower, floor solid.Plane    // top's two faces; the floor is the sides'
	outer, inner        [2]solid.Plane // of the sides
	front, back         solid.Plane    // the planes that the piece's front and back edges lean in
	sideFront, sideBack [2]solid.Plane // edges of the sides as cut
	topFront, topBack   solid.Plane
	topEnd              [2]solid.Plane
}

var worldX, worldY, worldZ = mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 1, 0}, mgl64.Vec3{0, 0, 1}

// newStand stands the planes of a design with its defaults.
func newStand(d Design) *stand {
	s := &stand{
		d: d, ends: upright(d.Splay.Ends.Radians()), edges: upright(d.Splay.Edges.Radians()),
		height: d.Size.Height.MM(), width: d.Size.Width.MM(), depth: d.Size.Depth.MM(),
		top: d.Boards.Top.Thickness.MM(), side: d.Boards.Side.Thickness.MM(),
		topBoard: stoolTop, sideBoards: stoolSides,
	}
	if d.Size.TakenAt == AtFloor {
		s.width -= 2 * s.height * math.Tan(s.ends)
		s.depth -= 2 * s.height * math.Tan(s.edges)
	}
	s.lean, s.at = [2]float64{s.ends, s.ends}, [2]float64{-s.width / 2, s.width / 2}
	s.place()
	return s
}

// place stands the planes, when all sizes are known.
func (s *stand) place() {
	s.upper = solid.Plane{N: worldZ, D: s.height}
	s.lower = solid.Plane{N: worldZ.Mul(-1), D: s.top - s.height}
	s.floor = solid.Plane{N: worldZ.Mul(-1)}
	s.front = through(mgl64.Vec3{0, -math.Cos(s.edges), math.Sin(s.edges)}, mgl64.Vec3{0, -s.depth / 2, s.height})
	s.back = through(mgl64.Vec3{0, math.Cos(s.edges), math.Sin(s.edges)}, mgl64.Vec3{0, s.depth / 2, s.height})
	for _, i := range []side{left, right} {
		s.standSide(i)
	}
	s.standTop()
}

// plumb, radians: a lean below it stands upright; over a metre it comes to a thousandth of a
// millimetre, and round walls lose their digits over it.
const plumb = 1e-6

func upright(lean float64) float64 {
	if math.Abs(lean) < plumb {
		return 0
	}
	return lean
}

func (s *stand) standSide(i side) {
	n := mgl64.Vec3{i.sign() * math.Cos(s.lean[i]), 0, math.Sin(s.lean[i])}
	s.outer[i] = through(n, mgl64.Vec3{s.at[i], 0, s.height})
	s.inner[i] = solid.Plane{N: n.Mul(-1), D: s.side - s.outer[i].D}
	s.sideFront[i], s.sideBack[i] = s.front, s.back
	if s.d.Splay.EdgeCut == EdgeSquare {
		s.sideFront[i] = squared(s.front, n, s.corner(i, -1))
		s.sideBack[i] = squared(s.back, n, s.corner(i, 1))
	}
}

// corner is the corner of the upper face over a side; toward -1 is the front one, +1 the back one.
func (s *stand) corner(i side, toward float64) mgl64.Vec3 {
	return mgl64.Vec3{s.at[i], toward * s.depth / 2, s.height}
}

// squared turns a plane about the line that it shares with a face, so that it stands square to
// the face; at is a point of that line.
func squared(p solid.Plane, face, at mgl64.Vec3) solid.Plane {
	return through(p.N.Sub(face.Mul(p.N.Dot(face))).Normalize(), at)
}

// standTop gives the top its ends and edges: in the leaning planes, or plumb where it overhangs.
func (s *stand) standTop() {
	over, overEdges := s.d.Corners.Overhang.MM(), s.d.Corners.OverhangEdges.MM()
	s.topFront, s.topBack = s.front, s.back
	if overEdges != 0 {
		s.topFront = solid.Plane{N: worldY.Mul(-1), D: s.depth/2 + overEdges}
		s.topBack = solid.Plane{N: worldY, D: s.depth/2 + overEdges}
	}
	s.topEnd = s.outer
	if over != 0 {
		for _, i := range []side{left, right} {
			s.topEnd[i] = solid.Plane{N: worldX.Mul(i.sign()), D: i.sign()*s.at[i] + over}
		}
	}
	for _, i := range []side{left, right} {
		switch k := s.d.Corners; {
		case Mitred(k.Joint):
			s.topEnd[i] = s.meetsIn(i)
		case k.Joint == HalfBlindDovetail && k.TailsOn == OnTop:
			s.topEnd[i].D -= k.Lap.MM()
		}
	}
	for _, i := range []side{left, right} {
		if s.past[i] {
			s.topEnd[i] = flip(s.inner[i])
			s.topEnd[i].D += s.let
		}
	}
}

// grain of a side, down its slope.
func (s *stand) grain(i side) mgl64.Vec3 {
	return mgl64.Vec3{i.sign() * math.Sin(s.lean[i]), 0, -math.Cos(s.lean[i])}
}

// sidePlace is the frame of a side: origin where its outer plane meets the upper face in the
// middle, x down the slope, z out of the outer face.
func (s *stand) sidePlace(i side) mgl64.Mat4 {
	x, z := s.grain(i), s.outer[i].N
	return part.Frame(mgl64.Vec3{s.at[i], 0, s.height}, x, worldY.Mul(i.sign()), z)
}

// middle is the X halfway between the sides at the upper face.
func (s *stand) middle() float64 { return (s.at[left] + s.at[right]) / 2 }

// topPlace is the frame of the top: origin in the middle of what is seen of its upper face.
func (s *stand) topPlace() mgl64.Mat4 {
	at := s.at
	for _, i := range []side{left, right} {
		if s.past[i] {
			at[i] = meet(s.upper, s.inner[i], solid.Plane{N: worldY})[0]
		}
	}
	return part.Frame(mgl64.Vec3{(at[left] + at[right]) / 2, 0, s.height}, worldX, worldY, worldZ)
}

func through(n, at mgl64.Vec3) solid.Plane { return solid.Plane{N: n, D: n.Dot(at)} }

func flip(p solid.Plane) solid.Plane { return solid.Plane{N: p.N.Mul(-1), D: -p.D} }
