package solid

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"github.com/go-gl/mathgl/mgl64"
)

// sameRuling is how near two lines along a cylinder may be, mm, and still be one: less than walls may be long.
const sameRuling = SamePoint / 2

// Flatten replaces arcs by chords that lie within tol of them, mm, and round faces by plane strips
// between rulings. Faces that share an edge share its points, so the mesh is closed.
func (s *Solid) Flatten(tol float64) *Mesh {
	f := newFlattener(s, tol)
	f.flat = make([]int32, len(s.Faces))
	patches := f.patches()
	n := len(s.Faces)
	for i := range patches {
		n += len(patches[i].knots)
	}
	f.m.Faces = make([]MeshFace, 0, n)
	for i := range s.Faces {
		if s.Faces[i].Round == nil {
			f.flatFace(i, s.Faces[i].Loops)
		}
	}
	if len(patches) > 0 {
		f.strip = newHalves(len(f.m.Vertices))
		for i := range patches {
			f.strips(&patches[i])
		}
	}
	f.edges()
	return &f.m
}

func newFlattener(s *Solid, tol float64) *flattener {
	if !(tol > 0) {
		tol = Flattening
	}
	f := &flattener{s: s, tol: tol, inner: make([][]int32, len(s.Edges))}
	f.m.Vertices = append(make([]mgl64.Vec3, 0, len(s.Vertices)+8*len(s.Arcs)), s.Vertices...)
	return f
}

type flattener struct {
	s     *Solid
	tol   float64
	m     Mesh
	skip  []bool    // faces to leave out; nil for none
	inner [][]int32 // of each edge: its points between its ends, forward
	flat  []int32   // mesh face of each flat face; nil where nobody asks which
	strip *halves   // which strip has a half-edge; nil where nobody asks

	// Room that is used again, and room that loops are put into one after the other.
	columns [][]int32
	rungs   []rung
	loop    []int32
	ints    []int32
	floats  []float64
	loops   [][]int32
}

// How much room is made at a time.
const (
	moreInts   = 1024
	moreAngles = 96
	moreLoops  = 256
)

// kept puts a loop where the mesh has its loops.
func (f *flattener) kept(loop []int32) []int32 {
	if cap(f.ints)-len(f.ints) < len(loop) {
		f.ints = make([]int32, 0, max(moreInts, len(loop)))
	}
	at := len(f.ints)
	f.ints = append(f.ints, loop...)
	return f.ints[at:len(f.ints):len(f.ints)]
}

// angles is room for so many, one after the other.
func (f *flattener) angles(n int) []float64 {
	if cap(f.floats)-len(f.floats) < n {
		f.floats = make([]float64, 0, max(moreAngles, n))
	}
	at := len(f.floats)
	f.floats = f.floats[:at+n]
	return f.floats[at : at : at+n]
}

// alone is the list of loops of a face that has but one.
func (f *flattener) alone(loop []int32) [][]int32 {
	if len(f.loops) == cap(f.loops) {
		f.loops = make([][]int32, 0, moreLoops)
	}
	at := len(f.loops)
	f.loops = append(f.loops, loop)
	return f.loops[at : at+1 : at+1]
}

// patch is a round face unrolled: its arcs, and the angles at which it is cut into strips.
type patch struct {
	face  int
	same  float64 // angles nearer than this are one ruling
	arcs  []span
	ends  []float64 // angles at which arcs begin or end, and those carried over from faces beyond
	parts []int32   // how many strips there are from each of ends to the next
	knots []float64
}

// span is an arc of a patch: its range of unrolled angles and its points, from lo to hi.
type span struct {
	edge   int
	curve  *Curve // as counted round the face
	lo, hi float64
	shift  float64 // what was added to the arc's own angles
	points []int32 // one at each knot from lo to hi
	first  int     // the knot of its first point

	shared *shared   // where another round face lies beyond it
	more   [][]int32 // after each point, those of the other face alone
}

// patch unrolls a round face and gives its arcs their points.
func (f *flattener) patch(face int) patch {
	p := patch{face: face, arcs: make([]span, 0, 4), same: sameRuling / f.s.Faces[face].Round.Radius}
	base := math.NaN()
	for _, l := range f.s.Faces[face].Loops {
		at := base
		for _, h := range l {
			c, _, _ := f.s.walked(h)
			if c.Kind == Straight || math.Abs(c.T1-c.T0) < p.same {
				continue
			}
			shift := c.Base
			if !math.IsNaN(at) {
				shift += 2 * math.Pi * math.Round((at-c.T0-c.Base)/(2*math.Pi))
			} else {
				base = c.T0 + c.Base
			}
			at = c.T1 + shift
			p.arcs = append(p.arcs, span{edge: h.Edge, curve: f.s.curveOf(h), shift: shift,
				lo: min(c.T0, c.T1) + shift, hi: max(c.T0, c.T1) + shift})
		}
	}
	f.ends(&p)
	return p
}

// patches unrolls all round faces and gives their arcs their points.
func (f *flattener) patches() []patch {
	out := make([]patch, 0, 4)
	for i := range f.s.Faces {
		if f.s.Faces[i].Round != nil && (f.skip == nil || !f.skip[i]) {
			out = append(out, f.patch(i))
		}
	}
	var mitres []twinned
	if slices.ContainsFunc(f.s.Arcs, func(c Curve) bool { return c.Twin }) {
		mitres = f.twinned(out)
	}
	carryEnds(mitres)
	for i := range out {
		f.divide(&out[i])
	}
	evenParts(mitres)
	for i := range out {
		f.cut(&out[i])
	}
	f.share(mitres)
	for i := range out {
		for k := range out[i].arcs {
			f.points(&out[i], &out[i].arcs[k])
		}
	}
	return out
}

// ends lists the angles at which arcs begin or end.
func (f *flattener) ends(p *patch) {
	p.ends = f.angles(2 * len(p.arcs))
	for i := range p.arcs {
		p.ends = append(p.ends, p.arcs[i].lo, p.arcs[i].hi)
	}
	slices.Sort(p.ends)
	p.ends = apart(p.ends, p.same)
}

// apart keeps of ascending numbers the first and each that is so much more than the last one kept.
func apart(all []float64, by float64) []float64 {
	n := 0
	for _, x := range all {
		if n == 0 || x-all[n-1] >= by {
			all[n] = x
			n++
		}
	}
	return all[:n]
}

// divide tells how many strips the tolerance asks for from each end of an arc to the next.
func (f *flattener) divide(p *patch) {
	parts := f.loop[:0]
	for i, t := range p.ends[1:] {
		last, n := p.ends[i], 1.0
		for k := range p.arcs {
			if a := &p.arcs[k]; a.lo < t-p.same && a.hi > last+p.same {
				n = max(n, math.Ceil((t-last)/chordStep(f.s.Curve(&f.s.Edges[a.edge]), f.tol)))
			}
		}
		parts = append(parts, int32(n))
	}
	f.loop, p.parts = parts, f.kept(parts)
}

// cut makes the knots: all ends of arcs, and evenly between them as many as there are parts.
func (f *flattener) cut(p *patch) {
	n := int32(1)
	for _, k := range p.parts {
		n += k
	}
	p.knots = append(f.angles(int(n)), p.ends[0])
	for i, parts := range p.parts {
		last, t := p.ends[i], p.ends[i+1]
		for k := int32(1); k < parts; k++ {
			p.knots = append(p.knots, last+(t-last)*float64(k)/float64(parts))
		}
		p.knots = append(p.knots, t)
	}
}

// chordStep is the largest angle whose chord stays within the tolerance: the middle of a chord over the
// angle d is (1 - cos d/2) times a radius of the ellipse away from its arc.
func chordStep(c *Curve, tol float64) float64 {
	cos := max(0, 1-tol/c.reach())
	return 2 * math.Acos(cos)
}

// points gives an arc its points at the knots; the ends are the edge's own vertices.
func (f *flattener) points(p *patch, a *span) {
	knots := p.knots
	e := &f.s.Edges[a.edge]
	from, to := int32(e.From), int32(e.To)
	curve := a.curve
	up := curve.T1 > curve.T0
	if !up {
		from, to = to, from
	}
	a.first = sort.SearchFloat64s(knots, a.lo-p.same)
	if a.shared != nil {
		a.shared.take(p, a, from, to)
		return
	}
	a.points = append(make([]int32, 0, len(knots)-a.first+1), from)
	for k := a.first + 1; knots[k] < a.hi-p.same; k++ {
		a.points = append(a.points, int32(len(f.m.Vertices)))
		f.m.Vertices = append(f.m.Vertices, curve.at(knots[k]-a.shift))
	}
	inner := a.points[1:len(a.points):len(a.points)]
	if !up {
		inner = slices.Clone(inner)
		slices.Reverse(inner)
	}
	f.inner[a.edge] = inner
	a.points = append(a.points, to)
}

// flatFace copies a flat face, some or all of its loops, with the points of its arcs.
func (f *flattener) flatFace(i int, of [][]HalfEdge) {
	face := &f.s.Faces[i]
	var loops [][]int32
	if len(of) > 1 {
		loops = make([][]int32, len(of))
	}
	for j, l := range of {
		loop := f.loop[:0]
		for _, h := range l {
			loop = append(loop, int32(f.s.origin(h)))
			in := f.inner[h.Edge]
			for k := range in {
				if h.Forward {
					loop = append(loop, in[k])
				} else {
					loop = append(loop, in[len(in)-1-k])
				}
			}
		}
		f.loop = loop
		if loops == nil {
			loops = f.alone(f.kept(loop))
		} else {
			loops[j] = f.kept(loop)
		}
	}
	if f.flat != nil {
		f.flat[i] = int32(len(f.m.Faces))
	}
	f.m.Faces = append(f.m.Faces, MeshFace{Normal: face.Plane.N, Loops: loops, Face: i})
}

// strips makes the plane strips of a round face, from ruling to ruling.
func (f *flattener) strips(p *patch) {
	c := f.s.Faces[p.face].Round
	x, y := c.frame()
	height := func(v int32) float64 { return f.m.Vertices[v].Sub(c.Point).Dot(c.Axis) }
	columns := f.columns[:min(len(p.knots), cap(f.columns))]
	for len(columns) < len(p.knots) {
		columns = append(columns, nil)
	}
	for k := range columns {
		columns[k] = columns[k][:0]
	}
	f.columns = columns
	for i := range p.arcs {
		for k, v := range p.arcs[i].points {
			columns[p.arcs[i].first+k] = append(columns[p.arcs[i].first+k], v)
		}
	}
	for _, col := range columns {
		slices.SortFunc(col, func(a, b int32) int { return cmp.Compare(height(a), height(b)) })
	}
	for k := 0; k+1 < len(p.knots); k++ {
		rungs := p.rungs(f.rungs[:0], k)
		f.rungs = rungs
		slices.SortFunc(rungs, func(a, b rung) int { return cmp.Compare(height(a.from)+height(a.to), height(b.from)+height(b.to)) })
		sin, cos := math.Sincos((p.knots[k] + p.knots[k+1]) / 2)
		n := x.Mul(cos).Add(y.Mul(sin))
		if c.Hollow {
			n = n.Mul(-1)
		}
		for i := 0; i+1 < len(rungs); i += 2 {
			low, high := rungs[i], rungs[i+1]
			loop := append(f.loop[:0], low.from, low.to)
			loop = between(loop, columns[k+1], low.to, high.to, height, true)
			f.loop = between(loop, columns[k], low.from, high.from, height, false)
			f.facet(p.face, f.loop, n, c.Hollow)
			f.slivers(p.face, low, n, c.Hollow, false)
			f.slivers(p.face, high, n, c.Hollow, true)
		}
	}
}

// facet adds a plane facet of a round face, whose loop is copied.
func (f *flattener) facet(face int, loop []int32, n mgl64.Vec3, back bool) {
	if back {
		slices.Reverse(loop)
	}
	id := int32(len(f.m.Faces))
	f.m.Faces = append(f.m.Faces, MeshFace{Normal: n, Loops: f.alone(f.kept(loop)), Face: face})
	if f.strip == nil {
		return
	}
	for a := range loop {
		f.strip.put(loop[a], loop[(a+1)%len(loop)], id)
	}
}

// rung is what crosses from one ruling to the next: a chord, or several where the face beyond has points between.
type rung struct {
	from, to int32
	more     []int32
}

// rungs appends what crosses from knot k to the next.
func (p *patch) rungs(rungs []rung, k int) []rung {
	for i := range p.arcs {
		a := &p.arcs[i]
		if j := k - a.first; j >= 0 && j+1 < len(a.points) {
			r := rung{from: a.points[j], to: a.points[j+1]}
			if a.shared != nil {
				r.more = a.more[j]
			}
			rungs = append(rungs, r)
		}
	}
	return rungs
}

// between walks a ruling from low to high (up) or from high to low: the points strictly between,
// and the high end.
func between(loop, column []int32, low, high int32, height func(int32) float64, up bool) []int32 {
	if low == high {
		return loop
	}
	if !up {
		loop = append(loop, high)
	}
	for i := range column {
		if !up {
			i = len(column) - 1 - i
		}
		if v := column[i]; v != low && v != high && height(v) > height(low) && height(v) < height(high) && loop[len(loop)-1] != v {
			loop = append(loop, v)
		}
	}
	if up {
		loop = append(loop, high)
	}
	return loop
}

// edges lists the chords of the solid's edges and the lines between strips.
func (f *flattener) edges() {
	n := len(f.s.Edges) + len(f.m.Faces) // about as many lines between strips as strips
	for _, in := range f.inner {
		n += len(in)
	}
	f.m.Edges = make([]MeshEdge, 0, n)
	for i := range f.s.Edges {
		e := &f.s.Edges[i]
		from := int32(e.From)
		for k := 0; k <= len(f.inner[i]); k++ {
			to := int32(e.To)
			if k < len(f.inner[i]) {
				to = f.inner[i][k]
			}
			f.m.Edges = append(f.m.Edges, MeshEdge{From: from, To: to, Smooth: e.Smooth, Edge: i,
				A: f.faceOf(e.Left, from, to), B: f.faceOf(e.Right, to, from)})
			if f.strip != nil {
				f.strip.drop(from, to)
				f.strip.drop(to, from)
			}
			from = to
		}
	}
	if f.strip == nil {
		return
	}
	for from := range f.strip.first {
		for _, h := range f.strip.onward(int32(from)) {
			f.m.Edges = append(f.m.Edges, MeshEdge{From: int32(from), To: h.to, Smooth: true, Edge: -1,
				A: h.face, B: f.strip.of(h.to, int32(from))})
		}
	}
}

func (f *flattener) faceOf(face int, from, to int32) int32 {
	if f.s.Faces[face].Round == nil {
		return f.flat[face]
	}
	return f.strip.of(from, to)
}
