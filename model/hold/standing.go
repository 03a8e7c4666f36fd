package hold

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
)

const (
	// onFloor, mm, is how high a corner may stand and still touch the floor: rounding alone.
	onFloor = 1e-6

	standsSource = "statics: a load that acts straight down tips a piece only from outside the outline of its feet; own weight counted"
)

// Feet is the outline that a piece stands in, plan, anticlockwise: the convex hull of whatever touches
// the floor. Nothing touches it twice where it has no outline.
func Feet(p *form.Piece) []mgl64.Vec2 {
	var down []mgl64.Vec2
	for _, q := range p.Parts {
		if q.Solid == nil {
			continue
		}
		for _, c := range corners(q) {
			if math.Abs(c[2]) < onFloor {
				down = append(down, c.Vec2())
			}
		}
	}
	return outline(down)
}

// corners of a part, world frame.
func corners(q *part.Part) []mgl64.Vec3 {
	out := make([]mgl64.Vec3, 0, len(q.Solid.Vertices))
	for _, v := range q.Solid.Vertices {
		out = append(out, q.Place.Mul4x1(v.Vec4(1)).Vec3())
	}
	return out
}

// outline is the convex hull, anticlockwise from its leftmost point; fewer than three points have none.
func outline(points []mgl64.Vec2) []mgl64.Vec2 {
	points = slices.Clone(points)
	inOrder(points)
	half := func(points []mgl64.Vec2) []mgl64.Vec2 {
		var out []mgl64.Vec2
		for _, p := range points {
			for len(out) >= 2 && turn(out[len(out)-2], out[len(out)-1], p) <= onFloor {
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		return out
	}
	lower := half(points)
	slices.Reverse(points)
	upper := half(points)
	if len(lower) < 2 || len(upper) < 2 || len(lower)+len(upper) < 5 {
		return nil
	}
	return append(lower[:len(lower)-1], upper[:len(upper)-1]...)
}

// inOrder sorts points from left to right, and those over each other, a hair apart, from front to back: a chain of a hull must
// not go to and fro along such a line.
func inOrder(points []mgl64.Vec2) {
	slices.SortFunc(points, func(a, b mgl64.Vec2) int { return cmp.Compare(a[0], b[0]) })
	for from := 0; from < len(points); {
		to := from + 1
		for to < len(points) && points[to][0]-points[to-1][0] < onFloor {
			to++
		}
		slices.SortFunc(points[from:to], func(a, b mgl64.Vec2) int { return cmp.Compare(a[1], b[1]) })
		from = to
	}
}

// turn is twice the area of a triangle, mm²; positive where it turns to the left.
func turn(a, b, c mgl64.Vec2) float64 {
	u, v := b.Sub(a), c.Sub(a)
	return u[0]*v[1] - u[1]*v[0]
}

// Inside is how far a point lies inside the line along each edge of an outline, mm; outside is less than nothing.
func Inside(feet []mgl64.Vec2, p mgl64.Vec2) []float64 {
	out := make([]float64, len(feet))
	for i, a := range feet {
		b := feet[(i+1)%len(feet)]
		out[i] = turn(a, b, p) / b.Sub(a).Len()
	}
	return out
}

// LiftsAt is the load, N, that tips a piece when it acts straight down at a distance outside the line of its feet,
// mm, against a weight, N, that acts back from that line. A load on the line or within it never does.
func LiftsAt(outside, weight, back float64) float64 {
	if outside <= 0 {
		return math.Inf(1)
	}
	return weight * back / outside
}

// weighing is how a piece stands and where its weight acts, world frame; it is the same for each of its seats.
type weighing struct {
	feet   []mgl64.Vec2
	middle mgl64.Vec3 // of gravity
	mass   float64    // kg; 0 = nothing weighs anything
}

func weigh(p *form.Piece) weighing {
	w := weighing{feet: Feet(p)}
	for _, q := range p.Parts {
		if q.Solid != nil {
			w.middle, w.mass = w.middle.Add(q.Place.Mul4x1(q.Middle.Vec4(1)).Vec3().Mul(q.Mass)), w.mass+q.Mass
		}
	}
	if w.mass > 0 {
		w.middle = w.middle.Mul(1 / w.mass)
	}
	return w
}

// stands reckons the least load that lifts a foot wherever on the seat it acts straight down.
func (r *reckoning) stands() {
	feet, mass := r.weight.feet, r.weight.mass
	if feet == nil || mass == 0 {
		return
	}
	back := Inside(feet, r.weight.middle.Vec2())
	r.platformCorner(back)
	least, far := math.Inf(1), 0.
	for _, c := range corners(r.top) {
		for i, in := range Inside(feet, c.Vec2()) {
			if lifts := LiftsAt(-in, mass*gravity, back[i]); lifts < least {
				least, far = lifts, -in
			}
		}
	}
	if far < noise || math.IsInf(least, 1) {
		return // it stands wherever it is loaded
	}
	r.add(Figure{ID: "lifts-at-edge", What: fmt.Sprintf("load straight down on the outermost edge of %s, %s outside the outline of the feet, that tips the piece", seatName(r.top), r.up(far)),
		Value: max(least, 0), Limit: r.load, Least: true, Unit: "N", Formula: "own weight · its middle inside the foot line / edge outside the foot line", Source: standsSource, Parts: []string{r.top.ID},
		Sizes: append(r.footCuts(), "corners.overhang", "corners.overhang-edges", "splay.ends", "splay.edges", r.seat.Path), Advice: "feet as wide as the top, or nobody on its very edge", Level: part.Note})
}

// footCuts are the depths of notches and tapers that are cut into the sides from the floor up: the feet are narrower by them.
func (r *reckoning) footCuts() (paths []string) {
	for i, f := range r.d.Features {
		cut := f.Kind == string(part.Notch) || f.Kind == string(part.Taper)
		if cut && f.From == "floor-end" && strings.HasPrefix(f.On, "side") {
			paths = append(paths, fmt.Sprintf("features.%d.depth", i))
		}
	}
	return paths
}
