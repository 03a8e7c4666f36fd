package app

import (
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/look"
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/model/form"
	"splaywright/model/measure"
)

// hint is one step of the first stool: what to do, and what field it is about.
type hint struct {
	text string
	path string // "" = none
	tab  string // "" = the tab stays
}

// firstStool leads through a first piece; %s is another height for it.
var firstStool = []hint{
	{say.Key("This is a whole piece from a few sizes. Type another height on the left, such as %s, and watch the drawing and the tables follow."), "size.height", ""},
	{say.Key("The sides lean. Type 10 where they lean: 10 degrees from plumb. 1:7 and 8 deg are read as well."), "splay.ends", ""},
	{say.Key("Name your timber. The weight, the movement over the seasons and the strength are reckoned with it."), "timber", ""},
	{say.Key("Findings tell what stops or spoils the piece, beside the size that would change it and all together here."), "", findingsTab},
	{say.Key("The saw settings give swing and tilt for every cut; the marking table gives every line of the dovetails. Notes below a table say what its figures mean."), "", "Saw settings"},
	{say.Key("Write the papers with Ctrl+P: drawings, tables and full-size patterns. Undo takes back anything with Ctrl+Z; F1 lists all keys."), "", "Steps"},
}

// anotherHeight is one that a design may be given, as its bare numbers are read: somewhat more than it has.
func anotherHeight(d form.Design) string {
	step, more := 10.0, 4.0 // mm
	if d.Units == measure.Imperial {
		step, more = 25.4, 2
	}
	steps := math.Round(d.Size.Height.MM()/step) + more
	if d.Units == measure.Metric {
		steps *= step
	}
	return strconv.FormatFloat(steps, 'f', 0, 64)
}

// prefHints is the preference that tells that the hints have been put away.
const prefHints = "hints-away"

// hints is the bar that leads through the first stool.
type hints struct {
	w     *Window
	at    int
	text  *widget.Label
	count *widget.Label
	back  *keyed.Button
	next  *keyed.Button
	bar   fyne.CanvasObject
}

func newHints(w *Window) *hints {
	h := &hints{w: w, text: widget.NewLabel(""), count: widget.NewLabel("")}
	h.text.Wrapping = fyne.TextWrapWord
	h.back = keyed.NewButton(say.It("Hint before"), func() { h.show(h.at - 1) })
	h.next = keyed.NewButton("", func() { h.show(h.at + 1) })
	h.next.Importance = widget.HighImportance
	away := keyed.NewButton(say.It("Put the hints away"), h.hide)
	away.Importance = widget.LowImportance
	buttons := container.NewHBox(h.count, h.back, h.next, away)
	h.bar = panel.Backed(look.Strip, container.NewBorder(nil, nil, nil, container.NewCenter(buttons), h.text))
	h.bar.Hide()
	return h
}

// begin shows the first hint again.
func (h *hints) begin() {
	h.w.app.Preferences().SetBool(prefHints, false)
	h.bar.Show()
	h.show(0)
}

// show shows a hint with what it is about; past the last one the hints are put away.
func (h *hints) show(n int) {
	if n >= len(firstStool) {
		h.hide()
		return
	}
	h.at = max(0, n)
	step := firstStool[h.at]
	h.tell()
	h.count.SetText(say.With("%d of %d", h.at+1, len(firstStool)))
	h.next.SetText(say.It("Next"))
	if h.at == len(firstStool)-1 {
		h.next.SetText(say.It("Done"))
	}
	h.back.Enable()
	if h.at == 0 {
		h.back.Disable()
	}
	if step.tab != "" {
		h.w.openTabOf(step.tab)
	}
	if step.path != "" {
		h.w.goTo(step.path)
	}
}

// tell says the hint that is shown, of the design that is open.
func (h *hints) tell() {
	text := firstStool[h.at].text
	if strings.Contains(text, "%s") {
		h.text.SetText(say.With(text, anotherHeight(h.w.s.Design())))
		return
	}
	h.text.SetText(say.It(text))
}

// hide puts the hints away, until they are called again from the menu.
func (h *hints) hide() {
	h.bar.Hide()
	h.w.app.Preferences().SetBool(prefHints, true)
}

// openTabOf opens a tab by its title in English.
func (w *Window) openTabOf(title string) {
	for i := range w.tabs.Items {
		if w.titleOf(i) == title {
			w.tabs.SelectIndex(i)
		}
	}
}
