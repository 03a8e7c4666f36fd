package sheet

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// The first move of the assembly draws its parts off by apart, as a share of the piece's largest size,
// and each later one by further more, so that what goes on last stands farthest off.
const (
	apart   = 0.25
	further = 0.15
	asideBy = 0.12 // what is put together aside, from one part to the next
)

// exploded is the piece with its parts drawn off each other the way they came.
type exploded struct {
	piece *form.Piece
	ways  []wayHome
}

// wayHome is the line, world frame, from where a part is shown to the board that it goes on, between the places at which
// they meet.
type wayHome struct {
	part, onto string
	from, to   mgl64.Vec3
	corner     mgl64.Vec3 // along the joint, one long
}

// explode draws the parts off in the order of the assembly turned round.
func explode(p *form.Piece) exploded {
	e := exploded{piece: Apart(p, float64(len(p.Assembly.Moves)))}
	off := map[string]mgl64.Vec3{}
	for i, q := range e.piece.Parts {
		off[q.ID] = q.Place.Col(3).Sub(p.Parts[i].Place.Col(3)).Vec3()
	}
	for _, a := range asides(p) {
		q, on := p.Part(a.id), p.Part(a.onto)
		if q == nil || on == nil || q.Solid == nil || on.Solid == nil {
			continue
		}
		if at, ok := meeting(q, on); ok {
			e.ways = append(e.ways, wayHome{a.id, a.onto, at.Add(off[a.id]), at.Add(off[a.onto]), cornerOf(p, a.id, a.onto)})
		}
	}
	return e
}

// meeting is the middle of where two boards meet, world frame: of the corners that each has in the room of the other.
func meeting(a, b *part.Part) (mgl64.Vec3, bool) {
	sum, n := mgl64.Vec3{}, 0
	for _, pair := range [2][2]*part.Part{{a, b}, {b, a}} {
		lo, hi := pair[1].Solid.Bounds()
		to := part.Back(pair[1].Place).Mul4(pair[0].Place)
		for _, v := range pair[0].Solid.Vertices {
			w := to.Mul4x1(v.Vec4(1)).Vec3()
			if w[0] > lo[0]-inLine && w[1] > lo[1]-inLine && w[2] > lo[2]-inLine && w[0] < hi[0]+inLine && w[1] < hi[1]+inLine && w[2] < hi[2]+inLine {
				sum, n = sum.Add(pair[0].Place.Mul4x1(v.Vec4(1)).Vec3()), n+1
			}
		}
	}
	return sum.Mul(1 / float64(max(n, 1))), n > 0
}

// cornerOf is the direction of the joint of two boards, no direction where it has none.
func cornerOf(p *form.Piece, a, b string) mgl64.Vec3 {
	for _, j := range p.Joints {
		if (j.TailBoard == a && j.PinBoard == b || j.TailBoard == b && j.PinBoard == a) && j.Corner.Len() > 0.5 {
			return j.Corner.Normalize()
		}
	}
	return mgl64.Vec3{}
}

// seenWays are the stretches of the ways home that no board hides, in the picture. Each begins and ends on a board: where
// the middle of a joint is a gap between tails, the line runs beside it.
func (e exploded) seenWays(d view.Direction, front fronts) [][2]draw.Point {
	var out [][2]draw.Point
	for _, w := range e.ways {
		for k := range 2*besideTries + 1 {
			aside := w.corner.Mul(besideStep * float64((k+1)/2) * float64(1-k%2*2))
			list := front.open(d, w.from.Add(aside), w.to.Add(aside))
			if len(list) > 0 && front.onWood(list[0][0], list[0][1]) && front.onWood(list[len(list)-1][1], list[len(list)-1][0]) {
				out = append(out, list...)
				break
			}
		}
	}
	return out
}

// How far beside the middle of a joint its way home is tried, mm, and how often on either side.
const (
	besideStep  = 2.0
	besideTries = 40
)

// onWood tells whether a line that comes from a place of the picture ends on or behind a board.
func (f fronts) onWood(end, from draw.Point) bool {
	const on = 1.0 // mm past the end
	n := math.Hypot(end.X-from.X, end.Y-from.Y)
	if n == 0 {
		return false
	}
	dx, dy := (end.X-from.X)/n, (end.Y-from.Y)/n
	return f.at(draw.Point{X: end.X + on*dx, Y: end.Y + on*dy}) != "" || f.at(draw.Point{X: end.X - on*dx, Y: end.Y - on*dy}) != ""
}

// picture draws the exploded piece at a scale: the parts with their marks, and how they come home.
func (e exploded) picture(pic *view.Picture, front fronts, scale float64, o Options) *figure {
	f := fineFigure(pic, scale, o.ink(), false)
	for _, s := range e.seenWays(pic.Direction, front) {
		f.axis(f.at(s[0].X, s[0].Y), f.at(s[1].X, s[1].Y), 0)
	}
	for _, q := range e.piece.Parts {
		if q.Solid == nil {
			continue
		}
		at := e.seen(q, pic.Direction, front)
		f.Leader(f.at(at.X, at.Y), true, q.Mark+" "+o.say(q.Name), q.ID, 60, 120, -60, -120, 30, 150, -30, -150)
	}
	return f
}

// seen is a place of the picture, mm of the piece, at which one sees the part: near the middle of the face that
// looks at the viewer, a fifth off it, clear of hand holes and centre lines, where no other part stands before
// it; else wherever one sees some of it.
func (e exploded) seen(q *part.Part, d view.Direction, front fronts) draw.Point {
	lo, hi := q.Solid.Bounds()
	z := lo[2]
	if q.Place.Mul4x1(mgl64.Vec4{0, 0, 1, 0}).Vec3().Dot(d.Toward) > 0 {
		z = hi[2]
	}
	on := func(u, v, z float64) draw.Point {
		at := mgl64.Vec3{lo[0] + u*(hi[0]-lo[0]), lo[1] + v*(hi[1]-lo[1]), z}
		return d.Point(q.Place.Mul4x1(at.Vec4(1)).Vec3())
	}
	about := 0.1 * min(hi[0]-lo[0], hi[1]-lo[1])
	for _, about := range []float64{about, about / 3, 0} {
		for _, v := range []float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92} {
			for _, u := range []float64{0.7, 0.3, 0.5, 0.8, 0.2, 0.9, 0.1, 0.96, 0.04} {
				if p := on(u, v, z); front.sees(q.ID, p, about) {
					return p
				}
			}
		}
	}
	for _, u := range []float64{0, 1, 0.5} { // its edges and ends
		for _, v := range []float64{0, 1, 0.5} {
			if p := on(u, v, (lo[2]+hi[2])/2); front.sees(q.ID, p, 0) {
				return p
			}
		}
	}
	return e.someOf(q, d, front)
}

// someOf is a place of a part that is no plain board, or of which little is seen: wherever one sees some of it, looked for
// as on squared paper; of what is wholly hidden, a place of its surface behind the others.
func (e exploded) someOf(q *part.Part, d view.Direction, front fronts) draw.Point {
	skin := q.Solid.Surface(flattening)
	box := draw.EmptyBox()
	var hidden draw.Point
	for i := range q.Solid.Faces {
		for _, tile := range skin.Tiles(i) {
			if q.Place.Mul4x1(tile.N.Vec4(0)).Vec3().Dot(d.Toward) <= 0 {
				continue
			}
			var middle mgl64.Vec3
			for _, c := range tile.At {
				box = box.Add(d.Point(q.Place.Mul4x1(c.Vec4(1)).Vec3()))
				middle = middle.Add(c.Mul(1 / float64(len(tile.At))))
			}
			hidden = d.Point(q.Place.Mul4x1(middle.Vec4(1)).Vec3())
		}
	}
	for i := range squares {
		for k := range squares {
			p := draw.Point{X: box.Min.X + box.Width()*(float64(i)+0.5)/squares, Y: box.Min.Y + box.Height()*(float64(k)+0.5)/squares}
			if front.sees(q.ID, p, 0) {
				return p
			}
		}
	}
	return hidden
}

// squares is how many each way a part is divided into where one looks for what is seen of it.
const squares = 60

// togetherSheet shows how the piece goes together; nil where there is nothing to show.
func togetherSheet(p *form.Piece, s set) *blank {
	if len(p.Assembly.Moves) == 0 {
		return nil
	}
	e := explode(p)
	scene := view.NewScene(e.piece, flattening)
	pic := scene.Project(view.Pictorial(s.o.Turn, s.o.Tip))
	front := newFronts(scene, pic.Direction)
	b := s.sheet(entry{title: s.o.say("How it goes together"), scale: "none"}, true)
	// A pictorial has no scale of its own, so it is made as large as the sheet allows.
	scale := min(b.room.Width()/(pic.Max.X-pic.Min.X), b.room.Height()/(pic.Max.Y-pic.Min.Y))
	for range 40 {
		items := e.picture(pic, front, scale, s.o).Finish()
		if box := draw.Bounds(items); fitsIn(box, b.room) {
			b.centre(items, box, b.room)
			break
		}
		scale *= 0.97
	}
	b.caption(together(p, s.o))
	return b
}

// together is the order in a line.
func together(p *form.Piece, o Options) string {
	order := []string{marks(p, p.Assembly.First)}
	byThemselves := p.Assembly.Aside()
	for k, m := range p.Assembly.Moves {
		if slipsAlike(p, k) {
			continue
		}
		next := o.with("then %s", marks(p, m.Parts))
		last := k
		for last+1 < len(p.Assembly.Moves) && slipsAlike(p, last+1) {
			last++
		}
		switch {
		case last > k:
			var all []string
			for _, n := range p.Assembly.Moves[k : last+1] {
				all = append(all, n.Parts...)
			}
			next = o.with("then %s, one by one", marks(p, all))
		case byThemselves[k]:
			next = o.with("then %s onto %s, aside", marks(p, m.Parts), marks(p, m.Onto))
		case m.AtOnce():
			next = o.with("then %s at once", marks(p, m.Parts))
		}
		order = append(order, next)
	}
	return o.with("Order: %s. Chain lines: the way each part goes home.", strings.Join(order, ", "))
}

// marks of parts in the order of the numbers, three and more that follow each other from the first to the last.
func marks(p *form.Piece, ids []string) string {
	var list []int
	for _, id := range ids {
		if q := p.Part(id); q != nil {
			if n, err := strconv.Atoi(q.Mark); err == nil {
				list = append(list, n)
			}
		}
	}
	slices.Sort(list)
	var words []string
	for i := 0; i < len(list); {
		j := i
		for j+1 < len(list) && list[j+1] == list[j]+1 {
			j++
		}
		if j-i < 2 {
			j = i
			words = append(words, strconv.Itoa(list[i]))
		} else {
			words = append(words, fmt.Sprintf("%d–%d", list[i], list[j]))
		}
		i = j + 1
	}
	return strings.Join(words, " + ")
}

// caption sets a line at the foot of the drawing's room, left of the title block.
func (b *blank) caption(text string) {
	const size = 2.5
	f := b.frame()
	y := f.Min.Y + inset
	lines := wrap(text, size, f.Width()-block-2*inset)
	for i := len(lines) - 1; i >= 0; i-- {
		b.text(f.Min.X+inset, y, size, lines[i], false, b.ink.line)
		y += 4.2
	}
}
