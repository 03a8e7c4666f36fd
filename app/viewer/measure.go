package viewer

import (
	"math"

	"fyne.io/fyne/v2"

	"splaywright/render/draw"
)

// Gauge measures between two points of the drawing, or between faces and edges that are seen as lines.
// A tap takes the nearest end of a line within reach, or else the line itself, or else the place that
// was tapped.
type Gauge struct {
	from, to taken
	ends     [2]draw.Point // of what is measured, on the sheet, mm
	points   int           // taken: 0, 1 or 2
	short    string        // what stands beside the line
	text     string        // the same with what is told of it besides
}

// taken is what a tap took: a point, or a line with a point of it.
type taken struct {
	at   draw.Point
	line *[2]draw.Point
}

// Gauging puts what was measured into words: the way between two points, across and up, mm on the sheet, in short as it stands
// beside the line and whole, and the angle between two lines, radians. Together tells whether two places on the sheet can be measured between; nil =
// any two. Said is told how many points are taken, whether the last one had to begin anew, and what was measured; nil =
// nobody asks.
type Gauging struct {
	Way      func(across, up float64) (short, whole string)
	Angle    func(radians float64) string
	Together func(a, b draw.Point) bool
	Said     func(points int, strayed bool, text string)
}

func (g *Gauging) together(a, b draw.Point) bool { return g.Together == nil || g.Together(a, b) }

// Measure begins measuring, or ends it.
func (t *Table) Measure(on bool, say Gauging) {
	t.say = nil
	if on {
		t.say = &say
	}
	t.gauge, t.ruler.Zero = Gauge{}, t.zero
	t.picture.redraw()
}

// Measuring tells whether taps measure.
func (t *Table) Measuring() bool { return t.say != nil }

// Measured is what was measured last, in words; "" before the second point.
func (t *Table) Measured() string { return t.gauge.text }

// mark takes a point or a line.
func (t *Table) mark(at fyne.Position) {
	p, second := t.take(t.At(at)), t.gauge.points == 1
	strayed := second && !t.say.together(t.gauge.from.at, p.at)
	if second && !strayed {
		t.gauge.to, t.gauge.points = p, 2
		t.gauge.measure(t.say)
	} else {
		t.gauge = Gauge{from: p, points: 1}
		t.ruler.Zero = p.at // the rulers count from where measuring began
	}
	t.tellGauge(strayed)
	t.picture.redraw()
}

// tellGauge tells how far measuring has come.
func (t *Table) tellGauge(strayed bool) {
	if t.say != nil && t.say.Said != nil {
		t.say.Said(t.gauge.points, strayed, t.gauge.text)
	}
}

// measure works out the way from what was taken first to what was taken second: square to a line, and
// between lines that are not parallel the angle.
func (g *Gauge) measure(say *Gauging) {
	a, b := g.from, g.to
	switch {
	case a.line != nil && b.line != nil:
		if turn := between(*a.line, *b.line); turn > parallel {
			g.ends = [2]draw.Point{a.at, b.at}
			g.text = say.Angle(turn)
			g.short = g.text
			return
		}
		g.ends = [2]draw.Point{foot(*a.line, b.at), b.at}
	case a.line != nil:
		g.ends = [2]draw.Point{foot(*a.line, b.at), b.at}
	case b.line != nil:
		g.ends = [2]draw.Point{a.at, foot(*b.line, a.at)}
	default:
		g.ends = [2]draw.Point{a.at, b.at}
	}
	g.short, g.text = say.Way(math.Abs(g.ends[1].X-g.ends[0].X), math.Abs(g.ends[1].Y-g.ends[0].Y))
}

// parallel, radians: lines that differ by less are one distance apart.
const parallel = 5e-4

// between is the angle between two lines, at most a right one.
func between(a, b [2]draw.Point) float64 {
	t := math.Abs(math.Atan2(a[1].Y-a[0].Y, a[1].X-a[0].X) - math.Atan2(b[1].Y-b[0].Y, b[1].X-b[0].X))
	t = math.Mod(t, math.Pi)
	return min(t, math.Pi-t)
}

// foot is the point of a line that lies square from p.
func foot(l [2]draw.Point, p draw.Point) draw.Point {
	dx, dy := l[1].X-l[0].X, l[1].Y-l[0].Y
	t := ((p.X-l[0].X)*dx + (p.Y-l[0].Y)*dy) / (dx*dx + dy*dy)
	return draw.Point{X: l[0].X + t*dx, Y: l[0].Y + t*dy}
}

// take finds what lies nearest: the end of a line within reach, or the line.
func (t *Table) take(q draw.Point) taken {
	within := 2 * reach / float64(t.zoom)
	end, line, out := within, within/2, taken{at: q}
	for _, it := range t.page.Items {
		path, ok := it.(draw.Path)
		if !ok || path.Ref == "" || path.Layer == dimensionLayer {
			continue
		}
		var last draw.Point
		for _, s := range path.Segs {
			if s.Kind == draw.Close {
				continue
			}
			p := s.P[2]
			if d := math.Hypot(p.X-q.X, p.Y-q.Y); d < end {
				end, out = d, taken{at: p}
			}
			if s.Kind == draw.Line && end == within {
				l := [2]draw.Point{last, p}
				if d, at := fromLine(l, q); d < line {
					line, out = d, taken{at, &l}
				}
			}
			last = p
		}
	}
	return out
}

// fromLine is how far a place lies from a stretch of a line, and the point of it that is nearest.
func fromLine(l [2]draw.Point, q draw.Point) (float64, draw.Point) {
	if l[0] == l[1] {
		return math.Inf(1), q
	}
	at := foot(l, q)
	lo, hi := draw.Point{X: min(l[0].X, l[1].X), Y: min(l[0].Y, l[1].Y)}, draw.Point{X: max(l[0].X, l[1].X), Y: max(l[0].Y, l[1].Y)}
	at = draw.Point{X: max(lo.X, min(hi.X, at.X)), Y: max(lo.Y, min(hi.Y, at.Y))}
	return math.Hypot(at.X-q.X, at.Y-q.Y), at
}
