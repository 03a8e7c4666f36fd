package papers

import (
	"bytes"
	"context"
	"encoding/xml"
	"fmt"
	"image"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"splaywright/assets"
	"splaywright/export/pdf"
	"splaywright/export/svg"
	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/render/draw"
	"splaywright/render/pattern"
)

func TestPatternsHaveNamesOfTheirOwn(t *testing.T) {
	for _, e := range assets.Examples() {
		files, err := Files(examplePiece(t, e), Options{Patterns: &pattern.Options{}})
		if err != nil {
			t.Fatal(err)
		}
		seen, patterns := map[string]bool{}, 0
		for _, f := range files {
			if seen[f.Name] {
				t.Errorf("%s: two files are called %s", e.Name, f.Name)
			}
			seen[f.Name] = true
			if strings.HasPrefix(f.Name, "pattern-") {
				patterns++
			}
		}
		if patterns < 3 || patterns%3 != 0 { // three files for every kind of part
			t.Errorf("%s: %d files of patterns", e.Name, patterns)
		}
	}
}

func fullSets(t testing.TB, o pattern.Options) []pattern.Set {
	t.Helper()
	s, err := pattern.Sets(model.Derive(formtest.Full()), o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// As another program draws the page at 600 dots an inch, its bars are as long as they say, to 0.1 mm,
// and corrected ones are as much longer as the printer shortens them.
func TestBarsMeasureTrueInAPicture(t *testing.T) {
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		t.Skip("pdftoppm is not installed; the bars were not measured in a picture")
	}
	for _, c := range []struct {
		name   string
		o      pattern.Options
		fx, fy float64
	}{
		{"plain", pattern.Options{}, 1, 1},
		{"corrected", pattern.Options{AcrossBar: 99.2, DownBar: 100.1}, 100 / 99.2, 100 / 100.1},
	} {
		t.Run(c.name, func(t *testing.T) {
			page := fullSets(t, c.o)[1].Sheets[1]
			img := picture(t, page)
			var seen int
			for _, it := range page.Items {
				p, ok := it.(draw.Path)
				if !ok || p.Layer != "bar" {
					continue
				}
				seen++
				b := draw.Bounds([]draw.Item{p})
				long, f := b.Width(), c.fx
				if b.Height() > long {
					long, f = b.Height(), c.fy
				}
				want := 100 * f
				if math.Abs(long/f-101.6) < 1e-6 {
					want = 101.6 * f
				}
				if got := measured(img, page, b); math.Abs(got-want) > 0.1 {
					t.Errorf("a bar of %.3f mm measures %.3f mm", want, got)
				}
			}
			if seen != 4 {
				t.Errorf("%d bars", seen)
			}
		})
	}
}

const dotsPerMM = 600 / 25.4

func picture(t *testing.T, page draw.Page) image.Image {
	t.Helper()
	dir := t.TempDir()
	name := filepath.Join(dir, "page.pdf")
	var b bytes.Buffer
	if err := pdf.Write(&b, []draw.Page{page}, pdf.Meta{}); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("pdftoppm", "-r", "600", "-gray", "-singlefile", name, filepath.Join(dir, "page")).CombinedOutput(); err != nil {
		t.Fatalf("pdftoppm: %v\n%s", err, out)
	}
	data, err := os.ReadFile(filepath.Join(dir, "page.pgm"))
	if err != nil {
		t.Fatal(err)
	}
	var wide, high int
	if _, err := fmt.Sscanf(string(data[:40]), "P5\n%d %d\n255", &wide, &high); err != nil {
		t.Fatal(err)
	}
	return &image.Gray{Pix: data[len(data)-wide*high:], Stride: wide, Rect: image.Rect(0, 0, wide, high)}
}

// measured is the length of the dark run along the foot of a bar, mm: grey dots at its ends count in part.
func measured(img image.Image, page draw.Page, b draw.Box) float64 {
	level := b.Width() > b.Height()
	dark := func(along int) float64 {
		x, y := along, int((page.Height-b.Min.Y-0.35)*dotsPerMM)
		if !level {
			x, y = int((b.Min.X+0.35)*dotsPerMM), along
		}
		r, _, _, _ := img.At(x, y).RGBA()
		return 1 - float64(r)/0xffff
	}
	middle := int((b.Min.X + b.Max.X) / 2 * dotsPerMM)
	if !level {
		middle = int((page.Height - (b.Min.Y+b.Max.Y)/2) * dotsPerMM)
	}
	sum := 0.0
	for i := middle; dark(i) > 0.02; i++ {
		sum += dark(i)
	}
	for i := middle - 1; dark(i) > 0.02; i-- {
		sum += dark(i)
	}
	// the bar's ink is not quite black
	return sum / dark(middle) / dotsPerMM
}

// The file for a cutter, read by an XML reader that knows nothing of us, is in true millimetres: one
// unit of its drawing is 1 mm, its bars measure 100 mm and 4 in, and the top's outline the top's length.
func TestSVGIsInTrueMillimetres(t *testing.T) {
	for _, s := range fullSets(t, pattern.Options{AcrossBar: 99.2}) {
		var b bytes.Buffer
		if err := svg.Write(&b, s.Whole); err != nil {
			t.Fatal(err)
		}
		var doc struct {
			Width   string `xml:"width,attr"`
			Height  string `xml:"height,attr"`
			ViewBox string `xml:"viewBox,attr"`
			Paths   []struct {
				D     string `xml:"d,attr"`
				Class string `xml:"class,attr"`
			} `xml:"g>path"`
		}
		if err := xml.Unmarshal(b.Bytes(), &doc); err != nil {
			t.Fatal(err)
		}
		if want := fmt.Sprintf("0 0 %s %s", strings.TrimSuffix(doc.Width, "mm"), strings.TrimSuffix(doc.Height, "mm")); doc.ViewBox != want {
			t.Errorf("%s: %s × %s shows %s", s.Name.ID, doc.Width, doc.Height, doc.ViewBox)
		}
		var across, down []float64
		longest := 0.0
		for _, p := range doc.Paths {
			w, h := extent(t, p.D)
			if p.Class == "bar" && w > h {
				across = append(across, w)
			} else if p.Class == "bar" {
				down = append(down, h)
			}
			if p.Class == "cut" {
				longest = max(longest, w)
			}
		}
		for _, got := range [][]float64{across, down} {
			if len(got) != 2 || math.Abs(got[0]-100) > 2e-4 || math.Abs(got[1]-101.6) > 2e-4 {
				t.Errorf("%s: bars of %v mm", s.Name.ID, got)
			}
		}
		// worked example of the design: the top's blank is 424.204 mm long, computed outside
		if s.Name.ID == "top" && math.Abs(longest-424.204) > 1e-3 {
			t.Errorf("the top is %.4f mm long", longest)
		}
	}
}

// extent is the size of the box round the end points of an SVG path of absolute steps.
func extent(t *testing.T, d string) (w, h float64) {
	t.Helper()
	lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, step := range strings.FieldsFunc(d, func(r rune) bool { return strings.ContainsRune("MLCZ", r) }) {
		pairs := strings.Fields(step)
		xy := strings.Split(pairs[len(pairs)-1], ",")
		for i := range 2 {
			v, err := strconv.ParseFloat(xy[i], 64)
			if err != nil {
				t.Fatal(err)
			}
			lo[i], hi[i] = min(lo[i], v), max(hi[i], v)
		}
	}
	return hi[0] - lo[0], hi[1] - lo[1]
}

// A set of at least 30 sheets from the piece to the written files; at most 2 s are wanted.
func BenchmarkPatterns(b *testing.B) {
	p := model.Derive(formtest.Full())
	sheets := 0
	for b.Loop() {
		files, err := newTask(context.Background(), p, Options{}, nil).patterns(pattern.Options{})
		if err != nil {
			b.Fatal(err)
		}
		for _, f := range files {
			if err := f.Write(io.Discard); err != nil {
				b.Fatal(err)
			}
		}
	}
	for _, s := range fullSets(b, pattern.Options{}) {
		sheets += len(s.Sheets)
	}
	b.ReportMetric(float64(sheets), "sheets")
}
