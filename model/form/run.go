package form

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
)

// Stretch is one board of a run as laid out flat with the others, outer faces up, end to end. A place on
// it is told by how far it lies from the first end to the last, and from the reference edge to the other,
// both from 0 to 1; so the places of two boards at their common corner are one place in space.
type Stretch struct {
	Part    *part.Part
	Corners [2][2]mgl64.Vec3 // by end, then by edge, the reference edge first; part frame
}

// Length is that along the grain, in the middle of the width.
func (s Stretch) Length() float64 { return s.At(0, 0.5).Sub(s.At(1, 0.5)).Len() }

// At is the point of the outer face at f from end to end and g from edge to edge.
func (s Stretch) At(f, g float64) mgl64.Vec3 {
	mix := func(a, b mgl64.Vec3, t float64) mgl64.Vec3 { return a.Mul(1 - t).Add(b.Mul(t)) }
	return mix(mix(s.Corners[0][0], s.Corners[0][1], g), mix(s.Corners[1][0], s.Corners[1][1], g), f)
}

// SameArris is how near, in mm, the outer arrises of two ends must lie for the boards to be one run.
const SameArris = 0.01

// bound is one end of a board with its outer arris in the world, the reference edge first.
type bound struct {
	q     *part.Part
	part  [2]mgl64.Vec3
	world [2]mgl64.Vec3
}

func boundsOf(q *part.Part) []bound {
	ref := q.Reference()
	var out []bound
	for i := range q.Cuts {
		c := &q.Cuts[i]
		from, to, ok := q.EdgeOn(c, 0)
		if c.Kind != part.Crosscut || !ok {
			continue
		}
		if math.Abs(ref.Normal.Dot(to)-ref.Offset) < math.Abs(ref.Normal.Dot(from)-ref.Offset) {
			from, to = to, from
		}
		e := bound{q: q, part: [2]mgl64.Vec3{from, to}}
		for j, v := range e.part {
			e.world[j] = q.Place.Mul4x1(v.Vec4(1)).Vec3()
		}
		out = append(out, e)
	}
	return out
}

// Stretches finds the boards that follow each other round corners, two or more at a time, in the order of
// the piece's parts.
func Stretches(p *Piece) [][]Stretch {
	var all []bound
	for _, q := range p.Parts {
		if q.Solid != nil {
			all = append(all, boundsOf(q)...)
		}
	}
	next := func(e bound) (bound, bool) {
		i := slices.IndexFunc(all, func(o bound) bool {
			return o.q != e.q && o.world[0].Sub(e.world[0]).Len() < SameArris && o.world[1].Sub(e.world[1]).Len() < SameArris
		})
		if i < 0 {
			return bound{}, false
		}
		return all[i], true
	}
	other := func(e bound) (bound, bool) {
		i := slices.IndexFunc(all, func(o bound) bool { return o.q == e.q && o.part != e.part })
		if i < 0 {
			return bound{}, false
		}
		return all[i], true
	}
	used := map[*part.Part]bool{}
	var out [][]Stretch
	walk := func(e bound) {
		var run []Stretch
		for ok := true; ok && !used[e.q]; {
			far, two := other(e)
			if !two {
				break
			}
			used[e.q] = true
			run = append(run, Stretch{e.q, [2][2]mgl64.Vec3{e.part, far.part}})
			e, ok = next(far)
		}
		if len(run) > 1 {
			out = append(out, run)
		}
	}
	// first the runs that end somewhere, from an end that meets no other, then those that go all round
	for _, e := range all {
		if _, met := next(e); !met && !used[e.q] {
			walk(e)
		}
	}
	for _, e := range all {
		if !used[e.q] {
			walk(e)
		}
	}
	return out
}

// Laid is a board of a run that lies with its outer face up and its grain level, as in the board that the
// run is cut from.
type Laid struct {
	Part   *part.Part
	Turned bool // half a turn from how it lies in its own frame
}

// Runs are the boards of each run from left to right, outer faces up, the reference edge below: laid end
// to end they show the carpenter's triangle whole.
func Runs(p *Piece) [][]Laid {
	var out [][]Laid
	for _, run := range Stretches(p) {
		laid := make([]Laid, len(run))
		over := 0
		for i, s := range run {
			along, up := s.At(1, 0.5).Sub(s.At(0, 0.5)), s.At(0.5, 1).Sub(s.At(0.5, 0))
			laid[i] = Laid{s.Part, up.Y() < 0}
			if along.X()*up.Y() < 0 {
				over++ // walked from right to left
			}
		}
		if 2*over > len(run) {
			slices.Reverse(laid)
		}
		out = append(out, laid)
	}
	return out
}
