package pattern

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/tongue"
	"splaywright/render/draw"
)

// Sign tells which way a board stands in the piece: the word of a side of the piece, and the direction
// towards it in the board, one of its own axes (part frame). A Way of 0 tells that the outer face itself
// looks there.
type Sign struct {
	Word string // "top", "front"
	Key  string // the same as languages know it, for Tongue.Sense
	Way  mgl64.Vec3
}

// worldSides are the sides of the piece that boards are marked by, as directions of the world.
var worldSides = []struct {
	word, key string
	way       mgl64.Vec3
}{{"top", "top|way", mgl64.Vec3{0, 0, 1}}, {"front", "front|way", mgl64.Vec3{0, -1, 0}}}

// Signs are those of a board, or those that alike boards share: drawings, patterns and tables all show
// the same.
func Signs(boards ...*part.Part) []Sign {
	out := signsOf(boards[0])
	for _, q := range boards[1:] {
		other := signsOf(q)
		out = slices.DeleteFunc(out, func(s Sign) bool { return !slices.Contains(other, s) })
	}
	return out
}

func signsOf(q *part.Part) []Sign {
	var out []Sign
	for _, s := range worldSides {
		local := mgl64.TransformNormal(s.way, part.Back(q.Place))
		k := 0
		for i := range 3 {
			if math.Abs(local[i]) > math.Abs(local[k]) {
				k = i
			}
		}
		var way mgl64.Vec3
		switch {
		case k < 2:
			way[k] = math.Copysign(1, local[k])
		case local[2] < 0:
			continue // the inner face looks there, and the other sign tells enough
		}
		out = append(out, Sign{s.word, s.key, way})
	}
	return out
}

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
