package pattern

import (
	"slices"
	"strconv"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
	"splaywright/render/table"
)

// Name is what a pattern is called after: one part, or parts that are cut alike.
type Name struct {
	Marks string // "3", "1, 2", "1–6"
	Words string // "Side, left", "Stave 1–6"
	ID    string // "side-left"; of several parts the first and the last: "stave-1-to-6"
}

func nameOf(same []*part.Part) Name {
	if len(same) == 1 {
		return Name{same[0].Mark, same[0].Name, same[0].ID}
	}
	var names, marks []string
	for _, q := range same {
		names, marks = append(names, q.Name), append(marks, q.Mark)
	}
	first, last := same[0].ID, same[len(same)-1].ID
	if i := strings.LastIndexByte(last, '-'); i >= 0 && strings.HasPrefix(first, last[:i+1]) {
		last = last[i+1:]
	}
	if len(same) == 2 {
		return Name{strings.Join(marks, ", "), table.JoinNames(names), first + "-and-" + last}
	}
	n := Name{strings.Join(marks, ", "), table.JoinNames(names), first + "-to-" + last}
	switch last := len(marks) - 1; stepOf(marks) {
	case 0:
	case 1:
		n.Marks = marks[0] + "–" + marks[last]
	default:
		n.Marks = marks[0] + ", " + marks[1] + " … " + marks[last]
		n.Words = names[0] + ", " + names[1] + " … " + names[last]
	}
	return n
}

// stepOf is by how much marks count on from each other, all alike; 0 = they do not.
func stepOf(marks []string) int {
	step, before := 0, 0
	for i, m := range marks {
		v, err := strconv.Atoi(m)
		if err != nil || i > 1 && v-before != step {
			return 0
		}
		step, before = v-before, v
	}
	return step
}

// alike gathers the parts, in order, that have the same solid in the same frame, with the same names
// for its edges, so that one pattern does for all of them.
func alike(parts []*part.Part) [][]*part.Part {
	var out [][]*part.Part
	for _, q := range parts {
		if q.Solid == nil {
			continue
		}
		i := slices.IndexFunc(out, func(g []*part.Part) bool { return same(g[0], q) })
		if i < 0 {
			out = append(out, []*part.Part{q})
			continue
		}
		out[i] = append(out[i], q)
	}
	return out
}

// same compares the corners in their order, which is that of the walls: solids that were built in
// another order count as different, and have each their own pattern.
func same(a, b *part.Part) bool {
	return len(a.Solid.Faces) == len(b.Solid.Faces) &&
		slices.EqualFunc(a.Cuts, b.Cuts, func(c, d part.Cut) bool {
			return c.ID == d.ID && c.Normal.Sub(d.Normal).Len() < sameSpot && near(c.Offset, d.Offset)
		}) &&
		slices.EqualFunc(a.Bores, b.Bores, func(c, d part.Bore) bool {
			return c.Entry.Sub(d.Entry).Len() < sameSpot && c.Axis.Sub(d.Axis).Len() < sameSpot &&
				near(c.Diameter.MM(), d.Diameter.MM()) && near(c.Depth.MM(), d.Depth.MM())
		}) &&
		slices.EqualFunc(a.Solid.Vertices, b.Solid.Vertices, func(v, w mgl64.Vec3) bool { return v.Sub(w).Len() < sameSpot })
}

func near(a, b float64) bool { return a-b < sameSpot && b-a < sameSpot }
