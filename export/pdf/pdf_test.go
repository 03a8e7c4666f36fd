package pdf

import (
	"bytes"
	"errors"
	"image"
	_ "image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
)

// sample is two pages of unlike sizes.
func sample() []draw.Page {
	small := draw.Page{Title: "Letter", Width: 279.4, Height: 215.9, Items: []draw.Item{
		draw.Text{At: draw.Point{X: 20, Y: 20}, Size: 2.5, Text: "Second sheet: Höhe ⅝"}}}
	return []draw.Page{drawtest.Page(), small}
}

func write(t *testing.T) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, sample(), Meta{Title: "Reading-nook step ½", Subject: "Working papers"}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// tool runs an outside program on the written file; the test is skipped where it is not installed.
func tool(t *testing.T, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("%s is not installed; this outside check was not made", name)
	}
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %v: %v\n%s", name, args, err, out)
	}
	return string(out)
}

func file(t *testing.T) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "papers.pdf")
	if err := os.WriteFile(name, write(t), 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

func TestSameBytesTwice(t *testing.T) {
	if !bytes.Equal(write(t), write(t)) {
		t.Error("two writings of the same pages differ")
	}
}

func TestAWritersErrorIsReported(t *testing.T) {
	if err := Write(full{}, sample(), Meta{}); err == nil {
		t.Error("a full disk went unnoticed")
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestValid(t *testing.T) {
	if out := tool(t, "qpdf", "--check", file(t)); !strings.Contains(out, "No syntax or stream encoding errors") {
		t.Errorf("qpdf: %s", out)
	}
}

func TestFontsAreEmbedded(t *testing.T) {
	out := tool(t, "pdffonts", file(t))
	rows := strings.Split(strings.TrimSpace(out), "\n")[2:]
	if len(rows) == 0 {
		t.Fatalf("no fonts:\n%s", out)
	}
	for _, r := range rows {
		f := strings.Fields(r) // name, type (2 words), encoding, emb, sub, uni, object ID
		if n := len(f); f[n-5] != "yes" || f[n-3] != "yes" {
			t.Errorf("not embedded, or not to be searched: %s", r)
		}
	}
}

func TestTextCanBeSearched(t *testing.T) {
	out := tool(t, "pdftotext", "-layout", file(t), "-")
	for _, want := range []string{"10 3/8″ = 263.5 mm ±½°", "→ ∠ ⅛ 2′ 3″ × ≤ <a&b>", "Second sheet: Höhe ⅝"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not found in the text:\n%s", want, out)
		}
	}
}

func TestPagesKeepTheirSizes(t *testing.T) {
	out := tool(t, "pdfinfo", "-f", "1", "-l", "2", file(t))
	for _, want := range []string{"Reading-nook step ½", "Working papers", "841.89 x 595.28", "792 x 612"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in:\n%s", want, out)
		}
	}
}

// A bar 100 mm long measures 100 ± 0.1 mm both ways in another program's picture of the page.
func TestABarKeepsItsLength(t *testing.T) {
	const dpi = 600
	prefix := filepath.Join(t.TempDir(), "page")
	tool(t, "pdftoppm", "-r", "600", "-f", "1", "-l", "1", "-gray", "-png", "-singlefile", file(t), prefix)
	f, err := os.Open(prefix + ".png")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	dots := func(mm float64) int { return int(mm / 25.4 * dpi) }
	level := inkOn(img, image.Rect(dots(35), dots(210-31), dots(145), dots(210-31)+1))
	upright := inkOn(img, image.Rect(dots(31), dots(210-145), dots(31)+1, dots(210-35)))
	for name, n := range map[string]float64{"level": level, "upright": upright} {
		if got := n * 25.4 / dpi; math.Abs(got-100) > 0.1 {
			t.Errorf("the %s bar measures %.3f mm", name, got)
		}
	}
}

// inkOn adds up the ink in a part of the picture, in whole dots.
func inkOn(img image.Image, r image.Rectangle) float64 {
	sum := 0.0
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			v, _, _, _ := img.At(x, y).RGBA()
			sum += 1 - float64(v)/0xffff
		}
	}
	return sum
}

func BenchmarkWrite(b *testing.B) {
	pages := []draw.Page{drawtest.Busy(2000), drawtest.Busy(2000), drawtest.Page()}
	for b.Loop() {
		if err := Write(&bytes.Buffer{}, pages, Meta{}); err != nil {
			b.Fatal(err)
		}
	}
}
