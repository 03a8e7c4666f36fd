package solid

import (
	"cmp"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// Blocks is a solid as a sum of convex blocks, some of them taken off: under each of its faces, seen
// along the board's z, the column down to the board's lowest point, counted positive under faces that
// look up and negative under those that look down; and for each round hole its drum, counted negative.
// No decision about who touches whom goes into it, so parts that fit each other to the last digit are
// no harder than others.
type Blocks struct {
	blocks []*column // by the lower end of their boxes along x
	around extent
	store  store
}

// store is where columns lie side by side while they are made.
type store struct {
	columns []column
	corners []mgl64.Vec3
	loops   []int32
	ends    []int32
	planes  []Plane
}

// taken is the part of a list that was added since it was n long.
func taken[T any](l []T, n int) []T { return l[n:len(l):len(l)] }

// column is one of them, with the planes that bound it.
type column struct {
	extent
	body   convex
	planes []Plane
	sign   float64
}

// noColumn is the area of a column's section, mm², below which it is rounding: of a wall that stands upright.
const noColumn = 1e-10

// Blocks cuts the solid into blocks. Its arcs are flattened to chords within tol, mm (Flattening when it is 0).
func (s *Solid) Blocks(tol float64) *Blocks {
	if !(tol > 0) {
		tol = Flattening
	}
	m := s.Flatten(tol)
	b := &Blocks{}
	if len(m.Vertices) == 0 {
		return b
	}
	b.around.lo, b.around.hi = boxOf(m.Vertices)
	wall, hoop := make([]bool, len(s.Faces)), make([]bool, len(s.Edges))
	drums := s.drums()
	for i := range drums {
		d := &drums[i]
		wall[d.walls[0]], wall[d.walls[1]] = true, true
		for _, h := range d.hoops {
			hoop[h.edges[0]], hoop[h.edges[1]] = true, true
		}
		b.store.columns = append(b.store.columns, s.body(d, tol))
	}
	for i := range m.Faces {
		f := m.Faces[i]
		if f.Loops = undrilled(s, &f, wall, hoop); len(f.Loops) > 0 {
			b.under(m, &f)
		}
	}
	b.blocks = make([]*column, len(b.store.columns))
	for i := range b.blocks {
		b.blocks[i] = &b.store.columns[i]
	}
	b.store = store{}
	slices.SortStableFunc(b.blocks, func(c, d *column) int { return cmp.Compare(c.lo[0], d.lo[0]) })
	return b
}

// Volume is the volume of all blocks, mm³: that of the flattened solid.
func (b *Blocks) Volume() float64 {
	var sum float64
	for i := range b.blocks {
		v, _ := b.blocks[i].body.size()
		sum += b.blocks[i].sign * v
	}
	return sum
}

// under adds the columns under a face.
func (b *Blocks) under(m *Mesh, f *MeshFace) {
	loops := make([][]mgl64.Vec3, len(f.Loops))
	var area float64
	level := true
	for i, l := range f.Loops {
		for _, v := range l {
			loops[i] = append(loops[i], m.Vertices[v])
			level = level && m.Vertices[v][2] == b.around.lo[2]
		}
		area += areaSeen(loops[i])
	}
	if level || math.Abs(area) < noColumn {
		return
	}
	// A face that has lost its outline to a drum counts what is left, its openings, the other way.
	sign, up := math.Copysign(1, area), f.Normal.Mul(math.Copysign(1, f.Normal[2]))
	if len(loops) == 1 {
		if sign < 0 {
			turnAbout(loops[0])
		}
		if bulges(loops[0]) {
			b.stand(loops[0], sidesOf(loops[0]), up, sign)
			return
		}
	}
	p := Plane{N: f.Normal, D: f.Normal.Dot(loops[0][0])}
	trapezoids(loops, func(q []mgl64.Vec3, sides []Plane) {
		for i := range q {
			q[i][2] = (p.D - p.N[0]*q[i][0] - p.N[1]*q[i][1]) / p.N[2]
		}
		b.stand(q, sides, up, sign)
	})
}

// areaSeen is the area inside a loop seen from +z, positive for a counter-clockwise one.
func areaSeen(l []mgl64.Vec3) float64 {
	var sum float64
	for i := 1; i+1 < len(l); i++ {
		sum += turn(l[0], l[i], l[i+1])
	}
	return sum / 2
}

// turn is twice the area of a triangle seen from +z.
func turn(p, q, r mgl64.Vec3) float64 {
	return (q[0]-p[0])*(r[1]-p[1]) - (q[1]-p[1])*(r[0]-p[0])
}

func turnAbout(l []mgl64.Vec3) {
	for i, j := 0, len(l)-1; i < j; i, j = i+1, j-1 {
		l[i], l[j] = l[j], l[i]
	}
}

// bulges tells whether a counter-clockwise loop turns right nowhere, seen from +z, and only once round.
func bulges(l []mgl64.Vec3) bool {
	n := len(l)
	down := 0
	for i := range l {
		p, q, r := l[i], l[(i+1)%n], l[(i+2)%n]
		if turn(p, q, r) < -noColumn {
			return false
		}
		if p[0] <= q[0] && q[0] > r[0] {
			down++
		}
	}
	return down <= 1
}

// sidesOf are the upright planes through the sides of a counter-clockwise loop.
func sidesOf(l []mgl64.Vec3) []Plane {
	sides := make([]Plane, 0, len(l))
	for i, p := range l {
		if s, ok := uprightBy(p, l[(i+1)%len(l)]); ok {
			sides = append(sides, s)
		}
	}
	return sides
}

// uprightBy is the upright plane through p and q with its normal to the right of the way from p to q.
func uprightBy(p, q mgl64.Vec3) (Plane, bool) {
	n := mgl64.Vec3{q[1] - p[1], p[0] - q[0], 0}
	d := n.Len()
	if d == 0 {
		return Plane{}, false
	}
	n = n.Mul(1 / d)
	return Plane{n, n.Dot(p)}, true
}

// stand adds the column between a loop, counter-clockwise seen from above, and the level of the lowest point.
func (b *Blocks) stand(l []mgl64.Vec3, sides []Plane, up mgl64.Vec3, sign float64) {
	k := int32(len(l))
	t := &b.store
	nc, nl, ne, np := len(t.corners), len(t.loops), len(t.ends), len(t.planes)
	t.corners = append(t.corners, l...)
	for _, p := range l {
		t.corners = append(t.corners, mgl64.Vec3{p[0], p[1], b.around.lo[2]})
	}
	for i := range k {
		t.loops = append(t.loops, i)
	}
	for i := range k {
		t.loops = append(t.loops, 2*k-1-i)
	}
	t.ends = append(t.ends, k, 2*k)
	for i := range k {
		j := (i + 1) % k
		t.loops = append(t.loops, j, i, i+k, j+k)
		t.ends = append(t.ends, 2*k+4*(i+1))
	}
	t.planes = append(append(t.planes, sides...), Plane{up, up.Dot(l[0])}, Plane{mgl64.Vec3{0, 0, -1}, -b.around.lo[2]})
	c := column{sign: sign, planes: taken(t.planes, np)}
	c.body = convex{corners: taken(t.corners, nc), loops: taken(t.loops, nl), ends: taken(t.ends, ne)}
	c.lo, c.hi = boxOf(c.body.corners)
	t.columns = append(t.columns, c)
}
