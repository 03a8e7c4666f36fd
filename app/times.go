package app

import (
	"fmt"
	"io"
	"math"
	"slices"
	"time"

	"fyne.io/fyne/v2"
)

// Times tells how long the window takes: from the start of the program to its first picture, and from a key press in a
// field to the pictures of the drawing table and the pictorial being ready for the display. It is for those who work on
// the program.
type Times struct {
	Out   io.Writer // where each is told; nil = nowhere
	Began time.Time // when the program was started

	pressed time.Time // the key press whose pictures are awaited; zero = none
	given   bool      // the display has the first picture
	running bool      // the window paints when it has to
	took    []time.Duration
	late    int // pictures that were not ready with the piece
}

// press notes a key press.
func (t *Times) press() { t.pressed = time.Now() }

// pictures notes that the pictures of what was pressed are handed to the window; ready tells that they are painted.
func (t *Times) pictures(ready bool) {
	if t.pressed.IsZero() {
		return
	}
	if !ready {
		t.late++
		return // they come later; the next press is measured
	}
	t.took = append(t.took, time.Since(t.pressed))
	t.pressed = time.Time{}
	if t.Out != nil {
		fmt.Fprintf(t.Out, "key press to pictures %s ms\n", ms(t.took[len(t.took)-1]))
	}
}

// first notes that the display has been given the first picture; it is there when the window has painted the rest.
func (t *Times) first() {
	if t.given || t.Out == nil {
		return
	}
	t.given = true
	if t.running {
		fyne.Do(t.begun)
	}
}

// begun notes that the window is shown and all that it had to paint is painted.
func (t *Times) begun() {
	t.running = true
	if t.given && t.Out != nil {
		fmt.Fprintf(t.Out, "start to first picture %s ms\n", ms(time.Since(t.Began)))
	}
}

// filled notes that the sizes and the tables are shown as well.
func (t *Times) filled() {
	if t.Out != nil {
		fmt.Fprintf(t.Out, "start to the whole window %s ms\n", ms(time.Since(t.Began)))
	}
}

// Share is the time within which a share of the key presses had their pictures.
func (t *Times) Share(share float64) time.Duration {
	if len(t.took) == 0 {
		return 0
	}
	all := slices.Sorted(slices.Values(t.took))
	return all[max(0, int(math.Ceil(share*float64(len(all))))-1)]
}

// tell sums up.
func (t *Times) tell() {
	if t.Out != nil && len(t.took) > 0 {
		fmt.Fprintf(t.Out, "%d key presses: median %s ms, 99th of 100 %s ms; %d pictures were late\n",
			len(t.took), ms(t.Share(0.5)), ms(t.Share(0.99)), t.late)
	}
}

func ms(d time.Duration) string { return fmt.Sprintf("%.1f", d.Seconds()*1000) }
