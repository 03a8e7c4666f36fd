package solid

import (
	"cmp"
	"slices"
)

// halves is which faces have which half-edges: of each vertex, a chain of those that begin there. There are few, so that
// walking them takes less than looking a pair up in a map.
type halves struct {
	first []int32 // by vertex: its last half's place, plus 1
	list  []half
	out   []half // what onward gave last
}

type half struct{ to, face, next int32 }

func newHalves(vertices int) *halves { return &halves{first: make([]int32, vertices)} }

// put notes that a face has a half-edge.
func (h *halves) put(from, to, face int32) {
	h.list = append(h.list, half{to, face, h.first[from]})
	h.first[from] = int32(len(h.list))
}

// at is the place of a half-edge, nil for none.
func (h *halves) at(from, to int32) *half {
	for k := h.first[from]; k > 0; k = h.list[k-1].next {
		if h.list[k-1].to == to {
			return &h.list[k-1]
		}
	}
	return nil
}

// of is the face that has a half-edge, 0 where none has.
func (h *halves) of(from, to int32) int32 {
	if at := h.at(from, to); at != nil {
		return at.face
	}
	return 0
}

// drop forgets a half-edge.
func (h *halves) drop(from, to int32) {
	if at := h.at(from, to); at != nil {
		at.to = -1
	}
}

// onward are the half-edges from a vertex to those with greater numbers, in their order; they stay until it is asked again.
func (h *halves) onward(from int32) []half {
	h.out = h.out[:0]
	for k := h.first[from]; k > 0; k = h.list[k-1].next {
		if h.list[k-1].to > from {
			h.out = append(h.out, h.list[k-1])
		}
	}
	slices.SortFunc(h.out, func(a, b half) int { return cmp.Compare(a.to, b.to) })
	return h.out
}
