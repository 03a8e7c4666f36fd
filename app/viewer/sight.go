package viewer

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"splaywright/export/png"
	"splaywright/render/draw"
	"splaywright/render/view"
	"splaywright/render/wood"
)

// Sight is a piece as the pictorial shows it.
type Sight struct {
	Scene    *view.Scene
	Subject  *wood.Subject
	Diagonal float64  // mm: no side of the piece is larger; it sets the scale, so that the piece keeps its size while it turns
	Eye      view.Eye // from where it is seen when not from far off

	// Of a piece with single parts off: what keeps its place in the picture, and the diagonal of the piece whole, mm.
	// Left out where every part is in its place.
	Still *view.Scene
	Own   float64
}

// eyeAt goes round the piece and over it at the distance that the design's eye has; degrees.
func (s Sight) eyeAt(turn, tip float64) *view.Eye {
	mid := s.Scene.Middle()[2]
	far := math.Hypot(s.Eye.Distance, s.Eye.Height-mid)
	sin, cos := math.Sincos(tip * math.Pi / 180)
	return &view.Eye{Turn: turn, Height: mid + far*sin, Distance: far * cos}
}

// sightOfTurner is all that a picture of the pictorial needs, so that it can be made elsewhere.
type sightOfTurner struct {
	Sight
	size       fyne.Size
	zoom       float64
	direction  view.Direction
	eye        *view.Eye
	wooden     bool
	lit        func(ref string) bool
	ink, paper draw.Ink
	accent     draw.Ink // of what is lit
}

func (t *Turner) sightOf(s Sight) sightOfTurner {
	return sightOfTurner{
		Sight: s, size: t.size, zoom: t.zoom, direction: view.Pictorial(t.turn, t.tip), wooden: t.wooden, lit: t.picture.lit,
		ink: inkOf(theme.Color(theme.ColorNameForeground)), paper: inkOf(sheetColour()), accent: litInk(),
	}
}

func (s sightOfTurner) paint(old *image.RGBA, dotsWide, _ int) (*image.RGBA, draw.Page) {
	f := frame{w: float64(s.size.Width) / unitsPerMM, h: float64(s.size.Height) / unitsPerMM}
	f.scale = s.zoom * fitMargin * min(f.w, f.h) / s.Diagonal
	var page draw.Page
	if s.wooden {
		page = f.painted(s.Sight, wood.From{Eye: s.eye, Direction: s.direction}, s.paper)
	} else {
		pic := s.lines(s.direction, s.eye)
		if box, ok := s.still(s.direction, s.eye != nil); ok {
			placed := *pic
			placed.Min, placed.Max = box.Min, box.Max
			pic = &placed
		}
		page = f.page(pic, s.ink, s.paper)
	}
	return png.RenderOn(old, lighted(page, s.lit, s.accent), float64(dotsWide)/f.w), page
}

func (t *Turner) begin() painter {
	if !t.sight.shows() || t.size.Width <= 0 {
		return nil
	}
	s := t.sightOf(t.sight)
	if t.near {
		s.eye = s.eyeAt(t.turn, t.tip)
	}
	return s.paint
}

// shows tells whether there is something to see.
func (s Sight) shows() bool { return s.Scene != nil && s.Diagonal > 0 }

// Ahead gives what paints a piece to come from the side that is shown now; it may run on any goroutine. It is nil while
// the pictorial has no place, and gives nil for a piece of which nothing is seen.
func (t *Turner) Ahead() func(Sight) *Ahead {
	ahead := t.picture.ahead()
	if ahead == nil || t.size.Width <= 0 {
		return nil
	}
	s, near, turn, tip := t.sightOf(Sight{}), t.near, t.turn, t.tip
	return func(piece Sight) *Ahead {
		if !piece.shows() {
			return nil
		}
		s.Sight = piece
		if near {
			s.eye = s.eyeAt(turn, tip)
		}
		return ahead(s.paint)
	}
}

// lines is the picture in lines from an eye, or in a direction when there is none or it stands too near.
func (s Sight) lines(d view.Direction, eye *view.Eye) *view.Picture {
	if eye != nil {
		if lens, ok := s.Scene.Lens(*eye); ok {
			return s.Scene.Through(lens).Seen(lens.Direction)
		}
	}
	return s.Scene.Seen(d)
}

// frame is the place of a pictorial, mm of its own paper, and the scale of the piece on it.
type frame struct{ w, h, scale float64 }

// page puts a picture in the middle of the frame.
func (f frame) page(pic *view.Picture, ink, paper draw.Ink) draw.Page {
	n := 0
	for _, l := range pic.Lines {
		n += len(l.Points)
	}
	room := make([]draw.Seg, 0, n)
	out := draw.Page{Width: f.w, Height: f.h, Items: append(make([]draw.Item, 0, len(pic.Lines)+1), sheetOf(f.w, f.h, paper))}
	mid := draw.Point{X: (pic.Max.X + pic.Min.X) / 2, Y: (pic.Max.Y + pic.Min.Y) / 2}
	for _, l := range pic.Lines {
		if l.Kind == view.Hidden || len(l.Points) < 2 {
			continue
		}
		at := len(room)
		for i, p := range l.Points {
			s := draw.Seg{Kind: draw.Line}
			if i == 0 {
				s.Kind = draw.Move
			}
			s.P[2] = draw.Point{X: f.w/2 + (p.X-mid.X)*f.scale, Y: f.h/2 + (p.Y-mid.Y)*f.scale}
			room = append(room, s)
		}
		out.Items = append(out.Items, draw.Path{Segs: room[at:len(room):len(room)], Pen: penOf(l.Kind, ink, paper), Layer: "visible", Ref: l.Part})
	}
	return out
}

// penOf draws an edge in full ink and the seam of a rounded face faintly.
func penOf(k view.Kind, ink, paper draw.Ink) draw.Pen {
	if k == view.Smooth {
		return draw.Pen{Width: 0.18, Ink: mix(ink, paper)}
	}
	return draw.Pen{Width: 0.35, Ink: ink}
}

func mix(a, b draw.Ink) draw.Ink {
	half := func(x, y uint8) uint8 { return uint8((int(x) + int(y)) / 2) }
	return draw.Ink{R: half(a.R, b.R), G: half(a.G, b.G), B: half(a.B, b.B)}
}

// woodLine is the width of edges where faces are painted, mm.
const woodLine = 0.25

// painted puts the piece painted as wood in the middle of the frame.
func (f frame) painted(s Sight, from wood.From, paper draw.Ink) draw.Page {
	out := draw.Page{Width: f.w, Height: f.h, Items: []draw.Item{sheetOf(f.w, f.h, paper)}}
	style := wood.Style{Scale: f.scale, Line: wood.Edge, Paper: paper, Wide: woodLine}
	items, ok := s.Subject.Paint(from, style)
	if !ok { // the eye stands too near
		from.Eye = nil
		items, _ = s.Subject.Paint(from, style)
	}
	box, _ := s.Subject.Extent(from, style)
	mid := centre(box)
	if box, ok := s.still(from.Direction, from.Eye != nil); ok {
		mid = draw.Point{X: centre(box).X * f.scale, Y: centre(box).Y * f.scale}
	}
	out.Items = append(out.Items, draw.Moved(items, draw.Point{X: f.w/2 - mid.X, Y: f.h/2 - mid.Y})...)
	return out
}
