package panel

import (
	"fmt"
	"strings"

	"splaywright/app/field"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

func stretcherGroups(d *form.Design, timbers []string) []Group {
	var out []Group
	for i := range d.Stretchers {
		out = append(out, stretcherGroup(d, i, timbers)...)
	}
	add := Add{Label: "Add a stretcher", Path: "stretchers", Fields: [][2]string{
		{"width", "60 mm"}, {"thickness", "20 mm"}, {"set", "on edge"}, {"below-top", "0"}, {"across", "0"}, {"joint", "butt"},
	}}
	return append(out, Group{Title: "Stretchers", Adds: []Add{add}})
}

func apronGroups(d *form.Design, timbers []string) []Group {
	now := d.Aprons
	if now == nil {
		return []Group{{Title: "Aprons", Adds: []Add{{Label: "Add aprons", Fields: [][2]string{{"aprons.at", form.AtBoth}, {"aprons.width", "70 mm"}, {"aprons.set-in", "6 mm"}}}}}}
	}
	at := func(d *form.Design) form.Aprons {
		if d.Aprons == nil {
			return form.Aprons{}
		}
		return *d.Aprons
	}
	g := Group{Title: "Aprons", Remove: "aprons", Fields: []field.Spec{
		choice("aprons.at", "At", func(d *form.Design) string { return at(d).At }, form.AtBoth, form.AtFront, form.AtBack),
		length("aprons.width", "Width", func(d *form.Design) measure.Length { return at(d).Width }),
		length("aprons.thickness", "Thickness", func(d *form.Design) measure.Length { return at(d).Thickness }),
		maybe("aprons.set-in", "Set in", func(d *form.Design) *measure.Length { return at(d).SetIn }),
		length("aprons.below-top", "Below the top", func(d *form.Design) measure.Length { return at(d).BelowTop }),
		choice("aprons.stand", "Stand", func(d *form.Design) string { return at(d).Stand }, form.Leaning, form.Plumb),
		choice("aprons.joint", "Joint", func(d *form.Design) string { return at(d).Joint }, form.Butt, form.Housing),
	}}
	if now.Joint == form.Housing {
		g.Fields = append(g.Fields, length("aprons.depth", "Housing, deep", func(d *form.Design) measure.Length { return at(d).Depth }))
	}
	g.Fields = append(g.Fields, words("aprons.timber", "Timber", func(d *form.Design) string { return at(d).Timber }, timbers...))
	screws := screwGroup("Aprons, screws", "aprons.screws", func(d *form.Design) *form.Screws { return at(d).Screws }, now.Screws != nil, "15")
	return append([]Group{g}, screws...)
}

func tenonGroup(title, path, joint string, get func(*form.Design) *form.Tenon) Group {
	at := func(d *form.Design) form.Tenon {
		if t := get(d); t != nil {
			return *t
		}
		return form.Tenon{}
	}
	g := Group{Title: title, Fields: []field.Spec{
		length(path+".width", "Width", func(d *form.Design) measure.Length { return at(d).Width }),
		length(path+".thickness", "Thickness", func(d *form.Design) measure.Length { return at(d).Thickness }),
	}}
	if joint == form.HousedTenon {
		g.Fields = append(g.Fields, length(path+".depth", "Into the side", func(d *form.Design) measure.Length { return at(d).Depth }))
		return g
	}
	g.Fields = append(g.Fields, length(path+".proud", "Proud", func(d *form.Design) measure.Length { return at(d).Proud }),
		field.Spec{Path: path + ".wedges", Label: "Wedges", Value: func(d *form.Design) any {
			if n := at(d).Wedges; n != nil {
				return *n
			}
			return nil
		}},
		length(path+".slot", "Slots, wide", func(d *form.Design) measure.Length { return at(d).Slot }),
		length(path+".flare", "Mortise flares", func(d *form.Design) measure.Length { return at(d).Flare }))
	return g
}

func stretcherGroup(d *form.Design, i int, timbers []string) []Group {
	now := d.Stretchers[i]
	path := fmt.Sprintf("stretchers.%d", i)
	at := func(d *form.Design) form.Stretcher {
		if i < len(d.Stretchers) {
			return d.Stretchers[i]
		}
		return form.Stretcher{}
	}
	title := fmt.Sprintf("Stretcher %d", i+1)
	g := Group{Title: title, Remove: path, Fields: []field.Spec{
		length(path+".width", "Width", func(d *form.Design) measure.Length { return at(d).Width }),
		length(path+".thickness", "Thickness", func(d *form.Design) measure.Length { return at(d).Thickness }),
		choice(path+".set", "Set", func(d *form.Design) string { return at(d).Set }, "on edge", "flat"),
		length(path+".below-top", "Below the top", func(d *form.Design) measure.Length { return at(d).BelowTop }),
		length(path+".across", "From the middle", func(d *form.Design) measure.Length { return at(d).Across }),
		choice(path+".joint", "Joint", func(d *form.Design) string { return at(d).Joint }, form.StretcherJoints()...),
	}}
	if d.Form == form.Steps {
		g.Fields = append(g.Fields, choice(path+".under", "Under the tread", func(d *form.Design) string { return at(d).Under }, form.UnderUpper, form.UnderLower))
	}
	if now.Joint == "housing" {
		g.Fields = append(g.Fields, length(path+".depth", "Housing, deep", func(d *form.Design) measure.Length { return at(d).Depth }))
	}
	g.Fields = append(g.Fields, words(path+".timber", "Timber", func(d *form.Design) string { return at(d).Timber }, timbers...))
	if now.Joint == form.ThroughTenon || now.Joint == form.HousedTenon {
		out := []Group{g, tenonGroup(title+", tenon", path+".tenon", now.Joint, func(d *form.Design) *form.Tenon { return at(d).Tenon })}
		if now.Screws != nil { // left over
			out = append(out, Group{Title: title + ", screws", Remove: path + ".screws"})
		}
		return out
	}
	if now.Tenon != nil { // left over
		return []Group{g, {Title: title + ", tenon", Remove: path + ".tenon"}}
	}
	screws := screwGroup(title+", screws", path+".screws", func(d *form.Design) *form.Screws { return at(d).Screws }, now.Screws != nil, "15")
	return append([]Group{g}, screws...)
}

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

func featureGroup(i int, now form.Feature, of string) Group {
	kind := now.Kind
	path := fmt.Sprintf("features.%d", i)
	at := func(d *form.Design) form.Feature {
		if i < len(d.Features) {
			return d.Features[i]
		}
		return form.Feature{}
	}
	size := func(key, label string, get func(form.Feature) measure.Length) field.Spec {
		return length(path+"."+key, label, func(d *form.Design) measure.Length { return get(at(d)) })
	}
	x := size("x", "Along the grain", func(f form.Feature) measure.Length { return f.X })
	y := size("y", "Across", func(f form.Feature) measure.Length { return f.Y })
	g := Group{Title: fmt.Sprintf("Feature %d: %s", i+1, kind), Remove: path, Fields: []field.Spec{
		choice(path+".on", "On", func(d *form.Design) string { return at(d).On }, boardsFor(kind, of)...),
	}}
	add := func(specs ...field.Spec) { g.Fields = append(g.Fields, specs...) }
	long := size("length", "Length", func(f form.Feature) measure.Length { return f.Length })
	wide := size("width", "Width", func(f form.Feature) measure.Length { return f.Width })
	deep := size("depth", "Depth", func(f form.Feature) measure.Length { return f.Depth })
	rise := size("rise", "Rise", func(f form.Feature) measure.Length { return f.Rise })
	radius := size("radius", "Radius", func(f form.Feature) measure.Length { return f.Radius })
	turned := angle(path+".angle", "Turned", func(d *form.Design) measure.Angle { return at(d).Angle })
	edges := append(edgesOf(now.On), form.LongEdges, form.BothEnds, form.AllEdges)
	edge := choice(path+".edge", "Edge", func(d *form.Design) string { return at(d).Edge }, edges...)
	along := size("x", "Along the edge", func(f form.Feature) measure.Length { return f.X })
	if strings.HasSuffix(now.Edge, "-end") || now.Edge == "" && strings.HasPrefix(now.On, "side") {
		along = size("y", "Along the edge", func(f form.Feature) measure.Length { return f.Y })
	}
	bevel := angle(path+".angle", "From the face", func(d *form.Design) measure.Angle {
		if a := at(d).Angle; a != 0 {
			return a
		}
		return form.UsualChamfer
	})
	from := choice(path+".from", "From the", func(d *form.Design) string { return at(d).From }, endsOf(now.Edge, edgesOf(now.On))...)
	face := choice(path+".face", "Face", func(d *form.Design) string { return at(d).Face }, "outer", form.InnerFace)
	switch part.FeatureKind(kind) {
	case part.Arch:
		add(wide, rise)
	case part.Ogee:
		add(wide, rise, radius, size("hollow", "Hollow radius", func(f form.Feature) measure.Length { return f.Hollow }), along)
	case part.HandHole:
		add(long, wide, x, y)
	case part.Hole:
		add(size("diameter", "Diameter", func(f form.Feature) measure.Length { return f.Diameter }), x, y)
	case part.Slot:
		add(long, wide, x, y, turned)
	case part.Groove:
		add(wide, deep, long, x, y, face)
	case part.Notch:
		add(edge, from, wide, deep, along)
	case part.Taper:
		add(edge, from, long, deep, along)
	case part.Chamfer:
		add(edge, face, wide, bevel, long, along)
	case part.RoundOver:
		add(radius)
		if now.Edge != "" {
			add(edge, face)
		}
	}
	return g
}

// edgesOf are the edges that a board has.
func edgesOf(on string) []string {
	switch {
	case strings.HasPrefix(on, "side"):
		return []string{"front-edge", "back-edge", "floor-end", "top-end"}
	case on == "top", on == "bottom":
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
