package table

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/yield"
)

// BoardPlanIDs are the ids of the tables of a board plan, in order.
var BoardPlanIDs = []string{"board-plan", "board-plan-parts", "board-plan-cuts"}

// BoardPlan is a board plan in words: how each board is used, what comes out of where, and the cuts in
// order with the side that is waste.
func BoardPlan(r yield.Result, style measure.Style) []Table {
	return []Table{planSummary(r, style), planParts(r, style), planCuts(r, style)}
}

// planSummary has a row a board that is cut, and one for what has no place.
func planSummary(r yield.Result, style measure.Style) Table {
	s := newSheet(BoardPlanIDs[0], "Board plan", style)
	s.words("Board", "Timber")
	s.lengths("along the board's edge", "Length")
	s.lengths("along the board's end, square to its edge", "Width")
	s.lengths("square to the face", "Thick")
	s.numbers("%", "Parts", "Offcuts", "Waste")
	s.words("Note")
	for i, l := range r.Plan.Layouts {
		b := r.Task.Boards[l.Board]
		area := balanceOf(l, b)
		s.row("", boardCell(r, i), word(timberOn(r, l.Board)), s.length(mm(b.Length)), s.length(mm(b.Width)), s.length(mm(b.Thickness)),
			figure(100*area.Parts/area.Boards, 1), figure(100*area.Offcuts/area.Boards, 1), figure(100*area.Waste/area.Boards, 1), word(b.Looks()))
	}
	forSeveral(s, r)
	for _, text := range WithoutPlace(r, style) {
		s.note(text)
	}
	for _, text := range offTheBoard(r) {
		s.note(text)
	}
	if n := r.Aside; n > 0 {
		s.note(fmt.Sprintf("Boards with a price: %d of %d. The plan goes by wood, not by prices, as long as others have none.", n, len(r.Task.Boards)))
	}
	s.note(proofText(s, r))
	flattening(s, r)
	if len(s.Rows) > 0 {
		s.note("Parts are laid out in their rough size; trims, saw cuts and places to avoid outside offcuts count as waste. Checked by a verifier that shares nothing with the planner.")
	}
	return s.done()
}

// forSeveral says how many pieces are made together.
func forSeveral(s *sheet, r yield.Result) {
	if r.Pieces > 1 {
		s.note(fmt.Sprintf("For %d pieces that are made together.", r.Pieces))
	}
}

func mm(x float64) measure.Length { return measure.Length(x) }

// BoardName is what a board that is cut is called; of several alike that are, the number of each.
func BoardName(r yield.Result, layout int) string {
	at := r.Plan.Layouts[layout].Board
	nth, cut := 0, 0
	for i, l := range r.Plan.Layouts {
		if l.Board != at {
			continue
		}
		cut++
		if i <= layout {
			nth++
		}
	}
	return NameOfNth(r.Task.Boards[at], nth, cut)
}

// NameOfNth names one of so many boards that are alike, counted from 1.
func NameOfNth(b stock.Board, nth, of int) string {
	if of > 1 {
		return fmt.Sprintf("%s (%d)", b.Name, nth)
	}
	return b.Name
}

// OwnName tells whether what a board that is cut is called are a person's own words.
func OwnName(r yield.Result, layout int) bool {
	return r.Task.Boards[r.Plan.Layouts[layout].Board].Sold.Words == ""
}

func boardCell(r yield.Result, layout int) Cell {
	return Cell{Text: BoardName(r, layout), Own: OwnName(r, layout)}
}

func balanceOf(l stock.Layout, b stock.Board) stock.Balance {
	return stock.Plan{Layouts: []stock.Layout{{Board: 0, Root: l.Root}}}.Balance(stock.Task{Boards: []stock.Board{b}})
}

func (s *sheet) roughOf(d stock.Demand) string {
	return s.style.Format(mm(d.Length)) + " × " + s.style.Format(mm(d.Width)) + " × " + s.style.FormatUnit(mm(d.Thickness))
}

// misfitTexts says of every part without a place by how much it misses and what would fit; of parts alike once.
func misfitTexts(s *sheet, r yield.Result) []string {
	var out []string
	for _, m := range r.Plan.Misfits {
		for _, text := range misfitText(s, r, m) {
			out = appendNew(out, text)
		}
	}
	return out
}

// misfitText says by how much a part misses and what would fit.
func misfitText(s *sheet, r yield.Result, m stock.Misfit) []string {
	d := r.Task.Demands[m.Demand]
	what := d.Name
	switch {
	case m.Run > 0 && m.Board < 0:
		return noBoardForRun(s, r, r.Task.Runs[m.Run-1])
	case m.Run > 0:
		what = runName(r.Task.Runs[m.Run-1])
	case d.Count > 1:
		what = fmt.Sprintf("Each of %s", d.Name)
	}
	if m.Board < 0 {
		return noBoardFor(s, r, what, d.Timber, d.Thickness, []stock.Demand{d}, r.Parts[m.Demand])
	}
	return append([]string{nearestText(s, r.Task.Boards[m.Board], r.Task.Saw, what, m)}, glueUpWants(s, r, d, m)...)
}

// nearestText says what the board that comes nearest yields of what is wanted.
func nearestText(s *sheet, b stock.Board, saw stock.Saw, what string, m stock.Misfit) string {
	long, wide := s.style.Format(mm(m.Wanted.X)), s.style.FormatUnit(mm(m.Wanted.Y))
	switch none := 0.5; { // mm; less is nothing to a saw
	case m.Length < none && m.Width < none:
		return noPlaceText(s, b, saw, what, m)
	case m.Length < none:
		return fmt.Sprintf("%s wants %s × %s and fits no board. %+s comes nearest: it yields %s of width at that length, and is too narrow at any length, by %s.",
			what, long, wide, b.Name, s.style.FormatUnit(mm(m.Width)), s.miss(m.Wanted.Y-m.Width))
	case m.Width < none:
		return fmt.Sprintf("%s wants %s × %s and fits no board. %+s comes nearest: it yields %s of length at that width, and is too short at any width, by %s.",
			what, long, wide, b.Name, s.style.FormatUnit(mm(m.Length)), s.miss(m.Wanted.X-m.Length))
	}
	return fmt.Sprintf("%s wants %s × %s and fits no board. %+s comes nearest: it yields %s of length at that width, %s too little, or %s of width at that length, %s too little.",
		what, long, wide, b.Name, s.style.FormatUnit(mm(m.Length)), s.miss(m.Wanted.X-m.Length), s.style.FormatUnit(mm(m.Width)), s.miss(m.Wanted.Y-m.Width))
}

// miss says by how much something is too small, which may be less than the papers print.
func (s *sheet) miss(by float64) string {
	least := 0.01 // mm
	if s.style.Unit == measure.Imperial {
		least = measure.Inch.MM() / 1000
	}
	if by < least {
		return fmt.Sprintf("less than %s", s.exactly(least))
	}
	return s.exactly(by)
}

// noPlaceText says why the board that comes nearest yields nothing of the length or the width that is wanted.
func noPlaceText(s *sheet, b stock.Board, saw stock.Saw, what string, m stock.Misfit) string {
	long, wide := s.style.Format(mm(m.Wanted.X)), s.style.FormatUnit(mm(m.Wanted.Y))
	left := stock.Point{X: max(0, b.Length-2*saw.TrimEnds), Y: max(0, b.Width-2*saw.TrimEdges)}
	switch {
	case b.Length < m.Wanted.X && b.Width < m.Wanted.Y:
		return fmt.Sprintf("%s wants %s × %s and fits no board. %+s comes nearest and is both too short and too narrow, %s × %s in all.",
			what, long, wide, b.Name, s.style.Format(mm(b.Length)), s.style.FormatUnit(mm(b.Width)))
	case left.X < m.Wanted.X || left.Y < m.Wanted.Y:
		return fmt.Sprintf("%s wants %s × %s and fits no board. %+s comes nearest, of which its trims leave %s × %s.",
			what, long, wide, b.Name, s.style.Format(mm(left.X)), s.style.FormatUnit(mm(left.Y)))
	}
	return fmt.Sprintf("%s wants %s × %s and fits no board. %+s comes nearest, and what is to be avoided leaves no place on it as long as that nor one as wide.",
		what, long, wide, b.Name)
}

// glueUpWants says what boards would do for a part that may be glued up, and of one that may not, and is only too wide, in how
// many strips it could be.
func glueUpWants(s *sheet, r yield.Result, d stock.Demand, m stock.Misfit) []string {
	least := 0.0
	for n := 2; ; n++ {
		w, may := r.Task.Saw.Glue.Strip(d.Width, n)
		if !may {
			break
		}
		if least = w; !d.Glue && m.Run == 0 && w <= m.Width {
			return []string{fmt.Sprintf("Glued up of %d strips of %s × %s it could be (plan.glue-up).", n, s.style.Format(mm(d.Length)), s.style.FormatUnit(mm(w)))}
		}
	}
	if least == 0 || !d.Glue {
		return nil
	}
	return []string{fmt.Sprintf("Glued up of strips it wants boards that yield %s × %s or more.", s.style.Format(mm(d.Length)), s.style.FormatUnit(mm(least)))}
}

// offTheBoard names places to avoid that lie beside their board: a slip of the pen, or of the unit.
func offTheBoard(r yield.Result) (out []string) {
	for _, b := range r.Task.Boards {
		for i, a := range b.Avoid {
			if at := a.On(b).Rect; at.X2 <= 0 || at.Y2 <= 0 || at.X1 >= b.Length || at.Y1 >= b.Width {
				out = append(out, fmt.Sprintf("%+s: place to avoid %d of %d lies off the board and changes nothing.", b.Name, i+1, len(b.Avoid)))
			}
		}
	}
	return out
}

// proofText states the bound that the plan was held against.
func proofText(s *sheet, r yield.Result) string {
	p := r.Plan
	switch {
	case r.Short() && (p.Short || len(p.Misfits) > 0):
		return "Proven: these boards cannot yield all the parts."
	case r.Short():
		return "Not every part was placed; that it cannot be done is not proven."
	case p.Proven && priced(r.Task):
		return fmt.Sprintf("Proven: no choice of these boards costs less than %.2f.", p.Cost)
	case p.Proven:
		return "Proven: no choice of these boards uses less wood."
	}
	return fmt.Sprintf("At most %.1f %% above the least that is possible with these boards.", 100*p.Gap())
}

func priced(t stock.Task) bool {
	for _, b := range t.Boards {
		if b.Price > 0 {
			return true
		}
	}
	return false
}

// planParts has a row a part: where it lies on its board, from the left end and the near edge.
func planParts(r yield.Result, style measure.Style) Table {
	s := newSheet(BoardPlanIDs[1], "What comes out of which board", style)
	s.words("Board", "Part")
	s.lengths("along the board's near edge", "From left end")
	s.lengths("square to the board's near edge", "From near edge")
	s.lengths("of the rough board, along the face", "Length", "Width")
	s.words("Grain")
	names, ids := PartNames(r), PartIDs(r)
	for i, l := range r.Plan.Layouts {
		leaves := r.LeafNames(i)
		l.Each(func(q *stock.Piece, _ int) {
			if q.Kind != stock.Part && q.Kind != stock.Offcut && q.Kind != stock.Spare {
				return
			}
			what, grain := "offcut to keep", ""
			if q.Kind == stock.Spare {
				what = spareBoard
			}
			if q.Kind == stock.Part {
				what, grain = names[q], "along the board"
				if q.Turned {
					grain = "across the board"
				}
				if leaf := leaves[q]; leaf != "" {
					grain = fmt.Sprintf("%s, half %s", grain, leaf)
				}
			}
			at := q.Rect
			if q.Kind != stock.Part {
				at = r.Task.Boards[l.Board].Extent(at)
			}
			s.row(ids[q], boardCell(r, i), word(what), s.length(mm(at.X1)), s.length(mm(at.Y1)), s.length(mm(at.Length())), s.length(mm(at.Width())), word(grain))
		})
	}
	return s.done()
}

// spareBoard is what a board is called that is bought for what its grade does not promise of the others.
const spareBoard = "spare board, kept whole"

// PartNames gives every piece of the plan that is a part its mark and name: of equal parts one after the
// other, and of a glue-up's strips which it is.
func PartNames(r yield.Result) map[*stock.Piece]string {
	out := map[*stock.Piece]string{}
	strips := map[int]int{}
	which := r.Which()
	eachPart(r, func(q *stock.Piece) {
		out[q] = r.Task.Demands[q.Demand].Name
		if p := which[q]; p != nil {
			out[q] = partMark(p)
		}
		if q.Strip > 0 {
			strips[q.Strip]++
			out[q] = fmt.Sprintf("%s, strip %d of %d", out[q], strips[q.Strip], r.Plan.Glued[q.Strip-1].Strips)
		}
	})
	return out
}

// PartIDs gives every piece of the plan that is a part, or a strip of one, the part's id.
func PartIDs(r yield.Result) map[*stock.Piece]string {
	out := map[*stock.Piece]string{}
	which := r.Which()
	eachPart(r, func(q *stock.Piece) {
		out[q] = r.Task.Demands[q.Demand].ID
		if p := which[q]; p != nil {
			out[q] = p.ID
		}
	})
	return out
}

func eachPart(r yield.Result, visit func(q *stock.Piece)) {
	for _, l := range r.Plan.Layouts {
		l.Each(func(q *stock.Piece, _ int) {
			if q.Kind == stock.Part {
				visit(q)
			}
		})
	}
}

// planCuts lists the cuts of every board in order.
func planCuts(r yield.Result, style measure.Style) Table {
	s := newSheet(BoardPlanIDs[2], "Cuts in order", style)
	s.words("Board")
	s.numbers("", "Cut")
	s.words("Which")
	s.lengths("along the face, square to the cut", "At")
	s.lengths("along the cut", "Begins", "Stops")
	s.words("Waste side")
	for i, l := range r.Plan.Layouts {
		opened := r.Opened(i)
		for n, c := range l.Cuts(r.Task) {
			which := kindOf(c.Kind)
			if leaf, ok := yield.LeafOf(opened, c); ok {
				c = leaf.Cut(c, r.Task.Saw.Kerf)
				which = fmt.Sprintf("%s, half %s", which, yield.LeafName(c.Leaf-1))
			}
			s.row("", boardCell(r, i), count(n+1), word(which), s.length(mm(c.At)), s.length(mm(c.From)), s.length(mm(c.To)), word(wasteOf(c)))
		}
	}
	if len(s.Rows) > 0 {
		if t := r.Task.Saw; t.TrimEnds > 0 || t.TrimEdges > 0 {
			s.note(fmt.Sprintf("Before these cuts %s come off, as far as a cut of the list does not take them.", trims(s, t)))
		}
		s.note(fmt.Sprintf("Crosscuts are measured from the left end, rips from the near edge, to the near side of the blade, which is %s wide and cuts beyond that line. Each cut goes right through the piece that it stands in.",
			s.exactly(r.Task.Saw.Kerf)))
		if outlined(r) {
			s.note("Where a board has an outline of its own, rips are measured from the line that the outline was measured from: snap it in chalk. A waney edge does not run along a fence: the first rip is sawn with the board on a carrier that does, or with a saw along a rail.")
		}
		if hasThin(r) {
			s.note("What is narrower than the blade is planed off, or the blade runs partly beside the wood.")
		}
		keptTogether(s, r)
		s.note("Look for nails, screws and grit before every cut in wood that had another life; a metal detector costs less than a blade. Loose knots are knocked or cut out first; what is cupped or twisted must not rock on the saw's table; keep narrow and short pieces on a sled.")
	}
	return s.done()
}

// outlined tells whether a board that is cut is no rectangle.
func outlined(r yield.Result) bool {
	return slices.ContainsFunc(r.Plan.Layouts, func(l stock.Layout) bool { return len(r.Task.Boards[l.Board].Outline) > 0 })
}

// hasThin tells whether a cut takes off less than the blade is wide.
func hasThin(r yield.Result) bool {
	return slices.ContainsFunc(r.Plan.Layouts, func(l stock.Layout) bool {
		return slices.ContainsFunc(l.Cuts(r.Task), func(c stock.Cut) bool { return c.Thin })
	})
}

// trims says what comes off ends and edges before anything else.
func trims(s *sheet, t stock.Saw) string {
	var words []string
	if t.TrimEnds > 0 {
		words = append(words, fmt.Sprintf("%s at both ends", s.style.FormatUnit(mm(t.TrimEnds))))
	}
	if t.TrimEdges > 0 {
		words = append(words, fmt.Sprintf("%s at both edges", s.style.FormatUnit(mm(t.TrimEdges))))
	}
	return and(words)
}

func kindOf(k stock.Kind) string {
	switch k {
	case stock.Crosscut:
		return "across"
	case stock.Rip:
		return "along"
	}
	return "through the thickness"
}

// wasteOf says on which side of a cut the waste falls: where the kerf may lie.
func wasteOf(c stock.Cut) string {
	var sides []string
	switch {
	case c.Thin && c.KeepFar:
		return "before the cut, narrower than the blade"
	case c.Thin:
		return "beyond the cut, narrower than the blade"
	}
	if !c.KeepNear {
		sides = append(sides, "before the cut")
	}
	if !c.KeepFar {
		sides = append(sides, "beyond the cut")
	}
	if len(sides) == 0 {
		return "only the kerf"
	}
	return strings.Join(sides, " and ")
}
