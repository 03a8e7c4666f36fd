package form

import (
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// Assembly is the order in which the piece goes together.
type Assembly struct {
	First []string // part ids: what stands first
	Moves []Move
	Stuck []string // parts that lock each other; they cannot be put together as they are
}

// Move is one step of putting a piece together.
type Move struct {
	Parts []string // ids of those that move
	Onto  []string // what stands still meanwhile
	// Ways are the directions, world frame, in which each of the parts moves to go home. They are one
	// unit vector where the parts move as one; where each goes its own way at the same time, the
	// fastest has length 1 and the others the lengths of their share.
	Ways []mgl64.Vec3
}

// AtOnce tells whether the parts must move at the same time, each its own way.
func (m Move) AtOnce() bool {
	const alike = 1e-9
	for _, w := range m.Ways[1:] {
		if w.Sub(m.Ways[0]).Len() > alike {
			return true
		}
	}
	return false
}

// Aside tells, for each of the moves, whether it puts parts together that stand aside meanwhile: they go home with a
// later move, as one.
func (a Assembly) Aside() []bool {
	placed := map[string]bool{}
	for _, id := range a.First {
		placed[id] = true
	}
	out := make([]bool, len(a.Moves))
	for k, m := range a.Moves {
		out[k] = !slices.ContainsFunc(m.Onto, func(id string) bool { return placed[id] })
		if out[k] {
			continue
		}
		for _, id := range m.Parts {
			placed[id] = true
		}
	}
	return out
}
