package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// piece is a stretch of a wall at one height.
type piece struct {
	wall     int
	from, to mgl64.Vec3
	curve    Curve
}

// rim gives the ring's pieces at its upper or lower height.
func (k *builder) rim(out []piece, r *ring, top bool) []piece {
	for i := range r.walls {
		out = append(out, k.piece(r, i, top))
	}
	return out
}

// back is the piece walked the other way.
func (a piece) back() piece {
	a.from, a.to = a.to, a.from
	a.curve.T0, a.curve.T1 = a.curve.T1, a.curve.T0
	return a
}

// size is the piece's length in its own parameter: mm along a straight one, radians round an arc.
func (a *piece) size() float64 {
	if a.curve.Kind == Arc {
		return math.Abs(a.curve.T1 - a.curve.T0)
	}
	return a.to.Sub(a.from).Len()
}

// at is the point at the parameter t from the piece's beginning.
func (a *piece) at(t float64) mgl64.Vec3 {
	if a.curve.Kind == Arc {
		return a.curve.at(a.curve.T0 + math.Copysign(t, a.curve.T1-a.curve.T0))
	}
	d := a.to.Sub(a.from)
	return a.from.Add(d.Mul(t / d.Len()))
}

// sub is the part of the piece between two parameters.
func (a piece) sub(t0, t1 float64) piece {
	b := a
	if t0 > 0 {
		b.from = a.at(t0)
	}
	if t1 < a.size() {
		b.to = a.at(t1)
	}
	if a.curve.Kind == Arc {
		b.curve.T0 = a.curve.T0 + math.Copysign(t0, a.curve.T1-a.curve.T0)
		b.curve.T1 = a.curve.T0 + math.Copysign(t1, a.curve.T1-a.curve.T0)
	}
	return b
}

// find tells whether p lies on the piece, and at which parameter.
func (k *builder) find(a *piece, p mgl64.Vec3) (t float64, on bool) {
	if a.curve.Kind == Arc {
		angle := k.surfs[a.wall].angle(p) - a.curve.Base
		if a.curve.at(angle).Sub(p).Len() > SamePoint {
			return 0, false
		}
		slack := SamePoint / k.surfs[a.wall].round.Radius
		t = math.Abs(turned(a.curve.T0, angle, a.curve.T1 > a.curve.T0) - a.curve.T0)
		if t > 2*math.Pi-slack {
			t = 0
		}
		return t, t < a.size()+slack
	}
	d := a.to.Sub(a.from)
	l := d.Len()
	q := p.Sub(a.from)
	t = q.Dot(d) / l
	if t < -SamePoint || t > l+SamePoint {
		return 0, false
	}
	return t, q.Sub(d.Mul(t/l)).Len() < SamePoint
}

// meeting is a point on two pieces, and its parameters on them.
type meeting struct {
	at       mgl64.Vec3
	onA, onB float64
}

// shared lists points that lie on both pieces: where they cross, touch or begin to run along each other.
func (k *builder) shared(out []meeting, a, b *piece) []meeting {
	if a.curve.Kind == Straight && b.curve.Kind == Straight {
		return straightShared(out, a, b)
	}
	try := func(p mgl64.Vec3) {
		if t, on := k.find(a, p); on {
			if u, on := k.find(b, p); on {
				out = append(out, meeting{p, t, u})
			}
		}
	}
	for _, p := range []mgl64.Vec3{a.from, a.to, b.from, b.to} {
		try(p)
	}
	switch {
	case a.curve.Kind == Straight:
		lineArc(a, b, try)
	case b.curve.Kind == Straight:
		lineArc(b, a, try)
	default:
		k.arcArc(a, b, try)
	}
	return out
}

// straightShared is shared for two straight pieces.
func straightShared(out []meeting, a, b *piece) []meeting {
	p, q := lineOf(a), lineOf(b)
	for _, end := range [2]struct {
		at mgl64.Vec3
		t  float64
	}{{a.from, 0}, {a.to, p.long}} {
		if u, on := q.find(end.at[0], end.at[1]); on {
			out = append(out, meeting{end.at, end.t, u})
		}
	}
	for _, end := range [2]struct {
		at mgl64.Vec3
		u  float64
	}{{b.from, 0}, {b.to, q.long}} {
		if t, on := p.find(end.at[0], end.at[1]); on {
			out = append(out, meeting{end.at, t, end.u})
		}
	}
	det := p.x*q.y - p.y*q.x
	if math.Abs(det) <= parallel {
		return out
	}
	gx, gy := q.fromX-p.fromX, q.fromY-p.fromY
	t, u := (gx*q.y-gy*q.x)/det, (gx*p.y-gy*p.x)/det
	if t >= -SamePoint && t <= p.long+SamePoint && u >= -SamePoint && u <= q.long+SamePoint {
		out = append(out, meeting{mgl64.Vec3{p.fromX + p.x*t, p.fromY + p.y*t, a.from[2]}, t, u})
	}
	return out
}

// line is a straight piece: where it begins, its unit direction and its length.
type line struct{ fromX, fromY, x, y, long float64 }

func lineOf(a *piece) line {
	x, y := a.to[0]-a.from[0], a.to[1]-a.from[1]
	l := math.Hypot(x, y)
	return line{a.from[0], a.from[1], x / l, y / l, l}
}

// find tells whether a point lies on the line's piece, and at which parameter.
func (l *line) find(x, y float64) (t float64, on bool) {
	x, y = x-l.fromX, y-l.fromY
	t = x*l.x + y*l.y
	return t, t >= -SamePoint && t <= l.long+SamePoint && math.Abs(x*l.y-y*l.x) < SamePoint
}

// lineArc tries the points in which the straight piece's line meets the arc's ellipse.
func lineArc(a, b *piece, try func(mgl64.Vec3)) {
	d := a.to.Sub(a.from)
	n := mgl64.Vec3{-d[1], d[0], 0}.Normalize()
	c := &b.curve
	u, v := n.Dot(c.U), n.Dot(c.V)
	r := math.Hypot(u, v)
	cos := n.Dot(a.from.Sub(c.centre())) / r
	if math.Abs(cos) > 1+SamePoint/r {
		return
	}
	turn, off := math.Atan2(v, u), math.Acos(max(-1, min(1, cos)))
	try(c.at(turn + off))
	if off > 0 {
		try(c.at(turn - off))
	}
}

// arcArc tries the points in which two arcs meet, by following the sign of where b's arc lies about a's
// ellipse and halving down on its changes. Arcs of one ellipse meet in their ends alone.
func (k *builder) arcArc(a, b *piece, try func(mgl64.Vec3)) {
	const steps = 64
	cyl := k.surfs[a.wall].round
	outside := func(t float64) float64 {
		q := b.at(t).Sub(cyl.Point)
		return q.Sub(cyl.Axis.Mul(q.Dot(cyl.Axis))).Len() - cyl.Radius
	}
	size := b.size()
	last := outside(0)
	for i := 1; i <= steps; i++ {
		lo, hi := size*float64(i-1)/steps, size*float64(i)/steps
		next := outside(hi)
		if math.Abs(last) < SamePoint && math.Abs(next) < SamePoint {
			return
		}
		if (last > 0) != (next > 0) {
			for range 60 {
				mid := (lo + hi) / 2
				if (outside(mid) > 0) == (last > 0) {
					lo = mid
				} else {
					hi = mid
				}
			}
			try(b.at(lo))
		}
		last = next
	}
}

// box is the smallest upright rectangle that surely holds the piece.
func (a *piece) box() (lo, hi mgl64.Vec2) {
	for i := range 2 {
		lo[i], hi[i] = min(a.from[i], a.to[i]), max(a.from[i], a.to[i])
		if a.curve.Kind == Arc {
			r, c := math.Hypot(a.curve.U[i], a.curve.V[i]), a.curve.centre()[i]
			lo[i], hi[i] = min(lo[i], c-r), max(hi[i], c+r)
		}
	}
	return lo, hi
}

// inside tells whether p lies within the region that the pieces bound. It counts what a ray along x or
// y crosses, whichever passes the ends of the pieces farther off: neighbours meet only to within
// SamePoint, and a ray through their gap would slip out. So it does where hollows at both ends of a
// board have walls in one line.
func inside(pieces []piece, p mgl64.Vec3) bool {
	along, across := 0, 1
	if clearance(pieces, p, 0) > clearance(pieces, p, 1) {
		along, across = 1, 0
	}
	n := 0
	for i := range pieces {
		n += crossings(&pieces[i].curve, pieces[i].from, pieces[i].to, p, along, across)
	}
	return n%2 == 1
}

// clearance is how far the nearest end of a piece lies off p in one coordinate.
func clearance(pieces []piece, p mgl64.Vec3, axis int) float64 {
	least := math.Inf(1)
	for i := range pieces {
		least = min(least, math.Abs(pieces[i].from[axis]-p[axis]), math.Abs(pieces[i].to[axis]-p[axis]))
	}
	return least
}
