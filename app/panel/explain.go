package panel

import (
	"strings"

	"splaywright/model/form"
	"splaywright/model/part"
)

// Explained says what a size is: a sentence or two, and the name of the sketch that shows it.
type Explained struct{ Text, Sketch string }

// Explain says what the size at a path of a design is; false where nobody has said so.
func Explain(d *form.Design, path string) (Explained, bool) {
	for _, key := range keysOf(settled(d), path) {
		if e, ok := explainedPiece[key]; ok {
			return e, true
		}
		if e, ok := explainedMore[key]; ok {
			return e, true
		}
	}
	return Explained{}, false
}

// keysOf are the keys under which a size may be explained, the closest first: one of its form or its shape
// before one that holds for all.
func keysOf(d *form.Design, path string) []string {
	steps := strings.Split(path, ".")
	kind := ""
	for i, s := range steps {
		if s != "" && strings.Trim(s, "0123456789") == "" {
			if n := number(s); steps[0] == "features" && n < len(d.Features) {
				kind = d.Features[n].Kind
			}
			steps[i] = "*"
		}
	}
	plain := strings.Join(steps, ".")
	last := steps[len(steps)-1]
	out := []string{}
	if kind != "" {
		out = append(out, shapeOf(kind)+"."+last)
	}
	out = append(out, d.Form+":"+plain)
	if d.Form == tray || d.Form == chest || d.Form == ring {
		out = append(out, "walls:"+plain)
	}
	if d.Corners.Joint != "" && steps[0] == "corners" {
		out = append(out, d.Corners.Joint+":"+plain)
	}
	out = append(out, plain)
	for _, shared := range []string{"screws", "tenon", "avoid", "outline"} {
		if i := len(steps) - 2; i > 0 && (steps[i] == shared || steps[i] == "*" && steps[i-1] == shared) {
			out = append(out, shared+"."+last)
		}
	}
	switch {
	case steps[0] == OnHand || steps[0] == ToBuy:
		out = append(out, "board."+last)
	case steps[0] == "names":
		out = append(out, "names")
	case last == "timber":
		out = append(out, "part.timber")
	}
	return out
}

func number(digits string) int {
	n := 0
	for _, r := range digits {
		n = n*10 + int(r-'0')
	}
	return n
}

// shapeOf is the shape under which the sizes of a feature are explained.
func shapeOf(kind string) string {
	switch part.FeatureKind(kind) {
	case part.HandHole:
		return string(part.Slot)
	}
	return kind
}
