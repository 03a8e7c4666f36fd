package solid

import "slices"

// touch is a corner of the solid that lies in a wall of a slot, and one of the faces about it.
type touch struct{ face, wall, corner int }

// snapped takes a depth that no two points could tell from nothing for nothing: the chamfers of two
// edges that meet pass through one point of the third.
func snapped(depth float64) float64 {
	if -SamePoint < depth && depth < SamePoint {
		return 0
	}
	return depth
}

// touch notes that an edge is taken away as far as its end in a wall of the slot.
func (m *mortiser) touch(e Edge, wall, corner int) {
	for _, f := range []int{e.Left, e.Right} {
		k := touch{f, wall, corner}
		m.touched[k] = !m.touched[k]
	}
}

// touchMouths lets the mouths in faces end where of the two edges that meet in a corner one is left.
func (m *mortiser) touchMouths() {
	var at []touch
	for k, odd := range m.touched {
		if odd {
			at = append(at, k)
		}
	}
	slices.SortFunc(at, func(a, b touch) int {
		return slices.Compare([]int{a.face, a.wall, a.corner}, []int{b.face, b.wall, b.corner})
	})
	for _, k := range at {
		m.lines = append(m.lines, lying{k.face, k.wall, k.corner})
	}
}
