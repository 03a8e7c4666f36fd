package form

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// cutNotch cuts a rectangle out of an edge, square to the face: Width along the edge, Depth into the board.
func (b *assembly) cutNotch(p *spot) {
	if !b.needs(p, p.f.Width, "width") || !b.needs(p, p.f.Depth, "depth") {
		return
	}
	l := p.board.line(p.chord, 0)
	from, to := p.stretch(p.f.Width.MM())
	if !b.onBoard(p, l, from, to) || !b.shallow(p, p.f.Depth, "depth") {
		return
	}
	first, last := l.runsOut(from, to)
	deep, far := p.f.Depth.MM(), p.board.clear(p.chord)
	if first {
		from -= far
	}
	if last {
		to += far
	}
	along, out := l.way.Vec3(0), l.out.Vec3(0)
	p.slot(append(p.upright(l),
		[2]mgl64.Vec3{l.at(0, deep), out}, [2]mgl64.Vec3{l.at(from, 0), along}, [2]mgl64.Vec3{l.at(to, 0), along.Mul(-1)})...)
	from, to = max(from, -l.half), min(to, l.half)
	p.stands(part.Feature{Length: measure.Length(to - from), Width: p.f.Depth}, l, from, to,
		l.at(from, 0), l.at(to, 0), l.at(to, deep), l.at(from, deep))
}

// cutTaper takes a wedge off an edge, square to the face. At the end of the edge that From names, and X (or
// Y) on from it, the board is narrower by Depth; over Length it widens to the edge.
func (b *assembly) cutTaper(p *spot) {
	if !b.needs(p, p.f.Length, "length") || !b.needs(p, p.f.Depth, "depth") || !b.shallow(p, p.f.Depth, "depth") {
		return
	}
	if p.from == 0 {
		b.find(stop("taper-from-nowhere", "A taper begins at an end of its edge, where the board is narrowest: from names that end.",
			0, 0, "", p.path("from")))
		return
	}
	l := p.board.line(p.chord, 0)
	on := -p.from // the way on from the narrow end, along the edge
	narrow, start := -on*l.half, p.at
	wide := start + on*p.f.Length.MM()
	if on*(start-narrow) < -solid.SamePoint || on*(start-narrow) >= 2*l.half {
		b.offBoard(p, l)
		return
	}
	deep, far := p.f.Depth.MM(), p.board.clear(p.chord)
	along := l.way.Vec3(0)
	slope := l.out.Mul(p.f.Length.MM()).Sub(l.way.Mul(on * deep)).Vec3(0)
	walls := append(p.upright(l), [2]mgl64.Vec3{l.at(start, deep), slope}, [2]mgl64.Vec3{l.at(narrow-on*far, 0), along.Mul(on)})
	if on*(start-narrow) > solid.SamePoint {
		walls = append(walls, [2]mgl64.Vec3{l.at(start, deep), l.out.Vec3(0)})
	}
	p.slot(walls...)
	end, left := wide, 0.0
	if on*wide > l.half { // it runs off the other end before it comes to nothing
		end, left = on*l.half, deep*(on*wide-l.half)/p.f.Length.MM()
	}
	from, to := min(narrow, end), max(narrow, end)
	hull := []mgl64.Vec3{l.at(narrow, 0), l.at(end, 0), l.at(start, deep), l.at(narrow, deep)}
	if left > 0 {
		hull = append(hull, l.at(end, left))
	}
	p.stands(part.Feature{Length: measure.Length(to - from), Width: p.f.Depth}, l, from, to, hull...)
}

// onBoard refuses a shape that lies beyond its edge.
func (b *assembly) onBoard(p *spot, l line, from, to float64) bool {
	if to > -l.half+solid.SamePoint && from < l.half-solid.SamePoint {
		return true
	}
	b.offBoard(p, l)
	return false
}

func (b *assembly) offBoard(p *spot, l line) {
	key := "y"
	if p.board.around[p.chord].kind == part.Rip {
		key = "x"
	}
	b.find(stop("shape-off-board", fmt.Sprintf("The %s lies beyond its edge, which is %s long.", p.f.Kind, b.show(measure.Length(2*l.half))),
		math.Abs(p.at), l.half, "mm", p.path(key)))
}

// shallow refuses a shape as deep as its board is wide where it stands.
func (b *assembly) shallow(p *spot, deep measure.Length, key string) bool {
	across := p.board.across(p.chord, p.at)
	if deep.MM() < across {
		return true
	}
	b.find(stop("shape-through-board", fmt.Sprintf("The %s is %s deep and %s only %s across there: it would leave nothing.", p.f.Kind, b.show(deep),
		lowerFirst(p.board.part.Name), b.show(measure.Length(across))), deep.MM(), across, "mm", p.path(key)))
	return false
}

// across is how far the wood goes on into a board, square to one of its cuts, from a place on it: on the
// face where it ends sooner.
func (b *board) across(k int, at float64) float64 {
	l := b.line(k, 0)
	at = max(-l.half, min(l.half, at))
	least := math.Inf(1)
	for i, e := range b.around {
		if i == k {
			continue
		}
		q := b.local(e.plane)
		for _, z := range []float64{0, -b.thickness} {
			from := l.at(at, 0).Vec2().Vec3(z)
			if rise := -q.N.Dot(l.out.Vec3(0)); rise > solid.SamePoint {
				if way := (q.D - q.N.Dot(from)) / rise; way > solid.SamePoint {
					least = min(least, way)
				}
			}
		}
	}
	return least
}
