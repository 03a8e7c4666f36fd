package solid

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"
)

// boxSlot is a box between lo and hi in a frame turned by a lean about y and a turn about z; its walls look inward.
func boxSlot(tag string, at mgl64.Mat4, lo, hi mgl64.Vec3) Slot {
	s := Slot{Tag: tag}
	for k := range 3 {
		var n mgl64.Vec3
		n[k] = 1
		for _, p := range []Plane{{n, lo[k]}, {n.Mul(-1), -hi[k]}} {
			s.Walls = append(s.Walls, Wall{Plane: p.Transform(at)})
		}
	}
	return s
}

// taken is what a slot takes out of a plain block, by half-spaces.
func takenBy(s Slot, thick float64, outline Loop) float64 {
	h := HalfSpaces{{mgl64.Vec3{0, 0, 1}, 0}, {mgl64.Vec3{0, 0, -1}, thick}}
	for _, w := range outline {
		h = append(h, w.Plane)
	}
	for _, w := range s.Walls {
		h = append(h, Plane{w.Plane.N.Mul(-1), -w.Plane.D})
	}
	return h.Volume()
}

// Slots as joints ask for them, each with the volume, faces and corners counted by hand.
func TestSlots(t *testing.T) {
	const l, w, thick = 200, 80, 20
	here := mgl64.Ident4()
	for _, c := range []struct {
		name                   string
		slot                   Slot
		taken                  float64
		faces, vertices, genus int
	}{
		{"groove in the end, through", boxSlot("g", here, mgl64.Vec3{94, -50, -12}, mgl64.Vec3{120, 50, -8}), 6 * 80 * 4, 10, 16, 0},
		{"groove in the end, stopped", boxSlot("g", here, mgl64.Vec3{94, -50, -12}, mgl64.Vec3{120, 20, -8}), 6 * 60 * 4, 10, 16, 0},
		{"groove in the end, stopped both ways", boxSlot("g", here, mgl64.Vec3{94, -20, -12}, mgl64.Vec3{120, 20, -8}), 6 * 40 * 4, 11, 16, 0},
		{"mortise through", boxSlot("g", here, mgl64.Vec3{10, -20, -30}, mgl64.Vec3{40, 20, 5}), 30 * 40 * 20, 10, 16, 1},
		{"notch in a corner", boxSlot("g", here, mgl64.Vec3{90, 30, -30}, mgl64.Vec3{120, 60, 5}), 10 * 10 * 20, 8, 12, 0},
		{"step in the outer face, from edge to edge", boxSlot("g", here, mgl64.Vec3{80, -60, -5}, mgl64.Vec3{120, 60, 5}), 20 * 80 * 5, 8, 12, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			out := block(l, w, 0, 0)
			s := build(t, Board{Thickness: thick, Outline: out, Slots: []Slot{c.slot}})
			near(t, "taken", l*w*thick-s.Volume(), c.taken, 1e-11)
			near(t, "by half-spaces", takenBy(c.slot, thick, out), c.taken, 1e-11)
			if len(s.Faces) != c.faces || len(s.Vertices) != c.vertices || s.Genus() != c.genus {
				t.Errorf("%d faces, %d vertices, genus %d", len(s.Faces), len(s.Vertices), s.Genus())
			}
		})
	}
}

// A slot lying anyhow takes out what half-spaces say, and the boundary closes.
func TestAnySlot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		const thick = 20
		out := block(f("l", 100, 300), f("w", 60, 120), f("ends", -0.6, 0.6), f("edges", -0.5, 0.5))
		at := mgl64.Translate3D(f("x", -100, 100), f("y", -60, 60), f("z", -20, 0)).
			Mul4(mgl64.HomogRotate3DZ(f("turn", 0.1, 3))).Mul4(mgl64.HomogRotate3DX(f("lean", 0.1, 3)))
		half := mgl64.Vec3{f("a", 2, 60), f("b", 2, 40), f("c", 1, 15)}
		slot := boxSlot("slot", at, half.Mul(-1), half)
		b := Board{Thickness: thick, Outline: out}
		plain, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		taken := takenBy(slot, thick, out)
		b.Slots = []Slot{slot}
		s, err := b.Build()
		if err != nil {
			if taken > 1 && !isCutInTwo(err) {
				t.Fatalf("%v, where %g mm³ are taken", err, taken)
			}
			return
		}
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
		if d := plain.Volume() - s.Volume() - taken; math.Abs(d) > 1e-9*plain.Volume() {
			t.Fatalf("took %g mm³ where half-spaces say %g", plain.Volume()-s.Volume(), taken)
		}
	})
}

func isCutInTwo(err error) bool {
	e, ok := err.(*BuildError)
	return ok && (e.Reason == "the slot cuts the board in two, or lies inside it all round" ||
		e.Reason == "the slot meets none of the faces of the board")
}

// Slots that no board can have are refused, each with the reason.
func TestSlotsRefused(t *testing.T) {
	here := mgl64.Ident4()
	hole := Loop{{Tag: "hole", Round: &Cylinder{Point: mgl64.Vec3{95, 0, 0}, Axis: mgl64.Vec3{0, 0, 1}, Radius: 4, Hollow: true}}}
	for name, c := range map[string]struct {
		slot Slot
		open []Loop
		says string
	}{
		"beside the board":  {boxSlot("g", here, mgl64.Vec3{300, -5, -15}, mgl64.Vec3{320, 5, -5}), nil, "g: the slot meets none of the faces of the board"},
		"inside it":         {boxSlot("g", here, mgl64.Vec3{0, -5, -15}, mgl64.Vec3{20, 5, -5}), nil, "g: the slot meets none of the faces of the board"},
		"right across":      {boxSlot("g", here, mgl64.Vec3{0, -60, -25}, mgl64.Vec3{20, 60, 5}), nil, "g: the slot cuts the board in two, or lies inside it all round"},
		"through a hole":    {boxSlot("g", here, mgl64.Vec3{92, -50, -12}, mgl64.Vec3{120, 50, -8}), []Loop{hole}, "g, hole: the slot runs into a round wall"},
		"across hole's rim": {boxSlot("g", here, mgl64.Vec3{92, -50, -5}, mgl64.Vec3{120, 50, 5}), []Loop{hole}, "g, outer face: the slot runs into a round wall"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Board{Thickness: 20, Outline: block(200, 80, 0, 0), Openings: c.open, Slots: []Slot{c.slot}}.Build()
			if err == nil || err.Error() != c.says {
				t.Errorf("got %v, want %q", err, c.says)
			}
		})
	}
}

// A wide slot, askew, that leaves a corner of the board on either side of it.
func TestSlotThatLeavesTwoCorners(t *testing.T) {
	askew := mgl64.Translate3D(1, 1, -4.25).Mul4(mgl64.HomogRotate3DZ(1)).Mul4(mgl64.HomogRotate3DX(3))
	half := mgl64.Vec3{60, 27.5, 15}
	_, err := Board{Thickness: 20, Outline: block(100, 60, 0.125, 0.25), Slots: []Slot{boxSlot("g", askew, half.Mul(-1), half)}}.Build()
	if !isCutInTwo(err) {
		t.Errorf("got %v", err)
	}
}

func BenchmarkSlotInTheEnd(b *testing.B) {
	slot := boxSlot("g", mgl64.Ident4(), mgl64.Vec3{94, -50, -12}, mgl64.Vec3{120, 50, -8})
	board := Board{Thickness: 20, Outline: block(200, 80, 0, 0), Slots: []Slot{slot}}
	for b.Loop() {
		if _, err := board.Build(); err != nil {
			b.Fatal(err)
		}
	}
}
