package file_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"splaywright/assets"
	"splaywright/model/file"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
)

// A piece stays as it is when its numbers are to be in the other unit; what stood there gets the unit that it was in.
func TestNumbersKeepTheirUnitWhenItChanges(t *testing.T) {
	const stool = "splaywright: 1\nunits: mm   # of bare numbers\nform: stool\nsize: {height: 430, width: 45 cm, depth: 250}\n"
	const inches = "splaywright: 1\nunits: in\nform: stool\nsize: {height: 17, width: 18, depth: 10}\n"
	for _, c := range []struct{ name, rest, path, want string }{
		{"a bare number", "", "size.height", "430 mm"},
		{"one with a unit", "", "size.width", "45 cm"},
		{"an angle", "splay: {ends: 6}\n", "splay.ends", "6"},
		{"a ratio", "splay: {ends: '1:8'}\n", "splay.ends", "1:8"},
		{"a count", "corners: {tails: 5}\n", "corners.tails", "5"},
		{"nothing", "corners: {overhang: 0}\n", "corners.overhang", "0"},
		{"less than nothing", "corners: {joint: butt, overhang: -3}\n", "corners.overhang", "-3 mm"},
		{"a kerf", "saw: {kerf: 2.4}\n", "saw.kerf", "2.4 mm"},
		{"a resaw cut", "saw: {resaw: 1.5}\n", "saw.resaw", "1.5 mm"},
		{"an item of a list", "corners: {tail-widths: [38, 52 mm, 38]}\n", "corners.tail-widths.2", "38 mm"},
		{"a knot", "boards-on-hand:\n  - {length: 1200, width: 150, thickness: 25, avoid: [{x: 300, y: 40, diameter: 20}]}\n", "boards-on-hand.0.avoid.0.diameter", "20 mm"},
		{"what a yard has", "yard:\n  - {sold: 4/4, lengths: [1800, 2400]}\n", "yard.0.lengths.1", "2400 mm"},
		{"a price", "yard:\n  - {sold: 4/4, price-per-board-foot: 9}\n", "yard.0.price-per-board-foot", "9"},
		{"a share", "corners: {depth: size.height / 50}\n", "corners.depth", "size.height / 50"},
		{"a sum", "corners: {depth: 4 + 2}\n", "corners.depth", "4 mm + 2 mm"},
		{"a product", "corners: {depth: 2 * 3}\n", "corners.depth", "2 mm * 3"},
		{"a size and more", "corners: {depth: size.height / 50 - 2}\n", "corners.depth", "size.height / 50 - 2 mm"},
		{"the larger one", "corners: {depth: max(size.height / 50; 7)}\n", "corners.depth", "max(size.height / 50; 7 mm)"},
		{"one that does not reach", "corners: {depth: max(size.height / 50; 0.1)}\n", "corners.depth", "max(size.height / 50; 0.1 mm)"},
		{"one that is not reached", "corners: {depth: min(size.height / 50; 30)}\n", "corners.depth", "min(size.height / 50; 30 mm)"},
		{"a share of one", "corners: {depth: min(size.height; 3000) / 50}\n", "corners.depth", "min(size.height; 3000 mm) / 50"},
		{"a limit that has a name", "names: {most: 30}\ncorners: {depth: min(size.height / 50; most)}\n", "names.most", "30 mm"},
		{"the step of a rounding", "corners: {depth: round(size.height / 50; 5)}\n", "corners.depth", "round(size.height / 50; 5 mm)"},
		{"a ratio of sizes", "corners: {depth: size.height / size.depth * 4}\n", "corners.depth", "size.height / size.depth * 4 mm"},
		{"a ratio without a number", "corners: {depth: size.height / size.depth}\n", "corners.depth", "(size.height / size.depth) * 1 mm"},
		{"an angle from sizes", "splay: {ends: atan(20 / size.height)}\n", "splay.ends", "atan(20 / size.height)"},
		{"an angle from a difference", "splay: {ends: atan((size.height - 400) / size.depth)}\n", "splay.ends", "atan((size.height - 400 mm) / size.depth)"},
		{"what the step of rounding was", "corners: {depth: round.to * 3}\nround: {to: 2}\n", "corners.depth", "6 mm"},
		{"the step of rounding", "round: {to: 0.5, both: true}\n", "round.to", ""},
		{"what stands beside it", "round: {to: 0.5, both: true}\n", "round.both", "true"},
		{"the step of rounding alone", "round: {to: 0.5}\n", "round", ""},
		{"a named length", "names: {lip: 12}\ncorners: {depth: lip}\n", "names.lip", "12 mm"},
		{"what uses it", "names: {lip: 12}\ncorners: {depth: lip}\n", "corners.depth", "lip"},
		{"a named length with a unit", "names: {lip: 12 mm}\ncorners: {depth: lip / 2}\n", "names.lip", "12 mm"},
		{"a named number that nothing uses", "names: {lip: 12}\n", "names.lip", "12"},
		{"a named share", "names: {share: 50}\ncorners: {depth: size.height / share}\n", "names.share", "50"},
		{"a named count", "names: {many: 5}\ncorners: {tails: many}\n", "names.many", "5"},
		{"a named length beside a number", "names: {lip: 12}\ncorners: {depth: lip + 1}\n", "names.lip", "12 mm"},
		{"the number beside it", "names: {lip: 12}\ncorners: {depth: lip + 1}\n", "corners.depth", "lip + 1 mm"},
		{"two named lengths", "names: {lip: 12, ledge: 3}\ncorners: {depth: lip - ledge}\n", "names.ledge", "3 mm"},
		{"a named length by way of another", "names: {lip: 12, half: lip / 2}\ncorners: {depth: half}\n", "names.lip", "12 mm"},
		{"a name for a count and a length", "names: {five: 5}\ncorners: {tails: five, depth: five}\n", "names.five", "5"},
		{"the length", "names: {five: 5}\ncorners: {tails: five, depth: five}\n", "corners.depth", "five * 1 mm"},
		{"a length by way of a count's name", "names: {five: 5, more: five + 1}\ncorners: {tails: five, depth: more}\n", "corners.depth", "more * 1 mm"},
		{"a count's name in a sum", "names: {five: 5}\ncorners: {tails: five, depth: size.height / 50 + five}\n", "corners.depth", "size.height / 50 + five * 1 mm"},
		{"a name of a sum", "names: {lip: size.height / 50 - 2}\ncorners: {depth: lip}\n", "names.lip", "size.height / 50 - 2 mm"},
		{"what is not understood", "corners: {depth: 12 parsecs}\n", "corners.depth", "12 parsecs"},
		{"a circle", "names: {a: b + 1, b: a + 1}\n", "names.a", "b + 1"},
		{"one in quotes", "corners: {depth: \"12\"}\n", "corners.depth", "12 mm"},
	} {
		checkUnits(t, c.name, stool+c.rest, "in", c.path, c.want)
	}
	for _, c := range []struct{ name, rest, path, want string }{
		{"inches", "", "size.height", "17 in"},
		{"a fraction", "corners: {depth: 3/8}\n", "corners.depth", "3/8 in"},
		{"inches and a fraction", "corners: {overhang: 1 3/8}\n", "corners.overhang", "1 3/8 in"},
		{"a fraction of one character", "corners: {overhang: 1½}\n", "corners.overhang", "1½ in"},
		{"such a one in a sum", "corners: {overhang: size.height / 20 + ½}\n", "corners.overhang", "size.height / 20 + 1/2 in"},
		{"feet", "corners: {overhang: 1 ft 2}\n", "corners.overhang", "1 ft 2"},
		{"a cut of a resaw", "saw: {resaw: 1/16}\n", "saw.resaw", "1/16 in"},
	} {
		checkUnits(t, c.name, inches+c.rest, "mm", c.path, c.want)
	}
}

func checkUnits(t *testing.T, name, text, to, path, want string) {
	t.Helper()
	d := read(t, text)
	before, wasErr := d.Design()
	if err := d.SetUnits(to); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if got := d.Text(path); strings.TrimSpace(got) != want {
		t.Errorf("%s: %s is %q, want %q", name, path, got, want)
	}
	after, err := d.Design()
	if (err == nil) != (wasErr == nil) {
		t.Errorf("%s: it reads: %v; before: %v", name, err, wasErr)
	}
	if diff := cmp.Diff(before, after, alike); diff != "" {
		t.Errorf("%s (-before +after):\n%s", name, diff)
	}
}

// alike are designs of one piece: how its lengths are printed is another thing. Arithmetic may round the last digit otherwise.
var alike = cmp.Options{
	cmpopts.IgnoreFields(form.Design{}, "Units"), cmpopts.IgnoreFields(form.Round{}, "To", "Unit"), cmpopts.EquateApprox(1e-12, 0),
}

// What stands around numbers stays: comments, blank lines, order, quotes.
func TestTheTextAroundNumbersStays(t *testing.T) {
	const text = "# a stool\nsplaywright: 1\nunits: mm  # of bare numbers\n\nform: stool\nsize:\n  height: 430   # low\n\n  width: \"450\"\n  depth: 250\ncorners: {tail-widths: [38, 52,\n    38]}\n\nround:\n  to: 1 # coarse\n  both: true\n"
	const want = "# a stool\nsplaywright: 1\nunits: in  # of bare numbers\n\nform: stool\nsize:\n  height: 430 mm   # low\n\n  width: \"450 mm\"\n  depth: 250 mm\ncorners: {tail-widths: [38 mm, 52 mm,\n    38 mm]}\n\nround:\n  both: true\n"
	d := read(t, text)
	if err := d.SetUnits("in"); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, string(d.Bytes())); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// The unit that stands there already changes nothing; one that is left out is millimetres; a word that was refused was none.
func TestUnitsThatMeanNoChange(t *testing.T) {
	const rest = "splaywright: 1\nform: stool\nsize: {height: 17, width: 18, depth: 10}\nround: {to: 1}\n"
	for _, c := range []struct{ was, to, height string }{
		{"units: in\n", "in", "17"}, {"", "mm", "17"}, {"", "in", "17 mm"}, {"units: inches\n", "in", "17"},
	} {
		d := read(t, c.was+rest)
		if err := d.SetUnits(c.to); err != nil {
			t.Fatal(err)
		}
		if got := d.Text("size.height"); got != c.height || d.Text("units") != c.to {
			t.Errorf("from %q to %s the height is %q, in %s", c.was, c.to, got, d.Text("units"))
		}
		if stays := c.height == "17"; stays != (d.Text("round.to") == "1") {
			t.Errorf("from %q to %s the step of rounding is %q", c.was, c.to, d.Text("round.to"))
		}
	}
	d := read(t, rest)
	if err := d.SetUnits("cubits"); err == nil || !strings.Contains(err.Error(), `"cubits": one of these is expected: mm, in`) {
		t.Errorf("cubits: %v", err)
	}
	if string(d.Bytes()) != rest {
		t.Error("a refused unit changed the text")
	}
}

// Every built-in design is the same piece in the other unit, and in its own again.
func TestExamplesAreTheSameInTheOtherUnit(t *testing.T) {
	for _, e := range assets.Examples() {
		there, back := "in", "mm"
		d := filetest.Document(t, e.YAML)
		if d.Text("units") == there {
			there, back = back, there
		}
		before := filetest.Design(t, e.YAML)
		for _, to := range []string{there, back, there} {
			if err := d.SetUnits(to); err != nil {
				t.Fatal(err)
			}
			after := filetest.Design(t, d.Bytes())
			if diff := cmp.Diff(before, after, alike); diff != "" {
				t.Errorf("%s in %s (-before +after):\n%s", e.Name, to, diff)
			}
			if was, is := strings.Count(string(e.YAML), "#"), strings.Count(string(d.Bytes()), "#"); was != is {
				t.Errorf("%s in %s has %d comments of %d", e.Name, to, is, was)
			}
			samePiece(t, e.Name+" in "+to, before, after)
		}
	}
}

// samePiece compares what is built: sizes over all and every blank of the cut list.
func samePiece(t *testing.T, name string, before, after form.Design) {
	t.Helper()
	a, b := form.Build(before), form.Build(after)
	near := cmpopts.EquateApprox(0, 1e-9)
	if len(a.Parts) == 0 || len(a.Parts) != len(b.Parts) {
		t.Fatalf("%s: %d parts of %d", name, len(b.Parts), len(a.Parts))
	}
	for i, p := range a.Parts {
		q := b.Parts[i]
		if p.ID != q.ID {
			t.Fatalf("%s: %s is %s", name, p.ID, q.ID)
		}
		if diff := cmp.Diff(p.Blank, q.Blank, near); diff != "" {
			t.Errorf("%s: the blank of %s (-before +after):\n%s", name, p.ID, diff)
		}
	}
	if diff := cmp.Diff(a.Overall, b.Overall, near); diff != "" {
		t.Errorf("%s over all (-before +after):\n%s", name, diff)
	}
}

// Numbers typed in any way, alone, in expressions and by names, come to what they came to; what was refused is refused.
func TestAnyNumbersAreTheSameInTheOtherUnit(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		atom := rapid.SampledFrom([]string{"3", "12.5", "7 mm", "1/2 in", "1 3/8", "size.height", "size.depth", "a", "b", "c", "2 deg", "0"})
		op := rapid.SampledFrom([]string{" + ", " - ", " * ", " / "})
		expr := rapid.Custom(func(t *rapid.T) string {
			text := atom.Draw(t, "first")
			for range rapid.IntRange(0, 3).Draw(t, "more") {
				text += op.Draw(t, "op") + atom.Draw(t, "next")
			}
			switch rapid.IntRange(0, 5).Draw(t, "in a function") {
			case 0:
				return "max(" + text + "; " + atom.Draw(t, "other") + ")"
			case 1:
				return "(" + text + ") * 2"
			}
			return text
		})
		from := rapid.SampledFrom([]string{"mm", "in"}).Draw(rt, "units")
		paths := []string{"size.height", "size.depth", "corners.depth", "corners.tails", "corners.lap", "splay.ends", "plan.keep", "names.a", "names.b", "names.c"}
		text := "splaywright: 1\nunits: " + from + "\nform: stool\nsize: {height: " + rapid.SampledFrom([]string{"17", "430 mm"}).Draw(rt, "height") +
			", width: 18, depth: " + expr.Draw(rt, "depth") + "}\ncorners: {depth: " + expr.Draw(rt, "corner") + ", lap: " + expr.Draw(rt, "lap") +
			", tails: " + expr.Draw(rt, "tails") + "}\nsplay: {ends: " + expr.Draw(rt, "ends") + "}\nplan: {keep: " + expr.Draw(rt, "keep") +
			"}\nnames: {a: " + expr.Draw(rt, "a") + ", b: " + expr.Draw(rt, "b") + ", c: " + atom.Draw(rt, "c") + "}\n"
		d, err := file.Read(strings.NewReader(text), "any.yaml")
		if err != nil {
			rt.Fatal(err)
		}
		now := d.Clone()
		for _, to := range []string{"in", "mm", "in"} {
			if err := now.SetUnits(to); err != nil {
				rt.Fatalf("%s\n%v", text, err)
			}
			for _, path := range paths {
				was, ok := d.Quantity(path)
				is, still := now.Quantity(path)
				if !ok {
					continue
				}
				if named := strings.HasPrefix(path, "names.") && was.Kind != is.Kind; still && named {
					continue // it is a length now wherever it is used
				}
				if !still || was.Kind != is.Kind || !cmp.Equal(was.Value, is.Value, cmpopts.EquateApprox(1e-9, 1e-9)) {
					rt.Fatalf("%s\nin %s: %s is %q and came to %v, now %v\n%s", text, to, path, now.Text(path), was, is, now.Bytes())
				}
			}
		}
	})
}
