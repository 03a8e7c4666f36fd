//go:build !nowindow

// Command empty opens a window of the window's library with nothing in it but one picture, and says when that is there:
// what the program's own start is compared with.
package main

import (
	"fmt"
	"image"
	"os"
	"strconv"
	"time"

	"fyne.io/fyne/v2"
	fyneapp "fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/canvas"

	_ "splaywright/cmd/splaywright/plainlocale"
)

func main() {
	began := time.Now()
	if n, err := strconv.ParseInt(os.Getenv("SPLAYWRIGHT_TIMES"), 10, 64); err == nil {
		began = time.Unix(0, n)
	}
	given, running := false, false
	tell := func() { fmt.Fprintf(os.Stderr, "start to first picture %.1f ms\n", time.Since(began).Seconds()*1000) }
	a := fyneapp.NewWithID("splaywright.empty")
	w := a.NewWindow("Empty")
	w.SetContent(canvas.NewRaster(func(wide, high int) image.Image {
		if !given && running {
			fyne.Do(tell) // when all is painted
		}
		given = true
		return image.NewRGBA(image.Rect(0, 0, wide, high))
	}))
	a.Lifecycle().SetOnStarted(func() {
		if running = true; given {
			tell()
		}
	})
	w.Resize(fyne.NewSize(1280, 820))
	w.ShowAndRun()
}
