package check

import (
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
			if c.Kind == part.Crosscut && c.Swing > s.swing+noise {
				r.outOfReach(q, c, "swing", c.Swing, s.swing, s.swingSource, s.otherSwing(c))
			}
			if c.Tilt > s.tilt+noise {
				r.outOfReach(q, c, "tilt", c.Tilt, s.tilt, s.tiltSource, s.otherTilt(c))
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
	setups := cut.ForSaw(q, c, cut.Saw{MaxSwing: d.MaxSwing, MaxTilt: d.MaxTilt, Upright: true})
	if setups[0].InRange() {
		return
	}
	edge := cut.OnEdgeOf(c)
	what, figure := "swing", edge.Swing
	limit, _ := reach(d.MaxSwing, usualSwing, "")
	if edge.Swing <= limit {
		what, figure = "tilt", edge.Tilt
		limit, _ = reach(d.MaxTilt, usualTilt, "")
	}
	r.add(part.Finding{ID: "no-table-for-cut", Level: part.Warning, Figure: figure.Degrees(), Limit: limit.Degrees(), Unit: "deg",
		Source: "the design's saw.flat-table", Parts: []string{q.ID}, Sizes: append(leanSizes(r), "saw.flat-table", "saw.max-"+what),
		Text: sentence("%s of %s needs a %s of %s with the board on edge and the saw reaches %s, and it has no table to lay the board flat; %s.",
			whichCut(q, c), theBoard(q), what, deg(figure), deg(limit), byHand)})
}

// byHand is what remains where no set-up reaches.
const byHand = "saw it by hand to the line, or make the splay less"

// otherSwing turns the board end-on to the fence, so that the scale reads the rest of the right
// angle: 57° is cut at 33° (http://brighidsworkshop.com/if-i-knew-i-would-need-to-remember-trigonometry-would-i-have-started-woodworking-yes/).
func (s scales) otherSwing(c part.Cut) string {
	if rest := 90*measure.Degree - c.Swing; rest <= s.swing+noise {
		return "turn the end of the board against the fence and set " + deg(rest)
	}
	return byHand
}

// otherTilt stands the board up: on its edge a plain bevel is a swing, on its end or against an
// upright fence it is the rest of the right angle.
func (s scales) otherTilt(c part.Cut) string {
	var ways []string
	if c.Kind == part.Crosscut && c.Swing < noise && c.Tilt <= s.swing+noise {
		ways = append(ways, "stand the board on edge and swing the gauge "+deg(c.Tilt))
	}
	if rest := 90*measure.Degree - c.Tilt; c.Swing < noise && rest <= s.tilt+noise {
		ways = append(ways, "stand it upright against a tall fence and tilt the blade "+deg(rest))
	}
	if len(ways) == 0 {
		return byHand
	}
	return list(ways, "or")
}

func reach(typed, usual measure.Angle, key string) (measure.Angle, string) {
	if typed > 0 {
		return typed, "the design's " + key
	}
	return usual, "common practice, since the design does not give " + key
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
	return "the " + cutName(c.ID)
}

func (r *run) outOfReach(q *part.Part, c part.Cut, what string, figure, limit measure.Angle, source, way string) {
	r.add(part.Finding{ID: what + "-out-of-reach", Level: part.Warning, Figure: figure.Degrees(), Limit: limit.Degrees(), Unit: "deg", Source: source,
		Parts: []string{q.ID}, Sizes: append(leanSizes(r), "saw.max-"+what),
		Text: sentence("%s of %s needs a %s of %s and the saw reaches %s; %s.",
			whichCut(q, c), theBoard(q), what, deg(figure), deg(limit), way)})
}
