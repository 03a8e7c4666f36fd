package file

import (
	"errors"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/measure"
)

// must reads a text and makes one edit.
func must(t *testing.T, text string, edit func(d *Document) error) string {
	t.Helper()
	d := read(t, text)
	if err := edit(d); err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return string(d.Bytes())
}

func set(path, text string) func(d *Document) error {
	return func(d *Document) error { return d.Set(path, text) }
}

func remove(path string) func(d *Document) error {
	return func(d *Document) error { d.Remove(path); return nil }
}

func add(path string, fields ...[2]string) func(d *Document) error {
	return func(d *Document) error { return d.Append(path, fields...) }
}

func TestEditsByteForByte(t *testing.T) {
	hole := []([2]string){{"on", "top"}, {"kind", "hole"}, {"diameter", `1"`}}
	for _, c := range []struct {
		name, old string
		edit      func(d *Document) error
		want      string
	}{
		{"lines that end in CR LF", "a: 1\r\nsize: {height: 260} # x\r\n", set("size.width", "9"), "a: 1\r\nsize: {height: 260, width: 9} # x\r\n"},
		{"a line more with CR LF", "form: stool\r\nsaw: {kerf: 3}\r\n", set("timber", "oak"), "form: stool\r\ntimber: oak\r\nsaw: {kerf: 3}\r\n"},
		{"a mark before the text", "\ufefftitle: é\n", set("title", "ü"), "\ufefftitle: ü\n"},
		{"letters with accents before it", "names: {é: 1, x: 2}\n", set("names.x", "½"), "names: {é: 1, x: ½}\n"},
		{"no line break at the end", "form: stool", set("timber", "oak"), "form: stool\ntimber: oak\n"},
		{"single quotes", "title: 'a''b' # c\n", set("title", "a'c"), "title: 'a''c' # c\n"},
		{"an inch mark", "size: {height: 9\", width: 2' 3\", depth: 3}\n", set("size.width", `2' 4"`), "size: {height: 9\", width: 2' 4\", depth: 3}\n"},
		{"quotes that are needed", "title: step\n", set("title", "a: b"), "title: \"a: b\"\n"},
		{"quotes that are no longer needed", "title: \"a: b\"\n", set("title", "step"), "title: step\n"},
		{"an empty value", "timber:   # none yet\nform: stool\n", set("timber", "oak"), "timber: oak   # none yet\nform: stool\n"},
		{"an empty group", "corners:\nform: stool\n", set("corners.pin", "10"), "corners: {pin: 10}\nform: stool\n"},
		{"an empty group in brackets", "corners: {} # c\n", set("corners.pin", "10"), "corners: {pin: 10} # c\n"},
		{"a comma too many", "corners: {pin: 10, }\n", set("corners.tails", "4"), "corners: {pin: 10, tails: 4, }\n"},
		{"group in group", "form: stool\n", set("boards.top.thickness", "20"), "form: stool\nboards: {top: {thickness: 20}}\n"},
		{"a list of widths", "corners:\n  tail-widths: [38, 52]\n", set("corners.tail-widths", "[1 1/2, 2]"), "corners:\n  tail-widths: [1 1/2, 2]\n"},
		{"brackets over lines", "size: {\n  height: 1, # h\n  width: 2\n}\n", set("size.depth", "3"), "size: {\n  height: 1, # h\n  width: 2, depth: 3\n}\n"},
		{"a key at the end", "size:\n  height: 1\n\n# wood\ntimber: oak\n", set("size.width", "2"), "size:\n  height: 1\n  width: 2\n\n# wood\ntimber: oak\n"},

		{"an item more", "stretchers:\n- {width: 6}  # first\n\nsaw: {}\n", add("stretchers", [2]string{"width", "7"}), "stretchers:\n- {width: 6}  # first\n- {width: 7}\n\nsaw: {}\n"},
		{"an item in brackets", "features: [{on: all}]\n", add("features", hole...), "features: [{on: all}, {on: top, kind: hole, diameter: 1\"}]\n"},
		{"the first item", "form: stool\nsaw: {kerf: 3}\n", add("features", hole...), "form: stool\nfeatures:\n  - {on: top, kind: hole, diameter: 1\"}\nsaw: {kerf: 3}\n"},
		{"the first item of a list that was empty", "features: []   # none\nsaw: {kerf: 3}\n", add("features", hole...), "features: # none\n  - {on: top, kind: hole, diameter: 1\"}\nsaw: {kerf: 3}\n"},
		{"the first item behind a bare key", "features:\nsaw: {kerf: 3}\n", add("features", hole...), "features:\n  - {on: top, kind: hole, diameter: 1\"}\nsaw: {kerf: 3}\n"},
		{"an item with a group", "form: stool\n", add("stretchers", [2]string{"width", "7"}, [2]string{"screws.gauge", "8"}, [2]string{"screws.count", "2"}), "form: stool\nstretchers:\n  - {width: 7, screws: {gauge: 8, count: 2}}\n"},

		{"a key out of brackets", "size: {height: 1, width: 2}\n", remove("size.height"), "size: {width: 2}\n"},
		{"the last key out of brackets", "size: {height: 1, width: 2}\n", remove("size.width"), "size: {height: 1}\n"},
		{"a line out", "size:\n  height: 1 # h\n  # about width\n  width: 2\n", remove("size.height"), "size:\n  # about width\n  width: 2\n"},
		{"the only item", "form: stool\nfeatures:\n  - {on: top}\nsaw: {}\n", remove("features.0"), "form: stool\nsaw: {}\n"},
		{"an item of several lines", "features:\n  - on: top\n    kind: hole\n  - {on: all}\n", remove("features.0"), "features:\n  - {on: all}\n"},
		{"the first key of an item", "features:\n  - on: top\n    kind: hole\n", remove("features.0.on"), "features:\n  - kind: hole\n"},
		{"what is not there", "form: stool\n", remove("saw.kerf"), "form: stool\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := must(t, c.old, c.edit); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

func TestValuesOverSeveralLinesAreWrittenOut(t *testing.T) {
	const text = "# first\ntitle: |\n  Long\n  title\nform: stool # f\n"
	got := must(t, text, set("title", "Short"))
	if d := read(t, got); d.Text("title") != "Short" || !strings.Contains(got, "# first") || !strings.Contains(got, "# f") {
		t.Errorf("got\n%s", got)
	}
}

func TestEditsThatAreRefused(t *testing.T) {
	for _, c := range []struct{ path, text, words string }{
		{"size.hight", "3", "height"},
		{"size", "3", "set one of its keys: size.height, size.width"},
		{"features", "3", "such as features.0.on"},
		{"boards-on-hand", "3", "a list of groups"},
		{"stretchers.7.width", "3", "no item 7"},
		{"stretchers", "3", "group"},
		{"title.more", "x", "one value"},
		{"names.2x", "3", "begins with a letter"},
		{"names.a.b", "3", "one value"},
		{"corners.tail-widths", "38", "square brackets"},
		{"corners.tail-widths", "[*a]", "square brackets"},
		{"title", "\xff", "written"},
		{"", "3", "nothing is named"},
	} {
		d := read(t, step)
		err := d.Set(c.path, c.text)
		if err == nil || !strings.Contains(err.Error(), c.words) {
			t.Errorf("%s = %s: %v does not say %q", c.path, c.text, err, c.words)
		}
		if string(d.Bytes()) != step {
			t.Errorf("%s = %s: refused and yet changed", c.path, c.text)
		}
	}
	d := read(t, step)
	if err := d.Append("size", [2]string{"width", "1"}); err == nil {
		t.Error("an item is added to a group")
	}
	if err := d.Append("features", [2]string{"colour", "red"}); err == nil {
		t.Error("a feature has a colour")
	}
}

func TestNewDesignsAreRead(t *testing.T) {
	for _, unit := range []measure.Unit{measure.Metric, measure.Imperial} {
		d := New("A: new # step", unit)
		out, err := d.Design()
		if err != nil {
			t.Fatal(err)
		}
		if out.Title != "A: new # step" || out.Units != unit || out.Size.Height < 200 || out.Size.Height > 300 {
			t.Errorf("%+v", out)
		}
	}
}

func TestACloneStandsApart(t *testing.T) {
	d := read(t, step)
	c := d.Clone()
	if err := c.Set("size.height", "1"); err != nil {
		t.Fatal(err)
	}
	if string(d.Bytes()) != step {
		t.Error("the first document has changed with its clone")
	}
}

// held is every value of a document by its path.
func held(d *Document) map[string]string {
	out := map[string]string{}
	flatten(d.root, "", out)
	return out
}

// Any sequence of edits leaves a file that reads as it should, and every comment in it that does not
// belong to what was taken out.
func TestEditsInAnyOrder(t *testing.T) {
	paths := []string{
		"size.height", "size.taken-at", "splay.ends", "splay.edge-cut", "boards.top.timber", "corners.pin", "corners.screws.gauge",
		"stretchers.0.below-top", "stretchers.0.screws.length", "features.0.x", "names.foot", "names.new", "saw.kerf", "papers.sheet", "title",
	}
	texts := []string{"1", "9 3/8 in", "size.height / 5", `2' 3"`, "1:8", "a: b", "x # y", "", " 2 ", "null", "[1]", "'", `"`, "{", "ü½", "- 1", "true", "0,5", "\n"}
	rapid.Check(t, func(t *rapid.T) {
		d, err := Read(strings.NewReader(step), "step.yaml")
		if err != nil {
			t.Fatal(err)
		}
		comments := []string{"# a step, kept short", "# with a note"}
		for range rapid.IntRange(1, 8).Draw(t, "edits") {
			before := held(d)
			path := rapid.SampledFrom(paths).Draw(t, "path")
			switch rapid.IntRange(0, 3).Draw(t, "edit") {
			case 0:
				gone := d.find(path) != nil
				d.Remove(path)
				if path == "title" { // the note behind it goes with it
					comments = comments[:1]
				}
				if d.find(path) != nil || !gone && !maps.Equal(before, held(d)) {
					t.Fatalf("%s taken out:\n%s", path, d.Bytes())
				}
			case 1:
				list := rapid.SampledFrom([]string{"stretchers", "features"}).Draw(t, "list")
				n := d.Len(list)
				if err := d.Append(list, [2]string{"width", "6"}); err != nil {
					t.Fatal(err)
				}
				if got := d.Text(list + "." + strconv.Itoa(n) + ".width"); got != "6" {
					t.Fatalf("item %d of %s has width %q:\n%s", n, list, got, d.Bytes())
				}
			default:
				text := rapid.SampledFrom(texts).Draw(t, "text")
				if err := d.Set(path, text); err != nil {
					if d.Len(strings.SplitN(path, ".", 2)[0]) == 0 && strings.Contains(path, ".0.") {
						continue // the item was taken out before
					}
					t.Fatalf("%s = %q: %v\n%s", path, text, err, d.Bytes())
				}
				if d.Text(path) != text {
					t.Fatalf("%s was set to %q and holds %q:\n%s", path, text, d.Text(path), d.Bytes())
				}
				after := held(d)
				for p, v := range before {
					if p != path && !strings.HasPrefix(path, p) && after[p] != v {
						t.Fatalf("setting %s has changed %s from %s to %s", path, p, v, after[p])
					}
				}
			}
			for _, comment := range comments {
				if !strings.Contains(string(d.Bytes()), comment) {
					t.Fatalf("the comment %q is lost:\n%s", comment, d.Bytes())
				}
			}
			again, err := Read(strings.NewReader(string(d.Bytes())), "again")
			if err != nil || !maps.Equal(held(again), held(d)) {
				t.Fatalf("not read again the same: %v\n%s", err, d.Bytes())
			}
		}
	})
}

// A path that leads nowhere is refused with the first word that is not understood.
func TestPathsThatLeadNowhere(t *testing.T) {
	for _, c := range []struct{ path, read, words string }{
		{"nope.key", "nope", "there is no such key at the top of a design; there are splaywright, title"},
		{"nope", "nope", "at the top of a design"},
		{"sise.height", "sise", "did you mean size?"},
		{"size.hight", "hight", "there is no such key in size; did you mean height?"},
		{"height", "height", "did you mean size.height?"},
		{"thickness", "thickness", "boards.top.thickness"},
		{"size.height.x", "x", "size.height holds one value, not a group"},
		{"size.height.x.y", "x", "size.height holds one value, not a group"},
		{"stretchers.first.width", "first", "items of a list go by their number, from 0"},
		{"stretchers.0.witdh", "witdh", "did you mean width?"},
		{"names.a+b", "a+b", "letters"},
		{"names.foot.x", "x", "names.foot holds one value, not a group"},
		{"", "", "nothing is named"},
		{"size..height", "", "two points"},
		{"size.", "", "two points"},
	} {
		d := read(t, step)
		err := d.Set(c.path, "1")
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("%q is taken", c.path)
			continue
		}
		if e.Read != c.read || !strings.Contains(e.Want, c.words) {
			t.Errorf("%q: %v does not blame %q with %q", c.path, err, c.read, c.words)
		}
		if string(d.Bytes()) != step {
			t.Errorf("%q was refused and changed the file", c.path)
		}
	}
}

// Every key of the format can be set in an empty design and is then read at its place.
func TestEveryKeyCanBeSet(t *testing.T) {
	for group, keys := range shape {
		if strings.Contains(group, "#") || slices.Contains(keys, "#") {
			continue
		}
		for _, key := range keys {
			path := join(group, key)
			if _, inner := shape[path]; inner || path == "names" {
				continue
			}
			d := New("", measure.Metric)
			if err := d.Set(path, "1"); err != nil {
				t.Errorf("%s: %v", path, err)
			} else if _, err := d.Design(); err != nil && strings.Contains(err.Error(), "no such key") {
				t.Errorf("%s can be set and is not read: %v", path, err)
			}
		}
	}
}
