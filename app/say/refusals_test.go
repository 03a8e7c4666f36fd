package say_test

import (
	"errors"
	"strings"
	"testing"

	"splaywright/model/file"
	"splaywright/model/measure"
	"splaywright/model/timber"
	"splaywright/model/tongue"
	"splaywright/model/word"
)

// base is a design that is read.
const base = `splaywright: 1
form: stool
size: {height: 260, width: 420, depth: 250}
timber: white oak
boards: {top: {thickness: 20}, side: {thickness: 20}}
`

// read reads a design whose file has a name of words that the languages have texts for.
func read(text string) error {
	doc, err := file.Read(strings.NewReader(text), "Top, side.yaml")
	if err == nil {
		_, err = doc.Design()
	}
	return err
}

// set types a text at a path of a design.
func set(path, text string) error {
	doc, err := file.Read(strings.NewReader(base), "Top, side.yaml")
	if err == nil {
		err = doc.Set(path, text)
	}
	if err == nil {
		_, err = doc.Design()
	}
	return err
}

func boards(text string) error {
	_, err := file.ReadBoards(strings.NewReader(text), "Top, side.csv", measure.Metric)
	return err
}

func timbers(text string) error {
	_, err := timber.LoadOwn([]byte(text), "Top, side.csv")
	return err
}

// refusals are texts that are refused, each in another way, and what stays English: keys, values and names of the file.
var refusals = []struct {
	err  error
	stay string
}{
	{read(base + "height: 3\n"), "allowance, aprons"},
	{read(base + "corner: {}\n"), "corners"},
	{read(base + "corners: {tail: 5, joints: mitre}\n"), "joint"},
	{read(base + "corners: {joint: dovetail}\n"), "half-blind dovetail"},
	{read(base + "corners: 3\n"), "half-pin, joint"},
	{read(base + "title:\n"), "Reading-nook step"},
	{read(base + "stretchers: [{thickness: 20}]\n"), "width: 60 mm"},
	{read(base + "lid: {thickness: 20}\n"), ""},
	{read(base + "stretchers: [{width: 60, under: upper}]\n"), ""},
	{read(base + "names: {a: b + 1, b: a + 1}\n"), "a → b → a"},
	{read(base + "names: {min: 3}\n"), ""},
	{read(base + "names: {a: 3 mm + 2 deg}\n"), "size.height + 5 mm"},
	{read(base + "names: {a: tan(3 mm)}\n"), "tan"},
	{read(base + "names: {a: min(3 mm; 2 deg)}\n"), "min(size.width; 300 mm)"},
	{read(base + "names: {a: size.hight / 2}\n"), "size.height"},
	{read(base + "names: {a: round(3)}\n"), "round(size.width / 7; 5 mm)"},
	{read(base + "allowance: {length: -size.height}\n"), ""},
	{read(base + "corners: {tails: 2.5}\n"), ""},
	{read(base + "papers: {as: [pdf, pdf]}\n"), "pdf"},
	{read(base + "boards-on-hand: [{name: a, length: 900, width: 200, thickness: 27, avoid: [{what: knot, x: 3, y: 3}]}]\n"), `"a"`},
	{read(base + "boards-on-hand: [{length: 200 m, width: 200, thickness: 27}]\n"), ""},
	{read(base + "timbers: [{name: elder}]\n"), `"elder"`},
	{read(base + "yard: [{sold: 9/4}]\n"), "4/4, 5/4"},
	{read(base + "cost: {wood-per-m3: 3, wood-per-board-foot: 2}\n"), ""},
	{read(strings.Replace(base, "splaywright: 1", "splaywright: 2", 1)), "splaywright: 1"},
	{read("form: stool\nform: tray\n"), ""},
	{read("a: b: c\n"), ""},
	{read("a: [1, 2\n"), ""},
	{read("a: @b\n"), ""},
	{read("- a\n"), ""},
	{read("a: &b 3\n"), "names"},
	{read("a: !!str 3\n"), ""},
	{read("a: \x01\n"), "U+0001"},
	{set("size", "3"), "size.height, size.width"},
	{set("size.hight", "3"), "height"},
	{set("size.height.x", "3"), "size.height"},
	{set("stretchers.4.width", "3"), "4"},
	{set("corners.tail-widths", "3"), "[38, 52, 38]"},
	{set("size.height", "1e3"), "1e3"},
	{set("size.height", "12,5"), "12,5"},
	{set("size.height", "09"), "9"},
	{set("size.height", "3 ft 4 cm"), "cm"},
	{set("size.height", "9 5/3 in"), "9 3/8"},
	{set("splay.ends", "1:0"), ""},
	{set("size.height", "6 deg"), ""},
	{boards(""), "name,timber,length"},
	{boards("length,width,thicknes\n"), "thickness"},
	{boards("length,width,thickness\n1,2\n"), ""},
	{boards("length,width,thickness\n1,\"2,3\n"), ""},
	{boards("length,width,thickness,avoid\n900,200,27,knot at 3\n"), "knot 30 at 700, 40"},
	{boards("length,width,thickness,outline\n900,200,27,3; 4\n"), "0, 0; 1200, 0"},
	{boards("length,width,thickness,grain\n900,200,27,rises\n"), "rises to the right"},
	{timbers(""), ""},
	{timbers("name\n"), `"name"`},
}

// Every refusal is said whole, and what is no word of ours stays as it is, whatever it reads like.
func TestRefusalsAreSaidWhole(t *testing.T) {
	for _, code := range others() {
		speak := tongue.Load(code)
		for _, r := range refusals {
			if r.err == nil {
				t.Fatal("a text that was to be refused is taken")
			}
			said := word.Said(r.err, func(english string) string {
				text, whole := speak.Read(english)
				if !whole {
					t.Errorf("%s: %q is said %q", code, english, text)
				}
				return text
			})
			if !strings.Contains(said, r.stay) || !strings.HasPrefix(said, "Top, side.") {
				t.Errorf("%s: %q is said %q, where %q and the name of the file were to stay", code, r.err, said, r.stay)
			}
			if said == r.err.Error() {
				t.Errorf("%s: %q stays English", code, said)
			}
		}
	}
}

// An error that is wrapped is said without what it is wrapped in, where it tells a place.
func TestTheSystemsReasonsAreSaid(t *testing.T) {
	_, err := file.Read(failing{}, "step.yaml")
	for _, code := range others() {
		if said := word.Said(err, tongue.Load(code).Say); said == err.Error() || !strings.HasPrefix(said, "step.yaml: ") {
			t.Errorf("%s: %q is said %q", code, err, said)
		}
	}
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, errors.New("permission denied") }
