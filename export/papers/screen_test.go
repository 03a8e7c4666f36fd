package papers

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/render/sheet"
)

// alone is the only file of an example's papers that is of one kind, and the piece.
func alone(t *testing.T, example, kind string) ([]byte, *form.Piece) {
	t.Helper()
	p := model.Derive(filetest.Named(t, example))
	p.Design.Papers.As = []string{kind}
	files, err := Files(p, Options{})
	if err != nil || len(files) != 1 {
		t.Fatalf("%s: %d files, %v", example, len(files), err)
	}
	var b bytes.Buffer
	if err := files[0].Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes(), p
}

// The page for a screen holds the plans of boards too, so that a telephone on the bench shows all that is to be cut: every
// board that is cut as a picture, and the cuts in order.
func TestThePageForAScreenHoldsThePlans(t *testing.T) {
	for name, want := range map[string]struct {
		boards int
		words  []string
	}{
		"barn-door-stool":   {1, []string{"plank with the hinge", "<h2>Cuts in order"}},
		"washstand-step":    {1, []string{"<h2>Wood to buy", "<h2>Cuts in order"}},
		"reading-nook-step": {0, nil}, // no boards on hand, and no yard
	} {
		text, p := alone(t, name, form.AsHTML)
		page := string(text)
		if got := strings.Count(page, "<svg") - len(sheet.Views(p, nil)); got != want.boards {
			t.Errorf("%s: %d boards are drawn, want %d", name, got, want.boards)
		}
		for _, w := range want.words {
			if !strings.Contains(page, w) {
				t.Errorf("%s: %q is missing", name, w)
			}
		}
	}
}

// The workbook holds the tables of the plans after those of the piece.
func TestTheWorkbookHoldsThePlans(t *testing.T) {
	for name, want := range map[string][]string{
		"barn-door-stool":   {"Board plan", "What comes out of which board", "Cuts in order"},
		"washstand-step":    {"Wood to buy", "Board plan", "What comes out of which board", "Cuts in order"},
		"reading-nook-step": nil,
	} {
		text, _ := alone(t, name, form.AsXLSX)
		f, err := excelize.OpenReader(bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		got := f.GetSheetList()
		if n := len(got) - len(want); n < 10 || !slices.Equal(got[n:], want) {
			t.Errorf("%s: the sheets are %q, the last of them should be %q", name, got, want)
		}
	}
}
