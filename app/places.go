package app

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"splaywright/render/table"
)

// placesEnv names a file into which the window writes where its parts stand and what they say, for the robot that
// drives it. Nobody else sets it.
const placesEnv = "SPLAYWRIGHT_PLACES"

// placesEvery is how often the file is written.
const placesEvery = 200 * time.Millisecond

// tellPlaces keeps the file up to date until the window closes; without the file's name it does nothing.
func (w *Window) tellPlaces(stop <-chan struct{}) {
	path := os.Getenv(placesEnv)
	if path == "" {
		return
	}
	tick := time.NewTicker(placesEvery)
	defer tick.Stop()
	was := ""
	for {
		select {
		case <-stop:
			return
		case <-tick.C:
			now := ""
			fyne.DoAndWait(func() { now = w.places() })
			if now == was {
				continue
			}
			if was = now; writeWhole(path, now) != nil {
				return // the robot sees that nothing comes
			}
		}
	}
}

// writeWhole writes a file that is never seen half written.
func writeWhole(path, text string) error {
	half := filepath.Join(filepath.Dir(path), "."+filepath.Base(path))
	if err := os.WriteFile(half, []byte(text), 0o644); err != nil {
		return err
	}
	return os.Rename(half, path)
}

// places is a line for each part that is seen: its name and its place on the window, dots, x y w h; and lines of
// what is said, after "says".
func (w *Window) places() string {
	var b strings.Builder
	canvas, driver := w.win.Canvas(), w.app.Driver()
	scale := canvas.Scale()
	put := func(name string, o fyne.CanvasObject) {
		if o == nil || !o.Visible() {
			return
		}
		at, size := driver.AbsolutePositionForObject(o), o.Size()
		fmt.Fprintf(&b, "%s %.0f %.0f %.0f %.0f\n", name, at.X*scale, at.Y*scale, size.Width*scale, size.Height*scale)
	}
	if top := canvas.Overlays().Top(); top != nil {
		if pop, ok := top.(*widget.PopUp); ok {
			put("dialog", pop.Content)
		}
		for _, name := range slices.Sorted(maps.Keys(w.inDialog)) {
			if o := w.inDialog[name]; driver.CanvasForObject(o) != nil {
				put("dialog."+name, o)
			}
		}
	}
	put("sizes", w.sizes.Object())
	put("drawing", w.drawing)
	put("pictorial", w.turner)
	put("apart", w.apart.slider)
	put("tables", w.tabs)
	for _, path := range w.sizes.Paths() {
		put("size:"+path, w.sizes.Field(path).Input().(fyne.CanvasObject))
	}
	put("add-board", w.boards.add)
	put("boards", w.boards.picture)
	if w.writing != nil {
		put("progress", w.progress.share)
	}
	put("papers", w.progress.all)
	fmt.Fprintf(&b, "says state %s\nsays tab %s\nsays plan %s\nsays apart %s\n", w.strip.State(), w.openTab(), w.boards.said.Text, w.apart.said.Text)
	fmt.Fprintf(&b, "says keyboard %s\n", w.hasKeyboard())
	if t := w.tab(w.openTab()); t != nil {
		tb, _ := t.Shown()
		for c, col := range tb.Columns {
			fmt.Fprintf(&b, "says column %s: %s\n", col.Head, strings.Join(columnOf(tb, c), " | "))
		}
	}
	return b.String()
}

func columnOf(tb table.Table, c int) []string {
	var out []string
	for _, row := range tb.Rows {
		if c < len(row) {
			out = append(out, row[c].Text)
		}
	}
	return out
}

// hasKeyboard names what has the keyboard; "" for nothing, or what has no name.
func (w *Window) hasKeyboard() string {
	switch f := w.win.Canvas().Focused(); f {
	case nil:
	case fyne.Focusable(w.turner):
		return "pictorial"
	case fyne.Focusable(w.drawing):
		return "drawing"
	default:
		for _, path := range w.sizes.Paths() {
			if w.sizes.Field(path).Input() == f {
				return path
			}
		}
		for name, o := range w.inDialog {
			if o == any(f) {
				return name
			}
		}
	}
	return ""
}
