package panel

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/field"
	"splaywright/app/session"
	"splaywright/model/part"
)

// Findings lists what the program noticed about the piece and what it could not read.
type Findings struct {
	box    *fyne.Container
	scroll *container.Scroll
	texts  []string
}

// NewFindings makes an empty list.
func NewFindings() *Findings {
	f := &Findings{box: container.NewVBox()}
	f.scroll = container.NewVScroll(container.New(bodyPad{}, f.box))
	return f
}

// Object is what the window shows.
func (f *Findings) Object() fyne.CanvasObject { return f.scroll }

// Texts gives the lines of the list.
func (f *Findings) Texts() []string { return f.texts }

// Update shows the session as it stands.
func (f *Findings) Update(s *session.Session) {
	f.box.RemoveAll()
	f.texts = nil
	for _, err := range s.Errors() {
		f.add(part.Finding{Level: part.Stop, Text: err.Error()})
	}
	if p := s.Piece(); p != nil {
		for _, n := range p.Findings {
			f.add(n)
		}
	}
	if len(f.texts) == 0 {
		f.box.Add(widget.NewLabel("Nothing to report."))
	}
	f.box.Refresh()
}

func (f *Findings) add(n part.Finding) {
	f.box.Add(field.Notice(n, true))
	f.texts = append(f.texts, n.Text)
}

// Counts says how many findings there are of each level, the gravest first; "" for none.
func Counts(findings []part.Finding) string {
	n := map[part.Level]int{}
	for _, f := range findings {
		n[f.Level]++
	}
	text := ""
	for _, l := range []part.Level{part.Stop, part.Warning, part.Note} {
		if n[l] == 0 {
			continue
		}
		if text != "" {
			text += ", "
		}
		text += plural(n[l], string(l))
	}
	return text
}
