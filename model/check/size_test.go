package check

import (
	"github.com/go-gl/mathgl/mgl64"
	"math"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

func height(mm float64) edit { return func(d *form.Design) { d.Size.Height = measure.Length(mm) } }
func width(mm float64) edit  { return func(d *form.Design) { d.Size.Width = measure.Length(mm) } }

func topThickness(l measure.Length) edit {
	return func(d *form.Design) { d.Boards.Top.Thickness = l }
}

func inches(d *form.Design) {
	d.Units = measure.Imperial
	d.Round = form.Round{To: measure.Inch / 32, Unit: measure.Imperial}
}

func TestSizeFindings(t *testing.T) {
	imperial := edited(sound(), inches)
	runTrials(t, map[string]trial{
		// https://www.finewoodworking.com/forum/trapezoid-planter-please-help: a feet mark beside an inch mark.
		"16 feet beside 12 inches": {from: imperial, spoil: width(16 * 304.8), mend: width(16 * 25.4), id: "size-unlikely",
			level: part.Warning, figure: 16 * 304.8, limit: 3600, says: `it is 16"`},
		"inches in a file in millimetres": {from: sound(), spoil: both(height(17.5), topThickness(0.8), func(d *form.Design) { d.Boards.Side.Thickness = 0.8 }), mend: height(444.5), id: "size-unlikely",
			level: part.Warning, figure: 17.5, limit: 60, says: "it is 444.5 mm"},
		"millimetres in a file in inches": {from: imperial, spoil: width(420 * 25.4), mend: width(420), id: "size-unlikely",
			level: part.Warning, figure: 420 * 25.4, limit: 3600, says: "millimetres were meant"},
		// https://www.popularwoodworking.com/article/should-cut-lists-be-banned/
		"3-5/8 for 5/8": {from: imperial, spoil: topThickness(3.625 * measure.Inch), mend: topThickness(0.625 * measure.Inch), id: "thickness-unlikely",
			level: part.Warning, figure: 92.075, limit: 76.2, says: `5/8"`},
		"three quarters of a millimetre": {from: sound(), spoil: topThickness(0.75), mend: topThickness(6), id: "thickness-unlikely",
			level: part.Warning, figure: 0.75, limit: 6, says: "it is 19"},
		"a stretcher as thick as wide": {from: sound(), spoil: stretcher(func(s *form.Stretcher) { s.Width, s.Thickness = 30, 30 }), mend: stretcher(func(s *form.Stretcher) { s.Width, s.Thickness = 40, 20 }),
			id: "board-thicker-than-half-its-width", level: part.Warning, figure: 30, limit: 15, says: "changed places"},
		// 20 mm × tan 6°
		"an overhang less than the lean": {from: soundHoused(), spoil: overhangOf(2), mend: overhangOf(2.5), id: "overhang-less-than-lean",
			level: part.Stop, figure: 2, limit: 20 * math.Tan(6*math.Pi/180), says: "an overhang of 2.5 mm or more"},
		"a timber that nobody has listed": {from: sound(), spoil: timberOf("wite oak"), mend: timberOf("oak, white"), id: "timber-unknown",
			level: part.Warning, figure: 0, limit: 0, says: "white oak"},
		"no timber": {from: sound(), spoil: timberOf(""), mend: timberOf("teak"), id: "timber-unknown",
			level: part.Warning, figure: 0, limit: 0, says: "No timber is named"},
	})
}

func stretcher(change func(*form.Stretcher)) edit {
	return func(d *form.Design) { change(&d.Stretchers[0]) }
}

func overhangOf(mm float64) edit {
	return func(d *form.Design) { d.Corners.Overhang = measure.Length(mm) }
}

func timberOf(name string) edit { return func(d *form.Design) { d.Timber = name } }

func TestAnglesInBothMeanings(t *testing.T) {
	endSplay := func(degrees float64) edit {
		return func(d *form.Design) { d.Splay.Ends = measureAngle(degrees); d.Size.Height = 220 }
	}
	plain := edited(sound(), func(d *form.Design) { d.Stretchers, d.Features = nil, nil })
	runTrials(t, map[string]trial{
		"84 from the floor":       {from: plain, spoil: endSplay(84), mend: endSplay(6), id: "splay-from-floor", level: part.Warning, figure: 84, limit: 45, says: "6.0°"},
		"-84 from the floor":      {from: plain, spoil: endSplay(-84), mend: endSplay(-6), id: "splay-from-floor", level: part.Warning, figure: -84, limit: 45, says: "-6.0°"},
		"a splay beyond chairs":   {from: plain, spoil: endSplay(31), mend: endSplay(30), id: "splay-unusual", level: part.Warning, figure: 31, limit: 30, says: "from plumb"},
		"82 from the end":         {from: plain, spoil: slope(82), mend: slope(8), id: "slope-from-end", level: part.Warning, figure: 82, limit: 45, says: "8.0°, which is 1:7.1"},
		"a slope for short grain": {from: plain, spoil: both(slope(16), tailCount(5)), mend: both(slope(14.04), tailCount(5)), id: "slope-steep", level: part.Warning, figure: 16, limit: 15, says: "short grain"},
		// https://woodworkingmasterclasses.com/videos/floor-lamp/floor-lamp-episode-2/: 5.1 degrees for 5:1.
		"5.1 degrees for 1 in 5.1": {from: plain, spoil: slope(5.1), mend: slope(7), id: "slope-or-ratio", level: part.Note, figure: 5.1, limit: 6, says: "1:5.1, which is 11.1°"},
		"hardly a slope":           {from: plain, spoil: slope(2), mend: slope(4), id: "slope-flat", level: part.Warning, figure: 2, limit: 4, says: "hardly holds"},
		"a slope the wrong way":    {from: plain, spoil: slope(-8), mend: slope(8), id: "slope-none", level: part.Warning, figure: -8, limit: 0, says: "holds nothing"},
	})
}

func TestSawRange(t *testing.T) {
	wide := edited(sound(), func(d *form.Design) {
		d.Stretchers, d.Features, d.Size.Height = nil, nil, 220
		d.Splay = form.Splay{Ends: 20 * measure.Degree, EdgeCut: form.EdgeSquare}
		d.Corners.TailsOn = "top"
		d.Saw.Depth = 600 // a blade that comes through whatever stands there, so that angles alone count
	})
	tilt := func(most float64) edit { return func(d *form.Design) { d.Saw.MaxTilt = measureAngle(most) } }
	ends := func(a float64) edit { return func(d *form.Design) { d.Splay.Ends = measureAngle(a) } }
	swing := func(most float64) edit { return func(d *form.Design) { d.Saw.MaxSwing = measureAngle(most) } }
	splayed := edited(wide, func(d *form.Design) { d.Splay.Edges = 8 * measure.Degree })
	runTrials(t, map[string]trial{
		"a blade that tilts to 15":          {from: wide, spoil: tilt(15), mend: tilt(20), id: "tilt-out-of-reach", level: part.Warning, figure: 20, limit: 15, says: "stand the board on edge and swing the gauge 20.0°."},
		"each end of the top alike":         {from: wide, spoil: tilt(15), mend: tilt(20), id: "tilt-out-of-reach", level: part.Warning, figure: 20, limit: 15, says: "Each end of the top needs a tilt of 20.0°"},
		"47 degrees on any saw":             {from: wide, spoil: ends(47), mend: ends(45), id: "tilt-out-of-reach", level: part.Warning, figure: 47, limit: 45, says: "swing the gauge 47.0° or stand it upright against a tall fence and tilt the blade 43.0°"},
		"a gauge is not needed for a taper": {from: splayed, spoil: both(swing(1), tilt(10)), mend: both(swing(1), tilt(20)), id: "tilt-out-of-reach", level: part.Warning, figure: 20, limit: 10, says: "tilt"},
	})
	// Without a flat table the stretcher's slanting end is a tilt on edge: 46 is beyond any saw.
	railed := edited(sound(), func(d *form.Design) {
		d.Features, d.Size.Height = nil, 220
		d.Saw.NoFlatTable = true
		d.Stretchers[0].Screws = nil
	})
	runTrials(t, map[string]trial{
		"no table for a stretcher's end": {from: railed, spoil: ends(46), mend: ends(45), id: "no-table-for-cut", level: part.Warning, figure: 46, limit: 45, says: "with the board on edge"},
	})
}

// Wide or thick boards that no set-up gets the blade through, beside those that it just comes through. A top 280
// wide and 20 thick whose ends lean 20° is 20/cos 20° = 21.3 flat.
func TestBladeTooLow(t *testing.T) {
	wide := edited(sound(), func(d *form.Design) {
		d.Stretchers, d.Features, d.Size.Height = nil, nil, 220
		d.Splay = form.Splay{Ends: 20 * measure.Degree, EdgeCut: form.EdgeSquare}
	})
	depth := func(mm measure.Length) edit { return func(d *form.Design) { d.Saw.Depth = mm } }
	runTrials(t, map[string]trial{
		"a blade that does not come through": {from: wide, spoil: depth(21), mend: depth(22), id: "blade-too-low", level: part.Warning, figure: unlooked, limit: 21,
			says: "however the board is put down"},
		"45 and too wide for the edge": {from: wide, spoil: func(d *form.Design) { d.Saw.MaxTilt, d.Saw.Depth = 15*measure.Degree, 22 },
			mend: func(d *form.Design) { d.Saw.MaxTilt, d.Saw.Depth = 20*measure.Degree, 22 }, id: "tilt-out-of-reach", level: part.Warning, figure: 20, limit: 15, says: "lean the board on a wedge of 20.0°."},
	})
}

func TestStanceFindings(t *testing.T) {
	low := edited(soundHoused(), func(d *form.Design) {
		d.Stretchers, d.Features, d.Splay.Ends, d.Splay.Edges = nil, nil, 0, 0
		d.Corners.Screws = nil
	})
	over := func(height, overhang float64) edit {
		return func(d *form.Design) {
			d.Size.Height, d.Corners.Overhang = measure.Length(height), measure.Length(overhang)
		}
	}
	title := func(s string) edit { return func(d *form.Design) { d.Title = s } }
	runTrials(t, map[string]trial{
		// The limits of the rule in closed form: 60 − h/30.
		"a step of 230":  {from: low, spoil: over(230, 52.4), mend: over(230, 52.2), id: "may-tip", level: part.Warning, figure: 52.4, limit: 60 - 230/30., says: "Local rules"},
		"a seat of 450":  {from: low, spoil: over(450, 45.1), mend: over(450, 44.9), id: "may-tip", level: part.Warning, figure: 45.1, limit: 45, says: "tips the piece"},
		"a perch of 600": {from: low, spoil: over(600, 40.1), mend: over(600, 39.9), id: "may-tip", level: part.Warning, figure: 40.1, limit: 40, says: "end of the top"},
		"feet leaning in": {from: low, spoil: both(over(450, 0), edgeSplay(-6)), mend: both(over(450, 0), edgeSplay(-5)), id: "may-tip", level: part.Warning,
			figure: 47.297, limit: 45, says: "front or back edge"},
		"between a step and a seat": {from: sound(), spoil: height(400), mend: height(432), id: "height-between-uses", level: part.Note, figure: 400, limit: 304.8, says: "a seat at a table is"},
		"higher than to stand on":   {from: low, spoil: over(1001, 0), mend: over(812, 0), id: "height-beyond-standing", level: part.Warning, figure: 1001, limit: 1000, says: "Local rules"},
		"a child's step":            {from: sound(), spoil: title("Step for a child"), mend: title("Chilled step"), id: "for-a-child", level: part.Note, figure: 0, limit: 0, says: "local rules"},
	})
}

// A saw that stops at 45° is asked for 57°: the board turned end-on to the fence is cut at 33°.
// a workshop weblog on trigonometry.
func TestSwingOutOfReach(t *testing.T) {
	for _, c := range []struct {
		swing, most float64
		says        string
	}{{57, 45, "set 33.0°"}, {61, 0, "set 29.0°"}, {57, 30, "by hand"}, {60, 0, ""}, {45, 45, ""}} {
		p := &form.Piece{Parts: []*part.Part{{ID: "top", Blank: part.Box{Length: 400, Width: 100, Thickness: 20},
			Cuts: []part.Cut{{ID: "left-end", Kind: part.Crosscut, Swing: measureAngle(c.swing), Normal: mgl64.Rotate3DZ(measureAngle(c.swing).Radians()).Col(0)}}}}}
		p.Design.Saw.MaxSwing = measureAngle(c.most)
		r := &run{p: p, d: p.Design}
		sawRange(r)
		if c.says == "" {
			if len(r.found) > 0 {
				t.Errorf("%v of %v: %s", c.swing, c.most, describe(r.found))
			}
			continue
		}
		if len(r.found) != 1 || r.found[0].ID != "swing-out-of-reach" || !strings.Contains(r.found[0].Text, c.says) {
			t.Errorf("%v of %v: want %q, got%s", c.swing, c.most, c.says, describe(r.found))
		}
	}
}
