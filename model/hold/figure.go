package hold

import (
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/timber"
)

// Figure is one thing that was reckoned: its value, what it may be, by which formula and from where.
type Figure struct {
	ID, What string
	Value    float64
	Limit    float64 // 0 = there is none; the figure is for the reader's own judgement
	Least    bool    // the limit is the least that the figure should be, not the most
	Unit     string  // "mm", "N", "MPa"
	Formula  string
	Source   string
	Parts    []string
	Sizes    []string // paths in the design file that would change it
	Advice   string   // what would do where it is over its limit
	Level    part.Level
	Told     bool   // a finding of package check says it already
	Caution  string // what closes the finding; "" = Caution
}

// noise, mm, N or MPa, is what rounding in binary may put a figure beyond its limit.
const noise = 1e-9

// Over tells whether the figure is beyond its limit: more than the most, or less than the least.
func (f Figure) Over() bool {
	if f.Least {
		return f.Limit > 0 && f.Value < f.Limit-noise
	}
	return f.Limit > 0 && f.Value > f.Limit+noise
}

// reckoning is one look over a piece. Top, span and depth are a stool's.
type reckoning struct {
	p     *form.Piece
	d     form.Design
	load  float64 // N
	air   seasons
	top   *part.Part
	span  float64 // between the sides, under the top, mm
	depth float64 // of the top across the grain, mm
	out   []Figure
}

const gravity = 9.80665 // N/kg, standard

// Figures reckons everything that can be said of a piece, in the order in which papers show it. A
// piece that is stopped, or whose timber is not in the table, has fewer.
func Figures(p *form.Piece) []Figure {
	d := p.Design
	if p.Stopped() {
		return nil
	}
	r := &reckoning{p: p, d: d, load: float64(d.Use.Load) * gravity, air: seasonsOf(d.Use), top: p.Part("top")}
	switch {
	case p.Form == "stool" && r.top != nil:
		r.stool()
	case p.Form != "stool":
		r.walled()
	}
	r.shortGrain()
	r.blanks()
	return r.out
}

// stool reckons what people sit and stand on.
func (r *reckoning) stool() {
	r.span, r.depth = r.between(), r.d.Size.Depth.MM()
	if r.span <= 0 {
		return
	}
	r.bending()
	r.push()
	r.racking()
	r.tipping(r.top)
	r.movement()
}

// walled reckons trays, chests and rings.
func (r *reckoning) walled() {
	if lid := r.p.Part("lid"); lid != nil {
		r.tipping(lid)
	}
	r.walls()
	r.bottomMoves()
	r.lidMoves()
}

// between is the clear width between the sides where they meet the top's lower face.
func (r *reckoning) between() float64 {
	lo, hi := 0., 0.
	for _, id := range []string{"side-left", "side-right"} {
		side := r.p.Part(id)
		if side == nil {
			return 0
		}
		// A point of the side's inner face at the height of the top's lower face, by its frame.
		axis, origin := side.Place.Mat3().Col(2), side.Place.Col(3).Vec3()
		down := side.Place.Mat3().Col(0)
		z := r.d.Size.Height.MM() - r.d.Boards.Top.Thickness.MM()
		inner := origin.Sub(axis.Mul(r.d.Boards.Side.Thickness.MM()))
		x := inner[0] + down[0]*(z-inner[2])/down[2]
		lo, hi = min(lo, x), max(hi, x)
	}
	return hi - lo
}

// beam is a board of the design as a beam, when its timber is known.
func beam(name string, width, height measure.Length) (Beam, timber.Species, bool) {
	s, ok := timber.Find(name)
	return Beam{Width: width.MM(), Height: height.MM(), MOE: s.MOE, MOR: s.MOR}, s, ok && s.MOE > 0 && s.MOR > 0
}

func (r *reckoning) add(f Figure) {
	if strings.HasPrefix(f.Source, movementSource) {
		f.Caution = CautionMoves
	}
	r.out = append(r.out, f)
}
