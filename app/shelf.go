package app

import (
	"errors"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
	"splaywright/model/timber"
)

// The preferences that hold the file of a person's own timbers, and its text as it was last understood.
const (
	prefShelf     = "timbers-file"
	prefShelfText = "timbers-text"
)

// shelf is the timbers and prices that a person keeps in a file for all designs.
type shelf struct {
	path    string
	own     timber.Book
	trouble error // why the file could not be read when the program began
	opened  bool
}

// open reads the file when the program begins. When it cannot be read now, what was last understood of it goes on being
// used, so that no design loses its timber.
func (s *shelf) open(p fyne.Preferences) {
	if s.opened {
		return
	}
	s.opened, s.path = true, p.String(prefShelf)
	if s.path == "" {
		return
	}
	own, text, err := shelfOf(s.path)
	if err != nil {
		s.trouble = err
		own, _ = timber.LoadOwn([]byte(p.String(prefShelfText)), filepath.Base(s.path)) // understood when it was kept
	} else {
		p.SetString(prefShelfText, text)
	}
	s.own = own
}

func shelfOf(path string) (timber.Book, string, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, "", err
	}
	own, err := timber.LoadOwn(text, filepath.Base(path))
	return own, string(text), err
}

// tell says once what was wrong with the file.
func (s *shelf) tell(w *Window) {
	if s.trouble == nil {
		return
	}
	why := s.trouble
	s.trouble = nil
	w.tell(say.It("Your timbers were not read"), errors.New(say.With("%s. What was last understood of that file is used.", say.Error(why))))
}

// chooseShelf shows which file holds the person's own timbers and lets another be chosen.
func (w *Window) chooseShelf() {
	how := w.words(say.It("A file of comma-separated values with the columns of the built-in table (the command timbers prints it), and after them any of change_radial, change_tangential, price_per_m3 and price_per_board_foot. A row with a name and a price alone gives a timber of the table a price. They are known to every design on this computer; what a design says itself goes before them."))
	d := dialog.NewCustomWithoutButtons(say.It("Timbers for all designs"), container.NewVBox(w.words(w.shelfSaid()), how), w.win)
	choose := keyed.NewButton(say.It("Choose a file…"), func() {
		d.Hide()
		w.askForFile(say.It("Your timbers were not read"), w.keepShelf, ".csv")
	})
	choose.Importance = widget.HighImportance
	again := keyed.NewButton(say.It("Read it again"), func() { d.Hide(); w.keepShelf(w.group.shelf.path) })
	none := keyed.NewButton(say.It("Do without"), func() { d.Hide(); w.setShelf("", "", nil) })
	if w.group.shelf.path == "" {
		again.Disable()
		none.Disable()
	}
	d.SetButtons([]fyne.CanvasObject{keyed.NewButton(say.It("Close"), d.Hide), none, again, choose})
	w.show(&plain{d, choose})
}

func (w *Window) shelfSaid() string {
	s := w.group.shelf
	if s.path == "" {
		return say.It("No file is chosen.")
	}
	return say.With("%s: %s", s.path, say.With("timbers: %d", len(s.own)))
}

// keepShelf takes the timbers of a file for all designs. A file that is not understood changes nothing.
func (w *Window) keepShelf(path string) {
	own, text, err := shelfOf(path)
	if err != nil {
		w.tell(say.It("Your timbers were not read"), err)
		return
	}
	w.setShelf(path, text, own)
}

func (w *Window) setShelf(path, text string, own timber.Book) {
	p := w.app.Preferences()
	p.SetString(prefShelf, path)
	p.SetString(prefShelfText, text)
	s := &w.group.shelf
	s.path, s.own, s.trouble = path, own, nil
	for _, other := range w.group.all {
		if other.s != nil {
			other.s.Shelve(own)
			other.changed()
		}
	}
}
