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

// What a bottom that leaves a size out gets.
const (
	// usualUp, mm, of wood under the groove of a bottom, and as much as the groove is deep: enough not to split off. Common practice.
	usualUp = 10
	// grooveShare of the thinnest wall's thickness that a groove or rabbet is deep: a half at most
	// leaves the other half to hold. Common practice: a third to a half.
	grooveShare = 0.4
	// usualClearance, mm, between a bottom's edge and the floor of its groove where its timber's movement
	// is not known, and the least. Common practice.
	usualClearance = 0.5
	// fullGroove is how much of the groove's depth the clearance takes at most: the rest holds the bottom.
	fullGroove = 0.7
	// roomWarmth, °C, of the air that design.Use speaks of.
	roomWarmth = 20
	// webAtTails, mm, that a groove ends short of the baselines of tails and pins, so that no socket
	// opens into it: the width of the narrowest chisel. Common practice.
	webAtTails = 3
)

// bottomDefaults fills in what a bottom leaves out.
func bottomDefaults(d *Design) {
	if d.Bottom == nil {
		return
	}
	u := *d.Bottom
	thinnest := thinnestWall(*d)
	fill(&u.Thickness, thinnest)
	fill(&u.Timber, d.Timber)
	fill(&u.Joint, InGroove)
	if u.Joint != ScrewedOn && u.Depth == nil {
		depth := thinnest * grooveShare
		u.Depth = &depth
	}
	if u.Joint == InGroove {
		fill(&u.Up, max(usualUp, *u.Depth))
	}
	if u.Joint != ScrewedOn && u.Clearance == nil {
		clearance := roomToSwell(*d, u)
		u.Clearance = &clearance
	}
	d.Bottom = &u
}

// roomToSwell is the clearance that lets a flatsawn bottom, made in the driest air, grow in the dampest:
// half of its movement at either long edge. A groove too shallow for that is told by what is reckoned
// of the piece.
func roomToSwell(d Design, u Bottom) measure.Length {
	m, ok := d.Timbers.FindMovement(u.Timber)
	if !ok || u.Joint != InGroove {
		return usualClearance
	}
	across := acrossBottom(d, u)
	dry, damp := timber.EquilibriumMoisture(roomWarmth, float64(d.Use.Dry)), timber.EquilibriumMoisture(roomWarmth, float64(d.Use.Damp))
	grows := measure.Length(m.Change(across, timber.AcrossFlatsawn, dry, damp) / 2)
	return max(usualClearance, min(grows, *u.Depth*fullGroove))
}

// acrossBottom is how wide a bottom is across its grain, mm, with grooves that it fills: where it is widest, between walls
// that lean.
func acrossBottom(d Design, u Bottom) float64 {
	within := func(w *wall) float64 { // from the axis
		taken := d.Size.Height.MM()
		if l := d.Lid; l != nil {
			thick := l.Thickness
			fill(&thick, d.Boards.Side.Thickness)
			taken -= thick.MM()
		}
		if d.Size.TakenAt == AtFloor {
			taken = 0
		}
		low, sin, cos := u.Up.MM(), math.Sin(w.lean), math.Cos(w.lean)
		rises := max((low-taken)*sin/cos, (low+u.Thickness.MM()-taken)*sin/cos)
		return w.half + rises - (w.thickness-u.Depth.MM())/cos
	}
	var walls []*wall
	switch d.Form {
	case ringForm:
		n := min(max(d.Size.Staves, fewest), most) // whatever is typed
		stave := d
		stave.Size.Staves = 1 // they are alike
		r := within(staves(stave)[0])
		if n%2 == 0 {
			return 2 * r
		}
		return r + r/math.Cos(math.Pi/float64(n)) // the back one is a corner
	case chestForm:
		walls = fourWalls(d, -1)
	default:
		walls = fourWalls(d, 1)
	}
	return within(walls[0]) + within(walls[2]) // its grain runs from end to end
}

func thinnestWall(d Design) measure.Length {
	switch {
	case d.Form == ringForm:
		return d.Boards.Side.Thickness
	case d.Form == stoolForm, d.Form == Steps:
		return min(d.Boards.Top.Thickness, d.Boards.Side.Thickness)
	}
	return min(d.Boards.Front.Thickness, d.Boards.Back.Thickness, d.Boards.End.Thickness)
}

// refuseBottom reports words and sizes that no bottom can have.
func refuseBottom(b *assembly) {
	u := b.d.Bottom
	if u == nil {
		return
	}
	b.oneOf("bottom.joint", u.Joint, InGroove, InRabbet, ScrewedOn)
	b.aboveNothing("thickness of the bottom", "bottom.thickness", u.Thickness)
	if u.Joint == ScrewedOn {
		refuseSlopingSeat(b, "bottom")
		return
	}
	if u.Depth == nil || u.Clearance == nil {
		return // the joint is unknown and told
	}
	depth, thinnest := *u.Depth, thinnestWall(b.d)
	switch {
	case !(depth > 0) || depth >= thinnest:
		b.find(stop("groove-through", fmt.Sprintf("The groove for the bottom is %s deep; it must be shallower than the thinnest wall, %s.",
			b.show(depth), b.show(thinnest)), depth.MM(), thinnest.MM(), "mm", "bottom.depth", "boards.side.thickness"))
	case !(*u.Clearance >= 0) || *u.Clearance >= depth:
		b.find(stop("bottom-out-of-its-groove", fmt.Sprintf("A clearance of %s leaves nothing of the bottom in a groove %s deep.",
			b.show(*u.Clearance), b.show(depth)), u.Clearance.MM(), depth.MM(), "mm", "bottom.clearance", "bottom.depth"))
	}
	if u.Joint == InRabbet && u.Up != 0 {
		b.find(stop("rabbet-up", "A bottom in a rabbet lies on the floor; leave bottom.up out, or set it in a groove.", u.Up.MM(), 0, "mm", "bottom.up", "bottom.joint"))
	}
	if top := u.Up + u.Thickness; u.Joint == InGroove && (!(u.Up > 0) || top >= b.d.Size.Height) {
		b.find(stop("groove-out-of-the-wall", fmt.Sprintf("The groove for the bottom would run from %s to %s up the walls, out of the wood.", b.show(u.Up), b.show(top)),
			u.Up.MM(), b.d.Size.Height.MM(), "mm", "bottom.up", "bottom.thickness", "size.height"))
	}
}

// refuseSlopingSeat reports boards that lie on edges which are not level.
func refuseSlopingSeat(b *assembly, what string) {
	if b.d.Splay.EdgeCut == EdgeSquare {
		b.find(stop("seat-not-level", fmt.Sprintf("The %s lies on the walls' edges, which must be level: cut them level (splay.edge-cut: level), or leave that out.", what),
			0, 0, "", "splay.edge-cut", what))
	}
}

// panel is a board that lies across the walls, its cuts in the order of the walls as they are
// walked on its outer face.
type panel struct {
	board *board
	order []int // numbers of the walls, counter-clockwise as seen from outside
}

// edgeNames of a board over four walls; over more, edges go by their wall's number.
var edgeNames = map[string]string{"front": "front-edge", "back": "back-edge", "end-left": "left-end", "end-right": "right-end"}

// panel begins a board that lies level, its outer face up or down, between planes one a wall.
func (e *enclosure) panel(p *part.Part, z float64, up bool, thickness float64, planes []solid.Plane) panel {
	n := len(e.walls)
	first := 0
	for i, w := range e.walls { // the cut that looks along −y of the part frame comes first
		if towards := w.out.Dot(worldY); !up && towards > e.walls[first].out.Dot(worldY)+1e-9 || up && towards < e.walls[first].out.Dot(worldY)-1e-9 {
			first = i
		}
	}
	out := panel{}
	around := make([]edge, n)
	for i := range n {
		k := (first + i) % n
		if !up {
			k = (first - i + n) % n
		}
		out.order = append(out.order, k)
		name, named := edgeNames[e.walls[k].id]
		if !named {
			name = fmt.Sprintf("edge-%d", k+1)
		}
		kind := part.Rip
		if math.Abs(planes[k].N[0]) > math.Abs(planes[k].N[1])+1e-9 {
			kind = part.Crosscut
		}
		around[i] = edge{id: name, kind: kind, plane: planes[k]}
	}
	place := part.Frame(mgl64.Vec3{0, 0, z}, worldX, worldY, worldZ)
	if !up {
		place = part.Frame(mgl64.Vec3{0, 0, z}, worldX, worldY.Mul(-1), worldZ.Mul(-1))
	}
	out.board = newBoard(p, place, thickness, around...)
	return out
}

// bottom closes the walls below.
func (e *enclosure) bottom() {
	u := e.d.Bottom
	if u == nil {
		return
	}
	planes := make([]solid.Plane, len(e.walls))
	for i, w := range e.walls {
		planes[i] = w.outer
		if u.Joint != ScrewedOn {
			planes[i] = flip(w.inner)
			planes[i].D += (*u.Depth - *u.Clearance).MM()
		}
	}
	p := e.panel(&part.Part{ID: "bottom", Name: "Bottom", Timber: u.Timber}, u.Up.MM(), false, u.Thickness.MM(), planes)
	p.board.sizes = []string{"bottom.thickness", "bottom.depth", "bottom.clearance", "size.width", "size.depth"}
	e.boards = append(e.boards, p.board)
	p.pairEnds()
	if u.Joint == ScrewedOn {
		for i := range p.board.around {
			p.board.shape.Outline = append(p.board.shape.Outline, p.board.wall(p.board.around[i]))
		}
		e.screwBottom(p)
		return
	}
	e.notch(p)
	for i := range e.walls {
		e.groove(i)
	}
}

// pairEnds notes the two ends of a board over four walls as mirror images where they are.
func (p panel) pairEnds() {
	a := p.board.around
	for _, k := range [][2]int{{0, 2}, {1, 3}} {
		if len(a) != 4 {
			return
		}
		m, n := p.board.local(a[k[0]].plane).N, p.board.local(a[k[1]].plane).N
		axis := 1 - k[0]
		n[axis] = -n[axis]
		if m.Sub(n).Len() < 1e-9 {
			a[k[0]].pair, a[k[1]].pair = p.board.part.ID+"/"+a[k[1]].id, p.board.part.ID+"/"+a[k[0]].id
		}
	}
}

// notch walks round a bottom in grooves: at a corner whose grooves stop short it is notched.
func (e *enclosure) notch(p panel) {
	b := p.board
	for i, k := range p.order {
		b.shape.Outline = append(b.shape.Outline, b.wall(b.around[i]))
		next := p.order[(i+1)%len(p.order)]
		here, there := e.stopAt(k, next), e.stopAt(next, k)
		if here == nil && there == nil {
			continue
		}
		for _, stop := range []*solid.Plane{e.notchAt(k, next), e.notchAt(next, k)} {
			b.shape.Outline = append(b.shape.Outline, solid.Wall{Tag: "notch", Plane: b.local(*stop)})
		}
	}
}

// stopAt is where the groove in wall k ends towards its neighbour; nil = it runs out there.
func (e *enclosure) stopAt(k, neighbour int) *solid.Plane {
	if e.next(k) == neighbour {
		return e.walls[k].end[right].stop
	}
	return e.walls[k].end[left].stop
}

// notchAt is how far the bottom's tongue in wall k reaches towards its neighbour: up to where the
// groove stops, or to the neighbour's inner face, less the clearance.
func (e *enclosure) notchAt(k, neighbour int) *solid.Plane {
	stop := e.walls[neighbour].inner
	if s := e.stopAt(k, neighbour); s != nil {
		stop = *s
	}
	p := flip(stop)
	p.D -= e.d.Bottom.Clearance.MM()
	return e.notUndercut(p, e.walls[k])
}

// notUndercut stands the end of a tongue square to its wall where it would run out under the neighbour of a sharp
// corner: wider at its tip than at its root it would hold its wall as a tail does.
func (e *enclosure) notUndercut(end solid.Plane, w *wall) *solid.Plane {
	under := end.N.Dot(w.out)
	if under >= 0 {
		return &end
	}
	n := end.N.Sub(w.out.Mul(under)).Normalize()
	low := e.d.Bottom.Up.MM()
	square := solid.Plane{N: n, D: math.Inf(1)}
	for _, z := range []float64{low, low + e.d.Bottom.Thickness.MM()} {
		square.D = min(square.D, n.Dot(cornerAt(end, w.inner, z)))
	}
	return &square
}

// groove hollows a wall's inner face for the bottom; a rabbet is open below.
func (e *enclosure) groove(i int) {
	u, w, b := e.d.Bottom, e.walls[i], e.boards[i]
	low, high := solid.Plane{N: worldZ, D: u.Up.MM()}, solid.Plane{N: worldZ.Mul(-1), D: -(u.Up + u.Thickness).MM()}
	if u.Joint == InRabbet {
		low = w.lower
	}
	planes := []solid.Plane{low, w.end[right].cut, high, w.end[left].cut}
	for k, at := range map[side]int{right: 1, left: 3} {
		if stop := w.end[k].stop; stop != nil {
			planes[at] = *stop
		}
	}
	g := solid.Pocket{Tag: u.Joint, Depth: u.Depth.MM()}
	b.sizesOf[g.Tag] = []string{"bottom.up", "bottom.thickness", "bottom.depth"}
	for _, q := range planes {
		g.Walls = append(g.Walls, solid.Wall{Tag: g.Tag, Plane: b.local(q)})
	}
	b.shape.Pockets = append(b.shape.Pockets, g)
	middle := u.Up.MM() + u.Thickness.MM()/2
	e.piece.Joints = append(e.piece.Joints, joint.Joint{
		ID: w.id + "/bottom", Kind: u.Joint, TailBoard: w.id, PinBoard: "bottom",
		Dihedral: joint.Dihedral(w.outer.N, worldZ.Mul(-1)), Width: measure.Length(e.room(i, true, middle)),
		Depth: *u.Depth, Slides: w.out.Mul(-1), Corner: w.right,
	})
}

// screwBottom notes the joints of a bottom under the walls and bores its screws, up the slope of
// each wall through the middle of its thickness.
func (e *enclosure) screwBottom(p panel) {
	u := e.d.Bottom
	seat := solid.Plane{N: worldZ.Mul(-1), D: -e.foot}
	for i, w := range e.walls {
		e.piece.Joints = append(e.piece.Joints, joint.Joint{
			ID: "bottom/" + w.id, Kind: ScrewedOn, TailBoard: "bottom", PinBoard: w.id,
			Dihedral: joint.Dihedral(w.outer.N, worldZ.Mul(-1)), Width: measure.Length(e.room(i, false, e.foot)),
			Slides: worldZ, Corner: w.right,
		})
		if u.Screws == nil {
			continue
		}
		mid := solid.Plane{N: w.outer.N, D: w.outer.D - w.thickness/2}
		across := solid.Plane{N: w.right, D: w.right.Dot(e.boards[i].part.Place.Col(3).Vec3())}
		e.screw(screwing{
			screws: *u.Screws, path: "bottom.screws", first: p.board, second: e.boards[i],
			enter: solid.Plane{N: worldZ.Mul(-1)}, meeting: seat, axis: w.up,
			middle: meet(mid, across, seat), row: w.right, length: e.room(i, true, e.foot),
			entersAt: "outer", endsAt: "lower-edge",
		})
	}
}
