package app

import (
	"errors"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/model/file"
)

func (w *Window) newFrom(example string) {
	s, err := session.FromExample(example, w.custom(example)...)
	if err != nil {
		w.tell("The example was not opened", err)
		return
	}
	w.take(s)
}

// openFile shows the design of a file: the window that has it open already, else here. When it cannot be read, what is open
// stays open.
func (w *Window) openFile(path string) {
	if o := w.group.beside(w, path); o != nil { // two windows would write over each other's work
		o.win.RequestFocus()
		return
	}
	s, err := session.Open(fromRoot(path))
	if err != nil {
		w.tell("The design was not opened", err)
		return
	}
	w.take(s)
}

// readable tells why a file cannot be opened; nil = it can.
func readable(path string) error {
	_, err := session.Open(fromRoot(path))
	return err
}

// openInstead opens a file in place of what is open here, after asking where that is unsaved.
func (w *Window) openInstead(path string) {
	if w.group.beside(w, path) != nil || readable(path) != nil {
		w.openFile(path) // takes the place of nothing
		return
	}
	w.guard("open another design", func() { w.openFile(path) })
}

// fromRoot is the path from the root, which is that of the file wherever the program is started next.
func fromRoot(path string) string {
	if abs, err := filepath.Abs(path); err == nil {
		return abs
	}
	return path
}

func (w *Window) open() {
	w.guard("open another design", func() {
		d := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
			if err != nil {
				w.tell("The design was not opened", err)
				return
			}
			if r == nil {
				return // cancelled
			}
			_ = r.Close() // only its name is wanted; the session reads the file itself
			w.openFile(r.URI().Path())
		}, w.win)
		d.SetFilter(storage.NewExtensionFileFilter([]string{".yaml", ".yml"}))
		if dir := w.folder(); dir != nil {
			d.SetLocation(dir)
		}
		d.Resize(w.whole(760, 520))
		w.show(d)
	})
}

// folder is where dialogs begin: beside the open file.
func (w *Window) folder() fyne.ListableURI {
	dir := "."
	if p := w.s.Path(); p != "" {
		dir = filepath.Dir(p)
	}
	abs, err := filepath.Abs(dir)
	if err != nil {
		return nil
	}
	l, err := storage.ListerForURI(storage.NewFileURI(abs))
	if err != nil {
		return nil
	}
	return l
}

func (w *Window) save() { w.saveThen(func() {}) }

// saveThen saves and goes on when that has worked.
func (w *Window) saveThen(then func()) {
	if text, changed := w.s.Outside(); changed {
		w.choose("The file was changed", say.With("%s was changed by another program since you opened it.", filepath.Base(w.s.Path())), []answer{
			{say.It("Cancel"), widget.MediumImportance, func() {}},
			{say.It("Replace it with mine"), widget.DangerImportance, func() { w.s.KeepMine(text); w.saveThen(then) }},
		})
		return
	}
	err := w.s.Save()
	if errors.Is(err, session.ErrNoPath) {
		w.saveAsThen(then)
		return
	}
	if err != nil {
		w.notSaved(err, func() { w.saveAsThen(then) })
		return
	}
	w.saved(then)
}

// saveHere saves to a path that was chosen.
func (w *Window) saveHere(path string, then func()) {
	if err := w.s.SaveAs(path); err != nil {
		w.notSaved(err, nil)
		return
	}
	w.saved(then)
}

func (w *Window) saved(then func()) {
	w.refresh()
	w.keep()
	w.remember()
	then()
}

func (w *Window) saveAs() { w.saveAsThen(func() {}) }

// saveAsThen asks for a name and a folder. Fyne's own dialog empties the chosen file before it
// hands it over; ours lets the session replace the file whole.
func (w *Window) saveAsThen(then func()) {
	name := w.newEntry()
	name.SetText(w.suggestion())
	where := widget.NewLabel("")
	dir := ""
	setDir := func(l fyne.ListableURI) {
		if l != nil {
			dir = l.Path()
			where.SetText(dir)
		}
	}
	setDir(w.folder())
	where.Wrapping = fyne.TextWrapBreak
	choose := keyed.NewButton(say.It("Another folder…"), func() {
		d := dialog.NewFolderOpen(func(l fyne.ListableURI, err error) {
			if err == nil {
				setDir(l)
			}
		}, w.win)
		d.Resize(w.whole(760, 520))
		w.show(d)
	})
	body := container.NewVBox(widget.NewLabel(say.It("Name of the file")), name, widget.NewLabel(say.It("In the folder")), where, choose)
	var d *plain
	save := func() {
		to := withExtension(name.Text)
		if !filepath.IsAbs(to) {
			to = filepath.Join(dir, to)
		}
		w.saveTo(to, func() {
			d.Hide()
			then()
		})
	}
	d = w.deciding(say.It("Save the design as"), say.It("Save"), body, save)
	name.OnSubmitted = func(string) { save() }
	d.Resize(w.whole(520, 300))
	w.show(d)
	w.win.Canvas().Focus(name)
}

func (w *Window) suggestion() string {
	if p := w.s.Path(); p != "" {
		return filepath.Base(p)
	}
	words := strings.FieldsFunc(strings.ToLower(w.s.Design().Title), func(r rune) bool { return strings.ContainsRune(" /\\:*?\"<>|", r) })
	if len(words) == 0 {
		return "design.yaml"
	}
	return strings.Join(words, "-") + ".yaml"
}

func withExtension(name string) string {
	if filepath.Ext(name) == "" {
		return name + ".yaml"
	}
	return name
}

// saveTo saves to a path, after asking when another file is there already.
func (w *Window) saveTo(path string, then func()) {
	if w.group.beside(w, path) != nil {
		w.tell("The design was not saved", errors.New(say.With("%s is open in another window. Close it there, or take another name.", path)))
		return
	}
	_, err := os.Stat(path)
	if err != nil || path == w.s.Path() {
		w.saveHere(path, then)
		return
	}
	w.choose("Replace the file?", say.With("%s is there already.", path), []answer{
		{say.It("Keep"), widget.MediumImportance, func() {}},
		{say.It("Replace"), widget.DangerImportance, func() { w.saveHere(path, then) }},
	})
}

// guard goes on at once when nothing is unsaved, and asks otherwise.
func (w *Window) guard(doing string, then func()) {
	if !w.s.Dirty() {
		then()
		return
	}
	if w.asking {
		return // the question stands already
	}
	w.asking = true
	text := say.With("“%s” has changes that are not saved.\nSave them before you %s?", w.s.Design().Title, say.It(doing))
	d := w.choose("Unsaved changes", text, []answer{
		{say.It("Go on without saving"), widget.MediumImportance, then},
		{say.It("Cancel"), widget.MediumImportance, func() {}},
		{say.It("Save"), widget.HighImportance, func() { w.saveThen(then) }},
	})
	d.SetOnClosed(func() { w.asking = false })
	w.readyFor(3)
}

// mostTold is how high what went wrong stands at most; the rest of it is scrolled to.
const mostTold = 300

// tell shows what went wrong, in the language; the places in a file one a line.
func (w *Window) tell(title string, err error) { w.telling(title, explain(err)) }

// telling shows what went wrong, with buttons that come before the usual ones.
func (w *Window) telling(title, text string, buttons ...*keyed.Button) *plain {
	body := w.words(text)
	least := body.MinSize()
	told := keyed.NewReading(body)
	told.Scroll.SetMinSize(w.room(least.Width, min(least.Height, mostTold)))
	d := &plain{CustomDialog: dialog.NewCustomWithoutButtons(say.It(title), told, w.win)}
	away := keyed.NewButton(say.It("Close"), d.Hide)
	all := []fyne.CanvasObject{keyed.NewButton(say.It("Copy"), func() { w.app.Clipboard().SetContent(text) })}
	for _, b := range buttons {
		all = append(all, b)
	}
	d.SetButtons(append(all, away))
	d.first = away
	w.show(d)
	return d
}

func explain(err error) string {
	if many, ok := err.(interface{ Unwrap() []error }); ok {
		var all []string
		for _, e := range many.Unwrap() {
			all = append(all, explain(e))
		}
		return strings.Join(all, "\n\n")
	}
	var list file.Errors
	if !errors.As(err, &list) {
		return say.Error(err)
	}
	lines := make([]string, len(list))
	for i, e := range list {
		lines[i] = say.Error(e)
	}
	return strings.Join(lines, "\n\n")
}
