package form

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync/atomic"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
	"splaywright/model/solid"
	"splaywright/model/twos"
)

// Free edges are rounded when the piece is together: what a boarded corner shows as one edge is one run of the
// bit, through every board that comes to the surface there. A joint keeps its sharp edges, since the run ends
// where another board stands on the edge.

// freeRun is an edge of the piece that is rounded, where two planes meet.
type freeRun struct {
	p, q   solid.Plane // world
	ends   [2]runEnd
	sharp  [][2]solid.Plane // stretches that are left, each between two planes
	radius float64
	tag    string
	sizes  []string // paths of those that shape it
	own    *board   // whose eased edge it is
	eased  int      // its place there

	edge   easedRun
	before []easedRun // eased before it, on this part and those before it; where they meet at a corner, some of its wood is gone
	shared float64    // mm³ that rims of gaps take of it

	cut    bool        // into its own board
	failed atomic.Bool // not into some board; boards are built side by side
}

// runEnd is where a run ends: at a plane, or with the wood.
type runEnd struct {
	plane solid.Plane
	out   bool // the wood ends there
}

// endOf is an end of a run at a plane: the run lies behind a face that it comes out of, and before one that it
// stops at.
func endOf(p solid.Plane, middle mgl64.Vec3) runEnd {
	return runEnd{p, p.N.Dot(middle) < p.D}
}

// freeCut is what runs take of one board in one go; more than one where one goes on from another.
type freeCut struct {
	line runLine
	own  [2]int // the planes of the board that it runs between; -1 for another
	stretch
	runs []*freeRun
	slot solid.Slot // its hollow
}

// How far a board's own planes may differ from those of a run that goes on over it: the arris of a
// half pin that is square to its board lies beside that of a top whose edge leans.
const (
	alikeNormals = 0.995 // cosine
	alikePlanes  = 1.5   // mm
)

// cutFree gives every board what the runs take of it.
func (b *assembly) cutFree(runs []*freeRun) {
	twos.Each(len(b.boards), func(k int) {
		board := b.boards[k]
		for _, r := range runs {
			if board.part.Slip == "" && !board.clearOf(r) {
				board.takeRun(r)
			}
		}
		for i := range board.free {
			c := &board.free[i]
			c.slot = c.line.slot(c.stretch, board, c.runs[0].tag)
		}
	})
}

// clearOf tells, at less cost than comesBy, of most runs that do not come by the board: all of them lies beyond one of its
// planes.
func (b *board) clearOf(r *freeRun) bool {
	one, other := b.localPoint(r.edge.ends[0]), b.localPoint(r.edge.ends[1])
	for _, s := range b.surfaces() {
		if far := s.D + alikePlanes; s.N.Dot(one) > far && s.N.Dot(other) > far {
			return true
		}
	}
	return false
}

// surfaces are a board's cuts and its two faces, part frame.
func (b *board) surfaces() []solid.Plane {
	if b.planes == nil {
		b.planes = []solid.Plane{{N: worldZ}, {N: worldZ.Mul(-1), D: b.thickness}}
		for _, e := range b.around {
			b.planes = append(b.planes, b.local(e.plane))
		}
	}
	return b.planes
}

// alike is the board's own plane for one of a run's; -1 where it has none.
func (b *board) alike(p solid.Plane, near mgl64.Vec3) int {
	best, most := -1, alikeNormals
	for i, s := range b.surfaces() {
		if k := s.N.Dot(p.N); k > most && math.Abs(s.N.Dot(near)-s.D) < alikePlanes {
			best, most = i, k
		}
	}
	return best
}

// takeRun notes what a run takes of the board.
func (b *board) takeRun(r *freeRun) {
	p, q := b.local(r.p), b.local(r.q)
	near, ok := b.comesBy(r, newRunLine(p, q, r.radius))
	if !ok {
		return
	}
	own := [2]int{b.alike(p, near), b.alike(q, near)}
	if own[0] < 0 && own[1] < 0 {
		return
	}
	for i, to := range []*solid.Plane{&p, &q} {
		if own[i] >= 0 {
			*to = b.surfaces()[own[i]]
		}
	}
	e := newRunLine(p, q, r.radius)
	inside := e.at.Sub(e.p.N.Add(e.q.N).Normalize().Mul(e.touch / 8)) // in the wood
	if own[0] > own[1] {                                              // all runs along one edge go the same way
		p, q, own = q, p, [2]int{own[1], own[0]}
		e = newRunLine(p, q, r.radius)
	}
	lo, hi := within(inside, e.way, b.surfaces(), solid.SamePoint, own[:]...)
	for _, s := range e.stretches(r, b) {
		if min(s.to, hi)-max(s.from, lo) > solid.SamePoint {
			b.sizesOf[r.tag] = r.sizes
			b.join(freeCut{line: e, own: own, stretch: s, runs: []*freeRun{r}})
		}
	}
}

// join adds a cut to the board's, or to one that it goes on from.
func (b *board) join(c freeCut) {
	for i := range b.free {
		d := &b.free[i]
		if d.own != c.own || c.own[0] < 0 || c.own[1] < 0 {
			continue
		}
		if c.from > d.to+3*stopShort || c.to < d.from-3*stopShort {
			continue
		}
		if c.from < d.from {
			d.from, d.stop[0] = c.from, c.stop[0]
		}
		if c.to > d.to {
			d.to, d.stop[1] = c.to, c.stop[1]
		}
		d.runs = append(d.runs, c.runs...)
		return
	}
	b.free = append(b.free, c)
}

// comesBy tells whether a run comes by the board, and a point of it where it does.
func (b *board) comesBy(r *freeRun, e runLine) (mgl64.Vec3, bool) {
	lo, hi := within(e.at, e.way, b.surfaces(), alikePlanes)
	one, other := e.where(b.local(r.ends[0].plane)), e.where(b.local(r.ends[1].plane))
	lo, hi = max(lo, min(one, other)), min(hi, max(one, other))
	return e.at.Add(e.way.Mul((lo + hi) / 2)), lo < hi
}

// within is the stretch of a line behind all planes but some, or no farther than a little before them.
func within(at, way mgl64.Vec3, planes []solid.Plane, by float64, but ...int) (lo, hi float64) {
	lo, hi = math.Inf(-1), math.Inf(1)
	for i, s := range planes {
		if slices.Contains(but, i) {
			continue
		}
		rise, room := s.N.Dot(way), s.D-s.N.Dot(at)+by
		switch {
		case math.Abs(rise) < tiltNoise:
			if room < 0 {
				return 0, 0
			}
		case rise > 0:
			hi = min(hi, room/rise)
		default:
			lo = max(lo, room/rise)
		}
	}
	return lo, hi
}

// runLine is the line of a run on one board, part frame.
type runLine struct {
	p, q    solid.Plane
	at, way mgl64.Vec3
	radius  float64
	touch   float64 // from the edge to where the round begins, on either face
}

func newRunLine(p, q solid.Plane, radius float64) runLine {
	k := p.N.Dot(q.N)
	e := runLine{p: p, q: q, radius: radius, way: p.N.Cross(q.N).Normalize()}
	e.at = p.N.Mul((p.D - q.D*k) / (1 - k*k)).Add(q.N.Mul((q.D - p.D*k) / (1 - k*k)))
	e.touch = radius * math.Tan(math.Acos(k)/2)
	return e
}

// stretch is what is rounded in one go: it runs out where it has no plane to stop at.
type stretch struct {
	from, to float64
	stop     [2]*solid.Plane
}

// stretches of a run on a board: from end to end, less what is left sharp.
func (e runLine) stretches(r *freeRun, b *board) []stretch {
	far, own := 3*b.thickness+10*(e.touch+beyond), r.own == b
	whole := stretch{math.Inf(1), math.Inf(-1), [2]*solid.Plane{}}
	var bounds [2]solid.Plane
	for i, end := range r.ends {
		bounds[i] = b.local(end.plane)
		t := e.where(bounds[i])
		whole.from, whole.to = min(whole.from, t), max(whole.to, t)
	}
	if e.where(bounds[0]) > e.where(bounds[1]) {
		bounds[0], bounds[1] = bounds[1], bounds[0]
		r = &freeRun{ends: [2]runEnd{r.ends[1], r.ends[0]}, sharp: r.sharp}
	}
	for i, end := range r.ends {
		switch {
		case !end.out && !(own && b.endsIn(bounds[i])):
			bounds[i] = e.before(bounds[i], float64(1-2*i))
			whole.stop[i] = &bounds[i]
			whole.from, whole.to = whole.from+stopShort*float64(1-i), whole.to-stopShort*float64(i)
		case end.out && !own && !b.endsIn(bounds[i]) && b.goesOn(e, whole, i):
			bounds[i] = e.before(bounds[i], float64(1-2*i))
			whole.stop[i] = &bounds[i]
		case i == 0:
			whole.from -= far
		default:
			whole.to += far
		}
	}
	out := []stretch{whole}
	for _, s := range r.sharp {
		out = e.without(out, b.local(s[0]), b.local(s[1]))
	}
	return out
}

// goesOn tells whether the board goes on beyond an end of a run of another.
func (b *board) goesOn(e runLine, s stretch, end int) bool {
	lo, hi := within(e.at.Sub(e.p.N.Add(e.q.N).Normalize().Mul(e.touch/8)), e.way, b.surfaces(), solid.SamePoint, b.near(e)...)
	return end == 0 && lo < s.from-alikePlanes || end == 1 && hi > s.to+alikePlanes
}

// near are the board's planes that a run lies between.
func (b *board) near(e runLine) []int {
	var out []int
	for i, s := range b.surfaces() {
		if s == e.p || s == e.q {
			out = append(out, i)
		}
	}
	return out
}

// stopShort, mm, is how far before another board, or a shape, a round stops: the bit must not touch them.
const stopShort = 0.5

// before is a plane moved so that the line meets it stopShort farther on (1) or back (-1).
func (e runLine) before(p solid.Plane, way float64) solid.Plane {
	p.D += way * stopShort * p.N.Dot(e.way)
	return p
}

// where the line meets a plane.
func (e runLine) where(p solid.Plane) float64 { return (p.D - p.N.Dot(e.at)) / p.N.Dot(e.way) }

// endsIn tells whether a plane is one of the board's own, whichever way it faces.
func (b *board) endsIn(p solid.Plane) bool {
	for _, s := range b.surfaces() {
		k := s.N.Dot(p.N)
		if math.Abs(k) > 1-tiltNoise && math.Abs(s.D-math.Copysign(1, k)*p.D) < solid.SamePoint*10 {
			return true
		}
	}
	return false
}

// without takes what lies between two planes out of stretches.
func (e runLine) without(all []stretch, p, q solid.Plane) []stretch {
	if e.where(p) > e.where(q) {
		p, q = q, p
	}
	from, to := e.where(p), e.where(q)
	var out []stretch
	for _, s := range all {
		if to <= s.from || from >= s.to {
			out = append(out, s)
			continue
		}
		if first := e.before(p, -1); from-stopShort > s.from {
			out = append(out, stretch{s.from, from - stopShort, [2]*solid.Plane{s.stop[0], &first}})
		}
		if last := e.before(q, 1); to+stopShort < s.to {
			out = append(out, stretch{to + stopShort, s.to, [2]*solid.Plane{&last, s.stop[1]}})
		}
	}
	return out
}

// slot is the hollow of a rounded stretch.
func (e runLine) slot(s stretch, b *board, tag string) solid.Slot {
	inP, inQ := e.p.N.Cross(e.way), e.way.Cross(e.q.N) // away from the edge, in each face
	onP, onQ := e.at.Add(inP.Mul(e.touch)), e.at.Add(inQ.Mul(e.touch))
	n := onQ.Sub(onP).Cross(e.way).Normalize()
	if n.Dot(e.p.N.Add(e.q.N)) < 0 {
		n = n.Mul(-1)
	}
	far := 3*b.thickness + 10*(e.touch+beyond)
	walls := []solid.Plane{through(n, onP), {N: e.p.N.Mul(-1), D: -e.p.D - far}, {N: e.q.N.Mul(-1), D: -e.q.D - far},
		through(e.way, e.at.Add(e.way.Mul(s.from))), through(e.way.Mul(-1), e.at.Add(e.way.Mul(s.to)))}
	for i, stop := range s.stop {
		if stop == nil {
			continue
		}
		if w := *stop; w.N.Dot(walls[3+i].N) > 0 {
			walls[3+i] = w
		} else {
			walls[3+i] = flip(w)
		}
	}
	out := solid.Slot{Tag: tag, Round: &solid.Cylinder{Axis: e.way, Radius: e.radius,
		Point: e.at.Sub(e.p.N.Add(e.q.N).Mul(e.radius / (1 + e.p.N.Dot(e.q.N))))}}
	out.Walls = make([]solid.Wall, len(walls))
	for i, w := range walls {
		out.Walls[i].Plane = w
	}
	return out
}

// finishFree makes the board as it looks when its free edges are rounded. A run that something stands in the
// way of stays a figure of the table, and a finding says so.
func (b *board) finishFree() []part.Finding {
	b.part.Finished = b.part.Solid
	left := b.free
	var found []part.Finding
	for len(left) > 0 {
		made, met, err := b.withFree(left)
		if err == nil {
			b.part.Finished = made
			for i, c := range left {
				b.noteCut(c, met[i])
			}
			b.met = met
			break
		}
		k := culprit(left, err)
		for _, r := range left[k].runs {
			found = append(found, b.notCut(r.tag, err))
			r.failed.Store(true)
		}
		left = append(left[:k:k], left[k+1:]...)
	}
	return found
}

// noteCut notes that a cut met wood in the board whose edge it rounds.
func (b *board) noteCut(c freeCut, met bool) {
	for _, r := range c.runs {
		if met && r.own == b {
			r.cut = true
		}
	}
}

// slotsOf are the hollows of free cuts.
func slotsOf(cuts []freeCut) []solid.Slot {
	slots := make([]solid.Slot, len(cuts))
	for i := range cuts {
		slots[i] = cuts[i].slot
	}
	return slots
}

// withFree cuts runs into the board, and with them, so that they meet, the rounds of single edges.
func (b *board) withFree(cuts []freeCut) (*solid.Solid, []bool, error) {
	slots := slotsOf(cuts)
	if len(b.rounds) == 0 {
		return b.part.Solid.Slotted(slots)
	}
	sharp := b.rounded
	sharp.Slots = sharp.Slots[:len(b.shape.Slots):len(b.shape.Slots)]
	s, err := sharp.Build()
	if err != nil {
		return nil, nil, err
	}
	own := b.rounded.Slots[len(b.shape.Slots):]
	s, met, err := s.Slotted(append(slots, own...))
	if err != nil {
		return nil, nil, err
	}
	return s, met[:len(cuts)], nil
}

// culprit is the cut that an error speaks of, the last one where it speaks of none.
func culprit(cuts []freeCut, err error) int {
	text := err.Error()
	for i := len(cuts) - 1; i >= 0; i-- {
		if strings.Contains(text, cuts[i].runs[0].tag) {
			return i
		}
	}
	return len(cuts) - 1
}

// freeTag names a run in findings.
func freeTag(feature int, edge, of string) string {
	return fmt.Sprintf("%s %d (%s, %s)", part.RoundOver, feature+1, edge, lowerFirst(of))
}
