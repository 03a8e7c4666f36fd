package app

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
	"splaywright/assets"
)

// key is a line of the list of keys.
type key struct{ keys, does string }

// hands is what is done without the menu.
var hands = []key{
	{"Alt", "opens the menus; arrows go through them, Enter takes a command"},
	{"Tab, Shift+Tab", "the next size or button, the one before"},
	{"F6", "the next part of the window: sizes, drawing, pictorial, tables"},
	{"Enter", "ends a size; what is typed next is a step of its own for undo"},
	{"Escape", "puts a dialog or a list away; ends measuring, then papers that are being written"},
	{"Wheel over the drawing", "larger or smaller about the pointer"},
	{"Drag on the drawing", "moves the sheet; a double tap fits it again"},
	{"Tap on a dimension", "types its size anew, where it stands"},
	{"Drag on the pictorial", "turns the piece; a double tap brings the first side back"},
	{"Shift and drag on a part of the pictorial", "slides it along its way; near its place it goes home"},
	{"Arrows, + and - in the drawing or the pictorial", "move the sheet or turn the piece, larger, smaller; Home brings it back"},
	{"Enter, Backspace in the pictorial", "choose the next part, the one before"},
	{"Arrows, Page Up, Page Down in a text", "move what is longer than its place; below a table and under a size from the heading"},
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
		return keyText(ctrl, fyne.KeyZ)
	case *fyne.ShortcutRedo:
		return keyText(ctrl, fyne.KeyY)
	case *desktop.CustomShortcut:
		return keyText(s.Modifier, s.KeyName)
	}
	return ""
}

// keyText names a key as it is printed on it.
func keyText(mod fyne.KeyModifier, key fyne.KeyName) string {
	var parts []string
	if mod&fyne.KeyModifierControl != 0 {
		parts = append(parts, say.It("Ctrl"))
	}
	if mod&fyne.KeyModifierShift != 0 {
		parts = append(parts, say.It("Shift"))
	}
	name := string(key)
	switch key {
	case fyne.KeyPageDown:
		name = say.It("Page Down")
	case fyne.KeyPageUp:
		name = say.It("Page Up")
	}
	return strings.Join(append(parts, name), "+")
}

func (w *Window) showKeys() {
	grid := container.New(keyLines{})
	for _, k := range w.keys() {
		name := widget.NewLabel(k.keys)
		name.TextStyle.Bold = true
		name.Wrapping = fyne.TextWrapWord
		does := widget.NewLabel(k.does)
		does.Wrapping = fyne.TextWrapWord
		grid.Add(name)
		grid.Add(does)
	}
	w.reads(say.It("Keys"), grid, w.room(760, 640))
}

// reads shows what is read, and moved by keys where it is higher than its room.
func (w *Window) reads(title string, body fyne.CanvasObject, room fyne.Size) {
	text := keyed.NewReading(container.NewPadded(body))
	text.Scroll.SetMinSize(room)
	d := w.closable(title, text)
	d.first = text
	w.show(d)
}

// keyLines puts keys and what they do beside each other, line close under line.
type keyLines struct{}

const (
	keysShare = 0.4 // of the width
	keysClose = 8   // the library's room round a text, that lines may share
)

func (l keyLines) Layout(objects []fyne.CanvasObject, size fyne.Size) { l.lay(objects, size.Width) }

// lay gives the height that it comes to.
func (keyLines) lay(objects []fyne.CanvasObject, wide float32) float32 {
	y := float32(0)
	for i := 0; i+1 < len(objects); i += 2 {
		high := float32(0)
		for j, o := range objects[i : i+2] {
			x, room := [2]float32{0, wide * keysShare}[j], [2]float32{wide * keysShare, wide * (1 - keysShare)}[j]
			o.Move(fyne.NewPos(x, y))
			o.Resize(fyne.NewSize(room, o.Size().Height)) // breaks its lines
			o.Resize(fyne.NewSize(room, o.MinSize().Height))
			high = max(high, o.Size().Height)
		}
		y += high - keysClose
	}
	return y + keysClose
}

func (l keyLines) MinSize(objects []fyne.CanvasObject) fyne.Size {
	wide := float32(0)
	if len(objects) > 1 {
		wide = objects[0].Size().Width + objects[1].Size().Width
	}
	return fyne.NewSize(0, l.lay(objects, wide))
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
	w.reads("Splaywright "+assets.Version(), text, w.room(560, 480))
}

// turnTab opens the tab that many further on, round and round.
func (w *Window) turnTab(by int) {
	n := len(w.tabs.Items)
	w.tabs.SelectIndex(((w.tabs.SelectedIndex()+by)%n + n) % n)
}
