package solid

import (
	"errors"
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"
)

// drawPocket is a convex hollow of three to five leaning walls about a point that may lie off the board.
// space is the same hollow as half-spaces.
func drawPocket(t *rapid.T, tag string, thickness float64) (p Pocket, space HalfSpaces) {
	p = Pocket{Tag: tag, FromOuter: rapid.Bool().Draw(t, "from outer"), Depth: rapid.Float64Range(0.5, thickness*0.8).Draw(t, "depth")}
	x, y := rapid.Float64Range(-220, 220).Draw(t, "x"), rapid.Float64Range(-140, 140).Draw(t, "y")
	r := rapid.Float64Range(15, 120).Draw(t, "size")
	n := rapid.IntRange(3, 5).Draw(t, "walls")
	turn := rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn")
	for i := range n {
		a := turn + 2*math.Pi*float64(i)/float64(n)
		lean := rapid.Float64Range(-6, 6).Draw(t, "lean") * deg
		w := flat(tag, x+r*math.Cos(a), y+r*math.Sin(a), math.Cos(a), math.Sin(a), lean)
		space = append(space, w.Plane)
		p.Walls = append(p.Walls, inward(w))
	}
	up := mgl64.Vec3{0, 0, 1}
	if p.FromOuter {
		return p, append(space, Plane{up, 0}, Plane{up.Mul(-1), p.Depth})
	}
	return p, append(space, Plane{up, p.Depth - thickness}, Plane{up.Mul(-1), thickness})
}

// The volume of a board with two hollows by inclusion and exclusion of convex bodies.
func TestRandomPockets(t *testing.T) {
	refused := 0
	rapid.Check(t, func(t *rapid.T) {
		const thick = 20
		b := Board{Thickness: thick, Outline: block(400, 250, 6*deg, -3*deg)}
		up := mgl64.Vec3{0, 0, 1}
		body := HalfSpaces{{up, 0}, {up.Mul(-1), thick}}
		for _, w := range b.Outline {
			body = append(body, w.Plane)
		}
		p, a := drawPocket(t, "first", thick)
		q, c := drawPocket(t, "second", thick)
		b.Pockets = []Pocket{p, q}
		join := func(parts ...HalfSpaces) float64 {
			var all HalfSpaces
			for _, h := range parts {
				all = append(all, h...)
			}
			return all.Volume()
		}
		want := join(body) - join(body, a) - join(body, c) + join(body, a, c)
		s, err := b.Build()
		if err != nil {
			// Walls that cross over between two heights, or a board cut in two, are refused and not built.
			if be := (*BuildError)(nil); !errors.As(err, &be) {
				t.Fatal(err)
			}
			refused++
			return
		}
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(s.Volume() - want); d > 1e-11*want {
			t.Fatalf("volume %.12g, want %.12g", s.Volume(), want)
		}
		m := s.Flatten(0.02)
		if err := m.Check(); err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(m.Volume() - s.Volume()); d > 1e-12*want {
			t.Fatalf("a solid without arcs and its mesh differ by %g mm³", d)
		}
	})
	t.Logf("%d boards refused", refused)
}

func TestRandomBores(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := Board{Thickness: 20, Outline: block(400, 250, 6*deg, 4*deg)}
		whole, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		n := rapid.IntRange(1, 6).Draw(t, "bores")
		want := whole.Volume()
		genus := 0
		for i := range n {
			lean, way := rapid.Float64Range(0, 15).Draw(t, "lean")*deg, rapid.Float64Range(0, 2*math.Pi).Draw(t, "way")
			axis := mgl64.Vec3{math.Sin(lean) * math.Cos(way), math.Sin(lean) * math.Sin(way), -math.Cos(lean)}
			entry := mgl64.Vec3{-150 + 60*float64(i), rapid.Float64Range(-80, 80).Draw(t, "y"), 0}
			if rapid.Bool().Draw(t, "from below") {
				axis[2], entry[2] = -axis[2], -20
			}
			r := rapid.Float64Range(2, 12).Draw(t, "radius")
			to := r*math.Tan(lean) + rapid.Float64Range(0.5, 4).Draw(t, "depth")
			steps := []Step{{r, to}}
			want -= math.Pi * r * r * to
			switch rapid.IntRange(0, 2).Draw(t, "kind") {
			case 1:
				steps = append(steps, Step{r / 2, to + 3})
				want -= math.Pi * r * r / 4 * 3
			case 2:
				steps = append(steps, Step{r / 2, through})
				want -= math.Pi * r * r / 4 * (20/math.Cos(lean) - to)
				genus++
			}
			b.Bores = append(b.Bores, Bore{Tag: "bore", Entry: entry, Axis: axis, Steps: steps})
		}
		s, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(s.Volume() - want); d > exact*want || s.Genus() != genus {
			t.Fatalf("volume off by %g, genus %d, want %d", d, s.Genus(), genus)
		}
		if err := s.Flatten(0.02).Check(); err != nil {
			t.Fatal(err)
		}
		if got := enclosed(s, s.Stopped(0)); math.Abs(got-whole.Volume()) > exact*want {
			t.Fatalf("with its holes stopped it holds %g mm³, the board without them %g", got, whole.Volume())
		}
	})
}

// enclosed is what a surface encloses, mm³, by the cones over its tiles.
func enclosed(s *Solid, u *Surface) float64 {
	var sum float64
	for face := range s.Faces {
		for _, tile := range u.Tiles(face) {
			p := tile.At[0]
			for i := 1; i+1 < len(tile.At); i++ {
				sum += tile.At[i].Sub(p).Cross(tile.At[i+1].Sub(p)).Dot(p) / 6
			}
		}
	}
	return sum
}

// What holes are stopped, and what areas they have in the two faces of the board.
func TestWhichHolesAreStopped(t *testing.T) {
	down := mgl64.Vec3{0, 0, -1}
	hand := Loop{}
	for i := range 4 { // a square opening, seen clockwise
		n := []mgl64.Vec3{{1, 0, 0}, {0, -1, 0}, {-1, 0, 0}, {0, 1, 0}}[i]
		hand = append(hand, Wall{Tag: "slot", Plane: Plane{n, n.Dot(mgl64.Vec3{60, 0, 0}) - 8}})
	}
	for _, c := range []struct {
		name    string
		board   Board
		outer   float64 // mm²; 0 = nothing is stopped
		inner   float64
		nothing bool
	}{
		{"no hole", Board{}, 0, 0, true},
		{"a through hole", Board{Bores: []Bore{{Tag: "b", Axis: down, Steps: []Step{{3, through}}}}}, math.Pi * 9, math.Pi * 9, false},
		{"a counterbore", Board{Bores: []Bore{{Tag: "b", Axis: down, Steps: []Step{{6, 5}, {3, through}}}}}, math.Pi * 36, math.Pi * 9, false},
		{"a blind hole", Board{Bores: []Bore{{Tag: "b", Axis: down, Steps: []Step{{6, 5}}}}}, math.Pi * 36, 0, false},
		{"a square opening", Board{Openings: []Loop{hand}}, 0, 0, true},
		{"a square opening beside a hole", Board{Openings: []Loop{hand}, Bores: []Bore{{Tag: "b", Axis: down, Steps: []Step{{3, through}}}}}, math.Pi * 9, math.Pi * 9, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.board.Thickness, c.board.Outline = 20, block(200, 80, 0, 0)
			s := build(t, c.board)
			u := s.Stopped(0)
			if (u == nil) != c.nothing {
				t.Fatalf("a surface: %v", u != nil)
			}
			for face := range s.Faces {
				want, ok := map[string]float64{"outer face": c.outer, "inner face": c.inner}[s.Faces[face].Tag]
				if u != nil && ok && math.Abs(u.Stops(face)-want) > 1e-9 {
					t.Errorf("%s: holes of %g mm², want %g", s.Faces[face].Tag, u.Stops(face), want)
				}
			}
		})
	}
}
