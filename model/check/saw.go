package check

import (
	"fmt"
	"math"
	"strings"

	"splaywright/model/cut"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// A saw's scales where the design does not say: a common table saw's gauge swings to 60° and its
// blade tilts to 45°. Common practice.
const (
	usualSwing = 60 * measure.Degree
	usualTilt  = 45 * measure.Degree
)

// scales are how far a saw's gauge and blade reach, and where that is known from.
type scales struct {
	swing, tilt             measure.Angle
	swingSource, tiltSource string
}

// sawRange tells of cuts that the saw's scales do not reach, and of the set-ups that do.
func sawRange(r *run) {
	var s scales
	s.swing, s.swingSource = reach(r.d.Saw.MaxSwing, usualSwing, "saw.max-swing")
	s.tilt, s.tiltSource = reach(r.d.Saw.MaxTilt, usualTilt, "saw.max-tilt")
	for _, q := range r.p.Parts {
		for _, c := range q.Cuts {
			if r.d.Saw.NoFlatTable {
				r.upright(q, c)
				continue
			}
			swings, tilts := c.Kind == part.Crosscut && c.Swing > s.swing+noise, c.Tilt > s.tilt+noise
			if !swings && !tilts {
				r.through(q, c)
				continue
			}
			ways := r.setupsThatWork(q, c)
			if swings {
				r.outOfReach(q, c, "swing", c.Swing, s.swing, s.swingSource, ways)
			}
			if tilts {
				r.outOfReach(q, c, "tilt", c.Tilt, s.tilt, s.tiltSource, ways)
			}
		}
	}
}

// upright tells of a crosscut that a saw without a flat table does not reach on edge or on end.
// Rips are nobody's surprise there.
func (r *run) upright(q *part.Part, c part.Cut) {
	d := r.d.Saw
	if c.Kind != part.Crosscut {
		return
	}
	setups := cut.ForSaw(q, c, r.saw())
	if setups[0].InRange() {
		if r.d.Saw.Depth > 0 {
			r.through(q, c)
		}
		return
	}
	edge := cut.OnEdgeOf(c)
	what, figure := "swing", edge.Swing
	limit, _ := reach(d.MaxSwing, usualSwing, "")
	if edge.Swing <= limit {
		what, figure = "tilt", edge.Tilt
		limit, _ = reach(d.MaxTilt, usualTilt, "")
	}
	needed, most := measure.AnglesApart(figure, limit)
	r.add(part.Finding{ID: "no-table-for-cut", Level: part.Warning, Figure: figure.Degrees(), Limit: limit.Degrees(), Unit: "deg",
		Source: "what the design says of the saw", Parts: []string{q.ID}, Sizes: append(leanSizes(r), "saw.flat-table", "saw.max-"+what),
		Text: sentence("%s of %s needs a %s of %s with the board on edge and the saw reaches %s, and it has no table to lay the board flat; %s.",
			whichCut(q, c), theBoard(q), what, needed, most, byHand)})
}

// byHand is what remains where no set-up reaches.
const byHand = "saw it by hand to the line, or make the splay less"

// saw is the design's saw.
func (r *run) saw() cut.Saw {
	d := r.d.Saw
	return cut.Saw{Step: d.Step, MaxSwing: d.MaxSwing, MaxTilt: d.MaxTilt, Depth: d.Depth, Cradle: d.Cradle, Upright: d.NoFlatTable}
}

// through tells of a cut that the saw's angles reach and its blade does not come through, however the board
// is put down.
func (r *run) through(q *part.Part, c part.Cut) {
	limit, source := cut.DefaultDepth, "common practice for a saw of 10 in, since the design does not say how far its blade reaches"
	if r.d.Saw.Depth > 0 {
		limit, source = r.d.Saw.Depth, "how far the design says that the blade reaches"
	}
	if !r.d.Saw.NoFlatTable && cut.Along(q.Blank.Thickness, c.Tilt) <= limit {
		return // lying flat, as most do
	}
	least := measure.Length(math.Inf(1))
	for _, u := range cut.ForSaw(q, c, r.saw()) {
		if u.Works() {
			return
		}
		if u.InRange() {
			least = min(least, u.Reach)
		}
	}
	sizes, instead := leanSizes(r), byHand
	if q.Slip != "" { // a wedge is thin at one end whether the sides lean or not
		sizes, instead = nil, "saw it by hand to the line"
	}
	needed, most := r.apart(least.MM(), limit.MM())
	r.add(part.Finding{ID: "blade-too-low", Level: part.Warning, Figure: least.MM(), Limit: limit.MM(), Unit: "mm", Source: source,
		Parts: []string{q.ID}, Sizes: append(sizes, "saw.depth", "saw.cradle"),
		Text: sentence("%s of %s needs a blade that reaches %s and the saw's reaches %s, however the board is put down; a larger saw or a band saw reaches it, or %s.",
			whichCut(q, c), theBoard(q), needed, most, instead)})
}

// setupsThatWork says how the board can be put down so that the saw reaches a cut: end-on, where the scale reads
// the rest of the right angle (57° is cut at 33°: a workshop weblog on trigonometry),
// on edge, where a bevel is a swing, upright against a tall fence, leaned on a wedge or in a cradle.
func (r *run) setupsThatWork(q *part.Part, c part.Cut) string {
	var leaned, ways []string
	for _, u := range cut.ForSaw(q, c, r.saw()) {
		switch {
		case !u.Works() || u.Position == cut.Flat:
		case u.Position == cut.Nested || u.Position == cut.Cradled:
			leaned = append(leaned, layAs(u))
		default:
			ways = append(ways, layAs(u))
		}
	}
	ways = append(leaned, ways...)
	if len(ways) == 0 {
		return byHand
	}
	return list(ways, "or")
}

// layAs is a set-up as one is told to make it.
func layAs(u cut.Setup) string {
	text := map[cut.Position]string{
		cut.EndOn: "turn the end of the board against the fence", cut.OnEdge: "stand the board on edge", cut.OnEnd: "stand it upright against a tall fence",
		cut.Nested: fmt.Sprintf("lean the board on a wedge of %s", deg(u.Lean)), cut.Cradled: fmt.Sprintf("lay it in a wedge cradle of %s", deg(u.Lean)),
	}[u.Position]
	if u.Kind == part.Rip && u.Position == cut.OnEdge {
		text = "stand it upright against a tall fence"
	}
	switch swing, tilt := u.Setting.Swing > noise, u.Setting.Tilt > noise; {
	case u.Position == cut.EndOn:
		return fmt.Sprintf("%s and set %s", text, deg(u.Setting.Swing))
	case swing && tilt:
		return fmt.Sprintf("%s, swing the gauge %s and tilt the blade %s", text, deg(u.Setting.Swing), deg(u.Setting.Tilt))
	case swing:
		return fmt.Sprintf("%s and swing the gauge %s", text, deg(u.Setting.Swing))
	case tilt:
		return fmt.Sprintf("%s and tilt the blade %s", text, deg(u.Setting.Tilt))
	}
	return text
}

func reach(typed, usual measure.Angle, key string) (measure.Angle, string) {
	if typed > 0 {
		return typed, fmt.Sprintf("the design's %s", key)
	}
	return usual, fmt.Sprintf("common practice, since the design does not give %s", key)
}

// whichCut names a cut with its article; two that mirror each other on one board go by one name, so
// that equal trouble with both is told once.
func whichCut(q *part.Part, c part.Cut) string {
	if strings.HasPrefix(c.Pair, q.ID+"/") {
		if c.Kind == part.Rip {
			return "each long edge"
		}
		return "each end"
	}
	return fmt.Sprintf("the %s", cutName(c.ID))
}

func (r *run) outOfReach(q *part.Part, c part.Cut, what string, figure, limit measure.Angle, source, way string) {
	needed, most := measure.AnglesApart(figure, limit)
	r.add(part.Finding{ID: what + "-out-of-reach", Level: part.Warning, Figure: figure.Degrees(), Limit: limit.Degrees(), Unit: "deg", Source: source,
		Parts: []string{q.ID}, Sizes: append(leanSizes(r), "saw.max-"+what),
		Text: sentence("%s of %s needs a %s of %s and the saw reaches %s; %s.",
			whichCut(q, c), theBoard(q), what, needed, most, way)})
}
