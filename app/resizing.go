package app

import (
	"errors"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
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
	left    *fyne.Container // sizes, holds and what is said
	said    *fyne.Container // what is new in the findings, or why the sizes do not work
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
	var d *plain
	apply := func() {
		if err := r.apply(); err != nil {
			r.say(trial{wrong: err}) // what was typed stays to be mended
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
	d.Resize(w.whole(860, 640))
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
	r.said = container.NewVBox()
	r.changes.WhenBlank(panel.Blank{Text: say.Key("As soon as these sizes work together, what changes stands here.")})
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
	r.left = container.NewVBox(sizes, heading("The lean keeps the"), r.lean)
	if len(r.also.Options) > 0 {
		r.left.Add(heading("Held as well"))
		r.left.Add(r.also)
	}
	r.left.Add(r.said)
	split := container.NewHSplit(keyed.NewScroll(r.left), r.changes.Object())
	split.SetOffset(0.34)
	return split
}

func heading(text string) *widget.Label { return bold(say.It(text)) }

// bold is a text in bold letters, as it is given: a person's own words stay what they are.
func bold(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.TextStyle.Bold = true
	return l
}

// why says why sizes do not work; one that is kept is named as its field is.
func (r *resizing) why(err error) string {
	var k *resize.Kept
	if errors.As(err, &k) {
		if f := r.w.sizes.Field(k.Path); f != nil {
			return say.With("to hold the %s, %s would have to change, and it is kept; let one of the two go", say.It(k.Hold), say.It(f.Spec.Label))
		}
	}
	return reasons(err)
}

// sizes are the overall sizes that were typed anew.
func (r *resizing) sizes() []resize.Edit {
	var out []resize.Edit
	for _, path := range r.paths {
		if text := r.entries[path].number(); text != r.w.s.Text(path) {
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
	wrong   error          // why nothing comes of it; nil = something does
	fresh   []part.Finding // what the piece had not before
}

// say shows what a trial tells besides its table.
func (r *resizing) say(t trial) {
	r.said.RemoveAll()
	if t.wrong != nil {
		t.fresh = []part.Finding{{Level: part.Stop, Text: r.why(t.wrong)}}
	} else if len(t.fresh) > 0 {
		r.said.Add(bold(say.With("New in the findings: %s.", panel.Counts(t.fresh))))
	}
	d := r.w.s.Design()
	for _, f := range panel.Figured(t.fresh, &d) {
		r.said.Add(field.Notice(f, false))
	}
	if r.left != nil { // adding to a container does not paint it
		r.left.Refresh()
	}
}

// try works out what would change, beside everything else; what has been overtaken is not shown.
func (r *resizing) try() {
	r.asked++
	n, s, sizes, held := r.asked, r.w.s, r.sizes(), r.held()
	doc, before, kept := s.Document().Clone(), s.Looked(), s.Kept()
	r.work.Do(func() {
		var t trial
		if _, err := resize.Apply(doc, sizes, held, kept); err != nil {
			t = trial{wrong: err, changes: nothingChanged}
		} else if d, err := doc.Design(); err != nil {
			t = trial{wrong: err, changes: nothingChanged}
		} else {
			t = trialOf(before, d)
		}
		fyne.Do(func() {
			if n == r.asked {
				r.say(t)
				r.changes.Set(t.changes)
			}
		})
	})
}

func trialOf(before *form.Piece, d form.Design) trial {
	d = spoken(d) // as the piece is that it is compared with
	after := model.Derive(d)
	was, now := *before, *after
	was.Title, now.Title = say.It("Before"), say.It("After")
	t := trial{changes: []table.Table{say.Table(changedFirst(table.Compare([]*form.Piece{&was, &now}, d.Style())))}}
	t.fresh = fresh(before.Findings, after.Findings)
	if i := slices.IndexFunc(after.Findings, func(f part.Finding) bool { return f.Level == part.Stop }); i >= 0 {
		t.fresh = []part.Finding{after.Findings[i]} // the rest says nothing of a piece that cannot be made
	}
	return t
}

// nothingChanged is a list of changes without any.
var nothingChanged = []table.Table{{Columns: []table.Column{{Head: "What"}}}}

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
