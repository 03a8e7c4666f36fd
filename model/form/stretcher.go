package form

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// rail is a stretcher with its planes: it runs along X and its section is square to it.
type rail struct {
	index      int
	d          Stretcher
	path       string
	board      *board
	end        [2]solid.Plane // where it meets the sides
	low, high  float64        // Z
	near, far  float64        // Y, front and back
	deep       float64        // of its housings
	crossWise  mgl64.Vec3     // its y axis
	middleLine mgl64.Vec3     // a point of the line through the middle of its section
}

func (b *builder) newRail(i int) *rail {
	s := b.stand
	d := s.d.Stretchers[i]
	r := &rail{index: i, d: d, path: fmt.Sprintf("stretchers.%d", i)}
	high, deepZ, wideY := s.height-s.top-d.BelowTop.MM(), d.Width.MM(), d.Thickness.MM()
	if d.Set == Flat {
		deepZ, wideY = wideY, deepZ
	}
	r.high, r.low = high, high-deepZ
	r.near, r.far = d.Across.MM()-wideY/2, d.Across.MM()+wideY/2
	r.middleLine = mgl64.Vec3{0, d.Across.MM(), (r.high + r.low) / 2}
	if d.Joint == Housing {
		r.deep = d.Depth.MM()
	}
	for _, i := range []side{left, right} {
		r.end[i] = flip(s.inner[i])
		r.end[i].D += r.deep
	}
	r.board = b.railBoard(r)
	return r
}

// railBoard begins the stretcher's part: outer face to the front, or up when it lies flat.
func (b *builder) railBoard(r *rail) *board {
	p := &part.Part{ID: fmt.Sprintf("stretcher-%d", r.index+1), Name: "Stretcher", Timber: r.d.Timber}
	if len(b.stand.d.Stretchers) > 1 {
		p.Name = fmt.Sprintf("Stretcher %d", r.index+1)
	}
	origin, y, z := mgl64.Vec3{0, r.near, r.middleLine[2]}, worldZ, worldY.Mul(-1)
	low, high := edge{id: "lower-edge"}, edge{id: "upper-edge"}
	low.plane, high.plane = solid.Plane{N: worldZ.Mul(-1), D: -r.low}, solid.Plane{N: worldZ, D: r.high}
	if r.d.Set == Flat {
		origin, y, z = mgl64.Vec3{0, r.middleLine[1], r.high}, worldY, worldZ
		low, high = edge{id: "front-edge"}, edge{id: "back-edge"}
		low.plane, high.plane = solid.Plane{N: worldY.Mul(-1), D: -r.near}, solid.Plane{N: worldY, D: r.far}
	}
	low.kind, high.kind = part.Rip, part.Rip
	r.crossWise = y
	board := newBoard(p, part.Frame(origin, worldX, y, z), r.d.Thickness.MM(),
		low,
		edge{"right-end", part.Crosscut, r.end[right], p.ID + "/left-end"},
		high,
		edge{"left-end", part.Crosscut, r.end[left], p.ID + "/right-end"},
	)
	board.sizes = []string{r.path + ".width", r.path + ".below-top", "size.height"}
	return board
}

// refuse reports a stretcher that has no place between the sides.
func (b *builder) refuseRail(i int) bool {
	s, d := b.stand, b.stand.d.Stretchers[i]
	path := fmt.Sprintf("stretchers.%d", i)
	before := len(b.piece.Findings)
	if !(d.Width > 0) || !(d.Thickness > 0) {
		b.find(stop("size-not-above-nothing", fmt.Sprintf("Stretcher %d needs a width and a thickness.", i+1),
			math.Min(d.Width.MM(), d.Thickness.MM()), 0, "mm", path+".width", path+".thickness"))
		return true
	}
	deep := d.Width
	if d.Set == Flat {
		deep = d.Thickness
	}
	room := measure.Length(s.height - s.top)
	if d.BelowTop < 0 {
		b.find(stop("stretcher-in-the-top", fmt.Sprintf("Stretcher %d would stand %s into the top.", i+1, b.show(-d.BelowTop)),
			d.BelowTop.MM(), 0, "mm", path+".below-top"))
	} else if d.BelowTop+deep > room {
		b.find(stop("stretcher-below-floor",
			fmt.Sprintf("Stretcher %d would reach %s below the floor; keep it at most %s below the top.", i+1,
				b.show(d.BelowTop+deep-room), b.show(max(0, room-deep))),
			(d.BelowTop + deep).MM(), room.MM(), "mm", path+".below-top", path+".width", "size.height"))
	}
	if d.Joint == Housing && (d.Depth <= 0 || d.Depth.MM() >= s.side) {
		b.find(stop("housing-through", fmt.Sprintf("The housings of stretcher %d must be shallower than the sides are thick.", i+1),
			d.Depth.MM(), s.side, "mm", path+".depth", "boards.side.thickness"))
	}
	return len(b.piece.Findings) > before
}

// joinRail lets the stretcher into the sides and notes the two joints.
func (b *builder) joinRail(r *rail) {
	for k := range r.board.around {
		r.board.shape.Outline = append(r.board.shape.Outline, r.board.wall(r.board.around[k]))
	}
	for _, i := range []side{left, right} {
		wall := b.boards[1+i]
		if r.deep > 0 {
			wall.shape.Pockets = append(wall.shape.Pockets, b.railPocket(r, i, wall))
		}
		b.piece.Joints = append(b.piece.Joints, b.railJoint(r, i))
		if r.d.Screws != nil {
			b.screw(r.screwing(b.stand, i, wall))
		}
	}
}

// railPocket is the housing of a stretcher in a side's inner face. Its four walls stand in the
// planes of the stretcher.
func (b *builder) railPocket(r *rail, i side, wall *board) solid.Pocket {
	planes := []solid.Plane{
		{N: worldY, D: r.near}, // into the hollow: the wood is outside
		{N: worldZ, D: r.low},
		{N: worldY.Mul(-1), D: -r.far},
		{N: worldZ.Mul(-1), D: -r.high},
	}
	if i == left { // y of the left side runs to the front
		planes[0], planes[2] = planes[2], planes[0]
	}
	p := solid.Pocket{Tag: fmt.Sprintf("housing %d", r.index+1), Depth: r.deep}
	wall.sizesOf[p.Tag] = []string{r.path + ".across", r.path + ".below-top", r.path + ".width", r.path + ".depth"}
	for _, q := range planes {
		p.Walls = append(p.Walls, solid.Wall{Tag: p.Tag, Plane: wall.local(q)})
	}
	return p
}

func (b *builder) railJoint(r *rail, i side) joint.Joint {
	s := b.stand
	outer := worldY.Mul(-1) // on edge, the front face meets the side squarely
	if r.d.Set == Flat {
		outer = worldZ
	}
	into := measure.Length(r.deep / math.Cos(s.ends))
	return joint.Joint{
		ID: i.id() + "/" + r.board.part.ID, Kind: r.d.Joint,
		TailBoard: i.id(), PinBoard: r.board.part.ID,
		Dihedral:    joint.Dihedral(s.outer[i].N, outer),
		PinBaseline: joint.Faces{Outer: into, Inner: into},
		Width:       r.d.Width, Depth: measure.Length(r.deep),
		Slides: worldX.Mul(-i.sign()), Corner: r.crossWise,
	}
}
