package resize

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
)

// inset keeps each stretcher as far from the piece's nearer edge as it was. One in the middle stays
// there.
func (t *task) inset() error {
	grown := (depthAtTop(t.now) - depthAtTop(t.was)) / 2
	for i, s := range t.was.Stretchers {
		if s.Across == 0 || i >= len(t.now.Stretchers) {
			continue
		}
		at := s.Across + grown
		if s.Across < 0 {
			at = s.Across - grown
		}
		if float64(at)*float64(s.Across) < 0 {
			return fmt.Errorf("the stretcher inset cannot be held: stretcher %d would pass the middle of the piece; a greater depth would do", i+1)
		}
		if at == t.now.Stretchers[i].Across {
			continue
		}
		t.now.Stretchers[i].Across = at
		if err := t.edit(Inset, fmt.Sprintf("stretchers.%d.across", i), t.length(at)); err != nil {
			return err
		}
	}
	return nil
}

func depthAtTop(d form.Design) measure.Length {
	if d.Size.TakenAt == form.AtFloor {
		return d.Size.Depth - 2*d.Size.Height*measure.Length(math.Tan(d.Splay.Edges.Radians()))
	}
	return d.Size.Depth
}

// tails is a corner's layout as far as it can be held.
type tails struct {
	count     int
	tail, pin measure.Length
	half      measure.Length
	width     measure.Length
}

func firstTails(p *form.Piece) (tails, bool) {
	for _, j := range p.Joints {
		if len(j.Tails) > 0 {
			return layout(j), true
		}
	}
	return tails{}, false
}

func layout(j joint.Joint) tails {
	n := len(j.Tails)
	out := tails{count: n, width: j.Width, half: j.Tails[0].Start}
	for i, s := range j.Tails {
		out.tail += s.Width() / measure.Length(n)
		if i > 0 {
			out.pin += (s.Start - j.Tails[i-1].End) / measure.Length(n-1)
		}
	}
	return out
}

// corner holds the width of the pins, the number of tails, or both.
func (t *task) corner(pins, count bool) error {
	if !pins && !count {
		return nil
	}
	was, ok := firstTails(t.before)
	if !ok {
		return errors.New("the piece has no tails to hold")
	}
	width, ok := t.newWidth()
	if !ok {
		return errors.New("the corner cannot be laid out at the new sizes; hold nothing of it and see what the findings say")
	}
	if len(t.now.Corners.TailWidths) > 0 {
		return t.uneven(was, width, pins)
	}
	next := was.resized(width, pins, count)
	if least := float64(width - 2*next.half - next.pin*measure.Length(next.count-1)); least <= 0 {
		return fmt.Errorf("pins and half pins as wide as they were leave no room for %d tails on %s; hold one of the two", next.count, t.show(width))
	}
	hold := Tails
	if pins {
		hold = Pins
	}
	edits := []Edit{
		{"corners.tails", fmt.Sprint(next.count)},
		{"corners.pin", t.length(next.pin)},
		{"corners.half-pin", t.length(next.half)},
	}
	if t.now.Corners.Tail != nil { // it follows from the others
		edits = append(edits, Edit{"corners.tail", ""})
	}
	for _, e := range edits {
		if err := t.edit(hold, e.Path, e.Text); err != nil {
			return err
		}
	}
	return nil
}

// resized is the layout on another width: pins held, the count follows the old tails; the count
// held, all grows alike; both held, the tails take the difference.
func (w tails) resized(width measure.Length, pins, count bool) tails {
	next := w
	next.width = width
	if !pins {
		by := width / w.width
		next.pin, next.half = w.pin*by, w.half*by
	}
	if !count {
		pitch := w.tail + w.pin
		next.count = max(1, int(math.Round(float64((width-2*w.half+w.pin)/pitch))))
	}
	return next
}

// uneven scales tails whose widths were typed; what the pins do not take, they share in proportion.
func (t *task) uneven(was tails, width measure.Length, pins bool) error {
	by := width / was.width
	if pins {
		gaps := 2*was.half + was.pin*measure.Length(was.count-1)
		if width <= gaps {
			return fmt.Errorf("pins and half pins as wide as they were leave no room for the tails on %s", t.show(width))
		}
		by = (width - gaps) / (was.width - gaps)
	}
	var texts []string
	for _, l := range t.was.Corners.TailWidths {
		texts = append(texts, t.length(l*by))
	}
	hold := Tails
	if pins {
		hold = Pins
	}
	if err := t.edit(hold, "corners.tail-widths", "["+strings.Join(texts, ", ")+"]"); err != nil {
		return err
	}
	half := was.half
	if !pins {
		half *= by
	}
	return t.edit(hold, "corners.half-pin", t.length(half))
}

// newWidth is how long the corner is at the new sizes, laid out by trade practice.
func (t *task) newWidth() (measure.Length, bool) {
	d := t.now
	d.Corners.Tails, d.Corners.Tail, d.Corners.Pin, d.Corners.HalfPin, d.Corners.TailWidths = nil, nil, nil, nil, nil
	d.Features, d.Stretchers, d.Aprons = nil, nil, nil
	l, ok := firstTails(form.Build(d))
	return l.width, ok
}
