package table

import (
	"fmt"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// costLine is one thing that a piece costs: how much of it, and the price of each.
type costLine struct {
	what, unit   string
	amount, each float64
	decimals     int
	ok           bool // a price was told
}

func (l costLine) cost() float64 { return l.amount * l.each }

// costsOf lists what a piece takes: rough wood, screws, plugs and the surface to finish.
func costsOf(p *form.Piece) []costLine {
	c := p.Design.Cost
	area, screws, plugs := 0., 0, 0
	for _, q := range p.Parts {
		if q.Solid != nil {
			area += q.Shape().Area() / 1e6
		}
		for _, b := range q.Bores {
			if b.Purpose == "clearance" {
				screws++
			}
			if b.Plug > 0 {
				plugs++
			}
		}
	}
	out := woodLines(p)
	if screws > 0 {
		out = append(out, costLine{"screws", "each", float64(screws), c.EachScrew, 0, c.EachScrew > 0})
	}
	if plugs > 0 {
		out = append(out, costLine{"plugs", "each", float64(plugs), c.EachPlug, 0, c.EachPlug > 0})
	}
	return append(out, costLine{"surface to finish", "m²", area, c.FinishPerM2, 3, c.FinishPerM2 > 0})
}

// woodLines are the rough wood: a line for every price that it has, timbers without one of their own together.
func woodLines(p *form.Piece) []costLine {
	c := p.Design.Cost
	var out []costLine
	at := map[string]int{}
	for _, q := range p.Parts {
		perM3, perFoot := p.Design.Timbers.Price(q.Timber)
		name := ", " + q.Timber
		if perM3+perFoot == 0 {
			perM3, perFoot, name = c.WoodPerM3, c.WoodPerBoardFoot, ""
		}
		_, rough := q.Lying()
		i, known := at[name]
		if !known {
			i, at[name] = len(out), len(out)
			out = append(out, costLine{"rough wood" + name, "m³", 0, perM3, 5, perM3 > 0})
			if perFoot > 0 {
				out[i] = costLine{"rough wood" + name + ", charged", "bd ft", 0, perFoot, 2, true}
			}
		}
		if perFoot > 0 {
			out[i].amount += surfaceMeasure(rough) * float64(nominal(p, q)) / 4
		} else {
			out[i].amount += cubicMetres(rough)
		}
	}
	return withWaste(out, c.Waste)
}

// withWaste follows every line of wood by one of what is bought besides it.
func withWaste(wood []costLine, percent int) []costLine {
	if percent == 0 {
		return wood
	}
	var out []costLine
	for _, l := range wood {
		more := l
		more.what, more.amount = fmt.Sprintf("%s, %d %% for waste", l.what, percent), l.amount*float64(percent)/100
		out = append(out, l, more)
	}
	return out
}

// total is what a piece costs where prices were told; ok is false where none was.
func total(lines []costLine) (sum float64, ok bool) {
	for _, l := range lines {
		sum, ok = sum+l.cost(), ok || l.ok
	}
	return sum, ok
}

// Cost is what wood, screws, plugs and finish come to. Without a price in the design it is empty.
func Cost(p *form.Piece, style measure.Style) Table {
	s := newSheet("cost", "Cost", style)
	s.words("What")
	s.numbers("", "Amount")
	s.words("Unit")
	s.numbers("", "Price of each", "Cost")
	lines := costsOf(p)
	sum, ok := total(lines)
	if !ok {
		return s.Said(s.style)
	}
	missing := ""
	for _, l := range lines {
		price, cost := Cell{}, Cell{}
		amount, unit := figure(l.amount, l.decimals), l.unit // that of its price, which the design file names
		if l.ok {
			price, cost = figure(l.each, 2), figure(l.cost(), 2)
		} else {
			missing += ", " + l.what
			amount = s.amount(l.amount, l.unit, l.decimals, 3)
			_, unit = s.style.Unit.In(0, l.unit)
		}
		s.row("", word(l.what), amount, word(unit), price, cost)
	}
	s.row("", word("Total"), Cell{}, word(""), Cell{}, figure(sum, 2))
	if w := p.Design.Cost.Waste; w > 0 {
		s.note(fmt.Sprintf("In the currency of the prices under cost. Wood is reckoned at its rough size, with %d %% besides for defects, cracked ends and offcuts. "+
			"The board plan says what boards at their own prices come to.", w))
	} else {
		s.note("In the currency of the prices under cost. Wood is reckoned at its rough size; nothing is added for defects, cracked ends or offcuts. " +
			"The board plan says what boards at their own prices come to.")
	}
	s.note("The surface is that of every part before assembly, joints and holes included: a little more than what is seen.")
	if missing != "" {
		s.note(fmt.Sprintf("No price was told for %s; the total leaves that out.", missing[2:]))
	}
	return s.Said(s.style)
}
