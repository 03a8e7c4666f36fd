package form

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// Words of the design file for aprons.
const (
	AtFront = "front"
	AtBack  = "back"
	AtBoth  = "both"
	Leaning = "leaning" // as the piece's front and back edges do
	Plumb   = "plumb"
)

// Aprons are equal boards on edge from side to side, along the front and the back.
type Aprons struct {
	At               string         // "both", "front", "back"
	Width, Thickness measure.Length // width up the slope of the outer face
	// SetIn is from the leaning plane of the piece's front edges to the outer face, square to the
	// face where the apron leans, level at the apron's upper edge where it stands plumb; nil = 6 mm.
	SetIn    *measure.Length
	BelowTop measure.Length // from the underside of the top to the upper edge
	Stand    string         // "leaning", "plumb"
	Joint    string         // "butt", "housing"
	Depth    measure.Length // of a housing
	Timber   string
	Screws   *Screws
}

// usualSetIn keeps a shadow line between apron and side, so that neither need be planed to the
// other (common practice).
const usualSetIn = 6 * measure.Millimetre

func (d *Design) fillAprons() {
	if d.Aprons == nil {
		return
	}
	a := *d.Aprons
	fill(&a.At, AtBoth)
	fill(&a.Stand, Leaning)
	fill(&a.Joint, Butt)
	fill(&a.Thickness, d.Boards.Side.Thickness)
	fill(&a.Timber, d.Timber)
	if a.SetIn == nil {
		in := usualSetIn
		a.SetIn = &in
	}
	if a.Joint == Housing {
		fill(&a.Depth, d.Boards.Side.Thickness*housingShare)
	}
	d.Aprons = &a
}

// aproned are the ends of the piece that have an apron: -1 the front, +1 the back.
func (a *Aprons) aproned() []float64 {
	switch {
	case a == nil:
		return nil
	case a.At == AtFront:
		return []float64{-1}
	case a.At == AtBack:
		return []float64{1}
	}
	return []float64{-1, 1}
}

// asStretcher is what an apron has in common with a stretcher on edge.
func (a *Aprons) asStretcher() Stretcher {
	return Stretcher{Width: a.Width, Thickness: a.Thickness, Set: OnEdge, BelowTop: a.BelowTop,
		Joint: a.Joint, Depth: a.Depth, Timber: a.Timber, Screws: a.Screws}
}

// Rail is a stretcher or an apron as one list knows it.
type Rail struct {
	Stretcher                // of an apron: what it has in common with a stretcher on edge
	ID, Path  string         // of the part; of the sizes in the design file
	High      measure.Length // from its lower to its upper edge, plumb
	Placed    string         // path of the size that places it between front and back
}

// Rails are the stretchers and aprons, as their parts follow each other.
func (d Design) Rails() []Rail {
	var out []Rail
	for i, s := range d.Stretchers {
		path, high := fmt.Sprintf("stretchers.%d", i), s.Width
		if s.Set == Flat {
			high = s.Thickness
		}
		out = append(out, Rail{s, fmt.Sprintf("stretcher-%d", i+1), path, high, path + ".across"})
	}
	for _, toward := range d.Aprons.aproned() {
		out = append(out, Rail{d.Aprons.asStretcher(), "apron-" + atWord(toward), "aprons", d.apronRise(), "aprons.set-in"})
	}
	return out
}

// aprons adds the aprons that have a place between the sides.
func (b *builder) aprons() {
	if b.d.Aprons == nil || b.refuseAprons() {
		return
	}
	for _, toward := range b.d.Aprons.aproned() {
		r := b.newApron(toward)
		if b.refuseApronSeat(r) {
			continue
		}
		b.rails, b.boards = append(b.rails, r), append(b.boards, r.board)
		b.joinRail(r)
	}
}

// apronFace is the plane of an apron's outer face.
func (b *builder) apronFace(toward float64) solid.Plane {
	s, a := b.stand, b.d.Aprons
	edge := s.front
	if toward > 0 {
		edge = s.back
	}
	if a.Stand == Leaning {
		edge.D -= a.SetIn.MM()
		return edge
	}
	upper := s.height - s.top - a.BelowTop.MM()
	out := (edge.D - edge.N[2]*upper) / edge.N[1] // Y of the leaning plane up there
	return solid.Plane{N: worldY.Mul(toward), D: out*toward - a.SetIn.MM()}
}

func (b *builder) newApron(toward float64) *rail {
	s, a := b.stand, b.d.Aprons
	face := b.apronFace(toward)
	high := s.height - s.top - a.BelowTop.MM()
	rise := b.d.apronRise().MM()
	r := &rail{d: a.asStretcher(), path: "aprons"}
	r.lower = solid.Plane{N: worldZ.Mul(-1), D: rise - high}
	r.upper = solid.Plane{N: worldZ, D: high}
	back := flip(face)
	back.D += a.Thickness.MM()
	r.near, r.far = face, back
	if toward > 0 {
		r.near, r.far = back, face
	}
	r.hang(s)
	b.apronBoard(r, toward, face)
	return r
}

func atWord(toward float64) string {
	if toward < 0 {
		return AtFront
	}
	return AtBack
}

// apronBoard begins the part: x to the right as seen from outside, y up the slope, z out of the
// outer face; the origin lies in the middle of the outer face.
func (b *builder) apronBoard(r *rail, toward float64, face solid.Plane) {
	p := &part.Part{ID: "apron-" + atWord(toward), Name: "Apron, " + atWord(toward), Timber: r.d.Timber}
	x := worldX.Mul(-toward)
	y := face.N.Cross(x)
	middle := mgl64.Vec3{0, 0, (r.upper.D - r.lower.D) / 2}
	middle[1] = (face.D - face.N[2]*middle[2]) / face.N[1]
	r.crossWise = y
	r.middleLine = middle.Sub(face.N.Mul(r.d.Thickness.MM() / 2))
	ends := [2]solid.Plane{r.end[left], r.end[right]} // as seen from outside
	if toward > 0 {
		ends[0], ends[1] = ends[1], ends[0]
	}
	paired := func(id string) string {
		if b.d.Aprons.At != AtBoth {
			return ""
		}
		return "apron-" + atWord(-toward) + "/" + id
	}
	r.board = newBoard(p, part.Frame(middle, x, y, face.N), r.d.Thickness.MM(),
		edge{"lower-edge", part.Rip, r.lower, paired("lower-edge")},
		edge{"right-end", part.Crosscut, ends[1], p.ID + "/left-end"},
		edge{"upper-edge", part.Rip, r.upper, paired("upper-edge")},
		edge{"left-end", part.Crosscut, ends[0], p.ID + "/right-end"},
	)
	r.board.sizes = []string{"aprons.width", "aprons.set-in", "aprons.below-top", "size.height"}
}

// refuseAprons reports sizes that no apron can have.
func (b *builder) refuseAprons() bool {
	a := b.d.Aprons
	before := len(b.piece.Findings)
	switch {
	case !(a.Width > 0) || !(a.Thickness > 0):
		b.find(stop("size-not-above-nothing", "Aprons need a width and a thickness.",
			math.Min(a.Width.MM(), a.Thickness.MM()), 0, "mm", "aprons.width", "aprons.thickness"))
	case *a.SetIn < 0:
		b.find(stop("apron-outside", fmt.Sprintf("The aprons would stand %s outside the piece's front and back; set them in by nothing or more.", b.show(-*a.SetIn)),
			a.SetIn.MM(), 0, "mm", "aprons.set-in"))
	default:
		b.refuseHang("An apron", "aprons", a.asStretcher(), b.d.apronRise())
	}
	return len(b.piece.Findings) > before
}

// apronRise is how high an apron is, plumb.
func (d Design) apronRise() measure.Length {
	if d.Aprons.Stand == Plumb {
		return d.Aprons.Width
	}
	return d.Aprons.Width * measure.Length(math.Cos(upright(d.Splay.Edges.Radians())))
}

// edgeWeb, mm, is the least wood between an apron's housing and the edge of the side: less breaks
// away under the chisel (common practice).
const edgeWeb = 3.0

// refuseApronSeat reports an apron whose housing would break out of a side's edge.
func (b *builder) refuseApronSeat(r *rail) bool {
	if r.deep <= 0 {
		return false
	}
	room := b.seatRoom(r)
	if room >= edgeWeb {
		return false
	}
	b.find(stop("apron-housing-breaks-out", fmt.Sprintf(
		"The housing of an apron leaves %s of wood to the edge of the side; set the aprons in by %s or more, or butt them.",
		b.show(measure.Length(math.Max(room, 0))), b.show(*b.d.Aprons.SetIn+measure.Length(edgeWeb-room))),
		room, edgeWeb, "mm", "aprons.set-in", "aprons.joint"))
	return true
}

// seatRoom is the least way from the housings of a rail to the front and back edges of the sides.
func (b *builder) seatRoom(r *rail) float64 {
	s, room := b.stand, math.Inf(1)
	for _, i := range []side{left, right} {
		for _, level := range []solid.Plane{r.lower, r.upper} {
			for _, seat := range []solid.Plane{s.inner[i], r.end[i]} {
				front, back := meet(seat, r.near, level), meet(seat, r.far, level)
				room = min(room, s.sideFront[i].D-s.sideFront[i].N.Dot(front), s.sideBack[i].D-s.sideBack[i].N.Dot(back))
			}
		}
	}
	return room
}
