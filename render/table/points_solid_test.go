package table

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/part"
)

// Every length of the table, measured once more on the solid: boards that nothing is cut out of are hexahedra, so
// their arrises run from corner to corner, and the middle of a face is half of its two arrises together.
func TestPointsAreMeasuredOnTheSolid(t *testing.T) {
	measured := map[string]int{}
	for seed := range uint64(400) {
		d := formtest.Random(seed)
		d.Features, d.Bottom, d.Lid = nil, nil, nil
		d.Corners.Joint = form.Butt
		if !form.OnSides(d.Form) && seed%2 == 0 {
			d.Corners.Joint = form.Mitre
		}
		for i := range d.Stretchers {
			d.Stretchers[i].Joint = form.Butt
		}
		if d.Aprons != nil {
			d.Aprons.Joint = form.Butt
		}
		p := form.Build(d)
		if p.Stopped() {
			continue
		}
		tb := Points(p, metric)
		for i, ref := range tb.Refs {
			q := p.Part(ref)
			outer, inner := arrises(q, 0), arrises(q, -q.Blank.Thickness.MM())
			if outer == nil || inner == nil {
				continue
			}
			measured[d.Form]++
			all := append(slices.Clone(outer), inner...)
			for head, want := range map[string]float64{
				"Long point": slices.Max(all), "Short point": slices.Min(all),
				"Middle, outer face": (outer[0] + outer[1]) / 2, "Middle, inner face": (inner[0] + inner[1]) / 2,
			} {
				if got := *cell(t, tb, i, head).Number; math.Abs(got-want) > 1e-6 {
					t.Fatalf("seed %d, %s of a %s: %s %.4f, the solid measures %.4f", seed, ref, d.Form, head, got, want)
				}
			}
		}
	}
	for _, f := range []string{"stool", "steps", "tray", "chest", "ring"} {
		if measured[f] < 10 {
			t.Errorf("%d boards of the form %s were measured", measured[f], f)
		}
	}
}

// arrises are the lengths of a face's two long arrises; nil where it has not four corners.
func arrises(q *part.Part, z float64) []float64 {
	var at []mgl64.Vec3
	for _, v := range q.Solid.Vertices {
		if math.Abs(v.Z()-z) < 1e-6 {
			at = append(at, v)
		}
	}
	if len(at) != 4 {
		return nil
	}
	slices.SortFunc(at, func(a, b mgl64.Vec3) int {
		if a.Y() < b.Y() {
			return -1
		}
		return 1
	})
	return []float64{at[0].Sub(at[1]).Len(), at[2].Sub(at[3]).Len()}
}

// Between shoulders is how far the receiving boards' inner faces stand apart along the middle of the housed board's
// outer face, as they stand in the world.
func TestShouldersAreAsFarApartAsTheSides(t *testing.T) {
	measured := 0
	for seed := range uint64(400) {
		d := formtest.Random(seed)
		if d.Form != "stool" || len(d.Stretchers) == 0 && d.Aprons == nil {
			continue
		}
		d.Features = nil
		for i := range d.Stretchers {
			d.Stretchers[i].Joint = []string{form.Housing, form.ThroughTenon, form.HousedTenon}[seed%3]
		}
		if d.Aprons != nil {
			d.Aprons.Joint = form.Housing
		}
		p := form.Build(d)
		if p.Stopped() {
			continue
		}
		tb := Points(p, metric)
		for i, ref := range tb.Refs {
			c, q := cell(t, tb, i, "Between shoulders"), p.Part(ref)
			if c.Number == nil {
				if strings.HasPrefix(ref, "stretcher-") {
					t.Errorf("seed %d, %s: nothing between shoulders", seed, ref)
				}
				continue
			}
			y, n := 0.0, 0.0
			for _, v := range q.Solid.Vertices {
				if math.Abs(v.Z()) < 1e-6 {
					y, n = y+v.Y(), n+1
				}
			}
			if n != 4 {
				continue
			}
			measured++
			from, way := mgl64.TransformCoordinate(mgl64.Vec3{0, y / n, 0}, q.Place), mgl64.TransformNormal(mgl64.Vec3{1, 0, 0}, q.Place)
			var at [2]float64
			for k, id := range []string{"side-left", "side-right"} {
				side := p.Part(id)
				normal := mgl64.TransformNormal(mgl64.Vec3{0, 0, 1}, side.Place)
				on := mgl64.TransformCoordinate(mgl64.Vec3{0, 0, -side.Blank.Thickness.MM()}, side.Place)
				at[k] = on.Sub(from).Dot(normal) / way.Dot(normal)
			}
			if want := math.Abs(at[1] - at[0]); math.Abs(*c.Number-want) > 1e-6 {
				t.Errorf("seed %d, %s: %.4f between shoulders, the sides stand %.4f apart", seed, ref, *c.Number, want)
			}
		}
	}
	if measured < 20 {
		t.Errorf("%d housed boards were measured", measured)
	}
}
