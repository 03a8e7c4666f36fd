package model_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/measure"
)

// Whatever is typed of a piece of walls, it comes back with sound solids, or with a stop that says
// why there are none; looking it over does not fail either.
func TestWildWallsNeverPanic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := someWalls(t)
		for range rapid.IntRange(0, 3).Draw(t, "how many") {
			at := rapid.SampledFrom(wallLengths(&d)).Draw(t, "which")
			*at = measure.Length(rapid.OneOf(
				rapid.SampledFrom([]float64{0, -1, 1e-9, 1, 20, 1e9, math.Inf(1), math.Inf(-1), math.NaN()}),
				rapid.Float64Range(-50, 600),
			).Draw(t, "length"))
		}
		p := model.Derive(d)
		whole := len(p.Parts) > 0
		for _, q := range p.Parts {
			if q.Solid == nil {
				whole = false
				continue
			}
			if err := q.Solid.Check(); err != nil {
				t.Fatalf("%s: %v", q.ID, err)
			}
		}
		if !whole && !p.Stopped() {
			t.Fatal("a part has no solid and nothing stops the piece")
		}
		for _, f := range p.Findings {
			if f.ID == "" || f.Text == "" || f.Source == "" || len(f.Sizes) == 0 {
				t.Fatalf("half a finding: %+v", f)
			}
		}
	})
}

// someWalls is a piece of walls with everything that it can have.
func someWalls(t *rapid.T) form.Design {
	angle := func(name string) measure.Angle {
		return measure.Angle(rapid.Float64Range(-100, 100).Draw(t, name)) * measure.Degree
	}
	gentle := func(name string) measure.Angle {
		return measure.Angle(rapid.Float64Range(-8, 20).Draw(t, name)) * measure.Degree
	}
	if rapid.IntRange(0, 3).Draw(t, "mild") > 0 {
		angle = gentle
	}
	depth, clearance, lap := measure.Length(6), measure.Length(0.5), measure.Length(5)
	screws := &form.Screws{Gauge: 8, Length: 32, Count: 2, FromEnd: 20, Counterbore: 4}
	d := form.Design{
		Title: "Wild", Form: rapid.SampledFrom([]string{"tray", "chest", "ring"}).Draw(t, "form"), Timber: "white oak",
		Size:   form.Size{Height: 160, Width: 500, Depth: 350, Staves: rapid.IntRange(2, 17).Draw(t, "staves")},
		Splay:  form.Splay{Ends: angle("ends"), Front: angle("front")},
		Boards: form.Boards{Side: form.Board{Thickness: 16}},
		Corners: form.Corners{
			Joint:   rapid.SampledFrom(append(form.WallJoints(), "glue")).Draw(t, "joint"),
			Over:    rapid.SampledFrom([]string{"", "front", "end", "lid"}).Draw(t, "over"),
			TailsOn: rapid.SampledFrom([]string{"", "front", "end", "top"}).Draw(t, "tails on"),
			Screws:  rapid.SampledFrom([]*form.Screws{nil, screws}).Draw(t, "corner screws"),
		},
		Bottom: &form.Bottom{
			Thickness: 10, Joint: rapid.SampledFrom([]string{"", "groove", "rabbet", "screwed on", "nailed"}).Draw(t, "bottom"),
			Up: rapid.SampledFrom([]measure.Length{0, 22}).Draw(t, "up"), Depth: &depth, Clearance: &clearance, Screws: screws,
		},
		Features: []form.Feature{
			{On: "all", Kind: "round-over", Radius: 2},
			{On: rapid.SampledFrom([]string{"front", "end", "stave", "bottom", "lid"}).Draw(t, "on"), Kind: "hole", Diameter: 20},
			{On: "front", Kind: "arch", Width: 120, Rise: 15},
		},
	}
	if d.Corners.Joint == form.HalfBlindDovetail {
		d.Corners.Lap = &lap
	}
	d.Splay.EdgeCut = rapid.SampledFrom([]form.EdgeCut{"", form.EdgeLevel, form.EdgeSquare}).Draw(t, "edge cut")
	if d.Form == "chest" {
		screws := &form.Screws{Gauge: 6, Length: 25, Count: 2, FromEnd: 20}
		d.Lid = &form.Lid{Thickness: 16, Overhang: 8, Battens: &form.Battens{Width: 40, Thickness: 16, Inset: 3, Count: 2, Screws: screws}}
	}
	return d
}

// wallLengths are sizes that a person can get wrong.
func wallLengths(d *form.Design) []*measure.Length {
	out := []*measure.Length{
		&d.Size.Height, &d.Size.Width, &d.Size.Depth, &d.Boards.Side.Thickness, &d.Boards.Front.Thickness, &d.Boards.End.Thickness,
		&d.Corners.Overhang, &d.Bottom.Thickness, &d.Bottom.Up, d.Bottom.Depth, d.Bottom.Clearance, &d.Features[0].Radius,
		&d.Features[1].Diameter, &d.Features[1].X, &d.Features[2].Width, &d.Features[2].Rise,
	}
	if d.Lid != nil {
		out = append(out, &d.Lid.Thickness, &d.Lid.Overhang, &d.Lid.Battens.Width, &d.Lid.Battens.Thickness, &d.Lid.Battens.Inset)
	}
	return out
}
