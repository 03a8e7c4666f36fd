// Package band says how far a finished piece may come out from its figures when every cut is off by as much as the shop
// holds, and which cut explains what was measured.
//
// The model is of boards as they are cut: a side keeps the length it was cut to and the angle it was fitted at, and the
// figures of the whole follow from all of them. It shares no arithmetic with the forms, which go the other way.
package band

import (
	"cmp"
	"math"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// Unit is what a cause is counted in.
type Unit int

// Units of causes.
const (
	Length Unit = iota // millimetres
	Degree
)

// Cause is one cut, or one place, that may be off.
type Cause struct {
	What string // what of its part: one of the words below
	Part string // id of the part
	Unit Unit
	Off  float64 // it holds to plus or minus so much
}

// What may be off.
const (
	OfLength    = "length"
	OfWidth     = "width"
	OfThickness = "thickness"
	OfApart     = "distance of what it joins"
	OfTopAngle  = "corner angle"
	OfDepth     = "depth of what it is let into"
	OfTopSquare = "squareness of its top end"
	OfFoot      = "squareness of its floor end"
	OfTread     = "angle of the tread on it"
	OfLean      = "lean"
	OfBevel     = "bevel of an end"
)

// Figure is a figure of the finished piece.
type Figure struct {
	ID      string
	Key     string  // as the design file names it under came-out; "" = it is not measured with a rule
	What    string  // in words
	Part    string  // id of the part it is about; "" = the whole
	Nominal float64 // mm, as designed
	By      []float64
	// Worst is how far it may come out when all cuts are off as far as they hold, each the worse way; Likely when each is off
	// one way or the other by chance: the root of the sum of squares, as usual for stacks of sizes (common practice).
	Worst, Likely float64
	Most          int // the cause that adds most to it, -1 = none
}

// Bands are the figures of a piece with what each may come out by.
type Bands struct {
	Causes  []Cause
	Figures []Figure
	Holds   form.Tolerance // what the cuts are taken to hold to, as told or as usual

	built func(off []float64) []float64 // the figures of the piece with its causes off by so much
}

// Usual tolerances of a small shop, where a design names none (common practice): a rule read to half a millimetre, a
// bevel set to a tenth of a degree, or as near as the saw's step rounds it, a thickness planed to a tenth of a millimetre.
const (
	UsualLength    = 0.5 * measure.Millimetre
	UsualAngle     = 0.1 * measure.Degree
	UsualThickness = 0.1 * measure.Millimetre
)

// Of gives the bands of a piece; none where it could not be built.
func Of(p *form.Piece) Bands {
	t := p.Design.Tolerance
	t = form.Tolerance{Length: cmp.Or(t.Length, UsualLength), Angle: cmp.Or(t.Angle, max(UsualAngle, p.Design.Saw.Step/2)), Thickness: cmp.Or(t.Thickness, UsualThickness)}
	m := &model{p: p, d: p.Design, holds: t, length: t.Length.MM(), angle: t.Angle.Degrees(), thick: t.Thickness.MM()}
	if p.Stopped() || len(p.Parts) == 0 {
		return Bands{}
	}
	switch {
	case p.Form == form.Steps:
		m.steps()
	case form.OnSides(p.Form):
		m.stool()
	case p.Form == "ring":
		m.ring()
	default:
		m.walls()
	}
	return m.bands()
}

// model is a piece while its causes and figures are collected.
type model struct {
	p                    *form.Piece
	d                    form.Design
	holds                form.Tolerance
	length, thick, angle float64 // what cuts hold to, mm and degrees
	causes               []Cause
	figures              []Figure
	built                func(off []float64) []float64
}

// may adds a cause and gives its place in the list.
func (m *model) may(what, part string, unit Unit, off float64) int {
	m.causes = append(m.causes, Cause{what, part, unit, off})
	return len(m.causes) - 1
}

func (m *model) figure(key, what, part string) {
	m.figures = append(m.figures, Figure{ID: key, Key: key, What: what, Part: part})
}

// gap adds a figure that is nothing as designed.
func (m *model) gap(id, what, part string) {
	m.figures = append(m.figures, Figure{ID: id, What: what, Part: part})
}

// bands works out what every cause does to every figure.
func (m *model) bands() Bands {
	b := Bands{Causes: m.causes, Figures: m.figures, Holds: m.holds, built: m.built}
	none := make([]float64, len(m.causes))
	for j, v := range m.built(none) {
		b.Figures[j].Nominal, b.Figures[j].Most = v, -1
		b.Figures[j].By = make([]float64, len(m.causes))
	}
	const step = 1e-3 // mm or degrees, to either side: far below what is held and far above rounding
	for k := range m.causes {
		off := make([]float64, len(m.causes))
		off[k] = step
		more := m.built(off)
		off[k] = -step
		less := m.built(off)
		for j := range b.Figures {
			b.Figures[j].By[k] = (more[j] - less[j]) / (2 * step)
		}
	}
	for j := range b.Figures {
		b.Figures[j].stack(b.Causes)
	}
	return b
}

// stack adds up what the causes come to.
func (f *Figure) stack(causes []Cause) {
	most := 1e-9 // mm; less is rounding
	for k, by := range f.By {
		share := math.Abs(by) * causes[k].Off
		f.Worst += share
		f.Likely = math.Hypot(f.Likely, share)
		if share > most*(1+1e-6) { // of equal ones the first
			most, f.Most = share, k
		}
	}
}

// Built is how the figures come out with the causes off by so much, mm or degrees.
func (b Bands) Built(off []float64) []float64 { return b.built(off) }
