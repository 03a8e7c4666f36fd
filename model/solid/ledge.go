package solid

import (
	"math"
	"sort"

	"github.com/go-gl/mathgl/mgl64"
)

// stretch is what of a surface is walked at the height between two layers.
type stretch struct {
	wall     int
	above    bool
	from, to int // vertices
	a, b     float64
}

// floors are what lies between two layers: a floor of hollows from the outer face looks up, one of hollows
// from the inner face down. Where there are both, box is round each hollow whose floor looks up; no other
// hollow ends in it.
type floors struct {
	up, down int // surfaces; -1 = none
	box      [][2]mgl64.Vec2
}

// ledge makes the edges at the height between two layers: where a wall goes on from the layer above to
// the one below, nothing; where it stands in one of them only, an edge to the floor between.
func (k *builder) ledge(above, below *layer) error {
	f, err := k.floorsAt(above.bottom)
	if err != nil {
		return err
	}
	all := make(map[int][]stretch)
	for i := range above.rings {
		k.stretches(all, &above.rings[i], above.rings[i].bottom, true)
	}
	for i := range below.rings {
		k.stretches(all, &below.rings[i], below.rings[i].top, false)
	}
	classes := make([]int, 0, len(all))
	for c := range all {
		classes = append(classes, c)
	}
	sort.Ints(classes)
	for _, c := range classes {
		k.cancel(all[c], &f)
	}
	return nil
}

// floorsAt makes the surfaces of the pockets that end at a height.
func (k *builder) floorsAt(z float64) (floors, error) {
	f := floors{up: -1, down: -1}
	for i := range k.pits {
		p := &k.pits[i]
		if math.Abs(p.floor()-z) >= SamePoint {
			continue
		}
		at, s := &f.down, surface{tag: p.pocket.Tag + floorOf, plane: Plane{N: mgl64.Vec3{0, 0, -1}, D: -z}}
		if p.pocket.FromOuter {
			at, s.plane = &f.up, Plane{N: mgl64.Vec3{0, 0, 1}, D: z}
			lo, hi, err := k.floorBox(p)
			if err != nil {
				return f, err
			}
			f.box = append(f.box, [2]mgl64.Vec2{lo, hi})
		}
		if *at < 0 {
			*at = len(k.surfs)
			s.class = *at
			k.surfs = append(k.surfs, s)
		}
	}
	return f, nil
}

// by is the floor that an edge between two places bounds.
func (f *floors) by(p, q mgl64.Vec3) int {
	switch {
	case f.down < 0:
		return f.up
	case f.up < 0:
		return f.down
	}
	mid := p.Add(q).Mul(0.5).Vec2()
	for _, b := range f.box {
		if !clearOf(b[0], b[1], mid, mid) {
			return f.up
		}
	}
	return f.down
}

// stretches lists a ring's walls at one height, by class. The parameter is mm along a flat wall
// and the angle round an arc, growing as it is walked.
func (k *builder) stretches(all map[int][]stretch, r *ring, rim []rimPoint, above bool) {
	for i, w := range r.walls {
		p, q := rim[i], rim[r.next(i)]
		s := &k.surfs[w]
		x := stretch{wall: w, above: above, from: p.v, to: q.v}
		if s.round == nil {
			x.b = s.along(p.p, q.p)
			x.a = s.along(mgl64.Vec3{}, p.p)
			x.b += x.a
		} else {
			c := s.levelCurve(p.p, q.p)
			x.a, x.b = c.Base+c.T0, c.Base+c.T1
			if s.round.Hollow {
				x.a, x.b = -x.a, -x.b
			}
			if others := all[s.class]; len(others) > 0 {
				o := others[0]
				shift := 2 * math.Pi * math.Round(((o.a+o.b)-(x.a+x.b))/(4*math.Pi))
				x.a, x.b = x.a+shift, x.b+shift
			}
		}
		all[s.class] = append(all[s.class], x)
	}
}

// cancel makes edges of what is walked by one side only.
func (k *builder) cancel(list []stretch, f *floors) {
	type stop struct {
		t float64
		v int
	}
	stops := make([]stop, 0, 2*len(list))
	for _, x := range list {
		stops = append(stops, stop{x.a, x.from}, stop{x.b, x.to})
	}
	sort.SliceStable(stops, func(i, j int) bool { return stops[i].t < stops[j].t })
	for i := 0; i+1 < len(stops); i++ {
		a, b := stops[i], stops[i+1]
		if a.v == b.v {
			continue
		}
		up, down := -1, -1
		mid := (a.t + b.t) / 2
		for _, x := range list {
			if x.a < mid && mid < x.b {
				if x.above {
					up = x.wall
				} else {
					down = x.wall
				}
			}
		}
		if (up >= 0) == (down >= 0) {
			continue
		}
		floor := f.by(k.verts[a.v], k.verts[b.v])
		e := Edge{From: a.v, To: b.v, Left: up, Right: floor}
		if down >= 0 {
			e.Left, e.Right = floor, down
		}
		e.Arc = k.level(max(up, down), &k.verts[a.v], &k.verts[b.v])
		k.edges = append(k.edges, e)
	}
}

// simplify takes out vertices at which nothing ends: where two layers share a corner that goes straight on.
func (k *builder) simplify() {
	type end struct{ n, a, b int }
	ends := make([]end, len(k.verts))
	note := func(v, e int) {
		switch ends[v].n {
		case 0:
			ends[v].a = e
		case 1:
			ends[v].b = e
		}
		ends[v].n++
	}
	for i := range k.edges {
		note(k.edges[i].From, i)
		note(k.edges[i].To, i)
	}
	gone := make([]bool, len(k.edges))
	for v := range ends {
		if ends[v].n != 2 {
			continue
		}
		a, b := ends[v].a, ends[v].b
		if k.edges[b].To == v && k.edges[a].From == v {
			a, b = b, a
		}
		// a comes in, b goes out, with the same surfaces beside them.
		e, f := &k.edges[a], &k.edges[b]
		if a == b || e.To != v || f.From != v || k.surfs[e.Left].class != k.surfs[f.Left].class ||
			k.surfs[e.Right].class != k.surfs[f.Right].class {
			continue
		}
		e.To = f.To
		if e.Arc != 0 {
			c, d := &k.arcs[e.Arc-1], &k.arcs[f.Arc-1]
			c.T1 += d.T1 - d.T0
		}
		gone[b] = true
		if w := &ends[f.To]; w.a == b {
			w.a = a
		} else {
			w.b = a
		}
		ends[v].n = 0
	}
	k.compact(gone)
}

// compact drops edges that are gone, and the vertices and arcs that no other edge uses.
func (k *builder) compact(gone []bool) {
	number := make([]int, len(k.verts))
	for i := range number {
		number[i] = -1
	}
	verts := make([]mgl64.Vec3, 0, len(k.verts))
	edges := make([]Edge, 0, len(k.edges))
	arcs := make([]Curve, 0, len(k.arcs))
	for i, e := range k.edges {
		if gone[i] {
			continue
		}
		for _, v := range []*int{&e.From, &e.To} {
			if number[*v] < 0 {
				number[*v] = len(verts)
				verts = append(verts, k.verts[*v])
			}
			*v = number[*v]
		}
		e.Arc, arcs = keptArc(e.Arc, k.arcs, arcs)
		edges = append(edges, e)
	}
	k.verts, k.edges, k.arcs = verts, edges, arcs
}
