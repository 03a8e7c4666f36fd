// Package yield turns a piece and the boards on hand into the task of a board plan, and puts a plan
// into the words of the shop.
package yield

import (
	"splaywright/model/form"
	"splaywright/model/stock"
)

// What a design that leaves it out gets (common practice).
const (
	narrowestStrip = 50.0 // mm
	jointing       = 3.0  // mm, planed off a strip's two edges together
)

// Task is what a board plan for the piece is made from: its parts in their rough sizes, equal ones
// counted together, and the boards on hand.
func Task(p *form.Piece) stock.Task {
	d := p.Design
	t := stock.Task{Boards: d.OnHand, Saw: saw(d)}
	index := map[string]int{} // by part id
	for _, q := range p.Parts {
		r := q.Rough
		want := stock.Demand{ID: q.ID, Name: q.Name, Length: r.Length.MM(), Width: r.Width.MM(), Thickness: r.Thickness.MM(),
			Count: 1, Timber: q.Timber, Glue: d.Plan.GlueUp}
		for i, have := range t.Demands {
			if alike(have, want) {
				t.Demands[i].Count++
				t.Demands[i].Name += " and " + lower(q.Name)
				index[q.ID] = i
			}
		}
		if _, known := index[q.ID]; !known {
			index[q.ID] = len(t.Demands)
			t.Demands = append(t.Demands, want)
		}
	}
	if d.Plan.Run {
		t.Runs = runs(p, index)
	}
	return t
}

// alike tells whether two demands are the same board to get out. They differ by rounding noise only
// where they mirror each other.
func alike(a, b stock.Demand) bool {
	near := func(x, y float64) bool { return x-y < 1e-3 && y-x < 1e-3 }
	return a.Timber == b.Timber && near(a.Length, b.Length) && near(a.Width, b.Width) && near(a.Thickness, b.Thickness)
}

func lower(name string) string {
	if name == "" {
		return name
	}
	return string(name[0]|0x20) + name[1:]
}

func saw(d form.Design) stock.Saw {
	s := stock.Saw{
		Kerf: d.Saw.Kerf.MM(), TrimEnds: d.Plan.TrimEnds.MM(), TrimEdges: d.Plan.TrimEdges.MM(), Keep: d.Plan.Keep.MM(),
		Resaw: d.Saw.Kerf.MM(), Planing: d.Plan.Planing.MM(),
		Glue: stock.Glue{Narrowest: d.Plan.Narrowest.MM(), Joint: jointing},
	}
	switch d.Plan.First {
	case form.CrosscutFirst:
		s.First = stock.CrosscutFirst
	case form.RipFirst:
		s.First = stock.RipFirst
	}
	if s.Glue.Narrowest == 0 {
		s.Glue.Narrowest = narrowestStrip
	}
	return s
}

// runs are the parts that follow each other round the piece: side, top, side of a stool, all four walls
// of a tray or chest.
func runs(p *form.Piece, index map[string]int) []stock.Run {
	order := []string{"side-left", "top", "side-right"}
	if p.Form != "stool" {
		order = []string{"front", "end-right", "back", "end-left"}
	}
	r := stock.Run{Name: "round the piece"}
	for _, id := range order {
		if i, ok := index[id]; ok {
			r.Parts = append(r.Parts, i)
		}
	}
	if len(r.Parts) < 2 {
		return nil
	}
	return []stock.Run{r}
}
