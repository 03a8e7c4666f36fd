package table

import (
	"fmt"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// oddPieces are pieces with what those of everyPiece leave out: unlike walls, shapes of every kind on edges and inner faces, a saw
// with a cradle and a short blade, leans told as in the board. Sizes are invented.
func oddPieces() map[string]form.Design {
	out := map[string]form.Design{}
	back, left := 12*measure.Degree, 3*measure.Degree
	for _, joint := range form.CornerJoints() {
		out["tray of unlike walls, "+joint] = form.Design{Form: "tray", Timber: "black cherry", Size: form.Size{Height: 90, Width: 420, Depth: 300},
			Splay:  form.Splay{Ends: 8 * measure.Degree, Front: 15 * measure.Degree, Back: &back, EndLeft: &left},
			Boards: form.Boards{Side: form.Board{Thickness: 14}}, Corners: form.Corners{Joint: joint},
			Bottom: &form.Bottom{Thickness: 8, Joint: form.InGroove}, Saw: form.Saw{Cradle: 40 * measure.Degree, Depth: 60}}
	}
	shapes := form.Design{Form: "stool", Timber: "white oak", Size: form.Size{Height: 450, Width: 520, Depth: 330},
		Splay:   form.Splay{Ends: 9 * measure.Degree, Edges: 5 * measure.Degree, EdgeCut: form.EdgeFlush},
		Boards:  form.Boards{Top: form.Board{Thickness: 26}, Side: form.Board{Thickness: 24}},
		Corners: form.Corners{Joint: form.Housing, Depth: new(measure.Length(8))},
		Features: []form.Feature{
			{On: "side", Kind: string(part.Ogee), Width: 180, Rise: 45, Radius: 40, Hollow: 30},
			{On: "top", Kind: "chamfer", Edge: "edges", Width: 5, Angle: 30 * measure.Degree},
			{On: "side", Kind: "chamfer", Edge: "front-edge", Width: 6, Length: 180},
			{On: "top", Kind: "hand hole", Length: 95, Width: 30, Angle: 20 * measure.Degree},
			{On: "side", Kind: "hole", Diameter: 20, Depth: 10, Face: form.InnerFace, X: 300},
			{On: "side", Kind: "notch", Edge: "back-edge", From: "floor-end", Width: 50, Depth: 14},
			{On: "side", Kind: "taper", Edge: "front-edge", From: "floor-end", Length: 110, Depth: 9},
		}}
	out["stool with shapes"] = shapes
	middle := 4 * measure.Degree
	out["steps with a middle side that leans"] = form.Design{Form: "steps", Timber: "white oak",
		Size:   form.Size{Height: 440, Width: 560, Depth: 320, LowerHeight: 220, LowerWidth: 270},
		Splay:  form.Splay{Ends: 6 * measure.Degree, Middle: middle},
		Boards: form.Boards{Top: form.Board{Thickness: 22}, Side: form.Board{Thickness: 20}}, Corners: form.Corners{Joint: form.Butt},
		Stretchers: []form.Stretcher{{Width: 50, Thickness: 20, BelowTop: 60, Joint: form.Housing, Depth: 6, Under: form.UnderLower}}}
	return out
}

// Of every piece every table can be read: each row has a cell under each head, no figure is none, what is printed of a figure is
// that figure to its rounding, and every note is a sentence.
func TestTablesOfEveryPieceAreWhole(t *testing.T) {
	all := maps.Clone(everyDerived())
	for name, d := range oddPieces() {
		all[name] = model.Derive(d)
		if all[name].Stopped() {
			t.Errorf("%s: %s", name, all[name].Findings[0].Text)
		}
	}
	for seed := range uint64(150) { // some of them with figures a hair below nothing
		all[fmt.Sprintf("random piece %d", seed)] = model.Derive(formtest.Random(seed))
	}
	seen := map[string]int{}
	for _, name := range slices.Sorted(maps.Keys(all)) {
		p := all[name]
		if p.Stopped() {
			continue
		}
		for _, style := range []measure.Style{metric, {Unit: measure.Imperial, Step: measure.Inch / 32}} {
			for _, tb := range All(p, style) {
				kind, _, _ := strings.Cut(tb.ID, "-")
				seen[kind]++
				wholeTable(t, name, tb)
			}
		}
	}
	for _, kind := range []string{"splines", "keys", "tenons", "mortises", "marking", "gauges", "seats", "grooves", "boring", "shapes", "easing", "holding"} {
		if seen[kind] == 0 {
			t.Errorf("no table of %s", kind)
		}
	}
}

// noFigure is what stands where a figure or a word could not be told.
var noFigure = regexp.MustCompile(`%!|\bNaN\b|\bInf\b|^-0?\.?0*$`)

// printed is a decimal number as it stands in a cell.
var printed = regexp.MustCompile(`^-?\d+(\.\d+)?$`)

func wholeTable(t *testing.T, name string, tb Table) {
	t.Helper()
	for i, row := range tb.Rows {
		if len(row) != len(tb.Columns) {
			t.Errorf("%s, %s: row %d has %d cells under %d heads", name, tb.ID, i, len(row), len(tb.Columns))
		}
		for k, c := range row {
			if noFigure.MatchString(c.Text) {
				t.Errorf("%s, %s, row %d, %s: %q", name, tb.ID, i, tb.Columns[k].Head, c.Text)
			}
			if c.Number == nil || !printed.MatchString(c.Text) {
				continue
			}
			got, _ := strconv.ParseFloat(c.Text, 64)
			_, digits, _ := strings.Cut(c.Text, ".")
			off := 0.5 * math.Pow10(-len(digits))
			if len(digits) == 1 && tb.Columns[k].Unit == "mm" {
				off = float64(metric.Step) / 2
			}
			if math.Abs(got-*c.Number) > off*(1+1e-9) {
				t.Errorf("%s, %s, row %d, %s: printed %q of %g", name, tb.ID, i, tb.Columns[k].Head, c.Text, *c.Number)
			}
		}
	}
	for _, n := range tb.Notes {
		if noFigure.MatchString(n) || strings.Contains(n, "  ") || !strings.HasPrefix(n, "Source ") && !strings.HasSuffix(n, ".") {
			t.Errorf("%s, %s: the note %q", name, tb.ID, n)
		}
	}
}
