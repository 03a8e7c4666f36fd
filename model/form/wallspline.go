package form

import (
	"fmt"
	"math"
	"strconv"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// Shares of the thinnest wall that a spline which leaves its sizes out gets: a quarter as thick, as wide
// across the joint as the wall is thick, and set a quarter out from the inner line, where the wood under
// the outer corner is longest. Common practice.
const (
	splineShare = 1.0 / 4
	insetShare  = 1.0 / 4
	// endPlay, mm, is how much shorter a spline is than a groove that stops: the walls of a tray whose bottom
	// lies in grooves close level, along the slant of their splines. Common practice.
	endPlay = 1
)

func splineDefaults(d *Design) {
	if d.Corners.Joint != SplinedMitre {
		return
	}
	var s Spline
	if d.Corners.Spline != nil {
		s = *d.Corners.Spline
	}
	thin := thinnestWall(*d)
	fill(&s.Thickness, thin*splineShare)
	fill(&s.Width, thin)
	fill(&s.Inset, thin*insetShare)
	fill(&s.Timber, d.Boards.Side.Timber)
	d.Corners.Spline = &s
}

// refuseSpline reports sizes that no spline can have.
func refuseSpline(b *assembly) {
	s := b.d.Corners.Spline
	if s == nil {
		return
	}
	if b.d.Corners.Joint != SplinedMitre {
		b.find(stop("spline-without-mitre", fmt.Sprintf("Only a %s has splines; choose that joint, or leave corners.spline out.", SplinedMitre), 0, 0, "", "corners.spline", "corners.joint"))
		return
	}
	for _, k := range []struct {
		name, path string
		size       measure.Length
	}{{"thickness of the splines", "thickness", s.Thickness}, {"width of the splines", "width", s.Width}, {"inset of the splines", "inset", s.Inset}} {
		b.aboveNothing(k.name, "corners.spline."+k.path, k.size)
	}
	if s.Stop < 0 {
		b.find(stop("spline-stop-below-nothing", "Grooves stop short of the upper edge by something or run out; that cannot be less than nothing.", s.Stop.MM(), 0, "mm", "corners.spline.stop"))
	}
}

// splinePaths are the sizes that place a spline.
var splinePaths = []string{"corners.spline.thickness", "corners.spline.width", "corners.spline.inset"}

// fitSpline grooves both faces of a mitre and lays the spline into them.
func (e *enclosure) fitSpline(m meeting) {
	s, k := e.d.Corners.Spline, e.mitre(m)
	r := k.splineRun(s)
	j := e.mitred(m, SplinedMitre)
	j.Spline = &joint.Spline{
		Part: slipID(part.Spline, numbered(k.n)), Thickness: s.Thickness, Width: s.Width, Inset: s.Inset,
		Mitre: measure.Length(k.width), Low: r.stopLow, High: r.stopHigh,
		Tilt: [2]measure.Angle{left: groovedAt(m.a, k.out), right: groovedAt(m.b, k.out)},
		Turn: [2]measure.Angle{left: turn(m.a, k.along), right: turn(m.b, k.along)},
		Left: [2]joint.Faces{left: k.beside(m.a, s), right: k.beside(m.b, s)},
	}
	e.piece.Joints = append(e.piece.Joints, j)
	if e.refuseGrooves(j, r) {
		return
	}
	inner, foot := k.out.Dot(k.inner)+s.Inset.MM(), k.along.Dot(k.inner)
	e.slot(m, "spline groove", splinePaths,
		solid.Plane{N: k.out, D: inner}, solid.Plane{N: k.out.Mul(-1), D: -inner - s.Thickness.MM()},
		solid.Plane{N: k.part.N, D: k.part.D - s.Width.MM()/2}, solid.Plane{N: k.part.N.Mul(-1), D: -k.part.D - s.Width.MM()/2},
		solid.Plane{N: k.along, D: foot + r.from}, solid.Plane{N: k.along.Mul(-1), D: -foot - r.to})
	e.loose = append(e.loose, k.spline(s, r))
}

// groovedAt is how far a groove whose sides look along out is away from square to a wall's face.
func groovedAt(w *wall, out mgl64.Vec3) measure.Angle {
	return measure.Angle(math.Asin(math.Min(1, math.Abs(out.Dot(w.outer.N)))))
}

// splineRun is how far the grooves and the spline of a corner reach, up it from the foot of its inner line.
type splineRun struct {
	from, to          float64        // of the grooves
	low, high         solid.Plane    // where the spline ends
	stopLow, stopHigh measure.Length // along the inner line, from the walls' edges; 0 = the groove runs out
	room              float64        // along the corner, for grooves that stop
}

// splineRun: flush with the walls' edges where the grooves run out, over the groove of a bottom, and short
// of the upper edge where they stop. Edges of two walls that lie in different planes leave the spline
// square to the corner, as long as it passes neither.
func (k mitre) splineRun(s *Spline) splineRun {
	section := k.section(s)
	low, high := k.reach(section)
	from, to := k.runsOut(section)
	r := splineRun{from: from, to: to, low: k.a.lower, high: k.a.upper}
	square := func(at, sign float64) solid.Plane {
		return solid.Plane{N: k.along.Mul(sign), D: sign * (k.along.Dot(k.inner) + at)}
	}
	if k.splits {
		r.low, r.high = square(low, -1), square(high, 1)
	}
	if !math.IsInf(k.floor, -1) {
		r.from, r.low = low, square(low+endPlay, -1)
		r.stopLow = measure.Length(low - k.onInner(k.a.lower))
	}
	if s.Stop > 0 {
		r.to, r.stopHigh = k.onInner(k.a.upper)-s.Stop.MM(), s.Stop
		r.high = square(r.to-endPlay, 1)
	}
	r.room = min(r.to, high) - max(r.from, low)
	if s.Stop > 0 || !math.IsInf(k.floor, -1) {
		r.room -= 2 * endPlay
	}
	if s.Stop > 0 && r.to >= high {
		r.room = high - r.to // the groove would come out of the edge that it is to stay short of
	}
	return r
}

// onInner is where the corner's inner line meets a plane, up from its foot.
func (k mitre) onInner(p solid.Plane) float64 {
	return (p.D - p.N.Dot(k.inner)) / p.N.Dot(k.along)
}

// beside is the least wood that a spline's groove leaves under a wall's outer and inner face.
func (k mitre) beside(w *wall, s *Spline) joint.Faces {
	out := joint.Faces{Outer: measure.Length(math.Inf(1)), Inner: measure.Length(math.Inf(1))}
	for _, p := range k.section(s) {
		if (k.part.N.Dot(p)-k.part.D > 0) == (w == k.a) {
			continue // in the other wall
		}
		mouth := p.Sub(k.part.N.Mul(k.part.N.Dot(p) - k.part.D))
		for _, q := range []mgl64.Vec3{p, mouth} {
			out.Outer = min(out.Outer, measure.Length(w.outer.D-w.outer.N.Dot(q)))
			out.Inner = min(out.Inner, measure.Length(w.inner.D-w.inner.N.Dot(q)))
		}
	}
	return out
}

// refuseGrooves reports grooves that break out of a face or that have no room up the corner.
func (e *enclosure) refuseGrooves(j joint.Joint, r splineRun) bool {
	s := j.Spline
	least := min(s.Left[left].Outer, s.Left[left].Inner, s.Left[right].Outer, s.Left[right].Inner)
	var f part.Finding
	switch {
	case !(least > 0):
		f = stop("spline-out-of-the-wall", fmt.Sprintf("A spline %s thick and %s wide, %s from the inner line of a mitre %s wide, breaks out of a face by %s: make it thinner or narrower, or set it elsewhere.",
			e.show(s.Thickness), e.show(s.Width), e.show(s.Inset), e.show(s.Mitre), e.past(-least)), least.MM(), 0, "mm", append([]string{"boards.side.thickness"}, splinePaths...)...)
	case !(r.room > 0):
		f = stop("spline-without-room", fmt.Sprintf("Between its stops the spline has no room up the corner: it would need %s more. Let it run out, or stop it less short.", e.past(measure.Length(-r.room))),
			r.room, 0, "mm", "corners.spline.stop", "size.height", "bottom.up")
	default:
		return false
	}
	f.Parts = []string{j.TailBoard, j.PinBoard}
	e.find(f)
	return true
}

// section are the four points of a spline's section at the foot of the inner line.
func (k mitre) section(s *Spline) []mgl64.Vec3 {
	var out []mgl64.Vec3
	for _, off := range []float64{-1, 1} {
		for _, far := range []float64{0, 1} {
			out = append(out, k.at(0, (s.Inset+measure.Length(far)*s.Thickness).MM(), off*s.Width.MM()/2))
		}
	}
	return out
}

// spline makes the part: its grain across the joint, its outer face towards the outer corner.
func (k mitre) spline(s *Spline, r splineRun) *board {
	n := numbered(k.n)
	id, half := slipID(part.Spline, n), s.Width.MM()/2
	b := slip(part.Spline, n, s.Timber, k.at(0, (s.Inset+s.Thickness).MM(), 0), k.part.N, k.out, s.Thickness.MM(),
		edge{id: "lower-edge", kind: part.Rip, plane: r.low},
		edge{"right-end", part.Crosscut, solid.Plane{N: k.part.N, D: k.part.D + half}, id + "/left-end"},
		edge{id: "upper-edge", kind: part.Rip, plane: r.high},
		edge{"left-end", part.Crosscut, solid.Plane{N: k.part.N.Mul(-1), D: half - k.part.D}, id + "/right-end"},
	)
	b.sizes = append([]string{"corners.spline.stop"}, splinePaths...)
	return b
}

// numbered counts corners from 1.
func numbered(i int) string { return strconv.Itoa(i + 1) }
