package table

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

var update = flag.Bool("update", false, "rewrite the golden texts")

// papers are the designs whose tables are kept as text, each in its own style and width.
var papers = []struct {
	name   string
	design form.Design
	style  measure.Style
	width  int
}{
	{"worked-example", formtest.WorkedExample(), measure.Style{Step: 0.5}, 110},
	{"everything", formtest.Full(), measure.Style{Step: 0.5}, 150},
	{"everything-inches", formtest.Full(), measure.Style{Unit: measure.Imperial, Step: measure.Inch / 32}, 110},
	{"housing-both", formtest.Housing(), measure.Style{Step: 0.5, Both: true}, 110},
	{"butt", formtest.Butt(), measure.Style{Step: 0.1}, 80},
}

func TestGoldenTables(t *testing.T) {
	for _, tc := range papers {
		t.Run(tc.name, func(t *testing.T) {
			var b strings.Builder
			for _, tb := range All(form.Build(tc.design), tc.style) {
				if err := WriteText(&b, tb, tc.width); err != nil {
					t.Fatal(err)
				}
				b.WriteByte('\n')
			}
			golden(t, tc.name+".txt", b.String())
		})
	}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s differs (-kept +now):\n%s", path, diff)
	}
}
