package file

import (
	"math"
	"slices"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
)

const shaped = `splaywright: 1
title: Shapes
units: mm
form: stool
size: {height: 300, width: 420, depth: 250}
features:
  - {on: side, kind: ogee, width: 170, rise: 40, radius: 25, hollow: 1 1/4 in} # the foot
  - {on: side, kind: notch, edge: back-edge, from: floor-end, width: 60, depth: 14}
  - {on: side-left, kind: taper, edge: front-edge, from: floor-end, length: 130, depth: size.depth / 10}
  - {on: top, kind: chamfer, edge: edges, face: inner, width: 4, angle: 30}
  - {on: top, kind: round-over, edge: left-end, radius: 3}
  - {on: side, kind: arch, edge: front-edge, width: 90, rise: 8, x: 20}
saw: {depth: 3 in, cradle: 22.5}
`

// Every key of a shape on an edge is read as typed, and a change writes its own place and nothing else.
func TestShapesAreReadAndWritten(t *testing.T) {
	doc := read(t, shaped)
	d, err := doc.Design()
	if err != nil {
		t.Fatal(err)
	}
	want := []form.Feature{
		{On: "side", Kind: "ogee", Width: 170, Rise: 40, Radius: 25, Hollow: 1.25 * measure.Inch},
		{On: "side", Kind: "notch", Edge: "back-edge", From: "floor-end", Width: 60, Depth: 14},
		{On: "side-left", Kind: "taper", Edge: "front-edge", From: "floor-end", Length: 130, Depth: 25},
		{On: "top", Kind: "chamfer", Edge: form.LongEdges, Face: form.InnerFace, Width: 4, Angle: 30 * measure.Degree},
		{On: "top", Kind: "round-over", Edge: "left-end", Radius: 3},
		{On: "side", Kind: "arch", Edge: "front-edge", Width: 90, Rise: 8, X: 20},
	}
	if !slices.Equal(d.Features, want) {
		t.Errorf("read %+v", d.Features)
	}
	if math.Abs(d.Saw.Depth.Inches()-3) > 1e-12 || math.Abs(d.Saw.Cradle.Degrees()-22.5) > 1e-12 {
		t.Errorf("saw %+v", d.Saw)
	}
	for path, text := range map[string]string{"features.0.hollow": "30", "features.1.from": "top-end", "features.3.edge": "all", "saw.cradle": "15"} {
		doc := read(t, shaped)
		was := doc.Text(path)
		if err := doc.Set(path, text); err != nil {
			t.Fatal(err)
		}
		if got, want := string(doc.Bytes()), strings.Replace(shaped, was, text, 1); path != "features.1.from" && got != want {
			t.Errorf("%s: wrote\n%s", path, got)
		}
		if _, err := read(t, string(doc.Bytes())).Design(); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	}
}

// What a shape on an edge cannot do without, and words that are none, are refused with their place.
func TestShapesRefused(t *testing.T) {
	const head = "splaywright: 1\nform: stool\nsize: {height: 300, width: 420, depth: 250}\nfeatures:\n  - "
	for item, says := range map[string]string{
		"{on: side, kind: notch, width: 60}":                                       "depth",
		"{on: side, kind: taper, edge: front-edge, length: 60, depth: 4}":          "from",
		"{on: side, kind: chamfer, width: 6}":                                      "edge",
		"{on: side, kind: chamfer, edge: top, width: 6}":                           "front-edge",
		"{on: side, kind: ogee, width: 60, rise: 20, hollow: 0}":                   "hollow",
		"{on: side, kind: bead, width: 60}":                                        "chamfer",
		"{on: side, kind: notch, from: middle, width: 60, depth: 3}":               "floor-end",
		"{on: side, kind: notch, width: 60, depth: 3, edge: front-edge, deep: 30}": "deep",
	} {
		_, err := read(t, head+item+"\n").Design()
		if err == nil || !strings.Contains(err.Error(), says) || !strings.Contains(err.Error(), ":5:") {
			t.Errorf("%s: %v", item, err)
		}
	}
}
