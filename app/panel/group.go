// Package panel holds the parts of the window beside the drawings: the column of sizes, the
// tables, the findings and the strip on top.
package panel

import (
	"splaywright/app/field"
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
}

// Groups gives the groups of a design: only the fields that its joint, its stretchers and its
// features use.
func Groups(d *form.Design, timbers []string) []Group {
	out := []Group{pieceGroup(timbers), splayGroup(d), boardsGroup(timbers)}
	out = append(out, cornerGroups(d)...)
	out = append(out, stretcherGroups(d, timbers)...)
	out = append(out, featureGroups(d)...)
	return append(out, roughGroup(), sawGroup(), papersGroup())
}

func length(path, label string, get func(*form.Design) measure.Length) field.Spec {
	return field.Spec{Path: path, Label: label, Value: func(d *form.Design) any { return get(d) }}
}

func angle(path, label string, get func(*form.Design) measure.Angle) field.Spec {
	return field.Spec{Path: path, Label: label, Value: func(d *form.Design) any { return get(d) }}
}

func count(path, label string, get func(*form.Design) int) field.Spec {
	return field.Spec{Path: path, Label: label, Value: func(d *form.Design) any { return get(d) }}
}

// maybe is a length that follows from others when it is left out.
func maybe(path, label string, get func(*form.Design) *measure.Length) field.Spec {
	return field.Spec{Path: path, Label: label, Value: func(d *form.Design) any {
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
	return field.Spec{Path: path, Label: label, Choices: []string{"true", "false"}, Value: func(d *form.Design) any { return get(d) }}
}

func words(path, label string, get func(*form.Design) string, offers ...string) field.Spec {
	return field.Spec{Path: path, Label: label, Offers: offers, Value: func(d *form.Design) any { return get(d) }}
}
