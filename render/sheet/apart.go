package sheet

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
)

// Apart is the piece while it is taken apart: after steps of the assembly undone, the last first; a
// part of a step moves its parts part of the way. 0 = whole, as many as there are moves = all apart.
// The parts stand aside along the ways in which they come home.
func Apart(p *form.Piece, steps float64) *form.Piece {
	size := max(p.Overall.Height, p.Overall.WidthTop, p.Overall.WidthFloor, p.Overall.DepthTop).MM()
	off := map[string]mgl64.Vec3{}
	n := len(p.Assembly.Moves)
	for k, m := range p.Assembly.Moves {
		share := math.Max(0, math.Min(1, steps-float64(n-1-k)))
		for i, id := range m.Parts {
			off[id] = off[id].Sub(m.Ways[i].Mul(share * (apart + further*float64(k)) * size))
		}
	}
	shown := *p
	shown.Parts = nil
	for _, q := range p.Parts {
		d := off[q.ID]
		moved := *q
		moved.Place = mgl64.Translate3D(d[0], d[1], d[2]).Mul4(q.Place)
		shown.Parts = append(shown.Parts, &moved)
	}
	return &shown
}

// Slid is the piece with single parts taken off along the ways in which they come home: off is how far, mm, by
// part. A part that stands first has no way and stays.
func Slid(p *form.Piece, off map[string]float64) *form.Piece {
	shown := *p
	shown.Parts = nil
	for _, q := range p.Parts {
		moved := *q
		if way, ok := WayOff(p, q.ID); ok {
			d := way.Mul(off[q.ID])
			moved.Place = mgl64.Translate3D(d[0], d[1], d[2]).Mul4(q.Place)
		}
		shown.Parts = append(shown.Parts, &moved)
	}
	return &shown
}

// WayOff is the direction in which a part leaves its place, world frame, one long; false for what stands first.
func WayOff(p *form.Piece, id string) (mgl64.Vec3, bool) {
	for _, m := range p.Assembly.Moves {
		for i, moved := range m.Parts {
			if moved == id && m.Ways[i].Len() > 0 {
				return m.Ways[i].Normalize().Mul(-1), true
			}
		}
	}
	return mgl64.Vec3{}, false
}
