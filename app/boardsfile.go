package app

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/model/file"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/timber"
)

// readBoards asks for a list of boards and adds them.
func (w *Window) readBoards() {
	w.askForFile(say.It("The boards were not read"), w.takeList, ".csv", ".yaml", ".yml")
}

// askForFile asks for a file of some kinds and does something with its name.
func (w *Window) askForFile(trouble string, take func(path string), kinds ...string) {
	d := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		switch {
		case err != nil:
			w.tell(trouble, err)
		case r != nil:
			_ = r.Close() // only its name is wanted
			take(r.URI().Path())
		}
	}, w.win)
	d.SetFilter(storage.NewExtensionFileFilter(kinds))
	if dir := w.folder(); dir != nil {
		d.SetLocation(dir)
	}
	d.Resize(w.whole(760, 520))
	w.show(d)
}

// takeList adds the boards of a file; of one that cannot be read none is taken.
func (w *Window) takeList(path string) {
	d := w.s.Design()
	all, err := boardsOf(path, w.boards.list, d.Units)
	if err == nil {
		err = w.s.TakeBoards("read "+filepath.Base(path), w.boards.list, all...)
	}
	if first := len(panel.Boards(&d, w.boards.list)); err == nil {
		w.boards.chosen = first
		w.boards.picture.Choose(first, -1)
	}
	w.edit(say.It("The boards were not read"), err)
}

// boardsOf reads boards from a list of comma-separated values, or from another design.
func boardsOf(path, list string, bare measure.Unit) ([]stock.Board, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer func() { _ = f.Close() }() // only read from
	if strings.EqualFold(filepath.Ext(path), ".csv") {
		return file.ReadBoards(f, filepath.Base(path), bare)
	}
	text, err := io.ReadAll(f)
	if err != nil {
		return nil, err
	}
	doc, err := file.Read(bytes.NewReader(text), filepath.Base(path))
	if err == nil {
		doc, err = withAPiece(doc, text, filepath.Base(path), bare)
	}
	if err != nil {
		return nil, err
	}
	d, err := doc.Design()
	if err != nil {
		return nil, err
	}
	all := panel.Boards(&d, list)
	if len(all) == 0 {
		what := map[string]string{panel.OnHand: "boards on hand", panel.ToBuy: "boards to buy"}[list]
		return nil, fmt.Errorf("%+s lists no %s", filepath.Base(path), what)
	}
	return all, nil
}

// isDesign tells of a document that says something of a piece.
func isDesign(doc *file.Document) bool { return doc.Text("form") != "" || len(doc.Keys("size")) > 0 }

// withAPiece gives a document that holds nothing but boards what makes it a design, behind its own lines, so that these keep
// their numbers; bare is the unit of its numbers.
func withAPiece(doc *file.Document, text []byte, name string, bare measure.Unit) (*file.Document, error) {
	if isDesign(doc) {
		return doc, nil
	}
	rest := "\nform: stool\nsize: {height: 300, width: 400, depth: 250}\n"
	if doc.Text("splaywright") == "" {
		rest += "splaywright: 1\n"
	}
	if doc.Text("units") == "" && bare == measure.Imperial {
		rest += "units: in\n"
	}
	return file.Read(bytes.NewReader(append(text, rest...)), name)
}

// readTimbers asks for a file of the person's own timbers and puts them into the design.
func (w *Window) readTimbers() {
	w.askForFile(say.It("The timbers were not read"), w.takeTimbers, ".csv")
}

func (w *Window) takeTimbers(path string) {
	var own timber.Book
	text, err := os.ReadFile(path)
	if err == nil {
		own, err = timber.LoadOwn(text, filepath.Base(path))
	}
	if err == nil {
		err = w.s.TakeTimbers("read "+filepath.Base(path), own)
	}
	w.edit(say.It("The timbers were not read"), err)
}
