package table

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// housed is a stool with a housed top, or a tray with housed corners: any lean, with or without shoulders, run out or stopped.
func housed(t *rapid.T) form.Design {
	d := formtest.Housing()
	lean := func(name string) measure.Angle {
		return measure.Angle(rapid.IntRange(0, 24).Draw(t, name)) * measure.Degree
	}
	d.Splay = form.Splay{Ends: lean("ends"), Edges: lean("edges") / 3}
	if rapid.Bool().Draw(t, "walls") {
		d = form.Design{Form: "tray", Size: form.Size{Height: 140, Width: 480, Depth: 320}, Splay: form.Splay{Ends: lean("ends"), Front: lean("front")},
			Boards: form.Boards{Side: form.Board{Thickness: 18}}}
	}
	d.Features = nil
	d.Corners = form.Corners{Joint: form.Housing, Depth: new(measure.Length(rapid.IntRange(4, 9).Draw(t, "depth")))}
	if rapid.Bool().Draw(t, "stopped") {
		d.Corners.Stop = measure.Length(rapid.IntRange(5, 40).Draw(t, "stop"))
	}
	if rapid.Bool().Draw(t, "shouldered") {
		d.Corners.Shoulder = new(measure.Length(rapid.IntRange(2, 6).Draw(t, "shoulder")))
	}
	return d
}

// onFace is the point of a face, so deep behind the outer one, that lies so far square from the lines in which two edges meet it.
func onFace(q *part.Part, deep float64, edges [2]string, off [2]float64) mgl64.Vec3 {
	var n [2][2]float64
	var d [2]float64
	for i, name := range edges {
		c := q.Cuts[slices.IndexFunc(q.Cuts, func(c part.Cut) bool { return strings.ReplaceAll(c.ID, "-", " ") == name })]
		level := math.Hypot(c.Normal[0], c.Normal[1])
		n[i] = [2]float64{c.Normal[0] / level, c.Normal[1] / level}
		d[i] = (c.Offset+c.Normal[2]*deep)/level - off[i]
	}
	det := n[0][0]*n[1][1] - n[0][1]*n[1][0]
	return mgl64.Vec3{(d[0]*n[1][1] - d[1]*n[0][1]) / det, (n[0][0]*d[1] - n[1][0]*d[0]) / det, -deep}
}

// drawnAt tells whether a point is a corner of the board or, where no end is asked for, lies on one of its arrises or close to an
// end in line with it: the board that is let in may be a little shorter than a hollow that runs out.
func drawnAt(q *part.Part, at mgl64.Vec3, end bool) bool {
	for _, e := range q.Solid.Edges {
		from, to := q.Solid.Vertices[e.From], q.Solid.Vertices[e.To]
		if at.Sub(from).Len() < 1e-6 || at.Sub(to).Len() < 1e-6 {
			return true
		}
		way := to.Sub(from).Normalize()
		along := at.Sub(from).Dot(way)
		if !end && e.Arc == 0 && along > -1 && along < to.Sub(from).Len()+1 && at.Sub(from).Sub(way.Mul(along)).Len() < 1e-6 {
			return true
		}
	}
	return false
}

// Each corner of a housing's seat, laid off on the board from its two edges, is where the hollow is cut into it: at a stop its
// corner, elsewhere on its long sides. Corners on the outline of the board or beyond say where the hollow runs out.
func TestSeatsAreWhereTheHollowIsCut(t *testing.T) {
	stops, found := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := form.Build(housed(t))
		if p.Stopped() {
			t.Skip(p.Findings[0].Text)
		}
		tb := Seats(p, metric)
		head := func(name string, nth int) int {
			for i, c := range tb.Columns {
				if c.Head == name {
					if nth == 0 {
						return i
					}
					nth--
				}
			}
			t.Fatalf("no column %q", name)
			return 0
		}
		deep := 0.0
		for i, row := range tb.Rows {
			on := p.Part(tb.Refs[i])
			if where := row[0].Text; where != "" {
				deep = 0
				if strings.HasSuffix(where, "inner face") {
					deep = on.Blank.Thickness.MM()
				}
			}
			at := onFace(on, deep, [2]string{row[head("First edge", 0)].Text, row[head("Second edge", 0)].Text},
				[2]float64{*row[head("Distance", 0)].Number, *row[head("Distance", 1)].Number})
			ends := strings.Contains(row[head("Corner", 0)].Text, "stop at")
			if ends {
				stops++
			} else if outside(on, at) {
				continue
			}
			if found++; !drawnAt(on, at, ends) {
				t.Fatalf("%s, %s: nothing of the hollow at %v", on.ID, row[head("Corner", 0)].Text, at)
			}
		}
	})
	if stops == 0 || found == 0 {
		t.Errorf("%d corners, %d of stops", found, stops)
	}
}

// outside tells whether a point lies on an edge of the board or beyond.
func outside(q *part.Part, at mgl64.Vec3) bool {
	return slices.ContainsFunc(q.Cuts, func(c part.Cut) bool { return c.Normal.Dot(at) > c.Offset-1e-9 })
}
