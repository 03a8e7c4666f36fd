package view

import (
	"math"

	"splaywright/model/form"
	"splaywright/model/solid"
	"splaywright/render/draw"
)

// Hair is how far, mm, a cutting plane steps away from the viewer to get clear of corners that lie in
// it: a face in the plane has no section, a hair behind it the wood has. It is ten times Touching, so
// that what is cut and what is not are told apart, and too small to be seen on any paper.
const Hair = 1e-4

// clearOf is how near to the plane no corner may lie, mm.
const clearOf = Hair / 8

// Cut is the plane of a section, square to the direction in which it is seen: it takes away what is
// nearer to the viewer than Depth (mm, as Direction.Depth counts). Of edges whose middle lies farther
// behind it than Reach, mm, nothing is drawn; they hide what is behind them all the same. 0 = all are drawn.
type Cut struct {
	Direction Direction
	Depth     float64
	Reach     float64
}

// Section is a piece cut through: the picture of what remains, and the faces that the cut made.
type Section struct {
	*Picture
	Cut    Cut
	Faces  []CutFace // in the order of the parts; parts that the plane misses have none
	Behind float64   // how far behind Cut.Depth the plane was laid, mm: 0 or a few hairs
}

// CutFace is what the plane makes of one part: loops in the picture, mm, the wood to the left of each,
// so that outlines go counter-clockwise and holes clockwise.
type CutFace struct {
	Part  string
	Loops [][]draw.Point
}

// Area is the area of the wood that is cut, mm².
func (c CutFace) Area() float64 {
	sum := 0.0
	for _, l := range c.Loops {
		o := l[0]
		for i, p := range l {
			q := l[(i+1)%len(l)]
			sum += (p.X-o.X)*(q.Y-o.Y) - (q.X-o.X)*(p.Y-o.Y)
		}
	}
	return sum / 2
}

// NewSection cuts a piece whose round faces are flattened to within tol, mm.
func NewSection(p *form.Piece, tol float64, c Cut) *Section {
	meshes, ids := flattened(p, tol)
	return section(meshes, ids, c)
}

func section(meshes []*solid.Mesh, ids []string, c Cut) *Section {
	s := &Section{Cut: c, Behind: behind(meshes, c)}
	plane := solid.Plane{N: c.Direction.Toward, D: c.Depth - s.Behind}
	var left []*solid.Mesh
	var of []string
	for i, m := range meshes {
		kept, lid := cutMesh(m, plane)
		if len(kept.Faces) > 0 {
			left, of = append(left, kept), append(of, ids[i])
		}
		if lid >= 0 {
			s.Faces = append(s.Faces, CutFace{ids[i], pictured(kept, lid, c.Direction)})
		}
	}
	scene := newScene(inWorld(left), of)
	if c.Reach > 0 {
		scene.leaveOut(c.Direction, c.Depth-c.Reach)
	}
	s.Picture = scene.Project(c.Direction)
	return s
}

func pictured(m *solid.Mesh, face int, d Direction) [][]draw.Point {
	var out [][]draw.Point
	for _, l := range m.Faces[face].Loops {
		pts := make([]draw.Point, len(l))
		for i, v := range l {
			pts[i] = d.Point(m.Vertices[v])
		}
		out = append(out, pts)
	}
	return out
}

// behind is how far the plane must step back to be clear of all corners.
func behind(meshes []*solid.Mesh, c Cut) float64 {
	for k := 0; ; k++ {
		back := float64(k) * Hair
		if isClear(meshes, c, c.Depth-back) {
			return back
		}
	}
}

func isClear(meshes []*solid.Mesh, c Cut, depth float64) bool {
	for _, m := range meshes {
		for _, v := range m.Vertices {
			if math.Abs(c.Direction.Depth(v)-depth) < clearOf {
				return false
			}
		}
	}
	return true
}
