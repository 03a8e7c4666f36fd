package yield

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/timber"
)

// Common lengths and widths of a yard that names none (common practice: hardwood comes in random widths, and its lengths
// in whole feet; softwood in the widths of PS 20, assets/sold.csv).
var (
	commonLengths = []measure.Length{4 * foot, 6 * foot, 8 * foot, 10 * foot, 12 * foot}
	commonWidths  = []measure.Length{4 * measure.Inch, 6 * measure.Inch, 8 * measure.Inch, 10 * measure.Inch, 12 * measure.Inch}
)

const (
	foot = 12 * measure.Inch
	// cubicFoot is a board foot in cubic metres, by its definition: 144 cubic inches.
	cubicFoot = 144 * 25.4 * 25.4 * 25.4 / 1e9
)

// Offered lists every board that a piece could be bought as: those that were listed one by one, and of what the yard
// sells by the foot each length and width, in the thickness that the parts need by the ladder of sizes sold. Where the
// yard is not told at all but a price for each timber is, that is common lengths and widths.
func Offered(p *form.Piece) ([]stock.Board, error) {
	d := p.Design
	boards := slices.Clone(d.ToBuy)
	rows := d.Yard
	if len(boards)+len(rows) == 0 {
		for _, name := range timbersOf(p) {
			if priceOf(d, name) == 0 {
				return nil, nil
			}
			rows = append(rows, form.Yard{Timber: name})
		}
	}
	for _, y := range rows {
		some, err := sells(p, y)
		if err != nil {
			return nil, err
		}
		boards = append(boards, some...)
	}
	return boards, nil
}

func timbersOf(p *form.Piece) []string {
	var out []string
	for _, q := range p.Parts {
		if name := spelled(p, q.Timber); !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

// priceOf is what a board foot of a timber costs, by its own price or that of the design's wood; 0 = not told.
func priceOf(d form.Design, name string) float64 {
	perM3, perFoot := d.Timbers.Price(name)
	if perM3+perFoot == 0 {
		perM3, perFoot = d.Cost.WoodPerM3, d.Cost.WoodPerBoardFoot
	}
	return cmp.Or(perFoot, perM3*cubicFoot)
}

// sells lists the boards of one row of a yard.
func sells(p *form.Piece, y form.Yard) ([]stock.Board, error) {
	name := spelled(p, cmp.Or(y.Timber, p.Design.Timber))
	price := y.PerBoardFoot
	if price+y.PerFoot == 0 {
		price = priceOf(p.Design, name)
	}
	if price+y.PerFoot == 0 {
		return nil, fmt.Errorf("%s: the yard's wood has no price; give price-per-board-foot or price-per-foot in its row, or a price of the timber", cmp.Or(name, "wood"))
	}
	steps, widths, err := sizesSold(p, y, name)
	if err != nil {
		return nil, err
	}
	lengths := y.Lengths
	if len(lengths) == 0 {
		lengths = commonLengths
	}
	grade, graded := timber.FindGrade(y.Grade)
	var out []stock.Board
	for _, t := range steps {
		for _, w := range widths {
			for _, l := range lengths {
				switch {
				case !graded:
					out = append(out, soldBoard(name, t, w, l, price, y.PerFoot))
				case t.Ladder == timber.HardwoodThickness && grade.WideEnough(w.Rough) && grade.LongEnough(l):
					out = append(out, inGrade(soldBoard(name, t, w, l, price, y.PerFoot), grade))
				}
			}
		}
	}
	return out, nil
}

// inGrade is a board with what its grade promises.
func inGrade(b stock.Board, g timber.Grade) stock.Board {
	b.Sold.Grade = g.Name
	b.Sold.Clear = float64(g.Promised(measure.Length(b.Length), measure.Length(b.Sold.Width))) * timber.CuttingUnit
	b.Name = b.Sold.Words + " " + g.Mark + strings.TrimPrefix(b.Name, b.Sold.Words)
	return b
}

// sizesSold are the thicknesses and widths that a row comes in.
func sizesSold(p *form.Piece, y form.Yard, name string) (steps, widths []timber.Sold, err error) {
	soft := false
	if s, ok := p.Design.Timbers.Find(name); ok {
		soft = s.Wood == timber.Softwood
	}
	var asked timber.AskedFor
	if y.Sold != "" {
		if asked, err = timber.Asked(y.Sold); err != nil {
			return nil, nil, err
		}
		steps, soft = []timber.Sold{asked.Thickness}, asked.Thickness.Ladder == timber.SoftwoodThickness
	} else {
		steps = needed(p, name, soft)
	}
	switch {
	case asked.Width != nil:
		widths = []timber.Sold{*asked.Width}
	case soft && len(y.Widths) == 0:
		widths = timber.Steps(timber.SoftwoodWidth)
	case soft:
		widths, err = dressed(y.Widths)
	default:
		for _, w := range orCommon(y.Widths, commonWidths) {
			widths = append(widths, timber.Sold{Rough: w, Surfaced: w})
		}
	}
	return steps, widths, err
}

func orCommon(told, common []measure.Length) []measure.Length {
	if len(told) > 0 {
		return told
	}
	return common
}

// dressed finds nominal widths of softwood on their ladder.
func dressed(nominal []measure.Length) ([]timber.Sold, error) {
	var out []timber.Sold
	for _, w := range nominal {
		i := slices.IndexFunc(timber.Steps(timber.SoftwoodWidth), func(s timber.Sold) bool { return abs(s.Rough-w) < 0.01 })
		if i < 0 {
			return nil, fmt.Errorf("softwood is not sold in a nominal width of %g in", w.Inches())
		}
		out = append(out, timber.Steps(timber.SoftwoodWidth)[i])
	}
	return out, nil
}

func abs(l measure.Length) measure.Length { return max(l, -l) }

// needed are the steps of the ladder that yield the parts of a timber, and what they are resawn from, each the thinnest
// that does.
func needed(p *form.Piece, name string, soft bool) []timber.Sold {
	ladder := timber.HardwoodThickness
	if soft {
		ladder = timber.SoftwoodThickness
	}
	var out []timber.Sold
	add := func(finished, rough measure.Length) {
		if s, ok := timber.Bought(ladder, finished, rough); ok && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	resawn := map[string]bool{}
	task := Task(p)
	for _, r := range task.Runs {
		if own, one := r.Timber(task); r.Kind != stock.Resawn || !one || own != name {
			continue
		}
		rough := measure.Length(r.Thickness(task))
		add(rough-p.Design.Allowance.Thickness, rough) // its two faces are planed by half of what each board has
		for _, id := range r.IDs {
			resawn[id] = true
		}
	}
	for _, q := range p.Parts {
		if spelled(p, q.Timber) == name && !resawn[q.ID] {
			finished, rough := q.Lying()
			add(finished.Thickness, rough.Thickness)
		}
	}
	slices.SortFunc(out, func(a, b timber.Sold) int { return cmp.Compare(a.Rough, b.Rough) })
	return out
}

// soldBoard is one board as a yard sells it. What it costs goes by what is charged for it alone.
func soldBoard(name string, t, w timber.Sold, l measure.Length, perBoardFoot, perFoot float64) stock.Board {
	soft := t.Ladder == timber.SoftwoodThickness
	b := stock.Board{Timber: name, Length: l.MM(), Width: w.Surfaced.MM(), Thickness: t.Rough.MM(),
		Sold: stock.AsSold{Words: t.Nominal, Thickness: t.Rough.MM(), Width: w.Rough.MM(), Surfaced: t.Surfaced.MM(), Softwood: soft, PerBoardFoot: perBoardFoot}}
	if soft {
		b.Thickness, b.Sold.Words = t.Surfaced.MM(), t.Nominal+" × "+w.Nominal
	}
	b.Name = b.Sold.Words + ", " + inYardWords(l)
	if !soft {
		b.Name = b.Sold.Words + " × " + inYardWords(w.Rough) + ", " + inYardWords(l)
	}
	b.Price = perFoot * l.Inches() / 12
	if perFoot > 0 {
		b.Sold.PerBoardFoot = 0
	} else {
		b.Price = perBoardFoot * Charged(b, new(timber.Tally))
	}
	return b
}

// inYardWords says a size in whole feet where it is some, else in inches.
func inYardWords(l measure.Length) string {
	if feet := l.Inches() / 12; feet >= 1 && abs(l-measure.Length(int(feet+0.01))*foot) < 1 {
		return fmt.Sprintf("%d ft", int(feet+0.01))
	}
	return strings.ReplaceAll(measure.Style{Unit: measure.Imperial, Step: measure.Inch / 16}.FormatUnit(l), "\"", " in")
}

// Charged is what a yard charges for a board, board feet: hardwood by the tally of the lot, softwood by its nominal
// sizes to two decimals.
func Charged(b stock.Board, lot *timber.Tally) float64 {
	mm := func(x float64) measure.Length { return measure.Length(x) }
	s := b.Sold
	switch {
	case s.Words == "":
		return lot.Board(mm(b.Length), mm(b.Width), mm(b.Thickness))
	case s.Softwood:
		return timber.SoftwoodFeet(mm(b.Length), mm(s.Width), mm(s.Thickness))
	}
	return lot.Board(mm(b.Length), mm(s.Width), mm(s.Thickness))
}

// Exact is the board feet of a board by what it is sold as, not rounded.
func Exact(b stock.Board) float64 {
	mm := func(x float64) measure.Length { return measure.Length(x) }
	if b.Sold.Words == "" {
		return timber.BoardFeet(mm(b.Length), mm(b.Width), mm(b.Thickness))
	}
	return timber.BoardFeet(mm(b.Length), mm(b.Sold.Width), mm(b.Sold.Thickness))
}
