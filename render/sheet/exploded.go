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
)

// exploded is the piece with its parts drawn off each other the way they came.
type exploded struct {
	piece *form.Piece
	lines [][2]mgl64.Vec3 // from where a part is shown to where it goes home, world
}

// explode draws the parts off in the order of the assembly turned round.
func explode(p *form.Piece) exploded {
	e := exploded{piece: Apart(p, float64(len(p.Assembly.Moves)))}
	for i, q := range e.piece.Parts {
		home := p.Parts[i]
		d := q.Place.Col(3).Sub(home.Place.Col(3)).Vec3()
		if d.Len() > 0 && q.Solid != nil {
			tip := foremost(home, d.Normalize().Mul(-1))
			e.lines = append(e.lines, [2]mgl64.Vec3{tip.Add(d), tip})
		}
	}
	return e
}

// foremost is the middle of the end of a part that goes first along a way, where it comes home.
func foremost(q *part.Part, way mgl64.Vec3) mgl64.Vec3 {
	lo, hi := q.Solid.Bounds()
	local := part.Back(q.Place).Mul4x1(way.Vec4(0)).Vec3()
	at := lo.Add(hi).Mul(0.5)
	half := hi.Sub(lo).Mul(0.5)
	reach := math.Inf(1)
	for k := range 3 {
		if a := math.Abs(local[k]); a > 1e-9 {
			reach = min(reach, half[k]/a)
		}
	}
	return q.Place.Mul4x1(at.Add(local.Mul(reach)).Vec4(1)).Vec3()
}

// picture draws the exploded piece at a scale: the parts with their marks, and how they come home.
func (e exploded) picture(pic *view.Picture, front fronts, scale float64, o Options) *figure {
	f := fineFigure(pic, scale, o.ink(), false)
	for _, l := range e.lines {
		for _, s := range front.open(pic.Direction, l[0], l[1]) {
			f.axis(f.at(s[0].X, s[0].Y), f.at(s[1].X, s[1].Y), 0)
		}
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
	return on(0.7, 0.5, z)
}

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
	for _, m := range p.Assembly.Moves {
		next := o.with("then %s", marks(p, m.Parts))
		if m.AtOnce() {
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
