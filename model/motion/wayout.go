package motion

import (
	"fmt"
	"math"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
)

const (
	// roomStep, mm, of clearance at a time, as a shop would try it.
	roomStep = 0.5
	// mostRoom is the share of its groove's depth that may stay empty: the rest holds the bottom.
	mostRoom = 0.7
	// mostNamed joints are enough to choose from.
	mostNamed = 3
)

// clearedBy tries what lets a piece with a bottom in its walls go together: more clearance, another way to hold the
// bottom, another joint at the corners; each that is told has been built and assembled.
func clearedBy(p *form.Piece) (text string, sizes []string) {
	goes := func(change func(*form.Design)) bool {
		d := p.Design
		u := *d.Bottom
		d.Bottom = &u
		change(&d)
		q := form.Build(d)
		return !q.Stopped() && len(Assemble(q).Stuck) == 0
	}
	would := func(path, format string, what any) {
		text, sizes = text+fmt.Sprintf(format, what), append(sizes, path)
	}
	for room := *p.Design.Bottom.Clearance + roomStep; room <= *p.Design.Bottom.Depth*mostRoom; room += roomStep {
		room = roomStep * measure.Length(math.Floor(float64(room/roomStep)))
		if goes(func(d *form.Design) { d.Bottom.Clearance = &room }) {
			would("bottom.clearance", " A clearance of %s lets them.", p.Design.Style().FormatUnit(room))
			break
		}
	}
	for _, way := range []string{form.InRabbet, form.ScrewedOn} {
		if way != p.Design.Bottom.Joint && goes(func(d *form.Design) {
			*d.Bottom = form.Bottom{Thickness: d.Bottom.Thickness, Timber: d.Bottom.Timber, Joint: way}
			d.Corners.Tail, d.Corners.Pin, d.Corners.HalfPin, d.Corners.TailWidths = nil, nil, nil, nil // laid out for walls of another height
		}) {
			would("bottom.joint", " A bottom with bottom.joint: %s goes in.", way)
			break
		}
	}
	var named []string
	for _, joint := range form.WallJoints() {
		if len(named) < mostNamed && joint != p.Design.Corners.Joint && goes(func(d *form.Design) { d.Corners = form.Corners{Joint: joint} }) {
			named = append(named, joint)
		}
	}
	if len(named) > 0 {
		would("corners.joint", " With these corners they go together: %s.", strings.Join(named, ", "))
	}
	return text, sizes
}
