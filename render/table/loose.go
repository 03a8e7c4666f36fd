package table

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// mitred tells whether a joint is a mitre, plain or held by splines or keys.
func mitred(j joint.Joint) bool { return strings.HasPrefix(j.Kind, form.Mitre) }

func alikeSplines(a, b *joint.Spline) bool {
	if a == nil || b == nil {
		return a == b
	}
	return within(a.Mitre, b.Mitre, sameLength) && within(a.Low, b.Low, sameLength) && within(a.High, b.High, sameLength) &&
		alikeFaces(a.Left[0], b.Left[0]) && alikeFaces(a.Left[1], b.Left[1]) && alikeAngles(a.Tilt, b.Tilt) && alikeAngles(a.Turn, b.Turn) ||
		within(a.Mitre, b.Mitre, sameLength) && within(a.Low, b.Low, sameLength) && within(a.High, b.High, sameLength) && mirroredSplines(a, b)
}

// mirroredSplines: the boards of a corner may be told in either order.
func mirroredSplines(a, b *joint.Spline) bool {
	return alikeFaces(a.Left[0], b.Left[1]) && alikeFaces(a.Left[1], b.Left[0]) && alikeAngles(a.Tilt, swapped(b.Tilt)) && alikeAngles(a.Turn, swapped(b.Turn))
}

func alikeKeys(a, b *joint.Keys) bool {
	if a == nil || b == nil {
		return a == b
	}
	return within(a.Depth, b.Depth, sameLength) && within(a.Left, b.Left, sameLength) &&
		(alikeAngles(a.Turn, b.Turn) || alikeAngles(a.Turn, swapped(b.Turn))) &&
		slices.EqualFunc(a.At, b.At, func(x, y measure.Length) bool { return within(x, y, sameLength) })
}

func alikeAngles(a, b [2]measure.Angle) bool {
	return within(a[0], b[0], sameAngle) && within(a[1], b[1], sameAngle)
}

func swapped(a [2]measure.Angle) [2]measure.Angle { return [2]measure.Angle{a[1], a[0]} }

// settingsTable begins a table of gauges and bevels.
func settingsTable(id, title string, style measure.Style) *sheet {
	s := newSheet(id, title, style.Joints())
	s.words("Setting")
	s.angles("Angle")
	s.words("1:n")
	s.lengths("along the face, as Where says", "Gauge", "Exact")
	s.words("Where")
	return s
}

// splineTable is how the grooves of a splined mitre lie and how they are sawn.
func splineTable(p *form.Piece, same []joint.Joint, style measure.Style) Table {
	j := same[0]
	k := j.Spline
	s := settingsTable("splines-"+j.ID, "Splines: "+whichCorners(p, same), style)
	bevel(s, "inside corner", j.Dihedral, "between the two inner faces")
	gauge(s, "groove, wide", k.Thickness, "as the spline is thick: a push fit, not a tight one")
	gauge(s, "groove, deep", k.Width/2, "square to the mitre, in either board")
	gauge(s, "from the inner arris", k.Inset, "on the mitre, to the near side of the groove")
	gauge(s, "from the outer arris", k.Mitre-k.Inset-k.Thickness, "on the mitre, to the far side of the groove")
	if k.Low > 0 {
		gauge(s, "stopped from the lower edge", k.Low, "along the inner arris, over the groove of the bottom; the spline is a little shorter")
	}
	if k.High > 0 {
		gauge(s, "stopped from the upper edge", k.High, "along the inner arris, so that it does not show; the spline is a little shorter")
	}
	for i, on := range mates(p, j) {
		bevel(s, "blade, tilt", k.Tilt[i], on+" flat, from square to its face")
		bevel(s, "gauge, swing", k.Turn[i], on+" flat, from square to its edge, as for its mitre")
		gauge(s, "wood left outside", k.Left[i].Outer, on+", at the thinnest")
		gauge(s, "wood left inside", k.Left[i].Inner, on+", at the thinnest")
	}
	s.note("The groove stands square to the mitre. Set it towards the inside: the wood between it and the outer arris is what holds the corner.")
	s.note("The grain of a spline runs across the joint, from board to board; along it, it would split. Crosscut the splines from the end of a board planed to the groove.")
	return s.done()
}

// whichCorners names the corners of alike mitres, or says that all are alike.
func whichCorners(p *form.Piece, same []joint.Joint) string {
	n := 0
	for _, j := range p.Joints {
		if mitred(j) {
			n++
		}
	}
	if len(same) == n && n > 1 {
		return "all corners"
	}
	var names []string
	for _, j := range same {
		names = append(names, nameIn(p, j.TailBoard)+" to "+nameIn(p, j.PinBoard))
	}
	return and(names)
}

func nameIn(p *form.Piece, id string) string {
	if q := p.Part(id); q != nil && strings.TrimRight(q.Name, "0123456789") == q.Name {
		return boardNames(p, id)
	} else if q != nil { // told apart by its number
		return strings.ToLower(q.Name)
	}
	return id
}

// fellows names a board with those that are equal to it.
func fellows(p *form.Piece, id string) string { return the(p, fellowsOf(p, id)...) }

// mates are the two boards of a corner, as far as their ends differ.
func mates(p *form.Piece, j joint.Joint) []string {
	if k := j.Spline; k != nil && alikeFaces(k.Left[0], k.Left[1]) && within(k.Tilt[0], k.Tilt[1], sameAngle) && within(k.Turn[0], k.Turn[1], sameAngle) {
		return []string{"each board"}
	}
	if k := j.Keys; k != nil && within(k.Turn[0], k.Turn[1], sameAngle) {
		return []string{"each board"}
	}
	return []string{fellows(p, j.TailBoard), fellows(p, j.PinBoard)}
}

// keysTable is where the slots of a keyed mitre are sawn, and the cradle in which the corner lies.
func keysTable(p *form.Piece, same []joint.Joint, style measure.Style) Table {
	j := same[0]
	k := j.Keys
	s := settingsTable("keys-"+j.ID, fmt.Sprintf("Keys: %s", whichCorners(p, same)), style)
	bevel(s, "inside corner", j.Dihedral, "between the two inner faces, and between the sides of the cradle")
	bevel(s, "sides of the cradle", k.Cradle, "from the table, one either way, the corner down")
	for i, on := range mates(p, j) {
		bevel(s, "stop in the cradle", k.Turn[i], "for the edge of "+on+", from square to the blade")
	}
	gauge(s, "slot, wide", k.Thickness, "as the key is thick")
	gauge(s, "slot, deep", k.Depth, "from the outer arris; raise the blade so far over the cradle's bottom")
	gauge(s, "key, long", k.Length, "on the slot's floor; leave it proud and plane it flush when dry")
	gauge(s, "wood left inside", k.Left, "from the slot's floor to the inner arris")
	for i, at := range k.At {
		gauge(s, fmt.Sprintf("middle of slot %d", i+1), at, "up the outer arris from the lower edge")
	}
	s.note("Slots are sawn square to the corner when the mitres are glued and dry; the piece lies with its corner down in a cradle that slides past the blade. Keep both hands on the cradle's far ends, out of the blade's line.")
	s.note("The grain of a key runs across the corner. Try slot and key in the scrap corner that set the cradle.")
	return s.done()
}

// boardsOnly is the piece without its slips, which come from strips made to fit.
func boardsOnly(p *form.Piece) *form.Piece {
	out := *p
	out.Parts = nil
	for _, q := range p.Parts {
		if q.Slip == "" {
			out.Parts = append(out.Parts, q)
		}
	}
	return &out
}

// slips are the loose parts of a kind, equal ones together.
func slips(p *form.Piece, kind part.Slip) []group {
	var out []group
	for _, g := range groups(p) {
		if g[0].Slip == kind {
			out = append(out, g)
		}
	}
	return out
}

// strips says how slips are made: of a strip planed to their slots.
func (s *steps) strips(kind part.Slip) string {
	var each []string
	for _, g := range slips(s.p, kind) {
		b, _ := g[0].Lying()
		each = append(each, fmt.Sprintf("%s %s along the grain × %s × %s thick", g.short(), s.joint(b.Length), s.joint(b.Width), s.joint(b.Thickness)))
	}
	return strings.Join(each, "; ")
}

func (s *steps) splines(j joint.Joint) {
	s.step(j.TailBoard, "Groove the mitres", "Clamp a tall fence to the board; keep both hands above it.",
		fmt.Sprintf("In both faces of every mitre a groove %s wide and %s deep, square to the mitre, as in Splines.", s.exactLength(j.Spline.Thickness).Text, s.joint(j.Spline.Width/2)),
		fmt.Sprintf("Make the splines of a strip planed to the groove, their grain across the joint: %s.", s.strips(part.Spline)))
}

// late is what goes in when the glue of the boards is dry.
func (s *steps) late() {
	for _, j := range s.p.Joints {
		if j.Keys != nil {
			s.step(j.TailBoard, "Saw the key slots and glue the keys in", "The cradle carries the piece past the blade; hands stay at its far ends.",
				fmt.Sprintf("When the mitres are dry, %d slots a corner, %s deep, as in Keys.", len(j.Keys.At), s.joint(j.Keys.Depth)),
				fmt.Sprintf("Keys of a strip planed to the slot, their grain across the corner: %s.", s.strips(part.Key)),
				"Glue them in, saw them off and plane them flush, towards the boards.")
			return
		}
	}
}
