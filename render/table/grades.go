package table

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/timber"
	"splaywright/model/yield"
)

// ToBuyIDs are the ids of the tables of what to buy, in order; the second is there where boards are bought by their grade.
var ToBuyIDs = []string{"wood-to-buy", "wood-grades"}

// ToBuy is what to buy and, where that goes by grades, what these promise.
func ToBuy(r yield.Result, style measure.Style) []Table {
	out := []Table{Shopping(r, style)}
	if len(r.Plan.Lots(r.Task)) > 0 {
		out = append(out, Grades(r, style))
	}
	return out
}

// Grades holds what the grades of the boards that are bought promise against what the parts take.
func Grades(r yield.Result, style measure.Style) Table {
	s := newSheet(ToBuyIDs[1], "What the grades promise", style)
	s.words("Grade", "Timber", "Sold as")
	s.numbers("", "Boards")
	s.numbers("sq ft", "Surface measure")
	s.numbers("%", "Clear")
	s.numbers("", "Units promised", "Units taken", "Clear pieces, at most")
	s.words("Each of at least")
	lots := r.Plan.Lots(r.Task)
	for _, l := range lots {
		g, ok := timber.FindGrade(l.Grade)
		if !ok {
			continue
		}
		feet, pieces := 0, 0
		for _, i := range l.Boards {
			n := sureFeet(r.Task.Boards[r.Plan.Layouts[i].Board])
			feet, pieces = feet+n, pieces+g.Pieces(n)
		}
		most := Cell{}
		if pieces > 0 {
			most = count(pieces)
		}
		s.row("", word(marked(g)), word(l.Timber), word(l.Words), count(len(l.Boards)), count(feet), figure(100*g.Share(), 1),
			figure(l.Clear/timber.CuttingUnit, 0), figure(l.Parts/timber.CuttingUnit, 1), most, word(cuttingsOf(g)))
	}
	s.note("A grade is a promise about the poorest board that bears it, not what your plan will yield: where knots and splits lie is seen on the board alone. Look for them before it is paid for, and mark the parts out on the boards themselves.")
	s.note("Units are cutting units, 1 in × 1 ft of surface, twelve to the square foot. A board promises its surface measure in whole feet times 10 in FAS and Selects, 8 in No. 1 Common, 6 in No. 2A and 4 in No. 3A Common; exactly half a foot, which a tally counts up and down by turns, is not counted on. Parts are counted in their rough size.")
	for _, l := range lots {
		s.promise(r, l)
	}
	var sources []string
	for _, l := range lots {
		if g, ok := timber.FindGrade(l.Grade); ok {
			sources = appendNew(sources, g.Source)
		}
	}
	for _, text := range sources {
		s.note("Source: " + text)
	}
	return s.Said(s.style)
}

func sureFeet(b stock.Board) int { return timber.SureFeet(mm(b.Length), mm(b.Sold.Width)) }

// marked is a grade with how it is marked on boards and tallies.
func marked(g timber.Grade) string {
	if g.Mark == g.Name {
		return g.Name
	}
	return fmt.Sprintf("%s (%s)", g.Name, g.Mark)
}

// cuttingsOf says how large the clear pieces of a grade are at least, in the trade's own measures.
func cuttingsOf(g timber.Grade) string {
	var out []string
	for _, c := range g.Cuttings {
		out = append(out, fmt.Sprintf("%.0f in × %.0f ft", c.Width.Inches(), c.Length.Inches()/12))
	}
	return strings.Join(out, " / ")
}

// promise says what is to be known of a lot: boards that are kept whole, pieces larger than any that is promised, a worse face.
func (s *sheet) promise(r yield.Result, l stock.Lot) {
	g, ok := timber.FindGrade(l.Grade)
	if !ok {
		return
	}
	if l.Spare > 0 {
		s.note(fmt.Sprintf("%+s, %s %+s, boards bought beyond those that are cut: %d. The parts take %s units, and the others promise %s. Keep them whole until the parts are clear.",
			g.Mark, l.Timber, l.Words, l.Spare, trimmed(l.Parts/timber.CuttingUnit, 1), trimmed(l.Clear/timber.CuttingUnit-s.ofSpares(r, l), 0)))
	}
	if large := s.largerThan(r, l, g); len(large) > 0 {
		text := fmt.Sprintf("%+s promises clear pieces of %+s only; look for the boards that have these in one: %s.", g.Mark, cuttingsOf(g), strings.Join(large, "; "))
		if !slices.ContainsFunc(r.Task.Demands, func(d stock.Demand) bool { return d.Glue }) {
			text += " " + glueInstead
		}
		s.note(text)
	}
	if g.BetterFace {
		s.note(fmt.Sprintf("%+s is promised for the better face; the other is No. 1 Common at least. Lay parts whose two faces are seen by the other face too.", g.Mark))
	}
}

const glueInstead = "Or glue them up of strips (plan.glue-up)."

// ofSpares is how many units the boards of a lot promise that are kept whole.
func (s *sheet) ofSpares(r yield.Result, l stock.Lot) (units float64) {
	for _, i := range l.Boards {
		if lay := r.Plan.Layouts[i]; lay.Root.Kind == stock.Spare {
			units += r.Task.Boards[lay.Board].Sold.Clear / timber.CuttingUnit
		}
	}
	return units
}

// largerThan lists the pieces of a lot that have to be clear in one and are larger than what its grade promises, each with its
// size, once each.
func (s *sheet) largerThan(r yield.Result, l stock.Lot, g timber.Grade) (out []string) {
	for _, i := range l.Boards {
		for _, q := range yield.Cuttings(r.Plan.Layouts[i]) {
			if g.Yields(mm(q.Length()), mm(q.Width())) {
				continue
			}
			name := r.Task.Demands[q.Demand].Name
			switch {
			case q.Run > 0:
				name = runName(r.Task.Runs[q.Run-1])
			case q.Strip > 0:
				name = fmt.Sprintf("strips of %s", name)
			}
			out = appendNew(out, fmt.Sprintf("%s, %s × %s", name, s.style.Format(mm(q.Length())), s.style.FormatUnit(mm(q.Width()))))
		}
	}
	slices.Sort(out)
	return out
}
