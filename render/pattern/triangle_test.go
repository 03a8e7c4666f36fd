package pattern

import (
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/render/table"
)

// Which boards are a run: those whose outer arrises meet.
func TestRuns(t *testing.T) {
	for _, c := range []struct{ piece, want string }{
		{"worked", "side-left top side-right"},
		{"tails on the sides", "side-left top side-right"},
		{"housing", ""}, // the top overhangs
		{"tray", "front end-right back end-left"},
		{"ring", "stave-1 stave-2 stave-3 stave-4 stave-5 stave-6"},
	} {
		var got []string
		for _, run := range form.Stretches(samples()[c.piece]) {
			for _, s := range run {
				got = append(got, s.Part.ID)
			}
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s: %q, want %q", c.piece, s, c.want)
		}
	}
}

// Where a side of the triangle leaves one board it goes on on the next, in the same place in space; only
// the three points of the triangle are not met twice.
func triangleGoesOn(t interface{ Fatalf(string, ...any) }, p *form.Piece) {
	count := 0
	var ends []mgl64.Vec3
	for id, lines := range Triangles(p) {
		q := p.Part(id)
		for _, l := range lines {
			count++
			for _, v := range l {
				if v[2] != 0 {
					t.Fatalf("%s: the triangle leaves the outer face", id)
				}
				ends = append(ends, q.Place.Mul4x1(v.Vec4(1)).Vec3())
			}
		}
	}
	for _, v := range ends {
		meets := 0
		for _, w := range ends {
			if v.Sub(w).Len() < 2*form.SameArris {
				meets++
			}
		}
		if meets != 2 {
			t.Fatalf("%d lines of the triangle meet at %.3f", meets, v)
		}
	}
	cut := len(p.Parts) > 0 && !slices.ContainsFunc(p.Parts, func(q *part.Part) bool { return q.Solid == nil })
	if cut && count < 5 {
		t.Fatalf("only %d lines", count)
	}
}

func TestTriangleGoesOnRoundCorners(t *testing.T) {
	for _, name := range []string{"worked", "full", "tray", "ring"} {
		triangleGoesOn(t, samples()[name])
	}
	rapid.Check(t, func(t *rapid.T) { triangleGoesOn(t, randomPiece(t)) })
}

// The triangle is drawn on the outer faces alone, and not across holes.
func TestTriangleIsOnOuterFaces(t *testing.T) {
	for _, s := range pieceSets(t, samples()["full"], Options{}) {
		for _, id := range []string{"top", "side-left", "side-right"} {
			if s.Name.ID != id {
				continue
			}
			b := blankOf(s.Parts[0])
			b.triangle = Triangles(samples()["full"])[id]
			for _, p := range b.patterns() {
				has := slices.ContainsFunc(p.Lines, func(l Line) bool { return l.Ref == id+"/triangle" })
				if has != (p.Place == "outer face") {
					t.Errorf("%s, %s: triangle %t", id, p.Place, has)
				}
				w := newWood(&p)
				for _, l := range p.Lines {
					if a, z := ends(l.Segs); l.Ref == id+"/triangle" && !w.holds(between(a, z, 0.4999)) {
						t.Errorf("%s: the triangle runs over a hole", id)
					}
				}
			}
		}
	}
}

// Laid end to end, each board of a run begins where the one at its left ends: the lower corners of the two
// ends are one place of the piece.
func TestRunsLieEndToEnd(t *testing.T) {
	seen := 0
	for name, p := range samples() {
		byPart := map[*part.Part]form.Stretch{}
		for _, run := range form.Stretches(p) {
			for _, s := range run {
				byPart[s.Part] = s
			}
		}
		// the lower corner at an end of a laid board, world
		corner := func(l form.Laid, right bool) mgl64.Vec3 {
			s := byPart[l.Part]
			if up := s.At(0.5, 1).Sub(s.At(0.5, 0)).Y(); (up < 0) != l.Turned {
				t.Errorf("%s: %s has its reference edge above", name, l.Part.ID)
			}
			a, b := s.Corners[0][0], s.Corners[1][0]
			if (a.X() > b.X()) == (right != l.Turned) {
				b = a
			}
			return l.Part.Place.Mul4x1(b.Vec4(1)).Vec3()
		}
		for _, run := range form.Runs(p) {
			for i := 1; i < len(run); i++ {
				seen++
				if d := corner(run[i-1], true).Sub(corner(run[i], false)).Len(); d > form.SameArris {
					t.Errorf("%s: %s begins %.2f mm from where %s ends", name, run[i].Part.ID, d, run[i-1].Part.ID)
				}
			}
		}
	}
	if seen < 6 {
		t.Errorf("%d corners", seen)
	}
}

// The steps tell of the triangle what is drawn: over the same boards, with its point towards the same edge.
func TestStepsTellTheTriangleThatIsDrawn(t *testing.T) {
	for name, p := range samples() {
		text := ""
		for _, row := range table.Steps(p, p.Design.Style()).Rows {
			if row[1].Text == "Mark the faces" {
				text = row[2].Text
			}
		}
		drawn := Triangles(p)
		if said := strings.Contains(text, "a triangle"); said != (len(drawn) > 0) {
			t.Errorf("%s: %d boards have lines, and the steps say: %s", name, len(drawn), text)
			continue
		}
		_, over, _ := strings.Cut(text, "edges: over ")
		over, _, _ = strings.Cut(over, ".")
		marks := strings.FieldsFunc(over, func(r rune) bool { return strings.ContainsRune(",; and", r) })
		for id, lines := range drawn {
			q := p.Part(id)
			if !slices.Contains(marks, q.Mark) {
				t.Errorf("%s: %s has lines, the steps name %v", name, id, marks)
			}
			far := 0.0 // of the lines from the edge that the triangle stands on
			ref := q.Reference()
			for _, l := range lines {
				for _, v := range l {
					far = max(far, ref.Offset-ref.Normal.Dot(v))
				}
			}
			if edge := strings.ReplaceAll(ref.ID, "-", " "); !strings.Contains(text, "its base along the "+edge+"s") || far < 10 {
				t.Errorf("%s: %s: the triangle stands on the %s and reaches %.0f mm from it: %s", name, id, edge, far, text)
			}
		}
		if len(marks) != len(drawn) {
			t.Errorf("%s: the steps name %v, %d boards have lines", name, marks, len(drawn))
		}
	}
}
