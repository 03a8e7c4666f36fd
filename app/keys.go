package app

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/say"
	"splaywright/assets"
)

// key is a line of the list of keys.
type key struct{ keys, does string }

// hands is what is done without the menu.
var hands = []key{
	{"Tab, Shift+Tab", "the next size, the one before"},
	{"F6", "the next part of the window: sizes, drawing, pictorial, tables"},
	{"Enter", "ends a size; what is typed next is a step of its own for undo"},
	{"Escape", "puts a dialog or a list away"},
	{"Wheel over the drawing", "larger or smaller about the pointer"},
	{"Drag on the drawing", "moves the sheet; a double tap fits it again"},
	{"Tap on a dimension", "types its size anew, where it stands"},
	{"Drag on the pictorial", "turns the piece; a double tap brings the first side back"},
	{"Shift and drag on a part of the pictorial", "slides it along its way; near its place it goes home"},
	{"Arrows, + and - in the drawing or the pictorial", "move the sheet or turn the piece, larger, smaller; Home brings it back"},
	{"Enter, Backspace in the pictorial", "choose the next part, the one before"},
	{"Page Up, Page Down in the pictorial", "slide the chosen part off and home; Escape brings all home"},
	{"Enter in the boards", "chooses the next board, place or corner; arrows move it, Delete removes it"},
	{"Pointer over a line or a row", "lights its part in every view and table"},
}

// keys lists every command of the menus that has a shortcut, and then what hands do.
func (w *Window) keys() []key {
	var out []key
	for _, m := range w.menu.main.Items {
		for _, it := range m.Items {
			if text := shortcutText(it.Shortcut); text != "" {
				name := it.Label
				switch it { // they name the step as well
				case w.menu.undo:
					name = say.It("Undo")
				case w.menu.redo:
					name = say.It("Redo")
				}
				out = append(out, key{text, strings.TrimSuffix(name, "…")})
			}
		}
	}
	for _, h := range hands {
		out = append(out, key{say.It(h.keys), say.It(h.does)})
	}
	return out
}

func shortcutText(s fyne.Shortcut) string {
	switch s := s.(type) {
	case *fyne.ShortcutUndo:
		return "Ctrl+Z"
	case *fyne.ShortcutRedo:
		return "Ctrl+Y"
	case *desktop.CustomShortcut:
		text := ""
		if s.Modifier&fyne.KeyModifierControl != 0 {
			text += "Ctrl+"
		}
		if s.Modifier&fyne.KeyModifierShift != 0 {
			text += "Shift+"
		}
		return text + string(s.KeyName)
	}
	return ""
}

// keysWide is the width of the list of keys, window units.
const keysWide = 700

func (w *Window) showKeys() {
	room := w.room(keysWide, 440)
	rows := container.New(layout.NewCustomPaddedVBoxLayout(0))
	for _, k := range w.keys() {
		row := container.NewGridWithColumns(2)
		for i, text := range []string{k.keys, k.does} {
			l := widget.NewLabel(text)
			l.TextStyle.Bold = i == 0
			l.Wrapping = fyne.TextWrapWord
			l.Resize(fyne.NewSize((room.Width-theme.Padding())/2, 0)) // it knows its height once it has its width
			row.Add(l)
		}
		rows.Add(row)
	}
	scroll := container.NewVScroll(rows)
	scroll.SetMinSize(room)
	w.show(w.closable(say.It("Keys"), scroll))
}

// The about page says what the program is, and under which terms it and what is built into it stand.
const (
	aboutWhat = "Splaywright works out stools, benches, trays and chests whose boards lean: every part's true size, every compound angle, the dovetails, the papers to cut from."
	aboutCare = "The program knows nothing of your saw, your wood or your hands. Keep guards on, hold leaning work with a jig or a clamp, try a set-up in scrap first. Follow local codes and a qualified person where somebody's safety depends on a piece."
)

func (w *Window) showAbout() {
	var terms []string
	for _, l := range assets.Licences() {
		terms = append(terms, l.What+": "+l.Terms)
	}
	text := widget.NewLabel(strings.Join([]string{say.It(aboutWhat), say.It("It stands under the MIT licence. Built into it are:"), strings.Join(terms, "\n"), say.It(aboutCare)}, "\n\n"))
	text.Wrapping = fyne.TextWrapWord
	scroll := container.NewVScroll(text)
	scroll.SetMinSize(w.room(560, 340))
	w.show(w.closable("Splaywright "+assets.Version(), scroll))
}

// turnTab opens the tab that many further on, round and round.
func (w *Window) turnTab(by int) {
	n := len(w.tabs.Items)
	w.tabs.SelectIndex(((w.tabs.SelectedIndex()+by)%n + n) % n)
}
