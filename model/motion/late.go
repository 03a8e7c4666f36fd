package motion

import (
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
)

// late takes off what goes in when all else stands: keys and wedges, each straight out of its slot.
// Those that go one way go together. They bind nothing else, so that they count for no other move.
func (t *taking) late(p *form.Piece, parts []*part.Part) {
	for _, q := range parts {
		b := newBody(q)
		way, free := t.outOf(b, spreads(p, q))
		if !free {
			t.plan.Stuck = append(t.plan.Stuck, q.ID)
			continue
		}
		home := way.Mul(-1)
		if n := len(t.plan.Moves); n > 0 && t.plan.Moves[n-1].Ways[0].Sub(home).Len() < sameWay {
			m := &t.plan.Moves[n-1]
			m.Parts, m.Ways = append(m.Parts, q.ID), append(m.Ways, home)
			continue
		}
		t.plan.Moves = append(t.plan.Moves, form.Move{Parts: []string{q.ID}, Onto: t.names(1<<len(t.bodies) - 1), Ways: []mgl64.Vec3{home}})
	}
}

// spreads is the id of the part that a wedge drives apart: its wood gives way, and holds nothing.
func spreads(p *form.Piece, q *part.Part) string {
	for _, j := range p.Joints {
		if j.Tenon != nil && j.Tenon.Wedges != nil && slices.Contains(j.Tenon.Wedges.Parts, q.ID) {
			return j.PinBoard
		}
	}
	return ""
}

// tenons notes that a tenon moves along its stretcher only: where its mortise flares they touch in lines,
// which faces do not tell.
func (t *taking) tenons(p *form.Piece) {
	at := func(id string) int {
		return slices.IndexFunc(t.bodies, func(b *body) bool { return b.part.ID == id })
	}
	for _, j := range p.Joints {
		a, b := at(j.TailBoard), at(j.PinBoard)
		if j.Tenon == nil || a < 0 || b < 0 {
			continue
		}
		for _, n := range []mgl64.Vec3{{0, 0, 1}, {0, 0, -1}} {
			t.normals[a][b], t.normals[b][a] = append(t.normals[a][b], n), append(t.normals[b][a], n.Mul(-1))
		}
	}
}

// outOf is the way in which a late part leaves its slot; what it spreads gives way.
func (t *taking) outOf(b *body, gives string) (mgl64.Vec3, bool) {
	var hold []mgl64.Vec3
	var sum mgl64.Vec3
	for _, other := range t.bodies {
		if other.part.ID == gives {
			continue
		}
		for _, n := range t.eye.contacts(b, other) {
			if indexOf(hold, n) < 0 {
				hold, sum = append(hold, n), sum.Add(n)
			}
		}
	}
	var try []mgl64.Vec3
	if sum.Len() > sameWay {
		try = append(try, sum.Mul(-1).Normalize())
	}
	for k := range 2 {
		axis := b.part.Place.Col(k).Vec3()
		try = append(try, axis, axis.Mul(-1))
	}
	for _, way := range try {
		if clear(hold, way) && t.unstruck(b, way, gives) {
			return way, true
		}
	}
	return mgl64.Vec3{}, false
}

func (t *taking) unstruck(b *body, way mgl64.Vec3, gives string) bool {
	for _, other := range t.bodies {
		if other.part.ID == gives {
			continue
		}
		if !t.eye.goesClear(b, other, way) {
			return false
		}
	}
	return true
}
