package check

import (
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

func flight(height, lower, width measure.Length) form.Design {
	d := form.Design{Title: "Steps", Form: form.Steps, Timber: "white ash",
		Size:  form.Size{Height: height, Width: 2 * width, Depth: 300, LowerHeight: lower, LowerWidth: width},
		Splay: form.Splay{Ends: 4 * measure.Degree}}
	d.Boards.Top.Thickness, d.Boards.Side.Thickness, d.Corners.Joint = 22, 20, form.Butt
	return d
}

// Risers of one flight differ by 3/8 in at most: IRC R311.7.5.1,
// https://resources.viewrail.com/code-compliance/stair-code/tread-depth-and-risers ; steps of stools are 8 to 12 in apart:
// OSHA 1926.1053, https://easyrelocated.com/how-tall-is-a-one-step-stool/ ; none is below 4 in: IBC,
// http://boulderlibrary.net/author/admin/page/89 .
func TestStepsAreClimbed(t *testing.T) {
	const in = measure.Inch
	sizes := func(height, lower measure.Length) edit {
		return func(d *form.Design) { d.Size.Height, d.Size.LowerHeight = height, lower }
	}
	lowerWidth := func(mm measure.Length) edit { return func(d *form.Design) { d.Size.LowerWidth = mm } }
	even := flight(16*in, 8*in, 260)
	runTrials(t, map[string]trial{
		"risers 1/2 in apart":  {from: even, spoil: sizes(16.5*in, 8*in), mend: sizes(16.375*in, 8*in), id: "steps-uneven", level: part.Warning, figure: 12.7, limit: 9.525, says: "stumble"},
		"a riser above 12 in":  {from: even, spoil: sizes(24.25*in, 12.125*in), mend: sizes(24*in, 12*in), id: "step-rise", level: part.Warning, figure: 307.975, limit: 304.8, says: "Local rules"},
		"a riser below 4 in":   {from: even, spoil: sizes(7.5*in, 3.75*in), mend: sizes(8*in, 4*in), id: "step-rise", level: part.Warning, figure: 95.25, limit: 101.6, says: "without a handrail"},
		"a tread for toe tips": {from: even, spoil: lowerWidth(179), mend: lowerWidth(180), id: "foothold-narrow", level: part.Warning, figure: 179, limit: 180, says: "1.0 mm wider"},
	})
}

// Heights as published are taken, and those beside them noted: seats 17 to 19 in,
// https://engineerfix.com/what-is-a-standard-chair-height (2010 ADA Standards §903: 430 to 485 mm); counter stools 24 to 26
// and bar stools 28 to 32, https://engineerfix.com/how-to-measure-for-the-right-bar-height-stools ; steps 4 to 7 and 8 to 12.
func TestUsualHeights(t *testing.T) {
	tall := edited(soundHoused(), func(d *form.Design) { d.Stretchers, d.Features = nil, nil })
	at := func(inches float64) int {
		return len(withID(look(edited(tall, height(inches*25.4))), "height-between-uses"))
	}
	for _, usual := range []float64{4, 7, 8, 12, 17, 18, 19, 24, 25, 26, 28, 30, 32} {
		if at(usual) != 0 {
			t.Errorf("%g in is noted", usual)
		}
	}
	for _, between := range []float64{3.5, 12.5, 16, 20, 23, 27, 33} {
		if at(between) != 1 {
			t.Errorf("%g in is not noted", between)
		}
	}
	if ada := edited(tall, height(485)); len(withID(look(ada), "height-between-uses")) != 0 || math.Abs(485/25.4-19) > 0.1 {
		t.Error("a bench of 485 mm is noted")
	}
}
