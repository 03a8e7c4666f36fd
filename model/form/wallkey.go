package form

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

const (
	// keyShare of the thinnest wall that a key slot is deep at most where its depth is left out: the corner
	// is at least as deep as the wall is thick, so that a third stays under it inside; and keyLeg of the
	// shortest wall that it is long on a wall's face. Common practice.
	keyShare = 2.0 / 3
	keyLeg   = 1.0 / 4
	// keyPitch is how far apart keys are that nobody counted, and mostKeys how many a corner may have.
	keyPitch = 2 * measure.Inch
	mostKeys = 50
)

// keysDefaults: slots as wide as the saw's kerf, so that one pass cuts them.
func keysDefaults(d *Design) {
	if d.Corners.Joint != KeyedMitre {
		return
	}
	var k Keys
	if d.Corners.Keys != nil {
		k = *d.Corners.Keys
	}
	fill(&k.Thickness, d.Saw.Kerf)
	fill(&k.Thickness, usualKerf)
	fill(&k.Count, int(max(1, min(mostKeys, math.Round(float64(d.Size.Height/keyPitch))))))
	fill(&k.Timber, d.Boards.Side.Timber)
	d.Corners.Keys = &k
}

// refuseKeys reports sizes that no keys can have.
func refuseKeys(b *assembly) {
	k := b.d.Corners.Keys
	if k == nil {
		return
	}
	if b.d.Corners.Joint != KeyedMitre {
		b.find(stop("keys-without-mitre", fmt.Sprintf("Only a %s has keys; choose that joint, or leave corners.keys out.", KeyedMitre), 0, 0, "", "corners.keys", "corners.joint"))
		return
	}
	b.aboveNothing("thickness of the keys", "corners.keys.thickness", k.Thickness)
	if k.Depth < 0 || math.IsInf(k.Depth.MM(), 0) {
		b.find(stop("size-not-above-nothing", "The depth of the key slots must be more than nothing.", k.Depth.MM(), 0, "mm", "corners.keys.depth"))
	}
	if k.Count < 1 || k.Count > mostKeys {
		b.find(stop("key-count", fmt.Sprintf("A corner has 1 to %d keys.", mostKeys), float64(k.Count), mostKeys, "", "corners.keys.count"))
	}
	if k.Pitch < 0 {
		b.find(stop("key-pitch", "Keys follow each other at a pitch of more than nothing; leave it out to spread them evenly.", k.Pitch.MM(), 0, "mm", "corners.keys.pitch"))
	}
}

// keyPaths are the sizes that place the keys.
var keyPaths = []string{"corners.keys.count", "corners.keys.thickness", "corners.keys.depth", "corners.keys.pitch"}

// fitKeys saws slots across the corner, square to it, and fills them with keys flush with both walls.
func (e *enclosure) fitKeys(m meeting) {
	n, k := e.keys(), e.mitre(m)
	j := e.mitred(m, KeyedMitre)
	low, high := k.reach(k.keySection(n))
	pitch := n.Pitch.MM()
	if pitch == 0 {
		pitch = (high - low) / float64(n.Count)
	}
	foot := k.onOuter(m.a.lower)
	j.Keys = &joint.Keys{
		Thickness: n.Thickness, Depth: n.Depth, Pitch: measure.Length(pitch),
		Left: measure.Length(k.bisector().Dot(k.out)*k.width) - n.Depth, Length: k.keyLength(n),
		Cradle: 90*measure.Degree - j.Dihedral/2, Turn: [2]measure.Angle{left: turn(m.a, k.along), right: turn(m.b, k.along)},
	}
	var middles []float64
	for i := range n.Count {
		at := (low+high)/2 + pitch*(float64(i)-float64(n.Count-1)/2)
		middles = append(middles, at)
		j.Keys.At = append(j.Keys.At, measure.Length(at-foot))
	}
	e.piece.Joints = append(e.piece.Joints, j)
	if e.refuseSlots(j, low, high, middles) || e.refuseLegs(k, n) {
		return
	}
	for _, at := range middles {
		e.key(k, n, at, numbered(len(e.loose)))
	}
}

// keys are the keys with their depth, which is written into the design.
func (e *enclosure) keys() *Keys {
	n := *e.d.Corners.Keys
	if n.Depth == 0 {
		n.Depth = thinnestWall(e.d) * keyShare
		for _, m := range e.meetings() {
			k := e.mitre(m)
			n.Depth = min(n.Depth, measure.Length(keyLeg*min(e.shortest(k.i), e.shortest(k.j))/k.legOf()))
		}
		e.d.Corners.Keys = &n
	}
	return &n
}

// legOf is how far a slot of depth 1 reaches from the outer line on a wall's outer face.
func (k mitre) legOf() float64 {
	into := k.a.outer.N.Cross(k.along).Normalize()
	return 1 / math.Abs(into.Dot(k.bisector()))
}

// shortest is how long a wall's outer face is at least.
func (e *enclosure) shortest(i int) float64 {
	if e.faces != nil {
		return e.faces[i]
	}
	return min(e.room(i, false, e.foot), e.room(i, false, e.rim))
}

// refuseLegs reports slots that run into those of a wall's other end.
func (e *enclosure) refuseLegs(k mitre, n *Keys) bool {
	leg := n.Depth.MM() * k.legOf()
	for _, i := range []int{k.i, k.j} {
		if room := e.shortest(i) / 2; leg >= room {
			f := stop("key-slots-meet", fmt.Sprintf("Key slots %s deep reach %s along the outer face at this corner, and a wall is only %s long to its middle: they would run into those of its other end.",
				e.show(n.Depth), e.show(measure.Length(leg)), e.show(measure.Length(room))), leg, room, "mm", "corners.keys.depth", "size.width", "size.depth", "size.staves")
			f.Parts = []string{e.walls[i].id}
			e.find(f)
			return true
		}
	}
	return false
}

// turn is how far a corner stands away from square to a wall's edges, on the wall's face.
func turn(w *wall, along mgl64.Vec3) measure.Angle {
	return measure.Angle(math.Asin(math.Abs(w.right.Dot(along))))
}

// onOuter is where the corner's outer line meets a plane, up from the foot of the inner line.
func (k mitre) onOuter(p solid.Plane) float64 {
	return (p.D - p.N.Dot(k.at(0, k.width, 0))) / p.N.Dot(k.along)
}

// keyFloor is the plane of a slot's floor, its normal towards the outer line.
func (k mitre) keyFloor(n *Keys) solid.Plane {
	out := k.bisector()
	return solid.Plane{N: out, D: out.Dot(k.at(0, k.width, 0)) - n.Depth.MM()}
}

// bisector looks out of the corner evenly between the outer faces, square to its line.
func (k mitre) bisector() mgl64.Vec3 { return k.a.outer.N.Add(k.b.outer.N).Normalize() }

// keySection are the three points of a key's section at the foot of the inner line: the outer line, and where
// the floor comes out of the two outer faces.
func (k mitre) keySection(n *Keys) []mgl64.Vec3 {
	floor := k.keyFloor(n)
	level := solid.Plane{N: k.along, D: k.along.Dot(k.inner)}
	return []mgl64.Vec3{k.at(0, k.width, 0), meet(floor, k.a.outer, level), meet(floor, k.b.outer, level)}
}

// keyLength is how long a key is on the slot's floor.
func (k mitre) keyLength(n *Keys) measure.Length {
	s := k.keySection(n)
	return measure.Length(s[1].Sub(s[2]).Len())
}

// refuseSlots reports slots that come out inside, or that have no room up the corner.
func (e *enclosure) refuseSlots(j joint.Joint, low, high float64, at []float64) bool {
	k, half := j.Keys, j.Keys.Thickness.MM()/2
	short := min(at[0]-half-low, high-at[len(at)-1]-half)
	var f part.Finding
	switch {
	case !(k.Left > 0):
		f = stop("key-slot-through", fmt.Sprintf("Key slots %s deep come out inside: from the outer to the inner line the corner measures %s.", e.show(k.Depth), e.show(k.Depth+k.Left)),
			k.Depth.MM(), (k.Depth + k.Left).MM(), "mm", "corners.keys.depth", "boards.side.thickness")
	case len(at) > 1 && !(k.Pitch > k.Thickness):
		f = stop("keys-run-together", fmt.Sprintf("Keys %s thick at a pitch of %s run into each other.", e.show(k.Thickness), e.show(k.Pitch)),
			k.Pitch.MM(), k.Thickness.MM(), "mm", "corners.keys.pitch", "corners.keys.thickness", "corners.keys.count")
	case !(short > 0):
		f = stop("keys-without-room", fmt.Sprintf("%s at a pitch of %s reach %s past the room of %s up the corner.", plural(len(at), "key", "keys"), e.show(k.Pitch), e.show(measure.Length(-short)), e.show(measure.Length(max(0, high-low)))),
			short, 0, "mm", "corners.keys.count", "corners.keys.pitch", "corners.keys.thickness", "size.height")
	default:
		return false
	}
	f.Parts = []string{j.TailBoard, j.PinBoard}
	e.find(f)
	return true
}

// key saws one slot and makes what fills it: its grain across the corner, its outer face up.
func (e *enclosure) key(k mitre, n *Keys, at float64, name string) {
	floor, corner := k.keyFloor(n), k.at(0, k.width, 0)
	grain := floor.N.Cross(k.along) // from the second wall to the first
	lo := k.along.Dot(k.inner) + at - n.Thickness.MM()/2
	wide := k.keyLength(n).MM() + beyond
	e.slot(k.meeting, "key slot "+name, keyPaths, floor,
		solid.Plane{N: floor.N.Mul(-1), D: -floor.D - n.Depth.MM() - beyond},
		solid.Plane{N: grain, D: grain.Dot(corner) - wide}, solid.Plane{N: grain.Mul(-1), D: -grain.Dot(corner) - wide},
		solid.Plane{N: k.along, D: lo}, solid.Plane{N: k.along.Mul(-1), D: -lo - n.Thickness.MM()})
	b := slip(part.Key, name, n.Timber, k.at(at+n.Thickness.MM()/2, k.width, 0), grain, k.along, n.Thickness.MM(),
		edge{id: "floor", kind: part.Rip, plane: flip(floor)},
		edge{"right-end", part.Crosscut, k.a.outer, slipID(part.Key, name) + "/left-end"},
		edge{"left-end", part.Crosscut, k.b.outer, slipID(part.Key, name) + "/right-end"},
	)
	b.sizes = keyPaths
	e.loose = append(e.loose, b)
}
