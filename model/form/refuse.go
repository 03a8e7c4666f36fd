package form

import (
	"fmt"
	"math"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

const (
	steepest      = 75 * measure.Degree // beyond it a board lies rather than stands
	geometry      = "geometry of the piece"
	contradictory = "the sizes as typed"
)

// stop makes a finding that stops the piece.
func stop(id, text string, figure, limit float64, unit string, sizes ...string) part.Finding {
	return part.Finding{
		ID: id, Level: part.Stop, Text: text, Figure: figure, Limit: limit, Unit: unit,
		Source: geometry, Sizes: sizes,
	}
}

// refuse reports sizes that no board can have. It tells whether any was found.
func (b *builder) refuse(d Design) bool {
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
			b.find(stop("size-not-above-nothing", "The "+s.name+" must be more than nothing.", s.size.MM(), 0, "mm", s.path))
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
	return len(b.piece.Findings) > 0
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
	return len(b.piece.Findings) > 0
}

// misfit turns a layout that cannot be cut into a finding.
func (b *builder) misfit(m *joint.Misfit, c joint.Corner) part.Finding {
	f := stop(string(m.Kind), m.Error(), m.Figure.MM(), m.Limit.MM(), "mm", m.Sizes...)
	f.Parts = []string{c.Tail.ID, c.Pin.ID}
	return f
}
