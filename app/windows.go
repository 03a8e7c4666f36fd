package app

import (
	"os"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/say"
)

// group is the windows of one run of the program.
type group struct {
	all   []*Window
	done  chan struct{} // closed with the last
	shelf shelf
}

func newGroup() *group { return &group{done: make(chan struct{})} }

// another opens a window with an example; the caller puts its own design into it.
func (w *Window) another() *Window {
	n := newWindow(w.app, Options{Spawn: w.spawn, Journal: w.journals, Comma: w.comma}, w.group)
	n.started()
	n.win.Show()
	return n
}

// beside is another window of this run that has a file open; nil = none.
func (g *group) beside(w *Window, path string) *Window {
	file, err := os.Stat(path)
	if err != nil {
		return nil
	}
	for _, o := range g.all {
		if o == w || o.s.Path() == "" {
			continue
		}
		if its, err := os.Stat(o.s.Path()); err == nil && os.SameFile(file, its) {
			return o
		}
	}
	return nil
}

// close closes the window without asking.
func (w *Window) close() {
	close(w.stop)
	w.stopWriting()
	w.times.tell()
	if w.journal != nil {
		w.reported(w.journal.Close())
	}
	w.group.all = slices.DeleteFunc(w.group.all, func(o *Window) bool { return o == w })
	if len(w.group.all) == 0 {
		close(w.group.done)
	}
	if w.section != nil {
		w.section.win.Close()
	}
	if w.beside != nil {
		w.beside.win.Close()
	}
	w.win.SetCloseIntercept(nil)
	w.win.Close()
}

// askToClose closes the window, after asking when something is unsaved.
func (w *Window) askToClose() { w.askToCloseThen(func() {}) }

// askToCloseThen goes on when the window is closed; while something is asked, it is not.
func (w *Window) askToCloseThen(then func()) {
	w.guard("close the window", func() { w.closeWithPapers(then) })
}

// closeWithPapers closes the window, after asking while papers are being written: what is not there yet would never be.
func (w *Window) closeWithPapers(then func()) {
	if w.writing == nil {
		w.close()
		then()
		return
	}
	if w.asking {
		return // the question stands already
	}
	w.asking = true
	d := w.choose("The papers are not there yet", say.It("They are still being written."), []answer{
		{say.It("Close without them"), widget.MediumImportance, w.close},
		{say.It("Cancel"), widget.MediumImportance, func() {}},
		{say.It("Close when they are there"), widget.HighImportance, func() {
			if w.writing == nil { // they are, by now
				w.close()
				return
			}
			w.writing.then = w.closesAsItStands()
		}},
	})
	d.SetOnClosed(func() { w.asking = false })
	w.readyFor(3)
}

// closesAsItStands closes the window later, after asking anew where the design has changed by then.
func (w *Window) closesAsItStands() func() {
	text := string(w.s.Document().Bytes())
	return func() {
		if text == string(w.s.Document().Bytes()) {
			w.close()
		} else {
			w.askToClose()
		}
	}
}

// quit closes every window. Those that have something to ask are asked one after the other, this one first; where one is to
// stay, all that are left do.
func (w *Window) quit() {
	all := append([]*Window{w}, slices.DeleteFunc(slices.Clone(w.group.all), func(o *Window) bool { return o == w })...)
	slices.SortStableFunc(all, func(a, b *Window) int {
		switch {
		case a.asks() == b.asks():
			return 0
		case a.asks():
			return -1
		}
		return 1
	})
	closeEach(all)
}

// asks tells whether the window asks before it closes.
func (w *Window) asks() bool { return w.s.Dirty() || w.writing != nil }

func closeEach(all []*Window) {
	if len(all) == 0 {
		return
	}
	all[0].win.RequestFocus()
	all[0].askToCloseThen(func() { closeEach(all[1:]) })
}

// prefRecent is the preference that holds the files opened or saved last, the newest first.
const (
	prefRecent = "recent"
	mostRecent = 8
)

// remember puts the open file on top of the recent ones.
func (w *Window) remember() {
	path := w.s.Path()
	if path == "" {
		return
	}
	list := slices.DeleteFunc(w.app.Preferences().StringList(prefRecent), func(p string) bool { return p == path })
	list = slices.Insert(list, 0, path)
	w.app.Preferences().SetStringList(prefRecent, list[:min(len(list), mostRecent)])
	for _, o := range w.group.all {
		o.listRecent()
	}
}

// listRecent brings the menu of recent files up to date.
func (w *Window) listRecent() {
	if w.menu.recent == nil {
		return
	}
	var items []*fyne.MenuItem
	for _, p := range w.app.Preferences().StringList(prefRecent) {
		items = append(items, fyne.NewMenuItem(p, func() {
			w.openInstead(p)
		}))
	}
	w.menu.recent.ChildMenu = fyne.NewMenu("", items...)
	w.menu.recent.Disabled = len(items) == 0
	if w.menu.main != nil {
		w.menu.main.Refresh()
	}
}
