package table

import (
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/cut"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// Two boards that lean alike are one board in the table of angles; two that lean unlike each have their rows.
func TestAnglesOfBoardsAlikeStandOnce(t *testing.T) {
	alike, unlike := endsOf(cut.Square(10*measure.Degree, 10*measure.Degree)), endsOf(cut.Square(10*measure.Degree, 5*measure.Degree))
	if len(unlike.Rows) != 2*len(alike.Rows) {
		t.Errorf("%d rows of boards alike, %d of boards unlike", len(alike.Rows), len(unlike.Rows))
	}
	seen := map[string]bool{} // the board is named in the first of its rows
	for _, r := range unlike.Rows {
		seen[r[0].Text] = true
	}
	if len(seen) != 3 || !seen[""] || !seen["leans 10.00°"] || !seen["leans 5.00°"] {
		t.Errorf("%v", seen)
	}
}

// What is said below the table of shapes is of the shapes in it.
func TestNotesAreOfTheShapesThereAre(t *testing.T) {
	const arch, edge = "An arch is given by", "A shape on an edge is given by"
	for _, c := range []struct {
		f          form.Feature
		arch, edge bool
	}{
		{form.Feature{On: "side", Kind: "arch", Width: 100, Rise: 40}, true, false},
		{form.Feature{On: "side", Kind: "hole", Diameter: 20, X: 100}, false, false},
		{form.Feature{On: "side", Kind: "notch", Edge: "back-edge", From: "floor-end", Width: 60, Depth: 15}, false, true},
		{form.Feature{On: "side", Kind: "chamfer", Edge: "front-edge", Width: 6}, false, true},
		{form.Feature{On: "side", Kind: "taper", Edge: "front-edge", From: "floor-end", Length: 100, Depth: 12}, false, true},
		{form.Feature{On: "side", Kind: "ogee", Edge: "floor-end", Width: 120, Rise: 40, Radius: 30}, false, true},
	} {
		d := formtest.WorkedExample()
		d.Features = []form.Feature{c.f}
		p := model.Derive(d)
		if p.Stopped() {
			t.Errorf("%s: %s", c.f.Kind, p.Findings[0].Text)
			continue
		}
		notes := strings.Join(Shapes(p, metric).Notes, "\n")
		if strings.Contains(notes, arch) != c.arch || strings.Contains(notes, edge) != c.edge {
			t.Errorf("of one %s it says\n%s", c.f.Kind, notes)
		}
	}
}

// A step is there where there is something to do in it: nothing is cut square of a stool that leans all round.
func TestNothingIsCutSquareWhereAllLeans(t *testing.T) {
	does := func(d form.Design) string {
		var out []string
		for _, r := range Steps(model.Derive(d), metric).Rows {
			out = append(out, r[1].Text)
		}
		return strings.Join(out, "; ")
	}
	d := formtest.WorkedExample()
	if got := does(d); !strings.Contains(got, "Cut square") || !strings.Contains(got, "Cut the angles") {
		t.Error(got)
	}
	d.Splay.Edges = 4 * measure.Degree
	d.Splay.EdgeCut = form.EdgeFlush
	if got := does(d); strings.Contains(got, "Cut square") || !strings.Contains(got, "Cut the angles") {
		t.Error(got)
	}
}

// Where a joint opens in its board: a through tenon in the outer face, a stopped one and a housing in the inner face, a
// dovetail nowhere.
func TestWhereJointsOpen(t *testing.T) {
	for _, c := range []struct {
		joint       string
		ok, inner   bool
		onStretcher bool
	}{{form.ThroughDovetail, false, false, false}, {form.ThroughTenon, true, false, true}, {form.HousedTenon, true, true, true}, {form.Housing, true, true, true}} {
		d := formtest.WorkedExample()
		if c.onStretcher {
			d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 24, Set: form.OnEdge, BelowTop: 70, Joint: c.joint}}
		}
		p := model.Derive(d)
		if p.Stopped() {
			t.Fatalf("%s: %s", c.joint, p.Findings[0].Text)
		}
		seen := false
		for _, j := range p.Joints {
			if j.Kind != c.joint {
				continue
			}
			seen = true
			s, ok := SeatOf(p, j)
			if ok != c.ok || ok && (s.Inner != c.inner || len(s.Corners) != 4) {
				t.Errorf("%s: %v, inner face %v, %d corners", c.joint, ok, s.Inner, len(s.Corners))
			}
		}
		if !seen {
			t.Errorf("there is no %s", c.joint)
		}
	}
}
