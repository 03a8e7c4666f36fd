package sheet

import (
	"math"
	"slices"

	"splaywright/render/draw"
	"splaywright/render/view"
)

// hatching is how a cut face is filled: parallel lines at an angle (radians), pitch apart (mm of paper),
// counted from a line that passes the origin at start.
type hatching struct{ angle, pitch, start float64 }

// The hatchings of parts that touch: at 45° one way, at 45° the other, then closer, then shifted (ISO 128:
// narrow lines, preferably at 45°, told apart by direction, then by distance; at least 0.7 mm apart).
func hatchings(pitch float64) []hatching {
	const one, other = math.Pi / 4, 3 * math.Pi / 4
	return []hatching{
		{one, pitch, 0}, {other, pitch, 0}, {one, 0.6 * pitch, 0}, {other, 0.6 * pitch, 0},
		{one, 1.6 * pitch, pitch / 2}, {other, 1.6 * pitch, pitch / 2}, {math.Pi / 6, pitch, 0}, {5 * math.Pi / 6, pitch, 0},
	}
}

// hatchPitch suits the distance of the lines to the scale: boards look thin on small drawings.
func hatchPitch(scale float64) float64 { return min(max(1.3+scale, 1.4), 2.2) }

// lines are the hatching's lines inside loops (even-odd, so that holes stay free), clipped exactly.
func (h hatching) lines(loops [][]draw.Point) [][2]draw.Point {
	sin, cos := math.Sincos(h.angle)
	// u runs along the lines, v across them.
	turn := func(p draw.Point) (u, v float64) { return p.X*cos + p.Y*sin, p.Y*cos - p.X*sin }
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, l := range loops {
		for _, p := range l {
			_, v := turn(p)
			lo, hi = min(lo, v), max(hi, v)
		}
	}
	var out [][2]draw.Point
	for k := math.Ceil((lo - h.start) / h.pitch); h.start+k*h.pitch <= hi; k++ {
		v := h.start + k*h.pitch
		var us []float64
		for _, l := range loops {
			for i, p := range l {
				ua, va := turn(p)
				ub, vb := turn(l[(i+1)%len(l)])
				if (va <= v) != (vb <= v) {
					us = append(us, ua+(ub-ua)*(v-va)/(vb-va))
				}
			}
		}
		slices.Sort(us)
		for i := 0; i+1 < len(us); i += 2 {
			if us[i+1]-us[i] > tiny {
				at := func(u float64) draw.Point { return draw.Point{X: u*cos - v*sin, Y: u*sin + v*cos} }
				out = append(out, [2]draw.Point{at(us[i]), at(us[i+1])})
			}
		}
	}
	return out
}

// offHatch are the directions of leaders that run out of hatched faces: none along the hatching, where a
// leader would be lost.
var offHatch = []float64{60, 120, -60, -120, 30, 150, -30, -150, 75, 105, -75, -105, 15, 165, -15, -165}

// tiny lines of hatching, mm of paper, would be specks.
const tiny = 0.15

// styles gives each cut face a hatching that none has which touches it; pitch in mm of paper.
func styles(faces []view.CutFace, pitch float64) []hatching {
	list := hatchings(pitch)
	taken := make([]int, len(faces))
	out := make([]hatching, len(faces))
	for i := range faces {
		used := make([]bool, len(list))
		for j := range faces[:i] {
			if touching(faces[i], faces[j]) {
				used[taken[j]] = true
			}
		}
		taken[i] = max(slices.Index(used, false), 0)
		out[i] = list[taken[i]]
	}
	return out
}

// besideCut: faces nearer to each other than this, mm of the piece, need to be told apart.
const besideCut = 1.0

func touching(a, b view.CutFace) bool {
	ba, bb := loopsBox(a.Loops).Grow(besideCut), loopsBox(b.Loops)
	return ba.Meets(bb) && (corners(a, b) || corners(b, a))
}

// corners tells whether a corner of one face lies beside a side of the other.
func corners(a, b view.CutFace) bool {
	for _, l := range a.Loops {
		for _, p := range l {
			for _, m := range b.Loops {
				for i := range m {
					if fromSegment(p, m[i], m[(i+1)%len(m)]) < besideCut {
						return true
					}
				}
			}
		}
	}
	return false
}

func loopsBox(loops [][]draw.Point) draw.Box {
	b := draw.EmptyBox()
	for _, l := range loops {
		for _, p := range l {
			b = b.Add(p)
		}
	}
	return b
}

// hatch fills the cut faces of a figure and gives for each part a place inside its face at which a note can point: well
// off its outline and off other lines, such as the axes of holes. Lines are cut to the window, mm of paper; an empty one
// takes all.
func (f *figure) hatch(faces []view.CutFace, window draw.Box, off ...[2]draw.Point) map[string]draw.Point {
	inside := map[string]draw.Point{}
	over := lyingOver(faces)
	for i, h := range styles(faces, hatchPitch(f.scale)) {
		var loops [][]draw.Point
		for _, l := range faces[i].Loops {
			loops = append(loops, f.scaled(l))
		}
		best, lines := 0.0, h.lines(loops)
		if len(over[i]) > 0 {
			lines = f.beside(lines, over[i])
		}
		for _, l := range lines {
			a, b, ok := l[0], l[1], true
			if !window.Empty() {
				a, b, ok = inBox(a, b, window)
			}
			if !ok {
				continue
			}
			f.Line([]draw.Point{a, b}, draw.Pen{Width: narrowLine, Ink: f.ink.line}, "hatch", faces[i].Part)
			for _, share := range []float64{0.5, 0.3, 0.7} {
				at := draw.Point{X: a.X + share*(b.X-a.X), Y: a.Y + share*(b.Y-a.Y)}
				if n := roomAt(at, loops, off, window) + 0.01*math.Hypot(b.X-a.X, b.Y-a.Y); n > best {
					best = n
					inside[faces[i].Part] = at
				}
			}
		}
	}
	return inside
}

// enoughRoom is how far from other lines the dot of a note means nothing else, mm of paper.
const enoughRoom = 4.0

// roomAt is how far a place is from an outline, from other lines and from a window's edge, up to what is enough.
func roomAt(at draw.Point, loops [][]draw.Point, off [][2]draw.Point, window draw.Box) float64 {
	near := enoughRoom
	for _, l := range loops {
		for i, p := range l {
			near = min(near, fromSegment(at, p, l[(i+1)%len(l)]))
		}
	}
	for _, l := range off {
		near = min(near, fromSegment(at, l[0], l[1]))
	}
	if !window.Empty() {
		near = min(near, at.X-window.Min.X, window.Max.X-at.X, at.Y-window.Min.Y, window.Max.Y-at.Y)
	}
	return near
}

// inBox is the part of a line inside a box.
func inBox(a, b draw.Point, w draw.Box) (draw.Point, draw.Point, bool) {
	lo, hi := 0.0, 1.0
	for _, c := range [2][4]float64{{a.X, b.X - a.X, w.Min.X, w.Max.X}, {a.Y, b.Y - a.Y, w.Min.Y, w.Max.Y}} {
		if c[1] == 0 {
			if c[0] < c[2] || c[0] > c[3] {
				return a, b, false
			}
			continue
		}
		t, u := (c[2]-c[0])/c[1], (c[3]-c[0])/c[1]
		lo, hi = max(lo, min(t, u)), min(hi, max(t, u))
	}
	at := func(t float64) draw.Point { return draw.Point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)} }
	return at(lo), at(hi), lo < hi
}
