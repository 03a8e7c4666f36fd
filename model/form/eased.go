package form

import (
	"math"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// easing finds the edges of one part that a round-over runs along: those that are still to be
// felt when the piece is together. Each edge counts on its own; where two meet at a corner, the
// little that both take is counted twice.
type easing struct {
	b      *builder
	board  *board
	radius measure.Length
}

// ease notes the eased edges of every round-over of the design.
func (b *builder) ease() {
	for i, f := range b.stand.d.Features {
		if f.Kind != string(part.RoundOver) {
			continue
		}
		if !(f.Radius > 0) {
			b.find(stop("size-not-above-nothing", "The radius of the round-over must be more than nothing.", f.Radius.MM(), 0, "mm",
				(&spot{index: i}).path("radius")))
			continue
		}
		for k, board := range b.boards {
			if f.isOn(board.part.ID) {
				e := &easing{b, board, f.Radius}
				e.edges(k)
				e.hollows()
				board.part.Features = append(board.part.Features, part.Feature{Index: i, Kind: part.RoundOver, Radius: f.Radius})
			}
		}
	}
}

func (e *easing) edges(k int) {
	switch {
	case k == 0:
		e.top()
	case k <= 2:
		e.side(side(k - 1))
	default:
		e.stretcher(e.b.rails[k-3])
	}
}

// between eases the edge where two planes meet, from one plane to another, less a stretch.
func (e *easing) between(name string, p, q, from, to solid.Plane, less float64) {
	length := meet(p, q, to).Sub(meet(p, q, from)).Len() - less
	if length <= 0 {
		return
	}
	e.board.part.Eased = append(e.board.part.Eased,
		part.EasedStraight(name, e.radius, measure.Length(length), joint.Dihedral(p.N, q.N)))
}

// top: all round the upper face, the corners' arrises with it, and the lower edges that stand free.
func (e *easing) top() {
	s := e.b.stand
	front, back, l, r := s.topFront, s.topBack, s.topEnd[left], s.topEnd[right]
	e.between("upper front", s.upper, front, l, r, 0)
	e.between("upper back", s.upper, back, l, r, 0)
	e.between("upper left", s.upper, l, front, back, 0)
	e.between("upper right", s.upper, r, front, back, 0)
	from, to := s.inner[left], s.inner[right]
	if s.d.Corners.OverhangEdges > 0 {
		from, to = l, r
	}
	e.between("lower front", s.lower, front, from, to, 0)
	e.between("lower back", s.lower, back, from, to, 0)
	if s.d.Corners.Overhang > 0 {
		e.between("lower left", s.lower, l, front, back, 0)
		e.between("lower right", s.lower, r, front, back, 0)
	}
}

// side: the long edges below the top and the edges round the foot, less what an arch takes.
func (e *easing) side(i side) {
	s := e.b.stand
	front, back := s.sideFront[i], s.sideBack[i]
	end := s.upper
	if s.d.Corners.Joint != ThroughDovetail {
		end = s.lower
	}
	e.between("outer front", s.outer[i], front, end, s.floor, 0)
	e.between("outer back", s.outer[i], back, end, s.floor, 0)
	e.between("inner front", s.inner[i], front, s.lower, s.floor, 0)
	e.between("inner back", s.inner[i], back, s.lower, s.floor, 0)
	e.between("floor outer", s.outer[i], s.floor, front, back, e.archChord(0))
	e.between("floor inner", s.inner[i], s.floor, front, back, e.archChord(-s.side))
	e.between("floor front", s.floor, front, s.outer[i], s.inner[i], 0)
	e.between("floor back", s.floor, back, s.outer[i], s.inner[i], 0)
}

// stretcher: its long edges, the upper ones only where it hangs clear of the top.
func (e *easing) stretcher(r *rail) {
	s := e.b.stand
	high, low := solid.Plane{N: worldZ, D: r.high}, solid.Plane{N: worldZ.Mul(-1), D: -r.low}
	near, far := solid.Plane{N: worldY.Mul(-1), D: -r.near}, solid.Plane{N: worldY, D: r.far}
	from, to := s.inner[left], s.inner[right]
	e.between("lower front", low, near, from, to, e.archChord(0))
	e.between("lower back", low, far, from, to, e.archChord(-e.board.thickness))
	if r.d.BelowTop > 0 {
		e.between("upper front", high, near, from, to, 0)
		e.between("upper back", high, far, from, to, 0)
	}
}

// archChord is the width of the board's arches on the face at height z of the part frame.
func (e *easing) archChord(z float64) float64 {
	sum := 0.0
	for _, f := range e.board.part.Features {
		if f.Kind == part.Arch {
			sum += f.Radius.MM() * 2 * math.Sin(e.archTurn(f, z)/2)
		}
	}
	return sum
}

// archTurn is the angle of an arch's arc on the face at height z of the part frame.
func (e *easing) archTurn(f part.Feature, z float64) float64 {
	sin, cos := math.Sincos(f.Angle.Radians())
	cut := e.board.around[0].plane // a stretcher's lower edge
	if f.Angle == 0 {
		cut = e.board.around[1].plane
	}
	p := e.board.local(cut)
	// how far the cut has moved out of the board from the outer face to height z
	moved := -z * p.N[2] / (p.N[0]*cos + p.N[1]*sin)
	drop := f.Radius.MM() - f.Width.MM() - moved
	return 2 * math.Acos(math.Max(-1, math.Min(1, drop/f.Radius.MM())))
}

// hollows eases both rims of arches, holes and slots.
func (e *easing) hollows() {
	p := e.board.part
	for _, f := range p.Features {
		for _, face := range []struct {
			name string
			z    float64
		}{{"outer", 0}, {"inner", -e.board.thickness}} {
			name := string(f.Kind) + " " + face.name
			switch f.Kind {
			case part.Hole:
				p.Eased = append(p.Eased, part.EasedHollow(name, e.radius, f.Radius, 2*math.Pi))
			case part.Arch:
				turn := measure.Angle(e.archTurn(f, face.z))
				p.Eased = append(p.Eased, part.EasedHollow(name, e.radius, f.Radius, turn))
			case part.HandHole, part.Slot:
				p.Eased = append(p.Eased, part.EasedHollow(name+" ends", e.radius, f.Radius, 2*math.Pi),
					part.EasedStraight(name+" sides", e.radius, 2*(f.Length-f.Width), 90*measure.Degree))
			}
		}
	}
}
