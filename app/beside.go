package app

import (
	"errors"
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/app/viewer"
	"splaywright/model"
	"splaywright/model/file"
	"splaywright/model/form"
	"splaywright/render/draw"
	"splaywright/render/sheet"
	"splaywright/render/table"
)

// variant is a design that was set aside.
type variant struct {
	title  string
	letter rune // tells it from the others
	doc    *file.Document
}

// besides is the window in which the design and what was set aside stand side by side.
type besides struct {
	w     *Window
	win   fyne.Window
	page  *viewer.Table
	table *panel.Tables
	heads *fyne.Container
	named []string        // what the heads name
	doing []*keyed.Button // those of the heads
	work  session.Latest
	asked int
}

// setAside keeps the design as it stands for comparing.
func (w *Window) setAside() {
	if !w.s.Reads() {
		w.tell(say.It("Set aside to compare"), errUnread())
		return
	}
	w.putAside(w.s.Design().Title, w.s.Document().Clone())
}

func (w *Window) putAside(title string, doc *file.Document) {
	if len(w.aside)+1 >= sheet.MostBeside {
		w.tell(say.It("Set aside to compare"), errors.New(say.With("%d designs stand side by side at most; put one of them away first", sheet.MostBeside)))
		return
	}
	letter := 'A'
	for slices.ContainsFunc(w.aside, func(v variant) bool { return v.letter == letter }) {
		letter++ // of one that was put away, free again
	}
	w.aside = append(w.aside, variant{fmt.Sprintf("%s, %c", title, letter), letter, doc})
	w.sideBySide()
}

// sideBySide opens the window of what stands side by side, or brings it up to date.
func (w *Window) sideBySide() {
	if w.beside == nil {
		w.beside = newBesides(w)
	}
	w.beside.win.Show()
	w.showBeside()
}

func newBesides(w *Window) *besides {
	b := &besides{w: w, win: w.app.NewWindow(say.It("Side by side") + " – Splaywright"), page: viewer.NewTable(), table: panel.NewTables(), heads: container.NewHBox()}
	b.page.Spawn(w.spawn)
	b.work.Spawn = w.spawn
	b.page.Roomed = w.showBeside
	b.table.Look(true)
	split := container.NewVSplit(b.page, b.table.Object())
	split.SetOffset(0.56)
	b.win.SetContent(panel.Topped(container.NewHScroll(b.heads), split))
	b.win.SetPadded(false)
	b.win.Resize(fyne.NewSize(1000, 720))
	closesOnEscape(b.win, b.page)
	b.win.Canvas().AddShortcut(&fyne.ShortcutUndo{}, func(fyne.Shortcut) { w.undo() }) // what was taken is taken back where it was taken
	b.win.Canvas().AddShortcut(&fyne.ShortcutRedo{}, func(fyne.Shortcut) { w.redo() })
	b.win.SetOnClosed(func() { w.beside = nil })
	return b
}

// headOf is a variant's name and what can be done with it.
func (b *besides) headOf(i int, v variant) fyne.CanvasObject {
	take := keyed.NewButton(say.It("Take this one"), func() { b.take(v) })
	away := keyed.NewButton(say.It("Put away"), func() {
		b.w.aside = append(b.w.aside[:i:i], b.w.aside[i+1:]...)
		b.w.showBeside()
	})
	away.Importance = widget.LowImportance
	b.doing = append(b.doing, take, away)
	return container.NewHBox(bold(v.title), take, away)
}

// head names what stands side by side, with what can be done with it, where that is not what stands there already. The keyboard
// stays in the same place of the row.
func (b *besides) head() {
	named := []string{say.With("%s, as it stands", b.w.s.Design().Title)}
	for _, v := range b.w.aside {
		named = append(named, v.title)
	}
	if slices.Equal(named, b.named) {
		return
	}
	was := b.doing
	b.named, b.doing = named, nil
	b.heads.RemoveAll()
	b.heads.Add(bold(named[0]))
	for i, v := range b.w.aside {
		b.heads.Add(widget.NewSeparator())
		b.heads.Add(b.headOf(i, v))
	}
	b.heads.Add(widget.NewSeparator())
	more := keyed.NewButton(say.It("Add a file…"), b.addFile)
	b.doing = append(b.doing, more)
	b.heads.Add(more)
	b.heads.Refresh() // adding to it does not paint it
	if at := slices.IndexFunc(was, func(x *keyed.Button) bool { return b.win.Canvas().Focused() == fyne.Focusable(x) }); at >= 0 {
		b.win.Canvas().Focus(b.doing[min(at, len(b.doing)-1)])
	}
}

// take makes a variant the design, as one step that can be taken back.
func (b *besides) take(v variant) {
	if err := b.w.s.Take(v.title, v.doc); err != nil {
		b.w.tell(say.It("Take this one"), err)
		return
	}
	b.w.shown.fresh = true
	b.w.changed()
}

// addFile puts a design of a file beside the others.
func (b *besides) addFile() {
	d := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err != nil || r == nil {
			return
		}
		defer func() { _ = r.Close() }() // only read from
		b.addPath(r.URI().Path())
	}, b.win)
	d.SetFilter(storage.NewExtensionFileFilter([]string{".yaml", ".yml"}))
	d.Show()
	takeFileKeys(b.win.Canvas(), d.Hide, func(*fyne.KeyEvent) {})
}

func (b *besides) addPath(path string) {
	s, err := session.Open(path)
	if err == nil {
		s.Shelve(b.w.group.shelf.own)
	}
	if err == nil && !s.Reads() {
		err = errors.New(say.It("the design in this file cannot be read; open it by itself to see where"))
	}
	if err != nil {
		b.w.tell(say.It("Add a file…"), err)
		return
	}
	b.w.putAside(s.Design().Title, s.Document())
}

// showBeside brings the window of what stands side by side up to date, beside everything else; what
// has been overtaken is not shown.
func (w *Window) showBeside() {
	b := w.beside
	if b == nil {
		return
	}
	b.head()
	b.asked++
	n, dark, room, now := b.asked, w.shown.dark, b.page.Room(), w.s.Looked()
	designs := make([]form.Design, 0, len(w.aside))
	for _, v := range w.aside {
		if d, err := v.doc.Design(); err == nil {
			d.Title = v.title
			designs = append(designs, d)
		}
	}
	if now == nil {
		return
	}
	b.work.Do(func() {
		page, tables := compared(*now, designs, dark, room)
		fyne.Do(func() {
			if n == b.asked && w.beside == b {
				b.page.SetPage(page)
				b.page.Fit()
				b.table.Set(tables)
			}
		})
	})
}

// compared draws pieces side by side and sets their figures side by side.
func compared(now form.Piece, designs []form.Design, dark bool, room draw.Point) (draw.Page, []table.Table) {
	now.Title = say.With("%s, as it stands", now.Title)
	pieces := []*form.Piece{&now}
	for _, d := range designs {
		pieces = append(pieces, model.Derive(d))
	}
	st := now.Design.Style()
	tables := []table.Table{changedFirst(table.Compare(pieces, st))}
	if marks := table.CompareMarks(pieces, st); len(marks.Rows) > 0 {
		tables = append(tables, marks)
	}
	return sheet.Beside(pieces, sheet.Options{Style: st, Dark: dark, Width: room.X, Height: room.Y, Tongue: say.Tongue()}), say.Tables(tables)
}
