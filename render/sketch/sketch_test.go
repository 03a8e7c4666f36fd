package sketch

import (
	"fmt"
	"testing"

	"splaywright/render/draw"
)

var inks = Inks{Line: draw.Ink{R: 1}, Wood: draw.Ink{R: 2}, Strong: draw.Ink{R: 3}, Tint: draw.Ink{R: 4}}

// Every sketch stays on its paper, has something that stands out, and is unlike every other.
func TestSketches(t *testing.T) {
	seen := map[string]string{}
	for _, name := range Names() {
		page, ok := Of(name, inks)
		if !ok {
			t.Fatalf("no sketch %s", name)
		}
		if b := draw.Bounds(page.Items); b.Min.X < 0 || b.Min.Y < 0 || b.Max.X > Width || b.Max.Y > Height {
			t.Errorf("%s reaches over its paper: %v", name, b)
		}
		if !standsOut(page) {
			t.Errorf("%s: nothing stands out", name)
		}
		all := fmt.Sprint(page.Items)
		if other := seen[all]; other != "" {
			t.Errorf("%s is drawn like %s", name, other)
		}
		seen[all] = name
	}
	if len(seen) < 100 {
		t.Errorf("only %d sketches", len(seen))
	}
	if _, ok := Of("none such", inks); ok {
		t.Error("a sketch that nobody drew")
	}
}

func standsOut(page draw.Page) bool {
	for _, it := range page.Items {
		if p := it.(draw.Path); p.Pen.Width > 0 && p.Pen.Ink == inks.Strong || p.Filled && p.Fill == inks.Strong {
			return true
		}
	}
	return false
}

// Names of two groups do not hide each other.
func TestNamesAreTakenOnce(t *testing.T) {
	n := 0
	for _, group := range []map[string]func(*pad){stools(), walls(), plans(), tails(), joints(), tenons(), boards(), features(), edges(), saws(), shop(), pages()} {
		n += len(group)
	}
	if len(figures()) != n {
		t.Errorf("%d names for %d sketches", len(figures()), n)
	}
}
