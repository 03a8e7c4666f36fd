package view

import (
	"splaywright/model/form"
	"splaywright/model/solid"
)

// flattener is a solid that can be flattened.
type flattener interface {
	Flatten(tol float64) *solid.Mesh
}

// NewScene flattens the parts of a piece, round faces to within tol (mm), and puts each in its place.
// Parts without a solid are left out.
func NewScene(p *form.Piece, tol float64) *Scene {
	var meshes []*solid.Mesh
	var ids []string
	for _, q := range p.Parts {
		if q.Solid == nil {
			continue
		}
		if f, ok := any(q.Solid).(flattener); ok {
			meshes = append(meshes, f.Flatten(tol).Transform(q.Place))
			ids = append(ids, q.ID)
		}
	}
	return newScene(meshes, ids)
}
