package motion

import "github.com/go-gl/mathgl/mgl64"

// flyApart are the speeds of bodies that part at once, the first standing still and the quickest at 1; nil
// where none that is tried is free all the way. Of all motions that push nothing into anything they are the
// nearest to everything flying apart from the first part, or else to everything flying level from the middle,
// no part before another.
func (t *taking) flyApart(at []int) []mgl64.Vec3 {
	var centre mgl64.Vec3
	for _, i := range at {
		centre = centre.Add(t.heart(i).Mul(1 / float64(len(at))))
	}
	var first, level []float64
	for _, i := range at {
		away := t.middle(i).Sub(t.middle(at[0]))
		first = append(first, away[0], away[1], away[2])
		away = t.heart(i).Sub(centre)
		level = append(level, away[0], away[1], 0)
	}
	if ways := t.speeds(at, project(t.rows(at, true), first), dotRoot(first)); ways != nil {
		return ways
	}
	return t.speeds(at, project(t.rows(at, false), level), dotRoot(level))
}

// speeds against the first body, the quickest at 1; nil where nothing moves, or something strikes on its way.
func (t *taking) speeds(at []int, v []float64, wish float64) []mgl64.Vec3 {
	size := 0.
	ways := make([]mgl64.Vec3, len(at))
	for k := range at {
		for c := range 3 {
			ways[k][c] = v[3*k+c] - v[c]
		}
		size = max(size, ways[k].Len())
	}
	if size < 1e-6*wish {
		return nil
	}
	for k := range ways {
		ways[k] = ways[k].Mul(1 / size)
	}
	if !t.partClear(at, ways) {
		return nil
	}
	return ways
}

func (t *taking) middle(i int) mgl64.Vec3 {
	lo, hi := t.bodies[i].lo, t.bodies[i].hi
	return t.bodies[i].part.Place.Mul4x1(lo.Add(hi).Mul(0.5).Vec4(1)).Vec3()
}

// heart is a body's centre of mass: in a ring of any number of staves all of them lie round that of the bottom.
func (t *taking) heart(i int) mgl64.Vec3 {
	q := t.bodies[i].part
	return q.Place.Mul4x1(q.Middle.Vec4(1)).Vec3()
}

// rows are the contacts among some bodies as rows over their speeds; those of a first one that stands still are left
// out.
func (t *taking) rows(at []int, still bool) [][]float64 {
	var out [][]float64
	for a, i := range at {
		for b, j := range at[:a] {
			for _, n := range t.normals[i][j] {
				row := make([]float64, 3*len(at))
				for k := range 3 {
					row[3*a+k] = n[k]
					if b > 0 || !still {
						row[3*b+k] = -n[k]
					}
				}
				out = append(out, row)
			}
		}
	}
	return out
}
