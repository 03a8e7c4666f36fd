package app

import (
	"fmt"
	"image/color"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/app/viewer"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/yield"
	"splaywright/render/table"
)

// boards is the tab of the boards: the fields of one, all of them drawn with what is cut from them.
type boards struct {
	list     string // panel.OnHand or panel.ToBuy
	chosen   int
	fields   *panel.Sizes
	picture  *viewer.Boards
	which    *keyed.Select
	said     *widget.Label
	trouble  *widget.Label
	below    *keyed.Reading    // of trouble, or of its room
	belowAll *fyne.Container   // what is read there
	held     float32           // how high that was; 0 = nothing was said
	holds    *canvas.Rectangle // the room of what was said of trouble, while a plan is looked for
	told     *fyne.Container   // what is said, and the boards below it
	bar      *widget.ProgressBar
	room     fyne.CanvasObject // of the bar
	halt     *keyed.Button
	add      *keyed.Button
	onBoard  []*keyed.Button // what can be added to a board
	last     map[string]planned
	all      fyne.CanvasObject
	home     *keyed.Button // puts what is bought among the boards on hand
}

// lists are the words for the two lists.
func lists() []string { return []string{say.It("On hand"), say.It("To buy")} }

// boardFieldsShare is the part of the tab that the fields take.
const boardFieldsShare = 0.27

func newBoards(w *Window) *boards {
	b := &boards{list: panel.OnHand, last: map[string]planned{}, said: widget.NewLabel(""), trouble: widget.NewLabel(""), holds: canvas.NewRectangle(color.Transparent)}
	b.fields = panel.NewColumn(func(d *form.Design, timbers, _ []string) []panel.Group {
		return panel.BoardGroups(d, timbers, b.list, b.chosen)
	})
	b.fields.OnSet, b.fields.OnDone = w.set, func() { w.s.Seal() }
	b.fields.OnRemove = w.remove
	b.picture = viewer.NewBoards()
	b.picture.Spawn(w.spawn)
	b.picture.Chosen = func(board int) { b.choose(w, board, -1) }
	b.picture.Picked = func(board, place int) { b.fields.Bring(fmt.Sprintf("%s.%d.avoid.%d.what", b.list, board, place)) }
	b.picture.Moved = func(board, place int, to stock.Avoid) { w.edit(say.It("Move a place"), w.movePlace(board, place, to)) }
	b.picture.Bent = func(board, at int, to stock.Point) { w.edit(say.It("Move a corner"), w.bend(board, at, to)) }
	b.picture.Removed = func(board, place int) {
		w.remove(fmt.Sprintf("%s.%d.avoid.%d", b.list, board, place))
	}
	b.picture.Cut = func(board, corner int) { w.edit(say.It("Remove a corner"), w.removeCorner(board, corner)) }
	b.which = keyed.NewSelect(lists(), func(string) { b.switchTo(w, b.which.SelectedIndex()) })
	b.which.PlaceHolder = slices.MaxFunc(lists(), func(a, b string) int { return len(a) - len(b) }) // never seen: it gives the choice its width
	b.bar, b.room = newBar()
	b.halt = keyed.NewButton(say.It("Enough"), func() { b.plan(w).halt(); b.plan(w).halted = true })
	b.all = b.lay(w)
	b.which.SetSelectedIndex(0)
	return b
}

func (b *boards) lay(w *Window) fyne.CanvasObject {
	b.said.Truncation = fyne.TextTruncateEllipsis
	b.said.SizeName = theme.SizeNameCaptionText
	b.trouble.Wrapping = fyne.TextWrapWord
	b.trouble.Importance = widget.WarningImportance
	b.trouble.SizeName = theme.SizeNameCaptionText
	button := func(text string, icon fyne.Resource, do func()) *keyed.Button {
		x := keyed.NewButtonWithIcon(say.It(text), icon, do)
		x.Importance = widget.LowImportance
		return x
	}
	b.onBoard = []*keyed.Button{
		button(say.It("Knot"), theme.ContentAddIcon(), func() { w.edit(say.It("Add a knot"), w.addPlace(knotOn)) }),
		button(say.It("Strip"), theme.ContentAddIcon(), func() { w.edit(say.It("Add a strip"), w.addPlace(stripOn)) }),
		button(say.It("Split"), theme.ContentAddIcon(), func() { w.edit(say.It("Add a split"), w.addPlace(splitOn)) }),
		button(say.It("Taper"), theme.ContentAddIcon(), func() { w.edit(say.It("Add a taper"), w.addTaper()) }),
		button(say.It("Corner"), theme.ContentAddIcon(), func() { w.edit(say.It("Add a corner"), w.addCorner()) }),
	}
	b.add = button(say.It("Board"), theme.ContentAddIcon(), func() { w.edit(say.It("Add a board"), w.addBoard()) })
	tools := container.NewHBox(b.which, b.add)
	for _, x := range b.onBoard {
		tools.Add(x)
	}
	tools.Add(button(say.It("Read a list…"), theme.FolderOpenIcon(), w.readBoards))
	b.home = button(say.It("They are bought"), theme.ConfirmIcon(), func() { w.edit(say.It("They are bought"), w.takeHome()) })
	b.home.Hide()
	tools.Add(b.home)
	b.belowAll = container.NewStack(b.holds, b.trouble)
	b.below = keyed.NewReading(b.belowAll)
	seeing(b.trouble, false)
	seeing(b.below, false)
	state := container.NewBorder(nil, nil, nil, container.New(ofItsLine{}, b.room, b.halt), b.said)
	b.told = container.New(told{b}, state, b.below, b.picture)
	body := container.NewHSplit(b.fields.Object(), b.told)
	body.SetOffset(boardFieldsShare)
	return panel.Topped(container.NewHScroll(tools), body)
}

func (b *boards) plan(w *Window) *boardPlan {
	if b.list == panel.ToBuy {
		return &w.plans.toBuy
	}
	return &w.plans.onHand
}

func (b *boards) switchTo(w *Window, which int) {
	list := panel.OnHand
	if which == 1 {
		list = panel.ToBuy
	}
	if list == b.list {
		return
	}
	b.list, b.chosen = list, 0
	b.picture.Choose(-1, -1)
	b.update(w)
	w.askForPlans()
}

// choose shows the fields of another board.
func (b *boards) choose(w *Window, board, place int) {
	d := w.s.Design()
	if board >= len(panel.Boards(&d, b.list)) {
		return // one of the yard's: its row stands among the sizes
	}
	b.chosen = board
	if place >= 0 {
		b.picture.Choose(board, place)
	}
	b.fields.Update(w.s)
}

// update shows the boards of the text as it stands, and the plan where it is one of these boards.
func (b *boards) update(w *Window) {
	if w.s == nil {
		return
	}
	d := spoken(w.s.Design())
	all := panel.Boards(&d, b.list)
	b.chosen = max(0, min(b.chosen, len(all)-1))
	b.fields.Update(w.s)
	for _, x := range b.onBoard {
		if len(all) == 0 {
			x.Disable()
		} else {
			x.Enable()
		}
	}
	style := styleOf(d)
	show := viewer.BoardShow{Boards: all, Step: dragStep(d.Units), Say: printing(style), Exact: printing(style.Exact())}
	p := b.plan(w)
	seeing(b.home, b.list == panel.ToBuy && p.has && len(p.result.Plan.Layouts) > 0)
	show.Kerf, show.Resaw = p.task.Saw.Kerf, p.task.Saw.Resaw
	if n := len(all); p.has && len(p.task.Boards) >= n && sameBoards(p.task.Boards[:n], all) {
		show.Boards, show.Cuts = withBought(all, p.result, cutsOf(p))
		b.last[b.list] = planned{of: w.s, listed: all, boards: show.Boards, cuts: show.Cuts}
	} else if was := b.last[b.list]; was.of == w.s {
		show.Boards, show.Cuts = was.awaiting(all, !p.fresh())
	}
	b.picture.Set(show)
	b.say(p, len(all)+len(d.Yard)+len(p.task.Boards), style)
	b.progress(p)
}

// printing prints lengths in millimetres.
func printing(st measure.Style) func(mm float64) string {
	return func(mm float64) string { return st.Text(st.Format(measure.Length(mm))) }
}

// spoken is a design that divides decimals as the language has it, where it does not say how, and whose unnamed boards have their
// names in it.
func spoken(d form.Design) form.Design {
	d = d.Named(say.With)
	if !d.Round.Said {
		d.Round.Comma = say.Tongue().Comma()
	}
	return d
}

// styleOf is how lengths of a design are shown.
func styleOf(d form.Design) measure.Style { return spoken(d).Style() }

// dragStep is what a dragged place is rounded to.
func dragStep(u measure.Unit) float64 {
	if u == measure.Imperial {
		return 25.4 / 16
	}
	return 1
}

// sameBoards tells whether two lists are of the same wood, so that a plan of one is one of the other.
func sameBoards(a, b []stock.Board) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if fmt.Sprintf("%+v", a[i]) != fmt.Sprintf("%+v", b[i]) {
			return false
		}
	}
	return true
}

// withBought adds what is bought of the yard's to the boards that are listed one by one.
func withBought(listed []stock.Board, r yield.Result, cuts []viewer.BoardCuts) ([]stock.Board, []viewer.BoardCuts) {
	all := slices.Clone(listed)
	at := map[int]int{}
	for k, c := range cuts {
		i := c.Layout.Board
		if i < len(listed) {
			continue
		}
		if _, known := at[i]; !known {
			at[i] = len(all)
			all = append(all, r.Task.Boards[i])
		}
		cuts[k].Layout.Board = at[i]
	}
	return all, cuts
}

func cutsOf(p *boardPlan) []viewer.BoardCuts {
	names, ids := table.PartNames(p.result), table.PartIDs(p.result)
	for q, name := range names {
		names[q] = say.It(name)
	}
	var out []viewer.BoardCuts
	for i, l := range p.result.Plan.Layouts {
		least, _, warped := l.Flattened(p.result.Task)
		if !warped {
			least = 0
		}
		out = append(out, viewer.BoardCuts{Layout: l, Flat: least, Cuts: l.Cuts(p.result.Task), Opened: p.result.Opened(i), Title: table.BoardName(p.result, i), Names: names, IDs: ids})
	}
	return out
}

// say tells how the plan stands, and in whole sentences what has no place.
func (b *boards) say(p *boardPlan, boards int, style measure.Style) {
	text, trouble := "", ""
	if p.fresh() {
		return
	}
	switch {
	case boards == 0 && b.list == panel.OnHand:
		text = say.It("No boards yet: add one, or read a list.")
	case boards == 0:
		text = say.It("Nothing the yard has is listed yet.")
	case p.busy:
		text = say.It("Planning…")
	case p.err != nil:
		text, trouble = say.It("No plan."), say.Error(p.err)
	case p.has:
		text = say.It(table.PlanInShort(p.result, style))
		if p.halted {
			text = say.With("%s, stopped early", text)
		}
		trouble = strings.Join(say.All(table.WithoutPlace(p.result, style)), " ")
	}
	b.said.SetText(text)
	b.troubled(trouble, p.busy)
}

// troubled says what has no place; while a plan is looked for, what was said before keeps its room, so that the boards do not move.
func (b *boards) troubled(text string, busy bool) {
	was, below, said := b.held, b.below.Visible(), b.trouble.Text
	switch {
	case !busy:
		b.held = 0
	case b.trouble.Visible():
		b.held = b.trouble.Size().Height
	}
	b.trouble.SetText(text)
	seeing(b.trouble, text != "")
	seeing(b.below, text != "" || b.held > 0)
	if b.held != was || b.below.Visible() != below || text != said {
		b.holds.SetMinSize(fyne.NewSize(0, b.held))
		b.told.Refresh()
	}
}

func seeing(o fyne.CanvasObject, is bool) {
	if is {
		o.Show()
	} else {
		o.Hide()
	}
}

// progress shows how long a plan has been looked for, of how long it may be.
func (b *boards) progress(p *boardPlan) {
	if !p.busy || p.fresh() {
		b.room.Hide()
		b.halt.Hide()
		return
	}
	b.bar.SetValue(min(1, float64(time.Since(p.since))/float64(planPatience)))
	b.room.Show()
	b.halt.Show()
}

// edit shows what an edit of the boards has led to, or tells why there was none.
func (w *Window) edit(what string, err error) {
	if err != nil {
		w.tell(what, err)
		return
	}
	w.changed()
}

func (w *Window) movePlace(board, place int, to stock.Avoid) error {
	d := w.s.Design()
	return w.s.MovePlace(w.boards.list, board, place, panel.Boards(&d, w.boards.list)[board].Avoid[place], to)
}

func (w *Window) bend(board, at int, to stock.Point) error {
	path := fmt.Sprintf("%s.%d.outline.%d", w.boards.list, board, at)
	return w.s.Change("move a corner of "+session.Words(fmt.Sprintf("%s.%d", w.boards.list, board)),
		[2]string{path + ".x", w.s.Length(to.X)}, [2]string{path + ".y", w.s.Length(to.Y)})
}

// addBoard adds a board like the last one, or one of a usual size.
func (w *Window) addBoard() error {
	d := w.s.Design()
	all := panel.Boards(&d, w.boards.list)
	b := stock.Board{Length: 1200, Width: 200, Thickness: 25, Timber: d.Timber}
	if d.Units == measure.Imperial {
		b.Length, b.Width, b.Thickness = 48*25.4, 8*25.4, 25.4
	}
	if n := len(all); n > 0 {
		last := all[n-1]
		b.Thickness, b.Timber, b.Price = last.Thickness, last.Timber, last.Price
	} else if w.boards.list == panel.ToBuy {
		b.Price = 10
	}
	b.Name = freeName(w.boards.list, spoken(d))
	if err := w.s.TakeBoards("add a board", w.boards.list, b); err != nil {
		return err
	}
	w.boards.chosen = len(all)
	w.boards.picture.Choose(len(all), -1)
	return nil
}

// freeName is a name for another board of a list that no board of the design has.
func freeName(list string, d form.Design) string {
	format := map[string]string{panel.OnHand: form.NameOnHand, panel.ToBuy: form.NameToBuy}[list]
	for n := len(panel.Boards(&d, list)) + 1; ; n++ {
		name := say.With(format, n)
		if !slices.ContainsFunc(slices.Concat(d.OnHand, d.ToBuy), func(b stock.Board) bool { return b.Name == name }) {
			return name
		}
	}
}

// addPlace adds a place to the board that is looked at.
func (w *Window) addPlace(make func(stock.Board) stock.Avoid) error {
	d, b := w.s.Design(), w.boards
	board := panel.Boards(&d, b.list)[b.chosen]
	if err := w.s.TakePlace(b.list, b.chosen, make(board)); err != nil {
		return err
	}
	w.boards.update(w) // the board has it before it is chosen
	b.picture.Choose(b.chosen, len(board.Avoid))
	b.fields.Bring(fmt.Sprintf("%s.%d.avoid.%d.what", b.list, b.chosen, len(board.Avoid)))
	return nil
}

func whole(mm float64) float64 { return float64(int(mm)) }

func knotOn(b stock.Board) stock.Avoid {
	return stock.Avoid{What: "knot", X: whole(b.Length / 2), Y: whole(b.Width / 2), Diameter: 30}
}

func stripOn(b stock.Board) stock.Avoid {
	return stock.Avoid{What: "strip to rip off", From: stock.LeftFar, Length: b.Length, Width: min(15, b.Width/4)}
}

func splitOn(b stock.Board) stock.Avoid {
	return stock.Avoid{What: "split", From: stock.RightNear, Y: whole(b.Width / 3), Length: whole(b.Length / 8), Width: min(20, b.Width/4)}
}
