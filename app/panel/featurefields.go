package panel

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/app/field"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// featureGroups are the groups of the features, and what can be added to them.
func featureGroups(d *form.Design) []Group {
	var out []Group
	for i := range d.Features {
		out = append(out, featureGroup(i, d.Features[i], d.Form))
	}
	flat, wall := "top", "side"
	if d.Form == tray || d.Form == chest {
		flat, wall = "end", "front"
	} else if d.Form == ring {
		flat, wall = "stave", "stave"
	}
	long, end := "front-edge", "floor-end"
	if wall != "side" {
		long, end = "upper-edge", "right-end"
	}
	return append(out, Group{Title: "Features", Adds: []Add{
		feature("Add an arch", wall, part.Arch, [2]string{"width", "120 mm"}, [2]string{"rise", "35 mm"}),
		feature("Add a hand hole", flat, part.HandHole, [2]string{"length", "95 mm"}, [2]string{"width", "28 mm"}),
		feature("Add a hole", flat, part.Hole, [2]string{"diameter", "25 mm"}, [2]string{"x", "0"}, [2]string{"y", "0"}),
		feature("Add a row of holes", wall, part.FeatureKind(form.RowOfHoles), [2]string{"diameter", "8 mm"}, [2]string{"count", "3"}, [2]string{"pitch", "32 mm"}),
		feature("Add a slot", flat, part.Slot, [2]string{"length", "90 mm"}, [2]string{"width", "25 mm"}),
		feature("Add an ogee", wall, part.Ogee, [2]string{"width", "160 mm"}, [2]string{"rise", "30 mm"}, [2]string{"radius", "20 mm"}, [2]string{"hollow", "30 mm"}),
		feature("Add a notch", wall, part.Notch, [2]string{"width", "40 mm"}, [2]string{"depth", "12 mm"}),
		feature("Add a taper", wall, part.Taper, [2]string{"edge", long}, [2]string{"from", end}, [2]string{"length", "120 mm"}, [2]string{"depth", "12 mm"}),
		feature("Add a groove", wall, part.Groove, [2]string{"width", "6 mm"}, [2]string{"depth", "5 mm"}),
		feature("Add a chamfer", wall, part.Chamfer, [2]string{"edge", long}, [2]string{"width", "4 mm"}),
		feature("Add a round-over", "all", part.RoundOver, [2]string{"radius", "3 mm"}),
	}})
}

func feature(label, on string, kind part.FeatureKind, sizes ...[2]string) Add {
	fields := append([][2]string{{"on", on}, {"kind", string(kind)}}, sizes...)
	return Add{Label: label, Path: "features", Fields: fields}
}

// featureFields makes the fields of one feature of a design.
type featureFields struct {
	i   int
	now form.Feature
}

func (e featureFields) path(key string) string { return fmt.Sprintf("features.%d.%s", e.i, key) }

// of is the feature of a design, as it may have changed since; nothing where it is gone.
func (e featureFields) of(d *form.Design) form.Feature {
	if e.i < len(d.Features) {
		return d.Features[e.i]
	}
	return form.Feature{}
}

func (e featureFields) size(key, label string, get func(form.Feature) measure.Length) field.Spec {
	return length(e.path(key), label, func(d *form.Design) measure.Length { return get(e.of(d)) })
}

// optional is a size that may be left out: the field is then empty, and the hint says what that comes to.
func (e featureFields) optional(key, label, hint string, get func(form.Feature) measure.Length) field.Spec {
	return lengthIfAny(e.path(key), label, hint, func(d *form.Design) measure.Length { return get(e.of(d)) })
}

func (e featureFields) pick(key, label string, get func(form.Feature) string, choices ...string) field.Spec {
	return choice(e.path(key), label, func(d *form.Design) string { return get(e.of(d)) }, choices...)
}

func (e featureFields) angle(label string, usual measure.Angle) field.Spec {
	return angle(e.path("angle"), label, func(d *form.Design) measure.Angle {
		if a := e.of(d).Angle; a != 0 {
			return a
		}
		return usual
	})
}

func (e featureFields) long() field.Spec {
	return e.size("length", "Length", func(f form.Feature) measure.Length { return f.Length })
}

// stretch is a length that goes from end to end where it is left out.
func (e featureFields) stretch() field.Spec {
	return e.optional("length", "Length", "from end to end", func(f form.Feature) measure.Length { return f.Length })
}

func (e featureFields) wide() field.Spec {
	return e.size("width", "Width", func(f form.Feature) measure.Length { return f.Width })
}

func (e featureFields) deep() field.Spec {
	return e.size("depth", "Depth", func(f form.Feature) measure.Length { return f.Depth })
}

// blind is the depth of a hollow that otherwise goes right through, and the face that it is cut from.
func (e featureFields) blind() []field.Spec {
	out := []field.Spec{e.optional("depth", "Depth", "right through", func(f form.Feature) measure.Length { return f.Depth })}
	if e.now.Depth > 0 || e.now.Face != "" {
		out = append(out, e.face())
	}
	return out
}

func (e featureFields) rise() field.Spec {
	return e.size("rise", "Rise", func(f form.Feature) measure.Length { return f.Rise })
}

func (e featureFields) radius() field.Spec {
	return e.size("radius", "Radius", func(f form.Feature) measure.Length { return f.Radius })
}

func (e featureFields) across() field.Spec {
	return e.size("diameter", "Diameter", func(f form.Feature) measure.Length { return f.Diameter })
}

// onFace are the fields that place a shape on a face.
func (e featureFields) onFace() []field.Spec {
	return []field.Spec{
		e.size("x", "Along the grain", func(f form.Feature) measure.Length { return f.X }),
		e.size("y", "Across", func(f form.Feature) measure.Length { return f.Y }),
	}
}

func (e featureFields) face() field.Spec {
	return e.pick("face", "Face", func(f form.Feature) string { return f.Face }, "outer", form.InnerFace)
}

func (e featureFields) edge() field.Spec {
	edges := append(edgesOf(e.now.On), form.LongEdges, form.BothEnds, form.AllEdges)
	out := e.pick("edge", "Edge", func(f form.Feature) string { return f.Edge }, edges...)
	for _, lowest := range []string{"floor-end", "lower-edge"} { // where a board stands, or hangs over the floor
		if slices.Contains(edges, lowest) {
			out.Hint = lowest
		}
	}
	return out
}

func (e featureFields) from() field.Spec {
	return e.pick("from", "From the", func(f form.Feature) string { return f.From }, endsOf(e.now.Edge, edgesOf(e.now.On))...)
}

// along places a shape on its edge: by y on an end, by x on a long edge.
func (e featureFields) along() field.Spec {
	if e.now.Along() == "y" {
		return e.size("y", "Along the edge", func(f form.Feature) measure.Length { return f.Y })
	}
	return e.size("x", "Along the edge", func(f form.Feature) measure.Length { return f.X })
}

func featureGroup(i int, now form.Feature, of string) Group {
	e := featureFields{i, now}
	path := fmt.Sprintf("features.%d", i)
	fields := []field.Spec{e.pick("on", "On", func(f form.Feature) string { return f.On }, boardsFor(now.Kind, of)...)}
	return Group{Title: fmt.Sprintf("Feature %d: %s", i+1, now.Kind), Remove: path, Fields: append(fields, e.shape()...)}
}

// shape are the fields that shape and place a feature of its kind.
func (e featureFields) shape() []field.Spec {
	switch e.now.Kind {
	case string(part.Arch):
		return []field.Spec{e.edge(), e.wide(), e.rise(), e.along()}
	case string(part.Ogee):
		hollow := e.optional("hollow", "Hollow radius", "as the radius", func(f form.Feature) measure.Length { return f.Hollow })
		radius := e.optional("radius", "Radius", "half the rise", func(f form.Feature) measure.Length { return f.Radius })
		return []field.Spec{e.edge(), e.wide(), e.rise(), radius, hollow, e.along()}
	case string(part.Hole):
		return append(append([]field.Spec{e.across()}, e.onFace()...), e.blind()...)
	case form.RowOfHoles:
		row := []field.Spec{e.across(), count(e.path("count"), "Count", func(d *form.Design) int { return e.of(d).Count }),
			e.size("pitch", "Middle to middle", func(f form.Feature) measure.Length { return f.Pitch }), e.angle("Turned", 0)}
		return append(append(row, e.onFace()...), e.blind()...)
	case string(part.HandHole), string(part.Slot):
		return append(append([]field.Spec{e.long(), e.wide(), e.angle("Turned", 0)}, e.onFace()...), e.blind()...)
	case string(part.Groove):
		return append(append([]field.Spec{e.wide(), e.deep(), e.stretch()}, e.onFace()...), e.face())
	case string(part.Notch):
		return []field.Spec{e.edge(), e.from(), e.wide(), e.deep(), e.along()}
	case string(part.Taper):
		return []field.Spec{e.edge(), e.from(), e.long(), e.deep(), e.along()}
	case string(part.Chamfer):
		return []field.Spec{e.edge(), e.face(), e.wide(), e.angle("From the face", form.UsualChamfer), e.stretch(), e.along()}
	case string(part.RoundOver):
		edge := e.edge()
		edge.Hint = "all that is felt"
		if e.now.Edge == "" {
			return []field.Spec{e.radius(), edge}
		}
		return []field.Spec{e.radius(), edge, e.face()}
	}
	return nil
}

// edgesOf are the edges that a board has.
func edgesOf(on string) []string {
	switch {
	case strings.HasPrefix(on, "side"):
		return []string{"front-edge", "back-edge", "floor-end", "top-end"}
	case strings.HasPrefix(on, "top"), on == "bottom":
		return []string{"front-edge", "back-edge", "left-end", "right-end"}
	case on == "lid":
		return []string{"left-edge", "right-edge", "front-end", "back-end"}
	}
	return []string{"lower-edge", "upper-edge", "left-end", "right-end"}
}

// endsOf are the edges that one edge of a board ends at: those across it.
func endsOf(edge string, all []string) []string {
	if strings.HasSuffix(edge, "-end") {
		return all[:2]
	}
	return all[2:]
}

// boardsFor are the boards of a form that a kind of feature can be on.
func boardsFor(kind, of string) []string {
	upright := []string{"side", "side-left", "side-right"}
	level := []string{"top", "stretcher", "apron"}
	switch of {
	case form.Steps:
		upright = []string{"side", "side-left", "side-middle", "side-right"}
		level = []string{"top", "top-lower", "top-upper", "stretcher"}
	case tray, chest:
		upright = []string{"front", "back", "end", "end-left", "end-right"}
		level = []string{"bottom"}
		if of == chest {
			level = append(level, "lid")
		}
	case ring:
		upright, level = []string{"stave"}, []string{"bottom"}
	}
	switch part.FeatureKind(kind) {
	case part.Arch:
		return upright
	case part.RoundOver:
		return append([]string{"all"}, append(level, upright...)...)
	}
	return append(level, upright...)
}
