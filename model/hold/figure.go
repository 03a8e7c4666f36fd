package hold

import (
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/timber"
)

// Figure is one thing that was reckoned: its value, what it may be, by which formula and from where.
type Figure struct {
	ID, What string
	Value    float64
	Limit    float64 // 0 = there is none; the figure is for the reader's own judgement
	Least    bool    // the limit is the least that the figure should be, not the most
	Unit     string  // "mm", "N", "MPa", "lb"
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
const noise = 1e-6

// Over tells whether the figure is beyond its limit: more than the most, or less than the least.
func (f Figure) Over() bool {
	if f.Least {
		return f.Limit > 0 && f.Value < f.Limit-noise
	}
	return f.Limit > 0 && f.Value > f.Limit+noise
}

// reckoning is one look over a piece. Seat, top, span and depth are those of what is stepped or sat
// on, one after the other.
type reckoning struct {
	p     *form.Piece
	d     form.Design
	load  float64 // N
	air   seasons
	seat  form.Seat
	top   *part.Part
	span  float64 // between the sides, under the top, mm
	mid   float64 // X of its middle
	depth float64 // of the sides across their grain at the top's upper face, mm
	wide  float64 // of the top across its grain, with what overhangs, mm
	out   []Figure

	weight weighing
}

const gravity = 9.80665 // N/kg, standard

// Figures reckons everything that can be said of a piece, in the order in which papers show it. A
// piece that is stopped, or whose timber is not in the table, has fewer.
func Figures(p *form.Piece) []Figure {
	d := p.Design
	if p.Stopped() {
		return nil
	}
	r := &reckoning{p: p, d: d, load: float64(d.Use.Load) * gravity, air: seasonsOf(d)}
	if !form.OnSides(p.Form) {
		r.walled()
	}
	seats := form.Seats(p)
	if len(seats) > 0 {
		r.weight = weigh(p)
	}
	for _, s := range seats {
		r.seat, r.top = s, p.Part(s.ID)
		r.onSides()
	}
	r.shortGrain()
	r.joinery()
	r.blanks()
	return r.out
}

// onSides reckons what people sit and stand on. Steps rack as their taller half does.
func (r *reckoning) onSides() {
	r.span, r.mid = r.between()
	r.depth = r.seat.Depth.MM()
	r.wide = r.depth + 2*r.d.Corners.OverhangEdges.MM()
	if r.span <= 0 {
		return
	}
	from := len(r.out)
	defer func() { r.together(from) }()
	r.bending()
	r.push()
	if r.seat.Height == r.d.Size.Height {
		r.racking()
		r.rackFront()
	}
	r.tips(r.top, "ends", r.seat.Height.MM(), r.seat.EndInside.MM(), r.endLever(), r.d.Corners.Overhang, "splay.ends", "corners.overhang", r.seat.Path)
	r.tips(r.top, "front and back edges", r.seat.Height.MM(), r.seat.EdgeInside.MM(), r.p.Overall.DepthFloor.MM()/2, r.d.Corners.OverhangEdges, "splay.edges", "corners.overhang-edges", r.seat.Path)
	r.stands()
	r.crossings()
	if r.seat.Height == r.d.Size.Height {
		r.duty()
	}
	r.movement()
}

// the names what is stepped or sat on.
func (r *reckoning) the() string { return r.nameOf(r.seat.ID) }

// walled reckons trays, chests and rings.
func (r *reckoning) walled() {
	if lid := r.p.Part("lid"); lid != nil {
		o := r.p.Overall
		sizes := []string{"splay.front", "splay.ends", "lid.overhang", "size.height"}
		r.tips(lid, "ends", o.Height.MM(), (o.WidthTop-o.WidthFloor).MM()/2, o.WidthFloor.MM()/2, r.d.Lid.Overhang, sizes...)
		r.tips(lid, "front and back edges", o.Height.MM(), (o.DepthTop-o.DepthFloor).MM()/2, o.DepthFloor.MM()/2, r.d.Lid.Overhang, sizes...)
	}
	r.walls()
	r.bottomMoves()
	r.lidMoves()
}

// between is the clear width between the sides where they meet the top's lower face, and the X of its middle.
func (r *reckoning) between() (span, mid float64) {
	var ends [2]float64
	for i, id := range r.seat.Sides {
		side := r.p.Part(id)
		if side == nil {
			return 0, 0
		}
		// A point of the side's face that looks here at the height of the top's lower face, by its frame.
		axis, origin := side.Place.Mat3().Col(2), side.Place.Col(3).Vec3()
		down := side.Place.Mat3().Col(0)
		z := r.seat.Height.MM() - r.d.Boards.Top.Thickness.MM()
		if axis[0] < 0 == (i == 0) { // the outer face looks away
			origin = origin.Sub(axis.Mul(r.d.Boards.Side.Thickness.MM()))
		}
		ends[i] = origin[0] + down[0]*(z-origin[2])/down[2]
	}
	return ends[1] - ends[0], (ends[0] + ends[1]) / 2
}

// beam is a board of the design as a beam, when its timber is known.
func (r *reckoning) beam(name string, width, height float64) (Beam, timber.Species, bool) {
	s, ok := r.d.Timbers.Find(name)
	return Beam{Width: width, Height: height, MOE: s.MOE, MOR: s.MOR}, s, ok && s.MOE > 0 && s.MOR > 0
}

func (r *reckoning) add(f Figure) {
	if strings.HasPrefix(f.Source, movementSource) {
		f.Caution = CautionMoves
	}
	f.Sizes = r.d.Used(f.Sizes...)
	// What two joints or two halves have alike is told once; beyond its limit only where the same sizes would change it, since
	// each is offered what clears it.
	if n := slices.IndexFunc(r.out, f.same); n >= 0 && (!f.Over() || slices.Equal(r.out[n].Sizes, f.Sizes)) {
		r.out[n].Parts, r.out[n].Sizes = join(r.out[n].Parts, f.Parts), join(r.out[n].Sizes, f.Sizes)
		return
	}
	r.out = append(r.out, f)
}
