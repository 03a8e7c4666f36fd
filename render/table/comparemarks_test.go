package table

import (
	"math"
	"slices"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// A top that is planed from 20 to 18 when the sides are cut: on their 96° corner their baselines move from 20 / sin 96° to
// 18 / sin 96° (design.md: baselines sit at the mating thickness by the sine of the corner), and a stretcher that hangs below
// the top goes up by 2 / cos 6° along the side.
func TestMarksThatAPlanedBoardChanges(t *testing.T) {
	thick, thin := formtest.WorkedExample(), formtest.WorkedExample()
	for _, d := range []*form.Design{&thick, &thin} {
		d.Round = form.Round{To: 0.1}
		d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, BelowTop: 40, Joint: "butt"}}
	}
	thin.Boards.Top.Thickness = 18
	got := CompareMarks([]*form.Piece{model.Derive(thick), model.Derive(thin)}, thick.Style())
	sin, cos := math.Sin(96*math.Pi/180), math.Cos(6*math.Pi/180)
	baselines, up := 0, 0
	for _, row := range got.Rows {
		n := len(row)
		if row[1].Text == "on the sides, from that face's own end" && strings.HasPrefix(row[2].Text, "baseline") {
			baselines++
			near(t, "a baseline on the sides before", *row[n-3].Number, 20/sin, 1e-9)
			near(t, "a baseline on the sides after", *row[n-2].Number, 18/sin, 1e-9)
		}
		if row[3].Text == "Distance, top end" {
			up++
			near(t, "the seat of the stretcher", *row[n-2].Number-*row[n-3].Number, -2/cos, 1e-9)
		}
	}
	if baselines != 2 || up == 0 {
		t.Errorf("%d baselines and %d distances of the stretcher in\n%v", baselines, up, got.Rows)
	}
}

// A change is the difference of what is shown, in inches as in millimetres: whoever takes the one from the other with a rule finds it.
func TestAChangeIsWhatTheFiguresShow(t *testing.T) {
	inches := measure.Style{Unit: measure.Imperial, Step: measure.Inch / 32}
	for _, c := range []struct {
		style          measure.Style
		unit, from, to string
		want           string
		back           string
	}{
		{metric, "mm", "263.5", "261.0", "-2.5", "+2.5"},
		{metric, "deg", "9.46", "12.0", "+2.54", "-2.54"},
		{inches, "in", "9 3/8", "9 13/32", "+1/32", "-1/32"},
		{inches, "in", "15/16", "1 1/16", "+1/8", "-1/8"},
		{inches, "in", "10", "7 1/4", "-2 3/4", "+2 3/4"},
		{inches, "in", "3/8 (9.5)", "3/8 (9.6)", "differs", "differs"},
		{inches, "in", "0.315", "0.4", "+0.085", "-0.085"},
	} {
		s := newSheet("change", "Change", c.style)
		if got := s.shownChange(c.unit, word(c.from), word(c.to)); got != c.want {
			t.Errorf("%s to %s: %q, not %q", c.from, c.to, got, c.want)
		}
		if got := s.shownChange(c.unit, word(c.to), word(c.from)); got != c.back {
			t.Errorf("%s to %s: %q, not %q", c.to, c.from, got, c.back)
		}
	}
}

// Every figure of every table that is not the same stands there once, and none that is.
func TestNoMarkThatChangesIsLeftOut(t *testing.T) {
	for name, plane := range map[string]func(*form.Design){
		"top":  func(d *form.Design) { d.Boards.Top.Thickness -= 2 },
		"side": func(d *form.Design) { d.Boards.Side.Thickness -= 1.5 },
		"lean": func(d *form.Design) { d.Splay.Ends += measure.Degree },
		"none": func(*form.Design) {},
	} {
		for _, unit := range []measure.Unit{measure.Metric, measure.Imperial} {
			a, b := formtest.Full(), formtest.Full()
			a.Units, b.Units = unit, unit
			plane(&b)
			p, q := model.Derive(a), model.Derive(b)
			want := 0
			after := marks(q, a.Style())
			for _, t := range marks(p, a.Style()) {
				i := slices.IndexFunc(after, func(u Table) bool { return u.ID == t.ID })
				if i < 0 || len(after[i].Rows) != len(t.Rows) {
					continue
				}
				for r, row := range t.Rows {
					for c := range row {
						if other := after[i].Rows[r][c]; row[c].Number != nil && other.Number != nil && t.Columns[c].Head != "Gauge" && row[c].Text != other.Text {
							want++
						}
					}
				}
			}
			got := CompareMarks([]*form.Piece{p, q}, a.Style())
			if len(got.Rows) != want || name == "none" && want != 0 || name != "none" && want == 0 {
				t.Errorf("%s: %d figures, want %d", name, len(got.Rows), want)
			}
			for _, row := range got.Rows {
				if change := row[len(row)-1].Text; change == "" || number(change) == 0 && unit == measure.Metric {
					t.Errorf("%s: %v", name, row)
				}
			}
		}
	}
}

// Where a terminal is too narrow for all columns, what goes on below tells of every figure what board, what line and what it is.
func TestMarksInANarrowTerminal(t *testing.T) {
	thick, thin := formtest.WorkedExample(), formtest.WorkedExample()
	thin.Boards.Top.Thickness -= 2
	marks := CompareMarks([]*form.Piece{model.Derive(thick), model.Derive(thin)}, thick.Style())
	var out strings.Builder
	if err := WriteText(&out, marks, 56); err != nil {
		t.Fatal(err)
	}
	blocks := 0
	for _, line := range strings.Split(out.String(), "\n") {
		if words := strings.Fields(line); len(words) > 3 && words[0] == "Table" {
			blocks++
			if !slices.Equal(words[1:4], []string{"Board", "Line", "What"}) {
				t.Errorf("a part of the table begins with %q", line)
			}
		}
	}
	if blocks < 2 {
		t.Errorf("%d parts in\n%s", blocks, out.String())
	}
}
