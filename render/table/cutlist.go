package table

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"sort"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// CutList is what to get out: equal parts grouped, finished blank and rough size, the timber in
// the ways it is sold, and the weight. The last row is the sum.
func CutList(p *form.Piece, style measure.Style) Table {
	s := newSheet("cut-list", "Cut list", style)
	s.words("Mark", "Part")
	s.numbers("", "Qty")
	s.words("Timber", "Grain", "Signs")
	s.lengths("from long point to long point along the grain", "Length")
	s.lengths("along the face, square to the grain, from long point to long point", "Width")
	s.lengths("square to the face", "Thick")
	s.lengths("of the square-ended board to start from", "Rough length", "Rough width", "Rough thick")
	s.numbers("", "Sold as")
	s.numbers("bd ft", "Exact", "Charged")
	s.amounts("m³", "Rough")
	s.amounts("kg", "Weight")
	sum := totals{feet: map[int]float64{}}
	for _, g := range groups(p) {
		cutRow(s, p, g)
		sum.add(p, g)
	}
	if !p.Weighed() {
		sum.kg = 0
	}
	if sum.parts > 0 {
		sum.row(s)
	}
	cutNotes(s, p, sum)
	return s.done()
}

func cutRow(s *sheet, p *form.Piece, g group) {
	q, n := g[0], float64(len(g))
	finished, rough := q.Lying()
	quarters := nominal(p, q)
	s.row(q.ID, word(g.marks()), word(g.name()), count(len(g)), word(q.Timber), word(grain(q)), word(g.signs()),
		s.length(finished.Length), s.length(finished.Width), s.length(finished.Thickness),
		s.length(rough.Length), s.length(rough.Width), s.length(rough.Thickness),
		word(fmt.Sprintf("%d/4", quarters)),
		figure(n*boardFeet(rough), 2),
		figure(n*surfaceMeasure(rough)*float64(quarters)/4, 2),
		s.amount(n*cubicMetres(rough), "m³", 5, 3), s.weight(g.mass()))
}

// weight is blank where it is not known.
func (s *sheet) weight(kg float64) Cell {
	if kg == 0 {
		return Cell{}
	}
	return s.amount(kg, "kg", 2, 2)
}

func (g group) mass() float64 {
	var kg float64
	for _, q := range g {
		kg += q.Mass
	}
	return kg
}

func cubicMetres(b part.Box) float64 {
	return b.Length.MM() * b.Width.MM() * b.Thickness.MM() / 1e9
}

// grain says where the grain runs in the finished piece. In the board it is always the length.
func grain(q *part.Part) string {
	x := q.Place.Col(0)
	ax, ay, az := math.Abs(x[0]), math.Abs(x[1]), math.Abs(x[2])
	switch {
	case az >= ax && az >= ay:
		return "upright"
	case ax >= ay:
		return "left–right"
	}
	return "front–back"
}

type totals struct {
	parts       int
	exact, sold float64
	cubic, kg   float64
	feet        map[int]float64 // surface measure by nominal thickness
}

func (t *totals) add(p *form.Piece, g group) {
	q, n := g[0], float64(len(g))
	_, rough := q.Lying()
	quarters := nominal(p, q)
	t.parts += len(g)
	t.exact += n * boardFeet(rough)
	t.sold += n * surfaceMeasure(rough) * float64(quarters) / 4
	t.feet[quarters] += n * surfaceMeasure(rough)
	t.cubic += n * cubicMetres(rough)
	t.kg += g.mass()
}

func (t *totals) row(s *sheet) {
	s.row("", word(""), word("Total"), count(t.parts), word(""), word(""), word(""),
		Cell{}, Cell{}, Cell{}, Cell{}, Cell{}, Cell{}, Cell{},
		figure(t.exact, 2), figure(t.sold, 2), s.amount(t.cubic, "m³", 5, 3), s.weight(t.kg))
}

func (t *totals) tallied() float64 {
	var order []int
	for n := range t.feet {
		order = append(order, n)
	}
	sort.Ints(order)
	return tallied(t.feet, order)
}

func cutNotes(s *sheet, p *form.Piece, t totals) {
	a := p.Design.Allowance
	s.note("Length runs along the grain. Finished sizes are those of the smallest square-ended blank; the angled cuts are in the saw settings. " +
		"Grain: where it runs in the finished piece.")
	s.note("Signs: what is pencilled on the outer face, the grain level as in the picture: arrows to the top and the front of the piece.")
	s.note(fmt.Sprintf("Rough = finished + %s on the length, %s on the width, %s on the thickness.",
		s.style.FormatUnit(a.Length), s.style.FormatUnit(a.Width), s.style.FormatUnit(a.Thickness)))
	s.note(fmt.Sprintf("Board feet: exact at the rough thickness; charged at the thickness under Sold as, in quarters of an inch, 4/4 at least, which holds the board rough, and finished with both faces clean. "+
		"Rounded to whole feet of surface measure, as a yard tallies, all of it comes to %s bd ft. "+
		"Nothing is added for defects, cracked ends or offcuts: without a board plan, charged feet come to %s bd ft where the boards are picked by hand, "+
		"and to %s to %s where they are bought unseen.",
		trimmed(t.tallied(), 2), trimmed(pickedShare*t.sold, 1), trimmed(unseenLeast*t.sold, 1), trimmed(unseenMost*t.sold, 1)))
	resawnNote(s, p)
	soldNotes(s, p)
	boughtNotes(s, p)
}

// boughtNotes tell what goes into the piece besides its boards: screws, and the plugs that close their holes.
func boughtNotes(s *sheet, p *form.Piece) {
	screws, kinds := map[part.Screw]int{}, []part.Screw(nil)
	plugs := map[measure.Length]int{}
	for _, q := range p.Parts {
		for _, b := range q.Bores {
			if b.Purpose == "clearance" {
				if screws[b.Screw]++; screws[b.Screw] == 1 {
					kinds = append(kinds, b.Screw)
				}
			}
			if b.Plug > 0 {
				plugs[b.Plug]++
			}
		}
	}
	for _, c := range kinds {
		s.note(fmt.Sprintf("Wood screws besides: %d of %s, bored for as in Boring.", screws[c], s.screw(c)))
	}
	for _, d := range slices.Sorted(maps.Keys(plugs)) {
		s.note(fmt.Sprintf("Plugs besides: %d of %s, cut across the grain with a plug cutter from offcuts of the board that they close.", plugs[d], bits(s.style).FormatUnit(d)))
	}
}
