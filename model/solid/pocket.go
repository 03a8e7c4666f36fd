package solid

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// pit is a pocket with its walls as surfaces and the heights that it spans.
type pit struct {
	pocket      *Pocket
	ring        ring
	top, bottom float64
}

// hollow cuts the board into layers at the floors of its pockets and takes the pockets away in each.
func (k *builder) hollow(b Board, rings []ring) error {
	if err := k.dig(b); err != nil {
		return err
	}
	if err := k.sameDepth(); err != nil {
		return err
	}
	heights := levels(b, k.pits)
	for i := 0; i+1 < len(heights); i++ {
		l := layer{top: heights[i], bottom: heights[i+1]}
		var err error
		if l.rings, err = k.layerRings(rings, l.top, l.bottom); err != nil {
			return err
		}
		k.layers = append(k.layers, l)
	}
	return nil
}

// dig turns the pockets into surfaces.
func (k *builder) dig(b Board) error {
	k.pits = make([]pit, len(b.Pockets))
	for i := range b.Pockets {
		p := &b.Pockets[i]
		if !(p.Depth > SamePoint && p.Depth < b.Thickness-SamePoint) {
			return fail("the hollow is deeper than the board, or has no depth", p.Tag)
		}
		ids, err := k.walls(p.Walls)
		if err != nil {
			return err
		}
		k.pits[i] = pit{pocket: p, top: 0, bottom: -p.Depth}
		if !p.FromOuter {
			k.pits[i].top, k.pits[i].bottom = p.Depth-b.Thickness, -b.Thickness
		}
		if k.pits[i].ring, err = k.ring(ids, nil, 0); err != nil {
			return err
		}
	}
	k.unify()
	return nil
}

// unify gives surfaces that are one plane one class, and those that face each other in one plane one site.
func (k *builder) unify() {
	k.off = k.off[:0]
	for i := range k.surfs {
		off := math.Inf(1) // round ones are compared with each other only
		if k.surfs[i].round == nil {
			off = math.Abs(k.surfs[i].plane.D)
		}
		k.off = append(k.off, off)
	}
	for i := innerFace + 1; i < len(k.surfs); i++ {
		s := &k.surfs[i]
		for j := innerFace + 1; j < i; j++ {
			if math.Abs(k.off[i]-k.off[j]) >= SamePoint {
				continue // as most are
			}
			if k.same(i, j) {
				s.class, s.site = k.surfs[j].class, k.surfs[j].site
				break
			}
			if k.facing(i, j) {
				s.site = k.surfs[j].site
			}
		}
	}
}

// facing tells whether two surfaces are one plane with opposite normals.
func (k *builder) facing(i, j int) bool {
	s, t := &k.surfs[i], &k.surfs[j]
	return s.round == nil && t.round == nil && math.Abs(s.plane.D+t.plane.D) < SamePoint &&
		s.plane.N.Add(t.plane.N).LenSqr() < parallel*parallel
}

// SameDepth is the reason given where floors of hollows from the two faces lie in one plane and over each
// other, which would leave a skin of no thickness.
const SameDepth = "hollows of the two faces end at the same depth"

// levels are the heights of the board's faces and of all floors, from the outer face down.
func levels(b Board, pits []pit) []float64 {
	floors := make([]float64, len(pits))
	for i := range pits {
		floors[i] = pits[i].floor()
	}
	slices.Sort(floors)
	heights := []float64{0}
	for i := len(floors) - 1; i >= 0; i-- {
		if last := heights[len(heights)-1]; len(heights) == 1 || last-floors[i] >= SamePoint {
			heights = append(heights, floors[i])
		}
	}
	return append(heights, -b.Thickness)
}

// floor is the height of the pit's floor.
func (p *pit) floor() float64 {
	if p.pocket.FromOuter {
		return p.bottom
	}
	return p.top
}

// sameDepth refuses floors of hollows from the two faces that lie in one plane and over each other.
func (k *builder) sameDepth() error {
	for i := range k.pits {
		p := &k.pits[i]
		for j := range i {
			q := &k.pits[j]
			if p.pocket.FromOuter == q.pocket.FromOuter || math.Abs(p.floor()-q.floor()) >= SamePoint {
				continue
			}
			lo, hi, err := k.floorBox(p)
			lo2, hi2, err2 := k.floorBox(q)
			if err != nil || err2 != nil || !clearOf(lo, hi, lo2, hi2) {
				return fail(SameDepth, q.pocket.Tag, p.pocket.Tag)
			}
		}
	}
	return nil
}

// floorBox is the upright rectangle round a pit's floor.
func (k *builder) floorBox(p *pit) (lo, hi mgl64.Vec2, err error) {
	pieces, err := k.pitPieces(&p.ring, p.floor())
	if err != nil {
		return lo, hi, err
	}
	lo, hi = pieces[0].box()
	for i := range pieces {
		l, h := pieces[i].box()
		lo, hi = mgl64.Vec2{min(lo[0], l[0]), min(lo[1], l[1])}, mgl64.Vec2{max(hi[0], h[0]), max(hi[1], h[1])}
	}
	return lo, hi, nil
}

// layerRings are the rings of one layer: the board's own, less the pockets that reach into it.
func (k *builder) layerRings(base []ring, top, bottom float64) ([]ring, error) {
	z := (top + bottom) / 2
	if !k.reached(z) {
		return k.restand(base, top, bottom)
	}
	// The same walls must follow each other all through the layer. Corners of planes move evenly from its top to its
	// bottom, so what holds at both holds between them.
	inset := (top - bottom) * 1e-6
	walls, hints, err := k.cutAt(base, top-inset)
	if err != nil {
		return nil, err
	}
	others, _, err := k.cutAt(base, bottom+inset)
	if err != nil {
		return nil, err
	}
	if !slices.EqualFunc(walls, others, slices.Equal[[]int]) {
		return nil, fail("a corner of the hollow crosses another wall between its floor and the face", k.tagsAt(z)...)
	}
	rings := make([]ring, len(walls))
	for i := range walls {
		if rings[i], err = k.ring(walls[i], hints[i], top-inset); err != nil {
			return nil, err
		}
		if err := k.stand(&rings[i], top, bottom); err != nil {
			return nil, err
		}
	}
	return rings, k.clear(rings)
}

// reached tells whether a pocket reaches the height z.
func (k *builder) reached(z float64) bool { return len(k.tagsAt(z)) > 0 }

// tagsAt names the pockets that reach the height z.
func (k *builder) tagsAt(z float64) []string {
	var tags []string
	for i := range k.pits {
		if p := &k.pits[i]; p.bottom < z && z < p.top {
			tags = append(tags, p.pocket.Tag)
		}
	}
	return tags
}

// cutAt is the board's section at a height less the pockets that reach it: the walls of each ring, and
// where they begin.
func (k *builder) cutAt(base []ring, z float64) ([][]int, [][]mgl64.Vec2, error) {
	section, err := k.section(base, z)
	if err != nil {
		return nil, nil, err
	}
	for i := range k.pits {
		p := &k.pits[i]
		if z <= p.bottom || z >= p.top {
			continue
		}
		hollow, err := k.pitPieces(&p.ring, z)
		if err != nil {
			return nil, nil, err
		}
		section = k.less(section, hollow)
	}
	if len(section) == 0 {
		return nil, nil, fail("the hollows leave nothing of the board", k.tagsAt(z)...)
	}
	k.room = section
	return k.chain(section)
}

// restand puts the same rings between other heights.
func (k *builder) restand(base []ring, top, bottom float64) ([]ring, error) {
	rings := make([]ring, len(base))
	for i, r := range base {
		if err := k.stand(&r, top, bottom); err != nil {
			return nil, err
		}
		rings[i] = r
	}
	return rings, nil
}

// section is the board's own section at a height.
func (k *builder) section(base []ring, z float64) ([]piece, error) {
	pieces := k.room[:0]
	k.room = nil // whatever fails, no list is in two places
	for _, r := range base {
		if err := k.stand(&r, z, z); err != nil {
			return nil, err
		}
		pieces = k.rim(pieces, &r, true)
	}
	return pieces, nil
}

// pitPieces is the section of a hollow, counter-clockwise, until the next one. Its walls have the wood on their
// right, save those in the outline's own surfaces.
func (k *builder) pitPieces(r *ring, z float64) ([]piece, error) {
	pieces := k.pit[:0]
	for i, w := range r.walls {
		p, _, ok := r.corners[i].at(z)
		if !ok {
			return nil, k.vanishes(r, i)
		}
		pieces = append(pieces, piece{wall: w, from: p})
	}
	k.pit = pieces
	area := 0.0
	for i := range pieces {
		p := &pieces[i]
		p.to = pieces[r.next(i)].from
		s := &k.surfs[p.wall]
		if s.round != nil {
			c := s.levelCurve(p.to, p.from)
			c.T0, c.T1 = c.T1, c.T0
			if s.class != p.wall { // in a round wall of the outline
				c = s.levelCurve(p.from, p.to)
			}
			p.curve = c
			area += (c.T1 - c.T0) * s.round.Radius * s.round.Radius
			continue
		}
		area += p.from[0]*p.to[1] - p.from[1]*p.to[0]
	}
	if area <= 0 {
		return nil, fail("the walls of a hollow must go counter-clockwise", k.surfs[r.walls[0]].tag)
	}
	return pieces, nil
}
