package sheet

import (
	"math"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/draw"
	"splaywright/render/view"
	"splaywright/render/wood"
)

// EyeOf is where the pictorial of a piece is seen from: as the design says, and where it says nothing at the height
// of a person's eyes, from so far that the piece does not look drawn apart.
func EyeOf(p *form.Piece) view.Eye {
	const (
		standing = 1500.0 // mm above the floor, of a person who stands at ease; common practice
		steps    = 2.4    // as many times the piece's size as one steps back
	)
	e := view.Eye{Turn: usualTurn, Height: p.Design.Papers.EyeHeight.MM(), Distance: p.Design.Papers.EyeDistance.MM()}
	if t := p.Design.Papers.Turn; t != nil {
		e.Turn = t.Degrees()
	}
	v := p.Overall
	size := math.Hypot(math.Hypot(max(v.WidthTop, v.WidthFloor).MM(), max(v.DepthTop, v.DepthFloor).MM()), v.Height.MM())
	if e.Distance == 0 {
		e.Distance = max(1500, math.Ceil(steps*size/50)*50)
	}
	if e.Height == 0 {
		// Down to a low piece one looks at no more than 30 degrees.
		e.Height = min(standing, math.Round((v.Height.MM()/2+e.Distance*math.Tan(30*math.Pi/180))/50)*50)
	}
	return e
}

// ClearEye is EyeOf, stepped back as far as it must be to see all of the piece.
func ClearEye(p *form.Piece, s *view.Scene) view.Eye { return clear(s, EyeOf(p)) }

// clear is the eye, stepped back as far as it must be to see all of the piece.
func clear(s *view.Scene, e view.Eye) view.Eye {
	for range 60 {
		if _, ok := s.Lens(e); ok {
			return e
		}
		e.Distance *= 1.1
	}
	return e
}

// lookSheet shows the piece as it will look; nil where there is nothing to show.
func lookSheet(p *form.Piece, s set) *blank {
	scene := view.NewScene(p, flattening)
	if scene.Faces() == 0 {
		return nil
	}
	asked := EyeOf(p)
	eye := clear(scene, asked)
	b := s.sheet(entry{title: s.o.say("As it will look"), scale: "none"}, true)
	room := b.frame().Grow(-inset)
	room.Min.Y = b.room.Min.Y
	subject := wood.NewSubject(p, scene)
	from := wood.From{Eye: &eye}
	style := wood.Style{Scale: 1, Line: wood.Edge, Paper: b.ink.paper, Wide: lookWide, Floor: true}
	trial, ok := subject.Extent(from, style)
	if !ok {
		return nil
	}
	style.Scale = min(room.Width()/trial.Width(), room.Height()/trial.Height()) * 0.96
	items, _ := subject.Paint(from, style)
	box, _ := subject.Extent(from, style)
	b.centre(items, box, room)
	text := s.o.with("Seen with the eye %s above the floor, %s from the middle of the piece.",
		far(eye.Height, s.o), far(eye.Distance, s.o))
	if eye != asked {
		text += s.o.with(" From %s the piece would not be seen whole.", far(asked.Distance, s.o))
	}
	b.caption(text + s.o.with(" Timber: %s; colour and figure of the wood stand for the kind, not for your boards.", s.o.say(p.Design.Timber)))
	return b
}

// far shows where an eye is: to a centimetre or half an inch, since nobody holds their head still.
func far(mm float64, o Options) string {
	st := o.Style
	st.Step = 10 * measure.Millimetre
	if st.Unit == measure.Imperial {
		st.Step = measure.Inch / 2
	}
	return st.Format(measure.Length(mm))
}

// portraitWide is the width of the painted picture on a page of its own, mm.
const portraitWide = 277.0

// Look is the painted pictorial on a page that fits round it, the picture wide mm across; false where there is
// nothing to paint.
func Look(p *form.Piece, scene *view.Scene, wide float64) (draw.Page, bool) {
	const margin = 5
	if scene.Faces() == 0 {
		return draw.Page{}, false
	}
	eye := clear(scene, EyeOf(p))
	subject, from := wood.NewSubject(p, scene), wood.From{Eye: &eye}
	style := wood.Style{Scale: 1, Line: wood.Edge, Paper: onPaper.paper, Wide: lookWide, Floor: true}
	box, ok := subject.Extent(from, style)
	if !ok {
		return draw.Page{}, false
	}
	style.Scale = wide / box.Width()
	items, _ := subject.Paint(from, style)
	box, _ = subject.Extent(from, style)
	box = box.Grow(margin)
	return draw.Page{Title: p.Title + ", as it will look", Width: box.Width(), Height: box.Height(),
		Items: draw.Moved(items, draw.Point{X: -box.Min.X, Y: -box.Min.Y})}, true
}

// lookWide is the width of edges in painted pictures, mm.
const lookWide = 0.25

// belowSheet shows the piece from below beside an isometric picture; nil where nothing is to be seen there, or where
// the design wants none.
func belowSheet(p *form.Piece, s set) *blank {
	if p.Design.Papers.NoBottom || !underneath(p) {
		return nil
	}
	scene := view.NewScene(p, flattening)
	pic := scene.Project(view.Bottom)
	iso := scene.Project(view.Isometric)
	b := s.sheet(entry{title: s.o.say("From below")}, true)
	for i, sc := range s.o.scales() {
		f := newFigure(pic, sc.of, b.ink, true, smallHoles(p.Parts, inPiece, pic.Direction, sc.of)...)
		middleLines(p, f)
		g := newFigure(iso, sc.of, b.ink, false)
		below, belowBox := titled(f.Finish(), 0, s.o.say("Seen from below"), b.ink)
		other, otherBox := titled(g.Finish(), (iso.Min.X+iso.Max.X)/2*sc.of, s.o.say("Isometric, its axes at 0.816 of the scale"), b.ink)
		if belowBox.Width()+gap+otherBox.Width() > b.room.Width() || max(belowBox.Height(), otherBox.Height()) > b.room.Height() {
			if i < len(s.o.scales())-1 {
				continue
			}
		}
		b.entry.scale = sc.name
		free := (b.room.Width() - belowBox.Width() - otherBox.Width()) / 3
		left, right := b.room, b.room
		left.Min.X += free
		left.Max.X = left.Min.X + belowBox.Width()
		right.Max.X -= free
		right.Min.X = right.Max.X - otherBox.Width()
		b.centre(below, belowBox, left)
		b.centre(other, otherBox, right)
		return b
	}
	return nil
}

// underneath tells whether a piece has something to show from below that other views show hidden at best:
// stretchers, battens, a bottom, holes or grooves on inner faces.
func underneath(p *form.Piece) bool {
	for _, q := range p.Parts {
		switch {
		case q.Solid == nil:
			continue
		case q.ID == "bottom", len(q.ID) > 6 && q.ID[:6] == "batten", len(q.ID) > 9 && q.ID[:9] == "stretcher":
			return true
		}
		for _, f := range q.Features {
			if f.Inner && q.ID == "top" {
				return true
			}
		}
		if enteredFromInside(q) {
			return true
		}
	}
	return false
}

func enteredFromInside(q *part.Part) bool {
	for _, b := range q.Bores {
		if b.Face == "inner" {
			return true
		}
	}
	return false
}
