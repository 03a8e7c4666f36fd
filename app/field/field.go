package field

import (
	"reflect"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/look"
	"splaywright/app/say"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// State is what a field shows.
type State struct {
	Text     string // as typed; "" = left out
	Said     string // what was understood
	Follows  string // what an empty field comes to; "" = nothing
	Err      error
	Findings []part.Finding
	Kept     bool         // resizing leaves it as it is
	Value    any          // what it comes to, typed or not; nil = no number
	Bare     measure.Unit // of numbers typed without one
	Comma    bool         // decimals are shown behind a comma, so that one is read
}

// Field is one size: its name, a place to type, and below it what was understood or what is
// wrong with it.
type Field struct {
	widget.BaseWidget
	Spec Spec

	// Changed is called with each text as it is typed, Done when typing has ended, Picked with an
	// item of the menu, Entered when Enter has been pressed, Locked when the person keeps the size or
	// lets it go, Focused when the keyboard has come to it.
	Changed func(text string)
	Focused func()
	Key     func(*fyne.KeyEvent) bool // takes a key of the window; nil = there is none
	Entered func()
	Done    func()
	Picked  func(item string)
	Locked  func(on bool)
	Steps   func() Steps // of the arrows; nil = the usual ones

	label   *widget.Label
	entry   *entry        // of a field to type in
	choice  *Chooser      // of a field with choices alone
	offer   *keyed.Button // the list of offers
	lock    *keyed.Button
	input   *cut
	said    *widget.Label
	notices *fyne.Container
	state   State
	setting bool // the program, not the person, is changing the text
}

// New makes the field of a spec.
func New(spec Spec) *Field {
	f := &Field{Spec: spec, label: widget.NewLabel(say.It(spec.Label)), said: caption(widget.LowImportance), notices: container.NewVBox()}
	if spec.Choices != nil {
		f.choice = newChooser(spec.said(), func(string) { f.typed(f.Text()) }, f.focused, f.unused)
		f.choice.PlaceHolder = noChoice
		f.input = newCut(f.choice)
	} else {
		f.entry = newEntry(f.typed, f.ended, f.entered)
		f.entry.came, f.entry.unused = f.focused, f.unused
		f.input = newCut(f.entry)
		if len(spec.Offers) > 0 {
			f.offer = keyed.NewButtonWithIcon("", theme.MenuDropDownIcon(), f.showOffers)
			f.offer.Importance = widget.LowImportance
			f.entry.ActionItem = newTools(f.offer)
		}
		if spec.Turns {
			f.entry.turn = f.turn
			f.entry.ActionItem = newTools(newArrows(f.turn))
		}
		if spec.Lock {
			f.lock = keyed.NewButtonWithIcon("", look.Padlock(false), f.toggleLock)
			f.lock.Importance = widget.LowImportance
			row := container.NewHBox(f.lock)
			if spec.Turns {
				row.Add(newArrows(f.turn))
			}
			f.entry.ActionItem = newTools(row)
		}
		if spec.Value != nil && !spec.Turns && !spec.Lock && len(spec.Offers) == 0 {
			f.entry.ActionItem = newTools(layout.NewSpacer()) // a long text ends before the rim
		}
		if len(spec.Menu) > 0 {
			f.offer = keyed.NewButtonWithIcon("", theme.MoreVerticalIcon(), f.showMenu)
			f.offer.Importance = widget.LowImportance
			f.entry.ActionItem = newTools(f.offer)
		}
	}
	f.label.Wrapping = fyne.TextWrapWord
	f.ExtendBaseWidget(f)
	f.said.Hide()
	f.setText("")
	return f
}

// noChoice stands where nothing is chosen; the library would put words of its own.
const noChoice = "–"

func caption(importance widget.Importance) *widget.Label {
	l := widget.NewLabel("")
	l.SizeName = theme.SizeNameCaptionText
	l.Importance = importance
	l.Wrapping = fyne.TextWrapWord
	return l
}

func (f *Field) typed(text string) {
	if f.setting || f.Changed == nil {
		return
	}
	f.Changed(f.read(text))
	if f.choice != nil {
		f.ended()
	}
}

func (f *Field) entered() {
	f.ended()
	if f.Entered != nil {
		f.Entered()
	}
}

func (f *Field) focused() {
	if f.Focused != nil {
		f.Focused()
	}
}

func (f *Field) unused(k *fyne.KeyEvent) bool { return f.Key != nil && f.Key(k) }

// Tapped is a tap on the name of the size: the keyboard goes to it.
func (f *Field) Tapped(*fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(f); c != nil {
		c.Focus(f.Input())
	}
}

func (f *Field) ended() {
	if f.Done != nil {
		f.Done()
	}
}

// Put puts a state on the screen. The text is left alone where it already reads so, so that
// the cursor of a person who is typing stays where it is.
func (f *Field) Put(s State) {
	old := f.state
	f.state = s
	if reflect.DeepEqual(s, old) && f.Text() == s.Text {
		return
	}
	was := f.MinSize()
	f.setText(s.Text)
	if f.lock != nil && s.Kept != old.Kept {
		f.lock.SetIcon(look.Padlock(s.Kept))
	}
	f.setSaid()
	noticed := !reflect.DeepEqual(s.Findings, old.Findings)
	if noticed {
		f.setNotices()
	}
	if noticed || f.MinSize() != was {
		f.Refresh()
	}
}

func (f *Field) setText(text string) {
	f.setting = true
	defer func() { f.setting = false }()
	if f.choice != nil {
		hint := say.It(f.Spec.Hint)
		if f.state.Follows != "" {
			hint = f.Spec.word(f.state.Follows)
		}
		if hint == "" {
			hint = noChoice
		}
		if f.choice.PlaceHolder != hint {
			f.choice.PlaceHolder = hint
			f.choice.Refresh()
		}
		switch {
		case text == "" && f.Text() != "":
			f.choice.ClearSelected()
		case text != f.Text():
			if i := slices.Index(f.Spec.Choices, text); i >= 0 { // by its place: it may be said by a word of its own
				f.choice.SetSelectedIndex(i)
			}
		}
		return
	}
	hint := f.Spec.Hint
	if hint == "" && f.state.Follows != "" {
		hint = "follows"
	}
	hint = say.It(hint)
	if f.entry.PlaceHolder != hint {
		f.entry.SetPlaceHolder(hint)
	}
	// The document keeps no spaces around a text; a person in the middle of "6 deg" does.
	if strings.TrimSpace(f.read(f.entry.Text)) != strings.TrimSpace(text) {
		f.entry.SetText(text)
	}
}

func (f *Field) setSaid() {
	text := f.state.Said
	if f.state.Text == "" && f.state.Follows != "" && f.choice == nil {
		text = say.With("follows: %s", say.It(f.state.Follows))
	}
	if f.state.Kept {
		text = strings.TrimPrefix(text+"; "+say.It("kept when resizing"), "; ")
	}
	if f.state.Err != nil {
		text = Reason(f.state.Err)
	}
	importance := widget.LowImportance
	if f.state.Err != nil {
		importance = widget.DangerImportance
	}
	if f.said.Text != text || f.said.Importance != importance {
		f.said.Importance = importance
		f.said.SetText(text)
	}
	if text == "" {
		f.said.Hide()
	} else {
		f.said.Show()
	}
}

func (f *Field) setNotices() {
	f.notices.RemoveAll()
	for _, n := range f.state.Findings {
		f.notices.Add(Notice(n, false))
	}
}

// Notice shows a finding by the shape and the word of its level and its sentence; in full, its
// source as well.
func Notice(n part.Finding, full bool) fyne.CanvasObject {
	text := caption(importanceOf(n.Level))
	text.SetText(say.With("%s: %s", say.It(look.Word(n.Level)), say.It(n.Text)))
	mark := container.NewGridWrap(fyne.NewSquareSize(markSize), widget.NewIcon(look.Mark(n.Level)))
	body := fyne.CanvasObject(text)
	if full {
		text.SizeName = theme.SizeNameText
		if n.Source != "" {
			source := caption(widget.LowImportance)
			source.SetText(say.With("Source: %s", say.It(n.Source)))
			body = container.NewVBox(text, source)
		}
	}
	return container.NewBorder(nil, nil, container.NewVBox(inset(mark)), nil, body)
}

const markSize = 14

func inset(o fyne.CanvasObject) fyne.CanvasObject { return container.NewPadded(o) }

func importanceOf(l part.Level) widget.Importance {
	switch l {
	case part.Stop:
		return widget.DangerImportance
	case part.Warning:
		return widget.WarningImportance
	}
	return widget.MediumImportance
}

func (f *Field) toggleLock() {
	if f.Locked != nil {
		f.Locked(!f.state.Kept)
	}
}

// State gives what the field shows.
func (f *Field) State() State { return f.state }

// Text is what stands in the field, as the design file has it.
func (f *Field) Text() string {
	if f.choice != nil {
		if i := f.choice.SelectedIndex(); i >= 0 {
			return f.Spec.Choices[i]
		}
		return ""
	}
	return f.read(f.entry.Text)
}

// read is a typed text as the design file has it: of a number, with a point where its readers have a comma.
func (f *Field) read(text string) string {
	if f.state.Comma && (f.Spec.Turns || f.Spec.Number) {
		return measure.Pointed(text)
	}
	return text
}

// SaidText is what is shown below the field.
func (f *Field) SaidText() string { return f.said.Text }

// SaidAt is where what is said stands, from the field's upper left corner, window units.
func (f *Field) SaidAt() fyne.Position { return f.said.Position() }

// Placeholder is what stands in the field while it is empty.
func (f *Field) Placeholder() string {
	if f.choice != nil {
		return f.choice.PlaceHolder
	}
	return f.entry.PlaceHolder
}

// Input is what takes the keyboard's focus.
func (f *Field) Input() fyne.Focusable {
	if f.choice != nil {
		return f.choice
	}
	return f.entry
}

func (f *Field) showOffers() {
	f.popUp(f.Spec.Offers, func(o string) {
		f.entry.SetText(o)
		f.ended()
	})
}

func (f *Field) showMenu() {
	f.popUp(f.Spec.Menu, func(item string) {
		if f.Picked != nil {
			f.Picked(item)
		}
	})
}

func (f *Field) popUp(texts []string, pick func(string)) {
	var items []*fyne.MenuItem
	for _, t := range texts {
		items = append(items, fyne.NewMenuItem(say.It(t), func() { pick(t) }))
	}
	canvas := fyne.CurrentApp().Driver().CanvasForObject(f.offer)
	if canvas == nil {
		return
	}
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(f.entry)
	menu := widget.NewPopUpMenu(fyne.NewMenu("", items...), canvas)
	menu.ShowAtPosition(at.AddXY(0, f.entry.Size().Height))
}
