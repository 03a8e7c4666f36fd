package app

import (
	"os"
	"strconv"

	"fyne.io/fyne/v2"

	"splaywright/app/say"
)

// prefScale is the preference that holds how large everything is shown; 0 = as the system has it.
const prefScale = "scale"

// scaleEnv is where the window's library reads the scale, each time it looks at its settings.
const scaleEnv = "FYNE_SCALE"

// scales are those that can be chosen.
var scales = []float64{1, 1.25, 1.5, 2, 2.5, 3}

// systemScale is the scale that the program was started with, and whether it was.
var systemScale, systemHasScale = os.LookupEnv(scaleEnv)

// useScale lets the library show everything on the scale that was chosen; windows take it over when the look is
// put on.
func useScale(of float64) error {
	switch {
	case of > 0:
		return os.Setenv(scaleEnv, strconv.FormatFloat(of, 'f', -1, 64))
	case systemHasScale:
		return os.Setenv(scaleEnv, systemScale)
	}
	return os.Unsetenv(scaleEnv)
}

// setScale shows everything on another scale, in every window at once.
func (w *Window) setScale(of float64) {
	w.app.Preferences().SetFloat(prefScale, of)
	w.reported(useScale(of))
	w.app.Settings().SetTheme(w.theme()) // the library looks at its settings again
	for _, o := range w.group.all {
		o.markScale()
	}
}

// scaleMenu offers the scales.
func (w *Window) scaleMenu() *fyne.MenuItem {
	item := fyne.NewMenuItem(say.It("Scale of the screen"), nil)
	list := []*fyne.MenuItem{fyne.NewMenuItem(say.It("As the system has it"), func() { w.setScale(0) })}
	for _, s := range scales {
		list = append(list, fyne.NewMenuItem(strconv.FormatFloat(s*100, 'f', -1, 64)+" %", func() { w.setScale(s) }))
	}
	item.ChildMenu = fyne.NewMenu("", list...)
	w.menu.scale = item
	w.markScale()
	return item
}

// markScale ticks the scale that was chosen.
func (w *Window) markScale() {
	now := w.app.Preferences().Float(prefScale)
	for i, it := range w.menu.scale.ChildMenu.Items {
		it.Checked = i == 0 && now == 0 || i > 0 && scales[i-1] == now
	}
	if w.menu.main != nil {
		w.menu.main.Refresh()
	}
}
