package sheet

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/render/draw"
)

// values are the texts of a page that speak of one thing.
func values(p draw.Page, ref string) []string {
	var out []string
	for _, it := range p.Items {
		if t, ok := it.(draw.Text); ok && t.Ref == ref {
			out = append(out, t.Text)
		}
	}
	return out
}

// A row of tails prints what the widths add up to, rounded once: the same as measure's running
// positions, in a step that would add up to a wrong end if each width were rounded by itself.
func TestRowsPrintRunningPositions(t *testing.T) {
	inches := form.Round{To: measure.Inch / 16, Unit: measure.Imperial}
	for name, round := range map[string]form.Round{"whole millimetres": {To: 1}, "sixteenths": inches} {
		t.Run(name, func(t *testing.T) {
			d := formtest.WorkedExample()
			d.Corners.Tails = new(7)
			d.Round = round
			if round.Unit == measure.Imperial {
				d.Units = measure.Imperial
			}
			p := model.Derive(d)
			style := d.Style().Joints()
			for _, j := range p.Joints {
				var steps []measure.Length
				last, each := measure.Length(0), measure.Length(0)
				for _, s := range j.Tails {
					steps = append(steps, s.Start-last, s.End-s.Start)
					last = s.End
				}
				for _, s := range steps {
					shown, _ := style.Round(s)
					each += shown
				}
				rows := values(Papers(p, Options{})[1], j.ID)
				if strings.HasSuffix(j.ID, "left") { // the sheet has its row at the right
					continue
				}
				want := style.Running(steps)
				for _, l := range want {
					if !slices.Contains(rows, style.Format(l)) {
						t.Errorf("%s: %s is not in the row %v", j.ID, style.Format(l), rows)
					}
				}
				if each == want[len(want)-1] {
					t.Errorf("%s: widths rounded one by one add up to %v too: the case tells nothing", j.ID, each)
				}
			}
		})
	}
}

// The rows on both sides of a face start at one edge of it, so that nobody measures from the wrong one.
func TestRowsOfASheetStartAtOneEdge(t *testing.T) {
	both := 0
	for _, p := range examplePieces(t) {
		for _, group := range kinds(p) {
			q := group[0]
			f := fineFigure(partScene(q).Project(faceView), 0.2, onPaper, true)
			items := faceFigure(p, q, f, Options{}.fill(p)).Finish()
			mid, zeros := (f.Outline().Min.Y+f.Outline().Max.Y)/2, 0
			up := false
			for _, it := range items {
				v, ok := it.(draw.Text)
				if !ok || v.Text != "0" || v.Turn != 0 {
					continue
				}
				if zeros++; zeros > 1 && up != (v.At.Y > mid) {
					t.Errorf("%s, %s: the rows start at both edges", p.Title, q.ID)
				}
				up = v.At.Y > mid
			}
			if zeros > 1 {
				both++
			}
		}
	}
	if both == 0 {
		t.Error("no sheet has two rows")
	}
}
