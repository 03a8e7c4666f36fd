package hold

import (
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
	Unit     string  // "mm", "N", "MPa"
	Formula  string
	Source   string
	Parts    []string
	Sizes    []string // paths in the design file that would change it
	Advice   string   // what would do where it is over its limit
	Level    part.Level
}

// Over tells whether the figure is beyond its limit.
func (f Figure) Over() bool { return f.Limit > 0 && f.Value > f.Limit }

// reckoning is one look over a stool.
type reckoning struct {
	p     *form.Piece
	d     form.Design
	load  float64 // N
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
	r := &reckoning{p: p, d: d, load: float64(d.Use.Load) * gravity, top: p.Part("top")}
	if p.Stopped() || p.Form != "stool" || r.top == nil {
		return nil
	}
	r.span = r.between()
	r.depth = d.Size.Depth.MM()
	if r.span <= 0 {
		return nil
	}
	r.bending()
	r.push()
	r.movement()
	return r.out
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

func (r *reckoning) add(f Figure) { r.out = append(r.out, f) }
