package motion

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

const (
	// speck, mm, is the radius of a disc that holds more than what grazes: π·0.06² = 0.0113 mm².
	speck = 0.06
	// insideEdge, mm, is how far inside its edges a face is felt.
	insideEdge = 0.08
	// mostFelt places of a face are felt before it is laid out in tiles.
	mostFelt = 16
)

// rim is a face's outline as the eye sees it: sides and discs across the third axis.
type rim struct {
	lo, hi mgl64.Vec3
	loops  [][]mgl64.Vec3
	discs  []mgl64.Vec3 // middle, and the radius for a third
}

// rim puts the outline of a face before the eye, as the place m puts it.
func (e *eye) rim(b *body, f *flat, m *mgl64.Mat4) *rim {
	if f.rim != nil {
		return f.rim
	}
	o := b.surface(stopped).Outline(f.face, &e.kept)
	r := &rim{loops: o.Loops} // its lists are ours
	r.lo, r.hi = nowhere()
	for _, l := range r.loops {
		for i := range l {
			l[i] = placed(m, l[i])
			r.lo, r.hi = lower(r.lo, l[i]), upper(r.hi, l[i])
		}
	}
	for _, d := range o.Discs {
		at := placed(m, d.Middle)
		r.discs = append(r.discs, mgl64.Vec3{at[0], at[1], d.Radius})
	}
	f.rim = r
	return r
}

// feels looks for a speck that lies in both of two faces in one plane, a little inside the sides of either. Finding one
// proves that they touch; most that do touch over the whole of the smaller one, and are known by the first speck.
func (r *rim) feels(s *rim) bool {
	return r.reachesInto(s) || s.reachesInto(r)
}

// reachesInto tries specks beside the sides of a face.
func (r *rim) reachesInto(s *rim) bool {
	tried := 0
	for _, l := range r.loops {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			d := q.Sub(p)
			long := math.Hypot(d[0], d[1])
			if long < insideEdge {
				continue
			}
			if tried++; tried > mostFelt {
				return false
			}
			in := insideEdge / long
			x, y := (p[0]+q[0])/2, (p[1]+q[1])/2
			if r.holds(x-d[1]*in, y+d[0]*in) && s.holds(x-d[1]*in, y+d[0]*in) ||
				r.holds(x+d[1]*in, y-d[0]*in) && s.holds(x+d[1]*in, y-d[0]*in) {
				return true
			}
		}
	}
	return false
}

// holds tells whether a face has wood all over the speck at a place.
func (r *rim) holds(x, y float64) bool {
	if x < r.lo[0]+speck || x > r.hi[0]-speck || y < r.lo[1]+speck || y > r.hi[1]-speck {
		return false
	}
	for _, d := range r.discs {
		if math.Hypot(x-d[0], y-d[1]) < d[2]+speck {
			return false
		}
	}
	in := false
	for _, l := range r.loops {
		p := l[len(l)-1]
		for _, q := range l {
			if nearer(x, y, p, q) {
				return false
			}
			if (p[1] > y) != (q[1] > y) && (p[0]-x)*(q[1]-p[1]) > (p[1]-y)*(q[0]-p[0]) == (q[1] > p[1]) {
				in = !in
			}
			p = q
		}
	}
	return in
}

// nearer tells whether a side comes nearer than a speck's radius to its middle.
func nearer(x, y float64, p, q mgl64.Vec3) bool {
	dx, dy := q[0]-p[0], q[1]-p[1]
	ax, ay := x-p[0], y-p[1]
	t := ax*dx + ay*dy
	if l := dx*dx + dy*dy; t > 0 {
		t = min(t, l) / l
		ax, ay = ax-t*dx, ay-t*dy
	}
	return ax*ax+ay*ay < speck*speck
}
