package check

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// line is a straight line on a face: n·p = d.
type line struct {
	n mgl64.Vec2
	d float64
}

// meet is where two lines cross; ok is false when they run side by side.
func (l line) meet(m line) (p mgl64.Vec2, ok bool) {
	det := l.n[0]*m.n[1] - l.n[1]*m.n[0]
	if math.Abs(det) < noise {
		return p, false
	}
	return mgl64.Vec2{(l.d*m.n[1] - m.d*l.n[1]) / det, (l.n[0]*m.d - m.n[0]*l.d) / det}, true
}

// through is the line through a point in a direction.
func through(p, dir mgl64.Vec2) line {
	n := mgl64.Vec2{-dir[1], dir[0]}
	return line{n, n.Dot(p)}
}

// endOfBoard is one face of a board at a corner: the end's line, and the two edges.
type endOfBoard struct {
	end, front, back line
	u                mgl64.Vec2 // unit, along the end from front to back
	in               mgl64.Vec2 // unit, along the grain into the board
	corner           mgl64.Vec2 // where the end meets the front edge
}

// jointCut is the id of the cut at which a board meets another.
func jointCut(q, mate *part.Part) string {
	switch {
	case isWall(q) || isTop(q):
		return wallEnd(q, mate)
	}
	return "top-end"
}

func findCut(q *part.Part, id string) (part.Cut, bool) {
	for _, c := range q.Cuts {
		if c.ID == id {
			return c, true
		}
	}
	return part.Cut{}, false
}

// endFace reads a board's end at level z from its cuts.
func endFace(q *part.Part, cut string, z float64) (e endOfBoard, ok bool) {
	var lines [3]line
	edges := longEdges(q)
	for i, id := range []string{cut, edges[0], edges[1]} {
		c, found := findCut(q, id)
		if !found {
			return e, false
		}
		b, found := overCut(c, z)
		if !found {
			return e, false
		}
		lines[i] = line{b.n, b.from}
	}
	e = endOfBoard{end: lines[0], front: lines[1], back: lines[2]}
	f, ok1 := e.end.meet(e.front)
	b, ok2 := e.end.meet(e.back)
	if !ok1 || !ok2 || b.Sub(f).Len() < noise {
		return e, false
	}
	e.corner, e.u = f, b.Sub(f).Normalize()
	e.in = mgl64.Vec2{-math.Copysign(1, e.end.n[0]), 0}
	return e, true
}

// room is how much lies, along the end's direction and at the given depth square to the end,
// between the front and the back edge and a line from the end that starts at from (measured from
// the front edge) and leaves the grain by lean towards the back.
func (e endOfBoard) room(depth, from, lean float64) (front, back float64, ok bool) {
	root := line{e.end.n, e.end.d - depth}
	sin, cos := math.Sincos(lean)
	across := mgl64.Vec2{0, math.Copysign(1, e.u[1])} // the slope is off the grain, not off the end
	cheek := through(e.corner.Add(e.u.Mul(from)), e.in.Mul(cos).Add(across.Mul(sin)))
	c, ok1 := root.meet(cheek)
	f, ok2 := root.meet(e.front)
	b, ok3 := root.meet(e.back)
	return c.Sub(f).Dot(e.u), b.Sub(c).Dot(e.u), ok1 && ok2 && ok3
}

// halfPinRoom is the least wood of the half pins of a corner: at the end, where the figure typed
// is measured, and anywhere down to the baselines, where a taper may have taken some of it.
type halfPinRoom struct {
	atEnd, least float64
	edge         string // the edge at which the least is found
}

func (h *halfPinRoom) look(width float64, edge string) {
	if width < h.least {
		h.least, h.edge = width, edge
	}
}

func measureHalfPins(p pieceParts, j joint.Joint) (halfPinRoom, bool) {
	pinBoard, tailBoard := p.Part(j.PinBoard), p.Part(j.TailBoard)
	if pinBoard == nil || tailBoard == nil || len(j.Pins) < 2 || len(j.Tails) == 0 {
		return halfPinRoom{}, false
	}
	h := halfPinRoom{least: math.Inf(1)}
	h.atEnd = min(j.Pins[0].Width().MM(), j.Pins[len(j.Pins)-1].Width().MM())
	// On the pin board the cheeks run along the grain; on the tail board they lean by the slope,
	// away from the edges as they go in.
	h.onBoard(pinBoard, jointCut(pinBoard, tailBoard), [2][]joint.Span{j.Pins, j.PinsInner}, j.PinBaseline, 0)
	h.onBoard(tailBoard, jointCut(tailBoard, pinBoard), [2][]joint.Span{between(j.Tails), between(j.TailsInner)}, j.Baseline, j.Slope.Radians())
	return h, !math.IsInf(h.least, 1)
}

// between gives the sockets of the half pins on a tail board: before the first tail, after the last.
func between(tails []joint.Span) []joint.Span {
	if len(tails) == 0 {
		return nil
	}
	return []joint.Span{{End: tails[0].Start}, {Start: tails[len(tails)-1].End}}
}

func (h *halfPinRoom) onBoard(q *part.Part, cut string, faces [2][]joint.Span, base joint.Faces, lean float64) {
	depths := [2]measure.Length{base.Outer, base.Inner}
	for i, z := range faceLevels(q) {
		spans := faces[i]
		e, ok := endFace(q, cut, z)
		if !ok || len(spans) < 2 {
			continue
		}
		first, last := spans[0].End.MM(), spans[len(spans)-1].Start.MM()
		for _, depth := range [2]float64{0, depths[i].MM()} {
			if front, _, ok := e.room(depth, first, lean); ok {
				h.look(front, cutName(longEdges(q)[0]))
			}
			if _, back, ok := e.room(depth, last, -lean); ok {
				h.look(back, cutName(longEdges(q)[1]))
			}
		}
	}
}

// pieceParts is what finds a part by its id.
type pieceParts interface{ Part(id string) *part.Part }

func halfPins(r *run, j joint.Joint) {
	h, ok := measureHalfPins(r.p, j)
	if !ok || h.least >= halfPinLimit-noise {
		return
	}
	typed := h.atEnd
	if r.d.Corners.HalfPin != nil {
		typed = r.d.Corners.HalfPin.MM()
	}
	if j.Kind == form.FingerJoint {
		outerFinger(r, j, h)
		return
	}
	wider := r.mm(r.up(typed + halfPinLimit - h.least))
	f := part.Finding{ID: "half-pin-fragile", Level: part.Warning, Figure: h.least, Limit: halfPinLimit, Unit: "mm",
		Source: halfPinSource, Parts: jointParts(j), Sizes: []string{"corners.half-pin"}}
	narrow, enough := r.apart(h.least, halfPinLimit)
	f.Text = sentence("a half pin on the %s is %s wide at its narrow place and may break off; a half pin of %s or more leaves %s.",
		boards(j.PinBoard), narrow, wider, enough)
	if h.least < h.atEnd-noise {
		f.ID, f.Sizes = "taper-into-joint", append([]string{"corners.half-pin"}, taperSizes(r)...)
		f.Text = sentence("the %s of the %s tapers into the joint: of the half pin's %s at the end, %s are left at the baseline; a half pin of %s or more leaves %s there.",
			h.edge, boards(j.PinBoard), r.mm(h.atEnd), narrow, wider, enough)
	}
	if h.least <= noise {
		f.Level, f.Limit, f.Source = part.Stop, 0, ownGeometry
		f.Text = sentence("the %s of the %s tapers through the half pin and %s into the tail beside it; a half pin of %s or more clears it.",
			h.edge, boards(j.PinBoard), r.past(-h.least), wider)
	}
	r.add(f)
}

// outerFinger tells of an edge that tapers into the finger beside it. One that is thin of itself is reckoned with the other
// fingers, in package hold.
func outerFinger(r *run, j joint.Joint, h halfPinRoom) {
	if h.least >= h.atEnd-noise {
		return
	}
	f := part.Finding{ID: "taper-into-joint", Level: part.Warning, Figure: h.least, Limit: halfPinLimit, Unit: "mm",
		Source: halfPinSource, Parts: jointParts(j), Sizes: append([]string{"corners.tails", "corners.tail"}, taperSizes(r)...)}
	f.Text = sentence("the %s of the %s tapers into the joint: of the outer finger's %s at the end, %s are left at the baseline; fewer and wider fingers, or less of a lean there, leave more.",
		h.edge, boards(j.PinBoard), r.mm(h.atEnd), r.mm(h.least))
	if h.least <= noise {
		f.Level, f.Limit, f.Source = part.Stop, 0, ownGeometry
		f.Text = sentence("the %s of the %s tapers through the outer finger and %s into the one beside it; fewer and wider fingers, or less of a lean there, clear it.",
			h.edge, boards(j.PinBoard), r.past(-h.least))
	}
	r.add(f)
}
