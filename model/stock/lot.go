package stock

import "slices"

// Lot is the boards taken of one timber, grade and thickness, with what their grade promises and what the plan wants of it.
type Lot struct {
	Timber, Grade, Words string
	Boards               []int   // which of the plan's layouts
	Spare                int     // how many of them are kept whole
	Clear                float64 // mm² that the grade promises in clear pieces
	Parts                float64 // mm² that the parts take as they are laid out
}

// Lots are the plan's lots of graded boards, in the order of the boards.
func (p Plan) Lots(t Task) []Lot {
	var out []Lot
	for i, l := range p.Layouts {
		s := t.Boards[l.Board].Sold
		if s.Grade == "" {
			continue
		}
		own := Lot{Timber: t.Boards[l.Board].Timber, Grade: s.Grade, Words: s.Words}
		n := slices.IndexFunc(out, own.same)
		if n < 0 {
			n, out = len(out), append(out, own)
		}
		lot := &out[n]
		lot.Boards = append(lot.Boards, i)
		lot.Clear += s.Clear
		if l.Root.Kind == Spare {
			lot.Spare++
		}
		l.Shares(func(q *Piece, share float64) {
			if q.Kind == Part {
				lot.Parts += share * q.Area()
			}
		})
	}
	return out
}

func (l Lot) same(o Lot) bool {
	return l.Timber == o.Timber && l.Grade == o.Grade && l.Words == o.Words
}

// Has tells whether a board is one of the lot.
func (l Lot) Has(b Board) bool {
	return b.Sold.Grade != "" && l.same(Lot{Timber: b.Timber, Grade: b.Sold.Grade, Words: b.Sold.Words})
}

// Lacks is how many mm² of clear wood the parts want beyond what is promised; nothing where it is enough.
func (l Lot) Lacks() float64 {
	if d := l.Parts - l.Clear; d > ClearSlack {
		return d
	}
	return 0
}

// ClearSlack is how far promise and need may miss for the arithmetic's sake, mm².
const ClearSlack = 1e-3
