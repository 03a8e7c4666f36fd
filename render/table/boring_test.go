package table

import (
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

func boringRow(t *testing.T, q int, b part.Bore) (Table, []Cell) {
	t.Helper()
	p := handPiece()
	p.Parts[q].Bores = []part.Bore{b}
	tb := Boring(p, metric)
	if len(tb.Rows) != 1 {
		t.Fatalf("%d rows, want 1", len(tb.Rows))
	}
	return tb, tb.Rows[0]
}

func TestScrewHoleInTheTop(t *testing.T) {
	lean := 6 * math.Pi / 180
	tb, row := boringRow(t, 0, part.Bore{
		ID: "screw-1-clearance", Purpose: "clearance", Entry: mgl64.Vec3{-200, 65, 0},
		Axis: mgl64.Vec3{-math.Sin(lean), 0, -math.Cos(lean)}, Diameter: 4.5, Depth: 20.1, Through: true,
		Lean: 6 * measure.Degree, Face: "outer",
	})
	words := []string{"1 Top", "screw 1, clearance", "outer face", "left end", "10.0", "back edge", "60.0", "6.00", "left end", "4.5", "20.0", "through", ""}
	for i, want := range words {
		if row[i].Text != want {
			t.Errorf("%s: %q, want %q", tb.Columns[i].Head, row[i].Text, want)
		}
	}
}

func TestPilotInALeaningEndIsMeasuredOnThatEnd(t *testing.T) {
	lean := 6 * math.Pi / 180
	// 12 mm in along the bevelled end from the outer arris, 20 mm from the back edge.
	entry := mgl64.Vec3{-12 * math.Sin(lean), 105, -12 * math.Cos(lean)}
	tb, row := boringRow(t, 2, part.Bore{ID: "screw-1-pilot", Purpose: "pilot", Entry: entry, Axis: mgl64.Vec3{1, 0, 0}, Diameter: 2.8, Depth: 40, Lean: 6 * measure.Degree, Face: "top-end"})
	near(t, "from the back edge", *row[column(t, tb, "Distance", 0)].Number, 20, 1e-9)
	near(t, "from the nearer face", *row[column(t, tb, "Distance", 1)].Number, 20/math.Cos(lean)-12, 1e-9)
	if got := row[column(t, tb, "Second edge", 0)].Text; got != "inner face" {
		t.Errorf("nearer to the %s", got)
	}
	if got := row[column(t, tb, "Comes out", 0)].Text; got != "blind" {
		t.Errorf("comes out: %q", got)
	}
}

func TestHoleThatPokesThrough(t *testing.T) {
	blind := part.Bore{ID: "hole-1", Purpose: "hole", Entry: mgl64.Vec3{150, 60, 0}, Axis: mgl64.Vec3{0, 0, -1}, Diameter: 6, Depth: 22, Face: "outer"}
	tb, row := boringRow(t, 1, blind)
	if got := row[column(t, tb, "Comes out", 0)].Text; !strings.HasPrefix(got, "pokes through the inner face by 2.0") {
		t.Errorf("22 deep in 20: %q", got)
	}
	// A leaning bit comes out with the rim of its bottom first: 2.9·sin 30° beyond its centre.
	blind.Axis, blind.Depth, blind.Diameter = mgl64.Vec3{0.5, 0, -math.Sqrt(3) / 2}, 22, 5.8
	tb, row = boringRow(t, 1, blind)
	out := 22*math.Sqrt(3)/2 + 2.9*0.5 - 20
	if got := row[column(t, tb, "Comes out", 0)].Text; !strings.Contains(got, metric.FormatUnit(measure.Length(out))) {
		t.Errorf("leaning bit: %q, want %g", got, out)
	}
}

// The distance of a point from the line in which two planes meet, by a second route: the
// shortest of many steps along that line.
func TestDistanceOnAFaceIsTheShortestToThatEdge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tilt := rapid.Float64Range(-0.9, 0.9).Draw(t, "tilt")
		swing := rapid.Float64Range(-0.9, 0.9).Draw(t, "swing")
		face := wall{normal: mgl64.Vec3{0, 0, 1}, offset: -20}
		w := wall{normal: mgl64.Vec3{math.Cos(tilt) * math.Cos(swing), math.Cos(tilt) * math.Sin(swing), math.Sin(tilt)}, offset: 200}
		at := mgl64.Vec3{rapid.Float64Range(-100, 50).Draw(t, "x"), rapid.Float64Range(-50, 50).Draw(t, "y"), -20}
		best := math.Inf(1)
		for y := -3000.0; y < 3000; y += 0.5 {
			x := (w.offset + 20*w.normal[2] - w.normal[1]*y) / w.normal[0]
			best = min(best, math.Hypot(x-at[0], y-at[1]))
		}
		if got := distanceIn(face, w, at); math.Abs(got-best) > 0.01 {
			t.Fatalf("got %g, stepping along the edge finds %g", got, best)
		}
	})
}

func TestShapesAndEasing(t *testing.T) {
	p := handPiece()
	p.Parts[2].Features = []part.Feature{
		{Kind: part.Arch, Centre: mgl64.Vec2{261.432, 0}, Length: 150, Width: 45, Radius: 85},
		{Kind: part.Slot, Centre: mgl64.Vec2{100, 25}, Length: 60, Width: 10, Angle: 30 * measure.Degree},
		{Kind: part.RoundOver, Radius: 3},
	}
	p.Parts[2].Eased = []part.EasedEdge{{Name: "front edge, outer face", Radius: 3, Length: 240, Dihedral: 90 * measure.Degree, Removed: 463}}
	shapes := Shapes(p, metric)
	if len(shapes.Rows) != 2 {
		t.Fatalf("%d shapes, want the arch and the slot", len(shapes.Rows))
	}
	if got := cell(t, shapes, 0, "First edge").Text; got != "floor end" {
		t.Errorf("the arch stands on the %s", got)
	}
	near(t, "slot from the top end", *shapes.Rows[1][column(t, shapes, "Distance", 0)].Number, 100, 1e-9)
	near(t, "slot from the back edge", *shapes.Rows[1][column(t, shapes, "Distance", 1)].Number, 100, 1e-9)
	if got := cell(t, Easing(p, metric), 0, "Wood removed").Text; got != "0.46" {
		t.Errorf("wood removed %s cm³", got)
	}
}

// A side butted under a top 20 thick that overhangs by 18: its seat on the top's lower face. At
// the lower face the side's outer plane stands 20·tan 6° further out than at the upper, and the
// board is 20/cos 6° thick on the level.
func TestSeatOfASideUnderATop(t *testing.T) {
	p := handPiece()
	top, lean := p.Parts[0], 6*math.Pi/180
	for i, x := range []float64{-1, 1} {
		top.Cuts[i] = handCut(top.Cuts[i].ID, part.Crosscut, mgl64.Vec3{x, 0, 0}, 228, "")
	}
	p.Joints = []joint.Joint{{ID: "top/side-right", Kind: "butt", TailBoard: "top", PinBoard: "side-right"}}
	tb := Seats(p, metric)
	if len(tb.Rows) != 4 {
		t.Fatalf("%d corners, want 4", len(tb.Rows))
	}
	outer := 228 - (210 + 20*math.Tan(lean))
	for i := range tb.Rows {
		if got := cell(t, tb, i, "First edge").Text; got != "right end" {
			t.Fatalf("measured from the %s", got)
		}
		want := outer
		if strings.HasPrefix(cell(t, tb, i, "Corner").Text, "inner face") {
			want += 20 / math.Cos(lean)
		}
		near(t, "from the right end", *cell(t, tb, i, "Distance").Number, want, 1e-9)
		near(t, "from the long edge", *tb.Rows[i][column(t, tb, "Distance", 1)].Number, 0, 1e-9)
	}
	if got := cell(t, tb, 0, "On").Text; got != "1 Top: inner face" {
		t.Errorf("the seat is on the %s", got)
	}
}

// A no. 10 may have a head of 0.385 in, http://www.ary.com/Info/WoodScrewSizes.html , and its counterbore is 3/8 in; those of a no. 8 all go in.
func TestHeadsThatMayNotGoIn(t *testing.T) {
	for gauge, want := range map[int]bool{8: false, 10: true} {
		d := formtest.Butt()
		d.Corners.Screws = &form.Screws{Gauge: gauge, Length: 50, Count: 2, FromEnd: 40, Counterbore: 6}
		p := model.Derive(d)
		if p.Stopped() {
			t.Fatal(p.Findings)
		}
		if got := strings.Contains(notes(Boring(p, d.Style())), "Heads of no. 10 measure up to 0.385 in (9.8 mm) and may not go into 9.5 mm: try one"); got != want {
			t.Errorf("no. %d: told %v", gauge, got)
		}
	}
}
