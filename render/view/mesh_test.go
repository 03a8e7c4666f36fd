package view

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/solid"
)

// prism is the upright prism over plane loops (outline counter-clockwise, holes clockwise) from z0 to
// z1. Where rounded tells so for a loop, its walls are facets of one round face.
func prism(z0, z1 float64, rounded []bool, loops ...[]mgl64.Vec2) *solid.Mesh {
	m := &solid.Mesh{}
	top, low := solid.MeshFace{Normal: mgl64.Vec3{0, 0, 1}}, solid.MeshFace{Normal: mgl64.Vec3{0, 0, -1}}
	for _, l := range loops {
		n, base := int32(len(l)), int32(len(m.Vertices))
		up, down := make([]int32, n), make([]int32, n)
		for i, p := range l {
			m.Vertices = append(m.Vertices, mgl64.Vec3{p[0], p[1], z0}, mgl64.Vec3{p[0], p[1], z1})
			up[i], down[n-1-int32(i)] = base+2*int32(i)+1, base+2*int32(i)
		}
		top.Loops, low.Loops = append(top.Loops, up), append(low.Loops, down)
	}
	m.Faces = append(m.Faces, top, low)
	base, curve := int32(0), 0
	for k, l := range loops {
		round := k < len(rounded) && rounded[k]
		curve = addWalls(m, l, base, round, curve)
		base += 2 * int32(len(l))
	}
	return m
}

func addWalls(m *solid.Mesh, l []mgl64.Vec2, base int32, round bool, curve int) int {
	n, first := int32(len(l)), int32(len(m.Faces))
	for i := range n {
		j := (i + 1) % n
		d := l[j].Sub(l[i])
		a, b := base+2*i, base+2*j
		m.Faces = append(m.Faces, solid.MeshFace{
			Normal: mgl64.Vec3{d[1], -d[0], 0}.Normalize(), Loops: [][]int32{{a, b, b + 1, a + 1}},
		})
	}
	for i := range n {
		j := (i + 1) % n
		a, b, wall := base+2*i, base+2*j, first+i
		rim, stile := curve, curve+2
		if round {
			stile = -1
		}
		m.Edges = append(m.Edges,
			solid.MeshEdge{From: a, To: b, A: wall, B: 1, Edge: rim},
			solid.MeshEdge{From: a + 1, To: b + 1, A: 0, B: wall, Edge: rim + 1},
			solid.MeshEdge{From: b, To: b + 1, A: wall, B: first + j, Edge: stile, Smooth: round})
		if !round {
			curve += 3
		}
	}
	if round {
		sortRims(m, 3*int(n))
		curve += 2
	}
	return curve
}

// sortRims puts the last n edges, three a wall, so that each rim's follow one another.
func sortRims(m *solid.Mesh, n int) {
	tail := append([]solid.MeshEdge(nil), m.Edges[len(m.Edges)-n:]...)
	m.Edges = m.Edges[:len(m.Edges)-n]
	for k := range 3 {
		for i := k; i < n; i += 3 {
			m.Edges = append(m.Edges, tail[i])
		}
	}
}

func rect(x0, y0, x1, y1 float64) []mgl64.Vec2 {
	return []mgl64.Vec2{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}
}

// circle has n corners, counter-clockwise, or clockwise for a hole.
func circle(x, y, r float64, n int, hole bool) []mgl64.Vec2 {
	out := make([]mgl64.Vec2, n)
	for i := range out {
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(n))
		if hole {
			s = -s
		}
		out[i] = mgl64.Vec2{x + r*c, y + r*s}
	}
	return out
}

func box(x0, y0, z0, x1, y1, z1 float64) *solid.Mesh {
	return prism(z0, z1, nil, rect(x0, y0, x1, y1))
}

// comb is a board whose far end (at x1) has teeth: y from 0, tooth and gap widths in turn.
func comb(x0, x1, depth, z0, z1 float64, toothFirst bool, widths ...float64) *solid.Mesh {
	out := []mgl64.Vec2{{x0, 0}}
	y, tooth := 0.0, toothFirst
	for _, w := range widths {
		x := x1
		if !tooth {
			x = x1 - depth
		}
		out = append(out, mgl64.Vec2{x, y}, mgl64.Vec2{x, y + w})
		y, tooth = y+w, !tooth
	}
	out = append(out, mgl64.Vec2{x0, y})
	return prism(z0, z1, nil, out)
}

func scene(meshes ...*solid.Mesh) *Scene {
	ids := make([]string, len(meshes))
	for i := range ids {
		ids[i] = string(rune('a' + i))
	}
	return newScene(inWorld(meshes), ids)
}
