package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"splaywright/app/session"
	"splaywright/assets"
	"splaywright/model/measure"
)

func TestTheGalleryShowsEveryExample(t *testing.T) {
	w := open(t, Options{})
	w.win.Resize(fyne.NewSize(1280, 820))
	w.welcome()
	pictures := 0
	for _, o := range test.LaidOutObjects(w.win.Canvas().Overlays().Top()) {
		if i, ok := o.(*canvas.Image); ok && i.Image != nil && i.Image.Bounds().Dx() == 2*cardWidth {
			pictures++
		}
	}
	if n := len(assets.Examples()); pictures != n {
		t.Errorf("%d pictures of %d examples", pictures, n)
	}
	if got := overlayText(w); !strings.Contains(got, "260.0 mm high") {
		t.Errorf("the sizes are missing: %s", got)
	}
	tap(t, w, "Reading-nook bench")
	if got := w.s.Design().Title; got != "Reading-nook bench" || w.win.Canvas().Overlays().Top() != nil {
		t.Errorf("%q is open", got)
	}
	if w.win.Canvas().Focused() != w.sizes.Field("size.height").Input() {
		t.Errorf("the keyboard is at %T, not at the first size", w.win.Canvas().Focused())
	}
	w.welcome()
	if w.win.Canvas().Overlays().Top() != nil {
		t.Error("the examples are offered unasked a second time")
	}
}

func TestTheFirstExampleIsInTheUnitsOfTheCountry(t *testing.T) {
	for _, c := range []struct {
		env  map[string]string
		want measure.Unit
	}{
		{map[string]string{"LANG": "en_US.UTF-8"}, measure.Imperial},
		{map[string]string{"LANG": "de_DE.UTF-8"}, measure.Metric},
		{map[string]string{"LANG": "en_US.UTF-8", "LC_MEASUREMENT": "ja_JP.UTF-8"}, measure.Metric},
		{map[string]string{"LC_ALL": "es_US@x", "LANG": "de_DE.UTF-8"}, measure.Imperial},
		{map[string]string{"LANG": "C.UTF-8"}, measure.Metric},
		{nil, measure.Metric},
	} {
		s, err := session.FromExample(ExampleFor(func(k string) string { return c.env[k] }))
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Design().Units; got != c.want {
			t.Errorf("%v begins in unit %v", c.env, got)
		}
	}
}
