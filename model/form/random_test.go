package form_test

import (
	"math"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// stool draws a dovetailed stool of shop sizes; some lean inward, some not at all.
func stool(t *rapid.T) form.Design {
	size := func(name string, lo, hi float64) measure.Length {
		return measure.Length(rapid.Float64Range(lo, hi).Draw(t, name))
	}
	lean := func(name string, lo, hi float64) measure.Angle {
		if rapid.IntRange(0, 4).Draw(t, name+" kind") == 0 {
			return 0
		}
		a := rapid.Float64Range(lo, hi).Draw(t, name)
		if math.Abs(a) < 1e-4 {
			a = 0 // below what counts as a lean
		}
		return measure.Angle(a) * measure.Degree
	}
	d := form.Design{
		Form: "stool", Timber: "white oak",
		Size: form.Size{Height: size("height", 150, 700), Width: size("width", 300, 1200), Depth: size("depth", 150, 450)},
		Splay: form.Splay{
			Ends: lean("ends", -8, 20), Edges: lean("edges", -4, 12),
			EdgeCut: rapid.SampledFrom([]form.EdgeCut{form.EdgeSquare, form.EdgeFlush}).Draw(t, "edge cut"),
		},
	}
	d.Boards.Top.Thickness, d.Boards.Side.Thickness = size("top", 10, 40), size("side", 10, 40)
	d.Corners.TailsOn = rapid.SampledFrom([]string{form.OnTop, form.OnSide}).Draw(t, "tails on")
	d.Corners.Slope = measure.Angle(rapid.Float64Range(4, 12).Draw(t, "slope")) * measure.Degree
	if rapid.Bool().Draw(t, "count typed") {
		n := rapid.IntRange(1, 6).Draw(t, "tails")
		d.Corners.Tails = &n
	}
	pin, half := size("pin", 4, 12), size("half pin", 4, 14)
	d.Corners.Pin, d.Corners.HalfPin = &pin, &half
	if rapid.IntRange(0, 3).Draw(t, "uneven") == 0 {
		d.Corners.Tails, d.Corners.Pin = nil, nil
		for range rapid.IntRange(1, 3).Draw(t, "widths") {
			d.Corners.TailWidths = append(d.Corners.TailWidths, size("tail", 15, 60))
		}
		d.Corners.Mirrored = rapid.Bool().Draw(t, "mirrored")
	}
	return d
}

// built draws a stool until one comes out that nothing stops.
func built(t *rapid.T) (form.Design, *form.Piece) {
	d := stool(t)
	p := form.Build(d)
	if p.Stopped() {
		t.Skip("does not fit: " + p.Findings[0].Text)
	}
	return p.Design, p
}

// geo is a stool's planes written down once more, straight from the words of the geometry.
type geo struct {
	a, b, h, w, d, top, side float64
	flush                    bool
}

func geoOf(d form.Design) geo {
	g := geo{
		a: d.Splay.Ends.Radians(), b: d.Splay.Edges.Radians(), h: d.Size.Height.MM(),
		w: d.Size.Width.MM(), d: d.Size.Depth.MM(),
		top: d.Boards.Top.Thickness.MM(), side: d.Boards.Side.Thickness.MM(),
		flush: d.Splay.EdgeCut == form.EdgeFlush,
	}
	if d.Size.TakenAt == form.AtFloor {
		g.w -= 2 * g.h * math.Tan(g.a)
		g.d -= 2 * g.h * math.Tan(g.b)
	}
	return g
}

// simpson integrates what is at most a cubic exactly.
func simpson(from, to float64, f func(float64) float64) float64 {
	return (to - from) / 6 * (f(from) + 4*f((from+to)/2) + f(to))
}

// topVolume is the slab of the top between two planes that lie inset by less from the sides'
// outer planes, square to them.
func (g geo) topVolume(inset float64) float64 {
	return simpson(0, g.top, func(down float64) float64 {
		x := g.w/2 + down*math.Tan(g.a) - inset/math.Cos(g.a)
		y := g.d/2 + down*math.Tan(g.b)
		return 4 * x * y
	})
}

// sideVolume is one side from the floor up to a height.
func (g geo) sideVolume(upTo float64) float64 {
	sin, cos := math.Sincos(g.a)
	return simpson(0, g.side, func(in float64) float64 {
		half := func(x float64) float64 {
			down := x * cos
			if g.flush {
				down += in * sin
			}
			return g.d/2 + down*math.Tan(g.b)
		}
		from, to := (g.h-upTo-in*sin)/cos, (g.h-in*sin)/cos
		return simpson(from, to, func(x float64) float64 { return 2 * half(x) })
	})
}
