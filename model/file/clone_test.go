package file

import (
	"bytes"
	"testing"

	"github.com/google/go-cmp/cmp"

	"splaywright/assets"
)

// A copy of a document is what reading its text again gives, and an edit of it leaves the document alone.
func TestACloneIsWhatIsReadAgain(t *testing.T) {
	for _, e := range assets.Examples() {
		d, err := Read(bytes.NewReader(e.YAML), e.Name)
		if err != nil {
			t.Fatal(err)
		}
		again, err := Read(bytes.NewReader(e.YAML), e.Name)
		if err != nil {
			t.Fatal(err)
		}
		c := d.Clone()
		if diff := cmp.Diff(again.root, c.root); diff != "" {
			t.Errorf("%s (-read again +copied):\n%s", e.Name, diff)
		}
		if err := c.Set("size.height", "333 mm"); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(again.root, d.root); diff != "" || !bytes.Equal(d.src, e.YAML) || c.Text("size.height") != "333 mm" {
			t.Errorf("%s: an edit of the copy (-read again +document):\n%s", e.Name, diff)
		}
	}
}
