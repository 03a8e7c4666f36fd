package check

import (
	"fmt"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// A saw's scales where the design does not say: a common table saw's gauge swings to 60° and its
// blade tilts to 45°. Common practice.
const (
	usualSwing = 60 * measure.Degree
	usualTilt  = 45 * measure.Degree
)

// sawRange tells of cuts that the saw's scales do not reach.
func sawRange(r *run) {
	swing, swingSource := reach(r.d.Saw.MaxSwing, usualSwing, "saw.max-swing")
	tilt, tiltSource := reach(r.d.Saw.MaxTilt, usualTilt, "saw.max-tilt")
	for _, q := range r.p.Parts {
		for _, c := range q.Cuts {
			if c.Kind == part.Crosscut && c.Swing > swing+noise {
				r.outOfReach(q, c, "swing", c.Swing, swing, swingSource,
					fmt.Sprintf("with the end of the board against the fence, set %s", deg(measure.Degree*90-c.Swing)))
			}
			if c.Tilt > tilt+noise {
				r.outOfReach(q, c, "tilt", c.Tilt, tilt, tiltSource,
					fmt.Sprintf("with the board on edge or against an upright fence, set %s", deg(measure.Degree*90-c.Tilt)))
			}
		}
	}
}

func reach(typed, usual measure.Angle, key string) (measure.Angle, string) {
	if typed > 0 {
		return typed, "the design's " + key
	}
	return usual, "common practice, since the design does not give " + key
}

func (r *run) outOfReach(q *part.Part, c part.Cut, what string, figure, limit measure.Angle, source, way string) {
	r.add(part.Finding{ID: what + "-out-of-reach", Level: part.Warning, Figure: figure.Degrees(), Limit: limit.Degrees(), Unit: "deg", Source: source,
		Parts: []string{q.ID}, Sizes: []string{"splay.ends", "splay.edges", "saw.max-" + what},
		Text: sentence("the %s of the %s needs a %s of %s and the saw reaches %s; %s.",
			cutName(c.ID), boardName(q), what, deg(figure), deg(limit), way)})
}
