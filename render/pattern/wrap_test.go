package pattern

import (
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
	"splaywright/render/draw"
)

// sameLength is how far a developed length may be from the edge on the solid, mm.
const sameLength = 1e-6

// arcLength of a solid's arc by Simpson's rule on its parameter, far finer than is asked for.
func arcLength(c *solid.Curve) float64 {
	const n = 1000
	step := (c.T1 - c.T0) / n
	sum := 0.0
	for i := range n + 1 {
		sin, cos := math.Sincos(c.T0 + float64(i)*step)
		weight := float64(2 + 2*(i%2))
		if i == 0 || i == n {
			weight = 1
		}
		sum += weight * c.V.Mul(cos).Sub(c.U.Mul(sin)).Len()
	}
	return sum * math.Abs(step) / 3
}

// along is points of an edge: its ends, and some between where it is an arc.
func along(s *solid.Solid, e *solid.Edge) []mgl64.Vec3 {
	out := []mgl64.Vec3{s.Vertices[e.From], s.Vertices[e.To]}
	if c := s.Curve(e); c.Kind == solid.Arc {
		for i := range 33 {
			sin, cos := math.Sincos(c.T0 + (c.T1-c.T0)*float64(i)/32)
			out = append(out, c.P.Add(c.U.Mul(cos-1)).Add(c.V.Mul(sin)))
		}
	}
	return out
}

func edgeLength(s *solid.Solid, e *solid.Edge) float64 {
	if c := s.Curve(e); c.Kind == solid.Arc {
		return arcLength(c)
	}
	return s.Vertices[e.From].Sub(s.Vertices[e.To]).Len()
}

// Every edge of the end and of the faces beside it, as far as the strip reaches, is on the strip in
// its true length, and nothing else is cut.
func developedLengths(t interface {
	Errorf(string, ...any)
	Helper()
}, q *part.Part) {
	t.Helper()
	b := blankOf(q)
	for i := range q.Cuts {
		c := &q.Cuts[i]
		if !b.endNeeded(c) {
			continue
		}
		want, whole := map[string]float64{}, map[string]bool{}
		s := q.Solid
		reach := b.newEnd(c).over
		flat := math.Hypot(c.Normal[0], c.Normal[1])
		for k := range s.Edges {
			e := &s.Edges[k]
			for _, pair := range [][2]int{{e.Left, e.Right}, {e.Right, e.Left}} {
				f, o := &s.Faces[pair[0]], &s.Faces[pair[1]]
				on, other := side(q, c, f), side(q, c, o)
				if on == "" || other != "" {
					continue // no face of the strip, or an arris within it
				}
				id := q.ID + "/" + o.Tag
				far := 0.0
				for _, v := range along(s, e) {
					far = math.Max(far, (c.Offset-c.Normal.Dot(v))/flat)
				}
				if on != "end" && far > reach-1 {
					whole[id] = true // may be cut off: not compared
				}
				want[id] += edgeLength(s, e)
			}
		}
		got := map[string]float64{}
		for _, l := range b.wrap(c).Lines {
			if l.Kind == Cut {
				got[l.Ref] += length(l.Segs)
			}
		}
		for id, w := range want {
			if !whole[id] && math.Abs(got[id]-w) > sameLength {
				t.Errorf("%s, %s, %s: %.9f mm on the strip, %.9f on the solid", q.ID, c.ID, id, got[id], w)
			}
			if got[id] > w+sameLength {
				t.Errorf("%s, %s, %s: more on the strip than on the solid", q.ID, c.ID, id)
			}
		}
		for id := range got {
			if _, ok := want[id]; !ok {
				t.Errorf("%s, %s: the strip shows %s", q.ID, c.ID, id)
			}
		}
	}
}

// side tells which part of the strip a face of the solid is; "" for none.
func side(q *part.Part, c *part.Cut, f *solid.Face) string {
	if f.Round != nil {
		return ""
	}
	in := func(n mgl64.Vec3, d float64) bool {
		return f.Plane.N.Sub(n).Len() < 1e-9 && math.Abs(f.Plane.D-d) < 1e-9
	}
	switch {
	case in(c.Normal, c.Offset):
		return "end"
	case in(mgl64.Vec3{0, 0, 1}, 0):
		return "outer"
	case in(mgl64.Vec3{0, 0, -1}, q.Blank.Thickness.MM()):
		return "inner"
	}
	return ""
}

func TestDevelopedLengthsAreTheSolids(t *testing.T) {
	for name, p := range samples() {
		for _, q := range p.Parts {
			t.Run(name+"/"+q.ID, func(t *testing.T) { developedLengths(t, q) })
		}
	}
}

func TestDevelopedLengthsOfAnyStool(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, q := range randomPiece(t).Parts {
			if q.Solid != nil {
				developedLengths(t, q)
			}
		}
	})
}

func TestDevelopedLengthsOfAnyWalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, q := range randomWalls(t).Parts {
			if q.Solid != nil {
				developedLengths(t, q)
			}
		}
	})
}

// The folds are as long as the arrises, found as the meeting points of three planes, and as far apart
// as the end is deep: the thickness over the cosine of the blade's tilt.
func TestFoldsLieOnTheArrises(t *testing.T) {
	for name, p := range samples() {
		for _, q := range p.Parts {
			b := blankOf(q)
			for i := range q.Cuts {
				c := &q.Cuts[i]
				if !b.endNeeded(c) {
					continue
				}
				e := b.newEnd(c)
				if want := q.Blank.Thickness.MM() / math.Cos(c.Tilt.Radians()); math.Abs(e.deep-want) > sameLength {
					t.Errorf("%s, %s, %s: the end is %.9f mm deep, want %.9f", name, q.ID, c.ID, e.deep, want)
				}
				for f, z := range []float64{0, -b.thickness} {
					if got, want := dist(e.fold[f][0], e.fold[f][1]), arris(q, c, z); math.Abs(got-want) > sameLength {
						t.Errorf("%s, %s, %s: fold %d is %.9f mm long, its arris %.9f", name, q.ID, c.ID, f, got, want)
					}
				}
			}
		}
	}
}

// arris is the length of a cut's edge at height z between the two rips, by 3 × 3 equations.
func arris(q *part.Part, c *part.Cut, z float64) float64 {
	var at []mgl64.Vec3
	for _, r := range q.Cuts {
		if r.Kind != part.Rip {
			continue
		}
		m := mgl64.Mat3FromRows(c.Normal, r.Normal, mgl64.Vec3{0, 0, 1})
		at = append(at, m.Inv().Mul3x1(mgl64.Vec3{c.Offset, r.Offset, z}))
	}
	return at[0].Sub(at[1]).Len()
}

// hopper is a wall of a four-sided box that leans as far on all sides, its ends cut for butts:
// swing atan(sin lean), tilt asin(sin² lean).
func hopper(t *testing.T, lean measure.Angle, length, width, thickness float64) *part.Part {
	t.Helper()
	sin := math.Sin(lean.Radians())
	swing, tilt := math.Atan(sin), math.Asin(sin*sin)
	q := &part.Part{ID: "front", Name: "Front", Mark: "1", Blank: part.Box{Length: measure.Length(length), Width: measure.Length(width), Thickness: measure.Length(thickness)}}
	add := func(id string, kind part.CutKind, n mgl64.Vec3, d float64) solid.Wall {
		q.Cuts = append(q.Cuts, part.CutOf(id, kind, solid.Plane{N: n, D: d}))
		return solid.Wall{Tag: id, Plane: solid.Plane{N: n, D: d}}
	}
	end := func(sign float64) mgl64.Vec3 {
		return mgl64.Vec3{sign * math.Cos(swing) * math.Cos(tilt), math.Sin(swing) * math.Cos(tilt), math.Sin(tilt)}
	}
	s, err := solid.Board{Thickness: thickness, Outline: solid.Loop{
		add("lower-edge", part.Rip, mgl64.Vec3{0, -1, 0}, width/2),
		add("right-end", part.Crosscut, end(1), length/2),
		add("upper-edge", part.Rip, mgl64.Vec3{0, 1, 0}, width/2),
		add("left-end", part.Crosscut, end(-1), length/2),
	}}.Build()
	if err != nil {
		t.Fatal(err)
	}
	q.Solid = s
	return q
}

// A side that leans 15° all round is cut 14.51° off square with the blade at 3.84°: table of
// http://therepublicofwood.com/wp/2017/07/02/wooden-tray/ and its neighbour by the formulas above,
// to the hundredth that is printed.
func TestACompoundEndUnrolls(t *testing.T) {
	q := hopper(t, 15*measure.Degree, 400, 120, 18)
	developedLengths(t, q)
	b := blankOf(q)
	e := b.newEnd(&q.Cuts[1])
	d := draw.Point{X: e.fold[0][1].X - e.fold[0][0].X, Y: e.fold[0][1].Y - e.fold[0][0].Y}
	if got := math.Abs(math.Atan(d.X/d.Y)) * 180 / math.Pi; math.Abs(got-14.51) > 0.0051 {
		t.Errorf("the fold lies %.4f° off square", got)
	}
	if want := 120 / math.Cos(14.5108*math.Pi/180); math.Abs(dist(e.fold[0][0], e.fold[0][1])-want) > 1e-3 {
		t.Errorf("fold of %.4f mm, want %.4f", dist(e.fold[0][0], e.fold[0][1]), want)
	}
	if want := 18 / math.Cos(3.8412*math.Pi/180); math.Abs(e.deep-want) > 1e-3 {
		t.Errorf("end %.4f mm deep, want %.4f", e.deep, want)
	}
	// the two folds run side by side, and the pattern is no face pattern: straight cuts alone
	f := draw.Point{X: e.fold[1][1].X - e.fold[1][0].X, Y: e.fold[1][1].Y - e.fold[1][0].Y}
	if math.Abs(d.X*f.Y-d.Y*f.X) > 1e-9 {
		t.Error("the folds are not parallel")
	}
	if all := For(q, measure.Style{}); len(all) != 2 || !strings.HasPrefix(all[0].Place, "right end") {
		t.Errorf("%d patterns of a plain board with two bevelled ends", len(all))
	}
}

// On the end of the pin board the cheeks lie at the slope from square, because they hold the slope
// line of the tail board's outer face; across the end of the tail board they are square.
func TestCheeksAcrossTheEnds(t *testing.T) {
	p := samples()["worked"]
	for _, c := range []struct {
		id, place string
		want      float64 // degrees off square to the arris
	}{{"side-right", "top end, wrapped round", 8}, {"top", "right end, wrapped round", 0}} {
		cut := cutOf(p.Part(c.id), strings.ReplaceAll(strings.TrimSuffix(c.place, ", wrapped round"), " ", "-"))
		e := blankOf(p.Part(c.id)).newEnd(cut)
		seen := 0
		for _, l := range one(t, p, c.id, c.place).Lines {
			a, b := ends(l.Segs)
			mid := between(a, b, 0.5)
			off := (mid.X-e.fold[0][0].X)*e.out.X + (mid.Y-e.fold[0][0].Y)*e.out.Y
			if l.Kind != Cut || !strings.HasSuffix(l.Ref, "cheek") || off < 1 || off > e.deep-1 {
				continue
			}
			seen++
			d := draw.Point{X: b.X - a.X, Y: b.Y - a.Y}
			square, along := dot(d, e.out), d.X*e.out.Y-d.Y*e.out.X
			if got := math.Abs(math.Atan(along/square)) * 180 / math.Pi; math.Abs(got-c.want) > 1e-9 {
				t.Errorf("%s, %s: %.9f° off square, want %g", c.id, l.Ref, got, c.want)
			}
		}
		if seen != 8 {
			t.Errorf("%s: %d cheeks across the end, want 8", c.id, seen)
		}
	}
}

func cutOf(q *part.Part, id string) *part.Cut {
	for i := range q.Cuts {
		if q.Cuts[i].ID == id {
			return &q.Cuts[i]
		}
	}
	return nil
}

// Square ends without holes need no strip; those with holes in them do.
func TestWhichEndsAreWrapped(t *testing.T) {
	for _, c := range []struct {
		piece, part string
		want        string
	}{
		{"worked", "top", "left end, right end"},
		{"worked", "side-left", "top end, floor end"},
		{"full", "stretcher-1", "left end, right end"},
		{"housing", "top", ""}, // overhanging, its ends square
		{"housing", "side-left", "top end, floor end"},
	} {
		p := samples()[c.piece]
		var got []string
		for _, q := range For(p.Part(c.part), measure.Style{}) {
			if s, ok := strings.CutSuffix(q.Place, ", wrapped round"); ok {
				got = append(got, s)
			}
		}
		if s := strings.Join(got, ", "); s != c.want {
			t.Errorf("%s, %s: %q wrapped, want %q", c.piece, c.part, s, c.want)
		}
	}
}
