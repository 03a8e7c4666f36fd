package check

import (
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

var unlooked = math.NaN() // a figure that the row does not look at

func pin(mm float64) edit {
	return func(d *form.Design) { v := measure.Length(mm); d.Corners.Pin = &v }
}

func halfPin(mm float64) edit {
	return func(d *form.Design) { v := measure.Length(mm); d.Corners.HalfPin = &v }
}

func tailCount(n int) edit { return func(d *form.Design) { d.Corners.Tails = &n } }

func slope(degrees float64) edit {
	return func(d *form.Design) { d.Corners.Slope = measureAngle(degrees) }
}

func edgeSplay(degrees float64) edit {
	return func(d *form.Design) { d.Splay.Edges = measureAngle(degrees) }
}

func both(changes ...edit) edit {
	return func(d *form.Design) {
		for _, c := range changes {
			c(d)
		}
	}
}

func TestDovetailFindings(t *testing.T) {
	tailsOnSide := edited(sound(), func(d *form.Design) { d.Corners.TailsOn = "side" })
	tried := runTrials(t, map[string]trial{
		"a pin no chisel goes beside": {from: sound(), spoil: pin(2.5), mend: pin(3), id: "pin-narrower-than-chisel",
			level: part.Warning, figure: 2.5, limit: 3, says: "a pin of 3.5 mm or more"},
		"a pin between chisel and kerf": {from: sound(), spoil: pin(3.1), mend: pin(3.2), id: "pin-narrower-than-kerf",
			level: part.Warning, figure: 3.1, limit: 3.2, says: "3.2 mm"},
		"a thin kerf lets a 3 mm pin pass": {from: sound(), spoil: pin(2.9), mend: both(pin(3), func(d *form.Design) { d.Saw.Kerf = 0.6 }),
			id: "pin-narrower-than-chisel", level: part.Warning, figure: 2.9, limit: 3, says: "chisel"},
		"a half pin that breaks": {from: edited(sound(), edgeSplay(0)), spoil: halfPin(5), mend: halfPin(6), id: "half-pin-fragile",
			level: part.Warning, figure: 5, limit: 6, says: "a half pin of 6.0 mm or more"},
		"wide tails": {from: sound(), spoil: tailCount(4), mend: tailCount(6), id: "tail-wide",
			level: part.Note, figure: 56.5, limit: 40, says: "6 tails of 34.3 mm would be nearer"},
		"one wide tail": {from: sound(), spoil: tailCount(1), mend: tailCount(6), id: "tail-wide",
			level: part.Note, figure: 280 - 24, limit: 40, says: "6 tails of 34.3 mm would be nearer"},
		"tails narrower than their pins": {from: sound(), spoil: both(tailCount(6), pin(30)), mend: both(tailCount(6), pin(23)), id: "tail-narrower-than-pin",
			level: part.Note, figure: (280 - 24 - 5*30) / 6., limit: 30, says: "at least as wide"},
		// Tails of (280 − 24 − 16·10)/17 = 5.647 mm lose 2·20.1102·tan 6° = 4.2273 mm on the way in.
		"no chisel at the baseline": {from: edited(sound(), slope(6)), spoil: tailCount(17), mend: tailCount(14), id: "tail-narrow-at-root",
			level: part.Warning, figure: 5.647 - 4.2273, limit: 3, says: "baseline"},
		"a taper takes the half pin": {from: edited(sound(), halfPin(8)), spoil: edgeSplay(-10), mend: edgeSplay(-2), id: "taper-into-joint",
			level: part.Warning, figure: unlooked, limit: 6, says: "tapers into the joint"},
		"a taper takes the outer finger": {from: edited(sound(), fingers(16)), spoil: edgeSplay(-10), mend: edgeSplay(-2), id: "taper-into-joint",
			level: part.Warning, figure: unlooked, limit: 6, says: "the outer finger's"},
		"a taper runs through the half pin": {from: edited(tailsOnSide, halfPin(3), height(220), topThickness(30)), spoil: edgeSplay(-22), mend: both(edgeSplay(0), halfPin(6)), id: "taper-into-joint",
			level: part.Stop, figure: unlooked, limit: 0, says: "into the tail beside it"},
	})
	if tried < 7 {
		t.Errorf("only %d proposals were tried", tried)
	}
}

func fingers(count int) edit {
	return func(d *form.Design) { d.Corners = form.Corners{Joint: form.FingerJoint, Tails: &count} }
}
