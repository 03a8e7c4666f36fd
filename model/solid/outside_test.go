package solid

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

// outsideAgrees is the relative difference allowed between our closed forms and a general-purpose
// solid library's integration (float64 booleans with a tolerance of 1e-7 mm).
const outsideAgrees = 1e-7

// outsideProgram compiles testdata/outside/volume.cpp, or skips where that is not possible.
func outsideProgram(t *testing.T) string {
	t.Helper()
	const headers = "/usr/include/opencascade"
	// Of the headers needed this one alone comes with the last package, which asks for the others.
	if _, err := os.Stat(filepath.Join(headers, "NCollection_AliasedArray.hxx")); err != nil {
		t.Skip("the outside check needs Debian's libocct-visualization-dev")
	}
	cxx, err := exec.LookPath("g++")
	if err != nil {
		t.Skip("the outside check needs g++")
	}
	program := filepath.Join(t.TempDir(), "volume")
	out, err := exec.Command(cxx, "-O0", "-w", "-isystem", headers, "testdata/outside/volume.cpp", "-o", program,
		"-lTKBO", "-lTKPrim", "-lTKTopAlgo", "-lTKGeomAlgo", "-lTKBRep", "-lTKG3d", "-lTKG2d", "-lTKMath", "-lTKernel").CombinedOutput()
	if err != nil {
		t.Fatalf("the outside check does not compile: %v\n%s", err, out)
	}
	return program
}

// recipe is the list of commands that builds a body the outside program's way.
type recipe struct{ bytes.Buffer }

func (r *recipe) say(format string, a ...any) { fmt.Fprintf(&r.Buffer, format+"\n", a...) }

func (r *recipe) keep(p Plane) { r.say("keep %.17g %.17g %.17g %.17g", p.N[0], p.N[1], p.N[2], p.D) }

// slab is the space between the board's faces.
func (r *recipe) slab(t float64) { r.say("box -900 -900 %.17g 900 900 0", -t) }

// drill cuts a cylinder of the given length beginning at p.
func (r *recipe) drill(p, axis mgl64.Vec3, radius, length float64) {
	r.say("cylinder %.17g %.17g %.17g %.17g %.17g %.17g %.17g %.17g\ncut", p[0], p[1], p[2], axis[0], axis[1], axis[2], radius, length)
}

func TestOutsideLibraryAgrees(t *testing.T) {
	if testing.Short() {
		t.Skip("compiles a program")
	}
	program := outsideProgram(t)
	for _, c := range []struct {
		name  string
		board Board
		tell  func(r *recipe, b Board)
	}{
		{"slab with sockets and round holes", slab(6, 0), tellSlab},
		{"slab with sockets and 12 facets", slab(6, 12), tellSlab},
		{"arch on a leaning end", archBoard(150, 45, 6*deg, 0), tellArch},
		{"leaning arch on a leaning end", archBoard(150, 45, 6*deg, 10*deg), tellArch},
		{"housing, stepped leaning bores, pilot in an end", housingBoard(), tellHousing},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := build(t, c.board)
			var r recipe
			c.tell(&r, c.board)
			volume, area := r.ask(t, program)
			near(t, "volume", s.Volume(), volume, outsideAgrees)
			near(t, "area", s.Area(), area, outsideAgrees)
		})
	}
	for _, c := range overlaps() {
		t.Run("overlap: "+c.name, func(t *testing.T) {
			// Chords within fine of their arcs; the arcs of these boards are 600 mm long in all, 22 mm high.
			const fine = 1e-5
			var r recipe
			tellSlab(&r, slab(6, 0))
			c.tell(&r, c.board)
			r.place(c.place)
			r.say("common")
			volume, _ := r.ask(t, program)
			got, err := build(t, slab(6, 0)).Blocks(fine).Overlap(build(t, c.board).Blocks(fine), c.place)
			if err != nil || math.Abs(got-volume) > fine*600*22+outsideAgrees*volume {
				t.Errorf("%.9g (%v), the library says %.9g", got, err, volume)
			}
		})
	}
}

// overlaps are boards placed in the slab with 6 sockets.
func overlaps() []struct {
	name  string
	board Board
	tell  func(r *recipe, b Board)
	place mgl64.Mat4
} {
	type at = struct {
		name  string
		board Board
		tell  func(r *recipe, b Board)
		place mgl64.Mat4
	}
	return []at{
		{"arch on end through the middle", archBoard(150, 45, 6*deg, 0), tellArch, mgl64.HomogRotate3DY(1.45)},
		{"arch askew at an end", archBoard(150, 45, 6*deg, 10*deg), tellArch,
			mgl64.Translate3D(150, 40, 30).Mul4(mgl64.HomogRotate3D(0.7, mgl64.Vec3{1, 2, 2}.Mul(1.0/3)))},
		{"housing and screw holes crosswise", housingBoard(), tellHousing,
			mgl64.Translate3D(60, 30, 5).Mul4(mgl64.HomogRotate3D(1.2, mgl64.Vec3{2, -1, 2}.Mul(1.0/3)))},
	}
}

// place moves the body on top.
func (r *recipe) place(m mgl64.Mat4) {
	fmt.Fprint(&r.Buffer, "place")
	for i := range 3 {
		for j := range 4 {
			fmt.Fprintf(&r.Buffer, " %.17g", m.At(i, j))
		}
	}
	fmt.Fprintln(&r.Buffer)
}

// ask gives the volume and the area of the body on top.
func (r *recipe) ask(t *testing.T, program string) (volume, area float64) {
	t.Helper()
	r.say("print")
	cmd := exec.Command(program)
	cmd.Stdin = r
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	var valid int
	if _, err := fmt.Sscan(string(out), &volume, &area, &valid); err != nil || valid != 1 {
		t.Fatalf("the library says %q", strings.TrimSpace(string(out)))
	}
	return volume, area
}

func tellSlab(r *recipe, b Board) {
	r.slab(b.Thickness)
	// The four long planes: one of each tag that the outline begins its sides with.
	for i, w := range b.Outline {
		if i == 0 || w.Tag == "back-edge" || (w.Tag == "tail end" && b.Outline[i-1].Tag != "cheek") {
			r.keep(w.Plane)
		}
	}
	for i, w := range b.Outline {
		if w.Tag != "socket floor" {
			continue
		}
		// What lies in the socket: outside of its three walls, and within 100 mm of its middle.
		r.slab(b.Thickness)
		for _, q := range b.Outline[i-1 : i+2] {
			r.keep(Plane{q.Plane.N.Mul(-1), -q.Plane.D})
		}
		r.keep(Plane{mgl64.Vec3{1, 0, 0}, w.Start[0] + 60})
		r.keep(Plane{mgl64.Vec3{-1, 0, 0}, 60 - w.Start[0]})
		r.say("cut")
	}
	for _, l := range b.Openings {
		if c := l[0].Round; c != nil {
			r.drill(c.Point.Add(mgl64.Vec3{0, 0, -50}), c.Axis, c.Radius, 100)
			continue
		}
		r.slab(b.Thickness)
		for _, w := range l {
			r.keep(Plane{w.Plane.N.Mul(-1), -w.Plane.D})
		}
		r.say("cut")
	}
}

func tellArch(r *recipe, b Board) {
	r.slab(b.Thickness)
	for _, w := range b.Outline {
		if w.Round == nil {
			r.keep(w.Plane)
		}
	}
	for _, w := range b.Outline {
		if c := w.Round; c != nil {
			r.drill(c.Point.Sub(c.Axis.Mul(200)), c.Axis, c.Radius, 400)
		}
	}
}

func housingBoard() Board {
	out := block(400, 250, 6*deg, 4*deg)
	lean := func(w Wall) Wall { return inward(w) }
	return Board{Thickness: 20, Outline: out,
		Pockets: []Pocket{{Tag: "housing", Depth: 6, Walls: Loop{
			out[0], lean(flat("outer plane", 180, 0, 1, 0, 6*deg)), out[2], lean(flat("inner plane", 160, 0, -1, 0, -6*deg))}}},
		Bores: []Bore{
			{Tag: "screw 1", Entry: mgl64.Vec3{170, -60, 0}, Axis: leaning(6 * deg), Steps: []Step{{4.5, 5}, {2.25, through}}},
			{Tag: "screw 2", Entry: mgl64.Vec3{170, 60, 0}, Axis: leaning(6 * deg), Steps: []Step{{4.5, 5}, {2.25, through}}},
			{Tag: "pilot", Entry: mgl64.Vec3{-200 - 10*math.Tan(6*deg), 0, -10}, Axis: mgl64.Vec3{1, 0, 0}, Steps: []Step{{1.5, 30}}},
		}}
}

func tellHousing(r *recipe, b Board) {
	r.slab(b.Thickness)
	for _, w := range b.Outline {
		r.keep(w.Plane)
	}
	r.say("box -900 -900 -30 900 900 %.17g", b.Pockets[0].Depth-b.Thickness)
	for _, w := range b.Pockets[0].Walls {
		if w.Tag == "outer plane" || w.Tag == "inner plane" {
			r.keep(Plane{w.Plane.N.Mul(-1), -w.Plane.D})
		}
	}
	r.say("cut")
	for _, h := range b.Bores {
		at := -20.0
		for _, s := range h.Steps {
			to := math.Min(s.To, 100)
			r.drill(h.Entry.Add(h.Axis.Mul(at)), h.Axis, s.Radius, to-at)
			at = to
		}
	}
}
