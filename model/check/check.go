// Package check looks a piece over as an experienced hand would before wood is cut, and says
// what stops it, what spoils it and what is worth knowing.
//
// Nothing here changes the piece: what does not work is said, never put right in silence.
package check

import (
	"cmp"
	"slices"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Run gives the findings about a piece, beyond those its form has already made: stops first,
// then warnings, then notes, each in a fixed order. Equal trouble on both sides of the piece is
// one finding that names both parts.
func Run(p *form.Piece) []part.Finding {
	r := &run{p: p, d: p.Design, style: p.Design.Style()}
	for _, look := range []func(*run){
		sizes, thicknesses, meanings, timbers, resawn,
		dovetails, overhangs,
		features, stretchers, loose, slips, gripHoles, roundOvers,
		screws,
		sawRange,
		onlyOfStools(heights), onlyOfStools(stance), climbing, child,
	} {
		look(r)
	}
	slices.SortStableFunc(r.found, func(a, b part.Finding) int {
		return cmp.Compare(rank(a.Level), rank(b.Level))
	})
	return r.found
}

// run is one look over a piece.
type run struct {
	p     *form.Piece
	d     form.Design
	style measure.Style
	found []part.Finding
	open  map[*part.Part][]opening // see openings; looked up, never ranged over
}

// onlyOfStools is a look that makes sense for what people sit and stand on.
func onlyOfStools(look func(*run)) func(*run) {
	return func(r *run) {
		if !r.walled() {
			look(r)
		}
	}
}

// add keeps a finding. One that says the same as an earlier one only adds its parts to it.
func (r *run) add(f part.Finding) {
	f.Sizes = r.d.Used(f.Sizes...)
	for i := range r.found {
		g := &r.found[i]
		if g.ID == f.ID && g.Text == f.Text {
			g.Parts = union(g.Parts, f.Parts)
			g.Sizes = union(g.Sizes, f.Sizes)
			return
		}
	}
	r.found = append(r.found, f)
}

// addWorst keeps, of findings of one kind about one set of screws, the one that is off by most.
func (r *run) addWorst(f part.Finding) {
	for i := range r.found {
		g := &r.found[i]
		if g.ID != f.ID || !slices.Equal(g.Sizes, f.Sizes) {
			continue
		}
		parts := union(g.Parts, f.Parts)
		if f.Figure-f.Limit < g.Figure-g.Limit-noise {
			*g = f
		}
		g.Parts = parts
		return
	}
	r.add(f)
}

func union(a, b []string) []string {
	for _, s := range b {
		if !slices.Contains(a, s) {
			a = append(a, s)
		}
	}
	return a
}

func rank(l part.Level) int {
	switch l {
	case part.Stop:
		return 0
	case part.Warning:
		return 1
	}
	return 2
}
