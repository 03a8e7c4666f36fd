package panel

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"splaywright/app/field"
	"splaywright/app/keyed"
)

// stop is something in the column that the keyboard comes to, by a name that it keeps when the column is made anew.
type stop struct {
	name string
	at   fyne.Focusable
}

// What the names of stops that are no fields begin with.
const (
	headStop   = "head "
	removeStop = "remove "
	addStop    = "add "
)

// stops are those of the column from above.
func (p *Sizes) stops() []stop {
	var out []stop
	for _, s := range p.sections {
		out = append(out, stop{headStop + s.title, s.head})
		if s.remove != nil {
			out = append(out, stop{removeStop + s.title, s.remove})
		}
		for _, o := range s.body.Objects {
			switch o := o.(type) {
			case *field.Field:
				out = append(out, stop{o.Spec.Path, o.Input()})
			case *keyed.Button:
				out = append(out, stop{addStop + o.Text, o})
			}
		}
	}
	return out
}

// handOver gives the keyboard to what stands in the column now, where what had it is gone: after something was added to the first
// of its sizes, else to what has the same name, or stands in the same place. Added by a tap, it is brought to the eye as well.
func (p *Sizes) handOver(was []stop) {
	c := fyne.CurrentApp().Driver().CanvasForObject(p.scroll)
	if c == nil {
		return
	}
	at := slices.IndexFunc(was, func(s stop) bool { return s.at == c.Focused() })
	now := p.stops()
	tapped := p.adding
	p.adding = false
	if tapped || at >= 0 && strings.HasPrefix(was[at].name, addStop) {
		if s, ok := added(was, now); ok {
			c.Focus(s.at)
			return
		}
	}
	if at < 0 || len(now) == 0 {
		return
	}
	to := slices.IndexFunc(now, func(s stop) bool { return s.name == was[at].name })
	if to < 0 {
		to = min(at, len(now)-1)
	}
	if now[to].at != was[at].at {
		c.Focus(now[to].at)
	}
}

// added is the first size that was not there before.
func added(was, now []stop) (stop, bool) {
	for _, s := range now {
		if _, is := s.at.(*keyed.Button); is || strings.HasPrefix(s.name, headStop) {
			continue
		}
		if !slices.ContainsFunc(was, func(w stop) bool { return w.name == s.name }) {
			return s, true
		}
	}
	return stop{}, false
}
