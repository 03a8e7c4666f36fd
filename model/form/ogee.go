package form

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// ogee is a cut-out whose sides are two arcs that pass into each other without a crease: it leaves its edge
// along a rounded one, turns back into a hollow one and ends in a crown parallel to the edge. Its sizes are in
// the section square to the edge's plane.
type ogee struct {
	width, rise, radius, hollow float64
	turn                        float64 // that each arc makes, radians
	plumb                       float64 // straight stretch between the arcs, square to the edge
	run                         float64 // along the edge, of one side
}

// newOgee works the sides out. Each arc turns through the same angle: (r + h)(1 − cos) is the rise, and the
// run of a side is (r + h) sin. Arcs that are together lower than the rise are quarter circles with a straight
// stretch between them.
func newOgee(width, rise, radius, hollow float64) ogee {
	o := ogee{width: width, rise: rise, radius: radius, hollow: hollow, turn: math.Pi / 2}
	sum := radius + hollow
	if rise < sum {
		o.turn = math.Acos(1 - rise/sum)
	} else {
		o.plumb = rise - sum
	}
	o.run = sum * math.Sin(o.turn)
	return o
}

// arcs are the centres of the two arcs of one side, from where it leaves the edge: along and square to it.
func (o ogee) arcs() (round, hollow mgl64.Vec2) {
	sin, cos := math.Sincos(o.turn)
	sum := o.radius + o.hollow
	return mgl64.Vec2{0, o.radius}, mgl64.Vec2{sum * sin, o.radius - sum*cos + o.plumb}
}

// bends are where the rounded arc ends and the hollow one begins.
func (o ogee) bends() (one, other mgl64.Vec2) {
	sin, cos := math.Sincos(o.turn)
	one = mgl64.Vec2{o.radius * sin, o.radius * (1 - cos)}
	return one, one.Add(mgl64.Vec2{0, o.plumb})
}

// cutOgee cuts an ogee into the cut that the spot names.
func (b *assembly) cutOgee(p *spot) {
	if !b.needs(p, p.f.Width, "width") || !b.needs(p, p.f.Rise, "rise") || !b.shallow(p, p.f.Rise, "rise") {
		return
	}
	f := p.f.ogeeRadii()
	l, plane := p.board.line(p.chord, 0), p.board.local(p.board.around[p.chord].plane)
	lean := l.out.Vec3(0).Dot(plane.N) // cosine of the cut's tilt
	o := newOgee(f.Width.MM(), f.Rise.MM()*lean, f.Radius.MM(), f.Hollow.MM())
	if crown := o.width - 2*o.run; crown < -solid.SamePoint {
		b.find(stop("ogee-too-narrow", fmt.Sprintf("The arcs of the ogee take %s of its width and it is %s wide; a width of %s, or smaller radii, would do.",
			b.show(measure.Length(2*o.run)), b.show(f.Width), b.show(measure.Length(2*o.run))), o.width, 2*o.run, "mm", p.path("width"), p.path("radius"), p.path("hollow"), p.path("rise")))
		return
	}
	from, to := p.stretch(o.width)
	if from < -l.half || to > l.half {
		b.find(stop("ogee-over-end", fmt.Sprintf("The ogee is %s wide and runs over an end of its edge, which is %s long.", b.show(f.Width), b.show(measure.Length(2*l.half))),
			o.width, 2*l.half, "mm", p.path("width"), p.path("x"), p.path("y")))
		return
	}
	p.board.insert(p.chord, p.ogeeWalls(o, l, plane, (from+to)/2)...)
	p.stands(part.Feature{Length: f.Width, Width: f.Rise, Radius: f.Radius, Hollow: f.Hollow}, l, from, to,
		l.at(from, 0), l.at(to, 0), l.at(to-o.run, f.Rise.MM()), l.at(from+o.run, f.Rise.MM()))
}

// ogeeRadii fills in radii that were left out: each half the rise, or the one as the other.
func (f Feature) ogeeRadii() Feature {
	fill(&f.Radius, f.Hollow)
	fill(&f.Radius, f.Rise/2)
	fill(&f.Hollow, f.Radius)
	return f
}

// ogeeWalls go round an ogee about a middle of its edge. They stand along the cut's own tilt, so that the arcs
// touch the cut on both faces.
func (p *spot) ogeeWalls(o ogee, l line, cut solid.Plane, middle float64) []solid.Wall {
	along := l.way.Vec3(0)
	axis := cut.N.Cross(along).Normalize()
	lean := l.out.Vec3(0).Dot(cut.N)
	on := func(side float64, q mgl64.Vec2) (along, deep float64) { // from the end of the ogee on one side
		return middle + side*(o.width/2-q[0]), q[1]
	}
	start := func(s, deep float64) mgl64.Vec2 { return l.at(s, deep/lean).Vec2() }
	pillar := func(side float64, q mgl64.Vec2, radius float64, hollow bool, begin mgl64.Vec2) solid.Wall {
		s, deep := on(side, q)
		return solid.Wall{Tag: p.tag(), Start: begin, Round: &solid.Cylinder{Point: l.at(s, 0).Sub(cut.N.Mul(deep)), Axis: axis, Radius: radius, Hollow: hollow}}
	}
	flat := func(n mgl64.Vec3, side float64, q mgl64.Vec2) solid.Wall {
		s, deep := on(side, q)
		return solid.Wall{Tag: p.tag(), Start: start(s, deep), Plane: through(n, l.at(s, 0).Sub(cut.N.Mul(deep)))}
	}
	begin := func(side float64, q mgl64.Vec2) mgl64.Vec2 { return start(on(side, q)) }
	round, hollow := o.arcs()
	bend, bent := o.bends()
	edge := mgl64.Vec2{}
	top := mgl64.Vec2{o.run, o.rise}
	walls := []solid.Wall{pillar(-1, round, o.radius, false, begin(-1, edge))}
	if o.plumb > solid.SamePoint {
		walls = append(walls, flat(along, -1, bend))
	}
	walls = append(walls, pillar(-1, hollow, o.hollow, true, begin(-1, bent)))
	if o.width-2*o.run > solid.SamePoint {
		walls = append(walls, flat(cut.N, -1, top), pillar(1, hollow, o.hollow, true, begin(1, top)))
	}
	if o.plumb > solid.SamePoint {
		walls = append(walls, flat(along.Mul(-1), 1, bent))
	}
	last := p.board.wall(p.board.around[p.chord])
	last.Start = begin(1, edge)
	return append(walls, pillar(1, round, o.radius, false, begin(1, bend)), last)
}
