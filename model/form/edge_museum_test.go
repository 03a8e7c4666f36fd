package form_test

import (
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Sizes at the ends of what there is: each gives sound solids, or a stop that says what is the matter and names
// the feature's own sizes.
func TestMuseumOfShapesOnEdges(t *testing.T) {
	tiny, whole := 0.1, 240/math.Cos(6*math.Pi/180)
	for name, c := range map[string]struct {
		f    form.Feature
		stop string // "" = it can be cut
	}{
		"notch as long as the edge":             {form.Feature{Kind: "notch", Edge: "front-edge", Width: 400, Depth: 10}, ""},
		"notch of a tenth of a millimetre":      {form.Feature{Kind: "notch", Edge: "front-edge", Width: measure.Length(tiny), Depth: measure.Length(tiny)}, ""},
		"notch that ends with the edge":         {form.Feature{Kind: "notch", Edge: "front-edge", From: "floor-end", Width: measure.Length(whole / 2), Depth: 10}, ""},
		"notch that leaves little":              {form.Feature{Kind: "notch", Edge: "floor-end", Width: 40, Depth: measure.Length(whole) - 5}, ""},
		"notch as deep as the side is high":     {form.Feature{Kind: "notch", Edge: "floor-end", Width: 40, Depth: measure.Length(whole) + 1}, "shape-through-board"},
		"notch of the whole floor end":          {form.Feature{Kind: "notch", Edge: "floor-end", Width: 400, Depth: 10}, ""},
		"taper along the whole edge":            {form.Feature{Kind: "taper", Edge: "front-edge", From: "floor-end", Length: measure.Length(whole), Depth: 30}, ""},
		"taper longer than the edge":            {form.Feature{Kind: "taper", Edge: "front-edge", From: "floor-end", Length: 2 * measure.Length(whole), Depth: 30}, ""},
		"taper of a hair":                       {form.Feature{Kind: "taper", Edge: "front-edge", From: "floor-end", Length: 100, Depth: measure.Length(tiny)}, ""},
		"taper steeper than 45":                 {form.Feature{Kind: "taper", Edge: "front-edge", From: "floor-end", Length: 10, Depth: 60}, ""},
		"taper of an end":                       {form.Feature{Kind: "taper", Edge: "floor-end", From: "front-edge", Length: 200, Depth: 40}, ""},
		"chamfer just short of the thickness":   {form.Feature{Kind: "chamfer", Edge: "front-edge", Width: 19.9}, ""},
		"chamfer of the thickness":              {form.Feature{Kind: "chamfer", Edge: "front-edge", Width: 20}, "edge-gone"},
		"chamfer of a hair":                     {form.Feature{Kind: "chamfer", Edge: "front-edge", Width: measure.Length(tiny)}, ""},
		"chamfer stopped short of nothing":      {form.Feature{Kind: "chamfer", Edge: "front-edge", Width: 5, Length: measure.Length(tiny)}, ""},
		"chamfers all round":                    {form.Feature{Kind: "chamfer", Edge: "all", Width: 5}, ""},
		"chamfers all round that nearly meet":   {form.Feature{Kind: "chamfer", Edge: "all", Width: 17}, ""},
		"round-over of almost the thickness":    {form.Feature{Kind: "round-over", Edge: "front-edge", Radius: 19.9}, ""},
		"round-over of a hair":                  {form.Feature{Kind: "round-over", Edge: "front-edge", Radius: measure.Length(tiny)}, ""},
		"ogee without a crown":                  {form.Feature{Kind: "ogee", Width: 80, Rise: 40, Radius: 20, Hollow: 20}, ""},
		"ogee a hair too narrow":                {form.Feature{Kind: "ogee", Width: 79.9, Rise: 40, Radius: 20, Hollow: 20}, "ogee-too-narrow"},
		"ogee with a plumb stretch":             {form.Feature{Kind: "ogee", Width: 150, Rise: 60, Radius: 20, Hollow: 20}, ""},
		"ogee without radii":                    {form.Feature{Kind: "ogee", Width: 150, Rise: 60}, ""},
		"ogee of great arcs":                    {form.Feature{Kind: "ogee", Width: 200, Rise: 8, Radius: 150, Hollow: 120}, ""},
		"ogee over the whole edge":              {form.Feature{Kind: "ogee", Width: 250, Rise: 20}, part.CannotBeCut},
		"arch in the front edge":                {form.Feature{Kind: "arch", Edge: "front-edge", Width: 120, Rise: 15}, ""},
		"ogee in the back edge":                 {form.Feature{Kind: "ogee", Edge: "back-edge", Width: 150, Rise: 20}, ""},
		"arch whose chord is the front edge":    {form.Feature{Kind: "arch", Edge: "front-edge", Width: measure.Length(whole) * 2, Rise: 15}, part.CannotBeCut},
		"half a circle":                         {form.Feature{Kind: "arch", Edge: "front-edge", Width: 60, Rise: 30}, ""},
		"notch and taper in one edge, apart":    {form.Feature{Kind: "notch", Edge: "back-edge", From: "top-end", Width: 30, Depth: 8}, ""},
		"chamfer on the inner face of an end":   {form.Feature{Kind: "chamfer", Edge: "floor-end", Face: form.InnerFace, Width: 6, Angle: 30 * measure.Degree}, ""},
		"round-over on the inner face of edges": {form.Feature{Kind: "round-over", Edge: "edges", Face: form.InnerFace, Radius: 5}, ""},
	} {
		t.Run(name, func(t *testing.T) {
			c.f.On = "side"
			p := form.Build(plainStool(c.f))
			var stops []part.Finding
			for _, f := range p.Findings {
				if f.Level == part.Stop {
					stops = append(stops, f)
				}
			}
			if c.stop != "" {
				if len(stops) == 0 || stops[0].ID != c.stop || len(stops[0].Sizes) == 0 || stops[0].Sizes[0][:11] != "features.0." {
					t.Fatalf("want %s: %+v", c.stop, p.Findings)
				}
				return
			}
			if len(stops) > 0 {
				t.Fatalf("%s: %s", stops[0].ID, stops[0].Text)
			}
			for _, id := range []string{"side-left", "side-right"} {
				q := p.Part(id)
				if err := q.Solid.Check(); err != nil {
					t.Fatal(err)
				}
				if plain := form.Build(plainStool()).Part(id).Volume; !(q.Volume < plain) || len(q.Features) == 0 {
					t.Errorf("%s: %g of %g, %d features", id, q.Volume, plain, len(q.Features))
				}
			}
			if l, r := p.Part("side-left"), p.Part("side-right"); math.Abs(l.Volume-r.Volume) > 1e-9*l.Volume {
				t.Errorf("the sides are no mirror images: %g and %g", l.Volume, r.Volume)
			}
		})
	}
}
