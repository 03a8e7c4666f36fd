// Package app is the window: sizes on one side, the drawing table in the middle, tables and
// findings in a drawer below it.
package app

import (
	"errors"
	"path/filepath"
	"reflect"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver"
	"fyne.io/fyne/v2/theme"

	"splaywright/app/look"
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/app/viewer"
	"splaywright/assets"
)

// Options is what the window begins with. Path wins over Example; with neither the first
// built-in example is shown.
type Options struct {
	Path    string // a design file
	Example string // the name of a built-in example
	Comma   bool   // designs that begin with an example write decimals with a comma

	// Tongue is the language that is spoken until another is chosen; "" = the one that is spoken
	// already, English at first.
	Tongue string

	// Journal is the folder where unsaved work is kept; "" = nowhere.
	Journal string

	// Times tells how long things take; nil = nothing is told.
	Times *Times

	// Spawn starts work away from the window's goroutine; nil = on goroutines. Tests run the
	// work at once.
	Spawn func(func())

	// Do does something on the window's goroutine, soon; nil = as the window's library does.
	Do func(func())

	// Rest waits for something to happen to a window, at most so long, and tells whether it has; nil = the windows are always
	// awake.
	Rest func(most time.Duration) bool

	early *early // nil = the window is filled at once
}

// settleAfter is when the window and its first pictures are there.
const settleAfter = 2 * time.Second

// The size of the window at first, and how its parts share it.
const (
	firstWidth, firstHeight = 1280, 820
	sizesShare              = 0.25
	drawingShare            = 0.66
	tableShare              = 0.64
)

// Window is one window with one design.
type Window struct {
	app fyne.App
	win fyne.Window
	s   *session.Session

	sizes     *panel.Sizes
	card      *panel.Card
	explained string // the path of the size that the card explains, "" = none
	strip     *panel.Strip
	findings  *panel.Findings
	tabs      *drawers
	tables    []tab
	filled    bool            // the sizes and the tables are shown, too
	left      *fyne.Container // place of the sizes
	below     *fyne.Container // place of the tables

	boards  *boards
	plans   planning
	offers  offering
	section *sectionWindow // nil = not open
	aside   []variant      // what was set aside to compare
	beside  *besides       // nil = not open

	drawing *viewer.Table
	modes   *modeBar
	turner  *viewer.Turner
	apart   *apartBar
	panes   *panes

	menu    menus
	hints   *hints
	work    session.Latest // the pictures
	looking session.Latest // looking the piece over
	times   *Times
	spawn   func(func())
	do      func(func())
	// Work goes on while the window's goroutine goes on; else it is done at once, as in tests.
	parallel bool
	rest     func(time.Duration) bool
	early    *early
	comma    bool // see Options
	shown    shown
	writing  *writing // papers; nil = none
	progress *progress
	asking   bool  // a question stands that another must not cover
	opening  error // why the file of the options was not opened

	group    *group
	journals string           // the folder of the journals
	journal  *session.Journal // nil = unsaved work is not kept
	keeping  session.Latest
	stop     chan struct{} // closed with the window
	dialogs  []standing
	inDialog map[string]fyne.CanvasObject // what the robot taps in the dialog that was shown last
}

// New makes the first window. It is shown by ShowAndRun.
func New(a fyne.App, o Options) *Window {
	if o.Spawn == nil && o.Do == nil {
		e := newEarly()
		o.Do, o.early = e.do, e
	}
	return newWindow(a, o, newGroup())
}

func newWindow(a fyne.App, o Options, g *group) *Window {
	w := &Window{app: a, spawn: o.Spawn, comma: o.Comma, group: g, journals: o.Journal, stop: make(chan struct{})}
	if o.Journal != "" {
		w.journal = session.NewJournal(o.Journal)
	}
	w.keeping.Spawn, w.parallel = o.Spawn, o.Spawn == nil || o.Do != nil
	w.early, w.rest = o.early, o.Rest
	if w.do = o.Do; w.do == nil {
		w.do = fyne.Do
	}
	if w.times = o.Times; w.times == nil {
		w.times = &Times{}
	}
	g.all = append(g.all, w)
	w.shown.dark = w.theme().Dark
	if code := a.Preferences().StringWithFallback(prefTongue, o.Tongue); code != "" {
		say.Use(code)
	}
	if of := a.Preferences().Float(prefScale); of > 0 {
		if err := useScale(of); err != nil {
			fyne.LogError("The scale of the screen stays as it was", err)
		}
	}
	w.group.shelf.open(a.Preferences())
	first := w.first(o)
	a.Settings().SetTheme(w.firstTheme(first.Design().Title))
	a.SetIcon(fyne.NewStaticResource("icon.png", assets.Icon))
	w.win = a.NewWindow("Splaywright")
	w.work.Spawn, w.looking.Spawn = o.Spawn, o.Spawn
	w.plans.spawn(o.Spawn)
	w.offers.work.Spawn = o.Spawn
	w.win.SetPadded(false)
	w.win.Resize(fyne.NewSize(firstWidth, firstHeight)) // the first pictures are made for it
	w.begin(first)
	w.win.SetCloseIntercept(w.askToClose)
	w.win.SetOnDropped(w.dropped)
	return w
}

// begin makes what is in the window. The first window of a run is made while the library gets one from the system (late).
func (w *Window) begin(first *session.Session) {
	if w.early == nil {
		w.build()
		w.fill()
		w.take(first)
		w.drawing.Roomed = w.remake
		return
	}
	l := newLate(func() fyne.CanvasObject {
		w.place()
		w.early.wait()
		return w.panes.object
	})
	w.early.late = l
	w.win.SetContent(l.root)
	go func() {
		defer close(l.made)
		w.furnish()
		w.panes.object.Resize(fyne.NewSize(firstWidth, firstHeight-menuHeight())) // the menu takes its room when the window is there
		w.take(first)
		w.drawing.Roomed = w.remake
	}()
}

// elsewhere does work away from the window's goroutine, such as writing papers.
func (w *Window) elsewhere(f func()) {
	work := func() { session.Working(f) }
	if w.spawn != nil {
		w.spawn(work)
		return
	}
	go work()
}

// first opens what the window begins with.
func (w *Window) first(o Options) *session.Session {
	name := o.Example
	if name == "" {
		name = assets.FirstExample
	}
	var s *session.Session
	if o.Path != "" {
		s, w.opening = session.Open(fromRoot(o.Path))
	}
	if s == nil {
		ex, err := session.FromExample(name, w.custom(name)...)
		if err != nil {
			w.opening = errors.Join(w.opening, err)
			ex, err = session.FromExample(assets.FirstExample, w.custom(assets.FirstExample)...)
		}
		if err != nil {
			panic("app: the first built-in example cannot be read: " + err.Error())
		}
		s = ex
	}
	return s
}

// take shows another session.
func (w *Window) take(s *session.Session) {
	w.s = s
	w.s.Shelve(w.group.shelf.own)
	w.shown.fresh = true
	clear(w.apart.slid)
	w.changed()
	if w.hints.bar.Visible() {
		w.hints.tell()
	}
	w.remember()
}

// errUndrawn tells that the display is there but has nothing that the window's library can draw with.
var errUndrawn = errors.New("this display cannot draw the window: OpenGL 2 or newer is missing; install a graphics driver or one that draws in software (on Debian libgl1-mesa-dri); the commands need no window: `splaywright show FILE` prints the tables, `splaywright papers FILE --to DIR` writes the papers")

// ShowAndRun shows the window and returns when the last one is closed, or at once with an error where none can be shown.
func (w *Window) ShowAndRun() error {
	w.app.Lifecycle().SetOnStarted(func() {
		w.times.begun()
		fyne.Do(w.begun)
		if w.rest != nil {
			go w.group.restWhenIdle(w.rest)
		}
	})
	heedTheSystem()
	over := make(chan struct{})
	defer close(over)
	go tidy(over) // once, however many windows there are
	w.early.show()
	w.win.Show()
	if !drawn(w.win) {
		return errUndrawn
	}
	w.app.Run()
	return nil
}

// drawn tells whether the system has given a window for it: the library only logs that it has not, and waits for ever.
func drawn(win fyne.Window) bool {
	native, ok := win.(driver.NativeWindow)
	given := true
	if ok {
		native.RunNative(func(system any) { given = !reflect.ValueOf(system).IsZero() })
	}
	return given
}

// begun goes on when the window is shown with its first pictures.
func (w *Window) begun() {
	w.early.over()
	if w.app.Settings().Theme() != w.theme() {
		w.app.Settings().SetTheme(w.theme())
	}
	w.fill()
	time.AfterFunc(settleAfter, settle)
	w.started()
	if w.opening != nil {
		w.tell("The design was not opened", w.opening)
	}
	w.group.shelf.tell(w)
	if w.journals != "" {
		w.offerLost(session.Lost(w.journals))
	}
	if w.win.Canvas().Overlays().Top() == nil {
		w.welcome()
	}
	time.AfterFunc(frame, func() { fyne.Do(w.times.filled) })
}

// frame is longer than the window's library takes from picture to picture, so that what was shown has been painted after it.
const frame = 20 * time.Millisecond

// started begins what goes on while the window is open.
func (w *Window) started() {
	if w.spawn == nil { // tests look at the file themselves
		go w.watchFile(w.stop)
		go w.tellPlaces(w.stop)
	}
}

// build makes everything and shows the pictures; fill shows the rest.
func (w *Window) build() {
	w.furnish()
	w.win.SetContent(w.panes.object)
	w.place()
}

// place has the library's window hear what is for the program.
func (w *Window) place() {
	w.buildMenu()
	w.win.Canvas().SetOnTypedKey(w.typedKey)
	if w.s != nil {
		w.nameTitle()
	}
}

// furnish makes everything that is in the window. It may run while the library gets the window from the system.
func (w *Window) furnish() {
	w.filled = false
	w.sizes, w.strip, w.findings = panel.NewSizes(), panel.NewStrip(), panel.NewFindings()
	w.drawing, w.turner = viewer.NewTable(), viewer.NewTurner()
	w.drawing.Spawn(w.spawn)
	w.drawing.OnGiven(w.times.first)
	w.turner.Spawn(w.spawn)
	w.sizes.OnSet, w.sizes.OnDone = w.set, func() { w.s.Seal() }
	w.sizes.OnLock, w.sizes.Steps = w.lock, w.arrowSteps
	w.explains()
	w.strip.OnState = w.goToState
	w.findings.OnAsk, w.findings.OnAccept = w.whatWouldDo, w.accept
	w.sizes.OnAdd, w.sizes.OnRemove, w.sizes.OnMenu = w.add, w.remove, w.pick
	w.tabs = newDrawers()
	w.tables = newTabs()
	w.sayBlank()
	w.boards = newBoards(w)
	w.boards.picture.Spawn(w.spawn)
	w.boards.fields.OnFocus, w.boards.fields.OnKey = w.explain, w.takesKey
	w.turner.Key, w.drawing.Key, w.boards.picture.Key = w.takesKey, w.takesKey, w.takesKey
	w.watchPointer()

	w.apart = newApartBar(w)
	w.turner.Slide(w.slides(), false)
	pictorial := container.NewBorder(nil, panel.Backed(look.Strip, w.apart.all), nil, nil, w.turner)
	w.modes = newModeBar()
	table := w.modes.over(w.drawing)
	pictures := container.NewHSplit(table, pictorial)
	pictures.SetOffset(tableShare)
	w.below, w.left = container.NewStack(), container.NewStack()
	main := container.NewVSplit(pictures, w.below)
	main.SetOffset(drawingShare)
	w.hints, w.progress = newHints(w), newProgress(w)
	if w.writing != nil { // the window is made anew in another language
		w.progress.begin()
	}
	right := panel.Topped(container.NewVBox(w.strip.Object(), w.hints.bar, w.progress.all), main)
	column := panel.Backed(look.Column, w.left)
	all := container.NewHSplit(column, right)
	all.SetOffset(sizesShare)
	w.panes = newPanes(all, []fyne.CanvasObject{column, table, pictorial, w.below},
		[]fyne.CanvasObject{pictures, main, right}, [][]int{{1, 2}, {1, 2, 3}, {1, 2, 3}})
}

// menuHeight is what the library's bar of menus takes of the window's height.
func menuHeight() float32 {
	return fyne.MeasureText("M", theme.TextSize(), fyne.TextStyle{}).Height + theme.InnerPadding()
}

// fill shows what the window has beside the pictures: the sizes and the tables. It takes several times as long as all
// before, so the first window of a run is shown without.
func (w *Window) fill() {
	if w.filled {
		return
	}
	w.filled = true
	items := make([]*container.TabItem, 0, len(w.tables)+2)
	for _, t := range w.tables {
		items = append(items, container.NewTabItem(say.It(t.title), t.show.Object()))
	}
	w.tabs.SetItems(append(items, container.NewTabItem(say.It(boardsTab), w.boards.all), container.NewTabItem(say.It(findingsTab), w.findings.Object())))
	w.tabs.OnSelected = func(*container.TabItem) { w.look() }
	if w.s != nil {
		w.refresh()
	}
	w.look()
	w.left.Add(w.card.Under(w.sizes.Object()))
	w.below.Add(w.tabs)
}

// nameTitle puts the file's name and a mark for unsaved changes on the window.
func (w *Window) nameTitle() {
	name := say.It("not saved yet")
	if p := w.s.Path(); p != "" {
		name = filepath.Base(p)
	}
	if w.s.Dirty() {
		name = say.With("%s (changed)", name)
	}
	w.win.SetTitle(w.s.Design().Title + " – " + name + " – Splaywright")
}
