package sheet

import (
	"regexp"
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/render/dimension"
	"splaywright/render/draw"
	"splaywright/render/pattern"
	"splaywright/render/table"
	"splaywright/render/view"
)

// What is written on boards in pencil stands on drawings as it stands on the patterns and in the tables:
// the part's mark underlined, the carpenter's triangle over the boards of a run, and arrows towards the
// top and the front of the piece.

// trianglePen draws the triangle.
func (i ink) trianglePen() draw.Pen { return draw.Pen{Width: narrowLine, Ink: i.faint} }

// markFace draws on a true face what the boards of its sheet carry.
func markFace(p *form.Piece, group []*part.Part, f *figure, o Options) {
	lines := pattern.OnWood(p)
	q := group[0]
	var ids []string
	for _, g := range group {
		ids = append(ids, g.ID)
	}
	for _, l := range alikeLines(lines, ids) {
		f.Line([]draw.Point{f.at(l[0].X(), l[0].Y()), f.at(l[1].X(), l[1].Y())}, f.ink.trianglePen(), "triangle", q.ID)
	}
	signs := pattern.Signs(group...)
	s := dimension.Stamp{Mark: table.JoinMarks(group), Words: pattern.FaceWords(signs, o.Tongue), Ref: q.ID}
	for _, g := range signs {
		if g.Way != (mgl64.Vec3{}) {
			s.Arrows = append(s.Arrows, dimension.Pointer{Way: draw.Point{X: g.Way.X(), Y: g.Way.Y()}, Word: o.Tongue.Sense(g.Key)})
		}
	}
	f.Stamp(s, places(extent(q), f.scale))
}

// alikeLines are the lines of boards drawn as one, none where they differ: the runs under the cut list show
// those.
func alikeLines(lines map[string][][2]mgl64.Vec3, ids []string) [][2]mgl64.Vec3 {
	for _, id := range ids {
		if !sameLines(lines[ids[0]], lines[id]) {
			return nil
		}
	}
	if len(ids) == 0 {
		return nil
	}
	return lines[ids[0]]
}

func sameLines(a, b [][2]mgl64.Vec3) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i][0].Sub(b[i][0]).Len()+a[i][1].Sub(b[i][1]).Len() > sameShape {
			return false
		}
	}
	return true
}

// markOf is what a table's cell begins with that is the mark of a part or the marks of several: all of a
// cell under the head Mark, or what stands before a name, "2, 3" of "2, 3 Side: top end".
func (w *writer) markOf(text, head string) string {
	end := len(text)
	if head != "Mark" {
		at := named.FindStringIndex(text)
		if at == nil {
			return ""
		}
		end = strings.LastIndexByte(text[:at[1]], ' ') // before the name's first letter
	}
	for _, m := range strings.FieldsFunc(text[:end], func(r rune) bool { return r == ',' || r == '、' || r == ' ' || r == '–' }) {
		if !slices.ContainsFunc(w.piece.Parts, func(q *part.Part) bool { return q.Mark == m }) {
			return ""
		}
	}
	return text[:end]
}

// marksIn are the stretches of a line of words that are marks of parts with the name behind: from where to where.
func (w *writer) marksIn(line string) [][2]int {
	var out [][2]int
	for _, at := range marked.FindAllStringSubmatchIndex(line, -1) {
		name := line[at[1]:]
		if slices.ContainsFunc(w.piece.Parts, func(q *part.Part) bool {
			plain, _, _ := strings.Cut(strings.TrimRight(w.set.o.say(q.Name), " 0123456789"), ", ")
			return plain != "" && strings.HasPrefix(name, plain)
		}) {
			out = append(out, [2]int{at[2], at[3]})
		}
	}
	return out
}

// marked is what may be marks before a name.
var marked = regexp.MustCompile(`(?:^|[ (])([0-9]+(?:(?:, |–)[0-9]+)*) `)

// named is the marks of parts with the first letter of their name.
var named = regexp.MustCompile(`^[0-9]+((, |、|–)[0-9]+)* [\p{Lu}\p{Lo}]`)

// places are points of a box, mm of the piece, on a grid of 2.5 mm of paper, those nearest the middle first.
func places(b draw.Box, scale float64) []draw.Point {
	const step, most = 2.5, 40
	mid := draw.Point{X: (b.Min.X + b.Max.X) / 2 * scale, Y: (b.Min.Y + b.Max.Y) / 2 * scale}
	nx, ny := int(b.Width()*scale/2/step), int(b.Height()*scale/2/step)
	var out []draw.Point
	for ring := 0; ring <= min(max(nx, ny), most); ring++ {
		for i := -min(ring, nx); i <= min(ring, nx); i++ {
			for j := -min(ring, ny); j <= min(ring, ny); j++ {
				if max(abs(i), abs(j)) == ring {
					out = append(out, draw.Point{X: mid.X + float64(i)*step, Y: mid.Y + float64(j)*step})
				}
			}
		}
	}
	return out
}

func abs(i int) int { return max(i, -i) }

// markPictorial writes on a pictorial what is seen of the triangles and the marks of the outer faces that
// look at the viewer.
func markPictorial(p *form.Piece, pic *view.Picture, front fronts, f *figure) {
	lines := pattern.OnWood(p)
	for _, q := range p.Parts {
		if q.Solid == nil || q.Place.Mul4x1(mgl64.Vec4{0, 0, 1, 0}).Vec3().Dot(pic.Direction.Toward) < 0.2 {
			continue
		}
		on := func(v mgl64.Vec3) draw.Point {
			at := pic.Direction.Point(q.Place.Mul4x1(v.Vec4(1)).Vec3())
			return f.at(at.X, at.Y)
		}
		for _, l := range lines[q.ID] {
			for _, s := range front.stretches(q.ID, on(l[0]), on(l[1]), f.scale) {
				f.Line(s[:], draw.Pen{Width: narrowLine / 2, Ink: f.ink.faint}, "triangle", q.ID)
			}
		}
		b := extent(q)
		var at []draw.Point
		for ring := range 8 { // from the middle of the face outward
			for i := -ring; i <= ring; i++ {
				for j := -ring; j <= ring; j++ {
					if max(abs(i), abs(j)) != ring {
						continue
					}
					c := on(mgl64.Vec3{b.Min.X + (0.5+0.06*float64(i))*b.Width(), b.Min.Y + (0.5+0.06*float64(j))*b.Height(), 0})
					if front.sees(q.ID, draw.Point{X: c.X / f.scale, Y: c.Y / f.scale}, 0) {
						at = append(at, c)
					}
				}
			}
		}
		f.Stamp(dimension.Stamp{Mark: q.Mark, Ref: q.ID}, at)
	}
}
