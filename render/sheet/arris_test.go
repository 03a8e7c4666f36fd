package sheet

import (
	"math"
	"slices"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/table"
)

// The sheet of a wall and the table of points give the outer face's two arrises alike, as the corners of the solid
// stand: mitred, so that no corner is missing, and bevelled, so that the blank reaches past the face.
func TestWallsAreAsLongAsTheTableSays(t *testing.T) {
	for _, d := range []form.Design{walled("tray", 0), walled("ring", 6), walled("ring", 8)} {
		p := model.Derive(d)
		o := Options{}.fill(p)
		points := table.Points(p, o.Style)
		for _, q := range p.Parts {
			low, high := faceEdges(q, 0)
			page := partSheet(p, set{o: o, piece: p.Title, form: p.Form}, []*part.Part{q}).Page
			for _, y := range []float64{low, high} {
				want := o.label(arrisAt(q, y))
				if !slices.Contains(values(page, q.ID), want) {
					t.Errorf("%s of a %s: the sheet says %v, the arris is %s long", q.Name, d.Form, values(page, q.ID), want)
				}
			}
			if i := slices.Index(points.Refs, q.ID); i >= 0 {
				if long := points.Rows[i][1].Text; o.label(arrisAt(q, high)) != long {
					t.Errorf("%s of a %s: the table says %s for its long point", q.Name, d.Form, long)
				}
			}
		}
	}
}

// arrisAt is the length between the corners of the outer face at a height y of it.
func arrisAt(q *part.Part, y float64) measure.Length {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range q.Solid.Vertices {
		if math.Abs(v.Z()) < 1e-6 && math.Abs(v.Y()-y) < 1e-6 {
			lo, hi = min(lo, v.X()), max(hi, v.X())
		}
	}
	return measure.Length(hi - lo)
}
