package table

import (
	"math"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// tenoned is a butted stool of any lean with one stretcher, tenoned through or housed, on edge or flat, out of the middle.
func tenoned(t *rapid.T) *form.Piece {
	size := func(name string, lo, hi float64) measure.Length {
		return measure.Length(rapid.Float64Range(lo, hi).Draw(t, name))
	}
	d := formtest.WorkedExample()
	d.Size.Height, d.Size.Width = 400, 600
	d.Splay.Ends = measure.Angle(rapid.IntRange(-12, 28).Draw(t, "ends")) * measure.Degree
	d.Corners = form.Corners{Joint: form.Butt}
	d.Boards.Side.Thickness = size("side", 15, 40)
	s := form.Stretcher{Width: size("width", 40, 90), Thickness: size("thickness", 16, 40), BelowTop: size("below top", 40, 150), Across: size("across", -40, 40),
		Set:   rapid.SampledFrom([]string{form.OnEdge, form.Flat}).Draw(t, "set"),
		Joint: rapid.SampledFrom([]string{form.ThroughTenon, form.HousedTenon}).Draw(t, "joint"),
		Tenon: &form.Tenon{}}
	s.Tenon.Width, s.Tenon.Thickness = s.Width*measure.Length(rapid.Float64Range(0.5, 1).Draw(t, "of the width")), s.Thickness/2
	if s.Joint == form.ThroughTenon {
		s.Tenon.Proud, s.Tenon.Wedges = size("proud", 0, 6), new(0)
	} else {
		s.Tenon.Depth = d.Boards.Side.Thickness / 2
	}
	d.Stretchers = []form.Stretcher{s}
	p := form.Build(d)
	if p.Stopped() {
		t.Skip(p.Findings[0].Text)
	}
	return p
}

// edgesOf are where the four long edges of a stretcher's tenon meet a face of the side, that is so deep behind its outer one: points
// in the side's frame. The stretcher's own frame is followed along its grain.
func edgesOf(p *form.Piece, side *part.Part, tenon form.Tenon, deep float64) (at []mgl64.Vec3) {
	rail := p.Part("stretcher-1")
	to := side.Place.Inv().Mul4(rail.Place)
	for _, y := range []float64{-1, 1} {
		for _, z := range []float64{-1, 1} {
			from := mgl64.Vec3{0, y * tenon.Width.MM() / 2, -rail.Blank.Thickness.MM()/2 + z*tenon.Thickness.MM()/2}
			a, b := to.Mul4x1(from.Vec4(1)).Vec3(), to.Mul4x1(from.Add(mgl64.Vec3{1, 0, 0}).Vec4(1)).Vec3()
			at = append(at, a.Add(b.Sub(a).Mul((-deep-a[2])/(b[2]-a[2]))))
		}
	}
	return at
}

// lines are the lowest and the highest of points up the face from its floor end, and the foremost and the hindmost from the middle
// of the piece.
func lines(side *part.Part, at []mgl64.Vec3, deep float64) (low, high, front, back float64) {
	floor := side.Cuts[slices.IndexFunc(side.Cuts, func(c part.Cut) bool { return c.ID == "floor-end" })]
	foot := (floor.Offset + floor.Normal[2]*deep) / floor.Normal[0]
	low, high, front, back = math.Inf(1), math.Inf(-1), math.Inf(-1), math.Inf(-1)
	for _, v := range at {
		y := side.Place.Mul4x1(v.Vec4(1))[1]
		low, high, front, back = min(low, foot-v[0]), max(high, foot-v[0]), max(front, -y), max(back, y)
	}
	return low, high, front, back
}

// Every line of a mortise is where the edges of the tenon come through that face, whatever the lean; the tenon is as long as from
// the inner face to where it ends, along the stretcher; its shoulders lean as the side does.
func TestMortisesAndTenonsMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := tenoned(t)
		s := p.Design.Stretchers[0]
		tb := Mortises(p, metric)
		of := func(row int, head string) float64 {
			return *tb.Rows[row][slices.IndexFunc(tb.Columns, func(c Column) bool { return c.Head == head })].Number
		}
		near := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-9*(1+math.Abs(want)) {
				t.Fatalf("%s: %.9f, followed %.9f", what, got, want)
			}
		}
		faces := []string{"inner face"}
		if s.Joint == form.ThroughTenon {
			faces = append(faces, "outer face")
		}
		if len(tb.Rows) != 2*len(faces) {
			t.Fatalf("%d rows for two sides with %d faces", len(tb.Rows), len(faces))
		}
		for row := range tb.Rows {
			if face := tb.Rows[row][2].Text; face != faces[row%len(faces)] {
				t.Fatalf("row %d is of the %s, not of the %s", row, face, faces[row%len(faces)])
			}
			side := p.Part(tb.Refs[row])
			thick := side.Blank.Thickness.MM()
			deep, long := 0.0, thick
			if tb.Rows[row][2].Text == "inner face" {
				deep = thick
			}
			if s.Joint == form.HousedTenon {
				long = s.Tenon.Depth.MM()
			}
			low, high, front, back := lines(side, edgesOf(p, side, *s.Tenon, deep), deep)
			near("lower line", of(row, "Lower line"), low)
			near("upper line", of(row, "Upper line"), high)
			near("front line", of(row, "Front line"), front)
			near("back line", of(row, "Back line"), back)
			near("long", of(row, "Long"), high-low)
			near("deep", of(row, "Deep"), long)
		}
		all := Tenons(p, metric)
		if len(all) != 1 {
			t.Fatalf("%d tables for one stretcher", len(all))
		}
		angle, along := settingNamed(all[0], "shoulders"), settingNamed(all[0], "tenon, long")
		near("shoulders", *angle[1].Number, math.Abs(p.Design.Splay.Ends.Degrees()))
		side := p.Part("side-left")
		square := s.Tenon.Depth.MM() // to the side's face, from its inner one
		if s.Joint == form.ThroughTenon {
			square = side.Blank.Thickness.MM() + s.Tenon.Proud.MM()
		}
		axis := side.Place.Inv().Mul4(p.Part("stretcher-1").Place).Mul4x1(mgl64.Vec4{1, 0, 0, 0})
		near("tenon, long", *along[4].Number, square/math.Abs(axis[2]))
	})
}

// settingNamed is the row of a table of settings with that name.
func settingNamed(tb Table, name string) []Cell {
	return tb.Rows[slices.IndexFunc(tb.Rows, func(row []Cell) bool { return row[0].Text == name })]
}
