package form

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/solid"
)

// meeting is a corner of two walls: a's right end and b's left end as seen from outside.
type meeting struct {
	i, j int // numbers of the walls
	a, b *wall
	n    int // number of the corner
}

// at is where two planes meet at a level up the corner.
func (m meeting) at(p, q solid.Plane, level float64) mgl64.Vec3 {
	return meet(p, q, solid.Plane{N: m.a.rise, D: level})
}

// meetings are all corners.
func (e *enclosure) meetings() []meeting {
	if e.corners != nil {
		return e.corners
	}
	out := make([]meeting, len(e.walls))
	for i := range out {
		out[i] = e.meeting(i)
	}
	return out
}

func (e *enclosure) meeting(i int) meeting {
	j := e.next(i)
	return meeting{i, j, e.walls[i], e.walls[j], i}
}

// ends are the two ends that meet, a's first.
func (m meeting) ends() (*wallEnd, *wallEnd) { return &m.a.end[right], &m.b.end[left] }

// cornerJoint is a way in which two walls meet. cut shapes the ends before the boards are made,
// fit hollows and bores the boards and notes the joint.
type cornerJoint struct {
	name string
	cut  func(*enclosure, meeting) bool // false: a finding tells why not
	fit  func(*enclosure, meeting)
}

// cornerJoints are the joints of walls. A new one is a file of its own and a line here.
var cornerJoints = []cornerJoint{
	{ThroughDovetail, (*enclosure).cutTails, (*enclosure).fitTails},
	{HalfBlindDovetail, (*enclosure).cutTails, (*enclosure).fitTails},
	{FingerJoint, (*enclosure).cutTails, (*enclosure).fitTails},
	{Butt, (*enclosure).cutButt, (*enclosure).fitButt},
	{Housing, (*enclosure).cutHousing, (*enclosure).fitHousing},
	{GrooveTongue, (*enclosure).cutHousing, (*enclosure).fitHousing},
	{Mitre, (*enclosure).cutMitre, (*enclosure).fitMitre},
	{SplinedMitre, (*enclosure).cutMitre, (*enclosure).fitSpline},
	{KeyedMitre, (*enclosure).cutMitre, (*enclosure).fitKeys},
}

// CornerJoints are the names of the joints that a corner can have: of a top with its sides and of two walls.
func CornerJoints() []string { return WallJoints() }

// WallJoints are the names of the joints that walls can have, a mitre first.
func WallJoints() []string {
	var out []string
	for _, j := range cornerJoints {
		out = append(out, j.name)
	}
	return out
}

func (e *enclosure) joint() cornerJoint {
	for _, j := range cornerJoints {
		if j.name == e.d.Corners.Joint {
			return j
		}
	}
	return cornerJoint{}
}

// height of a corner along its line, between the levels of the walls' edges.
func (e *enclosure) height(m meeting) float64 {
	return (e.rim - e.foot) / along(m.a, m.b).Dot(m.a.rise)
}

// covering is a corner in which one wall runs over the end of the other.
type covering struct {
	over, under       *wall
	overAt, underAt   int // numbers of the walls
	overEnd, underEnd side
}

// covering tells which wall runs over: the one that the design names. In a ring every stave runs
// over the next, so that all are alike.
func (e *enclosure) covering(m meeting) covering {
	c := covering{m.a, m.b, m.i, m.j, right, left}
	if e.d.Form != ringForm && m.a.long != (e.d.Corners.Over == OnFront) {
		c = covering{m.b, m.a, m.j, m.i, left, right}
	}
	return c
}

// into is the unit direction of the butting wall's grain, from the corner into the wall.
func (c covering) into() (v [3]float64) { return c.under.right.Mul(-c.underEnd.sign()) }

// past is how far the covering wall's end is moved out for a length along its grain, square to
// the butting wall's face.
func (c covering) past(l measure.Length) float64 {
	return l.MM() * math.Abs(c.over.right.Dot(c.under.outer.N))
}

// cutButt ends the covering wall in the other's outer plane and the other at its inner face.
func (e *enclosure) cutButt(m meeting) bool {
	e.cover(e.covering(m), 0, 0)
	return true
}

// cover cuts both ends: the covering wall runs past the other, the other goes deep into it.
func (e *enclosure) cover(c covering, past, deep float64) {
	end := c.under.outer
	end.D += past
	c.over.end[c.overEnd].cut = end
	stop := c.under.inner
	c.over.end[c.overEnd].stop = &stop
	foot := flip(c.over.inner)
	foot.D += deep
	c.under.end[c.underEnd].cut = foot
	if deep > 0 && !e.runsOut() {
		stop := c.over.inner
		c.under.end[c.underEnd].stop = &stop
	}
}

// runsOut tells whether the groove of a bottom runs out through the tongues of its walls, where the other wall
// hides it: the staves of a ring go home askew, along the next one's grain, and the bottom with them.
func (e *enclosure) runsOut() bool { return e.d.Form == ringForm && e.d.Corners.Joint == GrooveTongue }

func (e *enclosure) fitButt(m meeting) {
	e.fitCover(m, Butt, 0, 0)
}

// fitCover notes the joint of a covered corner and bores it.
func (e *enclosure) fitCover(m meeting, kind string, past, deep float64) {
	c := e.covering(m)
	sinQ := c.over.outer.N.Cross(c.under.outer.N).Len()
	into := measure.Length(deep / sinQ)
	e.piece.Joints = append(e.piece.Joints, joint.Joint{
		ID: c.over.id + "/" + c.under.id, Kind: kind, TailBoard: c.over.id, PinBoard: c.under.id,
		Dihedral:    joint.Dihedral(m.a.outer.N, m.b.outer.N),
		Baseline:    joint.Faces{Inner: measure.Length(past / sinQ)},
		PinBaseline: joint.Faces{Outer: into, Inner: into},
		Width:       measure.Length(e.height(m)), Depth: measure.Length(deep),
		Shoulder: e.shoulder(), Stop: e.d.Corners.Stop,
		Slides: c.into(), Corner: along(m.a, m.b),
	})
	if e.d.Corners.Screws != nil {
		e.screw(e.cornerScrewing(c, m))
	}
}

// cornerScrewing is a row of screws through the covering wall along the other's grain, in the middle of what of it is
// let in: of its tongue, below the stop.
func (e *enclosure) cornerScrewing(c covering, m meeting) screwing {
	u := c.under
	mid := solid.Plane{N: u.outer.N, D: u.outer.D - (u.thickness+e.shoulder().MM())/2}
	high := e.rim
	if e.d.Corners.Stop > 0 {
		high = meet(u.outer, c.over.outer, e.stopped(u))[2]
	}
	return screwing{
		screws: *e.d.Corners.Screws, path: "corners.screws",
		first: e.boards[c.overAt], second: e.boards[c.underAt],
		enter: c.over.outer, meeting: u.end[c.underEnd].cut, axis: c.into(),
		middle: cornerAt(mid, c.over.outer, (high+e.foot)/2), row: along(m.a, m.b), length: (high - e.foot) / along(m.a, m.b)[2],
		tongue:   tongueOf(u.thickness, e.shoulder()),
		entersAt: "outer", endsAt: c.underEnd.word() + "-end",
	}
}
