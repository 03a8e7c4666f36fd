package sheet

import (
	"cmp"
	"slices"

	"splaywright/model/stock"
)

// share is a part of the task that has nothing to do with the rest: units, the boards that may yield them, and glue-ups.
type share struct {
	shapes []*shape
	us     []*unit
	glued  []stock.GlueUp
}

// apart divides a task into shares: units that no board may yield both, such as those of two timbers, can be planned
// without each other. Boards that no unit comes from are left out.
func apart(shapes []*shape, us []*unit, glued []stock.GlueUp) []share {
	group := make([]int, len(shapes)) // of each shape: a shape of the same share before it, or itself
	for i := range group {
		group[i] = i
	}
	first := func(i int) int {
		for group[i] != i {
			i = group[i]
		}
		return i
	}
	wanted := make([]bool, len(shapes))
	for _, u := range us {
		for _, i := range u.boards {
			wanted[i] = true
			a, b := first(u.boards[0]), first(i)
			group[max(a, b)] = min(a, b)
		}
	}
	var out []share
	number, index := map[int]int{}, make([]int, len(shapes)) // of a share by its first shape; of a shape in its share
	for i, s := range shapes {
		if !wanted[i] {
			continue
		}
		n, ok := number[first(i)]
		if !ok {
			n = len(out)
			number[first(i)] = n
			out = append(out, share{})
		}
		index[i] = len(out[n].shapes)
		out[n].shapes = append(out[n].shapes, s)
	}
	moved := map[*unit]*unit{} // units alike stay one
	strip := map[int]int{}
	for _, u := range us {
		c := &out[number[first(u.boards[0])]]
		v := moved[u]
		if v == nil {
			v = new(unit)
			*v = *u
			v.boards = make([]int, len(u.boards))
			for k, i := range u.boards {
				v.boards[k] = index[i]
			}
			if u.strip > 0 {
				if strip[u.strip] == 0 {
					c.glued = append(c.glued, glued[u.strip-1])
					strip[u.strip] = len(c.glued)
				}
				v.strip = strip[u.strip]
			}
			moved[u] = v
		}
		c.us = append(c.us, v)
	}
	return out
}

// add joins the plan of another share.
func add(p *stock.Plan, o stock.Plan) {
	for _, l := range o.Layouts {
		l.Each(func(q *stock.Piece, _ int) {
			if q.Strip > 0 {
				q.Strip += len(p.Glued)
			}
		})
	}
	p.Layouts = append(p.Layouts, o.Layouts...)
	p.Glued = append(p.Glued, o.Glued...)
	for _, l := range o.Left {
		if i := slices.IndexFunc(p.Left, func(m stock.Left) bool { return m.Demand == l.Demand }); i >= 0 {
			p.Left[i].Count += l.Count
			continue
		}
		p.Left = append(p.Left, l)
	}
	p.Cost += o.Cost
	p.Bound += o.Bound
	p.Tries += o.Tries
	p.Proven = p.Proven && o.Proven
	p.Short = p.Short || o.Short
	slices.SortStableFunc(p.Layouts, func(a, b stock.Layout) int { return a.Board - b.Board })
	slices.SortStableFunc(p.Left, func(a, b stock.Left) int { return cmp.Compare(a.Demand, b.Demand) })
}
