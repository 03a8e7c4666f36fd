package view

import (
	"bufio"
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/assets"
	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/solid"
	"splaywright/render/draw"
)

// kernelVariable names the program built from testdata/outside/lines.cpp: the exact hidden-line algorithm of a
// general-purpose geometry kernel.
const kernelVariable = "SPLAYWRIGHT_KERNEL"

// What is seen of every example in four views, compared with the kernel: the total visible length agrees to one in a
// thousand. Both draw the lines that flattening makes, and lines that fall on one another count once.
//
// Where two boards touch the methods differ: we draw the line where two boards meet in one plane and the foot of a
// board on another's face, as a draughtsman does; the kernel hides one or the other by rounding. So each piece is
// compared twice: drawn apart by a few millimetres the way it is put together, so that nothing touches; and put
// together, where what lies on a board's face or in its plane at its edge is left out of both.
func TestLinesAgreeWithAKernel(t *testing.T) {
	program := os.Getenv(kernelVariable)
	if program == "" {
		t.Skip("the kernel's program is not built; make outside builds it, where the kernel is installed, and runs this test")
	}
	for _, e := range assets.Examples() {
		p := example(t, e)
		t.Run(e.Name+" apart", func(t *testing.T) { asTheKernel(t, program, drawnApart(t, p), false) })
		t.Run(e.Name+" together", func(t *testing.T) { asTheKernel(t, program, p, true) })
	}
}

func example(t *testing.T, e assets.Example) *form.Piece {
	t.Helper()
	return model.Derive(filetest.Design(t, e.YAML))
}

// drawnApart moves the parts off each other, each later move further, and as far as it takes until no
// part runs into another: the kernel does not cut solids that do.
func drawnApart(t *testing.T, p *form.Piece) *form.Piece {
	for _, far := range []float64{7.3, 11.7, 18.9, 30.7, 49.3} { // mm
		if out := apartBy(p, far); !runsInto(t, out) {
			return out
		}
	}
	t.Fatal("the parts run into each other however far they are moved")
	return nil
}

func apartBy(p *form.Piece, far float64) *form.Piece {
	off := map[string]mgl64.Vec3{}
	for k, m := range p.Assembly.Moves {
		for i, id := range m.Parts {
			off[id] = off[id].Sub(m.Ways[i].Mul(far * float64(k+1)))
		}
	}
	out := *p
	out.Parts = nil
	for _, q := range p.Parts {
		moved := *q
		d := off[q.ID]
		moved.Place = mgl64.Translate3D(d[0], d[1], d[2]).Mul4(q.Place)
		out.Parts = append(out.Parts, &moved)
	}
	return &out
}

// runsInto tells whether two parts of a piece share wood.
func runsInto(t *testing.T, p *form.Piece) bool {
	const noise = 1e-3 // mm³
	var blocks []*solid.Blocks
	for i, q := range p.Parts {
		blocks = append(blocks, q.Solid.Blocks(solid.Flattening))
		for k := range i {
			shared, err := blocks[k].Overlap(blocks[i], part.Back(p.Parts[k].Place).Mul4(q.Place))
			if err != nil {
				t.Fatal(err)
			}
			if shared > noise {
				return true
			}
		}
	}
	return false
}

func asTheKernel(t *testing.T, program string, p *form.Piece, touching bool) {
	const tol = 0.2 // of flattening, mm
	meshes, ids := flattened(p, tol)
	for _, m := range meshes {
		for i := range m.Edges {
			m.Edges[i].Smooth, m.Edges[i].Edge = false, -1
		}
	}
	s := newScene(inWorld(meshes), ids)
	views := []Direction{Front, End, Top, Isometric}
	theirs := kernelLines(t, program, meshes, views)
	for i, d := range views {
		var left []segment
		if touching {
			left = contacts(s, d)
		}
		ours := visible(s.Project(d))
		a, b := loosely.unionLength(ours, left), loosely.unionLength(theirs[i], left)
		t.Logf("%-10s %d faces: %.3f mm seen, the kernel says %.3f: %+.4f %%", d.Name, len(s.faces), a, b, 100*(a-b)/b)
		if math.Abs(a-b) > 1e-3*b || b == 0 {
			t.Errorf("%s: %.3f mm seen, the kernel says %.3f", d.Name, a, b)
		}
	}
}

func kernelLines(t *testing.T, program string, meshes []*solid.Mesh, views []Direction) [][]segment {
	var in bytes.Buffer
	fmt.Fprintln(&in, len(views))
	for _, d := range views {
		for _, v := range []mgl64.Vec3{d.Right, d.Up, d.Toward} {
			fmt.Fprintf(&in, "%.17g %.17g %.17g\n", v[0], v[1], v[2])
		}
	}
	fmt.Fprintln(&in, len(meshes))
	for _, m := range meshes {
		fmt.Fprintln(&in, len(m.Vertices))
		for _, v := range m.Vertices {
			fmt.Fprintf(&in, "%.17g %.17g %.17g\n", v[0], v[1], v[2])
		}
		fmt.Fprintln(&in, len(m.Faces))
		for _, f := range m.Faces {
			fmt.Fprintln(&in, len(f.Loops))
			for _, l := range f.Loops {
				fmt.Fprintln(&in, len(l), strings.Trim(fmt.Sprint(l), "[]"))
			}
		}
	}
	cmd := exec.Command(program)
	cmd.Stdin = &in
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	lists := make([][]segment, 1)
	for lines := bufio.NewScanner(bytes.NewReader(out)); lines.Scan(); {
		if lines.Text() == "end" {
			lists = append(lists, nil)
			continue
		}
		var a, b draw.Point
		if _, err := fmt.Sscan(lines.Text(), &a.X, &a.Y, &b.X, &b.Y); err != nil {
			t.Fatalf("%q: %v", lines.Text(), err)
		}
		lists[len(lists)-1] = append(lists[len(lists)-1], segment{a, b})
	}
	if len(lists) != len(views)+1 {
		t.Fatalf("%d views of %d", len(lists)-1, len(views))
	}
	return lists
}

func visible(p *Picture) []segment {
	var out []segment
	for _, l := range p.Lines {
		for i := 1; i < len(l.Points) && l.Kind == Visible; i++ {
			out = append(out, segment{l.Points[i-1], l.Points[i]})
		}
	}
	return out
}

// contacts are the stretches of edges that lie on a face of another part, as they fall in the picture.
func contacts(s *Scene, d Direction) []segment {
	var out []segment
	w := witness{s: s, d: d}
	for i := range s.edges {
		e := &s.edges[i]
		for k := range s.faces {
			f := &s.faces[k]
			a, b := s.verts[e.from], s.verts[e.to]
			if f.part != e.part && math.Abs(f.normal.Dot(a)-f.d) < 1e-4 && math.Abs(f.normal.Dot(b)-f.d) < 1e-4 {
				out = append(out, w.onFace(f, a, b)...)
			}
		}
	}
	return out
}

// onFace is between which places of the way from a to b it runs on a face or along its outline, to within a share of
// its length.
func (w witness) onFace(f *face, a, b mgl64.Vec3) []segment {
	const places = 60
	var out []segment
	aside := b.Sub(a).Normalize().Cross(f.normal).Mul(1e-3)
	at := func(k float64) draw.Point { return w.d.Point(a.Add(b.Sub(a).Mul(max(0, min(k/places, 1))))) }
	for k := range places {
		p := a.Add(b.Sub(a).Mul((float64(k) + 0.5) / places))
		if w.holds(f, p.Add(aside)) || w.holds(f, p.Sub(aside)) {
			out = append(out, segment{at(float64(k) - 1), at(float64(k) + 2)})
		}
	}
	return out
}
