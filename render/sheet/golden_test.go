package sheet

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"splaywright/export/pdf"
	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/render/draw"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// recorded lists a page's items as text: every text with its place, and what is drawn on each layer.
func recorded(p draw.Page) string {
	var b strings.Builder
	fmt.Fprintf(&b, "page %q %.1f x %.1f\n", p.Title, p.Width, p.Height)
	for _, it := range p.Items {
		switch it := it.(type) {
		case draw.Text:
			fmt.Fprintf(&b, "text %-10s %7.1f %7.1f turn %-3.0f size %.1f %s", it.Layer, it.At.X, it.At.Y, it.Turn, it.Size, it.Text)
			if it.Ref != "" {
				fmt.Fprintf(&b, "  <%s>", it.Ref)
			}
			b.WriteString("\n")
		case draw.Path:
			box := draw.Bounds([]draw.Item{it})
			fmt.Fprintf(&b, "path %-10s %7.1f %7.1f %7.1f %7.1f %s\n", it.Layer, box.Min.X, box.Min.Y, box.Max.X, box.Max.Y, it.Ref)
		}
	}
	return b.String()
}

// The general arrangement and the sheets of the parts, item by item.
func TestDrawingsAsRecorded(t *testing.T) {
	pages := Papers(model.Derive(formtest.WorkedExample()), Options{})
	var got strings.Builder
	for _, p := range pages[:3] {
		got.WriteString(recorded(p))
	}
	drawings := strings.ReplaceAll(got.String(), fmt.Sprintf(" / %d\n", len(pages)), " / all\n") // tables come and go
	name := filepath.Join("testdata", "worked-example.txt")
	if *update {
		if err := os.WriteFile(name, []byte(drawings), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), drawings); diff != "" {
		t.Errorf("the drawings changed (-want +got); if that is right, run with -update:\n%s", diff)
	}
}

// The figures of the worked example stand on its sheets (the design's own worked example, rounded to
// its step of half a millimetre).
func TestTheSheetsSayTheWorkedExample(t *testing.T) {
	pages := Papers(model.Derive(formtest.WorkedExample()), Options{})
	var all strings.Builder
	for _, p := range pages {
		all.WriteString(recorded(p))
	}
	for _, want := range []string{
		" 420.0  <size.width>", " 474.5  <size.width>", " 260.0  <size.height>", " 250.0  <size.depth>", " 6.0°  <splay.ends>", " 20.0  <boards.top.thickness>",
		"Blank 424.0 × 250.0 × 20.0", "Blank 263.5 × 250.0 × 20.0", " 59.0  <top/side-right>", " 242.0  <top/side-right>", "Pins 8.00° from square, on the end", "Cheeks lean 0.84° from square",
	} {
		if !strings.Contains(all.String(), want) {
			t.Errorf("%q is on no sheet", want)
		}
	}
}

func TestSamePagesAndBytesTwice(t *testing.T) {
	once, again := Papers(model.Derive(formtest.Full()), Options{}), Papers(model.Derive(formtest.Full()), Options{})
	if !reflect.DeepEqual(once, again) {
		t.Fatal("two sets of one piece differ")
	}
	var a, b bytes.Buffer
	for w, pages := range map[*bytes.Buffer][]draw.Page{&a: once, &b: again} {
		if err := pdf.Write(w, pages, pdf.Meta{Title: "Everything"}); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("two files of one piece differ")
	}
	if a.Len() > 400_000 {
		t.Errorf("the set takes %d bytes, want at most 400 kB", a.Len())
	}
}

func TestViewsAreAtFullSize(t *testing.T) {
	for _, v := range Views(model.Derive(formtest.WorkedExample()), nil) {
		if v.Name == "side-left" && (v.Page.Width < 273.5 || v.Page.Width > 273.6) {
			t.Errorf("a side of 263.534 mm with 5 mm at each end makes a page %.3f mm wide", v.Page.Width)
		}
	}
}

// First angle puts the view from above below the front, third angle above it.
func TestProjectionPlacesTheViews(t *testing.T) {
	p := model.Derive(formtest.WorkedExample())
	for projection, below := range map[string]bool{"first": true, "third": false} {
		o := Options{Projection: projection}.fill(p)
		pics := project(p, o)
		a := threeViews(p, pics, 0.2, o)
		if got := a.box.Min.Y < -60; got != below {
			t.Errorf("%s angle: the view from above reaches down to %.1f mm; the front stands on 0", projection, a.box.Min.Y)
		}
		if got := pics.end.Direction.Name; got != map[string]string{"first": "left", "third": "end"}[projection] {
			t.Errorf("%s angle: the view at the right is seen from %q", projection, got)
		}
	}
}
