package table

import (
	"fmt"
	"math"
	"strings"

	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/timber"
	"splaywright/model/yield"
)

// Shopping is what to buy: of each kind of board how many, what they cost and how they are tallied, and how much more
// wood that is than the parts need.
func Shopping(r yield.Result, style measure.Style) Table {
	s := newSheet("wood-to-buy", "Wood to buy", style)
	s.words("Board", "Timber")
	s.lengths("along the board's edge", "Length")
	s.lengths("along the board's end, square to its edge", "Width")
	s.lengths("square to the face", "Thick")
	s.numbers("", "Qty", "Price each", "Price")
	s.numbers("bd ft", "Exact", "Charged")
	b := basketOf(r)
	for _, l := range b.lines {
		d := r.Task.Boards[l.board]
		s.row("", Cell{Text: d.Name, Own: d.Sold.Words == ""}, word(timberOn(r, l.board)), s.length(mm(d.Length)), s.length(mm(d.Width)), s.length(mm(d.Thickness)),
			count(l.number), figure(d.Price, 2), figure(l.price, 2), figure(l.exact, 2), figure(l.charged, 2))
	}
	forSeveral(s, r)
	if n := len(r.OnHand); n > 0 && len(r.Parts) > 0 {
		s.note(fmt.Sprintf("Bought is wood for the parts that the boards on hand do not yield; parts that come out of these, as their board plan says: %d.", n))
	}
	if len(s.Rows) > 0 {
		row := make([]Cell, len(s.Columns))
		row[0], row[7], row[8], row[9] = word("Total"), figure(b.price, 2), figure(b.exact, 2), figure(b.charged, 2)
		s.row("", row...)
		b.notes(s, r)
		s.note("Prices are in the money of the design's own prices: of its boards to buy, its yard, its timbers or its cost.")
	}
	for _, text := range WithoutPlace(r, style) {
		s.note(text)
	}
	if n := len(r.OnHand); n > 0 && len(r.Parts) == 0 {
		s.note("The boards on hand yield every part, as their board plan says: there is nothing to buy.")
		return s.Said(s.style)
	}
	s.note(proofText(s, r))
	if len(s.Rows) > 0 {
		s.note("Charged is the hardwood yard's tally of each board: its length in whole feet, its face rounded to whole square feet, half a foot up and down by turns, times its thickness in the next quarters of an inch, 4/4 at least. Boards under 4 ft or 3 in, which no grade has, are charged by their exact face, and softwood by its nominal size, to two decimals. Ask how your yard does.")
		s.note("Boards in a yard are not alike: look at each for knots, splits and twist before it is paid for, and take one more where the figure of the wood matters.")
	}
	return s.Said(s.style)
}

// timberOn is what a board is of: its own timber, or that of the parts that come out of it where it was not told.
func timberOn(r yield.Result, board int) string {
	if own := r.Task.Boards[board].Timber; own != "" {
		return own
	}
	var names []string
	for _, l := range r.Plan.Layouts {
		if l.Board != board {
			continue
		}
		l.Each(func(q *stock.Piece, _ int) {
			if q.Kind == stock.Part && len(r.Parts[q.Demand]) > 0 {
				names = appendNew(names, r.Parts[q.Demand][0].Timber)
			}
		})
	}
	return strings.Join(names, ", ")
}

// basket is what is taken home.
type basket struct {
	lines                 []basketLine
	price, exact, charged float64
	net                   float64 // board feet of the parts, finished, at the thickness that is charged
	area, parts           float64 // mm² of face, bought and of the parts in their rough sizes
}

type basketLine struct {
	board, number         int
	price, exact, charged float64
}

func basketOf(r yield.Result) basket {
	var b basket
	taken := make([]int, len(r.Task.Boards))
	for _, l := range r.Plan.Layouts {
		taken[l.Board]++
		b.net += netOf(r, l)
	}
	var lot timber.Tally
	for i, n := range taken {
		if n == 0 {
			continue
		}
		d := r.Task.Boards[i]
		l := basketLine{board: i, number: n, price: float64(n) * d.Price, exact: float64(n) * yield.Exact(d)}
		for range n {
			l.charged += yield.Charged(d, &lot)
		}
		if d.Sold.PerBoardFoot > 0 {
			l.price = d.Sold.PerBoardFoot * l.charged
		}
		b.lines = append(b.lines, l)
		b.price, b.exact, b.charged, b.area = b.price+l.price, b.exact+l.exact, b.charged+l.charged, b.area+float64(n)*d.Area()
	}
	b.parts = r.Plan.Balance(r.Task).Parts
	return b
}

// netOf is what the finished parts of a board come to in board feet, at the thickness that the board is charged by. A
// strip counts for its share of the part that it is glued up to, and a part that lies over another in a board that is
// resawn for its share of the thickness.
func netOf(r yield.Result, l stock.Layout) (feet float64) {
	d := r.Task.Boards[l.Board]
	thick := mm(d.Sold.Thickness)
	if thick == 0 {
		thick = measure.Length(timber.Quarters(mm(d.Thickness))) * measure.Inch / 4
	}
	l.Shares(func(q *stock.Piece, share float64) {
		if q.Kind != stock.Part || len(r.Parts[q.Demand]) == 0 {
			return
		}
		blank := r.Parts[q.Demand][0].Blank
		if q.Strip > 0 {
			share /= float64(r.Plan.Glued[q.Strip-1].Strips)
		}
		feet += share * timber.BoardFeet(blank.Length, blank.Width, max(thick, measure.Inch))
	})
	return feet
}

// notes say what to ask for and what is bought beyond the parts. Shop habit is 20 to 30 % on rough hardwood (common
// practice); https://help.woodworkerssource.com/support/solutions/articles/9000119343-why-do-i-need-a-waste-factor-when-buying-by-the-board-foot-
// takes half as much again to twice as much, and a buyer who chose board by board came to 22 %:
// https://www.popularwoodworking.com/editors-blog/buying-hardwood-lumber-%E2%80%93-two-approaches/
func (b basket) notes(s *sheet, r yield.Result) {
	if b.net > 0 && !r.Short() {
		s.note(fmt.Sprintf("Waste allowance: the finished parts are %s bd ft at the thickness that is charged; what is bought is charged as %s, %.2f times as much. "+
			"Shops reckon with 1.2 to 1.3 on rough hardwood that they choose themselves, and with 1.5 to 2 on boards unseen (common practice).",
			trimmed(b.net, 2), trimmed(b.charged, 2), b.charged/b.net))
	}
	for _, l := range r.Plan.Lots(r.Task) {
		if g, ok := timber.FindGrade(l.Grade); ok {
			s.note(fmt.Sprintf("%+s promises %.1f %% of the surface in clear pieces: parts of it want %.2f times their own surface at least.", g.Name, 100*g.Share(), 1/g.Share()))
		}
	}
	if c := r.Plan.Cost; math.Abs(c-b.price) > 0.005 {
		s.note(fmt.Sprintf("Half feet go up and down by turns, so that these boards together come to %.2f; each by itself would come to %.2f.", b.price, c))
	}
	s.note(fmt.Sprintf("Of the wood bought %.0f %% is waste, offcuts, trims and saw cuts; the parts in their rough size take %.0f %%.", 100*(1-b.parts/b.area), 100*b.parts/b.area))
	if asks := b.asks(s, r); len(asks) > 0 {
		s.note(fmt.Sprintf("What to ask for, and what it measures with both faces clean: %s. Parts are laid out in what is left then.", strings.Join(asks, "; ")))
	}
}

// asks lists what wood is asked for by, once each.
func (b basket) asks(s *sheet, r yield.Result) (out []string) {
	for _, l := range b.lines {
		d := r.Task.Boards[l.board]
		switch {
		case d.Sold.Words == "":
		case d.Sold.Softwood:
			out = appendNew(out, fmt.Sprintf("%s %s, dressed and dry: %s × %s", d.Timber, d.Sold.Words, measured(mm(d.Sold.Surfaced)), measured(mm(d.Width))))
		default:
			words := d.Sold.Words
			if g, ok := timber.FindGrade(d.Sold.Grade); ok {
				words += " " + g.Mark
			}
			out = appendNew(out, fmt.Sprintf("%s %s, rough: %s", d.Timber, words, measured(mm(d.Sold.Surfaced))))
		}
	}
	return out
}
