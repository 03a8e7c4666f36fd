package form_test

import (
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// withBottom adds a random bottom to random walls.
func withBottom(t *rapid.T, joints []string, kinds ...string) form.Design {
	d := anyWalls(t, joints...)
	u := &form.Bottom{Joint: rapid.SampledFrom(kinds).Draw(t, "bottom")}
	u.Thickness = measure.Length(rapid.Float64Range(3, 20).Draw(t, "bottom thickness"))
	if u.Joint == form.InGroove {
		u.Up = measure.Length(rapid.Float64Range(4, 20).Draw(t, "up"))
	}
	if u.Joint != form.ScrewedOn {
		depth := measure.Length(rapid.Float64Range(2, 5).Draw(t, "depth"))
		clearance := measure.Length(rapid.Float64Range(0, 1).Draw(t, "clearance"))
		u.Depth, u.Clearance = &depth, &clearance
	}
	d.Bottom = u
	return d
}

// layer is the volume inside the inner faces moved out by extra (square to them) between two heights.
func layer(d form.Design, from, to, extra float64) float64 {
	area := func(z float64) float64 { return sectionAt(d, z, 1, extra) }
	return (to - from) / 6 * (area(from) + 4*area((from+to)/2) + area(to))
}

// Mitred walls with a bottom in grooves: what is left of the walls and the bottom add up, and the
// bottom clears its grooves by what was typed.
func TestBottomsInMitredWalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := withBottom(t, []string{form.Mitre, form.SplinedMitre, form.KeyedMitre}, form.InGroove, form.InRabbet)
		// Walls of one thickness: of two, the grooves' floors meet beside the mitre.
		d.Boards.Front, d.Boards.End = d.Boards.Side, d.Boards.Side
		p := walled(t, d)
		u := d.Bottom
		low, high := u.Up.MM(), (u.Up + u.Thickness).MM()
		hollow := layer(d, low, high, u.Depth.MM()) - layer(d, low, high, 0)
		bottom := layer(d, low, high, (*u.Depth - *u.Clearance).MM())
		walls := 0.0
		for _, q := range p.Parts {
			if q.ID != "bottom" {
				walls += q.Volume
			}
		}
		want := between(d, d.Size.Height.MM())
		if s := p.Design.Corners.Spline; s != nil { // a millimetre short over the bottom's groove
			hollow += float64(len(p.Joints)/2) * s.Width.MM() * s.Thickness.MM()
		}
		near(t, "walls", walls, want-hollow, 1e-9*want)
		near(t, "bottom", p.Part("bottom").Volume, bottom, 1e-9*bottom)
	})
}

// In other corners the grooves stop and the bottom is notched: nothing of it lies in a wall's wood,
// and no groove shows outside.
func TestStoppedGrooves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var joints []string
		for _, j := range form.WallJoints() {
			if !strings.HasPrefix(j, form.Mitre) {
				joints = append(joints, j)
			}
		}
		p := walled(t, withBottom(t, joints, form.InGroove, form.InRabbet))
		bottom := p.Part("bottom")
		mesh, middle := bottom.Solid.Flatten(0.02), bottom.Solid.Centroid()
		for _, v := range mesh.Vertices {
			at := bottom.Place.Mul4x1(v.Add(middle.Sub(v).Mul(1e-6)).Vec4(1)).Vec3() // a hair inward
			if at[2] < 1e-5 {
				continue
			}
			for _, q := range p.Parts {
				if q != bottom && q.Solid.Contains(local(q, at.Add(mgl64.Vec3{0, 0, 1e-7}))) {
					t.Fatalf("corner %v of the bottom lies in %s", at, q.ID)
				}
			}
		}
		for _, j := range p.Joints {
			over, under := p.Part(j.TailBoard), p.Part(j.PinBoard)
			if under == bottom {
				continue
			}
			for _, c := range over.Cuts[:2] {
				away := under.Place.Col(3).Vec3().Sub(over.Place.Col(3).Vec3())
				if over.Place.Col(0).Vec3().Dot(away)*c.Normal[0] < 0 {
					continue // the other end
				}
				for _, f := range over.Solid.Faces {
					if f.Tag == p.Design.Bottom.Joint && onFace(over.Solid, f, c) {
						t.Fatalf("%s: the groove shows in the %s", over.ID, c.ID)
					}
				}
			}
		}
	})
}

// onFace tells whether a corner of the face lies in the cut.
func onFace(s *solid.Solid, f solid.Face, c part.Cut) bool {
	for _, l := range f.Loops {
		for _, h := range l {
			if c.Offset-c.Normal.Dot(s.Vertices[s.Edges[h.Edge].From]) < 1 {
				return true
			}
		}
	}
	return false
}

func TestScrewedBottomContinuesTheWalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := withBottom(t, []string{form.Mitre, form.Butt}, form.ScrewedOn)
		p := walled(t, d)
		sum := 0.0
		for _, q := range p.Parts {
			sum += q.Volume
		}
		thick := d.Bottom.Thickness.MM()
		area := func(z float64) float64 { return sectionAt(d, z, 0, 0) }
		bottom := thick / 6 * (area(0) + 4*area(thick/2) + area(thick))
		h := d.Size.Height.MM()
		walls := between(d, h) - between(d, thick)
		near(t, "volume", sum, bottom+walls, 1e-9*sum)
		near(t, "bottom", p.Part("bottom").Volume, bottom, 1e-9*bottom)
	})
}

// The screws of a bottom go up the middle of each wall.
func TestScrewsOfABottom(t *testing.T) {
	d := tray(15, 8, form.Butt)
	d.Bottom = &form.Bottom{Thickness: 10, Joint: form.ScrewedOn, Screws: &form.Screws{Gauge: 4, Length: 30, Count: 3, FromEnd: 40}}
	p := form.Build(d)
	if p.Stopped() {
		t.Fatal(p.Findings[0].Text)
	}
	if n := len(p.Part("bottom").Bores); n != 12 {
		t.Errorf("%d holes in the bottom, want 12", n)
	}
	for _, q := range p.Parts[:4] {
		n := 0
		for _, b := range q.Bores {
			if b.Purpose != "pilot" {
				continue
			}
			n++
			if math.Abs(b.Entry[2]+6) > 1e-9 || b.Axis.Sub(mgl64.Vec3{0, 1, 0}).Len() > 1e-12 || b.Face != "lower-edge" {
				t.Errorf("%s: pilot at %v along %v in the %s", q.ID, b.Entry, b.Axis, b.Face)
			}
		}
		if n != 3 {
			t.Errorf("%s: %d pilots", q.ID, n)
		}
	}
}

// Worked by hand: a plumb box 300 × 200 outside of 12 mm boards, bottom 6 thick in grooves 5 deep
// with 0.5 clearance, mitred: 300 − 24 + 2·4.5 = 285 by 185.
func TestBottomOfAPlumbBox(t *testing.T) {
	d := tray(0, 0, form.Mitre)
	d.Size = form.Size{Height: 60, Width: 300, Depth: 200}
	depth, clearance := measure.Length(5), measure.Length(0.5)
	d.Bottom = &form.Bottom{Thickness: 6, Joint: form.InGroove, Up: 8, Depth: &depth, Clearance: &clearance}
	p := form.Build(d)
	if p.Stopped() {
		t.Fatal(p.Findings[0].Text)
	}
	want := part.Box{Length: 285, Width: 185, Thickness: 6}
	if got := p.Part("bottom").Blank; math.Abs((got.Length-want.Length).MM()) > 1e-9 || math.Abs((got.Width-want.Width).MM()) > 1e-9 {
		t.Errorf("%v, want %v", got, want)
	}
}

func TestBottomsThatCannotBe(t *testing.T) {
	length := func(l measure.Length) *measure.Length { return &l }
	for _, c := range []struct {
		id string
		u  form.Bottom
		to func(*form.Design)
	}{
		{"groove-through", form.Bottom{Thickness: 6, Joint: form.InGroove, Depth: length(12)}, nil},
		{"bottom-out-of-its-groove", form.Bottom{Thickness: 6, Joint: form.InGroove, Depth: length(4), Clearance: length(4)}, nil},
		{"rabbet-up", form.Bottom{Thickness: 6, Joint: form.InRabbet, Up: 5}, nil},
		{"groove-out-of-the-wall", form.Bottom{Thickness: 6, Joint: form.InGroove, Up: 86}, nil},
		{"word-unknown", form.Bottom{Thickness: 6, Joint: "glued"}, nil},
		{"seat-not-level", form.Bottom{Thickness: 6, Joint: form.ScrewedOn}, func(d *form.Design) { d.Splay.EdgeCut = form.EdgeSquare }},
		{"size-not-above-nothing", form.Bottom{Thickness: -1, Joint: form.ScrewedOn}, nil},
	} {
		d := tray(10, 5, form.Mitre)
		u := c.u
		d.Bottom = &u
		if c.to != nil {
			c.to(&d)
		}
		p := form.Build(d)
		if len(p.Findings) == 0 || p.Findings[0].ID != c.id {
			t.Errorf("%s: findings %v", c.id, p.Findings)
		}
	}
}

// What is left out follows from the wood. A cherry bottom 10 above the floor in a tray 280 deep at its rim, 90 high, leaning 10°,
// is 280 − 2·tan 10°·(90 − 18) − 2·(14 − 5.6)/cos 10° = 237.55 wide in full grooves; in air of 30 to 65 % it is given what it grows at
// each edge, 237.55/2 · 0.00248 · (12.02 − 6.20) mm by FPL-GTR-190 Tables 4-2 and 13-5. A timber that is not in the table is given
// the usual half millimetre.
func TestClearanceFollowsFromTheTimber(t *testing.T) {
	d := form.Design{Form: "tray", Timber: "black cherry", Size: form.Size{Height: 90, Width: 420, Depth: 280},
		Splay: form.Splay{Ends: 10 * measure.Degree, Front: 10 * measure.Degree}, Boards: form.Boards{Side: form.Board{Thickness: 14}},
		Corners: form.Corners{Joint: form.Butt}, Bottom: &form.Bottom{Thickness: 8}}
	is := func(what string, want, within float64) {
		t.Helper()
		if got := form.Build(d).Design.Bottom.Clearance.MM(); math.Abs(got-want) > within {
			t.Errorf("%s: a clearance of %.4f, want %.4f", what, got, want)
		}
	}
	is("cherry", 237.55/2*0.00248*(12.02-6.20), 0.01)
	d.Timber = "driftwood"
	is("unknown", 0.5, 1e-12)
	typed := measure.Length(0.2)
	d.Bottom.Clearance, d.Timber = &typed, "black cherry"
	is("as typed", 0.2, 1e-12)
}
