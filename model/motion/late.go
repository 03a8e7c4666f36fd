package motion

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
)

// late takes off what goes in when all else stands: keys and wedges, each straight out of its slot.
// Those that go one way go together. They bind nothing else, so that they count for no other move.
func (t *taking) late(parts []*part.Part) {
	for _, q := range parts {
		b := newBody(q)
		way, free := t.outOf(b)
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

// outOf is the way in which a late part leaves its slot.
func (t *taking) outOf(b *body) (mgl64.Vec3, bool) {
	var hold []mgl64.Vec3
	var sum mgl64.Vec3
	for _, other := range t.bodies {
		for _, n := range contacts(b, other) {
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
		if clear(hold, way) && t.unstruck(b, way) {
			return way, true
		}
	}
	return mgl64.Vec3{}, false
}

func (t *taking) unstruck(b *body, way mgl64.Vec3) bool {
	for _, other := range t.bodies {
		if !goesClear(b, other, way) || !startsClear(b, other, way) {
			return false
		}
	}
	return true
}
