package app

import (
	"context"
	"errors"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
	"splaywright/export/papers"
	"splaywright/model/form"
)

// printCommand is the system's command that prints a file, as POSIX has it.
const printCommand = "lp"

// print asks which papers are wanted, and on which printer, and sends them there through the system.
func (w *Window) print() { w.choosePapers(say.It("Print"), say.It("Print"), true, w.choosePrinter) }

// choosePrinter asks for the printer where the system names several; where it has no command to print
// with, the papers are opened in its own viewer instead.
func (w *Window) choosePrinter(piece *form.Piece) {
	names := printers()
	if len(names) < 2 {
		name := ""
		if len(names) == 1 {
			name = names[0]
		}
		w.printOn(piece, name)
		return
	}
	choice := keyed.NewSelect(names, nil)
	choice.SetSelectedIndex(0)
	var d *plain
	d = w.deciding(say.It("Print"), say.It("Print"), widget.NewForm(widget.NewFormItem(say.It("Printer"), choice)), func() {
		d.Hide()
		w.printOn(piece, choice.Selected)
	})
	d.Resize(d.MinSize().AddWidthHeight(160, 0))
	w.show(d)
}

// printers are the names of the system's printers; none where it does not tell.
func printers() []string {
	out, err := exec.Command("lpstat", "-e").Output()
	if err != nil {
		return nil
	}
	return strings.Fields(string(out))
}

// printOn writes the papers into a folder of its own and hands them to the system, in the background.
func (w *Window) printOn(piece *form.Piece, printer string) {
	w.elsewhere(func() {
		names, err := papersToPrint(piece)
		if err == nil {
			err = send(names, printer)
		}
		if err == nil { // the system has taken its copies
			_ = os.RemoveAll(filepath.Dir(names[0]))
		}
		fyne.Do(func() { w.printed(names, err) })
	})
}

// papersToPrint writes the papers where the system keeps what is of no lasting worth: the sheets in one PDF, and board plans,
// what to buy and patterns in theirs. Patterns on one page are for a plotter and are not printed.
func papersToPrint(piece *form.Piece) ([]string, error) {
	dir, err := os.MkdirTemp("", "splaywright-print-")
	if err != nil {
		return nil, err
	}
	as := *piece
	as.Design.Papers.As = []string{form.AsPDF}
	names, err := papers.WriteSet(context.Background(), dir, &as, papers.Options{Tongue: say.Tongue()}, nil)
	var sheets []string
	for _, n := range names {
		if strings.EqualFold(filepath.Ext(n), ".pdf") && !strings.HasSuffix(n, papers.OnePage) {
			sheets = append(sheets, filepath.Join(dir, n))
		}
	}
	if err == nil && len(sheets) == 0 {
		err = errors.New(say.It("none of the chosen papers is a sheet to print"))
	}
	if err != nil {
		_ = os.RemoveAll(dir)
		return nil, err
	}
	return sheets, nil
}

// errNoPrinting says that the system has no command to print with.
var errNoPrinting = errors.New("no command to print with")

// send prints files at their own size, in order: nothing is fitted to the page, or patterns would lose theirs.
func send(names []string, printer string) error {
	path, err := exec.LookPath(printCommand)
	if err != nil {
		return errNoPrinting
	}
	args := []string{"-o", "print-scaling=none"}
	if printer != "" {
		args = append(args, "-d", printer)
	}
	out, err := exec.Command(path, slices.Concat(args, []string{"--"}, names)...).CombinedOutput()
	if err != nil && len(out) > 0 {
		return errors.New(strings.TrimSpace(string(out)))
	}
	return err
}

func (w *Window) printed(names []string, err error) {
	switch {
	case errors.Is(err, errNoPrinting):
		open, said := names[0], say.Key("The papers are open in your PDF viewer. Print them from there at 100 %, not fitted to the page, and measure the check bars.")
		if len(names) > 1 {
			open, said = filepath.Dir(names[0]), say.Key("The folder with the papers is open. Print them from there at 100 %, not fitted to the page, and measure the check bars.")
		}
		if err := w.app.OpenURL(&url.URL{Scheme: "file", Path: open}); err != nil {
			w.inform(say.It("Print"), say.With("No printer and no PDF viewer was found on this computer. The papers are in %+s; print them where there is one, at 100 %% and not fitted to the page.", open))
			return
		}
		w.inform(say.It("Print"), say.It(said))
	case err != nil:
		w.tell("Print", err)
	default:
		w.inform(say.It("Print"), say.It("The papers are with your printer, at their own size. Measure the check bars before you cut from a pattern."))
	}
}

func (w *Window) inform(title, text string) {
	w.show(w.closable(title, w.words(text)))
}
