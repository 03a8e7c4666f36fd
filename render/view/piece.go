package view

import (
	"sync"
	"sync/atomic"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// NewScene flattens the parts of a piece, round faces to within tol (mm), and puts each in its place.
// Parts without a solid are left out.
func NewScene(p *form.Piece, tol float64) *Scene {
	s := newScene(flattened(p, tol))
	s.takeArcs(solidParts(p))
	return s
}

// Raise builds a design's piece and makes its scene, sooner than one after the other does: a part is flattened while others
// are still being cut.
func Raise(d form.Design, tol float64) (*form.Piece, *Scene) {
	var mu sync.Mutex
	flat, own := map[*part.Part]*solid.Mesh{}, map[*solid.Solid]*solid.Mesh{}
	p := form.BuildEach(d, func(q *part.Part) {
		mu.Lock()
		m := own[q.Shape().Like()] // a twin's
		mu.Unlock()
		if m == nil {
			m = q.Shape().Flatten(tol)
		}
		moved := m.Transform(q.Place)
		mu.Lock()
		defer mu.Unlock()
		flat[q], own[q.Shape().Like()] = moved, m
	})
	parts := solidParts(p)
	meshes := make([]*solid.Mesh, len(parts))
	for i, q := range parts {
		meshes[i] = flat[q]
	}
	s := newScene(meshes, idsOf(parts))
	s.takeArcs(parts)
	return p, s
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

// flatten is a part's mesh in its place.
func flatten(q *part.Part, tol float64) *solid.Mesh { return q.Shape().Flatten(tol).Transform(q.Place) }

// flattened is the parts' meshes in their places, and their ids.
func flattened(p *form.Piece, tol float64) ([]*solid.Mesh, []string) {
	parts := solidParts(p)
	meshes := make([]*solid.Mesh, len(parts))
	var next atomic.Int64
	work := func() {
		for i := int(next.Add(1)) - 1; i < len(parts); i = int(next.Add(1)) - 1 {
			meshes[i] = flatten(parts[i], tol)
		}
	}
	var done sync.WaitGroup
	done.Go(work)
	work()
	done.Wait()
	return meshes, idsOf(parts)
}
