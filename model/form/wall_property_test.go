package form_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// anyWalls is a random tray, chest or ring; joints as given.
func anyWalls(t *rapid.T, joints ...string) form.Design {
	length := func(name string, lo, hi float64) measure.Length {
		return measure.Length(rapid.Float64Range(lo, hi).Draw(t, name))
	}
	lean := func(name string) measure.Angle {
		a := rapid.Float64Range(-20, 35).Draw(t, name)
		if math.Abs(a) < 0.001 {
			a = 0 // so little stands upright
		}
		return measure.Angle(a) * measure.Degree
	}
	d := form.Design{
		Title: "Random", Form: rapid.SampledFrom(form.WallForms()).Draw(t, "form"), Timber: "white oak",
		Size: form.Size{Height: length("height", 60, 300), Width: length("width", 400, 900)},
	}
	d.Size.TakenAt = rapid.SampledFrom([]form.TakenAt{form.AtTop, form.AtFloor}).Draw(t, "taken at")
	d.Boards.Side.Thickness = length("side", 6, 30)
	d.Splay.Ends = lean("ends")
	d.Corners.Joint = rapid.SampledFrom(joints).Draw(t, "joint")
	if d.Form == "ring" {
		d.Size.Staves = rapid.IntRange(3, 16).Draw(t, "staves")
		return d
	}
	d.Size.Depth = length("depth", 400, 900)
	d.Splay.Front = lean("front")
	d.Boards.Front.Thickness, d.Boards.End.Thickness = length("front", 6, 30), length("end", 6, 30)
	d.Corners.Over = rapid.SampledFrom([]string{form.OnFront, form.OnEnd}).Draw(t, "over")
	if rapid.Bool().Draw(t, "one unlike") {
		back := lean("back")
		d.Splay.Back = &back
	}
	return d
}

// walled builds the design, or skips what leaves no room.
func walled(t *rapid.T, d form.Design) *form.Piece {
	p := form.Build(d)
	for _, f := range p.Findings {
		switch f.ID {
		case "walls-meet", "tail-comes-to-a-point", "tails-cannot-fit", "corners-meet-in-a-board", "spline-without-room", "keys-without-room", "shoulder-without-room", "notch-without-room", "hollows-meet":
			t.Skip(f.Text)
		}
	}
	if p.Stopped() {
		t.Fatalf("stopped: %s", p.Findings[0].Text)
	}
	return p
}

// between is the volume between the outer and the inner faces of the walls from the floor to a
// height. Every horizontal section is a polygon whose sides move evenly with the height, so that
// Simpson's rule is exact.
func between(d form.Design, height float64) float64 {
	area := func(z, in float64) float64 { return sectionArea(d, z, in) }
	sum := 0.0
	for _, in := range []float64{0, 1} {
		v := height / 6 * (area(0, in) + 4*area(height/2, in) + area(height, in))
		sum += v * (1 - 2*in)
	}
	return sum
}

// sectionArea is the area inside the outer (in = 0) or inner (in = 1) faces at a height.
func sectionArea(d form.Design, z, in float64) float64 { return sectionAt(d, z, in, 0) }

// sectionAt is the same with the faces moved out by extra, square to them.
func sectionAt(d form.Design, z, in, extra float64) float64 {
	outward := 1.0
	if d.Form == "chest" {
		outward = -1
	}
	from := d.Size.Height.MM()
	if d.Size.TakenAt == form.AtFloor {
		from = 0
	}
	reach := func(half measure.Length, lean measure.Angle, thick measure.Length) float64 {
		a := outward * lean.Radians()
		return half.MM()/2 + (z-from)*math.Tan(a) - (in*thick.MM()-extra)/math.Cos(a)
	}
	if d.Form == "ring" {
		n := float64(d.Size.Staves)
		r := reach(d.Size.Width, d.Splay.Ends, d.Boards.Side.Thickness)
		return n * r * r * math.Tan(math.Pi/n)
	}
	back := d.Splay.Front
	if d.Splay.Back != nil {
		back = *d.Splay.Back
	}
	backBoard := d.Boards.Back.Thickness
	if backBoard == 0 {
		backBoard = d.Boards.Side.Thickness
	}
	depth := reach(d.Size.Depth, d.Splay.Front, d.Boards.Front.Thickness) + reach(d.Size.Depth, back, backBoard)
	return depth * 2 * reach(d.Size.Width, d.Splay.Ends, d.Boards.End.Thickness)
}

// Whatever the corners, the walls fill the room between their outer and inner faces: nothing
// overlaps and nothing is missing.
func TestWallsFillWhatTheyStandIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyWalls(t, form.WallJoints()...)
		p := walled(t, d)
		sum := 0.0
		for _, q := range p.Parts {
			sum += q.Volume
		}
		want := between(d, d.Size.Height.MM())
		near(t, "volume", sum, want, 1e-9*want)
	})
}

func TestWallSolidsAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := walled(t, anyWalls(t, form.WallJoints()...))
		for _, q := range p.Parts {
			if err := q.Solid.Check(); err != nil {
				t.Fatalf("%s: %v", q.ID, err)
			}
			near(t, q.ID+" normals", q.Solid.AreaNormalSum().Len(), 0, 1e-12*q.Solid.Area())
			lo, hi := q.Solid.Bounds()
			near(t, q.ID+" length", q.Blank.Length.MM(), hi[0]-lo[0], lengthNoise)
			near(t, q.ID+" width", q.Blank.Width.MM(), hi[1]-lo[1], lengthNoise)
		}
	})
}

// What was resolved builds the same piece again.
func TestResolvedWallsBuildTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := walled(t, anyWalls(t, form.WallJoints()...))
		q := form.Build(p.Design)
		if q.Stopped() {
			t.Fatalf("stopped: %s", q.Findings[0].Text)
		}
		for i, was := range p.Parts {
			near(t, was.ID, q.Parts[i].Volume, was.Volume, 1e-9*was.Volume)
		}
	})
}

// The leans typed are the leans of the boards, and the sizes typed are found where they are taken.
func TestWallsStandAsTyped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyWalls(t, form.Mitre)
		p := walled(t, d)
		outward := 1.0
		if d.Form == "chest" {
			outward = -1
		}
		n := p.Parts[1].Place.Col(2).Vec3()
		near(t, "lean", math.Asin(-n[2]), outward*d.Splay.Ends.Radians(), angleNoise)
		if d.Form == "ring" {
			return
		}
		w, depth := p.Overall.WidthTop, p.Overall.DepthTop
		if d.Size.TakenAt == form.AtFloor {
			w, depth = p.Overall.WidthFloor, p.Overall.DepthFloor
		}
		near(t, "width", w.MM(), d.Size.Width.MM(), lengthNoise)
		near(t, "depth", depth.MM(), d.Size.Depth.MM(), lengthNoise)
	})
}
