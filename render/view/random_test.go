package view

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/solid"
)

var squareOn = []Direction{Front, Back, End, Left, Top, Bottom, Isometric}

func anyDirection(t *rapid.T) Direction {
	if k := rapid.IntRange(0, 2*len(squareOn)).Draw(t, "direction"); k < len(squareOn) {
		return squareOn[k]
	}
	return Pictorial(degrees(t, "turn", 180), degrees(t, "tip", 90))
}

// degrees is an angle in steps of half a degree: closer to square than that, the witness's lines that
// cross look like lines that coincide.
func degrees(t *rapid.T, name string, most int) float64 {
	return float64(rapid.IntRange(-2*most, 2*most).Draw(t, name)) / 2
}

// blocks are boxes on a lattice of 100 mm that may touch in every way but not overlap.
func blocks(t *rapid.T) []*solid.Mesh {
	var taken [5][5][5]bool
	var out []*solid.Mesh
	for range rapid.IntRange(1, 8).Draw(t, "boxes") {
		var lo, hi [3]int
		for k := range 3 {
			lo[k] = rapid.IntRange(0, 4).Draw(t, "lo")
			hi[k] = rapid.IntRange(lo[k]+1, min(lo[k]+3, 5)).Draw(t, "hi")
		}
		if occupy(&taken, lo, hi) {
			at := func(k int) float64 { return 100 * float64(k) }
			out = append(out, box(at(lo[0]), at(lo[1]), at(lo[2]), at(hi[0]), at(hi[1]), at(hi[2])))
		}
	}
	return out
}

func occupy(taken *[5][5][5]bool, lo, hi [3]int) bool {
	for pass := range 2 {
		for x := lo[0]; x < hi[0]; x++ {
			for y := lo[1]; y < hi[1]; y++ {
				for z := lo[2]; z < hi[2]; z++ {
					if taken[x][y][z] && pass == 0 {
						return false
					}
					taken[x][y][z] = taken[x][y][z] || pass == 1
				}
			}
		}
	}
	return true
}

// examine compares a picture with rays. A face that looks narrower than sideStep may be taken for a line,
// so directions that all but look along a face, yet not quite, are left out.
func examine(t *rapid.T, s *Scene, d Direction) {
	for i := range s.faces {
		if c := math.Abs(s.faces[i].normal.Dot(d.Toward)); c > edgeOn && c < 1e-5 {
			t.Skip("all but on edge")
		}
	}
	p := s.Project(d)
	r := rand.New(rand.NewPCG(1, 2))
	for i, o := range (witness{s: s, d: d}).objections(p, 3, r) {
		if t.Errorf("%s: %s", d.Name, o); i > 5 {
			break
		}
	}
}

func TestBlocksThatTouchAsRaysSeeThem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { examine(t, scene(blocks(t)...), anyDirection(t)) })
}

// Turned about any axis, contacts hold only to within rounding.
func TestTurnedBlocksAsRaysSeeThem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		by := turned(t)
		var ms []*solid.Mesh
		for _, m := range blocks(t) {
			ms = append(ms, m.Transform(by))
		}
		examine(t, scene(ms...), anyDirection(t))
	})
}

// Boards in each other's way: an edge goes out of sight where it enters the other board.
func TestBoardsInEachOthersWayAsRaysSeeThem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var ms []*solid.Mesh
		for range rapid.IntRange(2, 4).Draw(t, "boards") {
			m := toothed(150, 80, 20, 20, rapid.IntRange(0, 2).Draw(t, "sockets"), 0, true)
			ms = append(ms, m.Transform(turned(t)))
		}
		examine(t, scene(ms...), anyDirection(t))
	})
}

// One of those: all boards share a corner, and near it an edge is no farther behind another's face than touching, so that it
// comes into sight where nothing in the picture crosses it.
func TestAnEdgeThatGrazesAFace(t *testing.T) {
	var ms []*solid.Mesh
	for _, b := range []struct {
		sockets int
		turns   [3]float64 // degrees
	}{{0, [3]float64{3.5, 1, -27.5}}, {2, [3]float64{51.5, -0.5, -1}}, {1, [3]float64{-37.5, -89, 53}}, {2, [3]float64{8.5, 0, 0}}} {
		by := mgl64.Ident4()
		for k, axis := range []mgl64.Vec3{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}} {
			by = by.Mul4(mgl64.HomogRotate3D(mgl64.DegToRad(b.turns[k]), axis))
		}
		ms = append(ms, toothed(150, 80, 20, 20, b.sockets, 0, true).Transform(by))
	}
	s, d := scene(ms...), Pictorial(72, -1.5)
	for _, o := range (witness{s: s, d: d}).objections(s.Project(d), 3, rand.New(rand.NewPCG(1, 2))) {
		t.Error(o)
	}
}

// turned is a turn about all three axes.
func turned(t *rapid.T) mgl64.Mat4 {
	by := mgl64.Ident4()
	for _, axis := range []mgl64.Vec3{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}} {
		by = by.Mul4(mgl64.HomogRotate3D(mgl64.DegToRad(degrees(t, "angle", 180)), axis))
	}
	return by
}

// Finger joints of random teeth, each tooth filling its gap, anyhow turned.
func TestJointsAsRaysSeeThem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.SliceOfN(rapid.Float64Range(5, 40), 1, 7).Draw(t, "widths")
		by := turned(t)
		a, b := jointed(w, rapid.Bool().Draw(t, "tooth first"))
		examine(t, scene(a.Transform(by), b.Transform(by)), anyDirection(t))
	})
}

// jointed is two combs end to end, the teeth of each in the gaps of the other.
func jointed(w []float64, toothFirst bool) (a, b *solid.Mesh) {
	wide := 0.0
	for _, x := range w {
		wide += x
	}
	back := slices.Clone(w)
	slices.Reverse(back)
	lastIsTooth := toothFirst == (len(w)%2 == 1)
	halfTurn := mgl64.Translate3D(185, wide, 0).Mul4(mgl64.HomogRotate3DZ(math.Pi))
	return comb(0, 100, 15, 0, 12, toothFirst, w...), comb(0, 100, 15, 0, 12, !lastIsTooth, back...).Transform(halfTurn)
}
