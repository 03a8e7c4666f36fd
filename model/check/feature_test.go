package check

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// also adds a feature to a design.
func also(f form.Feature) edit {
	return func(d *form.Design) { d.Features = append(d.Features, f) }
}

func hole(on string, x, y, diameter measure.Length) edit {
	return also(form.Feature{On: on, Kind: "hole", X: x, Y: y, Diameter: diameter})
}

func arch(width, rise measure.Length) edit {
	return func(d *form.Design) { d.Features[0].Width, d.Features[0].Rise = width, rise }
}

func handHole(length measure.Length) edit {
	return func(d *form.Design) { d.Features[1].Length = length }
}

func TestOpeningFindings(t *testing.T) {
	faceLength := 440 / math.Cos(6*math.Pi/180)
	baseline := 20 / math.Cos(6*math.Pi/180) // 20 mm of top at the inside angle of 96°
	tried := runTrials(t, map[string]trial{
		"a hole in the arch": {from: sound(), spoil: hole("side", 55, 0, 25), mend: hole("side", 68, 0, 25), id: "openings-meet",
			level: part.Stop, figure: -2.5, limit: 0, says: "the hole in the side"},
		"a hole close over the arch": {from: sound(), spoil: hole("side", 67, 0, 25), mend: hole("side", 67.5, 0, 25), id: "openings-near",
			level: part.Warning, figure: 9.5, limit: 10, says: "leaves only 9.5 mm of wood"},
		"a hole in the joint": {from: sound(), spoil: hole("side", 420, 0, 25), mend: hole("side", 399.5, 0, 25), id: "opening-in-joint",
			level: part.Stop, figure: faceLength - 420 - 12.5 - baseline, limit: 0, says: "runs 10.2 mm into the joint with the top; x of 399.5 mm leaves 10.0 mm"},
		"a hole just under the joint": {from: sound(), spoil: hole("side", 400, 0, 25), mend: hole("side", 399.5, 0, 25), id: "opening-near-joint",
			level: part.Warning, figure: faceLength - 400 - 12.5 - baseline, limit: 10, says: "diameter"},
		"a hole over the back edge": {from: sound(), spoil: hole("side", 200, 150, 25), mend: hole("side", 200, 100, 25), id: "opening-over-edge",
			level: part.Stop, figure: unlooked, limit: 0, says: "over the back edge"},
		"a hole over the front edge": {from: sound(), spoil: hole("side", 200, -150, 25), mend: hole("side", 200, -100, 25), id: "opening-over-edge",
			level: part.Stop, figure: unlooked, limit: 0, says: "over the front edge"},
		"a hole near the edge of one side": {from: sound(), spoil: hole("side-left", 200, 135, 25), mend: hole("side-left", 200, 130, 25), id: "opening-near-edge",
			level: part.Warning, figure: unlooked, limit: 10, says: "the hole in the left side"},
		// On the upper face the sides' inner planes lie 20/cos 6° in from its ends.
		"a hand hole into the joints": {from: sound(), spoil: handHole(380), mend: handHole(359), id: "opening-in-joint",
			level: part.Stop, figure: 210 - baseline - 190, limit: 0, says: "a length of 359.5 mm or less"},
		"an arch that leaves thin feet": {from: sound(), spoil: arch(330, 45), mend: arch(320, 45), id: "opening-near-edge",
			level: part.Warning, figure: unlooked, limit: 10, says: "a width of"},
		"an arch into a stretcher": {from: sound(), spoil: stretcher(func(s *form.Stretcher) { s.BelowTop = 330 }), mend: stretcher(func(s *form.Stretcher) { s.BelowTop = 310 }),
			id: "opening-in-stretcher", level: part.Stop, figure: unlooked, limit: 0, says: "the arch in the side runs"},
		"a hand hole over a stretcher": {from: sound(), spoil: stretcher(func(s *form.Stretcher) { s.BelowTop = 0 }), mend: stretcher(func(s *form.Stretcher) { s.BelowTop = 40 }),
			id: "hand-hole-over-stretcher", level: part.Warning, figure: 0, limit: 40, says: "40.0 mm below the top or more, or 24.0 mm to one side"},
		"a stretcher to one side of the hand hole": {from: sound(), spoil: stretcher(func(s *form.Stretcher) { s.BelowTop, s.Across = 39, 20 }), mend: stretcher(func(s *form.Stretcher) { s.BelowTop, s.Across = 39, 24 }),
			id: "hand-hole-over-stretcher", level: part.Warning, figure: 39, limit: 40, says: "to one side"},
		"a round-over that meets its neighbour": {from: sound(), spoil: func(d *form.Design) { d.Features[2].Radius = 11 }, mend: func(d *form.Design) { d.Features[2].Radius = 10 },
			id: "round-over-too-large", level: part.Warning, figure: 11, limit: 10, says: "10.0 mm is the most"},
		"a hole in a housing": {from: soundHoused(), spoil: hole("top", 200, 60, 20), mend: hole("top", 170, 60, 20), id: "opening-in-joint",
			level: part.Stop, figure: unlooked, limit: 0, says: "into the joint with the side"},
	})
	if tried < 15 {
		t.Errorf("only %d proposals were tried", tried)
	}
}

func TestStretcherFindings(t *testing.T) {
	second := func(below, across measure.Length) edit {
		return func(d *form.Design) {
			s := d.Stretchers[0]
			s.BelowTop, s.Across, s.Screws = below, across, nil
			d.Stretchers = append(d.Stretchers, s)
		}
	}
	runTrials(t, map[string]trial{
		"two stretchers in one place": {from: sound(), spoil: second(170, 5), mend: second(180, 5), id: "stretchers-meet",
			level: part.Stop, figure: 10, limit: 0, says: "15.0 mm across and 10.0 mm in height"},
		"side by side": {from: sound(), spoil: second(120, 19), mend: second(120, 20), id: "stretchers-meet",
			level: part.Stop, figure: 1, limit: 0, says: "1.0 mm across"},
		"a stretcher past the edge": {from: sound(), spoil: stretcher(func(s *form.Stretcher) { s.Across = 150 }), mend: stretcher(func(s *form.Stretcher) { s.Across = 130 }),
			id: "stretcher-past-edge", level: part.Warning, figure: unlooked, limit: 0, says: "back edge of the side"},
	})
}

// An opening that is told what would clear it is clear once that is done, whatever its place.
func TestWaysOutClear(t *testing.T) {
	solved := 0
	rapid.Check(t, func(t *rapid.T) {
		f := form.Feature{
			On:       rapid.SampledFrom([]string{"top", "side", "side-left", "side-right"}).Draw(t, "on"),
			Kind:     rapid.SampledFrom([]string{"hole", "slot", "hand hole"}).Draw(t, "kind"),
			Diameter: measure.Length(rapid.IntRange(10, 70).Draw(t, "diameter")),
			Length:   measure.Length(rapid.IntRange(60, 160).Draw(t, "length")),
			Width:    measure.Length(rapid.IntRange(15, 40).Draw(t, "width")),
			X:        measure.Length(rapid.IntRange(-200, 430).Draw(t, "x")),
			Y:        measure.Length(rapid.IntRange(-150, 150).Draw(t, "y")),
		}
		if f.Kind == "slot" {
			f.Angle = measureAngle(float64(rapid.IntRange(0, 90).Draw(t, "angle")))
		}
		d := edited(sound(), edgeSplay(float64(rapid.IntRange(-3, 8).Draw(t, "edges"))), also(f))
		r, l, ok := lookAt(d)
		if !ok {
			t.Skip("the form did not build it")
		}
		s, _ := outline(l.feature)
		l.report(s)
		if len(r.found) == 0 {
			return
		}
		for _, key := range featureKeys(f) {
			v, _, ok := l.solve(key)
			if !ok {
				continue
			}
			solved++
			if !strings.Contains(r.found[0].Text, r.mm(v)) {
				t.Fatalf("the finding does not tell %s of %s: %s", key, r.mm(v), r.found[0].Text)
			}
			better := edited(d, func(d *form.Design) { setFeature(&d.Features[len(d.Features)-1], key, v) })
			r2, l2, ok := lookAt(better)
			if !ok {
				t.Fatalf("with %s of %v the form does not build it", key, v)
			}
			s, _ := outline(l2.feature)
			l2.report(s)
			for _, o := range l2.also {
				if gap, _ := o.away(s); gap < l2.need(o)-noise {
					t.Fatalf("with %s of %v it is %.3f mm from %s", key, v, gap, o.name)
				}
			}
			if len(r2.found) > 0 {
				t.Fatalf("%s\nwith %s of %v there is still:%s", r.found[0].Text, key, v, describe(r2.found))
			}
		}
	})
	if solved == 0 {
		t.Error("no opening had a way out; the test shows nothing")
	}
}

// lookAt takes up the last feature of a design on the first board that has it.
func lookAt(d form.Design) (*run, looked, bool) {
	p := form.Build(d)
	r := &run{p: p, d: p.Design, style: p.Design.Style()}
	for _, q := range p.Parts {
		open := r.openings(q)
		for i := range open {
			if open[i].Feature.Index == len(d.Features)-1 {
				return r, lookedAt(r, q, obstaclesOn(r, q), open, i), true
			}
		}
	}
	return r, looked{}, false
}

func setFeature(f *form.Feature, key string, v float64) {
	l := measure.Length(v)
	*map[string]*measure.Length{"diameter": &f.Diameter, "length": &f.Length, "width": &f.Width, "rise": &f.Rise, "x": &f.X, "y": &f.Y}[key] = l
}
