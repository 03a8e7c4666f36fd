package app

import (
	"errors"
	"io/fs"
	"syscall"

	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
)

// wayOut says what would do where the system lets nothing be written; "" = nothing is known of it.
func wayOut(err error) string {
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return say.It("Make room there, or choose another place.")
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		return say.It("Choose a place where you may write.")
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR):
		return say.It("Choose a folder that is there.")
	}
	return ""
}

// unwritten tells what was not written, why, and what would do; more is said before that, and more buttons stand first.
func (w *Window) unwritten(title string, err error, more string, buttons ...*keyed.Button) *plain {
	text := explain(err)
	for _, s := range []string{more, wayOut(err)} {
		if s != "" {
			text += "\n\n" + s
		}
	}
	return w.telling(title, text, buttons...)
}

// notSaved tells why a design was not saved. Where another place would do, elsewhere leads there; nil = the person is choosing one.
func (w *Window) notSaved(err error, elsewhere func()) {
	const title, stays = "The design was not saved", "It stays open here with all that you changed."
	if wayOut(err) == "" {
		w.tell(title, err)
		return
	}
	if elsewhere == nil {
		w.unwritten(title, err, say.It(stays))
		return
	}
	var d *plain
	as := keyed.NewButton(say.It("Save as…"), func() {
		d.Hide()
		elsewhere()
	})
	as.Importance = widget.HighImportance
	d = w.unwritten(title, err, say.It(stays), as)
}

// unkept tells, once, that what is not saved would be lost with the program.
func (w *Window) unkept(err error) {
	if !w.shown.unkept {
		w.shown.unkept = true
		w.telling("Unsaved changes are not kept safe", explain(err)+"\n\n"+say.It("Save the design often; until this can be written, what is not saved is lost when the program ends without warning."))
	}
}
