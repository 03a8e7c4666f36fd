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
