package check

import (
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// A hair beyond a limit, a sentence must not say that 304.8 mm is more than 304.8 mm: figure and limit read differently. Limits
// are those of the other tests, a hundredth of a millimetre and less away.
func TestSentencesAHairBeyondTheirLimits(t *testing.T) {
	const in = measure.Inch
	even := flight(16*in, 8*in, 260)
	rises := func(height, lower measure.Length) edit {
		return func(d *form.Design) { d.Size.Height, d.Size.LowerHeight = height, lower }
	}
	lowerWidth := func(mm measure.Length) edit { return func(d *form.Design) { d.Size.LowerWidth = mm } }
	imperial := edited(sound(), inches)
	runTrials(t, map[string]trial{
		"a riser of 12 in": {from: even, spoil: rises(609.62, 304.81), mend: rises(609.6, 304.8), id: "step-rise",
			level: part.Warning, figure: 304.81, limit: 304.8, says: "rises 304.81 mm, more than 304.80 mm"},
		"a riser of 4 in": {from: even, spoil: rises(203.14, 101.57), mend: rises(203.2, 101.6), id: "step-rise",
			level: part.Warning, figure: 101.57, limit: 101.6, says: "rises 101.57 mm, less than 101.60 mm; steps that are climbed without a handrail rise 101.60 mm to 305 mm"},
		"uneven by 3/8 in": {from: even, spoil: rises(415.93, 203.2), mend: rises(415.925, 203.2), id: "steps-uneven",
			level: part.Warning, figure: 9.53, limit: 9.525, says: "the second 212.73 mm: a difference of more than 9.52 mm"},
		"a tread of 180 mm": {from: even, spoil: lowerWidth(179.97), mend: lowerWidth(180), id: "foothold-narrow",
			level: part.Warning, figure: 179.97, limit: 180, says: "leaves 179.97 mm for the foot, less than 180.00 mm"},
		"a stool of 60 mm in inches": {from: imperial, spoil: height(57.15), mend: height(60), id: "size-unlikely",
			level: part.Warning, figure: 57.15, limit: 60, says: `2 1/4" is less than 2 23/64"`},
		"a bench of 3.6 m": {from: sound(), spoil: width(3600.03), mend: width(3600), id: "size-unlikely",
			level: part.Warning, figure: 3600.03, limit: 3600, says: "3600.03 mm is more than 3600.00 mm"},
		"a beam of 3 in": {from: sound(), spoil: topThickness(76.22), mend: topThickness(76.2), id: "thickness-unlikely",
			level: part.Warning, figure: 76.22, limit: 76.2, says: "76.22 mm thick, more than 76.20 mm"},
		"standing at 1 m": {from: sound(), spoil: height(1000.01), mend: height(999), id: "height-beyond-standing",
			level: part.Warning, figure: 1000.01, limit: 1000, says: "1000.01 mm high; standing on a stool is provided for up to 1000.00 mm"},
		"a step of 4 in": {from: sound(), spoil: height(101), mend: height(101.6), id: "height-between-uses",
			level: part.Note, figure: 101, limit: 101.6, says: "at 101.0 mm the top is not at a usual height: a step is 101.6 mm to 305 mm"},
		"a step of 12 in": {from: sound(), spoil: height(304.9), mend: height(304.84), id: "height-between-uses",
			level: part.Note, figure: 304.9, limit: 304.8, says: "a step is 100 mm to 304.8 mm"},
		"a saw that tilts to 5.9°": {from: edited(sound(), func(d *form.Design) { d.Saw.MaxTilt = 5.98 * measure.Degree }), spoil: height(260), mend: func(d *form.Design) { d.Saw.MaxTilt = 6 * measure.Degree },
			id: "tilt-out-of-reach", level: part.Warning, figure: 6, limit: 5.98, says: "a tilt of 6.00° and the saw reaches 5.98°"},
	})
}

// What is shown of a range is never on the wrong side of what is said not to be in it, in round figures and in inches either.
func TestRangesDoNotHoldWhatIsOutsideThem(t *testing.T) {
	for _, units := range []edit{func(*form.Design) {}, inches} {
		for i := range 16 * 20 {
			u := uses[i/80]
			mm := [2]measure.Length{u.low, u.high}[i/40%2].MM() + 0.13*float64(i%40-20)
			d := edited(sound(), units, height(mm))
			for _, f := range Run(form.Build(d)) {
				if f.ID != "height-between-uses" {
					continue
				}
				shown := fine(d.Style()).FormatUnit(d.Size.Height)
				if rest := strings.Replace(f.Text, shown, "", 1); strings.Contains(rest, shown) {
					t.Fatalf("%.2f mm: %s", mm, f.Text)
				}
			}
		}
	}
}
