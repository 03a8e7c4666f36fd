package solid_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// pieceNoise, mm³, is what rounding may leave of parts that touch in hundreds of thousands of mm² all told.
const pieceNoise = 1e-7

// inPlace are a piece's parts as blocks.
type inPlace struct {
	piece  *form.Piece
	blocks map[string]*solid.Blocks
	parts  map[string]*part.Part
}

func putInPlace(p *form.Piece) inPlace {
	in := inPlace{p, map[string]*solid.Blocks{}, map[string]*part.Part{}}
	for _, q := range p.Parts {
		if q.Solid != nil {
			in.blocks[q.ID], in.parts[q.ID] = q.Solid.Blocks(solid.Flattening), q
		}
	}
	return in
}

// shared is what two parts have in common when the second is moved by way.
func (in inPlace) shared(t interface{ Fatal(...any) }, still, moved string, way mgl64.Vec3) float64 {
	a, b := in.parts[still], in.parts[moved]
	v, err := in.blocks[still].Overlap(in.blocks[moved], a.Place.Inv().Mul4(mgl64.Translate3D(way[0], way[1], way[2])).Mul4(b.Place))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// whole sees that no two parts of a piece share wood at home, and that each joint's board comes home freely.
func (in inPlace) whole(t interface {
	Fatal(...any)
	Fatalf(string, ...any)
}) {
	for a := range in.parts {
		for b := range in.parts {
			if a < b {
				if v := in.shared(t, a, b, mgl64.Vec3{}); math.Abs(v) > pieceNoise {
					t.Fatalf("%s: %s and %s share %g mm³", in.piece.Title, a, b, v)
				}
			}
		}
	}
	for _, j := range in.piece.Joints {
		if in.parts[j.TailBoard] == nil || in.parts[j.PinBoard] == nil {
			continue
		}
		for i := 1; i <= 24; i++ {
			off := 2.5 * float64(i)
			if v := in.shared(t, j.PinBoard, j.TailBoard, j.Slides.Mul(-off)); math.Abs(v) > pieceNoise {
				t.Fatalf("%s: %s is %g mm from home and shares %g mm³", in.piece.Title, j.ID, off, v)
			}
		}
	}
}

func TestPartsOfPiecesShareNothing(t *testing.T) {
	for _, d := range []form.Design{formtest.WorkedExample(), formtest.Full(), formtest.Housing()} {
		p := model.Derive(d)
		if p.Stopped() || len(p.Parts) == 0 {
			t.Fatalf("%s does not build", d.Title)
		}
		putInPlace(p).whole(t)
	}
}

// Straight off the top's own face, the habit from square corners, a leaning dovetail jams within half a millimetre.
func TestSplayedDovetailJamsSquareToTheTop(t *testing.T) {
	in := putInPlace(model.Derive(formtest.WorkedExample()))
	if v := in.shared(t, "side-left", "top", mgl64.Vec3{0, 0, 0.5}); v < 10 {
		t.Errorf("the top comes half a millimetre off and shares %g mm³ only", v)
	}
}

func TestPartsOfRandomStoolsShareNothing(t *testing.T) {
	built := 0
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		length := func(name string, lo, hi float64) measure.Length { return measure.Length(f(name, lo, hi)) }
		angle := func(name string, lo, hi float64) measure.Angle {
			return measure.Angle(f(name, lo, hi)) * measure.Degree
		}
		d := formtest.WorkedExample()
		d.Title = "random"
		d.Size.Height, d.Size.Width, d.Size.Depth = length("height", 150, 500), length("width", 300, 900), length("depth", 180, 420)
		d.Splay.Ends, d.Splay.Edges = angle("ends", 0, 20), angle("edges", 0, 6)
		d.Splay.EdgeCut = rapid.SampledFrom([]form.EdgeCut{form.EdgeSquare, form.EdgeFlush}).Draw(t, "edge cut")
		d.Boards.Top.Thickness, d.Boards.Side.Thickness = length("top", 12, 34), length("side", 12, 34)
		d.Corners = form.Corners{Joint: form.ThroughDovetail, Slope: angle("slope", 5, 12),
			TailsOn: rapid.SampledFrom([]string{form.OnTop, form.OnSide}).Draw(t, "tails on")}
		p := model.Derive(d)
		if p.Stopped() {
			t.Skip("does not build")
		}
		built++
		putInPlace(p).whole(t)
	})
	if built < 20 {
		t.Fatalf("only %d stools were built", built)
	}
}
