package table

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/joint"
	"splaywright/model/part"
)

// Pins behind a lap, as the solid has them: on the end plane the lap line lies so far from the inner face's arris as the gauge is set,
// and each pin's sides cross it where the table of marking says, from that line's own edge. No figure is told of the outer face.
func TestPinsBehindALap(t *testing.T) {
	looked := map[string]int{}
	for seed := range uint64(400) {
		d := formtest.Random(seed)
		d.Features = nil
		if d.Corners.Joint != form.HalfBlindDovetail {
			continue
		}
		p := model.Derive(d)
		if p.Stopped() {
			continue
		}
		for _, j := range p.Joints {
			if len(j.Tails) == 0 {
				continue
			}
			looked[d.Form]++
			name := fmt.Sprintf("random piece %d, %s", seed, j.ID)
			lapLine(t, name, p.Part(j.PinBoard), p.Part(j.TailBoard), j)
			lines := linesTable(p, []joint.Joint{j}, metric)
			if !slices.ContainsFunc(lines.Columns, func(c Column) bool { return c.Head == "Pins, lap line" }) || !strings.Contains(notes(lines), "stays whole") {
				t.Errorf("%s: the table of marking says nothing of the lap", name)
			}
			gauges := gaugesTable(p, []joint.Joint{j}, metric)
			near(t, name+", gauge for the lap line", *settingNamed(gauges, "lap line")[4].Number, j.Baseline.Outer.MM(), 1e-9)
			if outer := slices.DeleteFunc(slices.Clone(gauges.Rows), func(row []Cell) bool { return row[0].Text != "baseline, outer face" }); len(outer) != 1 {
				t.Errorf("%s: baselines on %d outer faces; that of the pins stays whole", name, len(outer))
			}
		}
	}
	for _, name := range []string{"stool", "steps", "tray", "chest", "ring"} {
		if looked[name] < 4 {
			t.Errorf("%d corners of %s", looked[name], name)
		}
	}
}

// lapLine follows the pins of a joint on their board's end: corners of the solid that lie in the end's plane, at the depth of the lap.
func lapLine(t *testing.T, name string, q, tails *part.Part, j joint.Joint) {
	t.Helper()
	lap := -(q.Blank.Thickness - j.Depth).MM()
	edges := slices.DeleteFunc(slices.Clone(q.Cuts), func(c part.Cut) bool { return c.Kind != part.Rip })
	want := 2 * len(j.Tails)
	var found int
	lo, hi := q.Solid.Bounds()
	toward := mgl64.TransformCoordinate(tails.Place.Col(3).Vec3(), q.Place.Inv())[0] - (lo[0]+hi[0])/2
	for _, c := range q.Cuts {
		if c.Kind != part.Crosscut || c.Normal[0]*toward < 0 {
			continue
		}
		n := c.Normal
		level := math.Hypot(n[0], n[1])
		onEnd := 0
		for _, v := range q.Solid.Vertices {
			if math.Abs(v[2]-lap) > 1e-6 || math.Abs(n.Dot(v)-c.Offset) > 1e-6 {
				continue
			}
			// from the inner arris in the end's plane, square to it: the depth over the cosine of the end's tilt
			near(t, name+", from the inner arris", (q.Blank.Thickness.MM()+v[2])/level, j.Baseline.Outer.MM(), 1e-6)
			// along the lap line from where it meets either edge
			var from []float64
			for _, e := range edges {
				det := n[0]*e.Normal[1] - n[1]*e.Normal[0]
				one, other := c.Offset-n[2]*lap, e.Offset-e.Normal[2]*lap
				x, y := (one*e.Normal[1]-other*n[1])/det, (n[0]*other-e.Normal[0]*one)/det
				from = append(from, math.Hypot(v[0]-x, v[1]-y))
			}
			if slices.ContainsFunc(j.Pins, func(s joint.Span) bool {
				return slices.ContainsFunc(from, func(l float64) bool { return math.Abs(l-s.Start.MM()) < 1e-6 || math.Abs(l-s.End.MM()) < 1e-6 })
			}) {
				onEnd++
			}
		}
		found = max(found, onEnd)
	}
	if found < want {
		t.Errorf("%s: %d of %d sides of pins are at their places on the lap line", name, found, want)
	}
}
