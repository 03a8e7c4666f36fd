package wood

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// Subject is a piece made ready to be painted. It does not change, so several pictures may be taken at once.
type Subject struct {
	scene  *view.Scene
	boards map[string]*board
}

// NewSubject makes a piece ready. The scene is that of the piece.
func NewSubject(p *form.Piece, s *view.Scene) *Subject { return &Subject{s, boards(p)} }

// From is where a picture is taken from: an eye, or from far off.
type From struct {
	Eye       *view.Eye // nil = from far off
	Direction view.Direction
}

// Style is how a picture is drawn.
type Style struct {
	Scale float64 // mm of paper a mm of the piece
	Line  draw.Ink
	Paper draw.Ink
	Wide  float64 // width of edges, mm
	Floor bool    // with a shadow on the floor
}

// Edge is the usual ink of edges: softer than the lines of drawings.
var Edge = draw.Ink{R: 74, G: 55, B: 38}

// Widths and distances on paper, mm.
const (
	grainLine  = 0.13
	seam       = 0.1  // faces run under their neighbours by half of it, so that no paper shows between them
	apartLeast = 0.75 // between two lines of the grain
	bow        = 0.02 // how far a line of the grain may be drawn off its place
)

// Paint gives the picture; the middle of the piece is at 0, 0 from an eye, the world's origin from far off. False
// when the eye stands too near.
func (s *Subject) Paint(from From, st Style) ([]draw.Item, bool) {
	scene, d := s.scene, from.Direction
	move := func(p mgl64.Vec3) mgl64.Vec3 { return p }
	if from.Eye != nil {
		lens, ok := s.scene.Lens(*from.Eye)
		if !ok {
			return nil, false
		}
		scene, d, move = s.scene.Through(lens), lens.Direction, lens.Point
	}
	marks, inks := s.grain(scene, d, move, st.Scale)
	p := scene.Paint(d, marks)
	out := painting{subject: s, style: st, light: light(d, from), inks: make([]*draw.Ink, scene.Faces())}
	if st.Floor {
		out.shadow(d, move)
	}
	out.surfaces(p.Surfaces)
	out.grain(p.Runs, inks)
	out.lines(p.Lines)
	return out.items, true
}

// light falls over the viewer's left shoulder: the direction to it, world.
func light(d view.Direction, from From) mgl64.Vec3 {
	if from.Eye != nil {
		d = view.Pictorial(from.Eye.Turn, 30)
	}
	flat := mgl64.Vec3{d.Toward[0], d.Toward[1], 0}
	if flat.Len() < 1e-6 {
		flat = d.Up.Mul(-1)
	}
	return flat.Normalize().Mul(0.55).Sub(d.Right.Mul(0.62)).Add(mgl64.Vec3{0, 0, 1.1}).Normalize()
}

type painting struct {
	subject *Subject
	style   Style
	light   mgl64.Vec3
	inks    []*draw.Ink // of faces, once they are mixed
	items   []draw.Item
}

func (p *painting) points(pts []draw.Point) []draw.Point {
	out := make([]draw.Point, len(pts))
	for i, q := range pts {
		out[i] = draw.Point{X: q.X * p.style.Scale, Y: q.Y * p.style.Scale}
	}
	return out
}

// surfaces fills the faces, those next to each other in one ink as one figure.
func (p *painting) surfaces(list []view.Surface) {
	for _, s := range list {
		ink := p.shade(s.Face)
		path := draw.Path{Filled: true, Fill: ink, Pen: draw.Pen{Width: seam, Ink: ink}, Layer: "wood", Ref: s.Part}
		for _, l := range s.Loops {
			path.Segs = append(path.Segs, draw.Polygon(p.points(l))...)
		}
		p.items = append(p.items, path)
	}
}

// shade is a face's colour: the timber's, by how it lies to the light; end grain is darker.
func (p *painting) shade(face int) draw.Ink {
	if p.inks[face] == nil {
		i := p.mix(face)
		p.inks[face] = &i
	}
	return *p.inks[face]
}

func (p *painting) mix(face int) draw.Ink {
	id, n, _ := p.subject.scene.Face(face)
	b := p.subject.boards[id]
	lit := max(0, n.Dot(p.light))
	sky := 0.5 + 0.5*n[2]
	f := 0.74 + 0.24*lit + 0.08*sky
	if end := math.Abs(n.Dot(b.q.Place.Col(0).Vec3())); end > 0.6 {
		f *= 0.93
	}
	return times(b.look.ink, f)
}

func times(i draw.Ink, f float64) draw.Ink {
	c := func(v uint8) uint8 { return uint8(math.Round(min(255, float64(v)*f))) }
	return draw.Ink{R: c(i.R), G: c(i.G), B: c(i.B)}
}

func mixed(a, b draw.Ink, f float64) draw.Ink {
	c := func(v, w uint8) uint8 { return uint8(math.Round(float64(v) + f*(float64(w)-float64(v)))) }
	return draw.Ink{R: c(a.R, b.R), G: c(a.G, b.G), B: c(a.B, b.B)}
}

// grainPen tells on which face a mark lies and which growth ring it is.
type grainPen struct {
	face int
	ring int
}

// grain lays the growth rings of every face that looks to the viewer on it, as many as the scale lets be told apart.
func (s *Subject) grain(scene *view.Scene, d view.Direction, move func(mgl64.Vec3) mgl64.Vec3, scale float64) ([]view.Mark, []grainPen) {
	var marks []view.Mark
	var pens []grainPen
	for i := range scene.Faces() {
		if _, n, _ := scene.Face(i); n.Dot(d.Toward) <= 0 {
			continue
		}
		id, n, loops := s.scene.Face(i)
		b := s.boards[id]
		step := 1
		for b.look.rings*float64(step)*scale < apartLeast {
			step++
		}
		t := newPlot(b, n, loops, b.look.rings*float64(step))
		lo, hi := b.ringsIn(t.span())
		for k := lo; k <= hi; k++ {
			if mod(k, step) != 0 {
				continue
			}
			for _, chain := range t.ring(b.ring(k)) {
				for _, run := range t.inside(chain) {
					pts := make([]mgl64.Vec3, len(run))
					for j, q := range run {
						pts[j] = move(t.world(q))
					}
					marks = append(marks, view.Mark{Face: i, Points: pts})
					pens = append(pens, grainPen{i, k})
				}
			}
		}
	}
	return marks, pens
}

func mod(a, n int) int { return ((a % n) + n) % n }

// grain draws what is seen of the rings. Those of one face that are equally dark make one path.
func (p *painting) grain(runs []view.Run, pens []grainPen) {
	const tones = 4
	type key struct{ face, tone int }
	at := map[key]int{}
	for _, r := range runs {
		pen := pens[r.Mark]
		k := key{pen.face, int(tones * chance("late wood", pen.ring))}
		i, ok := at[k]
		if !ok {
			i = len(p.items)
			at[k] = i
			id, _, _ := p.subject.scene.Face(pen.face)
			late := p.subject.boards[id].look.late * (0.6 + 0.8*float64(k.tone)/(tones-1))
			ink := mixed(p.shade(pen.face), draw.Ink{R: 70, G: 40, B: 16}, late)
			p.items = append(p.items, draw.Path{Pen: draw.Pen{Width: grainLine * (0.8 + 0.3*float64(k.tone)), Ink: ink}, Layer: "grain", Ref: id})
		}
		path := p.items[i].(draw.Path)
		path.Segs = append(path.Segs, draw.Polyline(straightened(p.points(r.Points), bow))...)
		p.items[i] = path
	}
}

// lines draws the edges that are seen.
func (p *painting) lines(list []view.Line) {
	for _, l := range list {
		pen := draw.Pen{Width: p.style.Wide, Ink: p.style.Line}
		switch l.Kind {
		case view.Hidden:
			continue
		case view.Smooth:
			pen = draw.Pen{Width: p.style.Wide / 2, Ink: mixed(p.style.Line, p.style.Paper, 0.5)}
		}
		segs := draw.Polyline(p.points(l.Points))
		if l.Arc != nil {
			segs = l.Arc.Segs(p.style.Scale)
		}
		p.items = append(p.items, draw.Path{Segs: segs, Pen: pen, Layer: l.Kind.String(), Ref: l.Part})
	}
}

// shadow is what the piece keeps the light off on the floor: one figure of every face that the light falls on.
func (p *painting) shadow(d view.Direction, move func(mgl64.Vec3) mgl64.Vec3) {
	const darkness = 0.13
	path := draw.Path{Filled: true, Fill: mixed(p.style.Paper, draw.Ink{R: 40, G: 44, B: 52}, darkness), Layer: "shadow"}
	s := p.subject.scene
	for i := range s.Faces() {
		_, n, loops := s.Face(i)
		if n.Dot(p.light) <= 1e-9 {
			continue
		}
		for _, l := range loops {
			pts := make([]draw.Point, len(l))
			for k, q := range l {
				floor := q.Sub(p.light.Mul(q[2] / p.light[2]))
				pts[k] = d.Point(move(floor))
			}
			path.Segs = append(path.Segs, draw.Polygon(p.points(pts))...)
		}
	}
	p.items = append(p.items, path)
}

// Extent is the box round the piece and its shadow in the picture, mm of paper.
func (s *Subject) Extent(from From, st Style) (draw.Box, bool) {
	d, move := from.Direction, func(p mgl64.Vec3) mgl64.Vec3 { return p }
	if from.Eye != nil {
		lens, ok := s.scene.Lens(*from.Eye)
		if !ok {
			return draw.Box{}, false
		}
		d, move = lens.Direction, lens.Point
	}
	to := light(d, from)
	box := draw.EmptyBox()
	put := func(p mgl64.Vec3) {
		q := d.Point(move(p))
		box = box.Add(draw.Point{X: q.X * st.Scale, Y: q.Y * st.Scale})
	}
	for i := range s.scene.Faces() {
		_, _, loops := s.scene.Face(i)
		for _, l := range loops {
			for _, q := range l {
				put(q)
				if st.Floor {
					put(q.Sub(to.Mul(q[2] / to[2])))
				}
			}
		}
	}
	return box, true
}
