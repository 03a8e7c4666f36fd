package form

import (
	"slices"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Overall is the outside of the finished piece.
type Overall struct {
	Height               measure.Length
	WidthTop, WidthFloor measure.Length
	DepthTop, DepthFloor measure.Length
	FloorMiddle          measure.Length // X of the middle of the width at the floor: 0 unless the feet reach out unlike
	Mass                 float64        // kg
}

// Piece is everything that follows from a design. World frame: X right, Y back, Z up,
// origin on the floor under the middle of the piece, millimetres.
type Piece struct {
	Title    string
	Form     string
	Design   Design // resolved: what was left out is filled in
	Overall  Overall
	Parts    []*part.Part
	Joints   []joint.Joint
	Findings []part.Finding
	Assembly Assembly
}

// Weighed tells whether the mass of every part is known: that their timbers are in a table. What some parts come to is no weight
// of the piece.
func (p *Piece) Weighed() bool {
	return len(p.Parts) > 0 && !slices.ContainsFunc(p.Parts, func(q *part.Part) bool { return q.Mass == 0 })
}

// Part finds a part by its id, nil when there is none.
func (p *Piece) Part(id string) *part.Part {
	for _, q := range p.Parts {
		if q.ID == id {
			return q
		}
	}
	return nil
}

// Stopped tells whether a finding stops the piece.
func (p *Piece) Stopped() bool {
	for _, f := range p.Findings {
		if f.Level == part.Stop {
			return true
		}
	}
	return false
}
