package solid

import "github.com/go-gl/mathgl/mgl64"

// Finder tells of many points whether they lie in the wood of one solid, faster than Contains does for one.
type Finder struct {
	survey
	whole extent
}

// Finder prepares the solid for many questions.
func (s *Solid) Finder() *Finder {
	f := &Finder{survey: survey{s: s}}
	f.extend()
	if len(f.faces) > 0 {
		f.whole = f.faces[0]
	}
	for i := range f.faces {
		f.whole.add(&f.faces[i])
	}
	return f
}

// steep are directions almost along a board's z, by which a ray leaves it past few faces, and that no edge of
// furniture is likely to run along.
var steep = [3]mgl64.Vec3{
	mgl64.Vec3{0.0137, 0.0291, 1}.Normalize(),
	mgl64.Vec3{-0.0313, 0.0173, -1}.Normalize(),
	mgl64.Vec3{0.0229, -0.0191, 1}.Normalize(),
}

// Contains tells whether p lies in the wood, as Solid.Contains does.
func (f *Finder) Contains(p mgl64.Vec3) bool {
	for a := range 3 {
		if len(f.faces) == 0 || p[a] < f.whole.lo[a] || p[a] > f.whole.hi[a] {
			return false
		}
	}
	votes := 0
	for i, d := range steep {
		count := 0
		for j := range f.faces {
			if f.faces[j].meets(p, d) {
				count += f.s.piercedFace(&f.s.Faces[j], p, d)
			}
		}
		votes += count % 2
		if i == 1 && votes != 1 {
			break
		}
	}
	return votes >= 2
}

// meets tells whether the ray from p along d, none of whose parts is 0, comes to within SamePoint of the box.
func (e *extent) meets(p, d mgl64.Vec3) bool {
	// The last coordinate changes fastest along the steep rays: it bounds the stretch that counts for the others.
	near, far := (e.lo[2]-SamePoint-p[2])/d[2], (e.hi[2]+SamePoint-p[2])/d[2]
	if near > far {
		near, far = far, near
	}
	if far < 0 {
		return false
	}
	near = max(near, 0)
	for a := range 2 {
		u, v := p[a]+near*d[a], p[a]+far*d[a]
		if max(u, v) < e.lo[a]-SamePoint || min(u, v) > e.hi[a]+SamePoint {
			return false
		}
	}
	return true
}
