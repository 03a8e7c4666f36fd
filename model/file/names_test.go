package file_test

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model/file"
)

const named = `splaywright: 1
form: stool
size: {height: 260, width: 420, depth: 250}
stretchers:
  - {width: foot + 8, below-top: 2 * foot}   # a rail
names:
  # how high the arch stands
  foot: size.height / 5
  foot-two: foot / 2 + 1 foot
`

func read(t *testing.T, text string) *file.Document {
	t.Helper()
	d, err := file.Read(strings.NewReader(text), "named.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestRenameChangesEveryUse(t *testing.T) {
	d := read(t, named)
	before, _ := d.Value("names.foot-two")
	if err := d.Rename("foot", "rise"); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{
		"stretchers.0.width": "rise + 8", "stretchers.0.below-top": "2 * rise",
		"names.rise": "size.height / 5", "names.foot-two": "rise / 2 + 1 foot", "names.foot": "",
	} {
		if got := d.Text(path); got != want {
			t.Errorf("%s is %q, want %q", path, got, want)
		}
	}
	if after, ok := d.Value("names.foot-two"); !ok || after != before {
		t.Errorf("foot-two came to %s and now comes to %s", before, after)
	}
	if !strings.Contains(string(d.Bytes()), "# a rail") {
		t.Errorf("a comment is gone:\n%s", d.Bytes())
	}
}

func TestRenameRefusesWhatCannotBeAName(t *testing.T) {
	for to, want := range map[string]string{"2nd": "a name is made of", "foot-two": "already", "size.x": "a name is made of", "": "a name is made of"} {
		d := read(t, named)
		if err := d.Rename("foot", to); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("renaming to %q: %v, want a word on %q", to, err, want)
		}
		if string(d.Bytes()) != named {
			t.Errorf("the text has changed after refusing %q", to)
		}
	}
	if err := read(t, named).Rename("gone", "here"); err == nil {
		t.Error("a name that is not there was renamed")
	}
}

func TestKeysAndList(t *testing.T) {
	d := read(t, named)
	if got := d.Keys("names"); !slices.Equal(got, []string{"foot", "foot-two"}) {
		t.Errorf("names %q", got)
	}
	if got := d.Keys("boards"); got != nil {
		t.Errorf("keys of a group that is not there: %q", got)
	}
	if err := d.Set("corners.tail-widths", "[40, foot, 9 3/8 in]"); err != nil {
		t.Fatal(err)
	}
	if got := d.List("corners.tail-widths"); got != "[40, foot, 9 3/8 in]" {
		t.Errorf("the list reads %q", got)
	}
	if got := d.List("size"); got != "" {
		t.Errorf("a group reads %q as a list", got)
	}
}

// A name that is taken out leaves every size as it was: what it stood for stands in its place, in brackets where the
// reckoning asks for them.
func TestInlineKeepsEverySize(t *testing.T) {
	for value, want := range map[string]string{
		"size.height / 5": "(size.height / 5) + 8", "12": "12 + 8", "1/2 in": "(1/2 in) + 8", "-4.5": "(-4.5) + 8",
	} {
		d := read(t, strings.Replace(named, "foot: size.height / 5", "foot: "+value, 1))
		paths := []string{"stretchers.0.width", "stretchers.0.below-top", "names.foot-two"}
		if got := d.Uses("foot"); !slices.Equal(got, []string{"names.foot-two", "stretchers.0.below-top", "stretchers.0.width"}) {
			t.Errorf("foot is used in %q", got)
		}
		var before []string
		for _, path := range paths {
			said, _ := d.Value(path)
			before = append(before, said)
		}
		if err := d.Inline("foot"); err != nil {
			t.Fatal(err)
		}
		if got := d.Text("stretchers.0.width"); got != want {
			t.Errorf("foot of %s leaves %q, want %q", value, got, want)
		}
		for i, path := range paths {
			if said, ok := d.Value(path); !ok || said != before[i] {
				t.Errorf("foot of %s: %s came to %q and comes to %q", value, path, before[i], said)
			}
		}
		if d.Text("names.foot") != "" || len(d.Uses("foot")) != 0 {
			t.Errorf("foot of %s is still there", value)
		}
	}
	d := read(t, strings.Replace(named, "foot + 8", "foot", 1))
	if err := d.Inline("foot"); err != nil || d.Text("stretchers.0.width") != "size.height / 5" {
		t.Errorf("alone it leaves %q (%v)", d.Text("stretchers.0.width"), err)
	}
	if err := d.Inline("gone"); err == nil {
		t.Error("a name that is not there was taken out")
	}
}
