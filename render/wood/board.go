package wood

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
)

// board is where a part lay in the plank it was cut from: u along the plank, v across it, w up from its outer face.
type board struct {
	q    *part.Part
	back mgl64.Mat4 // world to part frame
	u, v line
	log  log
	look look
}

// line is a place on the plank by a place on the part: at·x + from.
type line struct{ at, from float64 }

func (l line) of(x float64) float64 { return l.at*x + l.from }

// log is how a plank lies in its tree. The pith runs along the plank, below it.
type log struct {
	v, w       float64 // of the pith
	taper      float64 // of the radius along the plank
	swing, far float64 // how much the fibre swings, mm, and over what length
	phase      float64
}

// boards lays the parts of a piece out on planks. Parts that follow each other round the piece come from one plank
// in their order, so that the grain runs on over their corners: side, top and side of a stool, the walls of what is
// made of walls. Every other part has a plank of its own.
func boards(p *form.Piece) map[string]*board {
	out := map[string]*board{}
	plank := newLog(p.Title + " round the piece")
	var last *board
	for _, q := range round(p) {
		b := &board{q: q, back: part.Back(q.Place), log: plank, look: lookOf(q.Timber)}
		if last == nil {
			b.u, b.v = line{1, 0}, line{1, 0}
		} else {
			b.follow(last)
		}
		out[q.ID], last = b, b
	}
	for _, q := range p.Parts {
		if q.Solid != nil && out[q.ID] == nil {
			out[q.ID] = &board{q: q, back: part.Back(q.Place), u: line{1, 0}, v: line{1, 0}, log: newLog(p.Title + " " + q.ID), look: lookOf(q.Timber)}
		}
	}
	return out
}

// round is the parts of a piece that follow each other round it, of one timber.
func round(p *form.Piece) []*part.Part {
	ids := []string{"side-left", "top", "side-right"}
	if p.Part("top") == nil || p.Part("side-left") == nil {
		ids = []string{"front", "end-right", "back", "end-left"}
	}
	var out []*part.Part
	for _, id := range ids {
		if q := p.Part(id); q != nil && q.Solid != nil && (len(out) == 0 || q.Timber == out[0].Timber) {
			out = append(out, q)
		}
	}
	if len(out) == 0 {
		for _, q := range p.Parts {
			if q.Solid != nil && p.Form == "ring" {
				out = append(out, q)
			}
		}
	}
	return out
}

func newLog(name string) log {
	c := func(k int) float64 { return chance(name, k) }
	return log{
		v: 60 * (c(1) - 0.5), w: -40 - 45*c(2), taper: 0.025 + 0.03*c(3),
		swing: 1.6 + 1.8*c(4), far: 300 + 200*c(5), phase: 2 * math.Pi * c(6),
	}
}

// follow lays b on the plank of a, so that a point in the middle of their common corner lies in one place of it.
func (b *board) follow(a *board) {
	mid := func(q *part.Part) mgl64.Vec3 {
		lo, hi := q.Solid.Bounds()
		m := lo.Add(hi).Mul(0.5)
		m[2] = 0
		return m
	}
	toward := mgl64.TransformCoordinate(mgl64.TransformCoordinate(mid(b.q), b.q.Place), a.back)
	lo, hi := outer(a.q)
	corner, out := mid(a.q), 1.0
	corner[0] = hi
	if toward[0] < (lo+hi)/2 {
		corner[0], out = lo, -1
	}
	here := mgl64.TransformCoordinate(mgl64.TransformCoordinate(corner, a.q.Place), b.back)
	in := 1.0
	if mid(b.q)[0] < here[0] {
		in = -1
	}
	same := 1.0
	if a.q.Place.Col(1).Vec3().Dot(b.q.Place.Col(1).Vec3()) < 0 {
		same = -1
	}
	b.u.at = a.u.at * out * in
	b.v.at = a.v.at * same
	b.u.from = a.u.of(corner[0]) - b.u.at*here[0]
	b.v.from = a.v.of(corner[1]) - b.v.at*here[1]
}

// radius is how far a point of the world lay from the tree's pith, mm, as the growth rings count: even but for the
// swing of the fibre and the taper of the tree.
func (b *board) radius(p mgl64.Vec3) float64 {
	x := mgl64.TransformCoordinate(p, b.back)
	u, v, l := b.u.of(x[0]), b.v.of(x[1]), &b.log
	a := 2*math.Pi*u/l.far + l.phase
	v -= l.v + 0.5*l.swing*math.Sin(0.37*a+1)
	w := x[2] - l.w
	return math.Sqrt(v*v+w*w) + l.taper*u + l.swing*(math.Sin(a)+0.4*math.Sin(2.3*a+2))
}

// ring is the radius of growth ring k of a timber, mm: seasons differ.
func (b *board) ring(k int) float64 {
	return b.look.rings * (float64(k) + 0.55*(chance("season", k)-0.5))
}

// ringsIn are the rings between two radii, first and last.
func (b *board) ringsIn(lo, hi float64) (int, int) {
	return int(math.Floor(lo/b.look.rings)) - 1, int(math.Ceil(hi/b.look.rings)) + 1
}

// outer is from where to where the outer face of a part runs along the grain, mm.
func outer(q *part.Part) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, v := range q.Solid.Vertices {
		if math.Abs(v[2]) < 1e-6 {
			lo, hi = min(lo, v[0]), max(hi, v[0])
		}
	}
	if lo > hi { // rounded over everywhere
		a, b := q.Solid.Bounds()
		return a[0], b[0]
	}
	return lo, hi
}
