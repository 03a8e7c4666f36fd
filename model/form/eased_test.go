package form_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// rounded tells whether a round-over of radius r on the edge of two planes takes a point of the
// wood behind them: it lies before both tangent points and outside the round.
func rounded(p, q solid.Plane, at mgl64.Vec3, r float64) bool {
	k := p.N.Dot(q.N)
	u, v := p.N.Dot(at)-p.D+r, q.N.Dot(at)-q.D+r // from the round's axis
	return u >= k*v && v >= k*u && u*u+v*v-2*u*v*k > r*r*(1-k*k)
}

// All the wood that the round-overs of one board take, against a grid of points.
func TestEasedEdgesAgainstPoints(t *testing.T) {
	const r = 8.0
	d := formtest.Butt()
	d.Size.Height, d.Size.Depth, d.Size.Width = 110, 90, 130 // small, so that the corners count
	d.Splay.Edges = 10 * measure.Degree
	d.Corners.Screws = nil
	for _, c := range []struct {
		name, on string
		arch     bool
	}{
		{"side", "side-right", false},
		{"side with an arch", "side-right", true},
		{"top", "top", false},
	} {
		d.Features = []form.Feature{{On: c.on, Kind: "round-over", Radius: r}}
		if c.arch {
			d.Features = append(d.Features, form.Feature{On: c.on, Kind: "arch", Width: 60, Rise: 20})
		}
		q := form.Build(d).Part(c.on)
		sum := 0.0
		for _, e := range q.Eased {
			sum += e.Removed
		}
		want := takenByPoints(q, r)
		if math.Abs(sum-want) > 0.01*want {
			t.Errorf("%s: %.0f mm³, by points %.0f", c.name, sum, want)
		}
	}
}

func takenByPoints(q *part.Part, r float64) float64 {
	plane := func(id string) solid.Plane {
		for _, c := range q.Cuts {
			if c.ID == id {
				return solid.Plane{N: c.Normal, D: c.Offset}
			}
		}
		panic("no cut " + id)
	}
	outer := solid.Plane{N: mgl64.Vec3{0, 0, 1}}
	inner := solid.Plane{N: mgl64.Vec3{0, 0, -1}, D: q.Blank.Thickness.MM()}
	front, back := plane("front-edge"), plane("back-edge")
	var edges [][2]solid.Plane
	if q.ID == "top" {
		l, r := plane("left-end"), plane("right-end")
		edges = [][2]solid.Plane{{outer, front}, {outer, back}, {outer, l}, {outer, r}, {front, l}, {front, r}, {back, l}, {back, r}}
	} else {
		floor := plane("floor-end")
		edges = [][2]solid.Plane{{outer, front}, {outer, back}, {inner, front}, {inner, back},
			{outer, floor}, {inner, floor}, {front, floor}, {back, floor}}
	}
	lo, hi := q.Solid.Bounds()
	size := hi.Sub(lo)
	const n = 700000
	hits := 0
	for i := range n { // the golden section's way of spreading points, in three directions
		at := lo
		for k, step := range [3]float64{0.8191725133961645, 0.6710436067037893, 0.5497004779019703} {
			_, part := math.Modf(0.5 + step*float64(i+1))
			at[k] += part * size[k]
		}
		if inWood(q, at) && (roundedAny(edges, at, r) || inRim(q, at, r)) {
			hits++
		}
	}
	return float64(hits)/n*size[0]*size[1]*size[2] + underTop(q)
}

func roundedAny(edges [][2]solid.Plane, at mgl64.Vec3, r float64) bool {
	for _, e := range edges {
		if rounded(e[0], e[1], at, r) {
			return true
		}
	}
	return false
}

// underTop is what the round-overs of the lower edges between the sides take, by their own account.
func underTop(q *part.Part) float64 {
	sum := 0.0
	for _, e := range q.Eased {
		if e.Name == "lower front" || e.Name == "lower back" {
			sum += e.Removed
		}
	}
	return sum
}

func inWood(q *part.Part, at mgl64.Vec3) bool {
	for _, c := range q.Cuts {
		if c.Normal.Dot(at) > c.Offset {
			return false
		}
	}
	for _, f := range q.Features {
		if f.Kind == part.Arch && at.Vec2().Sub(archCentre(f)).Len() < f.Radius.MM() {
			return false
		}
	}
	return true
}

// archCentre of an arch in the floor end, which looks along +x.
func archCentre(f part.Feature) mgl64.Vec2 {
	return f.Centre.Add(mgl64.Vec2{(f.Radius - f.Width).MM(), 0})
}

// inRim tells whether the round-over of an arch's rims takes a point.
func inRim(q *part.Part, at mgl64.Vec3, r float64) bool {
	for _, f := range q.Features {
		if f.Kind != part.Arch {
			continue
		}
		behind := at.Vec2().Sub(archCentre(f)).Len() - f.Radius.MM()
		for _, depth := range []float64{-at[2], q.Blank.Thickness.MM() + at[2]} {
			if u, v := r-behind, r-depth; u > 0 && v > 0 && math.Hypot(u, v) > r {
				return true
			}
		}
	}
	return false
}
