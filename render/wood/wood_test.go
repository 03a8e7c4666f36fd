package wood

import (
	"math"
	"reflect"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/timber"
	"splaywright/render/draw"
	"splaywright/render/view"
)

func TestEveryTimberHasALookOfItsOwn(t *testing.T) {
	names := map[string]bool{}
	for _, s := range timber.All() {
		names[s.Name] = true
		if _, ok := looks[s.Name]; !ok {
			t.Errorf("%s has no look", s.Name)
		}
	}
	for n := range looks {
		if !names[n] {
			t.Errorf("a look for %q, which is no timber of the table", n)
		}
	}
}

// Light enough to draw and write on: every colour is brighter than middle grey.
func TestColoursAreLight(t *testing.T) {
	for n, l := range looks {
		if y := 0.299*float64(l.ink.R) + 0.587*float64(l.ink.G) + 0.114*float64(l.ink.B); y < 128 {
			t.Errorf("%s: brightness %.0f", n, y)
		}
	}
}

// Where two boards of a run meet, in the middle of the corner, both show the same growth ring.
func TestGrainRunsOnOverTheCorners(t *testing.T) {
	for _, d := range []form.Design{formtest.WorkedExample(), formtest.Full()} {
		p := model.Derive(d)
		all := boards(p)
		order := round(p)
		if len(order) != 3 {
			t.Fatalf("%d boards follow each other in a stool", len(order))
		}
		for i := 1; i < len(order); i++ {
			a, b := all[order[i-1].ID], all[order[i].ID]
			corner := mgl64.Vec3{p.Overall.WidthTop.MM() / 2, 0, p.Overall.Height.MM()}
			if i == 1 {
				corner[0] *= -1
			}
			if ra, rb := a.radius(corner), b.radius(corner); math.Abs(ra-rb) > 1e-6 {
				t.Errorf("%s to %s: rings %.6f and %.6f", order[i-1].ID, order[i].ID, ra, rb)
			}
			// And off the middle they stay within what the leaning edges turn the boards by.
			corner[1] = p.Overall.DepthTop.MM() / 4
			if ra, rb := a.radius(corner), b.radius(corner); math.Abs(ra-rb) > 0.5 {
				t.Errorf("%s to %s, off the middle: rings %.3f and %.3f", order[i-1].ID, order[i].ID, ra, rb)
			}
		}
	}
}

// On end grain the rings are arcs round the pith.
func TestRingsOnEndGrainAreArcs(t *testing.T) {
	p := model.Derive(formtest.WorkedExample())
	b := boards(p)["top"]
	b.log.swing = 0
	lo, hi := b.q.Solid.Bounds()
	at := func(y, z float64) mgl64.Vec3 {
		return mgl64.TransformCoordinate(mgl64.Vec3{hi[0], y, z}, b.q.Place)
	}
	loop := []mgl64.Vec3{at(lo[1], lo[2]), at(hi[1], lo[2]), at(hi[1], hi[2]), at(lo[1], hi[2])}
	plot := newPlot(b, b.q.Place.Col(0).Vec3(), [][]mgl64.Vec3{loop}, 4)
	r0, r1 := plot.span()
	pith := mgl64.TransformCoordinate(mgl64.Vec3{hi[0], (b.log.v - b.v.from) / b.v.at, b.log.w}, b.q.Place)
	n := 0
	for k, last := b.ringsIn(r0, r1); k <= last; k++ {
		for _, chain := range plot.ring(b.ring(k)) {
			first := plot.world(chain[0]).Sub(pith).Len()
			for _, q := range chain {
				n++
				if r := plot.world(q).Sub(pith).Len(); math.Abs(r-first) > 0.05 {
					t.Fatalf("ring %d: %.3f and %.3f mm from the pith", k, first, r)
				}
			}
		}
	}
	if n < 50 {
		t.Errorf("only %d points of rings", n)
	}
}

// Every line of the grain lies on a face that is seen there, and two paintings are alike to the last bit.
func TestGrainLiesOnWhatIsSeen(t *testing.T) {
	p := model.Derive(formtest.Full())
	scene := view.NewScene(p, 0.05)
	s := NewSubject(p, scene)
	eye := view.Eye{Turn: 35, Height: 1200, Distance: 1800}
	st := Style{Scale: 0.3, Wide: 0.25, Floor: true, Paper: draw.Ink{R: 255, G: 255, B: 255}}
	a, ok := s.Paint(From{Eye: &eye}, st)
	b, _ := s.Paint(From{Eye: &eye}, st)
	if !ok || !reflect.DeepEqual(a, b) {
		t.Fatal("two paintings of one piece differ")
	}
	lens, _ := scene.Lens(eye)
	through := scene.Through(lens)
	marks, _ := s.grain(through, lens.Direction, lens.Point, st.Scale)
	painting := through.Paint(lens.Direction, marks)
	if len(painting.Runs) < 200 {
		t.Fatalf("only %d lines of grain", len(painting.Runs))
	}
	wrong := 0
	for i, r := range painting.Runs {
		if i%7 != 0 {
			continue
		}
		q := draw.Point{X: (r.Points[0].X + r.Points[1].X) / 2, Y: (r.Points[0].Y + r.Points[1].Y) / 2}
		if got := topmost(painting.Surfaces, q); got != marks[r.Mark].Face {
			wrong++
			t.Logf("grain of face %d at %.3f %.3f lies on face %d", marks[r.Mark].Face, q.X, q.Y, got)
		}
	}
	if wrong > 0 {
		t.Errorf("%d lines of grain lie on faces that are not theirs", wrong)
	}
}

func topmost(list []view.Surface, q draw.Point) int {
	last := -1
	for i := range list {
		plot := plot{loops: list[i].Loops}
		if plot.holds(q) {
			last = list[i].Face
		}
	}
	return last
}

func TestAnEyeInThePieceIsRefused(t *testing.T) {
	p := model.Derive(formtest.WorkedExample())
	s := NewSubject(p, view.NewScene(p, 0.05))
	if _, ok := s.Paint(From{Eye: &view.Eye{Height: 200, Distance: 100}}, Style{Scale: 1}); ok {
		t.Error("painted from inside the piece")
	}
}

func BenchmarkPaint(b *testing.B) {
	p := model.Derive(formtest.Full())
	s := NewSubject(p, view.NewScene(p, 0.05))
	for b.Loop() {
		s.Paint(From{Eye: &view.Eye{Turn: 35, Height: 1200, Distance: 1800}}, Style{Scale: 0.3, Wide: 0.25, Floor: true})
	}
}
