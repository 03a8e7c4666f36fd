package stock

import "math"

// Plan says which part comes from where.
type Plan struct {
	Layouts []Layout
	Glued   []GlueUp
	Misfits []Misfit // parts no board can yield, even alone
	Left    []Left   // parts that found no room beside the others
	Cost    float64  // of the boards taken: price, or area in mm²
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

// Cut is one cut in the order of sawing.
type Cut struct {
	Kind     Kind    // Crosscut, Rip or Resaw
	At       float64 // where the blade's near side runs: x of a crosscut, y of a rip
	From, To float64 // the piece's extent along the cut
	KeepNear bool    // the piece before the cut is used; the kerf falls beyond it
	KeepFar  bool    // the piece after the cut is used
}

// Cuts lists the layout's cuts in order, each piece cut apart before the pieces of it.
func (l Layout) Cuts(kerf float64) []Cut {
	var cuts []Cut
	l.Each(func(p *Piece, _ int) {
		for i := 1; i < len(p.Pieces); i++ {
			c := Cut{Kind: p.Kind, KeepNear: p.Pieces[i-1].Kind != Waste, KeepFar: p.Pieces[i].Kind != Waste}
			if p.Kind == Crosscut {
				c.At, c.From, c.To = p.Pieces[i-1].X2, p.Y1, p.Y2
				if !c.KeepNear {
					c.At = p.Pieces[i].X1 - kerf
				}
			} else if p.Kind == Rip {
				c.At, c.From, c.To = p.Pieces[i-1].Y2, p.X1, p.X2
				if !c.KeepNear {
					c.At = p.Pieces[i].Y1 - kerf
				}
			}
			cuts = append(cuts, c)
		}
	})
	return cuts
}

// Balance is where the wood of the boards taken goes, in mm² of face.
type Balance struct{ Boards, Parts, Offcuts, Waste float64 }

// Balance adds the plan up. Waste is what is neither part nor offcut kept: kerf, trims, places to avoid, scraps.
func (p Plan) Balance(t Task) Balance {
	var b Balance
	for _, l := range p.Layouts {
		b.Boards += t.Boards[l.Board].Area()
		l.Each(func(q *Piece, _ int) {
			switch q.Kind {
			case Part:
				b.Parts += q.Area()
			case Offcut:
				b.Offcuts += q.Area()
			}
		})
	}
	b.Waste = b.Boards - b.Parts - b.Offcuts
	return b
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
