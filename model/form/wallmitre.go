package form

import (
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// mitre is a mitred corner as seen along its line, with directions of the world.
type mitre struct {
	meeting
	along  mgl64.Vec3  // unit, up the corner
	out    mgl64.Vec3  // unit, in the mitre from the inner line to the outer one
	part   solid.Plane // the mitre, its normal out of the first wall
	inner  mgl64.Vec3  // a point of the inner line
	width  float64     // of the mitre, from line to line
	floor  float64     // height, above which loose parts stay clear of a bottom let into the walls; −∞ without
	splits bool        // the edges of the two walls lie in different planes
}

func (e *enclosure) mitre(m meeting) mitre {
	k := mitre{meeting: m, along: along(m.a, m.b), part: parting(m.a, m.b), inner: m.at(m.a.inner, m.b.inner, e.foot), floor: math.Inf(-1)}
	outer := m.at(m.a.outer, m.b.outer, e.foot)
	across := outer.Sub(k.inner)
	across = across.Sub(k.along.Mul(across.Dot(k.along)))
	k.width, k.out = across.Len(), across.Normalize()
	if u := e.d.Bottom; u != nil && u.Joint != ScrewedOn {
		k.floor = (u.Up + u.Thickness).MM() + webAtTails
	}
	const alike = 1e-9
	k.splits = m.a.upper.N.Sub(m.b.upper.N).Len() > alike
	return k
}

// cutMitre ends both walls in the plane through the corner's outer and inner line.
func (e *enclosure) cutMitre(m meeting) bool {
	p := parting(m.a, m.b)
	one, other := m.ends()
	one.cut, other.cut = p, flip(p)
	return true
}

func (e *enclosure) fitMitre(m meeting) {
	e.piece.Joints = append(e.piece.Joints, e.mitred(m, Mitre))
}

func (e *enclosure) mitred(m meeting, kind string) joint.Joint {
	return joint.Joint{
		ID: m.a.id + "/" + m.b.id, Kind: kind, TailBoard: m.a.id, PinBoard: m.b.id,
		Dihedral: joint.Dihedral(m.a.outer.N, m.b.outer.N), Width: measure.Length(e.height(m)),
		Slides: m.a.out.Mul(-1), Corner: along(m.a, m.b),
	}
}

// at is a point by its places up the corner from the inner line's foot, out along the mitre from the
// inner line, and square to the mitre out of the first wall.
func (k mitre) at(up, out, off float64) mgl64.Vec3 {
	return k.inner.Add(k.along.Mul(up)).Add(k.out.Mul(out)).Add(k.part.N.Mul(off))
}

// reach is the stretch up the corner in which a section lies clear of both walls' edges and of the
// bottom's groove; the section is given by its points at the foot of the inner line.
func (k mitre) reach(section []mgl64.Vec3) (low, high float64) {
	low, high = math.Inf(-1), math.Inf(1)
	for _, p := range section {
		for _, w := range []*wall{k.a, k.b} {
			low = max(low, (w.lower.N.Dot(p)-w.lower.D)/-w.lower.N.Dot(k.along))
			high = min(high, (w.upper.D-w.upper.N.Dot(p))/w.upper.N.Dot(k.along))
		}
		if !math.IsInf(k.floor, -1) {
			low = max(low, (k.floor-p[2])/k.along[2])
		}
	}
	return low, high
}

// runsOut is the stretch up the corner that reaches past both walls' edges all over a section.
func (k mitre) runsOut(section []mgl64.Vec3) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range section {
		for _, w := range []*wall{k.a, k.b} {
			low = min(low, (w.lower.N.Dot(p)-w.lower.D)/-w.lower.N.Dot(k.along))
			high = max(high, (w.upper.D-w.upper.N.Dot(p))/w.upper.N.Dot(k.along))
		}
	}
	return low - beyond, high + beyond
}

// slot cuts a hollow into both walls of a corner. Its planes are those of the hollow as the two walls
// share it, normals inward; each wall gets it as far as a little beyond the mitre.
func (e *enclosure) slot(m meeting, tag string, sizes []string, planes ...solid.Plane) {
	for _, at := range []struct {
		wall int
		end  side
	}{{m.i, right}, {m.j, left}} {
		b := e.boards[at.wall]
		s := solid.Slot{Tag: tag + " " + at.end.word()}
		for _, p := range planes {
			s.Walls = append(s.Walls, solid.Wall{Plane: b.local(p)})
		}
		b.sizesOf[s.Tag] = sizes
		b.shape.Slots = append(b.shape.Slots, s)
	}
}

func slipID(kind part.Slip, number string) string { return string(kind) + "-" + number }

// slip begins a loose part of a corner between its faces and the cuts round it. x is its grain and z
// looks out of its outer face, in which at lies.
func slip(kind part.Slip, number, timber string, at, x, z mgl64.Vec3, thickness float64, around ...edge) *board {
	name := strings.ToUpper(string(kind[:1])) + string(kind[1:]) + " " + number
	b := newBoard(&part.Part{ID: slipID(kind, number), Name: name, Timber: timber, Slip: kind}, part.Frame(at, x, z.Cross(x), z), thickness, around...)
	for k := range b.around {
		b.shape.Outline = append(b.shape.Outline, b.wall(b.around[k]))
	}
	return b
}
