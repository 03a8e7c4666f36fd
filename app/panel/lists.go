package panel

import (
	"fmt"

	"splaywright/app/field"
	"splaywright/model/form"
	"splaywright/model/measure"
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
