package form

import (
	"fmt"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

const (
	steepest = 75 * measure.Degree // beyond it a board lies rather than stands
	geometry = "geometry of the piece"
)

// stop makes a finding that stops the piece.
func stop(id, text string, figure, limit float64, unit string, sizes ...string) part.Finding {
	return part.Finding{
		ID: id, Level: part.Stop, Text: text, Figure: figure, Limit: limit, Unit: unit,
		Source: geometry, Sizes: sizes,
	}
}

// refuseStool reports words that no way to build a stool goes by and sizes that no board can have.
func refuseStool(a *assembly) {
	b := &builder{assembly: a}
	b.refuseWords(a.d)
	b.refuseSizes(a.d)
	b.refuseCorners(a.d)
}

// refuseWords reports a choice that is none of those there are.
func (b *builder) refuseWords(d Design) {
	b.oneOf("size.taken-at", string(d.Size.TakenAt), string(AtTop), string(AtFloor))
	b.oneOf("splay.edge-cut", string(d.Splay.EdgeCut), string(EdgeSquare), string(EdgeFlush))
	b.oneOf("corners.joint", d.Corners.Joint, CornerJoints()...)
	if Tailed(d.Corners.Joint) {
		b.oneOf("corners.tails-on", d.Corners.TailsOn, OnTop, OnSide)
	}
	for i, r := range d.Stretchers {
		b.oneOf(fmt.Sprintf("stretchers.%d.set", i), r.Set, OnEdge, Flat)
		b.oneOf(fmt.Sprintf("stretchers.%d.joint", i), r.Joint, StretcherJoints()...)
	}
	if a := d.Aprons; a != nil {
		b.oneOf("aprons.at", a.At, AtFront, AtBack, AtBoth)
		b.oneOf("aprons.stand", a.Stand, Leaning, Plumb)
		b.oneOf("aprons.joint", a.Joint, Butt, Housing)
	}
}

func (b *assembly) oneOf(path, word string, words ...string) {
	if !slices.Contains(words, word) {
		b.find(stop("word-unknown", fmt.Sprintf("%q is not a way to build here; there is %s.", word, list(words)), 0, 0, "", path))
	}
}

// refuseCorners reports what a joint of the top does not allow.
func (b *builder) refuseCorners(d Design) {
	k := d.Corners
	for _, o := range []struct {
		size measure.Length
		path string
	}{{k.Overhang, "corners.overhang"}, {k.OverhangEdges, "corners.overhang-edges"}} {
		switch {
		case o.size < 0 || math.IsInf(o.size.MM(), 0) || math.IsNaN(o.size.MM()):
			b.find(stop("overhang-below-nothing", "An overhang reaches outward; it cannot be less than nothing.", o.size.MM(), 0, "mm", o.path))
		case o.size > 0 && endsFlush(k.Joint):
			b.find(stop("overhang-on-dovetails", fmt.Sprintf("A top whose corners are a %s ends where the sides end; it cannot overhang. Take the overhang out, or choose a butt joint or a housing.", k.Joint),
				o.size.MM(), 0, "mm", o.path, "corners.joint"))
		}
	}
	b.refuseShoulder(d.Boards.Side.Thickness)
	if LetIn(k.Joint) && (!(*k.Depth > 0) || *k.Depth >= d.Boards.Top.Thickness) {
		b.find(stop("housing-through", "The housings in the top must be shallower than the top is thick.",
			k.Depth.MM(), d.Boards.Top.Thickness.MM(), "mm", "corners.depth", "boards.top.thickness"))
	}
	b.refuseLap(stoolPins(d), "boards.side.thickness", "boards.top.thickness")
	refuseSpline(b.assembly)
	refuseKeys(b.assembly)
}

// refuseSizes reports lengths and angles that are possible for no piece.
func (b *builder) refuseSizes(d Design) {
	for _, s := range []struct {
		size measure.Length
		name string
		path string
	}{
		{d.Size.Height, "height", "size.height"}, {d.Size.Width, "width", "size.width"},
		{d.Size.Depth, "depth", "size.depth"},
		{d.Boards.Top.Thickness, "thickness of the top", "boards.top.thickness"},
		{d.Boards.Side.Thickness, "thickness of the sides", "boards.side.thickness"},
	} {
		if !(s.size > 0) || math.IsInf(s.size.MM(), 0) {
			b.find(stop("size-not-above-nothing", fmt.Sprintf("The %s must be more than nothing.", s.name), s.size.MM(), 0, "mm", s.path))
		}
	}
	for _, a := range []struct {
		angle measure.Angle
		name  string
		path  string
	}{
		{d.Splay.Ends, "splay of the ends", "splay.ends"}, {d.Splay.Edges, "splay of the edges", "splay.edges"},
		{d.Corners.Slope, "slope of the tails", "corners.slope"},
	} {
		if !(math.Abs(a.angle.Radians()) <= steepest.Radians()) {
			b.find(stop("angle-out-of-reach", fmt.Sprintf("The %s must stay within %g degrees.", a.name, steepest.Degrees()),
				a.angle.Degrees(), steepest.Degrees(), "deg", a.path))
		}
	}
}

// refuseShape reports sizes that are possible one by one but leave no piece.
func (b *builder) refuseShape() bool {
	s := b.stand
	if s.height <= s.top {
		b.find(stop("no-room-under-top", "The piece is no higher than its top is thick: there is nothing left for the sides.",
			s.height, s.top, "mm", "size.height", "boards.top.thickness"))
	}
	inside := func(z float64) float64 {
		return s.width + 2*(s.height-z)*math.Tan(s.ends) - 2*s.side/math.Cos(s.ends)
	}
	if least := math.Min(inside(0), inside(s.height)); least <= 0 {
		b.find(stop("sides-meet", "The two sides run into each other: nothing is left between them.",
			least, 0, "mm", "size.width", "splay.ends", "boards.side.thickness"))
	}
	if least := math.Min(s.depth, s.depth+2*s.height*math.Tan(s.edges)); least <= 0 {
		b.find(stop("no-depth-left", "The front and back edges lean so far that they meet.",
			least, 0, "mm", "size.depth", "splay.edges"))
	}
	return len(b.piece.Findings) > 0 || b.refuseStops()
}

// refuseStops reports a stop as long as the joints of the top.
func (b *builder) refuseStops() bool {
	s := b.stand
	if k := s.d.Corners; !LetIn(k.Joint) || k.Stop == 0 {
		return false
	}
	for _, i := range []side{left, right} {
		var far []mgl64.Vec3
		for _, face := range []solid.Plane{s.outer[i], s.inner[i]} {
			far = append(far, meet(face, s.sideTop(i), s.sideBack[i]), meet(face, s.lower, s.sideBack[i]))
		}
		if !s.past[i] && b.refuseStop(s.sideFront[i], far, "size.depth", "splay.edges") {
			return true
		}
	}
	return false
}
