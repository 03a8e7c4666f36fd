package file

import (
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/measure"
)

const step = `# a step, kept short
splaywright: 1
title: Reading-nook step   # with a note
units: mm

form: stool
size: {height: 260, width: 420, depth: 9 3/8 in, taken-at: top}
splay:
  ends: 6       # degrees
  edges: "1:14"
timber: white oak
boards:
  top: {thickness: 20}
  side: {thickness: 3/4 in}
corners: {joint: through dovetail, tails: 4}
stretchers:
  - {width: 60, thickness: 20, set: on edge}
features:
  - on: top
    kind: hole
    diameter: 25

names: {foot: size.height / 5, pin-width: foot - 42 mm}
round: {to: 1/32 in}
`

func read(t *testing.T, text string) *Document {
	t.Helper()
	d, err := Read(strings.NewReader(text), "step.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestDesignIsRead(t *testing.T) {
	d, err := read(t, step).Design()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"height", d.Size.Height.MM(), 260},
		{"depth typed in inches", d.Size.Depth.MM(), 238.125},
		{"side", d.Boards.Side.Thickness.MM(), 19.05},
		{"ends", d.Splay.Ends.Degrees(), 6},
		{"edges 1:14", d.Splay.Edges.Radians(), math.Atan(1.0 / 14)},
		{"tails", float64(*d.Corners.Tails), 4},
		{"hole", d.Features[0].Diameter.MM(), 25},
		{"step", d.Round.To.MM(), 25.4 / 32},
	} {
		if math.Abs(c.got-c.want) > 1e-12 {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
	if d.Round.Unit != measure.Imperial || d.Units != measure.Metric {
		t.Error("papers print in inches, and bare numbers are millimetres")
	}
}

// Papers print in the unit that the step of rounding was typed in, wherever that stands; letters of names and functions are none.
func TestPapersPrintInTheUnitOfTheStep(t *testing.T) {
	mm, in := measure.Metric, measure.Imperial
	for _, c := range []struct {
		units, rest string
		want        measure.Unit
	}{
		{"mm", "round: {to: 0.5}", mm}, {"in", "round: {to: 1/32}", in}, {"mm", "round: {both: true}", mm},
		{"mm", "round: {to: 1/32 in}", in}, {"mm", "round: {to: '1/32\"'}", in}, {"in", "round: {to: 0.5 mm}", mm},
		{"mm", "round: {to: 1/32 IN}", in}, {"in", "round: {to: 0.1 CM}", mm}, {"in", "round: {to: 0.001 m}", mm}, {"mm", "round: {to: 0.01 ft}", in},
		{"mm", "round: {to: min(1; 0.5)}", mm}, {"mm", "names: {fine: 0.5}\nround: {to: fine}", mm}, {"in", "names: {comma: 1/64}\nround: {to: comma * 2}", in},
		{"mm", "names: {fine: 1/32 in}\nround: {to: fine}", in}, {"in", "names: {coarse: fine * 2, fine: 0.5 mm}\nround: {to: coarse}", mm},
		{"mm", "names: {a: a}\nround: {to: a}", mm},
	} {
		d, err := read(t, "splaywright: 1\nunits: "+c.units+"\nform: stool\nsize: {height: 430 mm, width: 450 mm, depth: 250 mm}\n"+c.rest+"\n").Design()
		if err != nil && !strings.Contains(err.Error(), "circle") {
			t.Fatalf("%s: %v", c.rest, err)
		}
		if d.Round.Unit != c.want {
			t.Errorf("units: %s, %s: papers print in %v, want %v", c.units, c.rest, d.Round.Unit, c.want)
		}
	}
}

// wouldDo is how a refusal says what would be accepted.
var wouldDo = regexp.MustCompile(`such as |would do|did you mean|[Tt]here are |; (type|write|put|give|keep|leave) |expected: |is expected|are expected|is made of`)

// Each row changes one line of the step; the error must stand at the place and say the words.
func TestWhatIsRefused(t *testing.T) {
	for _, c := range []struct{ name, old, new, place, words string }{
		{"a slip in a key", "taken-at: top", "takenat: top", "step.yaml:7:50", "did you mean taken-at"},
		{"a count with a half", "tails: 4", "tails: 2.5", ":15:", "a whole number is expected here, such as 3"},
		{"too many tails", "tails: 4", "tails: 900", ":15:", "from 1 to 400 is expected here, such as 400"},
		{"no tails", "tails: 4", "tails: 0", ":15:", "such as 1"},
		{"a negative size", "width: 420", "width: -420", ":7:28:", `size.width: "-420": it must be above zero, such as`},
		{"a size that comes to less than nothing", "width: 420", "width: 4 - 420 mm", ":7:", "this comes to -416.00 mm"},
		{"a negative pin", "tails: 4", "pin: -1 mm", ":15:", "0 or more is expected, such as"},
		{"a board that lies flat", "ends: 6 ", "ends: 91 ", ":9:", "such as 6 or 1:9.5"},
		{"nearly a name", "foot - 42 mm", "foo - 42 mm", ":23:", "did you mean foot?"},
		{"nearly a size", "foot: size.height / 5", "foot: size.hight / 5", ":23:", "did you mean size.height?"},
		{"no depth", ", depth: 9 3/8 in", "", ":7:7", "write it such as depth: 250 mm"},
		{"too long", "width: 420", "width: 420 m", ":7:", "is the unit right? A length such as"},
		{"a title of nothing", "title: Reading-nook step ", "title: ~ ", ":3:", "such as Reading-nook step"},
		{"a list for a timber", "timber: white oak", "timber: [oak]", ":11:", "such as white oak"},
		{"a number in eights", "width: 420", "width: 010", ":7:", "begin with 0"},
		{"a number in sixteens", "width: 420", "width: 0x1F", ":7:", "not understood"},
		{"endless", "width: 420", "width: .inf", ":7:", "not a number"},
		{"underscores", "width: 420", "width: 1_000", ":7:", "not understood"},
		{"powers of ten", "width: 420", "width: 4e2", ":7:", "powers"},
		{"a decimal comma", "width: 420", `width: "42,5"`, ":7:", "comma"},
		{"a shop word", "width: 420", "width: 420 strong", ":7:", "strong"},
		{"an angle for a length", "width: 420", "width: 7 deg", ":7:", "a length is expected"},
		{"a length for an angle", "ends: 6 ", "ends: 6 mm ", ":9:9", "an angle is expected"},
		{"nothing", "ends: 6 ", "ends:   ", ":9:", "missing"},
		{"zero thickness", "top: {thickness: 20}", "top: {thickness: 0}", ":13:", "above zero"},
		{"the same key twice", "units: mm", "title: Again\nunits: mm", ":4:", "already in line 3"},
		{"an unknown joint", "joint: through dovetail", "joint: glue", ":15:", "butt"},
		{"a newer version", "splaywright: 1", "splaywright: 2", ":2:", "version 1"},
		{"division by zero", "foot: size.height / 5", "foot: size.height / 0", ":23:", "divides by zero"},
		{"a hidden zero", "foot: size.height / 5", "foot: size.height / (2 - 2)", ":23:", "divides by zero"},
		{"mixed-up units", "foot: size.height / 5", "foot: size.height + 5 deg", ":23:", "both must be lengths or both angles, such as"},
		{"square millimetres", "foot: size.height / 5", "foot: size.height * size.width", ":23:", "multiply by a bare number"},
		{"a circle", "height: 260", "height: foot", ":23:", "size.height → foot → size.height; give one of them a size of its own"},
		{"itself", "foot: size.height / 5", "foot: foot + 1 mm", ":23:", "foot → foot"},
		{"an unknown name", "foot: size.height / 5", "foot: hand / 5", ":23:", `"hand"`},
		{"a merge key", "units: mm", "<<: {units: mm}", ":4:", "merging"},
		{"an alias", "timber: white oak", "timber: &t oak", ":11:", "anchors"},
		{"a tag", "timber: white oak", "timber: !wood oak", ":11:", "tags"},
		{"a list for a number", "ends: 6 ", "ends: [6] ", ":9:", "number"},
		{"boards on hand", "units: mm", "boards-on-hand: [{length: 2 m, width: 200}]\nunits: mm", ":4:", "thickness"},
		{"a knot off the paper", "units: mm", "boards-on-hand: [{length: 2 m, width: 200, thickness: 27, avoid: [{x: -3, y: 0, diameter: 20}]}]\nunits: mm", ":4:", "negative"},
		{"a knot that is both", "units: mm", "boards-on-hand: [{length: 2 m, width: 200, thickness: 27, avoid: [{x: 3, y: 0, diameter: 20, length: 5, width: 5}]}]\nunits: mm", ":4:", "circle and a rectangle"},
		{"a hole without its size", "    diameter: 25\n", "", ":19:", "missing"},
		{"a name that is a sum", "names: {foot:", "names: {a+b: 3, foot:", ":23:", "letters"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := strings.Replace(step, c.old, c.new, 1)
			if text == step {
				t.Fatal("the row changes nothing")
			}
			d, err := Read(strings.NewReader(text), "step.yaml")
			if err == nil {
				_, err = d.Design()
			}
			var list Errors
			if !errors.As(err, &list) {
				t.Fatalf("it is taken (%v)", err)
			}
			if len(list) != 1 {
				t.Errorf("%d errors, want 1: %v", len(list), err)
			}
			if !wouldDo.MatchString(err.Error()) {
				t.Errorf("%v does not say what would do", err)
			}
			if s := err.Error(); !strings.Contains(s, c.place) || !strings.Contains(s, c.words) {
				t.Errorf("%q does not name %q and %q", s, c.place, c.words)
			}
		})
	}
}

func TestEveryFaultIsTold(t *testing.T) {
	text := strings.NewReplacer("height: 260", "height: tall", "tails: 4", "tails: 2.5", "timber:", "wood:").Replace(step)
	_, err := read(t, text).Design()
	var list Errors
	if !errors.As(err, &list) || len(list) != 3 {
		t.Fatalf("3 faults are expected:\n%v", err)
	}
}

func TestWhatIsNoDesignIsRefusedQuickly(t *testing.T) {
	bomb := "a: &a [x,x,x,x,x,x,x,x,x]\n"
	for i := 'b'; i < 'k'; i++ {
		p := string(i - 1)
		bomb += string(i) + ": &" + string(i) + " [" + strings.Repeat("*"+p+",", 8) + "*" + p + "]\n"
	}
	for name, r := range map[string]io.Reader{
		"an alias bomb":     strings.NewReader(bomb),
		"100 MB":            io.LimitReader(endless{}, 100<<20),
		"nothing":           strings.NewReader(""),
		"a list":            strings.NewReader("- 1\n"),
		"two documents":     strings.NewReader("splaywright: 1\n---\nsplaywright: 1\n"),
		"names for ever":    strings.NewReader("splaywright: 1\nnames: {" + chain(20000) + "}\n"),
		"brackets for ever": strings.NewReader(strings.Repeat("[", 20000)),
		"a tab":             strings.NewReader("size:\n\theight: 3\n"),
		"bytes":             strings.NewReader("\x00\x01\xff"),
	} {
		d, err := Read(r, "x.yaml")
		if err == nil {
			t.Errorf("%s is read: %v", name, d.root)
		} else if !strings.Contains(err.Error(), "x.yaml") {
			t.Errorf("%s: %q does not name the file", name, err)
		}
	}
}

// chain is a row of names that each stand for the next.
func chain(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "n%d: n%d + 1, ", i, i+1)
	}
	return b.String()
}

// endless is a file that never stops; it counts on the reader to stop.
type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '#'
	}
	return len(p), nil
}

func TestEditsLeaveTheRestAsItWas(t *testing.T) {
	for _, c := range []struct{ path, text, old, new string }{
		{"size.height", "300", "height: 260", "height: 300"},
		{"size.depth", "1 ft", "depth: 9 3/8 in", "depth: 1 ft"},
		{"splay.ends", "12", "ends: 6 ", "ends: 12 "},
		{"splay.edges", "4", `edges: "1:14"`, `edges: "4"`},
		{"splay.ends", "1:8", "ends: 6 ", "ends: 1:8 "},
		{"title", `Step, "low" # 2`, "Reading-nook step ", `'Step, "low" # 2' `},
		{"splay.edge-cut", "flush", "edges: \"1:14\"\n", "edges: \"1:14\"\n  edge-cut: flush\n"},
		{"corners.pin", "10", "tails: 4}", "tails: 4, pin: 10}"},
		{"stretchers.0.width", "70", "width: 60", "width: 70"},
		{"features.0.x", "5", "diameter: 25\n", "diameter: 25\n    x: 5\n"},
		{"corners.screws.gauge", "8", "tails: 4}", "tails: 4, screws: {gauge: 8}}"},
		{"saw.kerf", "2.4", "round: {to: 1/32 in}\n", "saw: {kerf: 2.4}\nround: {to: 1/32 in}\n"},
	} {
		d := read(t, step)
		if err := d.Set(c.path, c.text); err != nil {
			t.Errorf("%s: %v", c.path, err)
			continue
		}
		if want := strings.Replace(step, c.old, c.new, 1); string(d.Bytes()) != want {
			t.Errorf("%s = %s gives\n%s", c.path, c.text, d.Bytes())
		}
		if d.Text(c.path) != c.text {
			t.Errorf("%s holds %q", c.path, d.Text(c.path))
		}
	}
}

func TestItemsComeAndGo(t *testing.T) {
	d := read(t, step)
	if err := d.Append("stretchers", [2]string{"width", "50"}, [2]string{"thickness", "3/4 in"}); err != nil {
		t.Fatal(err)
	}
	if d.Len("stretchers") != 2 || d.Text("stretchers.1.thickness") != "3/4 in" {
		t.Errorf("the second stretcher is missing:\n%s", d.Bytes())
	}
	d.Remove("stretchers.1")
	if string(d.Bytes()) != step {
		t.Errorf("taking it out again leaves\n%s", d.Bytes())
	}
	d.Remove("corners.tails")
	if d.Text("corners.tails") != "" || d.Text("corners.joint") != "through dovetail" {
		t.Errorf("corners are now\n%s", d.Bytes())
	}
	d.Remove("features.0")
	if d.Len("features") != 0 {
		t.Errorf("features are now\n%s", d.Bytes())
	}
	if err := d.Append("features", [2]string{"on", "top"}, [2]string{"kind", "hole"}, [2]string{"diameter", "20"}); err != nil {
		t.Error(err)
	}
	if _, err := d.Design(); err != nil {
		t.Error(err)
	}
}

func TestWhatAnExpressionComesTo(t *testing.T) {
	d := read(t, step)
	for path, want := range map[string]string{
		"names.foot": `52.00 mm (2 1/16")`, "names.pin-width": `10.00 mm (13/32")`, "splay.edges": "4.09° (1:14)", "corners.tails": "4",
	} {
		if got, ok := d.Value(path); !ok || got != want {
			t.Errorf("%s is %q (%v), want %q", path, got, ok, want)
		}
	}
}

func TestExpressions(t *testing.T) {
	names := func(n string) (measure.Quantity, error) {
		if n == "h" {
			return measure.Quantity{Kind: measure.OfLength, Value: 100}, nil
		}
		return measure.Quantity{}, errors.New("unknown")
	}
	for text, want := range map[string]float64{
		"(5 1/2 in - 3 * (1/8 in)) / 4": 1.28125 * 25.4, // hsst.wordpress.com 2011, 5 1/2 in ripped into four, kerf 1/8
		"h / 4":                         25, "h + 5": 105, "5 + h": 105, "max(h; 120)": 120, "h/4": 25, "h - 3/4": 99.25, "2 * (h - 10 mm)": 180, "h + 1/2 in": 112.7, "h - 9-3/8 in": 100 - 238.125, "-h": -100,
		"3 * 3/4 in": 57.15, "h * tan(45 deg)": 100, "min(h; 3 in; 80 mm)": 76.2, "round(h + 3 mm; 5 mm)": 105,
		"h * (h / 50 mm)": 200, "h * sin(atan(1))": 100 / math.Sqrt2, "2 ft 3 1/2 in - h": 598.5, "((h))": 100,
	} {
		q, err := evaluate(text, measure.Millimetre, names)
		if err != nil || q.Kind != measure.OfLength || math.Abs(q.Value-want) > 1e-9 {
			t.Errorf("%s is %v (%v), want %v mm", text, q, err, want)
		}
	}
	for _, text := range []string{"h h", "h +", "(h", "h)", "* h", "h ** 2", "h % 3", "h ? 1 : 2", "foo(h)", "tan(h)", "round(h)", "1 / h + h", strings.Repeat("(", 99) + "1", ""} {
		if q, err := evaluate(text, measure.Millimetre, names); err == nil {
			t.Errorf("%s is taken for %v", text, q)
		}
	}
}

// The leg of O14 of the open cases: 1 1/4 out over 17 1/2 along its slope is 4.10°, over 17 1/2 of height 4.09° (worked by hand).
func TestAnglesOfLengths(t *testing.T) {
	none := func(string) (measure.Quantity, error) { return measure.Quantity{}, errors.New("unknown") }
	for text, want := range map[string]float64{
		"asin(1 1/4 in / (17 1/2 in))": 4.0960, "atan(1 1/4 in / (17 1/2 in))": 4.0856, "asin(-1)": -90, "acos(1)": 0,
		"acos(0.5) + 1": 61, "asin(sqrt(3) / 2)": 60, "90 deg - acos(1.25 / 17.5)": 4.0960,
	} {
		q, err := evaluate(text, measure.Millimetre, none)
		if err != nil || q.Kind != measure.OfAngle || math.Abs(measure.Angle(q.Value).Degrees()-want) > 5e-5 {
			t.Errorf("%s is %v (%v), want %v°", text, q, err, want)
		}
	}
	if q, err := evaluate("3 in * sqrt(2)", measure.Millimetre, none); err != nil || q.Kind != measure.OfLength || math.Abs(q.Value-107.7631) > 5e-5 {
		t.Errorf("the diagonal of 3 in is %v (%v)", q, err)
	}
	for text, told := range map[string]string{
		"asin(2)": "from -1 to 1", "acos(-1.01)": "from -1 to 1", "asin(5 mm)": "bare number", "acos(6 deg)": "bare number", "atan(5 mm)": "bare number",
		"sqrt(-1)": "zero or more", "sqrt(4 mm)": "multiplied by it", "asin(0; 1)": "asin takes 1",
	} {
		if _, err := evaluate(text, measure.Millimetre, none); err == nil || !strings.Contains(err.Error(), told) {
			t.Errorf("%s: %v, want a refusal with %q", text, err, told)
		}
	}
}

func TestTypedTextSurvives(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9a-z"'#:,{}\[\] /&*!|>%@.-]{1,12}`).Draw(t, "text")
		path := rapid.SampledFrom([]string{"size.height", "splay.ends", "title", "corners.pin", "features.0.diameter", "saw.kerf"}).Draw(t, "path")
		d, err := Read(strings.NewReader(step), "step.yaml")
		if err != nil {
			t.Fatal(err)
		}
		if err := d.Set(path, text); err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		again, err := Read(strings.NewReader(string(d.Bytes())), "step.yaml")
		if err != nil {
			t.Fatalf("%v\n%s", err, d.Bytes())
		}
		if got := again.Text(path); got != text {
			t.Fatalf("%s was set to %q and holds %q", path, text, got)
		}
		_, _ = again.Design() // whatever is typed, reading it does not panic
	})
}

func TestExamplesAreRead(t *testing.T) {
	files, err := filepath.Glob("../../assets/examples/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		d, err := Read(strings.NewReader(string(text)), filepath.Base(f))
		if err != nil {
			t.Error(err)
			continue
		}
		if _, err := d.Design(); err != nil {
			t.Error(err)
		}
	}
}

// The bench is the step with three sizes changed, and its title; nothing else.
func TestTheBenchIsTheStepWithThreeSizesChanged(t *testing.T) {
	held := func(name string) map[string]string {
		text, err := os.ReadFile("../../assets/examples/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		out := map[string]string{}
		flatten(read(t, string(text)).root, "", out)
		return out
	}
	one, two := held("reading-nook-step"), held("reading-nook-bench")
	var differ []string
	for path, v := range one {
		if two[path] != v {
			differ = append(differ, path)
		}
	}
	slices.Sort(differ)
	if want := []string{"size.depth", "size.height", "size.width", "title"}; !slices.Equal(differ, want) || len(one) != len(two) {
		t.Errorf("step and bench differ in %v, want %v", differ, want)
	}
}

func FuzzRead(f *testing.F) {
	f.Add(step)
	f.Add("splaywright: 1\nform: stool\nsize: {height: 1, width: 2, depth: 3}\n")
	f.Add("a: [1, {b: *c}]\n")
	f.Fuzz(func(t *testing.T, text string) {
		d, err := Read(strings.NewReader(text), "x.yaml")
		if err != nil {
			return
		}
		_, _ = d.Design()
		c := d.Clone()
		if err := c.Set("size.height", "12"); err == nil && c.Text("size.height") != "12" {
			t.Errorf("set and gone:\n%s", c.Bytes())
		}
		c.Remove("size")
	})
}
