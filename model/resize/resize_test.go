package resize_test

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/file"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/resize"
)

const step = `splaywright: 1
title: Step
units: mm
form: stool
size: {height: 260, width: 420, depth: 250}   # as it was
splay: {ends: 6, edges: 4}
timber: white oak
boards: {top: {thickness: 20}, side: {thickness: 20}}
corners: {joint: through dovetail, tails: 4, pin: 10, half-pin: 12}
stretchers:
  - {width: 40, thickness: 18, set: on edge, below-top: 30, across: -70}
`

func document(t testing.TB, text string) *file.Document {
	t.Helper()
	return filetest.Document(t, []byte(text))
}

func piece(t testing.TB, doc *file.Document) *form.Piece {
	t.Helper()
	d, err := doc.Design()
	if err != nil {
		t.Fatal(err)
	}
	return form.Build(d)
}

func sizes(height, width, depth string) []resize.Edit {
	var out []resize.Edit
	for _, e := range []resize.Edit{{Path: "size.height", Text: height}, {Path: "size.width", Text: width}, {Path: "size.depth", Text: depth}} {
		if e.Text != "" {
			out = append(out, e)
		}
	}
	return out
}

func trim(x float64) string { return strconv.FormatFloat(x, 'f', 3, 64) }

// teller is what tests and properties have in common.
type teller interface {
	Helper()
	Errorf(string, ...any)
}

func near(t teller, what string, got, want, off float64) {
	t.Helper()
	if math.Abs(got-want) > off || math.IsNaN(got) {
		t.Errorf("%s is %.9g, want %.9g", what, got, want)
	}
}

// From step to bench in shop words: what is held comes out as it was, by closed forms.
func TestStepBecomesBench(t *testing.T) {
	deg := func(x float64) float64 { return x * 180 / math.Pi }
	for _, c := range []struct {
		name  string
		new   []resize.Edit
		holds []string
		check func(t *testing.T, before, after *form.Piece)
	}{
		{"nothing but the sizes", sizes("440", "1050", "320"), nil, func(t *testing.T, _, after *form.Piece) {
			near(t, "ends", after.Design.Splay.Ends.Degrees(), 6, 1e-12)
			near(t, "tails", float64(len(after.Joints[0].Tails)), 4, 0)
			near(t, "across", after.Design.Stretchers[0].Across.MM(), -70, 1e-12)
		}},
		{"footprint under a taller step", sizes("300", "", ""), []string{resize.Footprint}, func(t *testing.T, before, after *form.Piece) {
			near(t, "width at the floor", after.Overall.WidthFloor.MM(), before.Overall.WidthFloor.MM(), 1e-3)
			near(t, "depth at the floor", after.Overall.DepthFloor.MM(), before.Overall.DepthFloor.MM(), 1e-3)
			near(t, "ends", after.Design.Splay.Ends.Degrees(), deg(math.Atan(260*math.Tan(math.Pi/30)/300)), 1e-5)
		}},
		{"leg length over another height", sizes("255", "", ""), []string{resize.LegLength}, func(t *testing.T, before, after *form.Piece) {
			near(t, "leg", after.Part("side-left").FaceLength.Outer.MM(), 260/math.Cos(math.Pi/30), 1e-3)
			near(t, "ends", after.Design.Splay.Ends.Degrees(), deg(math.Acos(255*math.Cos(math.Pi/30)/260)), 1e-5)
		}},
		{"pins on a deeper bench", sizes("440", "1050", "320"), []string{resize.Pins}, func(t *testing.T, before, after *form.Piece) {
			// old pitch (250-24+10)/4 = 59; (320-24+10)/59 = 5.19, so five tails
			tails := after.Joints[0].Tails
			near(t, "tails", float64(len(tails)), 5, 0)
			near(t, "pin", (tails[1].Start - tails[0].End).MM(), 10, 1e-9)
			near(t, "half pin", tails[0].Start.MM(), 12, 1e-9)
			near(t, "tail", tails[0].Width().MM(), (320.0-24-40)/5, 1e-9)
		}},
		{"tails on a deeper bench", sizes("440", "1050", "320"), []string{resize.Tails}, func(t *testing.T, before, after *form.Piece) {
			tails := after.Joints[0].Tails
			near(t, "tails", float64(len(tails)), 4, 0)
			near(t, "pin", (tails[1].Start - tails[0].End).MM(), 12.8, 1e-3)
			near(t, "half pin", tails[0].Start.MM(), 12*1.28, 1e-3)
		}},
		{"pins and tails", sizes("", "", "320"), []string{resize.Tails, resize.Pins}, func(t *testing.T, before, after *form.Piece) {
			tails := after.Joints[0].Tails
			near(t, "tails", float64(len(tails)), 4, 0)
			near(t, "tail", tails[0].Width().MM(), (320.0-24-30)/4, 1e-9)
		}},
		{"stretcher inset", sizes("", "", "320"), []string{resize.Inset}, func(t *testing.T, before, after *form.Piece) {
			near(t, "from the edge", 160+after.Design.Stretchers[0].Across.MM(), 125-70, 1e-9)
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			doc := document(t, step)
			before := piece(t, doc)
			if _, err := resize.Apply(doc, c.new, c.holds, nil); err != nil {
				t.Fatal(err)
			}
			if !strings.Contains(string(doc.Bytes()), "# as it was") {
				t.Error("the comment is gone")
			}
			c.check(t, before, piece(t, doc))
		})
	}
}

// Tails of typed widths: held, tails, pins and half pins all grow alike; with the pins held, the tails share in proportion what
// these leave.
func TestUnevenTailsOnADeeperBench(t *testing.T) {
	typed := []float64{62, 35, 41, 58} // in 250 less 2 × 12, so three pins of 10
	text := strings.Replace(step, "tails: 4, pin: 10, half-pin: 12", "tail-widths: [62, 35, 41, 58], half-pin: 12", 1)
	for _, c := range []struct {
		holds           []string
		tails, pin, end float64
	}{
		{[]string{resize.Tails}, 320. / 250, 10 * 320. / 250, 12 * 320. / 250},
		{[]string{resize.Pins}, (320. - 54) / (250 - 54), 10, 12},
		{[]string{resize.Pins, resize.Tails}, (320. - 54) / (250 - 54), 10, 12},
	} {
		doc := document(t, text)
		if _, err := resize.Apply(doc, sizes("", "", "320"), c.holds, nil); err != nil {
			t.Fatal(err)
		}
		tails := piece(t, doc).Joints[0].Tails
		near(t, "tails", float64(len(tails)), 4, 0)
		for i, w := range typed {
			near(t, "a tail", tails[i].Width().MM(), w*c.tails, 2e-3)
		}
		near(t, "pin", (tails[1].Start - tails[0].End).MM(), c.pin, 5e-3)
		near(t, "half pin", tails[0].Start.MM(), c.end, 2e-3)
	}
	if _, err := resize.Apply(document(t, text), sizes("", "", "50"), []string{resize.Pins}, nil); err == nil || !strings.Contains(err.Error(), "no room for the tails") {
		t.Errorf("pins of 54 in all on 50: %v", err)
	}
}

// A stretcher keeps its distance from the edge of the top also where the depth is typed at the floor and the edges lean: the top is
// less deep by both leans over the height. One in the middle stays, and none passes the middle.
func TestInsetOfADepthAtTheFloor(t *testing.T) {
	text := strings.Replace(step, "depth: 250", "depth: 320, taken-at: floor", 1)
	text = strings.Replace(text, "across: -70}", "across: -70}\n  - {width: 40, thickness: 18, set: on edge, below-top: 30, across: 0}\n  - {width: 40, thickness: 18, set: on edge, below-top: 30, across: 60}", 1)
	top := func(height float64) float64 { return 320 - 2*height*math.Tan(math.Pi/45) }
	doc := document(t, text)
	if _, err := resize.Apply(doc, sizes("400", "", ""), []string{resize.Inset}, nil); err != nil {
		t.Fatal(err)
	}
	after := piece(t, doc)
	near(t, "one side's", top(400)/2+after.Design.Stretchers[0].Across.MM(), top(260)/2-70, 1e-3)
	near(t, "in the middle", after.Design.Stretchers[1].Across.MM(), 0, 0)
	near(t, "the other side's", top(400)/2-after.Design.Stretchers[2].Across.MM(), top(260)/2-60, 1e-3)
	near(t, "top's depth", after.Overall.DepthTop.MM(), top(400), 1e-9)
	if _, err := resize.Apply(document(t, step), sizes("", "", "100"), []string{resize.Inset}, nil); err == nil || !strings.Contains(err.Error(), "stretcher 1 would pass the middle") {
		t.Errorf("55 mm from either edge of 100 mm: %v", err)
	}
}

// What cannot be held is refused with the reason and what would do, and the file stays as it was.
func TestHoldsRefused(t *testing.T) {
	for _, c := range []struct {
		name  string
		text  string
		new   []resize.Edit
		holds []string
		kept  []string
		say   string
	}{
		{"two that settle the lean", step, sizes("300", "", ""), []string{resize.Splay, resize.Footprint}, nil, "hold one of them"},
		{"legs too short", step, sizes("300", "", ""), []string{resize.LegLength}, nil, "do not reach"},
		{"a footprint far out", step, sizes("40", "100", ""), []string{resize.Footprint}, nil, "from plumb"},
		{"taken at the floor", strings.Replace(step, "depth: 250", "depth: 250, taken-at: floor", 1), sizes("300", "", ""), []string{resize.Footprint}, nil, "taken at the floor"},
		{"a splay that is kept", step, sizes("300", "", ""), []string{resize.Footprint}, []string{"splay.ends"}, "splay.ends"},
		{"pins without room", step, sizes("", "", "50"), []string{resize.Pins, resize.Tails}, nil, "no room for 4 tails"},
		{"what a butted top has not", strings.Replace(step, "through dovetail, tails: 4, pin: 10, half-pin: 12", "butt", 1), sizes("300", "", ""), []string{resize.Tails}, nil, "cannot be held"},
		{"a size that is none", step, sizes("tall", "", ""), nil, nil, "tall"},
	} {
		doc := document(t, c.text)
		before := string(doc.Bytes())
		_, err := resize.Apply(doc, c.new, c.holds, c.kept)
		if err == nil || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%s: %v, want %q", c.name, err, c.say)
		}
		if string(doc.Bytes()) != before {
			t.Errorf("%s: the file was changed", c.name)
		}
	}
	var kept *resize.Kept
	_, err := resize.Apply(document(t, step), sizes("300", "", ""), []string{resize.Footprint}, []string{"splay.edges"})
	if !errors.As(err, &kept) || kept.Path != "splay.edges" {
		t.Errorf("%v", err)
	}
}

// Whatever the new sizes, what is held comes out as it was, or the refusal says why.
func TestWhatIsHeldHolds(t *testing.T) {
	forms := map[string]string{
		"stool": step,
		"tray":  "splaywright: 1\ntitle: T\nunits: mm\nform: tray\nsize: {height: 120, width: 500, depth: 350}\nsplay: {ends: 12, front: 18}\ncorners: {joint: through dovetail}\n",
		"chest": "splaywright: 1\ntitle: C\nunits: mm\nform: chest\nsize: {height: 420, width: 800, depth: 420}\nsplay: {ends: 5, front: 3}\nlid: {thickness: 18, overhang: 12}\nbottom: {thickness: 10, joint: groove, up: 20}\n",
		"ring":  "splaywright: 1\ntitle: R\nunits: mm\nform: ring\nsize: {height: 200, width: 300, staves: 8}\nsplay: {ends: 10}\ncorners: {joint: mitre}\n",
	}
	rapid.Check(t, func(rt *rapid.T) {
		name := rapid.SampledFrom([]string{"stool", "tray", "chest", "ring"}).Draw(rt, "form")
		doc := document(t, forms[name])
		before := piece(t, doc)
		scale := func(l float64) string { return trim(l * rapid.Float64Range(0.8, 1.4).Draw(rt, "by")) }
		d := before.Design.Size
		depth := ""
		if name != "ring" {
			depth = scale(d.Depth.MM())
		}
		new := sizes(scale(d.Height.MM()), scale(d.Width.MM()), depth)
		if _, err := resize.Apply(doc, new, []string{resize.Footprint}, nil); err != nil {
			rt.Skip(err.Error())
		}
		after := piece(t, doc)
		near(rt, "width at the floor", after.Overall.WidthFloor.MM(), before.Overall.WidthFloor.MM(), 1e-3)
		if name != "ring" {
			near(rt, "depth at the floor", after.Overall.DepthFloor.MM(), before.Overall.DepthFloor.MM(), 1e-3)
		}
	})
}
