package app

import (
	"errors"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/field"
	"splaywright/app/keyed"
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/model"
	"splaywright/model/file"
	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/resize"
	"splaywright/render/table"
)

// lock makes a size one that resizing leaves as it is, or lets it go.
func (w *Window) lock(path string, on bool) {
	w.s.Keep(path, on)
	w.sizes.Update(w.s)
}

// resizing is the dialog in which a piece gets new overall sizes.
type resizing struct {
	w       *Window
	entries map[string]*entry // by path
	paths   []string
	lean    *keyed.Choice
	also    *keyed.Checks
	said    *widget.Label
	changes *panel.Tables
	work    session.Latest
	asked   int
}

// resize asks for new overall sizes and for what is to be held, and shows what would change.
func (w *Window) resize() {
	if !w.s.Reads() || w.s.Looked() == nil {
		w.tell("Resize the piece", errUnread())
		return
	}
	r := newResizing(w)
	var d *dialog.CustomDialog
	apply := func() {
		if err := r.apply(); err != nil {
			r.said.SetText(reasons(err)) // what was typed stays to be mended
			return
		}
		d.Hide()
	}
	d = w.deciding(say.It("Resize the piece"), say.It("Resize"), r.content(), apply)
	w.show(d)
	w.inDialog = map[string]fyne.CanvasObject{}
	for path, e := range r.entries {
		e.OnSubmitted = func(string) { apply() }
		w.inDialog[path] = e
	}
	d.Resize(w.room(860, 640))
	w.win.Canvas().Focus(r.entries["size.height"])
	r.try()
}

func newResizing(w *Window) *resizing {
	d := w.s.Design()
	r := &resizing{w: w, entries: map[string]*entry{}, paths: []string{"size.height", "size.width"}, changes: panel.NewTables()}
	r.work.Spawn = w.spawn
	if d.Form != "ring" {
		r.paths = append(r.paths, "size.depth")
	}
	for _, path := range r.paths {
		e := w.newEntry()
		e.SetText(w.s.Text(path))
		e.OnChanged = func(string) { r.try() }
		if w.s.Keeps(path) {
			e.Disable()
		}
		r.entries[path] = e
	}
	leans, also := r.holds(d)
	r.lean = keyed.NewChoice(say.All(leans), func(string) { r.try() })
	r.also = keyed.NewChecks(say.All(also), nil, func([]string) { r.try() })
	r.said = widget.NewLabel("")
	r.said.Wrapping = fyne.TextWrapWord
	r.changes.Look(true)
	return r
}

// holds are those of which one settles the lean, and the others.
func (r *resizing) holds(d form.Design) (leans, also []string) {
	for _, h := range resize.Holds(d) {
		if slices.Contains([]string{resize.Splay, resize.Footprint, resize.LegLength}, h) {
			leans = append(leans, h)
		} else {
			also = append(also, h)
		}
	}
	return leans, also
}

func (r *resizing) content() fyne.CanvasObject {
	sizes := widget.NewForm()
	for _, path := range r.paths {
		sizes.Append(say.It(map[string]string{"size.height": "Height", "size.width": "Width", "size.depth": "Depth"}[path]), r.entries[path])
	}
	left := container.NewVBox(sizes, heading("The lean keeps the"), r.lean)
	if len(r.also.Options) > 0 {
		left.Add(heading("Held as well"))
		left.Add(r.also)
	}
	left.Add(r.said)
	split := container.NewHSplit(container.NewVScroll(left), r.changes.Object())
	split.SetOffset(0.34)
	return split
}

func heading(text string) *widget.Label {
	l := widget.NewLabel(say.It(text))
	l.TextStyle.Bold = true
	return l
}

// sizes are the overall sizes that were typed anew.
func (r *resizing) sizes() []resize.Edit {
	var out []resize.Edit
	for _, path := range r.paths {
		if text := r.entries[path].Text; text != r.w.s.Text(path) {
			out = append(out, resize.Edit{Path: path, Text: text})
		}
	}
	return out
}

func (r *resizing) held() []string {
	out := []string{}
	for _, h := range resize.Holds(r.w.s.Design()) {
		if said := say.It(h); said == r.lean.Selected || slices.Contains(r.also.Selected, said) {
			out = append(out, h)
		}
	}
	return out
}

// trial is what a resizing would lead to.
type trial struct {
	changes []table.Table
	said    string
}

// try works out what would change, beside everything else; what has been overtaken is not shown.
func (r *resizing) try() {
	r.asked++
	n, s, sizes, held := r.asked, r.w.s, r.sizes(), r.held()
	doc, before, kept := s.Document().Clone(), s.Looked(), s.Kept()
	r.work.Do(func() {
		var t trial
		if _, err := resize.Apply(doc, sizes, held, kept); err != nil {
			t.said = reasons(err)
		} else if d, err := doc.Design(); err != nil {
			t.said = reasons(err)
		} else {
			t = trialOf(before, d)
		}
		fyne.Do(func() {
			if n == r.asked {
				r.said.SetText(t.said)
				r.changes.Set(t.changes)
			}
		})
	})
}

func trialOf(before *form.Piece, d form.Design) trial {
	after := model.Derive(d)
	was, now := *before, *after
	was.Title, now.Title = "before", "after"
	t := trial{changes: []table.Table{say.Table(changedFirst(table.Compare([]*form.Piece{&was, &now}, d.Style())))}}
	if all := fresh(before.Findings, after.Findings); len(all) > 0 {
		t.said = say.With("New in the findings: %s.", panel.Counts(all))
		for _, f := range all {
			t.said += "\n" + say.It(f.Text)
		}
	}
	for _, f := range after.Findings {
		if f.Level == part.Stop {
			t.said = say.It(f.Text)
			break
		}
	}
	return t
}

// changedFirst sorts the rows of a comparison: what changes, then what stays.
func changedFirst(t table.Table) table.Table {
	out := t
	out.Rows, out.Refs = nil, nil
	for _, same := range []bool{false, true} {
		for i, row := range t.Rows {
			if (row[len(row)-1].Text == "same") == same {
				out.Rows, out.Refs = append(out.Rows, row), append(out.Refs, t.Refs[i])
			}
		}
	}
	return out
}

// fresh are the findings that were not there before.
func fresh(before, after []part.Finding) []part.Finding {
	var out []part.Finding
	for _, f := range after {
		if !slices.ContainsFunc(before, func(g part.Finding) bool { return g.ID == f.ID && slices.Equal(g.Parts, f.Parts) }) {
			out = append(out, f)
		}
	}
	return out
}

func (r *resizing) apply() error {
	if err := r.w.s.Resize(r.sizes(), r.held()); err != nil {
		return err
	}
	r.w.shown.fresh = true
	r.w.changed()
	return nil
}

// reasons says what is wrong with texts that were typed, without their places in the file.
func reasons(err error) string {
	var list file.Errors
	if !errors.As(err, &list) {
		return field.Reason(err)
	}
	lines := make([]string, len(list))
	for i, e := range list {
		lines[i] = field.Reason(e)
	}
	return strings.Join(lines, "\n")
}
