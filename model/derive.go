// Package model derives a piece from a design: every part's true size, every cut, every
// joint, and what is worth noticing about them.
package model

import (
	"splaywright/model/form"
)

// Design is what a person typed; see form.Design.
type Design = form.Design

// Piece is what follows from it; see form.Piece.
type Piece = form.Piece
