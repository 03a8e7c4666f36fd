package file

import (
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
)

const resawnStool = `splaywright: 1
form: stool
size: {height: 300, width: 420, depth: 240}
saw: {kerf: 3.2, resaw: 1/16 in}
plan:
  trim-ends: 15
  run: false
  resawn: true     # the sides mirror each other
`

func readDesign(t *testing.T, text string) (form.Design, error) {
	t.Helper()
	d, err := Read(strings.NewReader(text), "piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return d.Design()
}

// What is read is what was typed, and what is written again is the same text.
func TestResawnIsReadAndWritten(t *testing.T) {
	d, err := Read(strings.NewReader(resawnStool), "piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	got, err := d.Design()
	if err != nil || !got.Plan.Resawn || got.Plan.Run || got.Saw.Resaw != measure.Inch/16 {
		t.Errorf("%v %+v %v", err, got.Plan, got.Saw.Resaw)
	}
	if err := d.Set("plan.keep", "150"); err != nil {
		t.Fatal(err)
	}
	if text := string(d.Bytes()); !strings.Contains(text, "resawn: true     # the sides mirror each other\n") || !strings.Contains(text, "resaw: 1/16 in}") {
		t.Errorf("written:\n%s", text)
	}
	plain, err := Read(strings.NewReader(strings.NewReplacer(", resaw: 1/16 in", "", "resawn: true", "resawn: false").Replace(resawnStool)), "piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if got, err = plain.Design(); err != nil || got.Plan.Resawn || got.Saw.Resaw != 0 || got.Defaults().Saw.Resaw != measure.Inch/16 {
		t.Errorf("left out: %v %+v", err, got.Saw)
	}
}

// What contradicts itself is refused with its place, what stands against it and what would do; walls that run round in
// both ways do not.
func TestResawnRefusals(t *testing.T) {
	ring := "splaywright: 1\nform: ring\nsize: {height: 120, width: 300, staves: 6}\nplan: {resawn: true}\n"
	tray := "splaywright: 1\nform: tray\nsize: {height: 90, width: 300, depth: 200}\nplan: {run: true, resawn: true}\n"
	for _, c := range []struct{ name, text, says string }{
		{"as it is", resawnStool, ""},
		{"row and pair", strings.Replace(resawnStool, "run: false", "run: true", 1), "piece.yaml:8:11: plan.resawn: \"true\": the sides cannot lie over one another in one board and in a row with the top in another: plan.run on line 7"},
		{"odd staves", strings.Replace(ring, "6", "7", 1), "7 staves do not make two boards of as many each; an even number of staves is expected"},
		{"even staves", ring, ""},
		{"staves left out", strings.Replace(ring, ", staves: 6", "", 1), ""},
		{"walls both ways", tray, ""},
		{"neither yes nor no", strings.Replace(resawnStool, "resawn: true ", "resawn: pair ", 1), "true or false is expected here"},
		{"no saw cut", strings.Replace(resawnStool, "1/16 in", "0", 1), "it must be above zero"},
	} {
		_, err := readDesign(t, c.text)
		if (err == nil) != (c.says == "") || err != nil && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// Another form makes no contradiction of what was none.
func TestResawnCarriesOver(t *testing.T) {
	for _, c := range []struct{ name, text, form, gone string }{
		{"a box with both to a stool", "splaywright: 1\nform: tray\nsize: {height: 90, width: 300, depth: 200}\nplan: {run: true, resawn: true}\n", "stool", "plan.run"},
		{"a stool to a ring", resawnStool, "ring", ""},
		{"a box to a chest", "splaywright: 1\nform: tray\nsize: {height: 90, width: 300, depth: 200}\nplan: {run: true, resawn: true}\n", "chest", ""},
	} {
		d, err := Read(strings.NewReader(c.text), "piece.yaml")
		if err != nil {
			t.Fatal(err)
		}
		if err := d.SetForm(c.form); err != nil {
			t.Fatal(err)
		}
		got, err := d.Design()
		if err != nil || !got.Plan.Resawn || c.gone != "" && d.Text(c.gone) != "" {
			t.Errorf("%s: %v\n%s", c.name, err, d.Bytes())
		}
	}
}
