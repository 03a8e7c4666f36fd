package check

import (
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// walled tells whether the piece is made of walls: a tray, chest or ring.
func (r *run) walled() bool { return slices.Contains(form.WallForms(), r.d.Form) }

// formName is what a piece of a form is called in a sentence.
func formName(name string) string {
	switch name {
	case "tray", "chest":
		return name
	case "ring":
		return "ring of staves"
	case form.Steps:
		return "pair of steps"
	}
	return "stool, step or bench"
}

func isWall(q *part.Part) bool {
	return q.ID == "front" || q.ID == "back" || strings.HasPrefix(q.ID, "end-") || isStave(q)
}

func isBatten(q *part.Part) bool { return strings.HasPrefix(q.ID, "batten-") }

// isStave: all staves go by one name, so that equal trouble on each reads the same and is told once.
func isStave(q *part.Part) bool { return strings.HasPrefix(q.ID, "stave-") }

// wallRole is the key under boards that a wall's own board has.
func wallRole(q *part.Part) string {
	switch {
	case strings.HasPrefix(q.ID, "end-"):
		return "end"
	case isStave(q):
		return "side"
	}
	return q.ID
}

// wallSizes are the paths of the sizes that a wall's outline follows from.
func wallSizes(q *part.Part) []string {
	if wallRole(q) == "end" {
		return []string{"size.height", "size.depth"}
	}
	return []string{"size.height", "size.width"}
}

func wallTimber(d form.Design, q *part.Part) (own, path string) {
	switch {
	case q.ID == "bottom":
		return q.Timber, "bottom.timber"
	case q.ID == "lid":
		return q.Timber, "lid.timber"
	case isBatten(q):
		return q.Timber, "lid.battens.timber"
	}
	if q.Timber == d.Boards.Side.Timber {
		return q.Timber, "boards.side.timber"
	}
	return q.Timber, "boards." + wallRole(q) + ".timber"
}

// wallThicknesses looks at every kind of wall once.
func (r *run) wallThicknesses() {
	seen := map[string]bool{}
	for _, q := range r.p.Parts {
		role := wallRole(q)
		if !isWall(q) || seen[role] {
			continue
		}
		seen[role] = true
		r.thickness("boards."+role+".thickness", theBoard(q), q.Blank.Thickness, r.d.Size.Height)
	}
}

// splay is a lean of the design.
type splay struct {
	path, of string
	angle    measure.Angle
}

func splays(d form.Design) []splay {
	out := []splay{{"splay.ends", "the ends", d.Splay.Ends}}
	switch d.Form {
	case "ring":
		out[0].of = "the staves"
		return out
	case "tray", "chest":
	case form.Steps:
		out[0].of = "the outer sides"
		return append(out, splay{"splay.middle", "the middle side", d.Splay.Middle}, splay{"splay.edges", "the front and back edges", d.Splay.Edges})
	default:
		return append(out, splay{"splay.edges", "the front and back edges", d.Splay.Edges})
	}
	out = append(out, splay{"splay.front", "the front and back", d.Splay.Front})
	for _, s := range []struct {
		path, of string
		angle    *measure.Angle
	}{{"splay.back", "the back", d.Splay.Back}, {"splay.end-left", "the left end", d.Splay.EndLeft}, {"splay.end-right", "the right end", d.Splay.EndRight}} {
		if s.angle != nil {
			out = append(out, splay{s.path, s.of, *s.angle})
		}
	}
	return out
}

// leanSizes are the paths of the leans of the piece.
func leanSizes(r *run) []string {
	var out []string
	for _, s := range splays(r.d) {
		out = append(out, s.path)
	}
	return out
}

// leaningIDs are the boards that lean: a stool's sides, or all walls.
func leaningIDs(r *run) []string {
	var out []string
	for _, q := range r.p.Parts {
		if isSide(q) || isWall(q) {
			out = append(out, q.ID)
		}
	}
	return out
}

// dovetailedIDs are the boards that tails join.
func dovetailedIDs(r *run) []string {
	if r.walled() {
		return leaningIDs(r)
	}
	return append(topIDs(r), sideIDs(r)...)
}

// taperSizes are the paths of what makes a dovetailed board taper.
func taperSizes(r *run) []string {
	if r.walled() {
		return leanSizes(r)
	}
	return []string{"splay.edges"}
}

// longEdges are the ids of the cuts on a board's lower or front and on its upper or back edge.
func longEdges(q *part.Part) [2]string {
	if isWall(q) {
		return [2]string{"lower-edge", "upper-edge"}
	}
	return [2]string{"front-edge", "back-edge"}
}

// wallEnd is the cut of a wall at which another wall meets it: the one whose side of the wall the
// other stands on.
func wallEnd(q, mate *part.Part) string {
	other := mate.Place.Col(3).Vec3().Sub(q.Place.Col(3).Vec3())
	if other.Dot(q.Place.Col(0).Vec3()) < 0 {
		return "left-end"
	}
	return "right-end"
}

// wallScrews is the set of screws that a pilot hole in a piece of walls is bored for: into an end
// those of the corners, into a wall's lower edge the bottom's, into a face the battens'.
func wallScrews(d form.Design, b part.Bore) (*form.Screws, string) {
	switch {
	case strings.HasSuffix(b.Face, "-end"):
		return d.Corners.Screws, "corners.screws"
	case b.Face == "lower-edge" && d.Bottom != nil:
		return d.Bottom.Screws, "bottom.screws"
	case b.Face == "inner" && d.Lid != nil && d.Lid.Battens != nil:
		return d.Lid.Battens.Screws, "lid.battens.screws"
	}
	return nil, ""
}
