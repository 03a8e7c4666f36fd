package remedy

import (
	"fmt"
	"math"
	"strconv"

	"splaywright/model/file"
	"splaywright/model/form"
	"splaywright/model/measure"
)

// stretcher looks for a stretcher that clears the finding, or for two, so that front and back of the piece are held alike.
func (s *search) stretcher() []Offer {
	if s.piece.Design.Form != "stool" {
		return nil
	}
	for _, o := range s.stretchers() {
		if s.clears(o) {
			return []Offer{o}
		}
	}
	return nil
}

// stretchers are those to try: across from one that has none there; in the middle, right under the top or low down; as many
// as are in the middle once more, all of them moved aside; and two at once.
func (s *search) stretchers() []Offer {
	d := s.piece.Design
	var across, apart, one, two []Offer
	aside := s.near(d.Size.Depth.MM() / 4)
	for i, st := range d.Stretchers {
		switch {
		case same(st.Across, 0):
			at := listed(i) + ".across"
			apart = append(apart, s.like(i, aside).with(Offer{Path: at, Was: s.text(0), Now: s.text(-aside)}))
		case !s.facing(st):
			across = append(across, s.like(i, -st.Across.MM()))
		}
	}
	room := (d.Size.Height - d.Boards.Top.Thickness).MM()
	for _, wide := range s.widths() {
		for _, below := range []float64{0, s.near(room / 2)} {
			if below+wide >= room {
				continue
			}
			one = append(one, s.plain(wide, below, 0))
			two = append(two, s.plain(wide, below, aside).with(s.plain(wide, below, -aside)))
		}
	}
	return append(append(append(across, one...), apart...), two...)
}

func listed(i int) string { return "stretchers." + strconv.Itoa(i) }

// with is an offer with another that is made along with it.
func (o Offer) with(also Offer) Offer {
	o.Also = &also
	return o
}

// facing tells whether a stretcher has another across from it.
func (s *search) facing(st form.Stretcher) bool {
	for _, o := range s.piece.Design.Stretchers {
		if same(o.Across, -st.Across) && same(o.BelowTop, st.BelowTop) {
			return true
		}
	}
	return false
}

// sameSpot, mm: what is nearer is rounding noise.
const sameSpot = 1e-6

func same(a, b measure.Length) bool { return math.Abs((a - b).MM()) < sameSpot }

// plain is a stretcher on edge, housed in the sides.
func (s *search) plain(wide, below, across float64) Offer {
	return Offer{Path: "stretchers", Fields: [][2]string{
		{"width", s.text(wide)}, {"thickness", s.text(s.piece.Design.Boards.Side.Thickness.MM())}, {"set", form.OnEdge},
		{"below-top", s.text(below)}, {"across", s.text(across)}, {"joint", form.Housing},
	}}
}

// like is one more of a stretcher that is there, in another place.
func (s *search) like(i int, across float64) Offer {
	o := Offer{Path: "stretchers"}
	for _, f := range leaves(s.doc, listed(i), "") {
		if f[0] != "across" {
			o.Fields = append(o.Fields, f)
		}
	}
	o.Fields = append(o.Fields, [2]string{"across", s.text(across)})
	return o
}

// leaves are the keys below a path that hold a text, with it.
func leaves(doc *file.Document, path, below string) (out [][2]string) {
	for _, key := range doc.Keys(path) {
		at := path + "." + key
		if len(doc.Keys(at)) > 0 {
			out = append(out, leaves(doc, at, below+key+".")...)
		} else if text := doc.Text(at); text != "" {
			out = append(out, [2]string{below + key, text})
		}
	}
	return out
}

// widths are those of stretchers that are tried, mm.
func (s *search) widths() []float64 {
	if s.piece.Design.Units == measure.Imperial {
		return []float64{2.5 * 25.4, 3 * 25.4, 4 * 25.4}
	}
	return []float64{60, 80, 100}
}

// near is the nearest length that a rule shows: whole millimetres, or eighths of an inch.
func (s *search) near(mm float64) float64 {
	if s.piece.Design.Units == measure.Imperial {
		return math.Round(mm/25.4*8) / 8 * 25.4
	}
	return math.Round(mm)
}

// text is a length in the design's unit.
func (s *search) text(mm float64) string {
	if s.piece.Design.Units == measure.Imperial {
		return fmt.Sprintf("%g in", math.Round(mm/25.4*1e6)/1e6)
	}
	return fmt.Sprintf("%g mm", mm)
}
