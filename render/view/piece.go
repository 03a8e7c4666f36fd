package view

import (
	"splaywright/model/form"
	"splaywright/model/solid"
)

// NewScene flattens the parts of a piece, round faces to within tol (mm), and puts each in its place.
// Parts without a solid are left out.
func NewScene(p *form.Piece, tol float64) *Scene {
	var meshes []*solid.Mesh
	var ids []string
	for _, q := range p.Parts {
		if q.Solid != nil {
			meshes = append(meshes, q.Solid.Flatten(tol).Transform(q.Place))
			ids = append(ids, q.ID)
		}
	}
	return newScene(meshes, ids)
}
