package dimension

import (
	"splaywright/render/draw"
)

// Stamp is what is written on the wood of a face: a part's mark, underlined; words below it; and arrows
// with words, each pointing along a direction of the paper of length 1.
type Stamp struct {
	Mark, Words, Ref string
	Arrows           []Pointer
}

// Pointer is an arrow of a stamp.
type Pointer struct {
	Way  draw.Point
	Word string
}

// stamped is a stamp with the places it may take, the best first.
type stamped struct {
	Stamp
	places []draw.Point
}

// Stamp asks for a stamp at the first of the places where it meets nothing, the smaller without its words
// and arrows where it has no room with them. It is laid last, and left out where there is no room at all.
func (k *Sketch) Stamp(s Stamp, places []draw.Point) {
	k.stamps = append(k.stamps, stamped{s, places})
}

// The stamp's letters and arrows, mm.
const (
	stampMark  = 3.5
	stampWords = 2.0
	stampArrow = 5.4
	stampHead  = 2.2
	stampRow   = 6.0
	stampAir   = 1.4 // round all of it
	stampFar   = 4.0 // from notes, where there is room: nearer a mark reads on from them, "centred 7"
)

func (k *Sketch) layStamp(s stamped) {
	small := Stamp{Mark: s.Mark, Ref: s.Ref}
	for _, t := range []Stamp{s.Stamp, {Mark: s.Mark, Ref: s.Ref, Arrows: s.Arrows}, small} {
		for _, apart := range []float64{stampFar, stampAir} {
			for _, at := range s.places {
				texts, lines, heads := k.stampAt(t, at)
				if k.stampFree(texts, lines) && k.stampApart(texts, apart) {
					k.putStamp(t, texts, lines, heads)
					return
				}
			}
		}
	}
}

// stampAt is a stamp with the middle of its mark at a place: its texts, its lines, and the heads of its
// arrows as the last of the lines.
func (k *Sketch) stampAt(s Stamp, at draw.Point) (texts []draw.Text, lines []segment, heads int) {
	base := draw.Point{X: at.X, Y: at.Y - stampMark/2}
	wide := draw.TextWidth(s.Mark, stampMark, true)
	m := draw.Text{At: base, Size: stampMark, Align: draw.Centre, Bold: true, Ink: k.Style.Ink, Text: s.Mark, Layer: "mark", Ref: s.Ref}
	texts = append(texts, m)
	under := base.Y - draw.Descent*stampMark - 0.3
	lines = append(lines, segment{draw.Point{X: at.X - wide/2 - 0.8, Y: under}, draw.Point{X: at.X + wide/2 + 0.8, Y: under}})
	if s.Words != "" {
		texts = append(texts, draw.Text{At: draw.Point{X: at.X, Y: under - 0.9 - stampWords*draw.Ascent}, Size: stampWords, Align: draw.Centre, Ink: k.Style.Ink, Text: s.Words, Layer: "mark", Ref: s.Ref})
		wide = max(wide, draw.TextWidth(s.Words, stampWords, false))
	}
	x := at.X + wide/2 + 1.8 + stampArrow/2
	for i, a := range s.Arrows {
		mid := draw.Point{X: x, Y: at.Y - stampRow*float64(i)}
		tail, tip := add(mid, draw.Point{X: -a.Way.X * stampArrow / 2, Y: -a.Way.Y * stampArrow / 2}), add(mid, draw.Point{X: a.Way.X * stampArrow / 2, Y: a.Way.Y * stampArrow / 2})
		lines = append(lines, segment{tail, tip})
		texts = append(texts, draw.Text{At: draw.Point{X: x + stampArrow/2 + 1, Y: mid.Y - stampWords/2}, Size: stampWords, Ink: k.Style.Ink, Text: a.Word, Layer: "mark", Ref: s.Ref})
	}
	return texts, lines, len(s.Arrows)
}

// stampFree tells whether a stamp meets no line and no text of the sketch; its own lines keep a little room.
func (k *Sketch) stampFree(texts []draw.Text, lines []segment) bool {
	rooms := make([]quad, 0, len(texts)+len(lines))
	for _, t := range texts {
		rooms = append(rooms, textQuad(t, stampAir))
	}
	for _, l := range lines {
		lo := draw.Point{X: min(l.a.X, l.b.X) - stampAir, Y: min(l.a.Y, l.b.Y) - stampAir}
		hi := draw.Point{X: max(l.a.X, l.b.X) + stampAir, Y: max(l.a.Y, l.b.Y) + stampAir}
		rooms = append(rooms, quad{p: [4]draw.Point{lo, {X: hi.X, Y: lo.Y}, hi, {X: lo.X, Y: hi.Y}}, box: draw.Box{Min: lo, Max: hi}})
	}
	for i := range rooms {
		if !k.clear(&rooms[i]) {
			return false
		}
	}
	return true
}

// stampApart tells whether a stamp's texts stand so far from all others, mm.
func (k *Sketch) stampApart(texts []draw.Text, apart float64) bool {
	for _, t := range texts {
		q := textQuad(t, apart)
		for i := range k.texts {
			if q.meets(&k.texts[i]) {
				return false
			}
		}
	}
	return true
}

// clear tells whether a room holds no line and no text of the sketch.
func (k *Sketch) clear(q *quad) bool {
	for i := range k.texts {
		if q.meets(&k.texts[i]) {
			return false
		}
	}
	for _, o := range k.lines {
		if q.crossed(o) {
			return false
		}
	}
	return true
}

func (k *Sketch) putStamp(s Stamp, texts []draw.Text, lines []segment, heads int) {
	for i, l := range lines {
		width, end := 0.35, l.b
		if i >= len(lines)-heads {
			way := s.Arrows[i-(len(lines)-heads)].Way
			width, end = k.Style.Line, draw.Point{X: l.b.X - way.X*stampHead, Y: l.b.Y - way.Y*stampHead}
			k.Items = append(k.Items, draw.Path{Segs: draw.Arrow(l.b, way, stampHead), Filled: true, Fill: k.Style.Ink, Layer: "mark", Ref: s.Ref})
		}
		k.lines = append(k.lines, l)
		k.Items = append(k.Items, draw.Path{Segs: draw.Polyline([]draw.Point{l.a, end}), Pen: draw.Pen{Width: width, Ink: k.Style.Ink}, Layer: "mark", Ref: s.Ref})
	}
	for _, t := range texts {
		k.putText(t)
	}
}
