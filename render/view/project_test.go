package view

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"splaywright/render/draw"
)

// text lists a picture's lines, each from its lower left end, in order.
func text(p *Picture) string {
	var out []string
	for _, l := range p.Lines {
		pts := slices.Clone(l.Points)
		if a, b := pts[0], pts[len(pts)-1]; a.X > b.X+1e-6 || math.Abs(a.X-b.X) < 1e-6 && a.Y > b.Y {
			slices.Reverse(pts)
		}
		s := fmt.Sprintf("%-7s %s:", l.Kind, l.Part)
		if len(pts) > 4 {
			pts = []draw.Point{pts[0], pts[len(pts)-1]}
			s += fmt.Sprintf(" %d points,", len(l.Points))
		}
		for _, q := range pts {
			s += fmt.Sprintf(" %s,%s", short(q.X), short(q.Y))
		}
		out = append(out, s)
	}
	slices.Sort(out)
	return strings.Join(out, "\n")
}

func short(x float64) string {
	s := fmt.Sprintf("%.4g", x)
	if math.Abs(x) < 1e-9 {
		s = "0"
	}
	return s
}

func wantLines(t *testing.T, p *Picture, want string) {
	t.Helper()
	var lines []string
	for l := range strings.Lines(want) {
		if l = strings.TrimSpace(l); l != "" {
			lines = append(lines, l)
		}
	}
	var got []string
	for l := range strings.Lines(text(p)) {
		got = append(got, strings.Join(strings.Fields(l), " "))
	}
	slices.Sort(lines)
	slices.Sort(got)
	if d := cmp.Diff(lines, got); d != "" {
		t.Errorf("lines (-want +got):\n%s", d)
	}
}

func TestCubeFromTheFrontIsASquare(t *testing.T) {
	wantLines(t, scene(box(0, 0, 0, 10, 10, 10)).Project(Front), `
		visible a: 0,0 10,0
		visible a: 0,0 0,10
		visible a: 0,10 10,10
		visible a: 10,0 10,10
	`)
}

func TestCubeIsometricHasNineVisibleAndThreeHidden(t *testing.T) {
	p := scene(box(0, 0, 0, 10, 10, 10)).Project(Isometric)
	n := map[Kind]int{}
	for _, l := range p.Lines {
		n[l.Kind]++
		a, b := l.Points[0], l.Points[1]
		if d := math.Hypot(b.X-a.X, b.Y-a.Y); math.Abs(d-10*math.Sqrt(2./3)) > 1e-9 {
			t.Errorf("%v is %.6f long, want %.6f", l, d, 10*math.Sqrt(2./3))
		}
	}
	if n[Visible] != 9 || n[Hidden] != 3 || n[Smooth] != 0 {
		t.Errorf("got %v", n)
	}
}
