package table

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// How the lines of pins run on the end that they are marked on, measured on the corners of the solid: of the joint,
// and in words where the ends of walls slant.
func TestPinEndsAsTheSolidStands(t *testing.T) {
	measured, ways, tails := map[string]int{}, map[string]int{}, 0
	for seed := range uint64(300) {
		d := formtest.Random(seed)
		d.Corners.Joint, d.Features, d.Bottom, d.Lid = form.ThroughDovetail, nil, nil, nil
		p := form.Build(d)
		if p.Stopped() {
			continue
		}
		for _, j := range p.Joints {
			q := p.Part(j.PinBoard)
			both := slices.ContainsFunc(p.Joints, func(k joint.Joint) bool { return k.TailBoard == j.PinBoard }) // tails at its other end
			if len(j.Tails) == 0 || q.Solid == nil || both {
				continue
			}
			up := mgl64.TransformNormal(j.Corner, part.Back(q.Place))
			outer, inner := endCorners(q, up, 2*len(j.Tails)+2)
			if outer == nil {
				continue
			}
			measured[d.Form]++
			if outer, inner := endCorners(p.Part(j.TailBoard), mgl64.TransformNormal(j.Corner, part.Back(p.Part(j.TailBoard).Place)), 2*len(j.Tails)); outer != nil {
				up := outer[len(outer)-1].Sub(outer[0]).Normalize()
				for i := range outer {
					way := inner[i].Sub(outer[i])
					if got := math.Asin(way.Dot(up) / way.Len()); math.Abs(got-j.TailEnd.Radians()) > 1e-6 {
						t.Errorf("seed %d, %s of a %s: lines across the tails %.4f°, the solid runs %.4f°", seed, j.ID, d.Form, j.TailEnd.Degrees(), got*180/math.Pi)
					}
				}
				tails++
			}
			lower, upper := PinSides(j)
			for i, want := range []measure.Angle{j.PinEnd, -j.BackPinEnd} {
				way := inner[1+i].Sub(outer[1+i])
				rise := way.Dot(up)
				got := math.Atan2(rise, way.Sub(up.Mul(rise)).Len())
				if math.Abs(got-want.Radians()) > 1e-6 {
					t.Errorf("seed %d, %s of a %s, line %d: %.4f°, the solid runs %.4f°", seed, j.ID, d.Form, i, want.Degrees(), got*180/math.Pi)
				}
				if form.OnSides(d.Form) || straight(want) {
					continue
				}
				side, word := []PinSide{lower, upper}[i], "falling"
				if rise > 0 {
					word = "rising"
				}
				ways[word]++
				if math.Abs(side.Angle.Radians()-math.Abs(got)) > 1e-6 || !strings.HasPrefix(side.Way, word) {
					t.Errorf("seed %d, %s: %.4f° %s, the solid runs %.4f°", seed, j.ID, side.Angle.Degrees(), side.Way, got*180/math.Pi)
				}
			}
		}
	}
	for _, f := range []string{"stool", "steps", "tray", "chest", "ring"} {
		if measured[f] < 5 {
			t.Errorf("%d joints of the form %s were measured", measured[f], f)
		}
	}
	if tails < 20 {
		t.Errorf("%d ends with tails were measured", tails)
	}
	if ways["rising"] < 5 || ways["falling"] < 5 {
		t.Errorf("measured %v", ways)
	}
}

// endCorners are the corners of a board on an end with so many of them, on the outer and on the inner face, along a
// direction.
func endCorners(q *part.Part, up mgl64.Vec3, n int) (outer, inner []mgl64.Vec3) {
	for _, c := range q.Cuts {
		on := func(z float64) (out []mgl64.Vec3) {
			for _, v := range q.Solid.Vertices {
				if math.Abs(v.Z()-z) < 1e-6 && math.Abs(c.Normal.Dot(v)-c.Offset) < 1e-6 {
					out = append(out, v)
				}
			}
			slices.SortFunc(out, func(a, b mgl64.Vec3) int { return int(math.Copysign(1, a.Dot(up)-b.Dot(up))) })
			return out
		}
		outer, inner = on(0), on(-q.Blank.Thickness.MM())
		if c.Kind == part.Crosscut && len(outer) == n && len(inner) == n &&
			outer[n-1].Sub(outer[0]).Cross(up).Len() < 1e-6 { // the other end slants the other way
			return outer, inner
		}
	}
	return nil, nil
}
