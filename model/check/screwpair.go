package check

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
)

// segment is the stretch of a bore, in the frame of its board.
type segment struct{ from, to mgl64.Vec3 }

// nearest is the least distance between two segments: clamp the nearest points of the two lines
// to the segments, in turn, until neither moves (twice is enough: one clamp fixes the other).
func (s segment) nearest(o segment) float64 {
	u, v, w := s.to.Sub(s.from), o.to.Sub(o.from), s.from.Sub(o.from)
	a, b, c, d, e := u.Dot(u), u.Dot(v), v.Dot(v), u.Dot(w), v.Dot(w)
	t := 0.0
	if det := a*c - b*b; det > noise*noise {
		t = clamp((b*e - c*d) / det)
	}
	k := 0.0
	if c > 0 {
		k = clamp((b*t + e) / c)
	}
	if a > 0 {
		t = clamp((b*k - d) / a)
	}
	return w.Add(u.Mul(t)).Sub(v.Mul(k)).Len()
}

func clamp(t float64) float64 { return min(max(t, 0), 1) }

// drilled is a stretch of a bore with its radius.
type drilled struct {
	segment
	radius float64
}

func stretch(b part.Bore, depth float64) drilled {
	return drilled{segment{b.Entry, b.Entry.Add(b.Axis.Mul(depth))}, b.Diameter.MM() / 2}
}

// in is where a screw's holes lie in a board that it goes through or into.
func (s screw) in(q *part.Part) (out []drilled) {
	if q == s.into {
		return []drilled{stretch(s.pilot, max(s.thread, s.pilot.Depth.MM()))}
	}
	out = []drilled{stretch(s.clearance, s.clearance.Depth.MM())}
	if s.counterbore != nil {
		out = append(out, stretch(*s.counterbore, s.counterbore.Depth.MM()))
	}
	return out
}

// besideScrew looks at two screws in one board: whether their holes meet, and whether screws of
// one row stand too near each other.
func besideScrew(r *run, a, b screw) {
	for _, q := range [2]*part.Part{a.through, a.into} {
		if q != b.through && q != b.into {
			continue
		}
		wood, axes := leastBetween(a, b, q)
		need := spacingDiameters * max(a.diameter(), b.diameter())
		if wood >= -noise && axes >= need-noise {
			continue
		}
		f := part.Finding{ID: "screws-near-each-other", Level: part.Warning, Figure: axes, Limit: need, Unit: "mm", Source: spacingSource,
			Parts: union(a.parts(), b.parts()), Sizes: union(a.key("from-end", "count"), b.key("from-end", "count"))}
		switch {
		case wood < -noise:
			f.ID, f.Level, f.Figure, f.Limit, f.Source = "screws-meet", part.Stop, wood, 0, ownGeometry
			f.Sizes = union(f.Sizes, union(a.key("length"), b.key("length")))
			f.Text = sentence("%s meets %s in %s: their holes run %s into each other; move one of them or take fewer.", a.name(), other(a, b), theBoard(q), r.past(-wood))
		case a.path == b.path && a.into == b.into && a.pilot.Face == b.pilot.Face && axes < need-noise:
			between, enough := r.apart(axes, need)
			f.Text = sentence("two screws through %s into %s stand %s apart and need %s, or the wood splits between them; take fewer, or start nearer the ends.",
				theBoard(a.through), theBoard(a.into), between, enough)
		default:
			continue
		}
		r.addWorst(f)
		return
	}
}

// other is what the second of two screws is called beside the first.
func other(a, b screw) string {
	if a.name() == b.name() {
		return "another like it"
	}
	return b.name()
}

// leastBetween is the least wood between the holes of two screws in a board, and the least
// distance between their axes.
func leastBetween(a, b screw, q *part.Part) (wood, axes float64) {
	first := true
	for _, s := range a.in(q) {
		for _, o := range b.in(q) {
			d := s.nearest(o.segment)
			if first || d < axes {
				axes = d
			}
			if w := d - s.radius - o.radius; first || w < wood {
				wood = w
			}
			first = false
		}
	}
	return wood, axes
}
