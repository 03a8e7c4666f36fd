package app

import (
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/app/viewer"
	"splaywright/render/draw"
	"splaywright/render/sheet"
)

// sectionWindow shows the piece cut along a line drawn across one of its views.
type sectionWindow struct {
	win      fyne.Window
	page     *viewer.Table
	said     *widget.Label
	work     session.Latest
	asked    int
	from, to draw.Point
}

// cutSection begins cutting a section by dragging, or ends it.
func (w *Window) cutSection() {
	if w.drawing.Cutting() {
		w.modes.end()
		return
	}
	if w.shown.scale <= 0 {
		w.tell(say.It("Nothing to cut"), errors.New(say.It("there is no drawing of a piece yet")))
		return
	}
	w.modes.end()
	w.modes.begin(say.It(sectionHint), func() { w.drawing.CutAlong(nil) })
	w.drawing.CutAlong(w.showSection)
}

const sectionHint = "Drag a line across one of the views: the piece is cut along it, seen from the right of the way you drag."

// showSection shows the section along a line, and keeps it as the piece changes. Its window opens when the line is done, so
// that it does not come between the hand and the drawing.
func (w *Window) showSection(from, to draw.Point, done bool) {
	if w.section == nil {
		if !done {
			return
		}
		w.section = newSectionWindow(w)
	}
	w.section.from, w.section.to = from, to
	w.remakeSection()
}

func newSectionWindow(w *Window) *sectionWindow {
	s := &sectionWindow{win: w.app.NewWindow(say.It("Section") + " – Splaywright"), page: viewer.NewTable(), said: widget.NewLabel("")}
	s.said.Wrapping = fyne.TextWrapWord
	s.said.Hide()
	s.page.Spawn(w.spawn)
	s.work.Spawn = w.spawn
	s.page.Roomed = w.remakeSection
	s.win.SetContent(container.NewBorder(nil, s.said, nil, nil, s.page))
	s.win.SetPadded(false)
	s.win.Resize(fyne.NewSize(620, 480))
	s.win.SetOnClosed(func() {
		w.section = nil
		if w.drawing.Cutting() {
			w.modes.end()
		}
	})
	closesOnEscape(s.win, s.page)
	s.win.Show()
	return s
}

// tell says something below the section; where there is nothing to say the section has the room.
func (s *sectionWindow) tell(text string) {
	s.said.SetText(text)
	if s.said.Hidden != (text == "") {
		s.said.Hidden = text == ""
		s.win.Content().Refresh()
	}
}

// remakeSection cuts the piece as it is now along the line that was drawn.
func (w *Window) remakeSection() {
	s, p := w.section, w.s.Piece()
	if s == nil || p == nil {
		return
	}
	s.asked++
	n, dark, room := s.asked, w.shown.dark, s.page.Room()
	cut, ok := w.shown.views.CutAlong(s.from, s.to)
	if !ok {
		s.tell(say.It(sectionHint))
		return
	}
	s.work.Do(func() {
		page, hit := sheet.SectionPage(p, cut, sheet.Options{Style: p.Design.Style(), Dark: dark, Width: room.X, Height: room.Y, Tongue: say.Tongue()})
		fyne.Do(func() {
			if n != s.asked || w.section != s {
				return
			}
			if !hit {
				s.tell(say.It("That line misses the wood."))
				return
			}
			s.tell("")
			s.page.SetPage(page)
			s.page.Fit()
		})
	})
}
