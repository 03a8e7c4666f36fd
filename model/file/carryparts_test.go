package file_test

import (
	"slices"
	"strings"
	"testing"

	"splaywright/assets"
	"splaywright/model"
	"splaywright/model/file"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// has is what each form normally has: by what the parts' ids begin with.
var has = map[string][]string{
	"stool": {"top", "side-left", "side-right"},
	"steps": {"top-lower", "top-upper", "side-left", "side-middle", "side-right"},
	"tray":  {"front", "back", "end-left", "end-right", "bottom"},
	"chest": {"front", "back", "end-left", "end-right", "bottom", "lid", "batten"},
	"ring":  {"stave-1", "stave-6"},
}

// ofWhatComes are warnings of sizes that nobody typed.
var ofWhatComes = []string{"battens-hold-the-lid", "screw-holds-little", "screw-comes-out", "wood-under-groove"}

// Every example, and a new design of either unit, becomes a whole piece of every other form: it has what that form normally
// has, nothing stops it, and what has come brings no trouble of its own.
func TestEveryFormBecomesEveryOther(t *testing.T) {
	texts := map[string]string{
		"new, mm": string(file.New("", measure.Metric).Bytes()), "new, in": string(file.New("", measure.Imperial).Bytes()),
	}
	for _, e := range assets.Examples() {
		texts[e.Name] = string(e.YAML)
	}
	for name, text := range texts {
		for _, to := range form.Forms() {
			d := read(t, text)
			if d.Text("form") == to {
				continue
			}
			if err := d.SetForm(to); err != nil {
				t.Fatalf("%s as a %s: %v", name, to, err)
			}
			got, err := d.Design()
			if err != nil {
				t.Fatalf("%s as a %s: %v", name, to, err)
			}
			p := model.Derive(got)
			for _, f := range p.Findings {
				if f.Level == part.Stop || slices.Contains(ofWhatComes, f.ID) {
					t.Errorf("%s as a %s: %s", name, to, f.Text)
				}
			}
			for _, id := range has[to] {
				if !slices.ContainsFunc(p.Parts, func(q *part.Part) bool { return strings.HasPrefix(q.ID, id) }) {
					t.Errorf("%s as a %s has no %s", name, to, id)
				}
			}
		}
	}
}

// What was taken out stays out as long as the forms have it; there and back the bottom that came is gone again.
func TestWhatWasTakenOutStaysOut(t *testing.T) {
	d := read(t, "splaywright: 1\nform: tray\nsize: {height: 90, width: 420, depth: 250}\nboards: {side: {thickness: 9}}\n")
	set := func(name string) {
		t.Helper()
		if err := d.SetForm(name); err != nil {
			t.Fatal(err)
		}
	}
	set("chest")
	if len(d.Keys("bottom")) != 0 || len(d.Keys("lid")) == 0 {
		t.Errorf("a tray without a bottom becomes\n%s", d.Bytes())
	}
	set("stool")
	if len(d.Keys("bottom")) != 0 || len(d.Keys("lid")) != 0 {
		t.Errorf("a stool is\n%s", d.Bytes())
	}
	set("tray")
	if d.Text("bottom.joint") != form.InGroove || d.Text("bottom.thickness") != "" { // as thick as the walls
		t.Errorf("a tray of thin walls is\n%s", d.Bytes())
	}
	if err := d.Set("bottom.thickness", "6"); err != nil {
		t.Fatal(err)
	}
	set("chest")
	if d.Text("bottom.thickness") != "6" {
		t.Errorf("the bottom does not carry over:\n%s", d.Bytes())
	}
}
