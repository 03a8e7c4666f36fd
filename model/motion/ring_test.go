package motion_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/motion"
	"splaywright/model/part"
	"splaywright/model/solid"
)

func ring(staves int, joint string, lean float64, bottom string) form.Design {
	d := form.Design{Form: "ring", Timber: "white oak", Size: form.Size{Height: 120, Width: 400, Staves: staves},
		Boards: form.Boards{Side: form.Board{Thickness: 16}}, Corners: form.Corners{Joint: joint}}
	d.Splay.Ends = measure.Angle(lean) * measure.Degree
	if bottom != "" {
		d.Bottom = &form.Bottom{Thickness: 8, Joint: bottom}
	}
	return d
}

func assembled(t testing.TB, d form.Design) *form.Piece {
	t.Helper()
	p := form.Build(d)
	if p.Stopped() {
		t.Fatalf("%d %s: %s", d.Size.Staves, d.Corners.Joint, p.Findings[0].Text)
	}
	p.Assembly = motion.Assemble(p)
	return p
}

// A ring of any number of staves, odd or even, goes together in every joint, with a bottom in grooves and without; where
// parts move all at once, no two share wood at any of several stations: overlaps of the solids themselves.
func TestRingsGoTogether(t *testing.T) {
	atOnce := 0
	for n := 3; n <= 6; n++ {
		for _, joint := range form.WallJoints() {
			for _, bottom := range []string{"", form.InGroove} {
				for _, lean := range []float64{-8, 8} {
					p := assembled(t, ring(n, joint, lean, bottom))
					if len(p.Assembly.Stuck) > 0 {
						t.Errorf("%d staves, %s, lean %g, bottom %q: stuck", n, joint, lean, bottom)
					}
					for _, m := range p.Assembly.Moves {
						if m.AtOnce() && n < 5 {
							atOnce++
							sharesNone(t, p, m)
						}
					}
				}
			}
		}
	}
	if atOnce < 8 {
		t.Errorf("only %d moves of all at once", atOnce)
	}
}

func sharesNone(t *testing.T, p *form.Piece, m form.Move) {
	t.Helper()
	place := func(id string, back float64) mgl64.Mat4 {
		for i, moving := range m.Parts {
			if moving == id {
				return mgl64.Translate3D(m.Ways[i].Mul(-back).Elem()).Mul4(p.Part(id).Place)
			}
		}
		return p.Part(id).Place
	}
	all := append(append([]string{}, m.Parts...), m.Onto...)
	for i, a := range all {
		wood := p.Part(a).Solid.Blocks(solid.Flattening)
		for _, b := range all[:i] {
			other := p.Part(b).Solid.Blocks(solid.Flattening)
			for _, back := range []float64{0.3, 3, 9, 25} {
				v, err := wood.Overlap(other, part.Back(place(a, back)).Mul4(place(b, back)))
				if err != nil || v > 0.01 {
					t.Errorf("%s, %d staves, lean %g: %g mm from home %s and %s share %.3f mm³ (%v)", p.Design.Corners.Joint, p.Design.Size.Staves, p.Design.Splay.Ends.Degrees(), back, a, b, v, err)
				}
			}
		}
	}
}

// Staves with tails at one end and pins at the other close all together, each along its neighbour's grain. In closed
// form: the speeds that keep every tail in the next stave's grain are 1 along a stave's own grain to cot(180/n) outward.
func TestOddRingsCloseAllTogether(t *testing.T) {
	for _, n := range []int{3, 5, 7} {
		p := assembled(t, ring(n, form.ThroughDovetail, 0, ""))
		if len(p.Assembly.Stuck) > 0 {
			t.Fatalf("%d: stuck", n)
		}
		for _, j := range p.Joints {
			tail, pin := p.Part(j.TailBoard).Place.Col(0).Vec3(), p.Part(j.PinBoard).Place.Col(0).Vec3()
			way := func(grain mgl64.Vec3) mgl64.Vec3 { // to the right and outward
				out := mgl64.Vec3{grain[1], -grain[0], 0}
				return grain.Add(out.Mul(1 / math.Tan(math.Pi/float64(n))))
			}
			if off := way(tail).Sub(way(pin)).Cross(j.Slides).Len(); off > 1e-9 {
				t.Errorf("%d staves, %s: %g across the pin board's grain", n, j.ID, off)
			}
		}
	}
}

// Where a bottom locks its ring the finding says what was tried and does: the clearance, another bottom, other corners;
// each one does, and a tenth less of the clearance does not.
func TestALockedBottomSaysWhatWouldDo(t *testing.T) {
	d := ring(3, form.ThroughDovetail, 8, form.InRabbet)
	p := assembled(t, d)
	f, stuck := motion.Finding(p)
	if !stuck {
		t.Fatal("a bottom that fits tight in its rabbets goes in")
	}
	var room float64
	at := strings.Index(f.Text, "A clearance of ")
	if at < 0 {
		t.Fatalf("no clearance is told: %s", f.Text)
	}
	if _, err := fmt.Sscanf(f.Text[at:], "A clearance of %f mm", &room); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		room  float64
		stuck bool
	}{{room, false}, {room - 0.5, true}} {
		l := measure.Length(c.room)
		d.Bottom.Clearance = &l
		if q := assembled(t, d); len(q.Assembly.Stuck) > 0 != c.stuck {
			t.Errorf("a clearance of %g mm: stuck %v", c.room, !c.stuck)
		}
	}
	for _, words := range []string{"through dovetail corners", "bottom.joint: screwed on", "With these corners they go together: finger joint, butt, housing."} {
		if !strings.Contains(f.Text, words) {
			t.Errorf("%q is not in: %s", words, f.Text)
		}
	}
}
