package panel

import (
	"cmp"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/field"
	"splaywright/app/keyed"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/model/part"
	"splaywright/model/remedy"
)

// Findings lists what the program noticed about the piece and what it could not read.
type Findings struct {
	box     *fyne.Container
	reading *keyed.Reading
	texts   []string
	under   []*fyne.Container // what stands under each finding of the piece
	shown   []part.Finding
	buttons []*keyed.Button
	asks    []*keyed.Button // that ask about each finding of the piece; nil = it names no size

	// OnAsk is called when the person asks what would clear a finding, OnAccept with what is accepted.
	OnAsk    func(part.Finding)
	OnAccept func(remedy.Offer)
}

// NewFindings makes an empty list.
func NewFindings() *Findings {
	f := &Findings{box: container.NewVBox()}
	f.reading = keyed.NewReading(container.New(bodyPad{}, f.box))
	return f
}

// Object is what the window shows.
func (f *Findings) Object() fyne.CanvasObject { return f.reading }

// Keyed is the first button of the list, or the list itself where there is none; nil where there is nothing to read.
func (f *Findings) Keyed() fyne.Focusable {
	switch {
	case len(f.buttons) > 0:
		return f.buttons[0]
	case len(f.texts) > 0:
		return f.reading
	}
	return nil
}

// button is a button of the list, which is brought to where it is seen when the keyboard comes to it.
func (f *Findings) button(label string, do func()) *keyed.Button {
	b := keyed.NewButton(label, do)
	b.Came = func() { keyed.Bring(f.reading.Scroll, b) }
	f.buttons = append(f.buttons, b)
	return b
}

// Texts gives the lines of the list: findings in English, and what cannot be read as it is said.
func (f *Findings) Texts() []string { return f.texts }

// Update shows the session as it stands.
func (f *Findings) Update(s *session.Session) {
	var errs, found []part.Finding
	for _, err := range s.Errors() {
		errs = append(errs, part.Finding{Level: part.Stop, Text: say.Error(err)})
	}
	wait := s.Overdue()
	if p := s.Looked(); p != nil && !wait {
		found = p.Findings
	}
	if f.box.Objects != nil && f.reads(errs, found, wait) {
		return // what was offered under a finding stays
	}
	was := f.buttons
	f.box.RemoveAll()
	f.texts, f.under, f.shown, f.buttons, f.asks = nil, nil, nil, nil, nil
	for _, n := range errs {
		f.add(n, n)
	}
	d := s.Design()
	for i, said := range Figured(found, &d) {
		f.add(found[i], said)
		f.ask(found[i])
	}
	switch {
	case wait:
		f.texts = append(f.texts, LookingOver)
		f.box.Add(widget.NewLabel(say.It(LookingOver)))
	case len(f.texts) == 0:
		f.box.Add(widget.NewLabel(say.It("Nothing to report.")))
	}
	f.box.Refresh()
	f.keep(was)
}

// keep leaves the keyboard in the list, where a button that had it is gone.
func (f *Findings) keep(was []*keyed.Button) {
	c := fyne.CurrentApp().Driver().CanvasForObject(f.reading)
	if c == nil || !slices.ContainsFunc(was, func(b *keyed.Button) bool { return c.Focused() == fyne.Focusable(b) }) {
		return
	}
	if len(f.buttons) > 0 {
		c.Focus(f.buttons[0])
	} else {
		c.Focus(f.reading)
	}
}

// reads tells whether the list says what it should already.
func (f *Findings) reads(errs, found []part.Finding, wait bool) bool {
	var texts []string
	for _, n := range append(errs, found...) {
		texts = append(texts, n.Text)
	}
	if wait {
		texts = append(texts, LookingOver)
	}
	return slices.Equal(texts, f.texts)
}

// add shows a finding as it is said.
func (f *Findings) add(n, said part.Finding) {
	f.box.Add(field.Notice(said, true))
	f.texts = append(f.texts, n.Text)
}

// ask puts a button under a finding that can be cleared by other sizes.
func (f *Findings) ask(n part.Finding) {
	under := container.NewVBox()
	f.under, f.shown, f.asks = append(f.under, under), append(f.shown, n), append(f.asks, nil)
	if len(n.Sizes) == 0 || f.OnAsk == nil {
		return
	}
	b := f.button(say.It("What would do?"), func() { f.OnAsk(n) })
	b.Importance = widget.LowImportance
	f.asks[len(f.asks)-1] = b
	under.Add(container.NewHBox(layout.NewSpacer(), b))
	f.box.Add(under)
}

// Under is what stands under a finding; nil when it is not shown any more.
func (f *Findings) Under(n part.Finding) *fyne.Container {
	for i, g := range f.shown {
		if g.ID == n.ID && g.Text == n.Text {
			return f.under[i]
		}
	}
	return nil
}

// Wait says under a finding that something that clears it is being looked for.
func (f *Findings) Wait(n part.Finding) {
	if u := f.Under(n); u != nil {
		f.fill(u, inLines(say.It("Trying other sizes…")))
	}
}

// fill puts something else under a finding. Adding to a container neither paints it nor tells what it stands in of its height.
func (f *Findings) fill(under *fyne.Container, with ...fyne.CanvasObject) {
	under.Objects = with
	f.box.Refresh()
}

// Offer lists under a finding what clears it, each to be accepted.
func (f *Findings) Offer(n part.Finding, offers []remedy.Offer) {
	u := f.Under(n)
	if u == nil {
		return
	}
	if len(offers) == 0 {
		f.fill(u, inLines(say.It("No single size that it names clears it without other trouble.")))
		return
	}
	var list []fyne.CanvasObject
	var first *keyed.Button
	for _, o := range offers {
		said := inLines(offered(o))
		accept := f.button(say.It("Accept"), func() { f.OnAccept(o) })
		list = append(list, container.NewBorder(nil, nil, nil, accept, said))
		if first == nil {
			first = accept
		}
	}
	f.fill(u, list...)
	f.handOver(n, first)
}

// handOver gives the keyboard to the first offer where the button that asked had it: that one is gone.
func (f *Findings) handOver(n part.Finding, to *keyed.Button) {
	c := fyne.CurrentApp().Driver().CanvasForObject(f.box)
	for i, g := range f.shown {
		if c != nil && g.ID == n.ID && g.Text == n.Text && f.asks[i] != nil && c.Focused() == fyne.Focusable(f.asks[i]) {
			c.Focus(to)
		}
	}
}

func inLines(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

// offered says what an offer changes, a change a line.
func offered(o remedy.Offer) string {
	text := say.With("%s: %s → %s", say.It(session.Words(o.Path)), say.It(o.Was), say.It(cmp.Or(o.Now, remedy.LeftOut)))
	if o.Fields != nil {
		text = say.With("One more stretcher: %s", fieldsOf(o))
	}
	if o.Also != nil {
		text += "\n" + offered(*o.Also)
	}
	return text
}

// fieldsOf says where a stretcher stands and how it is held; its screws and its tenon are those of the one that it is like.
func fieldsOf(o remedy.Offer) string {
	var items []string
	for _, p := range o.Fields {
		if strings.Contains(p[0], ".") {
			continue
		}
		items = append(items, say.It(strings.ReplaceAll(p[0], "-", " "))+" "+say.It(p[1]))
	}
	return strings.Join(items, ", ")
}

// Counts says how many findings there are of each level, the gravest first; "" for none.
func Counts(findings []part.Finding) string {
	n := map[part.Level]int{}
	for _, f := range findings {
		n[f.Level]++
	}
	var counts []string
	for _, l := range []part.Level{part.Stop, part.Warning, part.Note} {
		if n[l] == 0 {
			continue
		}
		counts = append(counts, counted(l, n[l]))
	}
	return strings.Join(counts, ", ")
}

// counted says how many findings there are of a level.
func counted(l part.Level, n int) string {
	if n == 1 {
		switch l {
		case part.Stop:
			return say.It("1 stop")
		case part.Warning:
			return say.It("1 warning")
		}
		return say.It("1 note")
	}
	switch l {
	case part.Stop:
		return say.With("%d stops", n)
	case part.Warning:
		return say.With("%d warnings", n)
	}
	return say.With("%d notes", n)
}
