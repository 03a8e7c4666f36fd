// Package model derives a piece from a design: every part's true size, every cut, every
// joint, and what is worth noticing about them.
package model

import (
	"cmp"
	"slices"
	"sync"

	"splaywright/model/check"
	"splaywright/model/form"
	"splaywright/model/hold"
	"splaywright/model/motion"
	"splaywright/model/part"
)

// Design is what a person typed; see form.Design.
type Design = form.Design

// Piece is what follows from it; see form.Piece.
type Piece = form.Piece

// Derive builds the piece and looks it over. The findings come most serious first, otherwise in
// the order in which they were made. The same design always gives the same piece.
func Derive(d Design) *Piece {
	p := form.Build(d)
	Review(p)
	return p
}

// Review looks a piece over that form.Build has built: how it goes together, and the findings. Its parts and sizes stay as
// they are, so a copy of it may be drawn meanwhile.
func Review(p *Piece) {
	var order form.Assembly
	var group sync.WaitGroup
	group.Go(func() { order = motion.Assemble(p) })
	found, holds := check.Run(p), hold.Run(p)
	group.Wait()
	p.Findings = check.Explained(slices.Concat(p.Findings, found)) // a copy of the piece keeps its own
	p.Assembly = order
	if f, stuck := motion.Finding(p); stuck {
		p.Findings = append(p.Findings, f)
	}
	p.Findings = append(p.Findings, holds...)
	slices.SortStableFunc(p.Findings, func(a, b part.Finding) int {
		return cmp.Compare(rank(a.Level), rank(b.Level))
	})
}

// rank orders the levels: stops, warnings, notes.
func rank(l part.Level) int {
	return slices.Index([]part.Level{part.Stop, part.Warning, part.Note}, l)
}
