package form

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
	"splaywright/model/timber"
)

// What battens that leave a size out get: about 2 in wide and as thick as the lid, near each end of
// it, clear of the walls by a few millimetres. Common practice.
const (
	usualBatten  measure.Length = 50
	usualInset   measure.Length = 3
	usualBattens                = 2
)

// lidDefaults fills in what a lid and its battens leave out.
func lidDefaults(d *Design) {
	if d.Lid == nil {
		return
	}
	l := *d.Lid
	fill(&l.Thickness, d.Boards.Side.Thickness)
	fill(&l.Timber, d.Timber)
	if l.Battens != nil {
		n := *l.Battens
		fill(&n.Width, usualBatten)
		fill(&n.Thickness, l.Thickness)
		fill(&n.Inset, usualInset)
		fill(&n.Count, usualBattens)
		fill(&n.Timber, l.Timber)
		l.Battens = &n
	}
	d.Lid = &l
}

// refuseLid reports sizes that no lid can have.
func refuseLid(b *assembly) {
	l := b.d.Lid
	if l == nil {
		return
	}
	b.aboveNothing("thickness of the lid", "lid.thickness", l.Thickness)
	refuseSlopingSeat(b, "lid")
	if !(l.Overhang >= 0) {
		b.find(stop("overhang-below-nothing", "An overhang reaches outward; it cannot be less than nothing.", l.Overhang.MM(), 0, "mm", "lid.overhang"))
	}
	if n := l.Battens; n != nil {
		b.aboveNothing("width of the battens", "lid.battens.width", n.Width)
		b.aboveNothing("thickness of the battens", "lid.battens.thickness", n.Thickness)
		if n.Count < 1 || n.Count > 50 {
			b.find(stop("batten-count", "A lid has 1 to 50 battens, or none at all.", float64(n.Count), 50, "", "lid.battens.count"))
		}
		if !(n.Inset >= 0) {
			b.find(stop("batten-in-the-wall", "The battens go between the walls; their inset cannot be less than nothing.", n.Inset.MM(), 0, "mm", "lid.battens.inset"))
		}
	}
}

// lid closes the walls above: a loose board with plumb edges, and its battens.
func (e *enclosure) lid() {
	l := e.d.Lid
	if l == nil {
		return
	}
	planes := make([]solid.Plane, len(e.walls))
	for i, w := range e.walls {
		planes[i] = solid.Plane{N: w.out, D: w.at(e.rim).Dot(w.out) + l.Overhang.MM()}
	}
	h := e.d.Size.Height.MM()
	p := e.panel(&part.Part{ID: "lid", Name: "Lid", Timber: l.Timber}, h, true, l.Thickness.MM(), planes)
	p.board.sizes = []string{"lid.thickness", "lid.overhang", "size.width", "size.depth"}
	for i := range p.board.around {
		p.board.shape.Outline = append(p.board.shape.Outline, p.board.wall(p.board.around[i]))
	}
	p.pairEnds()
	e.boards = append(e.boards, p.board)
	o := &e.piece.Overall
	o.WidthTop, o.DepthTop = o.WidthTop+2*l.Overhang, o.DepthTop+2*l.Overhang
	if l.Battens != nil {
		e.battens(p.board)
	}
}

// clear is how far the room between the walls reaches in the direction of a wall, between two heights.
func (e *enclosure) clear(w *wall, low, high float64) float64 {
	at := func(z float64) float64 {
		return meet(w.inner, solid.Plane{N: worldZ, D: z}, solid.Plane{N: w.right}).Dot(w.out)
	}
	return min(at(low), at(high))
}

// battens hang across the lid's grain between the walls, evenly spread from end to end.
func (e *enclosure) battens(lid *board) {
	n := e.d.Lid.Battens
	low := e.rim - n.Thickness.MM()
	var room [4]float64 // front, right, back, left
	for i, w := range e.walls {
		room[i] = e.clear(w, low, e.rim) - n.Inset.MM()
	}
	long, across, wide := room[0]+room[2], room[1]+room[3], n.Width.MM()
	if low <= e.foot || long <= 0 || float64(n.Count)*wide > across {
		e.find(stop("battens-without-room", fmt.Sprintf("%s of %s have no room under the lid: it is %s by %s, and %s high.",
			plural(n.Count, "batten", "battens"), e.show(n.Width), e.show(measure.Length(math.Max(0, across))), e.show(measure.Length(math.Max(0, long))),
			e.show(measure.Length(e.rim-e.foot))), float64(n.Count)*wide, across, "mm", "lid.battens.width", "lid.battens.count", "lid.battens.inset", "lid.battens.thickness"))
		return
	}
	for i := range n.Count {
		x := (room[1] - room[3]) / 2
		if n.Count > 1 {
			x = -room[3] + wide/2 + (across-wide)*float64(i)/float64(n.Count-1)
		}
		e.batten(lid, i, x, -room[0], room[2])
	}
}

// lidMoves is how far the lid moves across its grain at a place so far from the middle of a batten, from
// the driest to the dampest air: the screw in the middle stays. 0 where its timber's movement is not known.
func (e *enclosure) lidMoves(place float64) float64 {
	m, ok := e.d.Timbers.FindMovement(e.d.Lid.Timber)
	if !ok || math.Abs(place) < solid.SamePoint {
		return 0
	}
	dry, damp := timber.EquilibriumMoisture(roomWarmth, float64(e.d.Use.Dry)), timber.EquilibriumMoisture(roomWarmth, float64(e.d.Use.Damp))
	return math.Abs(m.Change(math.Abs(place), timber.AcrossFlatsawn, dry, damp))
}

// batten makes one, its outer face down, and screws it to the lid.
func (e *enclosure) batten(lid *board, i int, x, front, back float64) {
	n := e.d.Lid.Battens
	half, low := n.Width.MM()/2, e.rim-n.Thickness.MM()
	p := &part.Part{ID: fmt.Sprintf("batten-%d", i+1), Name: fmt.Sprintf("Batten %d", i+1), Timber: n.Timber}
	b := newBoard(p, part.Frame(mgl64.Vec3{x, (front + back) / 2, low}, worldY, worldX, worldZ.Mul(-1)), n.Thickness.MM(),
		edge{"left-edge", part.Rip, solid.Plane{N: worldX.Mul(-1), D: half - x}, p.ID + "/right-edge"},
		edge{"back-end", part.Crosscut, solid.Plane{N: worldY, D: back}, p.ID + "/front-end"},
		edge{"right-edge", part.Rip, solid.Plane{N: worldX, D: half + x}, p.ID + "/left-edge"},
		edge{"front-end", part.Crosscut, solid.Plane{N: worldY.Mul(-1), D: -front}, p.ID + "/back-end"},
	)
	b.sizes = []string{"lid.battens.width", "lid.battens.inset", "size.depth"}
	for k := range b.around {
		b.shape.Outline = append(b.shape.Outline, b.wall(b.around[k]))
	}
	e.boards = append(e.boards, b)
	e.piece.Joints = append(e.piece.Joints, joint.Joint{
		ID: "lid/" + p.ID, Kind: ScrewedOn, TailBoard: "lid", PinBoard: p.ID, Dihedral: measure.Degree * 180,
		Width: measure.Length(back - front), Slides: worldZ.Mul(-1), Corner: worldY,
	})
	if n.Screws == nil {
		return
	}
	e.screw(screwing{
		screws: *n.Screws, path: "lid.battens.screws", first: b, second: lid,
		enter: solid.Plane{N: worldZ.Mul(-1), D: -low}, meeting: solid.Plane{N: worldZ.Mul(-1), D: -e.rim}, axis: worldZ,
		middle: mgl64.Vec3{x, (front + back) / 2, low}, row: worldY, length: back - front,
		entersAt: "outer", endsAt: "inner", moves: e.lidMoves,
	})
}
