package draw

import "math"

// Box is an upright rectangle, mm. The zero Box is not empty; EmptyBox is.
type Box struct{ Min, Max Point }

// EmptyBox is the box of nothing: any point added to it becomes the box.
func EmptyBox() Box {
	inf := math.Inf(1)
	return Box{Point{inf, inf}, Point{-inf, -inf}}
}

// Empty tells whether the box holds no point.
func (b Box) Empty() bool { return b.Min.X > b.Max.X }

// Width and Height are the box's sides; 0 when it is empty.
func (b Box) Width() float64 { return max(0, b.Max.X-b.Min.X) }

// Height is the box's upright side.
func (b Box) Height() float64 { return max(0, b.Max.Y-b.Min.Y) }

// Add gives the box grown to hold p.
func (b Box) Add(p Point) Box {
	return Box{Point{min(b.Min.X, p.X), min(b.Min.Y, p.Y)}, Point{max(b.Max.X, p.X), max(b.Max.Y, p.Y)}}
}

// Join gives the smallest box that holds both.
func (b Box) Join(c Box) Box {
	if c.Empty() {
		return b
	}
	return b.Add(c.Min).Add(c.Max)
}

// Grow gives the box with m more on every side.
func (b Box) Grow(m float64) Box {
	return Box{Point{b.Min.X - m, b.Min.Y - m}, Point{b.Max.X + m, b.Max.Y + m}}
}

// Moved gives the box shifted by d.
func (b Box) Moved(d Point) Box {
	return Box{Point{b.Min.X + d.X, b.Min.Y + d.Y}, Point{b.Max.X + d.X, b.Max.Y + d.Y}}
}

// Bounds gives the box round the items: text with its ascents and descents, paths without the
// width of their pens, curves by their handles.
func Bounds(items []Item) Box {
	b := EmptyBox()
	for _, it := range items {
		switch it := it.(type) {
		case Path:
			b = b.Join(pathBounds(it.Segs))
		case Text:
			for _, p := range it.Box() {
				b = b.Add(p)
			}
		}
	}
	return b
}

func pathBounds(segs []Seg) Box {
	b := EmptyBox()
	for _, s := range segs {
		switch s.Kind {
		case Curve:
			b = b.Add(s.P[0]).Add(s.P[1]).Add(s.P[2])
		case Move, Line:
			b = b.Add(s.P[2])
		}
	}
	return b
}

// Length of a way on the paper or in a picture, mm; unlike math.Hypot it takes no care of the largest and least numbers,
// and so takes a third of the time.
func Length(dx, dy float64) float64 { return math.Sqrt(dx*dx + dy*dy) }

// Segs is how many segments the paths of items have.
func Segs(items []Item) int {
	n := 0
	for _, it := range items {
		if p, is := it.(Path); is {
			n += len(p.Segs)
		}
	}
	return n
}

// Moved gives the items shifted by d.
func Moved(items []Item, d Point) []Item {
	out := make([]Item, len(items))
	room := make([]Seg, 0, Segs(items))
	for i, it := range items {
		switch it := it.(type) {
		case Path:
			at := len(room)
			for _, s := range it.Segs {
				for k := range s.P {
					s.P[k].X += d.X
					s.P[k].Y += d.Y
				}
				room = append(room, s)
			}
			it.Segs = room[at:len(room):len(room)]
			out[i] = it
		case Text:
			it.At.X += d.X
			it.At.Y += d.Y
			out[i] = it
		}
	}
	return out
}
