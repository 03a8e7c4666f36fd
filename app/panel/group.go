// Package panel holds the parts of the window beside the drawings: the column of sizes, the
// tables, the findings and the strip on top.
package panel

import (
	"slices"
	"strings"

	"splaywright/app/field"
	"splaywright/app/say"
	"splaywright/model/form"
	"splaywright/model/measure"
)

// Group is a set of fields that belong together.
type Group struct {
	Title  string
	Fields []field.Spec
	Adds   []Add  // what can be added here
	Remove string // the path that the group's button removes; "" = nothing
}

// Add is something that can be added to a design.
type Add struct {
	Label  string
	Path   string // a list to append to; "" = Fields are paths of their own
	Fields [][2]string
	Name   bool // a named value, which is asked for
}

// The forms whose fields differ from a stool's.
const (
	tray  = "tray"
	chest = "chest"
	ring  = "ring"
)

// Groups gives the groups of a design: only the fields that its form, its joint, its stretchers
// and its features use. names are its named values.
func Groups(d *form.Design, timbers, names []string) []Group {
	d = settled(d)
	out := []Group{pieceGroup(d, timbers)}
	switch d.Form {
	case tray, chest, ring:
		out = append(out, wallGroups(d, timbers)...)
	default:
		out = append(out, splayGroup(d), boardsGroup(timbers))
		out = append(out, cornerGroups(d, timbers)...)
		out = append(out, stretcherGroups(d, timbers)...)
		if d.Form != form.Steps {
			out = append(out, apronGroups(d, timbers)...)
		}
	}
	out = append(out, featureGroups(d)...)
	for _, g := range out {
		for i := range g.Fields {
			g.Fields[i].Lock = lockable(g.Fields[i].Path)
		}
	}
	out = append(out, useGroup(), nameGroup(names), roughGroup(), sawGroup(), toleranceGroup(d), cameOutGroup(d), planGroup(), costGroup())
	out = append(out, yardGroups(d, timbers)...)
	return append(out, papersGroup())
}

// settled is a design in which joints have names that nobody named, so that the fields are those that its joints use.
func settled(d *form.Design) *form.Design {
	out, full := *d, d.Defaults()
	out.Corners.Joint = full.Corners.Joint
	out.Stretchers = slices.Clone(d.Stretchers)
	for i := range min(len(out.Stretchers), len(full.Stretchers)) {
		out.Stretchers[i].Joint = full.Stretchers[i].Joint
	}
	if d.Aprons != nil && full.Aprons != nil {
		a := *d.Aprons
		a.Joint = full.Aprons.Joint
		out.Aprons = &a
	}
	if d.Bottom != nil && full.Bottom != nil {
		b := *d.Bottom
		b.Joint = full.Bottom.Joint
		out.Bottom = &b
	}
	return &out
}

// lockable tells of the sizes that resizing a piece may change.
func lockable(path string) bool {
	switch path {
	case "size.height", "size.width", "size.depth", "splay.ends", "splay.edges", "splay.front",
		"corners.tails", "corners.tail", "corners.pin", "corners.half-pin", "corners.tail-widths":
		return true
	}
	return strings.HasPrefix(path, "stretchers.") && strings.HasSuffix(path, ".across")
}

func length(path, label string, get func(*form.Design) measure.Length) field.Spec {
	return field.Spec{Path: path, Label: label, Turns: true, Value: func(d *form.Design) any { return get(d) }}
}

func angle(path, label string, get func(*form.Design) measure.Angle) field.Spec {
	return field.Spec{Path: path, Label: label, Turns: true, Value: func(d *form.Design) any { return get(d) }}
}

func count(path, label string, get func(*form.Design) int) field.Spec {
	return field.Spec{Path: path, Label: label, Turns: true, Value: func(d *form.Design) any { return get(d) }}
}

// nameGroup is the values that the person has named, for use in any number of the design.
func nameGroup(names []string) Group {
	g := Group{Title: "Named values", Adds: []Add{{Label: "Name a value…", Name: true}}}
	for _, n := range names {
		g.Fields = append(g.Fields, field.Spec{Path: "names." + n, Label: n, Number: true, Menu: []string{Rename, Remove}})
	}
	return g
}

// What can be done with a named value besides typing it.
const (
	Rename = "Rename…"
	Remove = "Remove"
)

// maybeAngle is an angle that follows from another when it is left out, as the hint says.
func maybeAngle(path, label string, get func(*form.Design) *measure.Angle, hint string) field.Spec {
	return field.Spec{Path: path, Label: label, Turns: true, Hint: hint, Value: func(d *form.Design) any {
		if a := get(d); a != nil {
			return *a
		}
		return nil
	}}
}

// angleIfAny is an angle of 0 where it is left out, which means what the hint says and no angle.
func angleIfAny(path, label, hint string, get func(*form.Design) measure.Angle) field.Spec {
	return field.Spec{Path: path, Label: label, Turns: true, Hint: hint, Value: func(d *form.Design) any { return ifAny(get(d)) }}
}

// lengthIfAny is a length of 0 where it is left out, which means what the hint says and no length.
func lengthIfAny(path, label, hint string, get func(*form.Design) measure.Length) field.Spec {
	return field.Spec{Path: path, Label: label, Turns: true, Hint: hint, Value: func(d *form.Design) any { return ifAny(get(d)) }}
}

func ifAny[T comparable](v T) any {
	var none T
	if v == none {
		return nil
	}
	return v
}

// maybe is a length that follows from others when it is left out.
func maybe(path, label string, get func(*form.Design) *measure.Length) field.Spec {
	return field.Spec{Path: path, Label: label, Turns: true, Value: func(d *form.Design) any {
		if l := get(d); l != nil {
			return *l
		}
		return nil
	}}
}

func choice(path, label string, get func(*form.Design) string, choices ...string) field.Spec {
	return field.Spec{Path: path, Label: label, Choices: choices, Value: func(d *form.Design) any { return get(d) }}
}

func flag(path, label string, get func(*form.Design) bool) field.Spec {
	return field.Spec{Path: path, Label: label, Choices: []string{"true", "false"}, Senses: answers, Value: func(d *form.Design) any { return get(d) }}
}

// answers are what the design file's true and false are said by.
var answers = map[string]string{"true": say.Key("yes"), "false": say.Key("no")}

func words(path, label string, get func(*form.Design) string, offers ...string) field.Spec {
	return field.Spec{Path: path, Label: label, Offers: offers, Value: func(d *form.Design) any { return get(d) }}
}
