package dimension

import (
	"math"
	"slices"
	"strings"

	"splaywright/render/draw"
)

// leader is a note with a line to what it is about.
type leader struct {
	at         draw.Point
	label, ref string
	dot        bool      // ends inside an outline; otherwise with an arrowhead on one
	toward     []float64 // directions to try first, degrees
}

// Leader asks for a note about the point, with an arrowhead that touches it, or with a dot when it
// is a place on a face. What follows a line break in the label stands below the line. toward lists
// directions to try first, degrees from x.
func (k *Sketch) Leader(at draw.Point, dot bool, label, ref string, toward ...float64) {
	k.leaders = append(k.leaders, leader{at, label, ref, dot, toward})
}

// spot is half of the room, mm, that is kept free of notes where another points.
const spot = 0.5

// leaderTurns are tried after those asked for, in degrees.
var leaderTurns = []float64{45, 135, -45, -135, 60, 120, -60, -120, 30, 150, -30, -150, 75, 105, -75, -105, 15, 165, -15, -165}

// layLeader tries short lines before long ones, and first those that cross no dimension. When a
// note finds no room at all it is set off beside everything.
func (k *Sketch) layLeader(l leader) {
	turns := append(slices.Clone(l.toward), leaderTurns...)
	for _, crossing := range []bool{false, true} {
		for _, n := range []float64{7, 10, 14, 18, 24, 32, 42, 54, 70, 90} {
			for _, deg := range turns {
				if k.tryLeader(l, n, deg*math.Pi/180, crossing) {
					return
				}
			}
		}
	}
	k.setOff(l)
}

// setOff puts a note beside everything, at the height where its line crosses no value if there is one.
func (k *Sketch) setOff(l leader) {
	b := k.Bounds()
	for step := range 60 {
		y := l.at.Y + float64((step+1)/2)*k.Style.Text*float64(1-step%2*2)
		for _, c := range [2][2]float64{{b.Max.X + 3, 1}, {b.Min.X - 3, -1}} {
			elbow := draw.Point{X: c[0], Y: y}
			if t, shelf := k.shelf(l, elbow, c[1]); k.allFree(t) && k.open(shelf) && k.open(segment{l.at, elbow}) {
				k.drawLeader(l, elbow, c[1])
				return
			}
		}
	}
	k.drawLeader(l, draw.Point{X: b.Max.X + 3, Y: l.at.Y}, 1)
}

func (k *Sketch) tryLeader(l leader, n, dir float64, crossing bool) bool {
	elbow := add(l.at, polar(n, dir))
	if !crossing && k.crossesDimension(segment{l.at, elbow}) {
		return false
	}
	way := 1.0
	if math.Cos(dir) < 0 {
		way = -1
	}
	t, shelf := k.shelf(l, elbow, way)
	if !k.allFree(t) || !k.open(shelf) || !k.open(segment{l.at, elbow}) {
		return false
	}
	if len(t) > 1 {
		room := k.under(shelf)
		if slices.ContainsFunc(k.texts, func(o quad) bool { return room.meets(&o) }) || k.pointedAt(room, l.at) {
			return false
		}
	}
	for _, t := range t {
		if q := textQuad(t, 0.2); q.crossed(segment{l.at, elbow}) {
			return false
		}
	}
	if k.crossesLine(shelf) {
		return false
	}
	k.drawLeader(l, elbow, way)
	return true
}

// shelf is the level end of the line and the note on it, the part after a line break below it.
func (k *Sketch) shelf(l leader, elbow draw.Point, way float64) ([]draw.Text, segment) {
	over, under, two := strings.Cut(l.label, "\n")
	w := max(k.width(over), k.width(under))
	end := draw.Point{X: elbow.X + way*(w+1.5), Y: elbow.Y}
	mid := (elbow.X+end.X)/2 + way*0.4
	t := []draw.Text{k.text(draw.Point{X: mid, Y: elbow.Y + lift}, 0, draw.Centre, over, l.ref)}
	if two {
		t = append(t, k.text(draw.Point{X: mid, Y: elbow.Y - lift - k.Style.Text*draw.Ascent}, 0, draw.Centre, under, l.ref))
	}
	return t, segment{elbow, end}
}

// pointedAt tells whether another note than the one about a place points into a room: no line gets out of it.
func (k *Sketch) pointedAt(room quad, own draw.Point) bool {
	b := room.box
	return slices.ContainsFunc(k.leaders, func(o leader) bool {
		return o.at != own && o.at.X > b.Min.X && o.at.X < b.Max.X && o.at.Y > b.Min.Y && o.at.Y < b.Max.Y
	})
}

func (k *Sketch) allFree(list []draw.Text) bool {
	return !slices.ContainsFunc(list, func(t draw.Text) bool { return !k.free(t) })
}

func (k *Sketch) crossesDimension(s segment) bool {
	for _, o := range k.lines[k.own:] {
		if cross(s.a, s.b, o.a)*cross(s.a, s.b, o.b) < 0 && cross(o.a, o.b, s.a)*cross(o.a, o.b, s.b) < 0 {
			return true
		}
	}
	return false
}

// shelfAir is what is kept free of lines round a shelf, mm: nearer a line beside it looks like a second one.
const shelfAir = 1.2

// crossesLine tells whether a shelf would lie on or close to a line, or cut through one.
func (k *Sketch) crossesLine(s segment) bool {
	lo, hi := min(s.a.X, s.b.X)-0.5, max(s.a.X, s.b.X)+0.5
	low, high := s.a.Y-shelfAir, s.a.Y+shelfAir
	q := quad{p: [4]draw.Point{{X: lo, Y: low}, {X: hi, Y: low}, {X: hi, Y: high}, {X: lo, Y: high}}}
	q.box = draw.Box{Min: q.p[0], Max: q.p[2]}
	for _, o := range k.lines {
		if q.crossed(o) {
			return true
		}
	}
	return false
}

func (k *Sketch) drawLeader(l leader, elbow draw.Point, way float64) {
	t, shelf := k.shelf(l, elbow, way)
	k.lines = append(k.lines, segment{l.at, elbow}, shelf)
	k.put(k.thin(l.at, elbow, shelf.b), l.ref)
	if l.dot {
		k.Items = append(k.Items, draw.Path{Segs: draw.Circle(l.at, 0.5), Filled: true, Fill: k.Style.Ink, Layer: "dimension", Ref: l.ref})
	} else {
		k.putArrow(l.at, draw.Point{X: l.at.X - elbow.X, Y: l.at.Y - elbow.Y}, l.ref)
	}
	for _, t := range t {
		k.putText(t)
	}
	if len(t) > 1 {
		k.texts = append(k.texts, k.under(shelf))
	}
}

// under is the room under a shelf of a note in two lines. Nothing else comes there beside what stands in it: it would read as
// part of the note.
func (k *Sketch) under(shelf segment) quad {
	lo := draw.Point{X: min(shelf.a.X, shelf.b.X), Y: shelf.a.Y - lift - k.Style.Text}
	hi := draw.Point{X: max(shelf.a.X, shelf.b.X), Y: shelf.a.Y}
	return quad{p: [4]draw.Point{lo, {X: hi.X, Y: lo.Y}, hi, {X: lo.X, Y: hi.Y}}, box: draw.Box{Min: lo, Max: hi}}
}
