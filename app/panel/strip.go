package panel

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/look"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/model/form"
	"splaywright/model/part"
)

// Strip runs along the top of the drawings: what the piece is, how large it is, and whether
// the drawings show the sizes as they stand.
type Strip struct {
	// OnState is called when the person wants to see what the state at the right end tells of.
	OnState func()

	title, overall, state *line
	mark                  *widget.Icon
	door                  *doorway
	row                   *fyne.Container
	all                   fyne.CanvasObject
}

// NewStrip makes an empty strip.
func NewStrip() *Strip {
	s := &Strip{title: newLine(), overall: newLine(), state: newLine(), mark: widget.NewIcon(nil)}
	s.title.label.TextStyle.Bold = true
	s.title.label.SizeName = theme.SizeNameSubHeadingText
	s.overall.label.Importance = widget.LowImportance
	s.door = newDoorway(func() {
		if s.OnState != nil {
			s.OnState()
		}
	})
	s.row = container.New(stripRow{s}, s.title.label, s.overall.label, s.mark, s.state.label, s.door)
	s.all = Backed(look.Strip, s.row)
	return s
}

// Object is what the window shows.
func (s *Strip) Object() fyne.CanvasObject { return s.all }

// State is what the right end of the strip says.
func (s *Strip) State() string { return s.state.text }

// Update shows the session as it stands.
func (s *Strip) Update(ses *session.Session) {
	s.title.text = ses.Design().Title
	if p := ses.Whole(); p != nil {
		s.overall.text = OverallText(p)
	}
	level, text := standing(ses)
	s.state.text = text
	s.state.importance(importance(level))
	if level == "" {
		s.mark.Hide()
	} else {
		s.mark.SetResource(look.Mark(level))
		s.mark.Show()
	}
	s.row.Layout.Layout(s.row.Objects, s.row.Size())
}

// LookingOver is said where looking a piece over takes long.
const LookingOver = "The piece is being looked over."

// standing says how things stand; the level is "" when there is nothing to see to.
func standing(s *session.Session) (part.Level, string) {
	if !s.Reads() {
		return part.Stop, say.With("Not understood yet: %s. The drawing keeps the last sizes that were.", texts(len(s.Errors())))
	}
	p := s.Looked()
	switch {
	case s.Overdue():
		return "", say.It(LookingOver)
	case p == nil:
		return "", ""
	}
	text := Counts(p.Findings)
	if text == "" {
		return "", say.It("Nothing to report")
	}
	level := part.Note
	for _, f := range p.Findings {
		switch {
		case f.Level == part.Stop:
			level = part.Stop
		case f.Level == part.Warning && level != part.Stop:
			level = part.Warning
		}
	}
	if s.Refused() {
		text = say.With("%s. The drawing keeps the last piece that could be built.", text)
	}
	return level, text
}

func importance(l part.Level) widget.Importance {
	switch l {
	case part.Stop:
		return widget.DangerImportance
	case part.Warning:
		return widget.WarningImportance
	}
	return widget.MediumImportance
}

// texts says how many texts were not understood.
func texts(n int) string {
	if n == 1 {
		return say.It("1 text")
	}
	return say.With("%d texts", n)
}

// OverallText says the overall size at the top and at the floor, and the mass where it is known.
func OverallText(p *form.Piece) string {
	st, o := p.Design.Style(), p.Overall
	text := say.With("%s high, %s × %s on top, %s × %s on the floor",
		st.FormatUnit(o.Height), st.Format(o.WidthTop), st.FormatUnit(o.DepthTop),
		st.Format(o.WidthFloor), st.FormatUnit(o.DepthFloor))
	if p.Weighed() {
		mass, unit := st.Unit.In(o.Mass, "kg")
		text += say.With(", %.1f %+s", mass, unit)
	}
	return st.Text(text)
}

// stripRow gives the state its room first, then the title, and the overall sizes what is left.
type stripRow struct{ s *Strip }

// leastOverall is the room below which the overall sizes are left out, window units.
const leastOverall = 60

// mostState is the share of the strip that the state takes at most.
const mostState = 0.7

func (r stripRow) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	s, mark := r.s, float32(0)
	if s.mark.Visible() {
		mark = theme.Size(theme.SizeNameInlineIcon) + theme.Padding()
	}
	state := min(size.Width*mostState, mark+s.state.wide())
	title := min(size.Width-state, s.title.wide())
	put := func(o fyne.CanvasObject, x, w float32) {
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(max(0, w), size.Height))
	}
	put(s.title.label, 0, title)
	s.title.fit(title)
	s.overall.label.Hidden = size.Width-title-state < leastOverall
	put(s.overall.label, title, size.Width-title-state)
	s.overall.fit(size.Width - title - state)
	put(s.mark, size.Width-state, mark)
	put(s.state.label, size.Width-state+mark, state-mark)
	s.state.fit(state - mark)
	put(s.door, size.Width-state, state)
}

func (r stripRow) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(2*theme.Size(theme.SizeNameInlineIcon), r.s.title.label.MinSize().Height)
}
