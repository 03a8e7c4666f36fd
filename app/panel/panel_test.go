package panel

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"pgregory.net/rapid"

	"splaywright/app/look"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/table"
)

func pathsOf(groups []Group) []string {
	var out []string
	for _, g := range groups {
		for _, f := range g.Fields {
			out = append(out, f.Path)
		}
	}
	return out
}

func TestOnlyWhatTheDesignUsesHasAField(t *testing.T) {
	d := form.Design{Corners: form.Corners{Joint: "housing"}, Stretchers: []form.Stretcher{{Joint: "butt"}},
		Features: []form.Feature{{Kind: string(part.Arch)}, {Kind: string(part.Slot)}}}
	got := pathsOf(Groups(&d, nil, nil))
	for path, want := range map[string]bool{
		"corners.depth": true, "corners.overhang": true, "corners.pin": false, "corners.screws.gauge": false,
		"splay.edge-cut": false, "stretchers.0.width": true, "stretchers.0.depth": false, "stretchers.1.width": false,
		"features.0.rise": true, "features.0.length": false, "features.1.angle": true, "features.1.rise": false,
	} {
		if slices.Contains(got, path) != want {
			t.Errorf("field for %s: %v, want %v", path, !want, want)
		}
	}
}

func TestNoTwoFieldsShareAPath(t *testing.T) {
	d := form.Design{Corners: form.Corners{Joint: "butt", Screws: &form.Screws{}}, Stretchers: []form.Stretcher{{Screws: &form.Screws{}}, {}},
		Features: []form.Feature{{Kind: "hole"}, {Kind: "hand hole"}, {Kind: "round-over"}}}
	got := pathsOf(Groups(&d, nil, nil))
	slices.Sort(got)
	if n := len(slices.Compact(slices.Clone(got))); n != len(got) {
		t.Errorf("%d fields have %d paths: %q", len(got), n, got)
	}
}

func TestColumnsHoldTheirCells(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{})
	tb := table.Table{Columns: []table.Column{{Head: "Part"}, {Head: "Length", Unit: "mm"}, {Head: "Q"}},
		Rows: [][]table.Cell{{{Text: "Side, left and right"}, {Text: "263.5"}, {Text: strings.Repeat("a long sentence ", 20)}}}}
	p := planOf(tb, 300)
	w := p.widths
	for c, text := range []string{"Side, left and right", "Length"} {
		if got := fitted(text, theme.Size(look.Cell), fyne.TextStyle{}, w[c]-2*cellPad); got != text {
			t.Errorf("column %d is %v wide and shows %q of %q", c, w[c], got, text)
		}
	}
	if w[2] != mostColumn {
		t.Errorf("a sentence takes %v, want %v at most", w[2], mostColumn)
	}
	if got := strings.Join(p.lines[[2]int{0, 2}], " "); got != strings.TrimSpace(tb.Rows[0][2].Text) {
		t.Errorf("the sentence is wrapped to %q", got)
	}
	if wide := planOf(tb, 900).widths; wide[2] < 500 || wide[0] != w[0] {
		t.Errorf("in a wide place the columns are %v wide; the sentence should have what is left", wide)
	}
}

// A table that is a little wider than its place is seen whole: its sentences go on in more lines. One that is much wider is
// moved sideways, and its sentences keep their width.
func TestSentencesYieldWhereAllIsSeenThen(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{})
	tb := table.Table{Columns: []table.Column{{Head: "What"}, {Head: "Before"}, {Head: "After"}, {Head: "Change"}},
		Rows: [][]table.Cell{{{Text: strings.Repeat("a long sentence ", 4)}, {Text: "263.5"}, {Text: "270.0"}, {Text: "same"}}}}
	wide := func(p plan) (all float32) {
		for _, w := range p.widths {
			all += w + theme.Padding()
		}
		return all
	}
	free := planOf(tb, 0)
	for _, lacks := range []float32{0, 1, 20, mostColumn - leastSentence} {
		place := wide(free) - lacks
		p := planOf(tb, place)
		if got := wide(p); got > place+0.01 {
			t.Errorf("in a place that is %v too narrow the table takes %v of %v", lacks, got, place)
		}
		if !slices.Equal(p.widths[1:], free.widths[1:]) {
			t.Errorf("columns of figures are %v wide, not %v", p.widths[1:], free.widths[1:])
		}
		if got := strings.Join(p.lines[[2]int{0, 0}], " "); got != strings.TrimSpace(tb.Rows[0][0].Text) {
			t.Errorf("the sentence is wrapped to %q", got)
		}
	}
	if p := planOf(tb, wide(free)-mostColumn+leastSentence-1); !slices.Equal(p.widths, free.widths) {
		t.Errorf("in a place that is too narrow in any case the columns are %v wide, not %v", p.widths, free.widths)
	}
}

// A text is whole or a beginning of it with an ellipsis, and never wider than its column.
func TestATextIsCutToItsColumn(t *testing.T) {
	test.NewTempApp(t)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-z ½″éß]{0,40}`).Draw(t, "text")
		width := rapid.Float32Range(30, 300).Draw(t, "width")
		got := fitted(text, 12, fyne.TextStyle{}, width)
		if got == text {
			return
		}
		if w := fyne.MeasureText(got, 12, fyne.TextStyle{}).Width; w > width {
			t.Fatalf("%q is %v wide in %v", got, w, width)
		}
		if begin := strings.TrimSuffix(got, "…"); !strings.HasPrefix(text, begin) {
			t.Fatalf("%q is no beginning of %q", got, text)
		}
	})
}

func TestCounts(t *testing.T) {
	got := Counts([]part.Finding{{Level: part.Note}, {Level: part.Stop}, {Level: part.Note}, {Level: part.Warning}})
	if want := "1 stop, 1 warning, 2 notes"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := Counts(nil); got != "" {
		t.Errorf("nothing is counted as %q", got)
	}
}

// A sentence in a cell is whole, however narrow the column is: Japanese has no blanks to break it at.
func TestSentencesAreWholeInEveryScript(t *testing.T) {
	test.NewTempApp(t)
	for _, text := range []string{
		"片面を平らにし、もう一面を厚さに: 1 天板: 20.0; 2、3 側板: 20.0。接ぎ手と角度切りはこれで決まります。薄くなった板は墨を付ける前に入れます。",
		"Eine Fläche abrichten, die andere auf Dicke hobeln: Verbindungen und Winkelschnitte hängen davon ab.",
	} {
		for width := float32(110); width < 600; width += 35 {
			lines := wrapped(text, 12, fyne.TextStyle{}, width)
			for _, l := range lines {
				if got := fitted(l, 12, fyne.TextStyle{}, width); got != l {
					t.Errorf("in %v the line %q reads %q", width, l, got)
				}
			}
			bare := strings.NewReplacer(" ", "", "-", "")
			if got := bare.Replace(strings.Join(lines, "")); got != bare.Replace(text) {
				t.Errorf("in %v it reads %q", width, got)
			}
		}
	}
}

// Above the drawing stands the weight, in pounds beside inches, and none where a timber of the piece is in no table.
func TestOverallSizesAndWeight(t *testing.T) {
	d := formtest.Butt()
	p := form.Build(d)
	if got, want := OverallText(p), fmt.Sprintf(", %.1f kg", p.Overall.Mass); !strings.HasSuffix(got, want) {
		t.Errorf("it says %q, want %q at its end", got, want)
	}
	p.Design.Round.Unit = measure.Imperial
	if got, want := OverallText(p), fmt.Sprintf(", %.1f lb", p.Overall.Mass/0.45359237); !strings.HasSuffix(got, want) {
		t.Errorf("it says %q, want %q at its end", got, want)
	}
	d.Boards.Top.Timber = "bog walnut"
	if got := OverallText(form.Build(d)); !strings.HasSuffix(got, "on the floor") {
		t.Errorf("it says %q", got)
	}
}
