package form

import (
	"math"
	"slices"

	"splaywright/model/solid"
)

// partFloors cuts hollows of the two faces whose floors lie at one depth, as a tenon two thirds into a side whose other
// face has a housing of one third, in two ways: a board is built in layers between floors, each of which looks one way,
// so of such a pair the one with plane walls all round is cut as a slot, between the same planes.
func (b *board) partFloors() {
	for i := 0; i < len(b.shape.Pockets); i++ {
		p := b.shape.Pockets[i]
		level := slices.ContainsFunc(b.shape.Pockets, func(q solid.Pocket) bool {
			return p.FromOuter != q.FromOuter && math.Abs(p.Depth+q.Depth-b.thickness) < solid.SamePoint
		})
		if s, ok := b.asSlot(p); level && ok {
			b.shape.Pockets = slices.Delete(b.shape.Pockets, i, i+1)
			b.shape.Slots = append([]solid.Slot{s}, b.shape.Slots...)
			i--
		}
	}
}

// asSlot is a hollow between planes: its walls, its floor, and a lid in the air; where it runs out of the board it ends in
// the air too.
func (b *board) asSlot(p solid.Pocket) (solid.Slot, bool) {
	s := solid.Slot{Tag: p.Tag}
	for _, w := range p.Walls {
		if w.Round != nil {
			return s, false
		}
		for _, e := range b.around {
			if q := b.local(e.plane); sameWay(q, w.Plane) {
				w.Plane = solid.Plane{N: q.N.Mul(-1), D: -q.D - beyond}
			}
		}
		if w.Tag == "" {
			w.Tag = p.Tag
		}
		s.Walls = append(s.Walls, w)
	}
	floor, lid := solid.Plane{N: worldZ.Mul(-1), D: b.thickness - p.Depth}, solid.Plane{N: worldZ, D: -b.thickness - beyond}
	if p.FromOuter {
		floor, lid = solid.Plane{N: worldZ, D: -p.Depth}, solid.Plane{N: worldZ.Mul(-1), D: -beyond}
	}
	s.Walls = append(s.Walls, solid.Wall{Tag: p.Tag + " floor", Plane: floor}, solid.Wall{Tag: p.Tag, Plane: lid})
	return s, true
}

// sameWay tells whether two planes are one and look the same way.
func sameWay(p, q solid.Plane) bool {
	return p.N.Sub(q.N).Len() < solid.SamePoint && math.Abs(p.D-q.D) < solid.SamePoint
}
