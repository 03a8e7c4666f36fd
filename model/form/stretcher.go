package form

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// rail is a stretcher or an apron with its planes: it runs along X and its section is the same all
// along.
type rail struct {
	d            Stretcher
	path         string
	board        *board
	end          [2]solid.Plane // where it meets the sides
	lower, upper solid.Plane    // level
	near, far    solid.Plane    // towards the front and the back
	deep         float64        // of its housings
	crossWise    mgl64.Vec3     // its y axis
	middleLine   mgl64.Vec3     // a point of the line through the middle of its section
	tenon        *tenon         // nil without
}

// hang ends a rail at the sides, or in its housings.
func (r *rail) hang(s *stand) {
	if r.d.Joint == Housing {
		r.deep = r.d.Depth.MM()
	}
	for _, i := range []side{left, right} {
		r.end[i] = flip(s.inner[i])
		r.end[i].D += r.deep
	}
	if r.d.Tenon != nil {
		r.cutTenon(s)
	}
}

func (b *builder) newRail(i int) *rail {
	s := b.stand
	d := s.d.Stretchers[i]
	r := &rail{d: d, path: fmt.Sprintf("stretchers.%d", i)}
	high, deepZ, wideY := s.height-s.top-d.BelowTop.MM(), d.Width.MM(), d.Thickness.MM()
	if d.Set == Flat {
		deepZ, wideY = wideY, deepZ
	}
	r.lower, r.upper = solid.Plane{N: worldZ.Mul(-1), D: deepZ - high}, solid.Plane{N: worldZ, D: high}
	r.near = solid.Plane{N: worldY.Mul(-1), D: wideY/2 - d.Across.MM()}
	r.far = solid.Plane{N: worldY, D: wideY/2 + d.Across.MM()}
	r.middleLine = mgl64.Vec3{s.middle(), d.Across.MM(), high - deepZ/2}
	r.hang(s)
	b.railBoard(r, i)
	return r
}

// railBoard begins the stretcher's part: outer face to the front, or up when it lies flat.
func (b *builder) railBoard(r *rail, i int) {
	p := &part.Part{ID: fmt.Sprintf("stretcher-%d", i+1), Name: "Stretcher", Timber: r.d.Timber}
	if len(b.stand.d.Stretchers) > 1 {
		p.Name = fmt.Sprintf("Stretcher %d", i+1)
	}
	origin, y, z := mgl64.Vec3{r.middleLine[0], -r.near.D, r.middleLine[2]}, worldZ, worldY.Mul(-1)
	low, high := edge{id: "lower-edge", plane: r.lower}, edge{id: "upper-edge", plane: r.upper}
	if r.d.Set == Flat {
		origin, y, z = mgl64.Vec3{r.middleLine[0], r.middleLine[1], r.upper.D}, worldY, worldZ
		low, high = edge{id: "front-edge", plane: r.near}, edge{id: "back-edge", plane: r.far}
	}
	low.kind, high.kind = part.Rip, part.Rip
	r.crossWise = y
	ends := [2]string{p.ID + "/right-end", p.ID + "/left-end"}
	if b.stand.lean[left] != b.stand.lean[right] { // no mirror images
		ends = [2]string{}
	}
	r.board = newBoard(p, part.Frame(origin, worldX, y, z), r.d.Thickness.MM(),
		low,
		edge{"right-end", part.Crosscut, r.end[right], ends[right]},
		high,
		edge{"left-end", part.Crosscut, r.end[left], ends[left]},
	)
	r.board.sizes = []string{r.path + ".width", r.path + ".below-top", "size.height"}
}

// refuse reports a stretcher that has no place between the sides.
func (b *builder) refuseRail(i int) bool {
	d := b.stand.d.Stretchers[i]
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
	b.refuseHang(fmt.Sprintf("Stretcher %d", i+1), path, d, deep)
	return len(b.piece.Findings) > before
}

// refuseHang reports a rail, deep as it hangs, that reaches into the top, below the floor or
// through the sides.
func (b *builder) refuseHang(name, path string, d Stretcher, deep measure.Length) {
	s := b.stand
	room := measure.Length(s.height - s.top)
	if d.BelowTop < 0 {
		b.find(stop("stretcher-in-the-top", fmt.Sprintf("%s would stand %s into the top; a below-top of 0 sets it right under it.", name, b.past(-d.BelowTop)),
			d.BelowTop.MM(), 0, "mm", path+".below-top"))
	} else if d.BelowTop+deep > room {
		b.find(stop("stretcher-below-floor",
			fmt.Sprintf("%s would reach %s below the floor; keep it at most %s below the top.", name,
				b.past(d.BelowTop+deep-room), b.atMost(max(0, room-deep))),
			(d.BelowTop + deep).MM(), room.MM(), "mm", path+".below-top", path+".width", "size.height"))
	}
	b.refuseTenon(name, path, d)
	if d.Joint == Housing && (d.Depth <= 0 || d.Depth.MM() >= s.side) {
		b.find(stop("housing-through", fmt.Sprintf("The housings of %s must be shallower than the sides are thick.", lowerFirst(name)),
			d.Depth.MM(), s.side, "mm", path+".depth", "boards.side.thickness"))
	}
}

func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }

// joinRail lets the stretcher into the sides and notes the two joints.
func (b *builder) joinRail(r *rail) {
	for k := range r.board.around {
		end := []solid.Wall{r.board.wall(r.board.around[k])}
		if r.tenon != nil && k == 1 {
			end = r.tenonEnd(right)
		} else if r.tenon != nil && k == 3 {
			end = r.tenonEnd(left)
			slices.Reverse(end)
		}
		r.board.shape.Outline = append(r.board.shape.Outline, end...)
	}
	for _, i := range []side{left, right} {
		if r.tenon != nil {
			b.cheeks(r, i)
			b.mortise(r, i)
			continue
		}
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
	// into the hollow: the wood is outside
	planes := []solid.Plane{flip(r.near), flip(r.lower), flip(r.far), flip(r.upper)}
	past := b.stand.past[i]  // then the side's outer face looks here
	if (i == left) != past { // y of the left side runs to the front
		planes[0], planes[2] = planes[2], planes[0]
	}
	p := solid.Pocket{Tag: "housing of " + r.board.part.ID, Depth: r.deep, FromOuter: past}
	wall.sizesOf[p.Tag] = []string{r.path + r.placed(), r.path + ".below-top", r.path + ".width", r.path + ".depth"}
	for _, q := range planes {
		p.Walls = append(p.Walls, solid.Wall{Tag: p.Tag, Plane: wall.local(q)})
	}
	return p
}

// placed is the key that places a rail between front and back.
func (r *rail) placed() string {
	if r.path == "aprons" {
		return ".set-in"
	}
	return ".across"
}

func (b *builder) railJoint(r *rail, i side) joint.Joint {
	s := b.stand
	outer := r.board.part.Place.Col(2).Vec3() // on edge, a plumb outer face meets the side squarely
	into := measure.Length(r.deep / math.Cos(s.lean[i]))
	return joint.Joint{
		ID: s.sideBoards[i].id + "/" + r.board.part.ID, Kind: r.d.Joint,
		TailBoard: s.sideBoards[i].id, PinBoard: r.board.part.ID,
		Dihedral:    joint.Dihedral(s.outer[i].N, outer),
		PinBaseline: joint.Faces{Outer: into, Inner: into},
		Width:       r.d.Width, Depth: measure.Length(r.deep),
		Slides: worldX.Mul(-i.sign()), Corner: r.crossWise,
	}
}
