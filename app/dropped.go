package app

import (
	"bufio"
	"errors"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"

	"splaywright/app/panel"
	"splaywright/app/session"
	"splaywright/model/file"
)

// dropped takes files that were dragged onto the window: a list of boards or of timbers goes into the design, the first design
// that can be read takes the window, and each other one a window of its own.
func (w *Window) dropped(_ fyne.Position, files []fyne.URI) {
	for w.win.Canvas().Overlays().Top() != nil { // a dialog is about what is open: what is dropped would change that behind it
		w.escape()
	}
	var designs []string
	for _, f := range files {
		switch path := f.Path(); {
		case !strings.EqualFold(filepath.Ext(path), ".csv") && !boardsAlone(path):
			designs = append(designs, path)
		case listsTimbers(path):
			w.takeTimbers(path)
		default:
			w.openTabOf(boardsTab) // where they stand
			w.takeList(path)
		}
	}
	w.openAll(designs)
}

// openAll opens the designs of files, and tells of all that cannot be read at once.
func (w *Window) openAll(paths []string) {
	var wrong []error
	here := true
	for _, path := range paths {
		switch o := w.group.beside(nil, path); {
		case o != nil && (o != w || !here):
			o.win.RequestFocus()
		case here:
			if err := readable(path); err != nil {
				wrong = append(wrong, err)
				continue
			}
			w.openInstead(path)
			here = false
		default:
			s, err := session.Open(fromRoot(path))
			if err != nil {
				wrong = append(wrong, err)
				continue
			}
			w.another().take(s)
		}
	}
	if wrong != nil {
		w.tell("The design was not opened", errors.Join(wrong...))
	}
}

// boardsAlone tells of a file that lists boards and is no design besides.
func boardsAlone(path string) bool {
	f, err := os.Open(path)
	if err != nil {
		return false // whoever reads it tells
	}
	defer func() { _ = f.Close() }() // only read from
	doc, err := file.Read(f, filepath.Base(path))
	return err == nil && !isDesign(doc) && doc.Len(panel.OnHand)+doc.Len(panel.ToBuy) > 0
}

// timberHead is a column that lists of timbers have, and lists of boards have not.
const timberHead = "specific_gravity"

// listsTimbers tells a list of timbers from one of boards by its heads.
func listsTimbers(path string) bool {
	f, err := os.Open(path)
	if err != nil {
		return false // whoever reads it tells
	}
	defer func() { _ = f.Close() }() // only read from
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		if line := strings.TrimSpace(lines.Text()); line != "" && !strings.HasPrefix(line, "#") {
			return strings.Contains(line, timberHead)
		}
	}
	return false
}
