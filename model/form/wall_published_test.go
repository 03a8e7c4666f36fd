package form_test

import (
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// ring of thin staves, wide enough for any lean.
func ring(staves int, lean float64, joint string) form.Design {
	return form.Design{
		Title: "Ring", Form: "ring",
		Size:    form.Size{Height: 20, Width: 3000, Staves: staves},
		Splay:   form.Splay{Ends: measure.Angle(lean) * measure.Degree},
		Timber:  "white oak",
		Boards:  form.Boards{Side: form.Board{Thickness: 5}},
		Corners: form.Corners{Joint: joint},
	}
}

// tray of four walls, its front and back leaning by front and its ends by ends.
func tray(front, ends float64, joint string) form.Design {
	return form.Design{
		Title: "Tray", Form: "tray",
		Size:    form.Size{Height: 90, Width: 420, Depth: 280},
		Splay:   form.Splay{Front: measure.Angle(front) * measure.Degree, Ends: measure.Angle(ends) * measure.Degree},
		Timber:  "white oak",
		Boards:  form.Boards{Side: form.Board{Thickness: 12}},
		Corners: form.Corners{Joint: joint},
	}
}

func cutsOf(t *testing.T, d form.Design, id string) map[string]part.Cut {
	t.Helper()
	p := form.Build(d)
	if p.Stopped() {
		t.Fatalf("stopped: %s", p.Findings[0].Text)
	}
	out := map[string]part.Cut{}
	for _, c := range p.Part(id).Cuts {
		out[c.ID] = c
	}
	return out
}

// sawTable is the printed table of mitred boxes of a saw's manual: by the slope of the sides from
// the horizontal, the gauge's swing and the blade's tilt for 4, 5, 6, 8 and 10 sides. To the nearest
// 0.005°. https://esmanual.top/manual/109885/Ryobi-Tss121.html?page=32 (4, 5, 6 sides);
// https://manualsdump.com/en/manuals/craftsman-315.21212/276873/24 (to 10 sides). Lost entries are NaN.
var (
	lost     = math.NaN()
	tabled   = []int{4, 5, 6, 8, 10}
	sawTable = []struct {
		slope float64
		pairs [5][2]float64
	}{
		{15, [5][2]float64{{44.01, 10.55}, {35.06, 8.75}, {29.15, 7.44}, {21.81, 5.68}, {17.42, 4.59}}},
		{20, [5][2]float64{{43.22, 14.00}, {34.32, 11.60}, {28.48, 9.85}, {21.27, 7.52}, {16.98, 6.07}}},
		{25, [5][2]float64{{42.19, 17.39}, {33.36, 14.38}, {27.62, 12.20}, {20.58, 9.31}, {16.41, 7.50}}},
		{30, [5][2]float64{{40.89, 20.70}, {32.18, 17.09}, {26.57, 14.48}, {19.73, 11.03}, {15.72, 8.89}}},
		{35, [5][2]float64{{39.32, 23.93}, {30.76, 19.70}, {25.31, 16.67}, {18.74, 12.68}, {14.90, 10.21}}},
		{40, [5][2]float64{{37.45, 27.03}, {29.10, 22.20}, {23.86, 18.75}, {17.60, 14.24}, {13.98, 11.46}}},
		{45, [5][2]float64{{35.26, 30.00}, {27.19, 24.56}, {22.21, 20.70}, {16.32, 15.70}, {12.94, 12.62}}},
		{50, [5][2]float64{{32.73, 32.80}, {25.03, 26.76}, {20.36, 22.52}, {14.91, 17.05}, {11.80, 13.69}}},
		{55, [5][2]float64{{29.84, 35.40}, {22.62, 28.78}, {18.32, 24.18}, {lost, lost}, {lost, lost}}},
		{60, [5][2]float64{{26.57, 37.76}, {19.96, 30.60}, {16.10, 25.66}, {lost, lost}, {lost, lost}}},
		{65, [5][2]float64{{22.91, 39.86}, {17.07, 32.19}, {13.71, 26.95}, {lost, lost}, {lost, lost}}},
		{70, [5][2]float64{{18.88, 41.64}, {13.95, 33.53}, {11.17, 28.02}, {lost, lost}, {lost, lost}}},
		{75, [5][2]float64{{14.51, 43.08}, {10.65, 34.59}, {lost, 28.88}, {lost, lost}, {lost, lost}}},
		{80, [5][2]float64{{lost, 44.14}, {7.19, 35.37}, {lost, 29.50}, {lost, lost}, {lost, lost}}},
		{85, [5][2]float64{{4.98, 44.78}, {3.62, 35.84}, {lost, 29.87}, {lost, lost}, {lost, lost}}},
		{90, [5][2]float64{{0, 45}, {0, 36}, {0, 30}, {lost, lost}, {lost, lost}}},
	}
)

// printed is half the last place of the table, with its rounding.
const printed = 0.0051

func TestMitredRingsAgainstASawsManual(t *testing.T) {
	for _, row := range sawTable {
		for k, pair := range row.pairs {
			for _, id := range []string{"stave-1", "stave-2"} {
				c := cutsOf(t, ring(tabled[k], 90-row.slope, form.Mitre), id)["left-end"]
				if d := c.Swing.Degrees() - pair[0]; math.Abs(d) > printed {
					t.Errorf("%d sides at %g°: swing %.4f, printed %.2f", tabled[k], row.slope, c.Swing.Degrees(), pair[0])
				}
				if d := c.Tilt.Degrees() - pair[1]; math.Abs(d) > printed {
					t.Errorf("%d sides at %g°: tilt %.4f, printed %.2f", tabled[k], row.slope, c.Tilt.Degrees(), pair[1])
				}
			}
		}
	}
}

// Four walls leaning alike, and in two leans, butted: swings of both and the tilt, worked out from
// vectors by hand (three places).
func TestButtedTraysByVectors(t *testing.T) {
	for _, c := range []struct{ front, ends, swingFront, swingEnd, tilt float64 }{
		{6, 6, 5.967, 5.967, 0.626},
		{10, 10, 9.851, 9.851, 1.728},
		{15, 15, 14.511, 14.511, 3.841},
		{45, 45, 35.264, 35.264, 30.000},
		{10, 5, 4.924, 9.963, 0.867},
		{12, 6, 5.870, 11.936, 1.245},
		{15, 8, 7.731, 14.861, 2.064},
		{20, 10, 9.408, 19.720, 3.405},
	} {
		for _, over := range []string{form.OnFront, form.OnEnd} {
			d := tray(c.front, c.ends, form.Butt)
			d.Corners.Over = over
			front, end := cutsOf(t, d, "front"), cutsOf(t, d, "end-left")
			for _, f := range []struct {
				what      string
				got, want float64
			}{
				{"swing of the front", front["left-end"].Swing.Degrees(), c.swingFront},
				{"swing of the end", end["right-end"].Swing.Degrees(), c.swingEnd},
				{"tilt of the front", front["left-end"].Tilt.Degrees(), c.tilt},
				{"tilt of the end", end["right-end"].Tilt.Degrees(), c.tilt},
				{"bevel of the rim", front["upper-edge"].Tilt.Degrees(), c.front},
			} {
				if math.Abs(f.got-f.want) > 0.00051 {
					t.Errorf("%g/%g, %s over: %s %.4f°, want %.3f", c.front, c.ends, over, f.what, f.got, f.want)
				}
			}
		}
	}
}

// The tilt of a butted corner and the mitred one of the same ring add up to a right angle with
// each other's double, and the published formula for six sides at 30°, 37.76°, does not close.
func TestButtedRingsClose(t *testing.T) {
	for n := 3; n <= 16; n++ {
		for _, lean := range []float64{0, 5, 12, 30, 60} {
			mitre := cutsOf(t, ring(n, lean, form.Mitre), "stave-1")["right-end"].Tilt.Degrees()
			butt := cutsOf(t, ring(n, lean, form.Butt), "stave-1")["right-end"].Tilt.Degrees()
			if d := math.Abs(90-2*mitre) - butt; math.Abs(d) > 1e-9 {
				t.Errorf("%d sides leaning %g°: butt %.6f°, mitre %.6f°", n, lean, butt, mitre)
			}
		}
	}
	if butt := cutsOf(t, ring(6, 60, form.Butt), "stave-1")["right-end"].Tilt.Degrees(); math.Abs(butt-61.04) > 0.005 {
		t.Errorf("six sides at 30° from the horizontal: butt %.4f°, worked out 61.04°", butt)
	}
}

// Mitred ends of a ring all stand in planes through its axis.
func TestMitresOfARingHoldItsAxis(t *testing.T) {
	for n := 3; n <= 16; n++ {
		p := form.Build(ring(n, 12, form.Mitre))
		for _, q := range p.Parts {
			for _, c := range q.Cuts[:2] {
				world := q.Place.Mul4x1(c.Normal.Vec4(0)).Vec3()
				off := c.Offset + world.Dot(q.Place.Col(3).Vec3())
				if math.Abs(world[2]) > 1e-12 || math.Abs(off) > 1e-9 {
					t.Errorf("%d staves, %s %s: normal %v, %g mm from the axis", n, q.ID, c.ID, world, off)
				}
			}
		}
	}
}

// A shop tip for a tray asks for one upright side and three leaning ones: the corners differ, and
// each board's two ends are no pair.
func TestOneUprightSide(t *testing.T) {
	d := tray(12, 12, form.Butt)
	upright := measure.Angle(0)
	d.Splay.Back = &upright
	back, end := cutsOf(t, d, "back"), cutsOf(t, d, "end-right")
	// beside an upright wall the corner is square: tan swing = tan 12° on the back, nothing on the end
	if c := back["left-end"]; math.Abs(c.Swing.Degrees()-12) > 1e-9 || c.Tilt.Degrees() > 1e-9 {
		t.Errorf("back: swing %g, tilt %g", c.Swing.Degrees(), c.Tilt.Degrees())
	}
	if c := end["right-end"]; c.Swing.Degrees() > 1e-9 || c.Tilt.Degrees() > 1e-9 {
		t.Errorf("end at the back: swing %g, tilt %g", c.Swing.Degrees(), c.Tilt.Degrees())
	}
	if c := end["left-end"]; math.Abs(c.Swing.Degrees()-11.745) > 0.00051 || math.Abs(c.Tilt.Degrees()-2.478) > 0.00051 {
		t.Errorf("end at the front: swing %g, tilt %g", c.Swing.Degrees(), c.Tilt.Degrees())
	}
	if end["left-end"].Pair == "end-right/right-end" || end["left-end"].Pair != "end-left/right-end" {
		t.Errorf("the end's left end is a pair with %q", end["left-end"].Pair)
	}
}
