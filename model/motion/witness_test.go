package motion_test

import (
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/motion"
	"splaywright/model/part"
)

// What is felt of two faces says of them what the area does that they share: all parts of random pieces, home and shifted
// in the planes in which they touch.
func TestFacesThatAreFeltShareArea(t *testing.T) {
	touch, miss := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		a, b := twoParts(t)
		if rapid.Bool().Draw(t, "shifted") {
			shift := func(name string) float64 { return rapid.Float64Range(-30, 30).Draw(t, name) }
			moved := *a
			moved.Place = mgl64.Translate3D(shift("x"), shift("y"), 0).Mul4(a.Place)
			a = &moved
		}
		got, want := motion.Contacts(a, b), motion.ContactsByArea(a, b)
		if !slices.Equal(got, want) {
			t.Fatalf("%s and %s touch along %v; by the areas that they share along %v", a.ID, b.ID, got, want)
		}
		if len(want) > 0 {
			touch++
		} else {
			miss++
		}
	})
	if touch < 5 || miss < 5 {
		t.Errorf("%d touched, %d did not", touch, miss)
	}
}

// Where a plane between two parts shows that a motion is free, looking along the way shows it too.
func TestReceding(t *testing.T) {
	recede, not := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		a, b := twoParts(t)
		axis := func(name string) float64 { return float64(rapid.IntRange(-2, 2).Draw(t, name)) }
		way := mgl64.Vec3{axis("x"), axis("y"), axis("z")}
		if way.Len() == 0 {
			t.Skip("no way")
		}
		if way = way.Normalize(); !motion.Recedes(a, b, way) {
			not++
			return
		}
		recede++
		if !motion.LooksClear(a, b, way) {
			t.Fatalf("%s moves away from %s along %.4v and strikes it", a.ID, b.ID, way)
		}
	})
	if recede < 5 || not < 5 {
		t.Errorf("%d receded, %d did not", recede, not)
	}
}

func twoParts(t *rapid.T) (a, b *part.Part) {
	p := form.Build(formtest.Random(rapid.Uint64().Draw(t, "piece")))
	if p.Stopped() || len(p.Parts) < 2 {
		t.Skip("stopped")
	}
	i := rapid.IntRange(0, len(p.Parts)-1).Draw(t, "one")
	j := rapid.IntRange(0, len(p.Parts)-2).Draw(t, "other")
	if j >= i {
		j++
	}
	if a, b = p.Parts[i], p.Parts[j]; a.Solid == nil || b.Solid == nil {
		t.Skip("no solid")
	}
	return a, b
}
