package model_test

import (
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
)

// BenchmarkDeriveShapes is the plain stool with a shape of every kind that stands on an edge.
func BenchmarkDeriveShapes(b *testing.B) {
	d := formtest.Butt()
	d.Features = []form.Feature{
		{On: "side", Kind: "ogee", Width: 130, Rise: 30, Radius: 20, Hollow: 25},
		{On: "side", Kind: "notch", Edge: "back-edge", From: "floor-end", Width: 60, Depth: 12},
		{On: "side", Kind: "taper", Edge: "front-edge", From: "floor-end", Length: 120, Depth: 15},
		{On: "top", Kind: "chamfer", Edge: "all", Width: 4},
		{On: "top", Kind: "round-over", Edge: "edges", Face: form.InnerFace, Radius: 4},
	}
	if p := model.Derive(d); p.Stopped() {
		b.Fatal(p.Findings)
	}
	for b.Loop() {
		model.Derive(d)
	}
}
