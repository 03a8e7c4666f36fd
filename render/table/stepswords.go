package table

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// the names parts in a sentence, each kind with its marks: "the left side (2)", "the top (1) and the sides (2, 3)".
func the(p *form.Piece, ids ...string) string {
	return and(form.InWordsWith(p, JoinMarks, ids...))
}

func (s *steps) the(ids ...string) string { return the(s.p, ids...) }

// boardNames names parts in a sentence without their marks: "the left side", "the sides", "the front and back".
func boardNames(p *form.Piece, ids ...string) string {
	return and(form.InWords(p, ids...))
}

// Ways that a woodworker would not tell from level, from plumb, or from straight along an axis of the piece.
const (
	levelWay = 1e-6
	steepWay = 45 * measure.Degree
)

// sideWords are the sides of the piece, an eighth of a turn each, from the right to the back and on.
var sideWords = [8]string{"to the right", "to the right and back", "to the back", "to the left and back", "to the left", "to the left and front", "to the front", "to the right and front"}

func sideWay(way mgl64.Vec3) string {
	eighth := int(math.Round(math.Atan2(way[1], way[0])/(math.Pi/4)+8)) % 8
	return sideWords[eighth]
}

// wayOf says which way a move goes, as the piece stands: along a part's own grain where it does, or by its sides.
func (s *steps) wayOf(m form.Move) string {
	way := m.Ways[0]
	said := upwards
	if way[2] < 0 {
		said = downwards
	}
	own, grain := s.grainOf(m)
	plumb := measure.Angle(math.Acos(min(1, math.Abs(way[2]))))
	switch {
	case math.Hypot(way[0], way[1]) < levelWay:
		return said.straight
	case math.Abs(way[2]) < levelWay && own:
		return fmt.Sprintf("level %s, along its own grain", sideWay(way))
	case math.Abs(way[2]) < levelWay && grain != "":
		return fmt.Sprintf("level %s, along the grain of part %s", sideWay(way), grain)
	case math.Abs(way[2]) < levelWay:
		return fmt.Sprintf("level %s", sideWay(way))
	case own:
		return fmt.Sprintf(said.own, sideWay(way), degrees(plumb))
	case grain != "":
		return fmt.Sprintf(said.grain, sideWay(way), grain, degrees(plumb))
	case plumb < steepWay:
		return fmt.Sprintf(said.steep, sideWay(way), degrees(plumb))
	}
	return fmt.Sprintf(said.flat, sideWay(way), degrees(90*measure.Degree-plumb))
}

// grainOf is along whose grain a move goes: the moving part's own, or that of another by its mark.
func (s *steps) grainOf(m form.Move) (own bool, other string) {
	along := func(q *part.Part) bool {
		return q != nil && q.Solid != nil && math.Abs(math.Abs(q.Place.Col(0).Vec3().Dot(m.Ways[0]))-1) < 1e-9
	}
	if len(m.Parts) == 1 && along(s.p.Part(m.Parts[0])) {
		return true, ""
	}
	for _, id := range append(slices.Clone(m.Parts), m.Onto...) {
		if q := s.p.Part(id); along(q) {
			return false, q.Mark
		}
	}
	return false, ""
}

// ways are how a way up, or down, is said: straight, along a grain, near plumb, near level.
type ways struct{ straight, own, grain, steep, flat string }

var (
	upwards = ways{"straight up", "up and %s, along its own grain, %s from plumb: driven straight it jams",
		"up and %s, along the grain of part %s, %s from plumb: driven straight it jams", "up and %s, %s from plumb", "%s and up, %s from level"}
	downwards = ways{"straight down", "down and %s, along its own grain, %s from plumb: driven straight it jams",
		"down and %s, along the grain of part %s, %s from plumb: driven straight it jams", "down and %s, %s from plumb", "%s and down, %s from level"}
)

// onto says how parts go onto others that lie on the bench, turned as suits: square onto a face, or as wayOf says.
func (s *steps) onto(m form.Move) string {
	for _, id := range m.Onto {
		q := s.p.Part(id)
		if q == nil || math.Abs(math.Abs(q.Place.Col(2).Vec3().Dot(m.Ways[0]))-1) > 1e-9 {
			continue
		}
		if q.Place.Col(2).Vec3().Dot(m.Ways[0]) < 0 {
			return fmt.Sprintf("square onto the outer face of part %s", q.Mark)
		}
		return fmt.Sprintf("square onto the inner face of part %s", q.Mark)
	}
	return s.wayOf(m)
}

// leans tells whether any two boards meet off square.
func (s *steps) leans() bool {
	for _, j := range s.p.Joints {
		if j.Kind != form.ScrewedOn && !grooved(j) && !straight(j.Dihedral-90*measure.Degree) {
			return true
		}
	}
	return false
}

// has tells whether the piece has a part that is called so.
func (s *steps) has(kind string) bool {
	for _, q := range s.p.Parts {
		if strings.HasPrefix(q.ID, kind) {
			return true
		}
	}
	return false
}

// late tells whether a part goes in when all else stands.
func (s *steps) goesLate(id string) bool {
	q := s.p.Part(id)
	return q != nil && q.Slip.Late()
}

// marks of parts in a given order: "2, 1 and 3".
func inOrder(parts []*part.Part) string {
	var list []string
	for _, q := range parts {
		list = append(list, q.Mark)
	}
	return and(list)
}
