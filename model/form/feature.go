package form

import (
	"fmt"
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// spot is where a feature comes on one board, part frame.
type spot struct {
	board  *board
	index  int // in the design
	f      Feature
	centre mgl64.Vec2
	angle  measure.Angle // of the long direction from x
	chord  int           // the cut of the board that it stands on
	from   float64       // -1, 1: placed from the first or last end of that cut, counter-clockwise; 0 from its middle
	at     float64       // where on that cut, from its middle, counter-clockwise
}

func (p *spot) path(key string) string { return fmt.Sprintf("features.%d.%s", p.index, key) }

// features cuts every feature into the boards that it is on; place says where on the board that
// has the number k.
func (b *assembly) features(place func(i int, f Feature, k int) (*spot, bool)) {
	for i, f := range b.d.Features {
		if f.Kind == string(part.RoundOver) && f.Edge == "" {
			continue // runs along whatever is felt; see eased.go
		}
		if f.Kind == RowOfHoles && !b.needsRow(i, f) {
			continue
		}
		on := 0
		for k, board := range b.boards {
			if !f.isOn(board.part) {
				continue
			}
			on++
			if f.onEdge() {
				b.cutOnEdges(i, f, board)
				continue
			}
			for _, single := range f.singles() {
				if p, ok := place(i, single, k); ok {
					b.cutFeature(p)
				}
			}
		}
		if on == 0 {
			b.find(stop("feature-on-nothing", fmt.Sprintf("The piece has no part called %q to cut the %s into.", f.On, f.Kind),
				0, 0, "", fmt.Sprintf("features.%d.on", i)))
		}
	}
}

// isOn tells whether a feature comes on a part: it is named itself, or its kind is.
func (f Feature) isOn(q *part.Part) bool {
	id := q.ID
	if q.Slip != "" {
		return false
	}
	return f.On == id || f.On == "all" || strings.HasPrefix(id, f.On+"-")
}

// spot places a feature on a board. On a side, heights count upwards and Y to the back whichever
// way the part's own frame runs, so that the two sides stay mirror images.
func (b *builder) spot(i int, f Feature, k int) (*spot, bool) {
	p := &spot{board: b.boards[k], index: i, f: f, centre: mgl64.Vec2{f.X.MM(), f.Y.MM()}, angle: f.Angle, chord: -1}
	arch := f.Kind == string(part.Arch)
	switch {
	case k == 0 && !arch:
		return p, true
	case k == 1 || k == 2:
		b.spotOnSide(p, side(k-1))
		return p, true
	case k > 2 && arch && b.rails[k-3].d.Set == OnEdge:
		// an arch in the lower edge, its crown towards +y
		p.chord, p.centre, p.angle = 0, mgl64.Vec2{f.X.MM(), p.board.corners(0)[0][1]}, -90*measure.Degree
		return p, true
	case k > 2 && !arch:
		return p, true
	}
	b.find(stop("arch-without-edge", fmt.Sprintf("An arch is cut into the floor end of a side or the lower edge of a stretcher on edge, not into %s.",
		strings.ToLower(p.board.part.Name)), 0, 0, "", p.path("on")))
	return nil, false
}

func (b *builder) spotOnSide(p *spot, i side) {
	corners := p.board.corners(0)
	floor := (corners[1][0] + corners[2][0]) / 2
	top := (corners[3][0] + corners[0][0]) / 2
	y := p.f.Y.MM() * i.sign()
	switch part.FeatureKind(p.f.Kind) {
	case part.Arch:
		p.chord, p.centre, p.angle = 1, mgl64.Vec2{floor, y}, 0
	case part.Hole:
		p.centre = mgl64.Vec2{floor - p.f.X.MM(), y}
	default:
		p.centre = mgl64.Vec2{(floor+top)/2 - p.f.X.MM(), y}
		p.angle = p.f.Angle * measure.Angle(i.sign())
	}
}

func (b *assembly) cutFeature(p *spot) {
	switch part.FeatureKind(p.f.Kind) {
	case part.Arch:
		b.cutArch(p)
	case part.Hole:
		b.cutHole(p)
	case part.HandHole, part.Slot:
		b.cutSlot(p)
	case part.Groove:
		b.cutGroove(p)
	case part.Notch:
		b.cutNotch(p)
	case part.Taper:
		b.cutTaper(p)
	case part.Chamfer:
		b.cutChamfer(p)
	case part.RoundOver:
		b.cutRound(p)
	case part.Ogee:
		b.cutOgee(p)
	default:
		b.find(stop("feature-unknown", fmt.Sprintf("%q is no feature; there are %s.", p.f.Kind, list(FeatureKinds())),
			0, 0, "", p.path("kind")))
	}
}

func (p *spot) note(f part.Feature) {
	p.board.sizesOf[p.tag()] = p.paths()
	f.Index, f.Kind, f.Centre, f.Angle = p.index, part.FeatureKind(p.f.Kind), p.centre, p.angle
	p.board.part.Features = append(p.board.part.Features, f)
}

// paths of the sizes that place and shape the feature.
func (p *spot) paths() []string {
	keys := p.f.Sizes()
	out := make([]string, len(keys))
	for i, k := range keys {
		out[i] = p.path(k)
	}
	return out
}

// Along is the key that places a shape along the edge that it stands on: y on an end, x on a long edge.
func (f Feature) Along() string {
	if strings.HasSuffix(f.Edge, "-end") || f.Edge == BothEnds || f.Edge == "" && strings.HasPrefix(f.On, "side") {
		return "y"
	}
	return "x"
}

// Sizes are the keys of the design file that shape a feature and then those that place it.
func (f Feature) Sizes() []string {
	switch part.FeatureKind(f.Kind) {
	case part.Arch:
		return []string{"rise", "width", f.Along()}
	case part.Ogee:
		return []string{"rise", "width", "radius", "hollow", f.Along()}
	case part.Hole:
		return []string{"diameter", "x", "y"}
	case part.Notch:
		return []string{"depth", "width", f.Along()}
	case part.Taper:
		return []string{"length", "depth", f.Along()}
	case part.Chamfer:
		return []string{"width", "length", f.Along()}
	case part.RoundOver:
		return []string{"radius"}
	}
	return []string{"length", "width", "x", "y"}
}

// tag names the feature's walls: "hole 2" for the second feature of the design.
func (p *spot) tag() string { return fmt.Sprintf("%s %d", p.f.Kind, p.index+1) }

// pillar is the round wall of a hollow square to the face.
func pillar(tag string, centre mgl64.Vec2, radius float64, start mgl64.Vec2) solid.Wall {
	return solid.Wall{Tag: tag, Start: start, Round: &solid.Cylinder{
		Point: centre.Vec3(0), Axis: worldZ, Radius: radius, Hollow: true,
	}}
}

func (b *assembly) cutHole(p *spot) {
	r := p.f.Diameter.MM() / 2
	if !b.needs(p, p.f.Diameter, "diameter") {
		return
	}
	noted := part.Feature{Length: p.f.Diameter, Width: p.f.Diameter, Radius: p.f.Diameter / 2}
	bore := part.Bore{
		ID: fmt.Sprintf("hole-%d", countBores(p.board.part, "hole")+1), Purpose: "hole",
		Entry: p.centre.Vec3(0), Axis: worldZ.Mul(-1), Diameter: p.f.Diameter,
		Depth: measure.Length(p.board.thickness), Through: true, Face: "outer",
	}
	if p.f.Depth > 0 {
		if !b.blind(p) {
			return
		}
		noted.Depth, noted.Inner = p.f.Depth, p.f.Face == InnerFace
		bore.Depth, bore.Through = p.f.Depth, false
		if noted.Inner {
			bore.Entry[2], bore.Axis, bore.Face = -p.board.thickness, worldZ, InnerFace
		}
		p.board.shape.Bores = append(p.board.shape.Bores, solid.Bore{Tag: p.tag(), Entry: bore.Entry, Axis: bore.Axis, Steps: []solid.Step{{Radius: r, To: p.f.Depth.MM()}}})
	} else {
		p.board.shape.Openings = append(p.board.shape.Openings,
			solid.Loop{pillar(p.tag(), p.centre, r, p.centre.Add(mgl64.Vec2{r, 0}))})
	}
	p.note(noted)
	p.board.part.Bores = append(p.board.part.Bores, bore)
}

// blind refuses a hollow as deep as its board is thick.
func (b *assembly) blind(p *spot) bool {
	thick := p.board.thickness
	if p.f.Depth.MM() < thick {
		return true
	}
	b.find(stop("hollow-through", fmt.Sprintf("The %s is %s deep and the board %s thick; without a depth it goes right through.", p.f.Kind,
		b.show(p.f.Depth), b.show(measure.Length(thick))), p.f.Depth.MM(), thick, "mm", p.path("depth")))
	return false
}

// needs refuses a feature whose size is nothing or less.
func (b *assembly) needs(p *spot, size measure.Length, key string) bool {
	if size > 0 {
		return true
	}
	b.find(stop("size-not-above-nothing", fmt.Sprintf("The %s of the %s must be more than nothing.", key, p.f.Kind),
		size.MM(), 0, "mm", p.path(key)))
	return false
}

// cutSlot cuts an opening with round ends: its length is over all.
func (b *assembly) cutSlot(p *spot) {
	if !b.needs(p, p.f.Length, "length") || !b.needs(p, p.f.Width, "width") {
		return
	}
	if p.f.Length < p.f.Width {
		b.find(stop("slot-shorter-than-wide", fmt.Sprintf("The %s is %s long and %s wide: its round ends need at least as much length as width.",
			p.f.Kind, b.show(p.f.Length), b.show(p.f.Width)), p.f.Length.MM(), p.f.Width.MM(), "mm", p.path("length"), p.path("width")))
		return
	}
	r := p.f.Width.MM() / 2
	half := p.f.Length.MM()/2 - r
	sin, cos := math.Sincos(p.angle.Radians())
	u, v := mgl64.Vec2{cos, sin}.Mul(half), mgl64.Vec2{-sin, cos}.Mul(r)
	noted := part.Feature{Length: p.f.Length, Width: p.f.Width, Radius: measure.Length(r)}
	if p.f.Depth > 0 {
		if b.blind(p) {
			noted.Depth, noted.Inner = p.f.Depth, p.f.Face == InnerFace
			p.recess(u, v, half, r)
			p.note(noted)
		}
		return
	}
	p.note(noted)
	if half < solid.SamePoint {
		p.board.shape.Openings = append(p.board.shape.Openings, solid.Loop{pillar(p.tag(), p.centre, r, p.centre.Add(v))})
		return
	}
	straight := func(n mgl64.Vec2, start mgl64.Vec2) solid.Wall {
		n = n.Mul(1 / r)
		return solid.Wall{Tag: p.tag(), Start: start, Plane: solid.Plane{N: n.Vec3(0), D: n.Dot(start)}}
	}
	c := p.centre
	p.board.shape.Openings = append(p.board.shape.Openings, solid.Loop{
		straight(v.Mul(-1), c.Sub(u).Add(v)),
		pillar(p.tag(), c.Add(u), r, c.Add(u).Add(v)),
		straight(v, c.Add(u).Sub(v)),
		pillar(p.tag(), c.Sub(u), r, c.Sub(u).Sub(v)),
	})
}

// cutArch cuts an arch of one circle into the cut that the spot names: half the chord squared
// and the rise squared, over twice the rise, is its radius.
func (b *assembly) cutArch(p *spot) {
	if !b.needs(p, p.f.Width, "width") || !b.needs(p, p.f.Rise, "rise") {
		return
	}
	half, rise := p.f.Width.MM()/2, p.f.Rise.MM()
	if rise > half {
		b.find(stop("arch-higher-than-half-width", fmt.Sprintf("An arch of %s can rise %s at most, where it is a half circle.",
			b.show(p.f.Width), b.atMost(p.f.Width/2)), rise, half, "mm", p.path("rise"), p.path("width")))
		return
	}
	if lost := p.board.lostBehind(p.board.around[p.chord].plane, p.angle); rise <= lost {
		b.find(stop("arch-too-low", fmt.Sprintf("An arch that rises %s on the outer face does not reach the inner one, where the leaning cut that it stands on is %s higher; it must rise more than that.",
			b.show(p.f.Rise), b.show(measure.Length(lost))), rise, lost, "mm", p.path("rise")))
		return
	}
	radius := (half*half + rise*rise) / (2 * rise)
	sin, cos := math.Sincos(p.angle.Radians())
	out, along := mgl64.Vec2{cos, sin}, mgl64.Vec2{-sin, cos} // out of the board; the way round it
	centre := p.centre.Add(out.Mul(radius - rise))
	wall := p.board.wall(p.board.around[p.chord])
	wall.Start = p.centre.Add(along.Mul(half))
	p.board.insert(p.chord, pillar(p.tag(), centre, radius, p.centre.Sub(along.Mul(half))), wall)
	p.note(part.Feature{Length: p.f.Width, Width: p.f.Rise, Radius: measure.Length(radius), Edge: p.board.around[p.chord].id})
}

// lostBehind is how much farther into the board a leaning cut runs on the inner face than on the
// outer; angle is that of the way out of the board at the cut, from x.
func (b *board) lostBehind(cut solid.Plane, angle measure.Angle) float64 {
	n := b.local(cut).N
	sin, cos := math.Sincos(angle.Radians())
	return -b.thickness * n[2] / (n[0]*cos + n[1]*sin)
}

// insert puts walls into a cut: behind that stretch of it in which the first of them begins.
func (b *board) insert(cut int, walls ...solid.Wall) {
	way := b.line(cut, 0).way
	at, first := 0, true
	for i, w := range b.shape.Outline {
		if w.Tag != b.around[cut].id || !first && w.Start.Dot(way) > walls[0].Start.Dot(way) {
			continue
		}
		at, first = i+1, false
	}
	rest := append(walls, b.shape.Outline[at:]...)
	b.shape.Outline = append(b.shape.Outline[:at:at], rest...)
}
