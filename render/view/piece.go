package view

import (
	"sync"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/solid"
	"splaywright/model/twos"
)

// NewScene flattens the parts of a piece, round faces to within tol (mm), and puts each in its place.
// Parts without a solid are left out.
func NewScene(p *form.Piece, tol float64) *Scene {
	parts := solidParts(p)
	flat := make([]flatPart, len(parts))
	twos.Each(len(parts), func(i int) { flat[i] = flatten(parts[i], parts[i].Shape().Flatten(tol)) })
	return sceneOf(flat)
}

// Raise builds a design's piece and makes its scene, sooner than one after the other does: a part is flattened while others
// are still being cut.
func Raise(d form.Design, tol float64) (*form.Piece, *Scene) {
	var mu sync.Mutex
	flat, own := map[*part.Part]flatPart{}, map[*solid.Solid]*solid.Mesh{}
	p := form.BuildEach(d, func(q *part.Part) {
		shape := q.Shape()
		mu.Lock()
		m := own[shape.Like()] // a twin's
		mu.Unlock()
		if m == nil {
			m = shape.Flatten(tol)
		} else {
			m = shape.Mirror.Mesh(m)
		}
		f := flatten(q, m)
		mu.Lock()
		defer mu.Unlock()
		flat[q] = f
		if shape.Like() == shape {
			own[shape] = m
		}
	})
	parts := solidParts(p)
	all := make([]flatPart, len(parts))
	for i, q := range parts {
		all[i] = flat[q]
	}
	return p, sceneOf(all)
}

// flatPart is a part flattened.
type flatPart struct {
	id   string
	mesh placed
	arcs []arc
}

func flatten(q *part.Part, m *solid.Mesh) flatPart {
	return flatPart{q.ID, placed{m, &q.Place}, arcsOf(q)}
}

func sceneOf(flat []flatPart) *Scene {
	meshes, ids, arcs := make([]placed, len(flat)), make([]string, len(flat)), make([][]arc, len(flat))
	for i, f := range flat {
		meshes[i], ids[i], arcs[i] = f.mesh, f.id, f.arcs
	}
	s := newScene(meshes, ids)
	s.arcs = arcs
	return s
}

// solidParts are the parts that have a solid.
func solidParts(p *form.Piece) []*part.Part {
	var out []*part.Part
	for _, q := range p.Parts {
		if q.Solid != nil {
			out = append(out, q)
		}
	}
	return out
}

func idsOf(parts []*part.Part) []string {
	ids := make([]string, len(parts))
	for i, q := range parts {
		ids[i] = q.ID
	}
	return ids
}

// flattened is the parts' meshes in their places, and their ids.
func flattened(p *form.Piece, tol float64) ([]*solid.Mesh, []string) {
	parts := solidParts(p)
	meshes := make([]*solid.Mesh, len(parts))
	twos.Each(len(parts), func(i int) { meshes[i] = parts[i].Shape().Flatten(tol).Transform(parts[i].Place) })
	return meshes, idsOf(parts)
}
