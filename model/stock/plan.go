package stock

import "math"

// Plan says which part comes from where.
type Plan struct {
	Layouts []Layout
	Glued   []GlueUp
	Misfits []Misfit // parts no board can yield, even alone
	Left    []Left   // parts that found no room beside the others
	Cost    float64  // of the boards taken: price, or wood as mm² of face of the thinnest
	Bound   float64  // no plan for the same parts costs less
	Proven  bool     // the bound meets the cost and every part is placed
	Short   bool     // proven that the boards on hand cannot yield all parts
	Tries   int      // layouts looked at
}

// Layout is one board and how it is cut.
type Layout struct {
	Board int // index into Task.Boards
	Root  *Piece
}

// Kind is what becomes of a piece of wood.
type Kind int

// What becomes of a piece.
const (
	Waste    Kind = iota
	Offcut        // large enough to keep
	Part          // a part in its rough size
	Crosscut      // cut across the grain into Pieces
	Rip           // cut along the grain into Pieces
	Resaw         // cut through its thickness into Pieces
	Spare         // a board kept whole, bought since the grade of the others promises no more clear wood
)

// Piece is a piece of a board: what it is, or the pieces it is cut into, in order, kerf between them. Each cut goes
// right through the piece.
type Piece struct {
	Rect
	Kind   Kind
	Pieces []*Piece
	Demand int  // of a Part
	Strip  int  // of a part that is a strip of a glue-up: which of Plan.Glued, counted from 1; else 0
	Run    int  // of a run and what is cut from it: which of Task.Runs, counted from 1; else 0
	Nth    int  // of a run's part: its place in the run's Parts
	Turned bool // the part's length lies across the grain
}

// GlueUp is a part made of equal strips.
type GlueUp struct {
	Demand int
	Strips int
	Width  float64 // of one strip as cut, its joints' allowance included
	// The strips' growth rings alternate: heart side up, heart side down.
}

// Misfit is a part that no board can yield, with what would fit.
type Misfit struct {
	Demand int     // the part, or a run's longest
	Run    int     // which run, counted from 1; else 0
	Board  int     // the board that comes nearest, or -1 when none serves its thickness and timber
	Length float64 // greatest length at the wanted width
	Width  float64 // greatest width at the wanted length
	Wanted Point   // X length, Y width
}

// Left is parts without room.
type Left struct{ Demand, Count int }

// Each visits every piece of the layout, a piece before what it is cut into; depth counts changes of direction.
func (l Layout) Each(visit func(p *Piece, depth int)) { each(l.Root, Waste, 0, visit) }

func each(p *Piece, came Kind, depth int, visit func(*Piece, int)) {
	if p == nil {
		return
	}
	if (p.Kind == Crosscut || p.Kind == Rip) && p.Kind != came {
		depth++
	}
	visit(p, depth)
	for _, q := range p.Pieces {
		each(q, p.Kind, depth, visit)
	}
}

// Balance is where the wood of the boards taken goes, in mm² of face. Of boards that lie over one another in one that is
// resawn, each has its share of the face.
type Balance struct{ Boards, Parts, Offcuts, Waste float64 }

// Balance adds the plan up. Waste is what is neither part nor offcut kept: kerf, trims, places to avoid, scraps.
func (p Plan) Balance(t Task) Balance {
	var b Balance
	for _, l := range p.Layouts {
		b.Boards += t.Boards[l.Board].Area()
		l.Shares(func(q *Piece, share float64) {
			switch q.Kind {
			case Part:
				b.Parts += share * q.Area()
			case Offcut, Spare:
				b.Offcuts += share * t.Boards[l.Board].Wood(q.Rect)
			}
		})
	}
	b.Waste = b.Boards - b.Parts - b.Offcuts
	return b
}

// Shares visits every piece of the layout with its share of the board's thickness: all of it, or half where two lie over
// one another.
func (l Layout) Shares(visit func(p *Piece, share float64)) { shares(l.Root, 1, visit) }

func shares(p *Piece, share float64, visit func(*Piece, float64)) {
	if p == nil {
		return
	}
	visit(p, share)
	if p.Kind == Resaw {
		share /= float64(max(1, len(p.Pieces)))
	}
	for _, q := range p.Pieces {
		shares(q, share, visit)
	}
}

// Gap is how far the cost may lie above the least, as a fraction of the bound; infinite when parts are left over.
func (p Plan) Gap() float64 {
	if len(p.Left) > 0 {
		return math.Inf(1)
	}
	if p.Proven || p.Bound <= 0 {
		return 0
	}
	return max(0, p.Cost/p.Bound-1)
}
