package check

import (
	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// noWood, mm³, is what two boards share by rounding.
const noWood = 1e-3

// slips looks for splines and keys that stand in a stretcher or an apron: one let into a side close under the top
// reaches into the corner where they lie.
func slips(r *run) {
	for _, rail := range r.p.Design.Rails() {
		q := r.p.Part(rail.ID)
		if q == nil || q.Solid == nil {
			continue
		}
		for i := range r.p.Parts {
			s := r.p.Parts[i]
			if (s.Slip != part.Spline && s.Slip != part.Key) || s.Solid == nil || !meet(s, q) {
				continue
			}
			text := sentence("a spline stands in %s, which is let into the side close to the corner: set it lower or let it in less deep, or make the splines smaller.", theBoard(q))
			if s.Slip == part.Key {
				text = sentence("a key stands in %s, which is let into the side close to the corner: set it lower or let it in less deep, or make the keys smaller.", theBoard(q))
			}
			r.add(part.Finding{ID: string(s.Slip) + "-in-stretcher", Level: part.Stop, Source: "geometry of this piece",
				Parts: []string{s.ID, q.ID}, Sizes: slipSizes(rail, s.Slip), Text: text})
		}
	}
}

// slipSizes are the sizes that keep a rail and the slips of a corner apart.
func slipSizes(rail form.Rail, slip part.Slip) []string {
	out := []string{rail.Path + ".below-top", rail.Path + ".depth"}
	if slip == part.Key {
		return append(out, "corners.keys.depth", "corners.keys.thickness")
	}
	return append(out, "corners.spline.width", "corners.spline.inset")
}

// meet tells whether two parts share wood.
func meet(a, b *part.Part) bool {
	place := part.Back(a.Place).Mul4(b.Place)
	lo, hi := a.Solid.Bounds()
	for k := range 3 {
		least, most := place.Col(3)[k], place.Col(3)[k]
		low, high := b.Solid.Bounds()
		for axis := range 3 {
			one, two := place.At(k, axis)*low[axis], place.At(k, axis)*high[axis]
			least, most = least+min(one, two), most+max(one, two)
		}
		if least >= hi[k] || most <= lo[k] {
			return false
		}
	}
	shared, err := solid.Overlap(a.Solid, b.Solid, place)
	return err == nil && shared > noWood
}
