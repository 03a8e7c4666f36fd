package motion

import (
	"fmt"
	"math"
	"math/bits"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
)

// mostParts is how many parts a set has bits for.
const mostParts = 62

// Assemble finds an order by taking the piece apart: as long as some of the parts can be drawn off
// the others in a straight line, they go together the other way round. Single parts are preferred to
// groups, and the directions of the joints to others. Parts without a solid are left out.
func Assemble(p *form.Piece) form.Assembly {
	t := &taking{eye: eyes.Get().(*eye), seen: map[pairing]bool{}}
	defer t.eye.rest()
	var late []*part.Part
	for _, q := range p.Parts {
		switch {
		case q.Solid == nil:
		case q.Slip.Late():
			late = append(late, q)
		case len(t.bodies) < mostParts:
			t.bodies = append(t.bodies, newBody(q))
		}
	}
	if len(t.bodies) == 0 {
		return form.Assembly{}
	}
	for _, j := range p.Joints {
		t.ways = append(t.ways, j.Slides, j.Slides.Mul(-1))
	}
	n := len(t.bodies)
	t.normals = make([][][]mgl64.Vec3, n)
	for i := range n {
		t.normals[i] = make([][]mgl64.Vec3, n)
	}
	for i := range n {
		for j := range i {
			t.normals[i][j] = t.eye.contacts(t.bodies[i], t.bodies[j])
			for _, m := range t.normals[i][j] {
				t.normals[j][i] = append(t.normals[j][i], m.Mul(-1))
			}
		}
	}
	t.tenons(p)
	t.late(p, late)
	t.apart(t.whole(p, 1<<n-1))
	slices.Reverse(t.plan.Moves)
	return t.plan
}

// taking is a piece while it is taken apart. Sets of parts are bits.
type taking struct {
	eye     *eye
	bodies  []*body
	normals [][][]mgl64.Vec3
	ways    []mgl64.Vec3
	plan    form.Assembly

	pushed []push           // see pushes
	seen   map[pairing]bool // see passes

	hold, try []mgl64.Vec3 // see free; used again
}

// apart takes a set of parts apart and notes the moves, the last first. What a group consists of is taken apart
// before the rest, so that it is put together right before it goes home; the part that is left last stands first.
func (t *taking) apart(set uint) {
	if bits.OnesCount(set) == 1 {
		t.plan.First = t.names(set)
		return
	}
	for _, sets := range []func(uint) []uint{singles, t.groups} {
		for _, some := range sets(set) {
			if way, free := t.free(some, set&^some); free {
				t.draw(some, set&^some, way)
				return
			}
		}
	}
	if !t.atOnce(set) {
		t.plan.Stuck = append(t.plan.Stuck, t.names(set)...)
	}
}

// draw notes that some parts are drawn off the rest, and takes both apart.
func (t *taking) draw(some, rest uint, way mgl64.Vec3) {
	t.move(some, rest, way)
	if bits.OnesCount(some) > 1 {
		t.apart(some)
	}
	t.apart(rest)
}

// atOnce looks for a way to draw all the parts of a set off each other at the same time, each its own
// way, as a rail let into two leaning sides asks for, or a ring whose corners all open together. Parts
// that keep together in it are taken apart after that.
func (t *taking) atOnce(set uint) bool {
	var at []int
	for i := range t.bodies {
		if set&(1<<i) != 0 {
			at = append(at, i)
		}
	}
	ways := t.flyApart(at)
	if ways == nil {
		return false
	}
	var moving []string
	var home []mgl64.Vec3
	groups := map[int]uint{} // by the first body that goes the same way
	var order []int
	for k, i := range at {
		if k > 0 && ways[k].Len() > sameWay {
			moving, home = append(moving, t.bodies[i].part.ID), append(home, ways[k].Mul(-1))
		}
		with := k
		for l := range k {
			if ways[l].Sub(ways[k]).Len() < 1e-7 {
				with = l
				break
			}
		}
		if with == k {
			order = append(order, k)
		}
		groups[with] |= 1 << i
	}
	if len(moving) == 0 || len(order) < 2 {
		return false
	}
	still := groups[0]
	t.plan.Moves = append(t.plan.Moves, form.Move{Parts: moving, Onto: t.names(still), Ways: home})
	for _, k := range order[1:] {
		t.apart(groups[k])
	}
	t.apart(still)
	return true
}

func dotRoot(v []float64) float64 { return math.Sqrt(dot(v, v)) }

// move notes that some parts, drawn off the rest along a way, go home the other way round.
func (t *taking) move(some, rest uint, way mgl64.Vec3) {
	ways := make([]mgl64.Vec3, bits.OnesCount(some))
	for i := range ways {
		ways[i] = way.Mul(-1)
	}
	t.plan.Moves = append(t.plan.Moves, form.Move{Parts: t.names(some), Onto: t.names(rest), Ways: ways})
}

func (t *taking) names(set uint) []string {
	var out []string
	for i, b := range t.bodies {
		if set&(1<<i) != 0 {
			out = append(out, b.part.ID)
		}
	}
	return out
}

// free gives a direction in which some parts can be drawn off the rest: it must not point into any
// face that they touch.
func (t *taking) free(some, rest uint) (mgl64.Vec3, bool) {
	hold := t.hold[:0]
	var sum mgl64.Vec3
	for i := range t.bodies {
		for j := range t.bodies {
			if some&(1<<i) == 0 || rest&(1<<j) == 0 {
				continue
			}
			for _, n := range t.normals[i][j] {
				if indexOf(hold, n) < 0 {
					hold, sum = append(hold, n), sum.Add(n)
				}
			}
		}
	}
	try := t.try[:0]
	if sum.Len() > sameWay {
		try = append(try, neat(sum.Mul(-1), hold)...)
	}
	try = append(try, t.ways...)
	try = append(try, mgl64.Vec3{0, 0, -1}, mgl64.Vec3{0, 0, 1}, mgl64.Vec3{0, 1, 0}, mgl64.Vec3{0, -1, 0}, mgl64.Vec3{1, 0, 0}, mgl64.Vec3{-1, 0, 0})
	for i, a := range hold {
		for _, b := range hold[:i] {
			if c := a.Cross(b); c.Len() > sameWay {
				try = append(try, c.Normalize(), c.Mul(-1).Normalize())
			}
		}
	}
	t.hold, t.try = hold, try
	open := func(way mgl64.Vec3) bool { return clear(hold, way) && t.leaves(some, rest, way) }
	for _, way := range try {
		if way.Len() > 0.5 && open(way) {
			if up := way.Mul(-1); way[2] < -sameWay && t.slip(some) && open(up) {
				return up, true
			}
			return way, true
		}
	}
	return mgl64.Vec3{}, false
}

// slip tells whether what is drawn off is one spline: it goes in from above where it can, as one stands at the bench.
func (t *taking) slip(some uint) bool {
	return bits.OnesCount(some) == 1 && t.bodies[bits.TrailingZeros(some)].part.Slip != ""
}

func clear(hold []mgl64.Vec3, way mgl64.Vec3) bool {
	for _, n := range hold {
		if way.Dot(n) > sameWay {
			return false
		}
	}
	return true
}

// Finding says which parts cannot be put together and what would make it possible; it is not ok when
// they can.
func Finding(p *form.Piece) (part.Finding, bool) {
	if len(p.Assembly.Stuck) == 0 {
		return part.Finding{}, false
	}
	f := part.Finding{
		ID: "cannot-go-together", Level: part.Stop, Parts: p.Assembly.Stuck,
		Source: "geometry of this piece: no straight motion of one or of all at once draws any of these parts off the others",
		Text:   fmt.Sprintf("These parts lock each other and cannot be put together: %s.", sentenceOf(p, p.Assembly.Stuck)),
	}
	for _, s := range p.Design.Rails() {
		if path := s.Path + ".joint"; s.Joint == form.Housing && !slices.Contains(f.Sizes, path) {
			f.Sizes = append(f.Sizes, path)
		}
	}
	if len(f.Sizes) > 0 {
		f.Text += " A stretcher or an apron let into the sides needs them to close on it while they go home, which dovetailed sides that lean inward do not; butt it and screw it from outside, or let the sides lean outward."
	}
	if u := p.Design.Bottom; u != nil && u.Joint != form.ScrewedOn {
		f.Text += fmt.Sprintf(" A bottom let into the walls must go in while they close round it, which %s corners with a clearance of %s do not let them.",
			p.Design.Corners.Joint, p.Design.Style().FormatUnit(*u.Clearance))
		text, sizes := clearedBy(p)
		f.Text, f.Sizes = f.Text+text, append(f.Sizes, sizes...)
	}
	if !slices.Contains(f.Sizes, "corners.joint") {
		f.Sizes = append(f.Sizes, "corners.joint")
	}
	return f, true
}

// sentenceOf names parts in a sentence: "the front, the ends and the bottom".
func sentenceOf(p *form.Piece, ids []string) string {
	names := form.InWords(p, ids...)
	text := ""
	for i, name := range names {
		switch {
		case i == 0:
		case i == len(names)-1:
			text += " and "
		default:
			text += ", "
		}
		text += name
	}
	return text
}
