package sheet

import (
	"math"

	"splaywright/model/measure"
	"splaywright/render/draw"
)

// stature is the standing height of the grown person whose reach stands beside pieces: between the
// middle heights of women and of men in most countries (common practice).
const stature = 1700.0

// The heights of the body as parts of its standing height, by the proportions of body segments that
// ergonomics has used since the technical report "Body Segment Parameters" (New York, 1966; figures
// from memory): knee 0.285, hip 0.530, elbow 0.630, shoulder 0.818, eye 0.936, the whole arm 0.440.
var reaches = []struct {
	what string
	of   float64
}{
	{"knee", 0.285}, {"fingertip", 0.378}, {"elbow", 0.630}, {"shoulder", 0.818}, {"eye", 0.936}, {"reach", 1.258},
}

// limb is a stretch of the body as seen from the side: its two ends and half widths there, as parts of
// the stature; x to the front.
type limb struct {
	ax, ay, ar float64
	bx, by, br float64
}

var body = []limb{
	{-0.020, 0.018, 0.018, 0.105, 0.012, 0.012},  // foot
	{0.000, 0.040, 0.022, 0.000, 0.285, 0.030},   // shank
	{0.000, 0.285, 0.032, -0.008, 0.530, 0.052},  // thigh
	{-0.008, 0.530, 0.056, -0.004, 0.760, 0.062}, // trunk
	{-0.004, 0.770, 0.050, 0.000, 0.850, 0.028},  // shoulders and neck
	{0.000, 0.818, 0.028, 0.012, 0.630, 0.022},   // upper arm
	{0.012, 0.630, 0.021, 0.040, 0.485, 0.016},   // forearm
	{0.040, 0.485, 0.018, 0.052, 0.385, 0.009},   // hand
}

// tallest is how far the whole reach goes up, as part of the stature.
const tallest = 1.27

// head is a circle: its middle and radius.
var head = [3]float64{0.012, 0.936, 0.062}

// person draws the reach of a grown person up to a height above the floor, mm of the piece, with a mark
// at each height of the body below it. The figure stands with its middle at x = 0 of its own picture.
func person(upTo, scale float64, i ink, o Options) []draw.Item {
	var out []draw.Item
	k := stature * scale
	for _, l := range body {
		if pts := l.outline(upTo / stature); len(pts) > 2 {
			for j := range pts {
				pts[j] = draw.Point{X: pts[j].X * k, Y: pts[j].Y * k}
			}
			out = append(out, draw.Path{Segs: draw.Polygon(pts), Filled: true, Fill: i.soft, Layer: "person"})
		}
	}
	if (head[1]+head[2])*stature <= upTo {
		out = append(out, draw.Path{Segs: draw.Circle(draw.Point{X: head[0] * k, Y: head[1] * k}, head[2]*k), Filled: true, Fill: i.soft, Layer: "person"})
	}
	clear := 0.0 // beside a large piece the person is small: only reaches whose words do not run into each other, or the floor
	for _, r := range reaches {
		y := r.of * stature
		if y > upTo {
			break
		}
		at := y * scale
		if at-reachText/2 < clear {
			continue
		}
		clear = at + reachText
		out = append(out,
			draw.Path{Segs: draw.Polyline([]draw.Point{{X: -0.11 * k, Y: at}, {X: 0.11 * k, Y: at}}), Pen: draw.Pen{Width: narrowLine / 2, Ink: i.faint}, Layer: "person"},
			draw.Text{At: draw.Point{X: -0.12 * k, Y: at - reachText/2}, Size: reachText, Align: draw.Right, Ink: i.faint, Layer: "person", Text: o.say(r.what) + " " + rough(o.Style).Format(measure.Length(y))})
	}
	return out
}

// rough shows a length no finer than bodies differ: to half a centimetre or a quarter of an inch.
func rough(st measure.Style) measure.Style {
	st.Step = 5 * measure.Millimetre
	if st.Unit == measure.Imperial {
		st.Step = measure.Inch / 4
	}
	return st
}

// reachText is the height of the words beside the person, mm.
const reachText = 2.0

// outline goes round a limb that tapers from end to end, as far as it lies below a height.
func (l limb) outline(top float64) []draw.Point {
	const steps = 12
	dx, dy := l.bx-l.ax, l.by-l.ay
	turn := math.Atan2(dy, dx)
	var pts []draw.Point
	for _, end := range []struct{ x, y, r, from float64 }{{l.bx, l.by, l.br, turn - math.Pi/2}, {l.ax, l.ay, l.ar, turn + math.Pi/2}} {
		for k := range steps + 1 {
			sin, cos := math.Sincos(end.from + math.Pi*float64(k)/steps)
			pts = append(pts, draw.Point{X: end.x + end.r*cos, Y: max(0, end.y+end.r*sin)})
		}
	}
	return below(pts, top)
}

// below is the part of a convex outline that lies under a height.
func below(pts []draw.Point, top float64) []draw.Point {
	var out []draw.Point
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		if p.Y <= top {
			out = append(out, p)
		}
		if (p.Y <= top) != (q.Y <= top) {
			t := (top - p.Y) / (q.Y - p.Y)
			out = append(out, draw.Point{X: p.X + t*(q.X-p.X), Y: top})
		}
	}
	return out
}
