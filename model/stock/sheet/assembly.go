package sheet

import (
	"slices"

	"splaywright/model/stock"
)

// assembly copies cuts into a layout.
type assembly struct {
	s     *search
	l     *layout
	units [][]int          // of each kind, those still to come
	kind  map[unitName]int // of a unit
}

// unitName is the part, strip or run that a unit is.
type unitName struct{ demand, strip, run int }

func nameOf(u *unit) unitName {
	if u.run > 0 {
		return unitName{run: u.run}
	}
	return unitName{demand: u.demand, strip: u.strip}
}

// layoutOf puts cuts of boards together; what they yield too often stays uncut.
func (s *search) layoutOf(cuts []cut) *layout {
	a := assembly{s: s, l: s.nothing(), units: make([][]int, len(s.bounds.kinds)), kind: map[unitName]int{}}
	for i, u := range s.us {
		k := slices.IndexFunc(s.bounds.kinds, u.same)
		a.units[k] = append(a.units[k], i)
		a.kind[nameOf(u)] = k
	}
	for _, c := range cuts {
		i := c.shape
		for a.l.roots[i] != nil { // the next board alike
			i++
		}
		a.l.roots[i] = a.copy(c.root, i)
		a.keep(a.l.roots[i], i)
		a.l.cost += s.shapes[i].cost
	}
	a.l.left = slices.Sorted(slices.Values(slices.Concat(a.units...)))
	for _, u := range a.l.left {
		a.l.area += s.us[u].area()
	}
	return a.l
}

func (a *assembly) copy(p *stock.Piece, shape int) *stock.Piece {
	c := &stock.Piece{Rect: p.Rect}
	switch {
	case p.Run > 0:
		a.unit(c, unitName{run: p.Run}, false, shape)
	case p.Kind == stock.Part:
		a.unit(c, unitName{demand: p.Demand, strip: p.Strip}, p.Turned, shape)
	case len(p.Pieces) > 0:
		free := true
		for _, q := range p.Pieces {
			part := a.copy(q, shape)
			free = free && part.Kind == stock.Waste
			c.Pieces = append(c.Pieces, part)
		}
		if c.Kind = p.Kind; free { // there is nothing to be cut here
			c.Kind, c.Pieces = stock.Waste, nil
		}
	}
	return c
}

// unit makes a free piece the next unit like the one named, if there is one.
func (a *assembly) unit(p *stock.Piece, name unitName, turned bool, shape int) {
	k := a.kind[name]
	if len(a.units[k]) == 0 {
		return
	}
	u := a.units[k][0]
	a.units[k] = a.units[k][1:]
	a.l.owner[u] = shape
	filler := packer{t: a.s.t}
	filler.fill(p, a.s.us[u], turned)
}

// keep counts the free pieces of a board.
func (a *assembly) keep(p *stock.Piece, shape int) {
	if p.Run > 0 {
		return
	}
	if p.Kind == stock.Waste && a.s.shapes[shape].clean(p.Rect) {
		a.l.keep[shape] += p.Area() * p.Area()
	}
	for _, q := range p.Pieces {
		a.keep(q, shape)
	}
}
