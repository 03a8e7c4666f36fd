package pattern

import (
	"math"
	"slices"
	"strings"
	"testing"

	"splaywright/render/draw"
)

// The side's edges taper on its own face by atan(tan edges · cos ends) from its grain.
func TestTaperOfASide(t *testing.T) {
	p := samples()["full"]
	a, b := p.Design.Splay.Ends.Radians(), p.Design.Splay.Edges.Radians()
	want := math.Atan(math.Tan(b) * math.Cos(a))
	for _, place := range []string{"outer face", "inner face"} {
		var longest draw.Point
		for _, run := range one(t, p, "side-right", place).runs(Cut) {
			for i := 1; i < len(run); i++ {
				if d := (draw.Point{X: run[i].X - run[i-1].X, Y: run[i].Y - run[i-1].Y}); math.Hypot(d.X, d.Y) > math.Hypot(longest.X, longest.Y) {
					longest = d
				}
			}
		}
		if got := math.Atan(math.Abs(longest.Y / longest.X)); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: the long edge lies %.9f from the grain, want %.9f", place, got, want)
		}
	}
}

// Tails slope at ± the slope from the grain on both faces, whatever the lean.
func TestSlopesOfTails(t *testing.T) {
	p := samples()["full"]
	want := p.Design.Corners.Slope.Radians()
	for _, place := range []string{"outer face", "inner face"} {
		slopes := 0
		for _, run := range one(t, p, "top", place).runs(Cut) {
			for i := 1; i < len(run); i++ {
				got := math.Abs(math.Atan((run[i].Y - run[i-1].Y) / (run[i].X - run[i-1].X)))
				if d := dist(run[i], run[i-1]); d < 19 || d > 21 || got > 0.5 {
					continue
				}
				slopes++
				if math.Abs(got-want) > 1e-9 {
					t.Errorf("%s: a cheek slopes %.9f, want %.9f", place, got, want)
				}
			}
		}
		if slopes != 16 {
			t.Errorf("%s: %d cheeks, want 16", place, slopes)
		}
	}
}

// The outline of a face is as long and as large as the solid's face.
func TestFacesKeepTheirMeasure(t *testing.T) {
	for name, p := range samples() {
		for _, q := range p.Parts {
			b := blankOf(q)
			for _, f := range []*face{b.outer, b.inner} {
				if !b.faceNeeded(f) {
					continue
				}
				want := 0.0
				for _, i := range f.faces {
					for _, l := range q.Solid.Faces[i].Loops {
						for _, h := range l {
							want += edgeLength(q.Solid, &q.Solid.Edges[h.Edge])
						}
					}
				}
				got := 0.0
				for _, l := range b.facePattern(f).Lines {
					if l.Kind == Cut {
						got += length(l.Segs)
					}
				}
				if math.Abs(got-want) > sameLength {
					t.Errorf("%s, %s, %s: %.9f mm of lines, %.9f on the solid", name, q.ID, f.place, got, want)
				}
			}
		}
	}
}

// The left side is the mirror image of the right one, and each has its own pattern.
func TestSidesMirrorEachOther(t *testing.T) {
	p := samples()["full"]
	for _, place := range []string{"outer face", "inner face"} {
		l, r := one(t, p, "side-left", place), one(t, p, "side-right", place)
		points := func(q *Pattern, turn float64) [][2]float64 {
			var out [][2]float64
			for _, line := range q.Lines {
				for _, s := range line.Segs {
					if line.Kind == Cut && s.Kind != draw.Close {
						out = append(out, [2]float64{math.Round(s.P[2].X*1e6) / 1e6, math.Round(s.P[2].Y*turn*1e6)/1e6 + 0})
					}
				}
			}
			return out
		}
		a, b := points(l, -1), points(r, 1)
		for _, q := range a {
			if !slices.ContainsFunc(b, func(o [2]float64) bool { return math.Hypot(o[0]-q[0], o[1]-q[1]) < 1e-5 }) {
				t.Fatalf("%s: the right side lacks the mirror of %v", place, q)
			}
		}
	}
}

// The inner face is drawn as it is seen: a hole that lies towards +y of the part frame comes below the middle.
func TestTheInnerFaceIsTurnedOver(t *testing.T) {
	p := samples()["full"] // its hand hole lies 60 mm to the back
	for place, sign := range map[string]float64{"outer face": 1, "inner face": -1} {
		for _, l := range one(t, p, "top", place).Labels {
			if strings.HasPrefix(l.Lines[0], "hand hole") && math.Abs(l.At.Y-sign*60) > 1e-9 {
				t.Errorf("%s: the hand hole lies at %.3f", place, l.At.Y)
			}
		}
	}
}

// What a pattern says of holes, in shop words.
func TestHolesAreMarkedAndNamed(t *testing.T) {
	p := samples()["full"]
	for _, c := range []struct{ part, place, want string }{
		{"side-right", "outer face", "Ø9.5 mm, 8.0 mm deep, leaning 6.0°"},
		{"side-right", "outer face", "Ø4.4 mm through, leaning 6.0°"},
		{"side-right", "outer face", "Ø25.0 mm through"},
		{"side-right", "inner face", "Ø25.0 mm comes out"},
		{"side-right", "inner face", "housing, 6.0 mm deep"},
		{"side-right", "inner face", "arch, radius 85.0 mm, rise 45.0 mm"},
		{"top", "outer face", "hand hole, ends Ø28.0 mm"},
		{"stretcher-1", "left end, wrapped round", "38.0 mm deep"},
	} {
		found := false
		for _, l := range one(t, p, c.part, c.place).Labels {
			found = found || slices.Contains(l.Lines, c.want)
		}
		if !found {
			t.Errorf("%s, %s: no %q", c.part, c.place, c.want)
		}
	}
}

// Parts that are the same on every edge share a pattern; mirrored ones do not.
func TestWhichPartsShareAPattern(t *testing.T) {
	for _, c := range []struct{ piece, want string }{
		{"worked", "1 Top top | 2 Side, left side-left | 3 Side, right side-right"},
		{"tray", "1, 3 Front and back front-and-back | 2 End, right end-right | 4 End, left end-left"},
		{"ring", "1–6 Stave 1–6 stave-1-to-6"},
		{"ring, fingers", "1, 3 … 7 Stave 1, Stave 3 … Stave 7 stave-1-to-7 | 2, 4 … 8 Stave 2, Stave 4 … Stave 8 stave-2-to-8"},
	} {
		var got []string
		for _, s := range pieceSets(t, samples()[c.piece], Options{}) {
			got = append(got, s.Name.Marks+" "+s.Name.Words+" "+s.Name.ID)
		}
		if s := strings.Join(got, " | "); s != c.want {
			t.Errorf("%s: %s, want %s", c.piece, s, c.want)
		}
	}
}
