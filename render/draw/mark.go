package draw

import "math"

// Meets tells whether two boxes have more than an edge in common. A box without width or height is a line.
func (b Box) Meets(c Box) bool {
	return b.Min.X < c.Max.X && c.Min.X < b.Max.X && b.Min.Y < c.Max.Y && c.Min.Y < b.Max.Y
}

// PlacesOn are the places for a round mark on a line, from its beginning on: the first as far in as the mark is wide, or in
// the middle of a short line; then a quarter of it farther each, so long as it keeps to the line; then before and beyond it.
func PlacesOn(from, to Point, wide float64) []Point {
	long := math.Hypot(to.X-from.X, to.Y-from.Y)
	if long == 0 {
		return []Point{from}
	}
	at := func(off float64) Point {
		return Point{from.X + (to.X-from.X)*off/long, from.Y + (to.Y-from.Y)*off/long}
	}
	first := min(wide, long/2)
	out := []Point{at(first)}
	for off := first + wide/4; off <= long-wide/2; off += wide / 4 {
		out = append(out, at(off))
	}
	return append(out, at(-wide/2), at(long+wide/2))
}

// Clearest is the first place of a mark that covers nothing and lies on no other line, else the first that covers nothing,
// else the first of all.
func Clearest(places []Point, wide float64, covers func(Box) bool, lines []Box) Point {
	var second *Point
	for i, p := range places {
		mark := (Box{p, p}).Grow(wide / 2)
		if covers(mark) {
			continue
		}
		if !meetsAny(mark, lines) {
			return p
		}
		if second == nil {
			second = &places[i]
		}
	}
	if second != nil {
		return *second
	}
	return places[0]
}

func meetsAny(b Box, others []Box) bool {
	for _, o := range others {
		if b.Meets(o) {
			return true
		}
	}
	return false
}
