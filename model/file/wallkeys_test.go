package file_test

import (
	"strings"
	"testing"

	"splaywright/model/file"
	"splaywright/model/form"
	"splaywright/model/measure"
)

func design(t *testing.T, text string) (form.Design, error) {
	t.Helper()
	doc, err := file.Read(strings.NewReader(text), "test")
	if err != nil {
		t.Fatal(err)
	}
	return doc.Design()
}

const chestText = `splaywright: 1
title: Chest
units: mm
form: chest
size: {height: 400, width: 700, depth: 350}
splay: {front: 3, back: 0, ends: 5, end-left: 4, end-right: 6, edge-cut: level}
timber: white oak
boards: {side: {thickness: 18}, front: {thickness: 20}, back: {thickness: 16}, end: {thickness: 19, timber: black cherry}}
corners: {joint: half-blind dovetail, tails-on: end, lap: 6}
bottom: {thickness: 12, joint: groove, up: 30, depth: 7, clearance: 2}
lid: {thickness: 20, overhang: 10, battens: {width: 50, thickness: 18, inset: 4, count: 3, screws: {gauge: 8, length: 32, count: 2}}}
`

func TestEveryKeyOfAChest(t *testing.T) {
	d, err := design(t, chestText)
	if err != nil {
		t.Fatal(err)
	}
	for what, c := range map[string][2]float64{
		"back":      {d.Splay.Back.Degrees(), 0},
		"end-right": {d.Splay.EndRight.Degrees(), 6},
		"lap":       {d.Corners.Lap.MM(), 6},
		"clearance": {d.Bottom.Clearance.MM(), 2},
		"end":       {d.Boards.End.Thickness.MM(), 19},
		"inset":     {d.Lid.Battens.Inset.MM(), 4},
		"screws":    {d.Lid.Battens.Screws.Length.MM(), 32},
		"front":     {d.Splay.Front.Degrees(), 3},
	} {
		if c[0] != c[1] {
			t.Errorf("%s is %g, want %g", what, c[0], c[1])
		}
	}
	if p := form.Build(d); p.Stopped() {
		t.Errorf("stopped: %s", p.Findings[0].Text)
	}
}

func TestRingNeedsNoDepth(t *testing.T) {
	d, err := design(t, "splaywright: 1\ntitle: R\nunits: in\nform: ring\nsize: {height: 10, width: 18, staves: 8}\nsplay: {ends: 12}\n")
	if err != nil || d.Size.Staves != 8 || d.Size.Width != 18*measure.Inch {
		t.Errorf("%v, %v", d.Size, err)
	}
}

// What a form has no use for is refused where it stands, with what would do.
func TestKeysOfOtherForms(t *testing.T) {
	for _, c := range []struct{ form, with, path, say string }{
		{"ring", "size: {height: 10, width: 18, depth: 18}", "size.depth", "leave the depth out"},
		{"tray", "size: {height: 10, width: 18, depth: 12, staves: 6}", "size.staves", "only a ring"},
		{"tray", "size: {height: 10, width: 18, depth: 12}\nsplay: {edges: 3}", "splay.edges", "splay.front"},
		{"stool", "size: {height: 10, width: 18, depth: 12}\nsplay: {front: 3}", "splay.front", "splay.edges"},
		{"stool", "size: {height: 10, width: 18, depth: 12}\nlid: {thickness: 1}", "lid", "only a chest"},
		{"tray", "size: {height: 10, width: 18, depth: 12}\nlid: {thickness: 1}", "lid", "only a chest"},
		{"tray", "size: {height: 10, width: 18, depth: 12}\nboards: {top: {thickness: 1}}", "boards.top", "only a stool"},
		{"chest", "size: {height: 10, width: 18, depth: 12}\nstretchers:\n  - {width: 2}", "stretchers", "walls need none"},
		{"tray", "size: {height: 10, width: 18, depth: 12}\naprons: {width: 2}", "aprons", "walls need none"},
		{"ring", "size: {height: 10, width: 18}\ncorners: {over: front}", "corners.over", "every stave runs over the next"},
	} {
		_, err := design(t, "splaywright: 1\ntitle: T\nunits: in\nform: "+c.form+"\n"+c.with+"\n")
		if err == nil || !strings.Contains(err.Error(), c.path) || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%s with %s: %v", c.form, c.path, err)
		}
	}
	if _, err := design(t, "splaywright: 1\ntitle: T\nunits: in\nform: tray\nsize: {height: 10, width: 18}\n"); err == nil || !strings.Contains(err.Error(), "size.depth") {
		t.Errorf("a tray without depth: %v", err)
	}
}

func TestAprons(t *testing.T) {
	text := "splaywright: 1\ntitle: T\nunits: mm\nform: stool\nsize: {height: 450, width: 900, depth: 300}\naprons: "
	d, err := design(t, text+"{at: front, width: 75, set-in: 0, stand: plumb, joint: housing, depth: 7, screws: {gauge: 8, length: 40, count: 2}}\n")
	if err != nil {
		t.Fatal(err)
	}
	if a := d.Aprons; a == nil || a.At != form.AtFront || a.Width != 75 || *a.SetIn != 0 || a.Stand != form.Plumb || a.Depth != 7 || a.Screws.Count != 2 {
		t.Errorf("read as %+v", a)
	}
	for _, c := range []struct{ with, say string }{
		{"{}", "width"},
		{"{width: 75, set-in: -1}", "set-in"},
		{"{width: 75, stand: askew}", "leaning"},
		{"{width: 75, inset: 3}", "set-in"},
	} {
		if _, err := design(t, text+c.with+"\n"); err == nil || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%s: %v", c.with, err)
		}
	}
}

const splinedText = `splaywright: 1
title: Splined tray
units: mm
form: tray
size: {height: 90, width: 360, depth: 240}
timber: white oak
corners: {joint: mitre with splines, spline: {thickness: 4, width: 16, inset: 5, stop: 12, timber: black cherry}}
`

// Sizes of loose parts, tongues and tenons are read as they are typed.
func TestKeysOfJoints(t *testing.T) {
	d, err := design(t, splinedText)
	if err != nil {
		t.Fatal(err)
	}
	if s := d.Corners.Spline; s == nil || *s != (form.Spline{Thickness: 4, Width: 16, Inset: 5, Stop: 12, Timber: "black cherry"}) {
		t.Errorf("%+v", s)
	}
	swap := func(with string) string {
		return splinedText[:strings.Index(splinedText, "corners:")] + with + "\n"
	}
	d, err = design(t, swap("corners: {joint: mitre with keys, keys: {count: 3, thickness: 1/8 in, depth: 9, pitch: 20}}"))
	if err != nil {
		t.Fatal(err)
	}
	if k := d.Corners.Keys; k == nil || *k != (form.Keys{Count: 3, Thickness: measure.Inch / 8, Depth: 9, Pitch: 20}) {
		t.Errorf("%+v", k)
	}
	d, err = design(t, swap("corners: {joint: groove and tongue, depth: 5, shoulder: 6, stop: 10}"))
	if err != nil {
		t.Fatal(err)
	}
	if k := d.Corners; *k.Shoulder != 6 || k.Stop != 10 || *k.Depth != 5 {
		t.Errorf("%+v", k)
	}
	stool := strings.Replace(swap("stretchers: [{width: 60, joint: through tenon, tenon: {width: 40, thickness: 9, proud: 2, wedges: 2, slot: 1, flare: 1.5}}]"), "form: tray", "form: stool", 1)
	d, err = design(t, stool)
	if err != nil {
		t.Fatal(err)
	}
	if n := d.Stretchers[0].Tenon; n == nil || n.Width != 40 || n.Proud != 2 || *n.Wedges != 2 || n.Flare != 1.5 {
		t.Errorf("%+v", n)
	}
	d, err = design(t, strings.Replace(splinedText, "form: tray", "form: stool", 1))
	if err != nil || d.Corners.Spline == nil {
		t.Errorf("a stool with splines: %v, %+v", err, d.Corners)
	}
}
