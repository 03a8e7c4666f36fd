package motion

import (
	"math/bits"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// mostCrossed bounds the face normals whose crossings are looked along.
const mostCrossed = 48

// push is which bodies each body pushes when it moves along a way: those whose faces it would run
// into. Bits of a set.
type push struct {
	way  mgl64.Vec3
	onto []uint
}

// pushes are, for every way worth looking along, who pushes whom: the joints' ways, along the world's
// axes, square to faces that touch, and along the lines in which two such faces cross, where a motion
// that neither hinders may just still go.
func (t *taking) pushes() []push {
	if t.pushed != nil {
		return t.pushed
	}
	var normals, ways []mgl64.Vec3
	add := func(v mgl64.Vec3) {
		if v.Len() > sameWay {
			ways = append(ways, v.Normalize(), v.Normalize().Mul(-1))
		}
	}
	for _, w := range t.ways {
		add(w)
	}
	for k := range 3 {
		var axis mgl64.Vec3
		axis[k] = 1
		add(axis)
	}
	for i := range t.bodies {
		for j := range i {
			var sum mgl64.Vec3
			for _, n := range t.normals[i][j] {
				sum = sum.Add(n)
				if indexOf(normals, n) < 0 && indexOf(normals, n.Mul(-1)) < 0 {
					normals = append(normals, n)
				}
			}
			add(sum)
		}
	}
	for i, a := range normals {
		add(a)
		for _, b := range normals[:min(i, mostCrossed)] {
			add(a.Cross(b))
		}
	}
	seen := map[[3]int64]bool{}
	for _, w := range ways {
		if key := [3]int64{nano(w[0]), nano(w[1]), nano(w[2])}; !seen[key] {
			seen[key] = true
			t.pushed = append(t.pushed, push{w, t.pushedAlong(w)})
		}
	}
	return t.pushed
}

func nano(x float64) int64 { return int64(x*1e9 + 2e9) }

func (t *taking) pushedAlong(way mgl64.Vec3) []uint {
	out := make([]uint, len(t.bodies))
	for i := range t.bodies {
		for j := range t.bodies {
			if i != j && !clear(t.normals[i][j], way) {
				out[i] |= 1 << j
			}
		}
	}
	return out
}

// groups lists the parts of a set that could be drawn off it, small ones first. Whatever moves along
// a way takes with it all that it pushes, and so on: so of the 2ⁿ subsets only those can be free that
// begin with one part and are closed in this sense, or are put together of such.
func (t *taking) groups(set uint) []uint {
	var out []uint
	seen := map[uint]bool{}
	most := bits.OnesCount(set) / 2
	for _, p := range t.pushes() {
		for i := range t.bodies {
			if set&(1<<i) == 0 {
				continue
			}
			g := p.with(i, set)
			if n := bits.OnesCount(g); n > 1 && n <= most && !seen[g] {
				seen[g] = true
				out = append(out, g)
			}
		}
	}
	inOrder(out)
	return out
}

// with is all that moves when one body does.
func (p push) with(i int, set uint) uint {
	group := uint(1) << i
	for fresh := group; fresh != 0; {
		k := bits.TrailingZeros(fresh)
		fresh &^= 1 << k
		more := p.onto[k] & set &^ group
		group, fresh = group|more, fresh|more
	}
	return group
}

// singles are the parts of a set one by one, the later ones first: stretchers and sides before the top.
func singles(set uint) []uint {
	var out []uint
	for some := set; some != 0; some &= some - 1 {
		out = append(out, some&-some)
	}
	inOrder(out)
	return out
}

// inOrder puts small sets first, and of equal ones those with later parts.
func inOrder(sets []uint) {
	slices.SortFunc(sets, func(a, b uint) int {
		if d := bits.OnesCount(a) - bits.OnesCount(b); d != 0 {
			return d
		}
		return int(b) - int(a)
	})
}

// pairing is two bodies and the way in which the first is drawn off the second.
type pairing struct {
	a, b int
	way  mgl64.Vec3
}

// passes tells whether a body can be drawn off another along a way, each pair looked at once.
func (t *taking) passes(i, j int, way mgl64.Vec3) bool {
	if i > j { // the same motion, seen from the other
		i, j, way = j, i, way.Mul(-1)
	}
	key := pairing{i, j, way}
	ok, known := t.seen[key]
	if !known {
		ok = t.eye.goesClear(t.bodies[i], t.bodies[j], way)
		t.seen[key] = ok
	}
	return ok
}
