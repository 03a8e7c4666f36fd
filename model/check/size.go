package check

import (
	"fmt"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// sizeRange is what a stool, step or bench plausibly measures.
type sizeRange struct {
	key, word string
	value     measure.Length
	low, high measure.Length
}

// plausible ranges are wide on purpose: from a doll's step to a long bench, from a pin tray to a
// blanket chest. Common practice.
func plausible(d form.Design) []sizeRange {
	switch d.Form {
	case "ring":
		return []sizeRange{
			{"size.height", "height", d.Size.Height, 30, 1200},
			{"size.width", "width", d.Size.Width, 60, 2000},
		}
	case "tray", "chest":
		return []sizeRange{
			{"size.height", "height", d.Size.Height, 20, 1200},
			{"size.width", "width", d.Size.Width, 60, 2400},
			{"size.depth", "depth", d.Size.Depth, 60, 1500},
		}
	}
	return []sizeRange{
		{"size.height", "height", d.Size.Height, 60, 1200},
		{"size.width", "width", d.Size.Width, 100, 3600},
		{"size.depth", "depth", d.Size.Depth, 80, 1000},
	}
}

// mistaken are the ways in which a size comes out wrong by a factor: inches typed where
// millimetres are read, feet marks for inch marks, centimetres, and each the other way.
var mistaken = []struct {
	imperial bool // slips that happen in a file in inches
	factor   measure.Length
	says     string
}{
	{true, 1.0 / 12, "; if inches were meant where feet were read, it is %s"},
	{true, 12, "; if feet were meant where inches were read, it is %s"},
	{true, 1 / measure.Inch, "; if millimetres were meant where inches were read, it is %s"},
	{false, measure.Inch, "; if inches were meant where millimetres were read, it is %s"},
	{false, 10, "; if centimetres were meant where millimetres were read, it is %s"},
	{false, 0.1, "; if millimetres were meant where centimetres were read, it is %s"},
}

// sizes tells of sizes that look like a slip of the unit, such as 16' beside 12", and of two
// sizes of one piece that hardly belong together.
func sizes(r *run) {
	for _, s := range plausible(r.d) {
		if s.value >= s.low && s.value <= s.high {
			continue
		}
		f := part.Finding{ID: "size-unlikely", Level: part.Warning, Figure: s.value.MM(), Unit: "mm",
			Source: commonPractice, Sizes: []string{s.key}}
		side, limit := "more than", s.high
		if s.value < s.low {
			side, limit = "less than", s.low
		}
		f.Limit = limit.MM()
		value, _ := r.apart(s.value.MM(), limit.MM())
		f.Text = sentence("a %s of %s is %s %s, which is unlikely for a %s",
			s.word, value, side, r.rough(limit, s.value), formName(r.d.Form)) + r.otherUnit(s) + "."
		r.add(f)
	}
}

// otherUnit offers the readings that would make a size likely.
func (r *run) otherUnit(s sizeRange) string {
	text := ""
	for _, m := range mistaken {
		if m.imperial != (r.d.Units == measure.Imperial) {
			continue
		}
		if v := s.value * m.factor; v >= s.low && v <= s.high {
			text += fmt.Sprintf(m.says, r.long(v))
		}
	}
	return text
}

// Limits of thickness, mm: below 1/4 in a board is veneer to this work, above 3 in a beam, as when
// 3-5/8 is typed for 5/8 (https://www.popularwoodworking.com/article/should-cut-lists-be-banned/).
const (
	thinnest = 6.0
	thickest = 76.2
)

const thicknessSource = "common practice; a printed cut list had 3-5/8 for 5/8: https://www.popularwoodworking.com/article/should-cut-lists-be-banned/"

// thicknesses tells of boards that are unlikely thick or thin, or thicker than half their width.
func thicknesses(r *run) {
	if r.walled() {
		r.wallThicknesses()
		return
	}
	r.thickness("boards.top.thickness", "the top", r.d.Boards.Top.Thickness, r.d.Size.Depth)
	r.thickness("boards.side.thickness", "the side", r.d.Boards.Side.Thickness, r.d.Size.Depth)
	for i, s := range r.d.Stretchers {
		r.thickness(fmt.Sprintf("stretchers.%d.thickness", i), fmt.Sprintf("stretcher %d", i+1), s.Thickness, s.Width)
	}
	if a := r.d.Aprons; a != nil {
		r.thickness("aprons.thickness", "an apron", a.Thickness, a.Width)
	}
}

func (r *run) thickness(path, of string, t, width measure.Length) {
	f := part.Finding{ID: "thickness-unlikely", Level: part.Warning, Figure: t.MM(), Unit: "mm", Source: thicknessSource,
		Sizes: []string{path}, Parts: r.idsOf(of)}
	switch {
	case t <= 0:
		return // the form stops on it
	case t.MM() < thinnest-noise:
		f.Limit = thinnest
		thick, least := r.apart(t.MM(), thinnest)
		f.Text = sentence("%s is %s thick, less than the %s that such a board can do with%s.", of, thick, least, r.thinMeant(t))
	case t.MM() > thickest+noise:
		f.Limit = thickest
		thick, most := r.apart(t.MM(), thickest)
		f.Text = sentence("%s is %s thick, more than %s, which is a beam%s.", of, thick, most, r.thickMeant(t))
	case t > width/2+noise && width > 0:
		f.ID, f.Limit, f.Source = "board-thicker-than-half-its-width", (width / 2).MM(), commonPractice
		f.Text = sentence("%s is %s thick and only %s wide; thickness and width may have changed places, or a unit slipped.", of, r.long(t), r.long(width))
	default:
		return
	}
	r.add(f)
}

// idsOf are the ids of the boards that a sentence calls by one name.
func (r *run) idsOf(name string) []string {
	var out []string
	for _, q := range r.p.Parts {
		if theBoard(q) == name {
			out = append(out, q.ID)
		}
	}
	return out
}

// thickMeant offers the fraction without its whole inches, or millimetres read as inches.
func (r *run) thickMeant(t measure.Length) string {
	if r.d.Units != measure.Imperial {
		return ""
	}
	whole := measure.Length(int(t/measure.Inch)) * measure.Inch
	if fraction := t - whole; fraction.MM() > thinnest && t < 12*measure.Inch {
		return fmt.Sprintf("; if %s was meant, a whole number of inches slipped in", r.long(fraction))
	}
	if v := t / measure.Inch; v.MM() > thinnest && v.MM() < thickest {
		return fmt.Sprintf("; if millimetres were meant, it is %s", r.long(v))
	}
	return ""
}

// thinMeant offers inches read as millimetres.
func (r *run) thinMeant(t measure.Length) string {
	if v := t * measure.Inch; r.d.Units == measure.Metric && v.MM() > thinnest && v.MM() < thickest {
		return fmt.Sprintf("; if inches were meant, it is %s", r.long(v))
	}
	return ""
}
