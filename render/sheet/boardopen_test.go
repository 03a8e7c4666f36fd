package sheet

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/tongue"
	"splaywright/model/yield"
	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
)

func resawnPages(t *testing.T, d form.Design, o Options) []draw.Page {
	t.Helper()
	p := model.Derive(d)
	r, err := yield.Solve(context.Background(), p)
	if err != nil || r.Short() {
		t.Fatalf("%v %+v", err, r.Plan.Misfits)
	}
	return BoardPlan(p, r, o)
}

// What is resawn as it is drawn, item by item.
func TestResawnAsRecorded(t *testing.T) {
	for name, d := range map[string]form.Design{"resawn-box": formtest.LetterBox(), "resawn-stool": formtest.MirrorStool()} {
		var got strings.Builder
		for _, p := range resawnPages(t, d, Options{}) {
			got.WriteString(recorded(p))
		}
		file := filepath.Join("testdata", name+".txt")
		if *update {
			if err := os.WriteFile(file, []byte(got.String()), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), got.String()); diff != "" {
			t.Errorf("%s differs (-kept +now):\n%s", file, diff)
		}
	}
}

// On every sheet, of boards from short to long, nothing that is resawn lies on anything else or leaves the frame; every
// part is named twice, on its board and where it lies open, and every corner of walls has its number at two ends.
func TestWhatIsResawnIsLegible(t *testing.T) {
	for _, size := range []string{"A3", "Letter"} {
		for _, grow := range []float64{1, 2, 4} {
			d := formtest.LetterBox()
			d.Papers.Sheet = size
			d.Size.Width, d.Size.Depth, d.OnHand[0].Length = measure.Length(grow)*d.Size.Width, measure.Length(grow)*d.Size.Depth, grow*d.OnHand[0].Length
			pages := resawnPages(t, d, Options{})
			legible(t, pages)
			all := ""
			for _, p := range pages {
				all += texts(p)
			}
			for _, name := range []string{"1 Front", "2 End, right", "3 Back", "4 End, left"} {
				if n := strings.Count(all, name); n < 2 {
					t.Errorf("%s, %g times: %s is named %d times", size, grow, name, n)
				}
			}
			for n := 1; n <= 4; n++ {
				if got := cornerNumbers(pages, string(rune('0'+n))); got != 2 {
					t.Errorf("%s, %g times: corner %d stands at %d ends", size, grow, n, got)
				}
			}
		}
	}
	for _, code := range tongue.Codes() {
		for _, d := range []form.Design{formtest.MirrorStool(), formtest.LetterBox()} {
			legible(t, resawnPages(t, d, Options{Tongue: tongue.Load(code)}))
		}
	}
}

func legible(t *testing.T, pages []draw.Page) {
	t.Helper()
	for _, p := range pages {
		plain, rings := p, []draw.Box(nil)
		plain.Items = nil
		for _, it := range p.Items { // rings stand on lines, and a cut may run along a place to avoid
			switch it := it.(type) {
			case draw.Path:
				if it.Layer == "cut" && !it.Filled && slices.ContainsFunc(rings, draw.Bounds([]draw.Item{it}).Meets) {
					t.Errorf("%s: a cut is drawn over a number, at %v", p.Title, draw.Bounds([]draw.Item{it}))
				}
				if it.Layer == "cut" && it.Filled {
					rings = append(rings, draw.Bounds([]draw.Item{it}))
				}
				if it.Layer != "cut" && it.Layer != "avoid" {
					plain.Items = append(plain.Items, it)
				}
			case draw.Text:
				if it.Layer != "cut" && it.Text != "split" && it.Text != "Riss" {
					plain.Items = append(plain.Items, it)
				}
			}
		}
		for _, v := range drawtest.Overlaps(plain, "tint", "paper") {
			t.Error(v)
		}
		for _, it := range plain.Items {
			if s, ok := it.(draw.Text); ok {
				for _, r := range rings {
					if b := draw.Bounds([]draw.Item{s}); b.Min.X < r.Max.X-0.3 && r.Min.X+0.3 < b.Max.X && b.Min.Y < r.Max.Y-0.3 && r.Min.Y+0.3 < b.Max.Y {
						t.Errorf("%s: a ring lies on %q at %v", p.Title, s.Text, s.At)
					}
				}
			}
		}
		frame := draw.Box{Min: draw.Point{X: filing, Y: margin}, Max: draw.Point{X: p.Width - margin, Y: p.Height - margin}}
		for _, it := range p.Items {
			path, ok := it.(draw.Path)
			if !ok || path.Layer != "part" && path.Layer != "cut" {
				continue
			}
			if b := draw.Bounds([]draw.Item{path}); b.Min.X < frame.Min.X || b.Min.Y < frame.Min.Y+largeBlock || b.Max.X > frame.Max.X || b.Max.Y > frame.Max.Y {
				t.Errorf("%s: drawn from %v to %v", p.Title, b.Min, b.Max)
			}
		}
	}
}

// cornerNumbers counts the numbers of corners: texts in the middle of small squares.
func cornerNumbers(pages []draw.Page, number string) (n int) {
	for _, p := range pages {
		for _, it := range p.Items {
			s, ok := it.(draw.Text)
			if !ok || s.Text != number || s.Layer != "notes" {
				continue
			}
			for _, other := range p.Items {
				path, ok := other.(draw.Path)
				if !ok || path.Layer != "notes" {
					continue
				}
				b := draw.Bounds([]draw.Item{path})
				if math.Abs(b.Width()-b.Height()) < 0.1 && b.Width() < 4 && math.Abs((b.Min.X+b.Max.X)/2-s.At.X) < 0.01 {
					n++
					break
				}
			}
		}
	}
	return n
}

// Read back from the drawing at the scale it names, the view of the edge is as thick as the board and the saw's line
// stands where the cut does: 27 mm, of which the upper 12.8 and the lower 12.8 with 1.4 between.
func TestTheEdgeIsDrawnToScale(t *testing.T) {
	pages := resawnPages(t, formtest.LetterBox(), Options{})
	scale, _ := boardScale(Options{}.fill(model.Derive(formtest.LetterBox())), 247*longBoard/760)
	var edge draw.Box
	for _, it := range pages[0].Items {
		if path, ok := it.(draw.Path); ok && path.Layer == "part" {
			if b := draw.Bounds([]draw.Item{path}); math.Abs(b.Width()-554.4*scale) < 1e-6 && math.Abs(b.Height()-27*scale) < 1e-6 {
				edge = b
			}
		}
	}
	if edge.Width() == 0 {
		t.Fatal("there is no view of the edge")
	}
	for _, it := range pages[0].Items {
		if path, ok := it.(draw.Path); ok && path.Layer == "cut" {
			b := draw.Bounds([]draw.Item{path})
			if b.Height() < 1e-6 && b.Min.Y > edge.Min.Y && b.Max.Y < edge.Max.Y {
				if at := (b.Min.Y - edge.Min.Y) / scale; math.Abs(at-13.5) > 1e-6 {
					t.Errorf("the saw's line stands %g mm above the lower face", at)
				}
				return
			}
		}
	}
	t.Error("no line of the saw in the view of the edge")
}
