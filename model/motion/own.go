package motion

import (
	"math/bits"

	"splaywright/model/form"
)

// whole takes off what is a thing by itself, held together by joints of its own and by none to the rest, as a lid
// with its battens is: it is put together apart and goes on as one, last of all. What is left is given back.
func (t *taking) whole(p *form.Piece, set uint) uint {
	own := t.joined(p)
	for i := len(own) - 1; i > 0; i-- {
		some := own[i]
		if bits.OnesCount(some) < 2 {
			continue // a part that no joint holds finds its own place in the order
		}
		if way, free := t.free(some, set&^some); free {
			t.move(some, set&^some, way)
			t.apart(some)
			set &^= some
		}
	}
	return set
}

// joined are the sets of parts that joints hold together, in the order of their first parts.
func (t *taking) joined(p *form.Piece) []uint {
	at := map[string]int{}
	of := make([]uint, len(t.bodies)) // by body, all that it holds together with
	for i, b := range t.bodies {
		at[b.part.ID], of[i] = i, 1<<i
	}
	for _, j := range p.Joints {
		a, okA := at[j.TailBoard]
		b, okB := at[j.PinBoard]
		if !okA || !okB {
			continue
		}
		all := of[a] | of[b]
		for i := range of {
			if all&(1<<i) != 0 {
				of[i] = all
			}
		}
	}
	var out []uint
	for i, set := range of {
		if bits.TrailingZeros(set) == i {
			out = append(out, set)
		}
	}
	return out
}
