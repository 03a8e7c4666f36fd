package pattern

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/tongue"
	"splaywright/render/draw"
	"splaywright/render/table"
)

// Sign tells which way a board stands in the piece.
type Sign = table.Sign

// Signs are those of a board, or those that alike boards share: drawings, patterns and tables all show
// the same.
func Signs(boards ...*part.Part) []Sign { return table.Signs(boards...) }

// FaceWords says where the outer face looks: "outer face", "outer face, top".
func FaceWords(signs []Sign, speak *tongue.Tongue) string {
	for _, s := range signs {
		if s.Way == (mgl64.Vec3{}) {
			return speak.Say("outer face") + ", " + speak.Sense(s.Key)
		}
	}
	return speak.Say("outer face")
}

// OnWood gives the carpenter's triangles of Triangles, each line cut to where the outer face is wood.
func OnWood(p *form.Piece) map[string][][2]mgl64.Vec3 {
	out := map[string][][2]mgl64.Vec3{}
	for id, lines := range Triangles(p) {
		q := p.Part(id)
		b := newBlank(q, nameOf([]*part.Part{q}), measure.Style{})
		face := Pattern{Part: q}
		for _, i := range b.outer.faces {
			for _, l := range q.Solid.Faces[i].Loops {
				face.line(Cut, b.outer.chart.loop(q.Solid, l), id)
			}
		}
		w := newWood(&face)
		for _, l := range lines {
			for _, s := range w.stretches(b.outer.chart.point(l[0]), b.outer.chart.point(l[1])) {
				// the outer face lies on the paper as it lies in the part's own frame
				out[id] = append(out[id], [2]mgl64.Vec3{{s[0].X, s[0].Y, 0}, {s[1].X, s[1].Y, 0}})
			}
		}
	}
	return out
}

// compass draws arrows towards the sides of the piece on bare wood near the middle of a face.
func (p *Pattern) compass(c *chart, signs []Sign) {
	const cell, wide, arrow, head = 8.0, 26.0, 7.0, 3.0
	var ways []Sign
	for _, s := range signs {
		if s.Way != (mgl64.Vec3{}) {
			ways = append(ways, s)
		}
	}
	if len(ways) == 0 {
		return
	}
	w := newWood(p)
	for _, l := range p.Labels {
		wide, high := l.block()
		w.take(l.At, wide+2, high+2)
	}
	high := cell * float64(len(ways))
	var at draw.Point
	found := false
	for _, air := range []float64{24, 10, 0} { // labels of holes are moved about later: keep away from them if there is room
		if at, found = w.room(between(w.box.Min, w.box.Max, 0.5), wide+air, high+air); found {
			break
		}
	}
	if !found {
		return
	}
	for i, s := range ways {
		d := c.way(s.Way)
		mid := draw.Point{X: at.X - wide/2 + 5, Y: at.Y + high/2 - cell*(float64(i)+0.5)}
		tip := plus(mid, d, arrow/2)
		p.head(tip, d, head, p.Part.ID)
		p.line(Guide, draw.Polyline([]draw.Point{plus(mid, d, -arrow/2), plus(tip, d, -head)}), p.Part.ID)
		p.Labels = append(p.Labels, Label{At: draw.Point{X: mid.X + 12, Y: mid.Y}, Lines: []string{s.Word}, Size: smallText, sense: s.Key})
	}
}
