package form

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// arris is the line between a cut and a face of a board, with the ways away from it in both.
type arris struct {
	line
	face, cut     mgl64.Vec3 // their outward normals
	inFace, inCut mgl64.Vec3 // away from the arris, on each
	along         mgl64.Vec3
	inside        float64 // angle inside the wood, radians
}

// arris is the one that the feature names: of its edge and its face.
func (p *spot) arris() arris {
	z, up := 0.0, 1.0
	if p.f.Face == InnerFace {
		z, up = -p.board.thickness, -1
	}
	a := arris{line: p.board.line(p.chord, z), face: worldZ.Mul(up), cut: p.board.local(p.board.around[p.chord].plane).N}
	a.along = a.way.Vec3(0)
	a.inFace = a.out.Mul(-1).Vec3(0)
	a.inCut = a.face.Mul(-1).Sub(a.cut.Mul(-a.cut.Dot(a.face))).Normalize()
	a.inside = math.Pi - math.Acos(a.cut.Dot(a.face))
	return a
}

// worked is how far an easing runs: as long as it says, with its stops beyond, or from end to end.
func (p *spot) worked(a arris) (from, to float64) {
	if p.f.Length <= 0 {
		return -a.half, a.half
	}
	return p.stretch(p.f.Length.MM())
}

// easingSlot takes the wood on the arris beyond a plane: through a point on the face, a way from the arris,
// and one on the cut. A stopped one ends in planes at 45°.
func (p *spot) easingSlot(a arris, onFace, onCut float64) solid.Slot {
	from, to := p.worked(a)
	far := p.board.clear(p.chord)
	n := a.inCut.Mul(onCut).Sub(a.inFace.Mul(onFace)).Cross(a.along).Normalize()
	if n.Dot(a.face.Add(a.cut)) < 0 {
		n = n.Mul(-1)
	}
	flat := func(s float64) mgl64.Vec3 { return a.at(s, 0).Add(a.inFace.Mul(onFace)) }
	stops := [2][2]mgl64.Vec3{{flat(from), a.along.Add(n)}, {flat(to), a.along.Mul(-1).Add(n)}}
	first, last := a.runsOut(from, to)
	if first {
		stops[0] = [2]mgl64.Vec3{a.at(-a.half-far, 0), a.along}
	}
	if last {
		stops[1] = [2]mgl64.Vec3{a.at(a.half+far, 0), a.along.Mul(-1)}
	}
	return p.hollow([2]mgl64.Vec3{flat(0), n}, [2]mgl64.Vec3{a.at(0, 0).Add(a.face.Mul(far)), a.face.Mul(-1)},
		[2]mgl64.Vec3{a.at(0, 0).Add(a.cut.Mul(far)), a.cut.Mul(-1)}, stops[0], stops[1])
}

// UsualChamfer is the bevel of a chamfer where none is given.
const UsualChamfer = 45 * measure.Degree

// cutChamfer takes an arris off to a plane: Width on the face, at an Angle to it.
func (b *assembly) cutChamfer(p *spot) {
	if !b.needs(p, p.f.Width, "width") {
		return
	}
	a, bevel := p.arris(), p.f.Angle
	if bevel == 0 {
		bevel = UsualChamfer
	}
	if most := measure.Angle(math.Pi - a.inside); bevel <= 0 || bevel >= most {
		b.find(stop("chamfer-misses-edge", fmt.Sprintf("A chamfer at %s to the face does not meet this edge; less than %s does.",
			measure.FormatAngle(bevel, measure.Degree/10), measure.FormatAngle(most, measure.Degree/10)), bevel.Degrees(), most.Degrees(), "deg", p.path("angle")))
		return
	}
	// by sines in the triangle of face, chamfer and cut
	onCut := p.f.Width.MM() * math.Sin(bevel.Radians()) / math.Sin(bevel.Radians()+a.inside)
	deep := -onCut * a.inCut.Dot(a.face)
	if !b.leavesEdge(p, deep, "width") || !b.shallow(p, p.f.Width, "width") {
		return
	}
	from, to := p.worked(a)
	if !b.onBoard(p, a.line, from, to) {
		return
	}
	p.board.shape.Slots = append(p.board.shape.Slots, p.easingSlot(a, p.f.Width.MM(), onCut))
	from, to = max(from, -a.half), min(to, a.half)
	wide := p.f.Width.MM()
	p.stands(part.Feature{Length: measure.Length(to - from), Width: p.f.Width, Depth: measure.Length(deep), Bevel: bevel, Inner: p.f.Face == InnerFace},
		a.line, from, to, a.at(from, 0), a.at(to, 0), a.at(to, wide), a.at(from, wide))
}

// leavesEdge refuses an easing that takes the whole thickness of the edge.
func (b *assembly) leavesEdge(p *spot, deep float64, key string) bool {
	if deep < p.board.thickness-solid.SamePoint {
		return true
	}
	b.find(stop("edge-gone", fmt.Sprintf("The %s would take the whole edge: it reaches %s down a board that is %s thick.", p.f.Kind,
		b.show(measure.Length(deep)), b.show(measure.Length(p.board.thickness))), deep, p.board.thickness, "mm", p.path(key)))
	return false
}

// cutRound rounds one arris in the solid. What stands in its way, another round or a round wall, is found
// when the solid is built; see board.build.
func (b *assembly) cutRound(p *spot) {
	if !b.needs(p, p.f.Radius, "radius") {
		return
	}
	a, r := p.arris(), p.f.Radius.MM()
	touch := r / math.Tan(a.inside/2)
	deep := -touch * a.inCut.Dot(a.face)
	if !b.leavesEdge(p, deep, "radius") {
		return
	}
	from, to := p.worked(a)
	if !b.onBoard(p, a.line, from, to) {
		return
	}
	if p.f.Length > 0 {
		first, last := a.runsOut(from, to)
		if !first || !last {
			b.find(stop("round-over-stopped", "A round-over runs the whole length of its edge; a stopped easing can be a chamfer.", p.f.Length.MM(), 2*a.half, "mm", p.path("length")))
			return
		}
	}
	s := p.easingSlot(a, touch, touch)
	axis := a.at(0, 0).Add(a.face.Add(a.cut).Mul(-r / (1 + a.face.Dot(a.cut))))
	s.Round = &solid.Cylinder{Point: axis, Axis: a.along, Radius: r}
	p.board.rounds = append(p.board.rounds, rounding{s, len(p.board.part.Eased)})
	name := p.board.around[p.chord].id + ", outer face"
	if p.f.Face == InnerFace {
		name = p.board.around[p.chord].id + ", inner face"
	}
	eased := part.EasedStraight(name, p.f.Radius, measure.Length(2*a.half), measure.Angle(a.inside))
	eased.Cut = true
	p.board.part.Eased = append(p.board.part.Eased, eased)
	p.stands(part.Feature{Length: measure.Length(to - from), Width: measure.Length(touch), Depth: measure.Length(deep), Radius: p.f.Radius, Inner: p.f.Face == InnerFace},
		a.line, -a.half, a.half, a.at(-a.half, 0), a.at(a.half, 0), a.at(a.half, touch), a.at(-a.half, touch))
}
