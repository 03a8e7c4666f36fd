package sheet

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/render/draw"
	"splaywright/render/view"
)

// fronts tells which part one sees at a place of a picture.
type fronts struct{ list []frontFace }

// frontFace is a face that looks at the viewer: its outlines in the picture, and its depth towards the viewer
// at a place, a·x + b·y + c.
type frontFace struct {
	part    string
	box     draw.Box
	loops   [][]draw.Point
	a, b, c float64
}

func newFronts(s *view.Scene, d view.Direction) fronts {
	var out fronts
	for i := range s.Faces() {
		id, normal, loops := s.Face(i)
		toward := normal.Dot(d.Toward)
		if toward < 1e-6 || len(loops) == 0 || len(loops[0]) == 0 {
			continue
		}
		f := frontFace{part: id, box: draw.EmptyBox()}
		for _, l := range loops {
			pts := make([]draw.Point, len(l))
			for k, v := range l {
				pts[k] = d.Point(v)
				f.box = f.box.Add(pts[k])
			}
			f.loops = append(f.loops, pts)
		}
		// the face's plane in the picture's frame
		f.a, f.b = -normal.Dot(d.Right)/toward, -normal.Dot(d.Up)/toward
		f.c = normal.Dot(loops[0][0]) / toward
		out.list = append(out.list, f)
	}
	return out
}

// at is the part that one sees there, "" where there is none.
func (f fronts) at(p draw.Point) string {
	part, near := "", math.Inf(-1)
	for i := range f.list {
		g := &f.list[i]
		if z := g.a*p.X + g.b*p.Y + g.c; z > near && g.holds(p) {
			part, near = g.part, z
		}
	}
	return part
}

// sees tells whether one sees a part at a place and round about it.
func (f fronts) sees(part string, p draw.Point, about float64) bool {
	for _, d := range []draw.Point{{}, {X: about}, {X: -about}, {Y: about}, {Y: -about}} {
		if f.at(draw.Point{X: p.X + d.X, Y: p.Y + d.Y}) != part {
			return false
		}
	}
	return true
}

// hides tells whether a part stands before a place of the picture that lies so far towards the viewer.
func (f fronts) hides(p draw.Point, toward float64) bool {
	const touching = 0.5 // mm
	for i := range f.list {
		g := &f.list[i]
		if g.a*p.X+g.b*p.Y+g.c > toward+touching && g.holds(p) {
			return true
		}
	}
	return false
}

// open are the stretches of a line in space that no part hides, in the picture: all longer than a hundredth of it, and
// their ends much closer than that.
func (f fronts) open(d view.Direction, a, b mgl64.Vec3) [][2]draw.Point {
	const steps = 100
	at := func(t float64) mgl64.Vec3 { return a.Add(b.Sub(a).Mul(t / steps)) }
	seen := func(t float64) bool { return !f.hides(d.Point(at(t)), at(t).Dot(d.Toward)) }
	between := func(open, hidden float64) draw.Point { // where it passes behind a part
		for range 10 {
			if mid := (open + hidden) / 2; seen(mid) {
				open = mid
			} else {
				hidden = mid
			}
		}
		return d.Point(at(open))
	}
	var out [][2]draw.Point
	was := false
	var from draw.Point
	for i := range steps {
		t := float64(i) + 0.5
		is := seen(t)
		switch {
		case is && !was && i == 0:
			from = d.Point(a)
		case is && !was:
			from = between(t, t-1)
		case was && !is:
			out = append(out, [2]draw.Point{from, between(t-1, t)})
		}
		was = is
	}
	if was {
		out = append(out, [2]draw.Point{from, d.Point(b)})
	}
	return out
}

func (f *frontFace) holds(p draw.Point) bool {
	if p.X < f.box.Min.X || p.X > f.box.Max.X || p.Y < f.box.Min.Y || p.Y > f.box.Max.Y {
		return false
	}
	odd := false
	for _, l := range f.loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			if (a.Y > p.Y) != (b.Y > p.Y) && a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) > p.X {
				odd = !odd
			}
		}
	}
	return odd
}

// stretches are the stretches of a straight line on a part, mm of paper at a scale, along which one sees the
// part, to a hundredth of its length.
func (f fronts) stretches(part string, a, b draw.Point, scale float64) [][2]draw.Point {
	const steps = 100
	var out [][2]draw.Point
	at := func(i int) draw.Point {
		t := float64(i) / steps
		return draw.Point{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t}
	}
	from := -1
	for i := range steps + 1 {
		mid := at(i)
		if i < steps {
			next := at(i + 1)
			mid = draw.Point{X: (mid.X + next.X) / 2, Y: (mid.Y + next.Y) / 2}
			if f.at(draw.Point{X: mid.X / scale, Y: mid.Y / scale}) == part {
				if from < 0 {
					from = i
				}
				continue
			}
		}
		if from >= 0 {
			out = append(out, [2]draw.Point{at(from), at(i)})
			from = -1
		}
	}
	return out
}
