package view

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

func TestDirectionsAreRightHanded(t *testing.T) {
	for _, d := range []Direction{Front, Back, End, Left, Top, Bottom, Isometric, Pictorial(33, 21),
		Square("face", mgl64.Vec3{2, -1, 5}, mgl64.Vec3{0, 1, 0})} {
		if gap := d.Right.Cross(d.Up).Sub(d.Toward).Len(); gap > 1e-15 && gap > 4e-16*8 {
			t.Errorf("%s: right × up misses toward by %g", d.Name, gap)
		}
		if math.Abs(d.Right.Len()-1) > 1e-15 || math.Abs(d.Up.Len()-1) > 1e-15 {
			t.Errorf("%s: not one long", d.Name)
		}
	}
}

func TestWhereTheWorldLies(t *testing.T) {
	p := mgl64.Vec3{1, 2, 3} // right, back, up
	for _, k := range []struct {
		d    Direction
		x, y float64
	}{
		{Front, 1, 3},
		{Back, -1, 3},
		{End, 2, 3}, // from the right the back is to the right
		{Left, -2, 3},
		{Top, 1, 2},
		{Bottom, 1, -2},
	} {
		if q := k.d.Point(p); q.X != k.x || q.Y != k.y {
			t.Errorf("%s: %v, want %v %v", k.d.Name, q, k.x, k.y)
		}
	}
}

func TestIsometricShortensAllAxesAlike(t *testing.T) {
	for k := range 3 {
		var a mgl64.Vec3
		a[k] = 1
		q := Isometric.Point(a)
		if got, want := math.Hypot(q.X, q.Y), math.Sqrt(2./3); math.Abs(got-want) > 1e-15*4 {
			t.Errorf("axis %d: %v, want √(2/3)", k, got)
		}
	}
}

func TestPictorialStartsInFront(t *testing.T) {
	if d := Pictorial(0, 0); d.Toward.Sub(Front.Toward).Len() > 1e-15 || d.Up.Sub(Front.Up).Len() > 1e-15 {
		t.Errorf("got %+v", d)
	}
	if d := Pictorial(0, 90); d.Toward.Sub(Top.Toward).Len() > 1e-15 || d.Up.Sub(Top.Up).Len() > 1e-15 {
		t.Errorf("from above: %+v", d)
	}
}
