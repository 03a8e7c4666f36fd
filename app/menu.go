package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"splaywright/app/look"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/assets"
)

// The preferences that hold the look.
const (
	prefDark = "dark"
	prefHigh = "high-contrast"
)

// menus holds the items that change with the session.
type menus struct {
	main       *fyne.MainMenu
	undo, redo *fyne.MenuItem
	save       *fyne.MenuItem
	recent     *fyne.MenuItem
	measure    *fyne.MenuItem
	rulers     *fyne.MenuItem

	wooden, near *fyne.MenuItem
	first, third *fyne.MenuItem // projections
	slide        *fyne.MenuItem
	scale        *fyne.MenuItem
}

// command is a menu item with its shortcut, named in the language.
func command(label string, key fyne.KeyName, mod fyne.KeyModifier, do func()) *fyne.MenuItem {
	m := fyne.NewMenuItem(say.It(label), do)
	if key != "" {
		m.Shortcut = &desktop.CustomShortcut{KeyName: key, Modifier: mod}
	}
	return m
}

const (
	ctrl      = fyne.KeyModifierControl
	ctrlShift = fyne.KeyModifierControl | fyne.KeyModifierShift
)

func (w *Window) buildMenu() {
	w.menu.undo = fyne.NewMenuItem(say.It("Undo"), w.undo)
	w.menu.undo.Shortcut = &fyne.ShortcutUndo{}
	w.menu.redo = fyne.NewMenuItem(say.It("Redo"), w.redo)
	w.menu.redo.Shortcut = &fyne.ShortcutRedo{}
	w.menu.save = command("Save", fyne.KeyS, ctrl, w.save)
	again := &desktop.CustomShortcut{KeyName: fyne.KeyZ, Modifier: ctrlShift}
	w.win.Canvas().AddShortcut(again, func(fyne.Shortcut) { w.redo() })

	w.menu.main = fyne.NewMainMenu(w.fileMenu(), w.editMenu(), w.viewMenu(), w.helpMenu())
	for _, m := range w.menu.main.Items {
		w.waits(m)
	}
	w.win.SetMainMenu(w.menu.main)
}

// waits lets the commands of a menu wait while a dialog stands: another would open over it, or what it is about would change
// behind it. Their shortcuts are heard all the same.
func (w *Window) waits(m *fyne.Menu) {
	for _, it := range m.Items {
		if it.ChildMenu != nil {
			w.waits(it.ChildMenu)
		}
		do := it.Action
		if do == nil || it == w.menu.undo || it == w.menu.redo {
			continue // these two are of the place to type as well
		}
		it.Action = func() {
			if it.IsQuit || w.win.Canvas().Overlays().Top() == nil {
				do()
			}
		}
	}
}

func (w *Window) fileMenu() *fyne.Menu {
	examples := fyne.NewMenuItem(say.It("New from example"), nil)
	var items []*fyne.MenuItem
	for _, e := range assets.Examples() {
		items = append(items, fyne.NewMenuItem(say.It(e.Title), func() {
			w.guard("begin a new design", func() { w.newFrom(e.Name) })
		}))
	}
	examples.ChildMenu = fyne.NewMenu("", items...)
	w.menu.recent = fyne.NewMenuItem(say.It("Open recent"), nil)
	w.listRecent()
	quit := command("Quit", fyne.KeyQ, ctrl, w.quit)
	quit.IsQuit = true
	return fyne.NewMenu(say.It("File"),
		command("New…", fyne.KeyN, ctrl, w.gallery),
		examples,
		command("New window", fyne.KeyN, ctrlShift, func() { w.another() }),
		command("Open…", fyne.KeyO, ctrl, w.open),
		w.menu.recent,
		command("Read timbers…", "", 0, w.readTimbers),
		command("Timbers for all designs…", "", 0, w.chooseShelf),
		fyne.NewMenuItemSeparator(),
		w.menu.save,
		command("Save as…", fyne.KeyS, ctrlShift, w.saveAs),
		fyne.NewMenuItemSeparator(),
		command("Write papers…", fyne.KeyP, ctrl, w.papers),
		command("Print…", fyne.KeyP, ctrlShift, w.print),
		fyne.NewMenuItemSeparator(),
		command("Close the window", fyne.KeyW, ctrl, w.askToClose),
		quit,
	)
}

func (w *Window) editMenu() *fyne.Menu {
	return fyne.NewMenu(say.It("Edit"), w.menu.undo, w.menu.redo,
		fyne.NewMenuItemSeparator(),
		command("History…", fyne.KeyH, ctrl, w.history),
		command("Resize the piece…", fyne.KeyR, ctrl, w.resize),
		command("Set aside to compare", fyne.KeyB, ctrl, w.setAside),
		fyne.NewMenuItemSeparator(),
		command("Copy the table as text", fyne.KeyC, ctrlShift, w.copyText),
		command("Copy the table as cells", fyne.KeyX, ctrlShift, w.copyCells),
	)
}

func (w *Window) helpMenu() *fyne.Menu {
	return fyne.NewMenu(say.It("Help"),
		command("Keys", fyne.KeyF1, 0, w.showKeys),
		command("A first stool in six hints", fyne.KeyF1, ctrl, w.hints.begin),
		fyne.NewMenuItem(say.It("About Splaywright"), w.showAbout),
	)
}

func (w *Window) viewMenu() *fyne.Menu {
	w.menu.measure = command("Measure between two points", fyne.KeyM, ctrl, w.measure)
	w.menu.rulers = command("Rulers", fyne.KeyL, ctrl, w.toggleRulers)
	w.menu.rulers.Checked = w.app.Preferences().BoolWithFallback(prefRulers, true)
	w.menu.wooden = command("Pictorial as wood", fyne.KeyG, ctrl, func() { w.look3(true, false) })
	w.menu.near = command("Pictorial from the eye", fyne.KeyE, ctrl, func() { w.look3(false, true) })
	w.menu.slide = command("Slide single parts", fyne.KeyJ, ctrl, w.slideOne)
	w.menu.first = fyne.NewMenuItem(say.It("First-angle projection"), func() { w.project("first") })
	w.menu.third = fyne.NewMenuItem(say.It("Third-angle projection"), func() { w.project("third") })
	return fyne.NewMenu(say.It("View"),
		command("Fit the drawing", fyne.Key0, ctrl, w.drawing.Fit),
		command("Larger", fyne.KeyEqual, ctrl, w.drawing.ZoomIn),
		command("Smaller", fyne.KeyMinus, ctrl, w.drawing.ZoomOut),
		w.menu.measure,
		command("Cut a section", fyne.KeyT, ctrl, w.cutSection),
		w.menu.rulers,
		command("Side by side", fyne.KeyB, ctrlShift, w.sideBySide),
		fyne.NewMenuItemSeparator(),
		w.menu.wooden,
		w.menu.near,
		w.menu.slide,
		fyne.NewMenuItemSeparator(),
		w.menu.first,
		w.menu.third,
		fyne.NewMenuItemSeparator(),
		command("Next table", fyne.KeyPageDown, ctrl, func() { w.turnTab(1) }),
		command("Table before", fyne.KeyPageUp, ctrl, func() { w.turnTab(-1) }),
		fyne.NewMenuItemSeparator(),
		fyne.NewMenuItem(say.It("Steps of the arrows…"), w.chooseSteps),
		w.tongueMenu(),
		command("Light or dark", fyne.KeyD, ctrl, func() { w.setDark(!w.theme().Dark) }),
		command("High contrast", fyne.KeyD, ctrlShift, func() { w.setHigh(!w.theme().High) }),
		w.scaleMenu(),
		command("Full screen", fyne.KeyF11, 0, func() { w.win.SetFullScreen(!w.win.FullScreen()) }),
	)
}

// project changes the projection of the design's papers; the drawing table shows what they show.
func (w *Window) project(p string) {
	w.s.Seal()
	w.set("papers.projection", p)
	w.s.Seal()
}

// look3 changes how the pictorial is shown: painted as wood or lines, from the eye of the papers or from far off.
func (w *Window) look3(wooden, near bool) {
	isWood, isNear := w.turner.Shows()
	if wooden {
		w.turner.Wooden(!isWood)
	}
	if near {
		w.turner.Near(!isNear)
	}
	w.menu.wooden.Checked, w.menu.near.Checked = w.turner.Shows()
	w.menu.main.Refresh()
}

func (w *Window) setDark(dark bool) {
	w.app.Preferences().SetBool(prefDark, dark)
	w.dress()
}

// setHigh shows everything with high contrast, or plain again.
func (w *Window) setHigh(high bool) {
	w.app.Preferences().SetBool(prefHigh, high)
	w.dress()
}

// dress gives every window the look that was chosen.
func (w *Window) dress() {
	th := w.theme()
	w.app.Settings().SetTheme(th)
	for _, o := range w.group.all {
		o.shown.dark = th.Dark
		o.changed() // the drawing has inks of its own for each theme
	}
}

// theme is the look that was chosen.
func (w *Window) theme() look.Theme {
	p := w.app.Preferences()
	return look.Theme{Dark: p.Bool(prefDark), High: p.Bool(prefHigh)}
}

// refresh says in the menu what would be taken back and what would be made again, and marks the projection of the papers.
func (m *menus) refresh(s *session.Session) {
	was := [4]string{m.undo.Label, m.redo.Label, m.save.Label, m.projection()}
	if p := s.Piece(); p != nil {
		m.first.Checked, m.third.Checked = p.Design.Papers.Projection == "first", p.Design.Papers.Projection == "third"
	}
	m.undo.Label = named(say.It("Undo"), "Undo %s", s.History(), true)
	m.redo.Label = named(say.It("Redo"), "Redo %s", s.Undone(), false)
	m.undo.Disabled, m.redo.Disabled = !s.CanUndo(), !s.CanRedo()
	if was != [4]string{m.undo.Label, m.redo.Label, m.save.Label, m.projection()} {
		m.main.Refresh()
	}
}

// projection is the one that is marked; "" = none is yet.
func (m *menus) projection() string {
	switch {
	case m.first.Checked:
		return m.first.Label
	case m.third.Checked:
		return m.third.Label
	}
	return ""
}

// named adds the step to the name of a command.
func named(alone, command string, steps []string, last bool) string {
	if len(steps) == 0 {
		return alone
	}
	step := steps[0]
	if last {
		step = steps[len(steps)-1]
	}
	return say.With(command, say.It(step))
}
