package check

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/part"
)

// webSource stands beside the least wood left between an opening and an edge or joint.
const webSource = "common practice: leave half the board's thickness of wood beside an opening"

// web is the least wood, mm, to leave beside an opening.
func web(q *part.Part) float64 { return q.Blank.Thickness.MM() / 2 }

// features looks at every opening against the edges of its board, the joints, the stretchers'
// ends and the other openings.
func features(r *run) {
	for _, q := range r.p.Parts {
		open := r.openings(q)
		if len(open) == 0 {
			continue
		}
		fixed := obstaclesOn(r, q)
		for i := range open {
			lookedAt(r, q, fixed, open, i).report(open[i].shape)
		}
	}
}

// lookedAt takes up the i-th of a board's openings.
func lookedAt(r *run, q *part.Part, fixed []obstacle, open []opening, i int) looked {
	f := open[i].Feature
	return looked{run: r, board: q, feature: f,
		around: append(around(fixed, f), others(f, open[:i])...), also: others(f, open[i+1:])}
}

// looked is one opening with everything that it must keep clear of.
type looked struct {
	*run
	board   *part.Part
	feature part.Feature
	around  []obstacle // what is told here
	also    []obstacle // later openings, told with those; a way out must clear them too
}

// around leaves out the edge that a shape stands on, and what it may meet without harm.
func around(all []obstacle, f part.Feature) []obstacle {
	if f.Edge == "" {
		return slices.Clone(all)
	}
	out, hull := direction(f.Angle.Radians()), polygon(f.Hull)
	return slices.DeleteFunc(slices.Clone(all), func(o obstacle) bool {
		switch {
		case f.Kind == part.Chamfer && (o.kind == edgeOfBoard || o.inner && !f.Inner):
			return true
		case o.kind != edgeOfBoard:
			return false
		case o.band.n.Dot(out) > 0.9:
			return true
		}
		return len(hull) > 0 && o.band.from-hull.support(o.band.n) < beyondEnd // it is open there
	})
}

// beyondEnd, mm, is how near to an end of its edge a shape counts as running out there: the shape is known on
// one face, and a leaning end may stand farther in on the other.
const beyondEnd = 3.0

// meets tells which openings must keep clear of each other: two that are cut by planes alone may meet.
func meets(f, g part.FeatureKind) bool {
	return !flatWalled(f) || !flatWalled(g)
}

func flatWalled(k part.FeatureKind) bool {
	return k == part.Notch || k == part.Taper || k == part.Chamfer
}

// others are the openings that one must keep clear of.
func others(f part.Feature, all []opening) []obstacle {
	var out []obstacle
	for _, o := range all {
		if meets(f.Kind, o.Kind) && o.Feature.Index != f.Index {
			out = append(out, o.obstacle)
		}
	}
	return out
}

// obstaclesOn lists what is on a board besides its openings: edges, joints, stretchers.
func obstaclesOn(r *run, q *part.Part) []obstacle {
	var out []obstacle
	for _, j := range r.p.Joints {
		switch q.ID {
		case j.TailBoard:
			out = append(out, jointOn(q, r.p.Part(j.PinBoard), j.Kind, true)...)
		case j.PinBoard:
			out = append(out, jointOn(q, r.p.Part(j.TailBoard), j.Kind, false)...)
		}
	}
	if isSide(q) {
		for _, s := range r.against(q) {
			out = append(out, seat(q, s)...)
		}
	}
	return append(freeEdges(q, out), out...)
}

// freeEdges are the edges of a board, but for the ends that lie within a joint.
func freeEdges(q *part.Part, joints []obstacle) []obstacle {
	return slices.DeleteFunc(edges(q), func(e obstacle) bool {
		return slices.ContainsFunc(joints, func(o obstacle) bool {
			return o.kind == jointZone && math.IsInf(o.band.to, 1) && o.band.n.Dot(e.band.n) > 0.99
		})
	})
}

func stretcherParts(p *form.Piece) []*part.Part {
	var out []*part.Part
	for _, q := range p.Parts {
		if isStretcher(q) {
			out = append(out, q)
		}
	}
	return out
}

// jointOn is the wood that a joint takes on one of its boards: through dovetails take what lies
// within the other board; a housing or butt takes, on the board that receives, the seat of the
// other, and on the board that enters what is housed.
func jointOn(q, mate *part.Part, kind string, receives bool) []obstacle {
	if mate == nil || isStretcher(q) || isStretcher(mate) {
		return nil // a stretcher's ends are its edges, its seat on a side is found by itself
	}
	o := obstacle{kind: jointZone, name: fmt.Sprintf("the joint with the %s", boardName(mate)), sizes: boardSizes(q)}
	var ok bool
	switch {
	case form.Mitred(kind):
		return nil // both ends are cuts
	case form.Tailed(kind):
		return beyondInner(q, mate, o)
	case receives:
		o.band, ok = slab(q, mate, seatLevel(q, mate), -mate.Blank.Thickness.MM(), 0)
	case form.LetIn(kind):
		return beyondInner(q, mate, o)
	}
	if !ok {
		return nil
	}
	return []obstacle{o}
}

// beyondInner is all that lies past the face of the other board that looks here, on both faces of a
// board.
func beyondInner(q, mate *part.Part, o obstacle) []obstacle {
	var out []obstacle
	from, to := -mate.Blank.Thickness.MM(), math.Inf(1)
	if seatLevel(mate, q) == 0 {
		from, to = math.Inf(-1), 0
	}
	for _, z := range faceLevels(q) {
		b, ok := slab(q, mate, z, from, to)
		if ok {
			o.band = b
			out = append(out, o)
		}
	}
	return out
}

// against are the stretchers and aprons that end at a side.
func (r *run) against(side *part.Part) []*part.Part {
	return slices.DeleteFunc(stretcherParts(r.p), func(q *part.Part) bool {
		return !slices.ContainsFunc(r.p.Joints, func(j joint.Joint) bool { return j.TailBoard == side.ID && j.PinBoard == q.ID })
	})
}

// seatLevel is the height, in a board's frame, of its face that another board stands against: the
// one on whose side the other lies.
func seatLevel(q, other *part.Part) float64 {
	if other.Solid == nil {
		return -q.Blank.Thickness.MM()
	}
	lo, hi := other.Solid.Bounds()
	middle := q.Place.Inv().Mul4(other.Place).Mul4x1(lo.Add(hi).Mul(0.5).Vec4(1))
	if middle[2] > -q.Blank.Thickness.MM()/2 {
		return 0
	}
	return -q.Blank.Thickness.MM()
}

// seat is where a stretcher stands against a side.
func seat(side, stretcher *part.Part) []obstacle {
	at, ok := footprint(stretcher, side, seatLevel(side, stretcher))
	if !ok {
		return nil
	}
	return []obstacle{{kind: stretcherEnd, name: fmt.Sprintf("the end of %s", boardName(stretcher)), shape: at, sizes: stretcherSizes(stretcher)}}
}

// railOf is the stretcher or apron of the design that a part is.
func (r *run) railOf(q *part.Part) (form.Rail, bool) {
	all := r.d.Rails()
	i := slices.IndexFunc(all, func(s form.Rail) bool { return s.ID == q.ID })
	if i < 0 {
		return form.Rail{}, false
	}
	return all[i], true
}

func stretcherPath(q *part.Part, key string) string {
	if isApron(q) {
		return "aprons." + key
	}
	n, _ := strconv.Atoi(strings.TrimPrefix(q.ID, "stretcher-"))
	return fmt.Sprintf("stretchers.%d.%s", n-1, key)
}

// acrossPath is the size that places a stretcher or apron between front and back.
func acrossPath(q *part.Part) string {
	if isApron(q) {
		return "aprons.set-in"
	}
	return stretcherPath(q, "across")
}

func stretcherSizes(q *part.Part) []string {
	return []string{stretcherPath(q, "below-top"), acrossPath(q)}
}

// openings are the openings of a board, round-overs left out, each with its place among the
// board's features. They are worked out once a board.
func (r *run) openings(q *part.Part) []opening {
	if known, ok := r.open[q]; ok {
		return known
	}
	var out []opening
	for _, g := range q.Features {
		if s, ok := outlineOn(g, q); ok && g.Index < len(r.d.Features) {
			out = append(out, opening{g, obstacle{kind: otherFeature, of: g.Kind, name: featureName(r.d, g, q), shape: s,
				sizes: featureSizes(r.d.Features[g.Index], g.Index)}})
		}
	}
	if r.open == nil {
		r.open = map[*part.Part][]opening{}
	}
	r.open[q] = out
	return out
}

// opening is a feature that takes room on a face, and what it is to the others.
type opening struct {
	part.Feature
	obstacle
}

// featureName is what an opening is called in a sentence; a number tells several of a kind apart.
func featureName(d form.Design, f part.Feature, q *part.Part) string {
	n, of := 0, 0
	for i, g := range d.Features {
		if g.Kind == string(f.Kind) {
			of++
			if i <= f.Index {
				n++
			}
		}
	}
	board := featureBoard(d.Features[f.Index], q)
	if of > 1 {
		return fmt.Sprintf("%s %d in %s", f.Kind, n, board)
	}
	return fmt.Sprintf("the %s in %s", f.Kind, board)
}

// featureBoard is "the side" for one that is in both, "the left side" for one that is in one alone.
func featureBoard(f form.Feature, q *part.Part) string {
	switch f.On {
	case "side-left":
		return "the left side"
	case "side-right":
		return "the right side"
	case "side-middle":
		return "the middle side"
	}
	return theBoard(q)
}

// featureSizes are the paths of a feature's own sizes.
func featureSizes(f form.Feature, index int) []string {
	var out []string
	for _, k := range featureKeys(f) {
		out = append(out, fmt.Sprintf("features.%d.%s", index, k))
	}
	return out
}

// featureKeys are the keys of a feature's sizes, those that make it smaller first.
func featureKeys(f form.Feature) []string {
	switch part.FeatureKind(f.Kind) {
	case part.Arch:
		return []string{"rise", "width"}
	case part.RoundOver, part.Groove:
		return nil
	case form.RowOfHoles:
		return []string{"diameter", "x", "y"}
	}
	return f.Sizes()
}
