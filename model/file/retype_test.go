package file

import (
	"bytes"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gopkg.in/yaml.v3"
	"pgregory.net/rapid"

	"splaywright/assets"
)

// numbersOf are the paths of the numbers of a document.
func numbersOf(n *yaml.Node, path string, out []string) []string {
	switch n.Kind {
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			out = numbersOf(n.Content[i+1], join(path, n.Content[i].Value), out)
		}
	case yaml.SequenceNode:
		for i, c := range n.Content {
			out = numbersOf(c, join(path, string(rune('0'+i))), out)
		}
	case yaml.ScalarNode:
		if n.Style == 0 && isNumber(n.Value) {
			out = append(out, path)
		}
	}
	return out
}

// A number that is typed over another leaves the document that reading its text again gives, and the text that is written
// where the whole is read again.
func TestANumberTypedOverAnother(t *testing.T) {
	texts := rapid.OneOf(rapid.StringMatching(`[0-9]{1,4}(\.[0-9]{0,3})?( ?(mm|in|deg|lb))?`),
		rapid.StringMatching(`([0-9]{1,2} )?[0-9]/(2|4|8|16)( in)?`),
		rapid.SampledFrom([]string{"0", "007", "0x1f", "0b11", "1e3", "0o17", "12 of 3", "9 mm"}))
	typed := 0
	rapid.Check(t, func(t *rapid.T) {
		e := rapid.SampledFrom(assets.Examples()).Draw(t, "example")
		d, err := Read(bytes.NewReader(e.YAML), e.Name)
		if err != nil {
			t.Fatal(err)
		}
		paths := numbersOf(d.root, "", nil)
		for range rapid.IntRange(1, 4).Draw(t, "times") { // what is moved must be found again
			path, text := rapid.SampledFrom(paths).Draw(t, "path"), texts.Draw(t, "text")
			slow := d.Clone()
			old := slow.find(path)
			if err := slow.change(path, func(root *yaml.Node) error { return replace(root, path, plain(text)) },
				func(s *source) (patch, error) { return s.overwrite(old, flow(plain(text), slow.inFlow(path))) }); err != nil {
				t.Fatal(err)
			}
			if d.retype(d.find(path), text) {
				typed++
			} else if err := d.Set(path, text); err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(d.src, slow.src) {
				t.Fatalf("%s: %s: the text is\n%s\nwant\n%s", path, text, d.src, slow.src)
			}
			if diff := cmp.Diff(slow.root, d.root); diff != "" {
				t.Fatalf("%s: %s (-read again +typed):\n%s", path, text, diff)
			}
		}
	})
	if typed == 0 {
		t.Error("no number was typed over another")
	}
}

func TestNotANumber(t *testing.T) {
	for _, text := range []string{"", " 1", "1 ", "a", "1 # a", "1: 2", "1, 2", "1]", "-1", "1\n2", "1_0", "½", "1\u0085", `1"`} {
		if isNumber(text) {
			t.Errorf("%q is taken for a number", text)
		}
	}
	d, err := Read(bytes.NewReader([]byte("splaywright: 1\nsize: {height: 12\n   mm, width: '300'}\n")), "a.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for path, text := range map[string]string{"size.height": "13 mm", "size.width": "310"} {
		if d.retype(d.find(path), text) {
			t.Errorf("%s: %q was not written over the quotes or the lines that are there", path, d.src)
		}
	}
}
