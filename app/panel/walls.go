package panel

import (
	"splaywright/app/field"
	"splaywright/model/form"
	"splaywright/model/measure"
)

// wallGroups are the fields of the forms whose boards stand round: tray, chest and ring.
func wallGroups(d *form.Design, timbers []string) []Group {
	out := []Group{wallSplayGroup(d), wallBoardsGroup(d, timbers)}
	out = append(out, wallCornerGroups(d, timbers)...)
	out = append(out, bottomGroups(d, timbers)...)
	if d.Form == chest {
		out = append(out, lidGroups(d, timbers)...)
	}
	return out
}

func wallSplayGroup(d *form.Design) Group {
	ends := angle("splay.ends", "Ends lean", func(d *form.Design) measure.Angle { return d.Splay.Ends })
	g := Group{Title: "Splay"}
	if d.Form == ring {
		ends.Label = "Staves lean"
		g.Fields = append(g.Fields, ends)
	} else {
		g.Fields = append(g.Fields, ends,
			angle("splay.front", "Front leans", func(d *form.Design) measure.Angle { return d.Splay.Front }),
			maybeAngle("splay.back", "Back leans", func(d *form.Design) *measure.Angle { return d.Splay.Back }, "like the front"),
			maybeAngle("splay.end-left", "Left end leans", func(d *form.Design) *measure.Angle { return d.Splay.EndLeft }, "like the ends"),
			maybeAngle("splay.end-right", "Right end leans", func(d *form.Design) *measure.Angle { return d.Splay.EndRight }, "like the ends"))
	}
	cut := choice("splay.edge-cut", "Edges cut", func(d *form.Design) string { return string(d.Splay.EdgeCut) }, string(form.EdgeLevel), string(form.EdgeSquare))
	g.Fields = append(g.Fields, cut, measuredField())
	return g
}

func wallBoardsGroup(d *form.Design, timbers []string) Group {
	g := Group{Title: "Boards", Fields: []field.Spec{
		length("boards.side.thickness", "Walls, thick", func(d *form.Design) measure.Length { return d.Boards.Side.Thickness }),
		words("boards.side.timber", "Walls, timber", func(d *form.Design) string { return d.Boards.Side.Timber }, timbers...),
	}}
	if d.Form == ring {
		return g
	}
	for _, b := range []struct {
		key, name string
		get       func(*form.Design) form.Board
	}{
		{"front", "Front", func(d *form.Design) form.Board { return d.Boards.Front }},
		{"back", "Back", func(d *form.Design) form.Board { return d.Boards.Back }},
		{"end", "Ends", func(d *form.Design) form.Board { return d.Boards.End }},
	} {
		g.Fields = append(g.Fields,
			length("boards."+b.key+".thickness", b.name+", thick", func(d *form.Design) measure.Length { return b.get(d).Thickness }),
			words("boards."+b.key+".timber", b.name+", timber", func(d *form.Design) string { return b.get(d).Timber }, timbers...))
	}
	return g
}

func wallCornerGroups(d *form.Design, timbers []string) []Group {
	return append(jointGroups(d, timbers), leftOver(d)...)
}

// leftOver are what other joints of walls left in the design, so that it can be taken out.
func leftOver(d *form.Design) []Group {
	var out []Group
	k := d.Corners
	if k.Spline != nil && k.Joint != form.SplinedMitre {
		out = append(out, Group{Title: "Splines", Remove: "corners.spline"})
	}
	if k.Keys != nil && k.Joint != form.KeyedMitre {
		out = append(out, Group{Title: "Corner keys", Remove: "corners.keys"})
	}
	if !form.LetIn(k.Joint) {
		if k.Shoulder != nil {
			out = append(out, Group{Title: "Shoulder", Remove: "corners.shoulder"})
		}
		if k.Stop != 0 {
			out = append(out, Group{Title: "Short of the rim", Remove: "corners.stop"})
		}
	}
	return out
}

// jointGroups are the fields of the joint that the walls have.
func jointGroups(d *form.Design, timbers []string) []Group {
	g := Group{Title: "Corners", Fields: []field.Spec{
		choice("corners.joint", "Joint", func(d *form.Design) string { return d.Corners.Joint }, form.WallJoints()...),
	}}
	add := func(specs ...field.Spec) { g.Fields = append(g.Fields, specs...) }
	over := choice("corners.over", "Runs through", func(d *form.Design) string { return d.Corners.Over }, form.OnFront, form.OnEnd)
	switch d.Corners.Joint {
	case form.ThroughDovetail, form.HalfBlindDovetail, form.FingerJoint:
		add(tailedFields(d, form.OnFront, form.OnEnd)...)
		return []Group{g}
	case form.Housing:
		if d.Form != ring {
			add(over)
		}
		add(maybe("corners.depth", "Housing, deep", func(d *form.Design) *measure.Length { return d.Corners.Depth }),
			length("corners.overhang", "Overhang", func(d *form.Design) measure.Length { return d.Corners.Overhang }))
		add(shoulderFields("rim")...)
	case form.GrooveTongue:
		if d.Form != ring {
			add(over)
		}
		add(maybe("corners.depth", "Groove, deep", func(d *form.Design) *measure.Length { return d.Corners.Depth }))
		add(shoulderFields("rim")...)
	case form.Butt:
		if d.Form != ring {
			add(over)
		}
	case form.SplinedMitre:
		return []Group{g, splineGroup(timbers)}
	case form.KeyedMitre:
		return []Group{g, keysGroup(timbers)}
	default:
		return []Group{g}
	}
	screws := func(d *form.Design) *form.Screws { return d.Corners.Screws }
	return append([]Group{g}, screwGroup("Corner screws", "corners.screws", screws, screws(d) != nil, "20")...)
}

// shoulderFields are the sizes of a board that is let into another as a tongue, or not all along.
func shoulderFields(edge string) []field.Spec {
	return []field.Spec{
		maybe("corners.shoulder", "Shoulder", func(d *form.Design) *measure.Length { return d.Corners.Shoulder }),
		length("corners.stop", "Short of the "+edge, func(d *form.Design) measure.Length { return d.Corners.Stop }),
	}
}

func splineGroup(timbers []string) Group {
	at := func(d *form.Design) form.Spline {
		if d.Corners.Spline != nil {
			return *d.Corners.Spline
		}
		return form.Spline{}
	}
	return Group{Title: "Splines", Fields: []field.Spec{
		length("corners.spline.thickness", "Thickness", func(d *form.Design) measure.Length { return at(d).Thickness }),
		length("corners.spline.width", "Across the joint", func(d *form.Design) measure.Length { return at(d).Width }),
		length("corners.spline.inset", "From inside", func(d *form.Design) measure.Length { return at(d).Inset }),
		length("corners.spline.stop", "Short of the rim", func(d *form.Design) measure.Length { return at(d).Stop }),
		words("corners.spline.timber", "Timber", func(d *form.Design) string { return at(d).Timber }, timbers...),
	}}
}

func keysGroup(timbers []string) Group {
	at := func(d *form.Design) form.Keys {
		if d.Corners.Keys != nil {
			return *d.Corners.Keys
		}
		return form.Keys{}
	}
	return Group{Title: "Corner keys", Fields: []field.Spec{
		count("corners.keys.count", "A corner", func(d *form.Design) int { return at(d).Count }),
		length("corners.keys.thickness", "Thickness", func(d *form.Design) measure.Length { return at(d).Thickness }),
		length("corners.keys.depth", "Slots, deep", func(d *form.Design) measure.Length { return at(d).Depth }),
		length("corners.keys.pitch", "Pitch", func(d *form.Design) measure.Length { return at(d).Pitch }),
		words("corners.keys.timber", "Timber", func(d *form.Design) string { return at(d).Timber }, timbers...),
	}}
}

func bottomGroups(d *form.Design, timbers []string) []Group {
	if d.Bottom == nil {
		return []Group{{Title: "Bottom", Adds: []Add{{Label: "Add a bottom", Fields: [][2]string{
			{"bottom.thickness", "10 mm"}, {"bottom.joint", form.InGroove},
		}}}}}
	}
	at := func(d *form.Design) form.Bottom {
		if d.Bottom != nil {
			return *d.Bottom
		}
		return form.Bottom{}
	}
	g := Group{Title: "Bottom", Remove: "bottom", Fields: []field.Spec{
		length("bottom.thickness", "Thickness", func(d *form.Design) measure.Length { return at(d).Thickness }),
		words("bottom.timber", "Timber", func(d *form.Design) string { return at(d).Timber }, timbers...),
		choice("bottom.joint", "Held by", func(d *form.Design) string { return at(d).Joint }, form.InGroove, form.InRabbet, form.ScrewedOn),
	}}
	if d.Bottom.Joint == form.ScrewedOn {
		screws := func(d *form.Design) *form.Screws { return at(d).Screws }
		return append([]Group{g}, screwGroup("Bottom, screws", "bottom.screws", screws, screws(d) != nil, "40")...)
	}
	if d.Bottom.Joint != form.InRabbet {
		g.Fields = append(g.Fields, length("bottom.up", "Off the floor", func(d *form.Design) measure.Length { return at(d).Up }))
	}
	g.Fields = append(g.Fields,
		maybe("bottom.depth", "Deep in the wall", func(d *form.Design) *measure.Length { return at(d).Depth }),
		maybe("bottom.clearance", "Clearance", func(d *form.Design) *measure.Length { return at(d).Clearance }))
	return []Group{g}
}

func lidGroups(d *form.Design, timbers []string) []Group {
	if d.Lid == nil {
		return []Group{{Title: "Lid", Adds: []Add{{Label: "Add a lid", Fields: [][2]string{{"lid.thickness", "20 mm"}, {"lid.overhang", "10 mm"}}}}}}
	}
	at := func(d *form.Design) form.Lid {
		if d.Lid != nil {
			return *d.Lid
		}
		return form.Lid{}
	}
	g := Group{Title: "Lid", Remove: "lid", Fields: []field.Spec{
		length("lid.thickness", "Thickness", func(d *form.Design) measure.Length { return at(d).Thickness }),
		words("lid.timber", "Timber", func(d *form.Design) string { return at(d).Timber }, timbers...),
		length("lid.overhang", "Overhang", func(d *form.Design) measure.Length { return at(d).Overhang }),
	}}
	return append([]Group{g}, battenGroups(d, timbers)...)
}

func battenGroups(d *form.Design, timbers []string) []Group {
	if d.Lid.Battens == nil {
		return []Group{{Title: "Battens", Adds: []Add{{Label: "Add battens", Fields: [][2]string{
			{"lid.battens.width", "50 mm"}, {"lid.battens.thickness", "20 mm"}, {"lid.battens.count", "2"},
		}}}}}
	}
	at := func(d *form.Design) form.Battens {
		if d.Lid != nil && d.Lid.Battens != nil {
			return *d.Lid.Battens
		}
		return form.Battens{}
	}
	g := Group{Title: "Battens", Remove: "lid.battens", Fields: []field.Spec{
		length("lid.battens.width", "Width", func(d *form.Design) measure.Length { return at(d).Width }),
		length("lid.battens.thickness", "Thickness", func(d *form.Design) measure.Length { return at(d).Thickness }),
		length("lid.battens.inset", "From the walls", func(d *form.Design) measure.Length { return at(d).Inset }),
		count("lid.battens.count", "How many", func(d *form.Design) int { return at(d).Count }),
		words("lid.battens.timber", "Timber", func(d *form.Design) string { return at(d).Timber }, timbers...),
	}}
	screws := func(d *form.Design) *form.Screws { return at(d).Screws }
	return append([]Group{g}, screwGroup("Battens, screws", "lid.battens.screws", screws, screws(d) != nil, "20")...)
}
