package check

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// trouble is an obstacle that an opening comes too near to, or reaches into when gap is negative.
type trouble struct {
	gap, need float64
	n         mgl64.Vec2 // unit, from the opening towards the obstacle
	with      obstacle
}

// need is the wood to leave between an opening and what it must keep clear of. Beside the end of
// a stretcher nothing more is needed than that they do not meet.
func (l looked) need(o obstacle) float64 {
	if o.kind == stretcherEnd || l.feature.Kind == part.Chamfer || o.of == part.Chamfer {
		return 0
	}
	return web(l.board)
}

// report tells the worst of each kind of trouble that an opening is in.
func (l looked) report(s shape) {
	for _, k := range []obstacleKind{edgeOfBoard, jointZone, stretcherEnd, otherFeature} {
		worst, found := trouble{}, false
		for _, o := range l.around {
			need := l.need(o)
			if o.kind != k || o.clear(s, need) {
				continue
			}
			gap, n := o.away(s)
			if gap < need-noise && (!found || gap < worst.gap) {
				worst, found = trouble{gap: gap, need: need, n: n, with: o}, true
			}
		}
		if found {
			l.tell(worst)
		}
	}
}

// easing is what a chamfer does in a joint: it goes on across what the joint fills.
var easing = kindWord{inID: "chamfer-in-joint",
	in: "%s runs %s into %s, where it opens the joint unless the other board is chamfered with it; %s, or chamfer the piece when it is together."}

type kindWord struct{ inID, in, nearID, near string }

// kindWords are the ids and sentences of each kind of trouble: reaching in, and coming near.
var kindWords = map[obstacleKind]kindWord{
	edgeOfBoard:  {"opening-over-edge", "%s runs %s over %s; %s.", "opening-near-edge", "%s leaves only %s of wood to %s; %s."},
	jointZone:    {"opening-in-joint", "%s runs %s into %s; %s.", "opening-near-joint", "%s leaves only %s of wood to %s; %s."},
	stretcherEnd: {"opening-in-stretcher", "%s runs %s into %s; %s.", "", ""},
	otherFeature: {"openings-meet", "%s runs %s into %s; %s.", "openings-near", "%s leaves only %s of wood to %s; %s."},
}

// tell makes the finding: a stop when the opening reaches in, a warning when it comes near.
func (l looked) tell(t trouble) {
	w := kindWords[t.with.kind]
	name := featureName(l.d, l.feature, l.board)
	f := part.Finding{Figure: t.gap, Limit: t.need, Unit: "mm", Parts: []string{l.board.ID},
		Sizes: union(featureSizes(l.d.Features[l.feature.Index], l.feature.Index), t.with.sizes)}
	if l.feature.Kind == part.Taper && t.atNarrowEnd(l.feature) {
		f.Sizes = append([]string{fmt.Sprintf("features.%d.from", l.feature.Index)}, f.Sizes...)
	}
	switch {
	case t.gap < -noise && l.feature.Kind == part.Chamfer && t.with.kind == jointZone:
		f.ID, f.Level, f.Source, f.Limit = easing.inID, part.Warning, ownGeometry, 0
		f.Text = sentence(easing.in, name, l.past(-t.gap), t.with.name, l.wayOut(t))
	case t.gap < -noise:
		f.ID, f.Level, f.Source, f.Limit = w.inID, part.Stop, ownGeometry, 0
		f.Text = sentence(w.in, name, l.past(-t.gap), t.with.name, l.wayOut(t))
	default:
		f.ID, f.Level, f.Source = w.nearID, part.Warning, webSource
		left, _ := l.apart(t.gap, t.need)
		f.Text = sentence(w.near, name, left, t.with.name, l.wayOut(t))
	}
	l.add(f)
}

// placed are the formats of the two sizes that place an opening.
var placed = map[string]string{"x": "x of %s", "y": "y of %s"}

// wayOut says which single sizes of the opening would clear everything around it.
func (l looked) wayOut(t trouble) string {
	if l.feature.Hull != nil {
		return l.wayOffEdge(t)
	}
	var ways []string
	for _, k := range featureKeys(l.d.Features[l.feature.Index]) {
		v, less, ok := l.solve(k)
		switch {
		case ok && less:
			ways = append(ways, fmt.Sprintf("a %s of %s or less", k, l.mm(v)))
		case ok:
			ways = append(ways, fmt.Sprintf(placed[k], l.mm(v)))
		}
	}
	if len(ways) == 0 {
		return "no single one of its sizes clears it; move and shrink it"
	}
	if t.need == 0 {
		return fmt.Sprintf("%s clears it", list(ways, "or"))
	}
	_, enough := l.apart(t.gap, t.need)
	return fmt.Sprintf("%s leaves %s", list(ways, "or"), enough)
}

// wayOffEdge says by how much a shape on an edge is too deep, or too long, or out of place along it.
func (l looked) wayOffEdge(t trouble) string {
	out := direction(l.feature.Angle.Radians())
	var ways []string
	if by := t.missedAlong(l.feature, out); by < l.feature.Width.MM() {
		ways = append(ways, fmt.Sprintf("make it %s shallower", l.mm(l.up(by))))
	}
	by := t.missedAlong(l.feature, mgl64.Vec2{-out[1], out[0]})
	switch {
	case l.feature.Kind == part.Taper && t.atNarrowEnd(l.feature):
		ways = append(ways, "begin it at the other end of its edge")
	case l.feature.Kind == part.Taper && by < l.feature.Length.MM(): // its narrow end stays at the end of the edge
		beyond := max(0, l.typed("x")+l.typed("y")+l.typed("length")-l.feature.Length.MM()) // the edge's other end
		ways = append(ways, fmt.Sprintf("end it %s sooner", l.mm(l.up(by+beyond))))
	case l.feature.Kind == part.Taper:
	case by < l.feature.Length.MM():
		ways = append(ways, fmt.Sprintf("end it %s sooner, or move it so far along its edge", l.mm(l.up(by))))
	case t.with.shape != nil:
		ways = append(ways, fmt.Sprintf("move it %s along its edge", l.mm(l.up(by))))
	}
	if len(ways) == 0 {
		return "no single one of its sizes clears it; move and shrink it"
	}
	return list(ways, "or")
}

// atNarrowEnd tells of a taper that begins in what it should keep clear of: however soon it ends, it stays there. The first
// and the fourth corner of its hull are those of its narrow end.
func (t trouble) atNarrowEnd(f part.Feature) bool {
	if len(f.Hull) < 4 {
		return false
	}
	gap, _ := t.with.away(polygon{f.Hull[0], f.Hull[3]})
	return gap < t.need-noise
}

// missedAlong is how much a shape would have to give way along a direction, whichever way round.
func (t trouble) missedAlong(f part.Feature, n mgl64.Vec2) float64 {
	if t.with.shape == nil {
		return (t.need - t.gap) / math.Max(math.Abs(t.n.Dot(n)), 1e-9)
	}
	hull := polygon(f.Hull)
	return t.need - max(along(hull, t.with.shape, n), along(hull, t.with.shape, n.Mul(-1)))
}

// solve finds the value of one size, rounded to what the papers show, that clears everything
// around the opening; less tells that any smaller value does so too.
func (l looked) solve(key string) (value float64, less, ok bool) {
	if key == "x" || key == "y" {
		value, ok = l.move(key)
		return value, false, ok
	}
	value, ok = l.shrink(key)
	return value, true, ok
}

// shrink finds the largest value below the one typed that clears. A third of what was typed is
// the least worth proposing.
func (l looked) shrink(key string) (float64, bool) {
	typed := l.typed(key)
	if l.clears(key, typed) {
		return 0, false // this size does no harm
	}
	lo, hi := typed/3, typed
	if !l.clears(key, lo) {
		return 0, false
	}
	for range 50 {
		mid := (lo + hi) / 2
		if l.clears(key, mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	v := l.down(lo)
	return v, v > 0 && l.clears(key, v)
}

// move pushes the opening along one axis away from whatever it is nearest to, until all is clear.
func (l looked) move(key string) (float64, bool) {
	v := l.typed(key)
	axis, sign := l.axis(key)
	heading := 0.0
	for range 24 {
		t := l.worst(l.vary(key, v))
		if t.gap >= t.need-noise {
			return v, true
		}
		along := t.n[axis] * sign
		if math.Abs(along) < 0.05 {
			return 0, false // it would have to go almost sideways
		}
		way := -math.Copysign(1, along)
		if heading == 0 {
			heading = way
		}
		if way != heading {
			return 0, false // something on each side
		}
		next := v + way*max((t.need-t.gap)/math.Abs(along), l.step()/2)
		if way > 0 {
			v = l.up(next)
		} else {
			v = l.down(next)
		}
	}
	return 0, false
}

func (l looked) clears(key string, value float64) bool {
	t := l.worst(l.vary(key, value))
	return t.gap >= t.need-noise
}

// worst is the obstacle that is missed by most.
func (l looked) worst(f part.Feature) trouble {
	w := trouble{gap: math.Inf(1)}
	s, _ := outlineOn(f, l.board)
	for _, group := range [][]obstacle{l.around, l.also} {
		for _, o := range group {
			gap, n := o.away(s)
			if need := l.need(o); gap-need < w.gap-w.need {
				w = trouble{gap: gap, need: need, n: n, with: o}
			}
		}
	}
	return w
}

// typed is the value of one of the opening's sizes in the design, mm.
func (l looked) typed(key string) float64 {
	f := l.d.Features[l.feature.Index]
	return map[string]measure.Length{"rise": f.Rise, "width": f.Width, "length": f.Length,
		"diameter": f.Diameter, "x": f.X, "y": f.Y}[key].MM()
}

// axis tells along which axis of the board, and which way, a position in the design runs. On a
// side x is measured up from the floor end, against the board's own x; y runs to the back, which
// is against the left side's own y.
func (l looked) axis(key string) (axis int, sign float64) {
	switch {
	case key == "x" && isSide(l.board):
		return 0, -1
	case key == "x":
		return 0, 1
	case isSide(l.board) && l.board.ID != "side-right": // its y runs to the front
		return 1, -1
	}
	return 1, 1
}

// vary is the opening with one of its sizes changed.
func (l looked) vary(key string, value float64) part.Feature {
	f := l.feature
	v := measure.Length(value)
	switch key {
	case "rise":
		f.Width = v
	case "length":
		f.Length = v
	case "diameter":
		f.Length, f.Width = v, v
	case "width":
		if f.Kind == part.Arch {
			f.Length = v
		} else {
			f.Width = v
		}
	default:
		axis, sign := l.axis(key)
		f.Centre[axis] += sign * (value - l.typed(key))
	}
	return f
}
