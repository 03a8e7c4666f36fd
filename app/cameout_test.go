package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"splaywright/app/keyed"
)

// What is measured of the finished piece is typed among the sizes, and what would explain it stands in the tab of the sizes.
func TestWhatCameOutIsTypedAndExplained(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	w.win.Resize(fyne.NewSize(1280, 820))
	openTab(t, w, "Sizes")
	titles := func() string {
		return strings.Join(optionsIn(w.tab("Sizes").Object()), "; ")
	}
	if got := titles(); got != "Sizes; What tolerances come to" {
		t.Errorf("it has the tables %s", got)
	}
	if w.sizes.Field("came-out.width-floor") != nil {
		t.Error("there are fields although nothing was measured")
	}
	w.set("came-out.height-left", "260")
	w.set("tolerance.angle", "0.2 deg")
	for _, path := range []string{"came-out.width-floor", "came-out.height-left", "tolerance.angle"} {
		if w.sizes.Field(path) == nil {
			t.Errorf("%s has no field", path)
		}
	}
	if w.sizes.Field("came-out.depth-floor") != nil {
		t.Error("a stool has a field of what only walls are measured by")
	}
	w.set("came-out.width-floor", "482")
	if got := titles(); !strings.HasSuffix(got, "As it came out; What would explain it") {
		t.Errorf("measured, it has the tables %s", got)
	}
}

// optionsIn are what the first choice among some objects has to choose from.
func optionsIn(o fyne.CanvasObject) []string {
	switch o := o.(type) {
	case *keyed.Select:
		return o.Options
	case *fyne.Container:
		for _, in := range o.Objects {
			if got := optionsIn(in); got != nil {
				return got
			}
		}
	}
	return nil
}
