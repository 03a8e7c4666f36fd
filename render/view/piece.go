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

// flattened is the parts' meshes in their places, and their ids.
func flattened(p *form.Piece, tol float64) ([]*solid.Mesh, []string) {
	parts := solidParts(p)
	ids := make([]string, len(parts))
	for i, q := range parts {
		ids[i] = q.ID
	}
	meshes := make([]*solid.Mesh, len(parts))
	var next atomic.Int64
	flatten := func() {
		for i := int(next.Add(1)) - 1; i < len(parts); i = int(next.Add(1)) - 1 {
			meshes[i] = parts[i].Shape().Flatten(tol).Transform(parts[i].Place)
		}
	}
	var done sync.WaitGroup
	done.Go(flatten)
	flatten()
	done.Wait()
	return meshes, ids
}
