package solid

import (
	"math"
	"slices"
	"sort"
)

// Two round faces that meet in a mitre see its points at angles of their own. They get rulings at the same points of it, so
// that no slivers are wanted between the chord of one face and the points of the other: ends of arcs are carried from face
// to face, and what lies between two ends is cut into as many strips on both sides.

// mostPasses bounds how often ends and parts are carried on from face to face. Rounds that run round the faces of a board
// are settled in two or three. Where three rounds meet in one corner, what goes round the corner may come back at another angle
// each time; what is not settled then is left to slivers.
const mostPasses = 6

// twinned is an edge between two round faces, as each of them sees it.
type twinned struct {
	p, q *patch
	a, b *span
}

// twinned finds the edges between two of the patches.
func (f *flattener) twinned(patches []patch) []twinned {
	out := make([]twinned, 0, 2*len(patches))
	first := make([]int32, len(f.s.Edges)) // place in out of an edge that one patch has, from 1
	for i := range patches {
		p := &patches[i]
		for k := range p.arcs {
			a := &p.arcs[k]
			switch at := first[a.edge]; {
			case !f.s.Curve(&f.s.Edges[a.edge]).Twin:
			case at > 0:
				out[at-1].q, out[at-1].b = p, a
			default:
				out = append(out, twinned{p: p, a: a})
				first[a.edge] = int32(len(out))
			}
		}
	}
	return slices.DeleteFunc(out, func(t twinned) bool { return t.q == nil }) // a face beyond that is left out
}

func (t twinned) turned() twinned { return twinned{p: t.q, q: t.p, a: t.b, b: t.a} }

// across is the angle at which the face beyond has the point that this one has at an angle.
func (t twinned) across(angle float64) float64 {
	return t.b.curve.T0 + t.a.part(angle)*(t.b.curve.T1-t.b.curve.T0) + t.b.shift
}

// settle does one thing to all edges, to and fro, until none of them changes anything any more.
func settle(edges []twinned, do func(twinned) (changed bool)) {
	for pass := range mostPasses {
		changed := false
		for i := range edges {
			t := edges[i]
			if pass%2 == 1 {
				t = edges[len(edges)-1-i]
			}
			changed = do(t) || changed
			changed = do(t.turned()) || changed
		}
		if !changed {
			return
		}
	}
}

// carryEnds carries ends of arcs to the faces beyond the edges that they lie on.
func carryEnds(edges []twinned) {
	settle(edges, func(t twinned) (changed bool) {
		for _, end := range t.p.ends {
			if end > t.a.lo+t.p.same && end < t.a.hi-t.p.same {
				changed = t.q.end(t.across(end)) || changed
			}
		}
		return changed
	})
}

// end adds an end where there is none yet.
func (p *patch) end(t float64) (added bool) {
	i := p.nearest(t)
	if math.Abs(p.ends[i]-t) < p.same {
		return false
	}
	if p.ends[i] < t {
		i++
	}
	p.ends = append(p.ends, 0)
	copy(p.ends[i+1:], p.ends[i:])
	p.ends[i] = t
	return true
}

// nearest is the place of the end that lies nearest to an angle.
func (p *patch) nearest(t float64) int {
	i := sort.SearchFloat64s(p.ends, t)
	if i == len(p.ends) || i > 0 && t-p.ends[i-1] < p.ends[i]-t {
		i--
	}
	return i
}

// evenParts gives what lies between two ends as many parts on both sides of an edge.
func evenParts(edges []twinned) {
	settle(edges, func(t twinned) (changed bool) {
		for i, n := range t.p.parts {
			from, to := t.p.ends[i], t.p.ends[i+1]
			if from < t.a.lo-t.p.same || to > t.a.hi+t.p.same {
				continue
			}
			u, v := t.across(from), t.across(to)
			k := t.q.nearest(min(u, v))
			if k < len(t.q.parts) && t.q.parts[k] < n && t.q.nearest(max(u, v)) == k+1 {
				t.q.parts[k], changed = n, true
			}
		}
		return changed
	})
}
