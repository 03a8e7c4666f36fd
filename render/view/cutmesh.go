package view

import (
	"cmp"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/solid"
)

// cutMesh gives what of a closed mesh lies behind a plane in which none of its corners lies, and the
// number of the face that closes it there, -1 when the plane misses the mesh.
//
// No corner lies in the plane, so each edge is met once or not at all, and the two faces beside it agree
// on where: everything else is following loops, and the result is as closed as the mesh was.
func cutMesh(m *solid.Mesh, p solid.Plane) (*solid.Mesh, int) {
	c := cutter{m: m, p: p, out: &solid.Mesh{}, kept: make([]int32, len(m.Vertices)), faces: make([]int32, len(m.Faces)),
		met: map[[2]int32]int32{}, next: map[int32]int32{}, of: map[int32]int32{}}
	for i, v := range m.Vertices {
		c.kept[i] = -1
		if p.N.Dot(v) < p.D {
			c.kept[i] = int32(len(c.out.Vertices))
			c.out.Vertices = append(c.out.Vertices, v)
		}
	}
	for i := range m.Faces {
		c.faces[i] = c.face(&m.Faces[i])
	}
	lid := c.close()
	c.edges()
	c.rim(lid)
	return c.out, lid
}

type cutter struct {
	m     *solid.Mesh
	p     solid.Plane
	out   *solid.Mesh
	kept  []int32            // by old vertex: its new number, -1 for none
	faces []int32            // by old face: its new number, -1 for none
	met   map[[2]int32]int32 // by old edge, lower vertex first: where the plane meets it
	next  map[int32]int32    // along the rim of the cut face
	of    map[int32]int32    // by start of a side of the rim: the new face beside it
}

// meet is the new vertex where the plane meets the edge between two old ones.
func (c *cutter) meet(a, b int32) int32 {
	if a > b {
		a, b = b, a
	}
	v, ok := c.met[[2]int32{a, b}]
	if !ok {
		p, q := c.m.Vertices[a], c.m.Vertices[b]
		dp, dq := c.p.N.Dot(p)-c.p.D, c.p.N.Dot(q)-c.p.D
		v = int32(len(c.out.Vertices))
		c.out.Vertices = append(c.out.Vertices, p.Add(q.Sub(p).Mul(dp/(dp-dq))))
		c.met[[2]int32{a, b}] = v
	}
	return v
}

// face adds what is left of a face and gives its number, -1 when nothing is.
func (c *cutter) face(f *solid.MeshFace) int32 {
	g := solid.MeshFace{Normal: f.Normal, Face: f.Face}
	var runs [][]int32 // open: from where a loop enters the wood that is kept to where it leaves
	for _, l := range f.Loops {
		whole, open := c.split(l)
		if whole != nil {
			g.Loops = append(g.Loops, whole)
		}
		runs = append(runs, open...)
	}
	id := int32(len(c.out.Faces))
	g.Loops = append(g.Loops, c.join(runs, f.Normal, id)...)
	if len(g.Loops) == 0 {
		return -1
	}
	c.out.Faces = append(c.out.Faces, g)
	return id
}

// split follows a loop: either all of it is kept, or runs of it are.
func (c *cutter) split(l []int32) (whole []int32, runs [][]int32) {
	n, start := len(l), -1
	for i := range l {
		if c.kept[l[i]] < 0 && c.kept[l[(i+1)%n]] >= 0 {
			start = i
			break
		}
	}
	if start < 0 {
		if c.kept[l[0]] < 0 {
			return nil, nil
		}
		for _, v := range l {
			whole = append(whole, c.kept[v])
		}
		return whole, nil
	}
	var run []int32
	for k := range n {
		a, b := l[(start+k)%n], l[(start+k+1)%n]
		switch in, out := c.kept[a] >= 0, c.kept[b] < 0; {
		case !in && !out:
			run = []int32{c.meet(a, b), c.kept[b]}
		case in && out:
			runs = append(runs, append(run, c.meet(a, b)))
		case in:
			run = append(run, c.kept[b])
		}
	}
	return nil, runs
}

// join closes the runs of one face along the plane. Seen with the kept wood to the left, the k-th place
// where a loop leaves is joined to the k-th where one enters: they take turns along the line.
func (c *cutter) join(runs [][]int32, normal mgl64.Vec3, face int32) [][]int32 {
	along := normal.Cross(c.p.N)
	by := func(at func([]int32) int32) func(a, b []int32) int {
		place := func(r []int32) float64 { return along.Dot(c.out.Vertices[at(r)]) }
		return func(a, b []int32) int { return cmp.Compare(place(a), place(b)) }
	}
	first := func(r []int32) int32 { return r[0] }
	last := func(r []int32) int32 { return r[len(r)-1] }
	leave, enter := slices.Clone(runs), slices.Clone(runs)
	slices.SortStableFunc(leave, by(last))
	slices.SortStableFunc(enter, by(first))
	goesTo, run := map[int32]int32{}, map[int32][]int32{}
	for k := range leave {
		from, to := last(leave[k]), first(enter[k])
		goesTo[from], run[to] = to, enter[k]
		c.next[to], c.of[to] = from, face
	}
	var loops [][]int32
	for _, r := range runs {
		if run[r[0]] == nil {
			continue // in a loop already
		}
		var loop []int32
		for at := r[0]; run[at] != nil; {
			part := run[at]
			run[at] = nil
			loop = append(loop, part...)
			at = goesTo[last(part)]
		}
		loops = append(loops, loop)
	}
	return loops
}

// close adds the face of the cut.
func (c *cutter) close() int {
	if len(c.next) == 0 {
		return -1
	}
	f := solid.MeshFace{Normal: c.p.N, Face: -1}
	starts := make([]int32, 0, len(c.next))
	for v := range c.next {
		starts = append(starts, v)
	}
	slices.Sort(starts)
	done := map[int32]bool{}
	for _, s := range starts {
		var loop []int32
		for v := s; !done[v]; v = c.next[v] {
			done[v] = true
			loop = append(loop, v)
		}
		if loop != nil {
			f.Loops = append(f.Loops, loop)
		}
	}
	c.out.Faces = append(c.out.Faces, f)
	return len(c.out.Faces) - 1
}

// edges takes over what is left of the mesh's edges.
func (c *cutter) edges() {
	for _, e := range c.m.Edges {
		from, to := c.kept[e.From], c.kept[e.To]
		switch {
		case from < 0 && to < 0:
			continue
		case from < 0:
			from = c.meet(e.From, e.To)
		case to < 0:
			to = c.meet(e.From, e.To)
		}
		e.From, e.To, e.A = from, to, c.faces[e.A]
		if e.B >= 0 {
			e.B = c.faces[e.B]
		}
		c.out.Edges = append(c.out.Edges, e)
	}
}

// rim adds the edges round the cut face. Those along one face of the solid count as one edge of it, so
// that the section of a round face is one line.
func (c *cutter) rim(lid int) {
	if lid < 0 {
		return
	}
	free := 0
	for _, e := range c.m.Edges {
		free = max(free, e.Edge+1)
	}
	for _, l := range c.out.Faces[lid].Loops {
		for i, from := range l {
			f := c.of[from]
			c.out.Edges = append(c.out.Edges, solid.MeshEdge{From: from, To: l[(i+1)%len(l)], A: int32(lid), B: f, Edge: free + c.out.Faces[f].Face})
		}
	}
}
