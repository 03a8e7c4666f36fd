package derived_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"splaywright/assets"
	"splaywright/export/derived"
	"splaywright/model"
	"splaywright/model/file/filetest"
)

// keys are the names that the form of the result promises to scripts, for each kind of object.
var keys = map[string]string{
	"":         "splaywright title form length_unit angle_unit overall parts joints findings",
	"overall":  "height width_top width_floor depth_top depth_floor mass_kg",
	"parts":    "id name timber blank rough face_length volume mass_kg cuts bores",
	"blank":    "length width thickness",
	"rough":    "length width thickness",
	"cuts":     "id kind swing tilt normal",
	"bores":    "id diameter depth through x y lean",
	"joints":   "id kind tail_board pin_board dihedral slope baseline pin_baseline cheek_tilt pin_angle tails slides_along",
	"baseline": "outer inner", "pin_baseline": "outer inner", "face_length": "outer inner",
	"tails":    "start end",
	"findings": "id level text figure limit unit source parts",
}

func derive(t *testing.T, text string) map[string]any {
	t.Helper()
	var out bytes.Buffer
	if err := derived.Write(&out, model.Derive(filetest.Design(t, []byte(text)))); err != nil {
		t.Fatal(err)
	}
	var m map[string]any
	if err := json.Unmarshal(out.Bytes(), &m); err != nil {
		t.Fatal(err)
	}
	return m
}

// walk looks at every object under a name and counts them.
func walk(t *testing.T, name string, v any, seen map[string]int) {
	switch x := v.(type) {
	case []any:
		for _, item := range x {
			walk(t, name, item, seen)
		}
	case map[string]any:
		seen[name]++
		for _, k := range strings.Fields(keys[name]) {
			if _, ok := x[k]; !ok {
				t.Errorf("%s %v has no %q", name, x["id"], k)
			}
		}
		for k, inner := range x {
			walk(t, k, inner, seen)
		}
	}
}

func TestEveryPromisedKeyIsThere(t *testing.T) {
	seen := map[string]int{}
	for _, e := range assets.Examples() {
		walk(t, "", derive(t, string(e.YAML)), seen)
	}
	stopped := derive(t, worked+"stretchers: [{width: 300, thickness: 20, set: on edge, below-top: 0, joint: butt}]\n")
	walk(t, "", stopped, seen)
	stops := 0
	for _, f := range stopped["findings"].([]any) {
		if f.(map[string]any)["level"] == "stop" {
			stops++
		}
	}
	if stops == 0 {
		t.Error("a stretcher taller than the piece does not stop it")
	}
	for name := range keys {
		if seen[name] == 0 {
			t.Errorf("no %q was looked at", name)
		}
	}
}

// worked is the example whose figures stand below.
const worked = `splaywright: 1
title: Worked example
form: stool
size: {height: 260, width: 420, depth: 250}
splay: {ends: 6, edges: 0}
timber: white oak
boards: {top: {thickness: 20}, side: {thickness: 20}}
corners: {joint: through dovetail, tails-on: top, slope: 8, tails: 4, pin: 10, half-pin: 8}
`

// The figures were computed apart from this program with a general-purpose solid library (volumes)
// and from the closed formulas of two planes that meet (angles); a width of 420 mm at the top of a
// piece 260 mm high that leans 6 degrees is 420 + 2 * 260 * tan 6 = 474.655 at the floor.
func TestFiguresOfTheWorkedExample(t *testing.T) {
	m := derive(t, worked)
	at := func(path string) float64 {
		var v any = m
		for _, k := range strings.Split(path, "/") {
			switch x := v.(type) {
			case map[string]any:
				v = x[k]
			case []any:
				v = x[int(k[0]-'0')]
			}
		}
		f, ok := v.(float64)
		if !ok {
			t.Fatalf("%s is %v", path, v)
		}
		return f
	}
	for _, c := range []struct {
		path      string
		want, off float64
	}{
		{"overall/width_floor", 420 + 520*math.Tan(math.Pi/30), 1e-9},
		{"overall/depth_floor", 250, 1e-9},
		{"parts/0/blank/length", 424.204, 5e-4},
		{"parts/0/volume", 2064413.743, 5e-3},
		{"parts/1/blank/length", 263.534, 5e-4},
		{"parts/1/face_length/outer", 261.432, 5e-4},
		{"parts/1/volume", 1229658.276, 5e-3},
		{"tolerances/1/worst", 0.5 + math.Sin(math.Pi/30) + 520*math.Pi/1800, 1e-6}, // length of the top and the sides, two corner angles
		{"joints/0/dihedral", 96, 1e-9},
		{"joints/0/slope", 8, 1e-9},
		{"joints/0/baseline/outer", 20.1102, 5e-5},
		{"joints/0/pin_baseline/inner", 20.1102, 5e-5},
		{"joints/0/cheek_tilt", 0.83804, 5e-6},
		{"joints/0/pin_angle", 8.04349, 5e-6},
		{"joints/0/tails/0/start", 8, 1e-9},
		{"joints/0/tails/0/end", 59, 1e-9},
		{"joints/0/tails/3/end", 242, 1e-9},
	} {
		if got := at(c.path); math.Abs(got-c.want) > c.off {
			t.Errorf("%s is %.6f, want %.6f", c.path, got, c.want)
		}
	}
}
