package form

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// easedRun is one straight edge that is eased: where two planes meet, from one point to another.
type easedRun struct {
	faces  [2]solid.Plane
	ends   [2]mgl64.Vec3
	radius measure.Length
}

func (e easedRun) inside() measure.Angle { return joint.Dihedral(e.faces[0].N, e.faces[1].N) }

func (e easedRun) strip() part.Strip { return part.Strip{Radius: e.radius, Inside: e.inside()} }

// gap is a stretch that is missing from the middle of an edge: how long it is on the edge and
// along the middle of the section, and the wood that the round-over of the gap's own rim takes
// at its ends.
type gap struct {
	edge, middle, shared float64

	sharp [][2]solid.Plane // the planes that it lies between
}

// from tells between which planes a gap lies.
func (g gap) from(p, q solid.Plane) gap {
	g.sharp = append(g.sharp, [2]solid.Plane{p, q})
	return g
}

// and is two gaps of one edge.
func (g gap) and(h gap) gap {
	return gap{g.edge + h.edge, g.middle + h.middle, g.shared + h.shared, append(g.sharp, h.sharp...)}
}

func plain(length float64) gap { return gap{edge: length, middle: length} }

// between eases the edge where two planes meet, from one plane to another, less a gap. The wood
// it takes is its section times the length through the section's middle, which leaning ends make
// longer or shorter than the edge; lessTaken takes off what edges eased before have taken at its ends.
func (e *easing) between(name string, p, q, from, to solid.Plane, less gap) *freeRun {
	run := easedRun{[2]solid.Plane{p, q}, [2]mgl64.Vec3{meet(p, q, from), meet(p, q, to)}, e.radius}
	along := run.ends[1].Sub(run.ends[0])
	gone := e.worked(p, q)
	less.edge, less.middle = less.edge+gone, less.middle+gone
	length := along.Len() - less.edge
	if length <= solid.SamePoint {
		return nil
	}
	eased := part.EasedStraight(name, e.radius, measure.Length(length), run.inside())
	middle := run.ends[0].Add(run.middle())
	way := along.Normalize()
	reach := func(end solid.Plane) float64 { return (end.D - end.N.Dot(middle)) / end.N.Dot(way) }
	eased.Removed *= (math.Abs(reach(to)-reach(from)) - less.middle) / length
	before := *e.run
	*e.run = append(before, run)
	e.board.part.Eased = append(e.board.part.Eased, eased)
	inside := run.ends[0].Add(run.ends[1]).Mul(0.5).Add(run.middle())
	f := &freeRun{p: p, q: q, ends: [2]runEnd{endOf(from, inside), endOf(to, inside)}, sharp: less.sharp, radius: e.radius.MM(),
		tag: freeTag(e.of, name, e.board.part.Name), sizes: []string{(&spot{index: e.of}).path("radius")},
		own: e.board, eased: len(e.board.part.Eased) - 1, edge: run, before: before, shared: less.shared}
	*e.free = append(*e.free, f)
	return f
}

// middle of the section from the edge.
func (e easedRun) middle() mgl64.Vec3 {
	return e.faces[0].N.Add(e.faces[1].N).Normalize().Mul(-e.strip().Centroid())
}

// lessTaken takes off a run's wood what round-overs before it have taken at its ends already.
func (f *freeRun) lessTaken() {
	f.own.part.Eased[f.eased].Removed -= f.edge.taken(f.before) + f.shared
}

// taken is the wood at the ends of an edge that round-overs before it have taken already.
func (e easedRun) taken(before []easedRun) float64 {
	sum := 0.0
	for _, end := range e.ends {
		var met []easedRun
		for _, other := range before {
			if other.endsAt(end) && !other.goesOn(e) && !other.before(e) && !e.before(other) {
				met = append(met, other)
				sum += sharedByTwo(e, other)
			}
		}
		if len(met) == 2 {
			sum -= sharedByThree(met[0], met[1], e)
		}
	}
	return sum
}

func (e easedRun) endsAt(p mgl64.Vec3) bool {
	return e.ends[0].Sub(p).Len() < solid.SamePoint || e.ends[1].Sub(p).Len() < solid.SamePoint
}

// before tells whether another edge runs in front of a face of this one: they meet on the inside of a corner,
// where neither takes wood of the other.
func (e easedRun) before(other easedRun) bool {
	for _, p := range e.faces {
		for _, end := range other.ends {
			if p.N.Dot(end) > p.D+solid.SamePoint*10 {
				return true
			}
		}
	}
	return false
}

// goesOn tells that two edges that meet run on from each other, or nearly so: the arris of a top
// that lies flush on the side's.
func (e easedRun) goesOn(other easedRun) bool {
	a, b := e.ends[1].Sub(e.ends[0]), other.ends[1].Sub(other.ends[0])
	return a.Cross(b).Len() < 0.2*a.Len()*b.Len()
}

// sharedByTwo is what two edges of one corner both take.
func sharedByTwo(a, b easedRun) float64 {
	return part.SharedByTwo(a.strip(), b.strip(), between(a, b))
}

// sharedByThree is what the three edges of one corner all take.
func sharedByThree(a, b, down easedRun) float64 {
	return part.SharedByThree(a.strip(), b.strip(), down.strip(), between(a, b))
}

// between is the angle inside the wood of two edges of one corner, on the face that both border.
// Their faces that are most alike are that face: on a corner of two boards they may differ by the
// degree or so that an edge cut square to a leaning side is off the top's.
func between(a, b easedRun) measure.Angle {
	f, g, most := 0, 0, -2.0
	for i, p := range a.faces {
		for j, q := range b.faces {
			if alike := p.N.Dot(q.N); alike > most {
				f, g, most = i, j, alike
			}
		}
	}
	n := a.faces[f].N
	in := func(other mgl64.Vec3) mgl64.Vec3 { return other.Sub(n.Mul(n.Dot(other))) }
	return joint.Dihedral(in(a.faces[1-f].N), in(b.faces[1-g].N))
}
