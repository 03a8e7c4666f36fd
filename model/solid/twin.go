package solid

import (
	"math"
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"
)

// Twins are boards of one shape: each side of a splayed piece is the other turned round. What differs are the names of their
// walls and hollows, and the last digits of their numbers. Others are twins of each other's mirror images.

// How far numbers of twins may differ: what the last digits leave, a hundredth of what makes two points one.
const (
	twinLength = SamePoint / 100 // mm
	twinWay    = 1e-12           // of unit vectors
)

// Names are the tags of a board by those of its twin.
type Names map[string]string

// Twin tells whether other is the same board but for its tags, which it adds to n, and but for the order of its bores and
// slots; that of pockets says which of two gives its name to what they share. A name that would stand for two is refused.
func (b *Board) Twin(other *Board, n Names) bool {
	if !within(b.Thickness, other.Thickness, twinLength) || !twinLoop(b.Outline, other.Outline) || !n.loop(b.Outline, other.Outline) {
		return false
	}
	if len(b.Openings) != len(other.Openings) || len(b.Pockets) != len(other.Pockets) {
		return false
	}
	for i, l := range b.Openings {
		if !twinLoop(l, other.Openings[i]) || !n.loop(l, other.Openings[i]) {
			return false
		}
	}
	for i := range b.Pockets {
		p, o := &b.Pockets[i], &other.Pockets[i]
		if !twinPocket(p, o) || !n.same(p.Tag, o.Tag) || !n.loop(p.Walls, o.Walls) {
			return false
		}
	}
	bores, ok := matched(b.Bores, other.Bores, twinBore)
	for i, k := range bores {
		ok = ok && n.same(b.Bores[i].Tag, other.Bores[k].Tag)
	}
	if ok {
		_, ok = n.Slots(b.Slots, other.Slots)
	}
	return ok
}

// Slots tells the same of slots, and gives for each of a its place in b.
func (n Names) Slots(a, b []Slot) (places []int, ok bool) {
	places, ok = matched(a, b, func(s, o *Slot) bool {
		if !twinRound(s.Round, o.Round) { // most are told apart by it, at less cost
			return false
		}
		_, same := twinWalls(s, o)
		return same
	})
	for i, k := range places {
		ok = ok && n.same(a[i].Tag, b[k].Tag)
		walls, _ := twinWalls(&a[i], &b[k])
		for j, at := range walls {
			ok = ok && n.same(a[i].Walls[j].Tag, b[k].Walls[at].Tag)
		}
	}
	return places, ok
}

// twinWalls tells whether the walls of two slots are the same; the first of a round's is not one like the others.
func twinWalls(s, o *Slot) (places []int, ok bool) {
	places, ok = matched(s.Walls, o.Walls, func(w, v *Wall) bool { return twinPlane(w.Plane, v.Plane) && twinRound(w.Round, v.Round) })
	return places, ok && (s.Round == nil || places[0] == 0)
}

func (n Names) same(tag, other string) bool {
	if known, ok := n[tag]; ok {
		return known == other
	}
	n[tag] = other
	return true
}

func (n Names) loop(a, b []Wall) bool {
	for i := range a {
		if !n.same(a[i].Tag, b[i].Tag) {
			return false
		}
	}
	return true
}

// matched gives for each of a which of b is the same, each of b for one of a.
func matched[T any](a, b []T, same func(a, b *T) bool) ([]int, bool) {
	if len(a) != len(b) {
		return nil, false
	}
	places, taken := make([]int, len(a)), make([]bool, len(b))
	for i := range a {
		k := 0
		for k < len(b) && (taken[k] || !same(&a[i], &b[k])) {
			k++
		}
		if k == len(b) {
			return nil, false
		}
		places[i], taken[k] = k, true
	}
	return places, true
}

func twinLoop(a, b []Wall) bool {
	for i := range a {
		if len(a) != len(b) || !twinPlane(a[i].Plane, b[i].Plane) || !twinRound(a[i].Round, b[i].Round) ||
			!within(a[i].Start[0], b[i].Start[0], twinLength) || !within(a[i].Start[1], b[i].Start[1], twinLength) {
			return false
		}
	}
	return len(a) == len(b)
}

func twinPocket(p, o *Pocket) bool {
	return p.FromOuter == o.FromOuter && within(p.Depth, o.Depth, twinLength) && twinLoop(p.Walls, o.Walls)
}

func twinBore(b, o *Bore) bool {
	if len(b.Steps) != len(o.Steps) || !nearlyAll(b.Entry, o.Entry, twinLength) || !nearlyAll(b.Axis, o.Axis, twinWay) {
		return false
	}
	for i, s := range b.Steps {
		if t := o.Steps[i]; !within(s.Radius, t.Radius, twinLength) || !within(s.To, t.To, twinLength) {
			return false
		}
	}
	return true
}

func twinPlane(a, b Plane) bool { return nearlyAll(a.N, b.N, twinWay) && within(a.D, b.D, twinLength) }

func twinRound(a, b *Cylinder) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Hollow == b.Hollow && within(a.Radius, b.Radius, twinLength) && nearlyAll(a.Point, b.Point, twinLength) &&
		(nearlyAll(a.Axis, b.Axis, twinWay) || nearlyAll(a.Axis, b.Axis.Mul(-1), twinWay))
}

// within tells whether two numbers are one; both may be infinite.
func within(a, b, by float64) bool { return a == b || math.Abs(a-b) <= by }

func nearlyAll(a, b mgl64.Vec3, by float64) bool {
	return within(a[0], b[0], by) && within(a[1], b[1], by) && within(a[2], b[2], by)
}

// floorOf ends the tag of the floor of what the rest names.
const floorOf = " floor"

// Renamed is the solid of a twin. It shares all but the tags with this one.
func (s *Solid) Renamed(n Names) *Solid {
	out := &Solid{Vertices: slices.Clip(s.Vertices), Edges: slices.Clip(s.Edges), Arcs: slices.Clip(s.Arcs), Faces: slices.Clone(s.Faces), Twin: s.Like(), Mirror: s.Mirror}
	for i := range out.Faces {
		tag := &out.Faces[i].Tag
		if other, ok := n[*tag]; ok {
			*tag = other
		} else if of, ok := strings.CutSuffix(*tag, floorOf); ok && n[of] != "" {
			*tag = n[of] + floorOf
		}
	}
	return out
}

// Like is the solid that this one shares its shape with, or that it is the mirror image of, itself where there is none.
func (s *Solid) Like() *Solid {
	if s.Twin != nil {
		return s.Twin
	}
	return s
}
