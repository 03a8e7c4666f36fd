package solid

import "math"

// drum is a round hole, or a step of one, from plane to plane: what its wall encloses is convex.
type drum struct {
	walls [2]int // its two faces
	round *Cylinder
	hoops [2]band // at its lower and its upper end along the axis
}

// band is one end of a drum.
type band struct {
	edges [2]int // of the two walls
	face  int    // the flat face that it lies in
}

// drums finds the round holes that go from one flat face to another, without anything else on their walls.
func (s *Solid) drums() []drum {
	var found []drum
	taken := make([]bool, len(s.Faces))
	for i := range s.Faces {
		if taken[i] {
			continue
		}
		if d, ok := s.drumOf(i); ok {
			taken[d.walls[1]] = true
			found = append(found, d)
		}
	}
	return found
}

// drumOf is the drum of which a face is the first half.
func (s *Solid) drumOf(i int) (drum, bool) {
	f := &s.Faces[i]
	d := drum{walls: [2]int{i, -1}, round: f.Round}
	if f.Round == nil || !f.Round.Hollow || len(f.Loops) != 1 || len(f.Loops[0]) != 4 {
		return d, false
	}
	// The two seams lead to the other half.
	for _, h := range f.Loops[0] {
		e := &s.Edges[h.Edge]
		if e.Arc != 0 {
			continue
		}
		other := e.Left + e.Right - i
		if d.walls[1] >= 0 && d.walls[1] != other {
			return d, false
		}
		d.walls[1] = other
	}
	if d.walls[1] < 0 {
		return d, false
	}
	g := &s.Faces[d.walls[1]]
	if g.Round == nil || *g.Round != *f.Round || len(g.Loops) != 1 || len(g.Loops[0]) != 4 {
		return d, false
	}
	return d, s.bands(&d)
}

// bands finds the drum's two ends.
func (s *Solid) bands(d *drum) bool {
	c := d.round
	for half, wall := range d.walls {
		var arcs []int
		for _, h := range s.Faces[wall].Loops[0] {
			if s.Edges[h.Edge].Arc != 0 {
				arcs = append(arcs, h.Edge)
			}
		}
		if len(arcs) != 2 {
			return false
		}
		height := func(e int) float64 { return s.Curve(&s.Edges[e]).centre().Sub(c.Point).Dot(c.Axis) }
		if height(arcs[0]) > height(arcs[1]) {
			arcs[0], arcs[1] = arcs[1], arcs[0]
		}
		for end, e := range arcs {
			x := s.Edges[e].Left + s.Edges[e].Right - wall
			if s.Faces[x].Round != nil || half == 1 && d.hoops[end].face != x {
				return false
			}
			d.hoops[end].edges[half], d.hoops[end].face = e, x
		}
	}
	return d.hoops[0].face != d.hoops[1].face
}

// body is what the drum's wall encloses, flattened as Flatten does.
func (s *Solid) body(d *drum, tol float64) column {
	c := d.round
	x, y := c.frame()
	n := 1.0
	for _, h := range d.hoops {
		n = max(n, math.Ceil(math.Pi/chordStep(s.Curve(&s.Edges[h.edges[0]]), tol)))
	}
	// Both halves begin where the first one's lower arc has its lesser angle.
	a := s.Curve(&s.Edges[d.hoops[0].edges[0]])
	first := a.Base + min(a.T0, a.T1)
	k := int32(2 * n)
	b := column{sign: -1}
	var planes [2]Plane
	for end, h := range d.hoops {
		p := s.Faces[h.face].Plane
		planes[end] = p
		if (p.N.Dot(c.Axis) > 0) != (end == 1) {
			planes[end] = Plane{p.N.Mul(-1), -p.D}
		}
		for i := range k {
			q := c.ruling(x, y, first+math.Pi*float64(i)/n)
			b.body.corners = append(b.body.corners, q.Add(c.Axis.Mul((p.D-p.N.Dot(q))/p.N.Dot(c.Axis))))
		}
	}
	for i := range k {
		b.body.loops = append(b.body.loops, k-1-i)
	}
	for i := range k {
		b.body.loops = append(b.body.loops, k+i)
	}
	b.body.ends = append(b.body.ends, k, 2*k)
	b.planes = append(b.planes, planes[0], planes[1])
	for i := range k {
		j := (i + 1) % k
		b.body.loops = append(b.body.loops, i, j, k+j, k+i)
		b.body.ends = append(b.body.ends, 2*k+4*(i+1))
		sin, cos := math.Sincos(first + math.Pi*(float64(i)+0.5)/n)
		out := x.Mul(cos).Add(y.Mul(sin))
		b.planes = append(b.planes, Plane{out, out.Dot(c.Point) + c.Radius*math.Cos(math.Pi/(2*n))})
	}
	b.lo, b.hi = boxOf(b.body.corners)
	return b
}

// undrilled is a mesh face without the loops that drums make in it; nil when nothing is left.
func undrilled(s *Solid, f *MeshFace, wall, hoop []bool) [][]int32 {
	if wall[f.Face] {
		return nil
	}
	face := &s.Faces[f.Face]
	if face.Round != nil {
		return f.Loops
	}
	var kept [][]int32
	for i, l := range face.Loops {
		if !hoop[l[0].Edge] {
			kept = append(kept, f.Loops[i])
		}
	}
	return kept
}
