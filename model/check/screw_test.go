package check

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

func cornerScrews(change func(*form.Screws)) edit {
	return func(d *form.Design) { change(d.Corners.Screws) }
}

func railScrews(change func(*form.Screws)) edit {
	return func(d *form.Design) { change(d.Stretchers[0].Screws) }
}

func shoulderOf(l measure.Length) edit { return func(d *form.Design) { d.Corners.Shoulder = &l } }

func screwLength(l measure.Length) func(*form.Screws) { return func(s *form.Screws) { s.Length = l } }

func TestScrewFindings(t *testing.T) {
	number8 := (0.060 + 0.013*8) * 25.4 // finescrews.com's formula: 0.164 in
	underTop := edited(soundHoused(), stretcher(func(s *form.Stretcher) { s.BelowTop = 0 }))
	// A narrow stool with plumb sides: its stretcher is 150 − 2·20 = 110 mm long.
	narrow := edited(sound(), func(d *form.Design) {
		d.Size.Width, d.Splay.Ends, d.Features = 150, 0, nil
	})
	tried := runTrials(t, map[string]trial{
		"the middle screw of three meets the stretcher's": {from: underTop, spoil: cornerScrews(func(s *form.Screws) { s.Count = 3 }), mend: cornerScrews(func(s *form.Screws) { s.Count = 2 }),
			id: "screws-meet", level: part.Stop, figure: unlooked, limit: 0, says: "in the side"},
		"screws from both ends meet in a short stretcher": {from: narrow, spoil: railScrews(screwLength(70)), mend: railScrews(screwLength(60)),
			id: "screws-meet", level: part.Stop, figure: unlooked, limit: 0, says: "in stretcher 1"},
		"a screw comes out of a short stretcher": {from: narrow, spoil: railScrews(screwLength(130)), mend: railScrews(screwLength(60)),
			id: "screw-comes-out", level: part.Stop, figure: 110 - (130 - 12), limit: 0, says: "comes out 8.0 mm beyond the"},
		"a screw ends just under the far end": {from: narrow, spoil: railScrews(screwLength(120)), mend: railScrews(screwLength(119)),
			id: "screw-near-far-side", level: part.Warning, figure: 2, limit: 3, says: "a screw of 119.0 mm or less"},
		"a screw near the edge of a thin stretcher": {from: sound(), spoil: stretcher(func(s *form.Stretcher) { s.Thickness = 12 }), mend: stretcher(func(s *form.Stretcher) { s.Thickness = 13 }),
			id: "screw-near-edge", level: part.Warning, figure: 6, limit: 1.5 * number8, says: "face of stretcher 1"},
		"a counterbore over the edge": {from: soundHoused(), spoil: cornerScrews(func(s *form.Screws) { s.FromEnd = 3 }), mend: cornerScrews(func(s *form.Screws) { s.FromEnd = 10 }),
			id: "screw-over-edge", level: part.Stop, figure: unlooked, limit: unlooked, says: "the counterbore of a screw"},
		"a row too close": {from: soundHoused(), spoil: cornerScrews(func(s *form.Screws) { s.Count = 14 }), mend: cornerScrews(func(s *form.Screws) { s.Count = 12 }),
			id: "screws-near-each-other", level: part.Warning, figure: 200 / 13., limit: 4 * number8, says: "splits between them"},
		"a screw with little in the second board": {from: sound(), spoil: railScrews(screwLength(20)), mend: railScrews(screwLength(25)),
			id: "screw-holds-little", level: part.Warning, figure: unlooked, limit: 10, says: "half of it"},
		"a deep counterbore": {from: sound(), spoil: railScrews(func(s *form.Screws) { s.Counterbore = 15 }), mend: railScrews(func(s *form.Screws) { s.Counterbore = 14 }),
			id: "counterbore-deep", level: part.Warning, figure: 20/math.Cos(6*math.Pi/180) - 15, limit: 6, says: "a counterbore of 14.0 mm or less"},
		// a number 8 counterbore of 3/8 in at 15°: 3/16 in × tan 15°
		"a counterbore whose floor comes out": {from: edited(sound(), func(d *form.Design) { d.Splay.Ends = 15 * measure.Degree }),
			spoil: railScrews(func(s *form.Screws) { s.Counterbore = 1 }), mend: railScrews(func(s *form.Screws) { s.Counterbore = 2 }),
			id: "counterbore-shallow", level: part.Stop, figure: 1, limit: 3. / 16 * 25.4 * math.Tan(15*math.Pi/180), says: "leans 15.0°"},
		"a screw of the top in a stretcher's housing": {from: edited(underTop, stretcher(func(s *form.Stretcher) { s.Joint, s.Depth, s.Screws, s.Thickness = form.Housing, 12, nil, 30 })),
			spoil: both(cornerScrews(func(s *form.Screws) { s.Count = 3 }), stretcher(func(s *form.Stretcher) { s.BelowTop = 0 })),
			mend:  both(cornerScrews(func(s *form.Screws) { s.Count = 2 }), stretcher(func(s *form.Stretcher) { s.BelowTop = 0 })),
			id:    "screw-in-housing", level: part.Stop, figure: unlooked, limit: 0, says: "the housing of stretcher 1"},
		// 20 / cos 6° along the screw, less 15 / cos 6° of housing
		"a housing that leaves the heads little": {from: edited(sound(), stretcher(func(s *form.Stretcher) { s.Joint, s.Depth = form.Housing, 6 }), railScrews(func(s *form.Screws) { s.Counterbore, s.Plug = 0, false })),
			spoil: stretcher(func(s *form.Stretcher) { s.Depth = 15 }), mend: stretcher(func(s *form.Stretcher) { s.Depth = 14 }),
			id: "housing-deep-for-screw", level: part.Warning, figure: 5 / math.Cos(6*math.Pi/180), limit: 6, says: "a housing of 14.0 mm or less"},
		"a screw among the pins": {from: edited(sound(), stretcher(func(s *form.Stretcher) { s.BelowTop = 0 })),
			spoil: railScrews(func(s *form.Screws) { s.FromEnd = 2 }), mend: railScrews(func(s *form.Screws) { s.FromEnd = 15 }),
			id: "screw-in-joint", level: part.Stop, figure: unlooked, limit: 0, says: "into the joint with the top; move it"},
		"a screw beside the pins": {from: edited(sound(), stretcher(func(s *form.Stretcher) { s.BelowTop = 0 })),
			spoil: railScrews(func(s *form.Screws) { s.FromEnd = 8 }), mend: railScrews(func(s *form.Screws) { s.FromEnd = 15 }),
			id: "screw-near-joint", level: part.Warning, figure: unlooked, limit: number8, says: "from the joint with the top"},
		// 1.5 × 0.164 in to either face of the tongue of a side of 20
		"a screw in a thin tongue": {from: soundHoused(), spoil: shoulderOf(8), mend: shoulderOf(7),
			id: "screw-in-thin-tongue", level: part.Warning, figure: 6, limit: 1.5 * number8, says: "the tongue of the side is 12.0 mm thick"},
		"a hole where a screw runs": {from: soundHoused(), spoil: hole("side", 392, 100, 25), mend: hole("side", 392, 60, 25), id: "screw-in-opening",
			level: part.Stop, figure: unlooked, limit: 0, says: "the hole in the side"},
	})
	if tried < 5 {
		t.Errorf("only %d proposals were tried", tried)
	}
}

// O52 of the shop's open cases: a counterbore of 3/8 in and a screw of 1-1/2 in reach 1-7/8 in,
// 3/8 in more than two boards of 3/4 in are thick (http://woodworkingtips.com/etips/etip052600ws.html).
func TestScrewThroughTwoThinBoards(t *testing.T) {
	const in = 25.4
	flat := func(id string, z float64, bores ...part.Bore) *part.Part {
		return &part.Part{ID: id, Place: mgl64.Translate3D(0, 0, z), Blank: part.Box{Length: 300, Width: 300, Thickness: 0.75 * in}, Bores: bores,
			Cuts: []part.Cut{{ID: "left-end", Normal: mgl64.Vec3{-1, 0, 0}, Offset: 150}, {ID: "right-end", Normal: mgl64.Vec3{1, 0, 0}, Offset: 150}}}
	}
	down := mgl64.Vec3{0, 0, -1}
	pieceWith := func(length measure.Length) *form.Piece {
		pilot := part.Bore{Purpose: "pilot", Axis: down, Diameter: 2.8, Face: "outer", Depth: length + 0.375*in - 0.75*in}
		p := &form.Piece{Parts: []*part.Part{
			flat("top", 0, part.Bore{Purpose: "clearance", Axis: down, Diameter: 4.4, Depth: 0.75 * in}, part.Bore{Purpose: "counterbore", Axis: down, Diameter: 9.5, Depth: 0.375 * in}),
			flat("side-left", -0.75*in, pilot),
		}}
		p.Design.Corners.Screws = &form.Screws{Gauge: 8, Length: length, Count: 1, Counterbore: 0.375 * in}
		return p
	}
	for _, c := range []struct {
		length measure.Length
		id     string
		out    float64
	}{{1.5 * in, "screw-comes-out", -0.375 * in}, {1 * in, "", 0}} {
		p := pieceWith(c.length)
		r := &run{p: p, d: p.Design}
		screws(r)
		if c.id == "" {
			if len(r.found) != 0 {
				t.Errorf("%g in: %s", c.length.Inches(), describe(r.found))
			}
			continue
		}
		if f := withID(r.found, c.id); len(f) != 1 || math.Abs(f[0].Figure-c.out) > 1e-9 {
			t.Errorf("%g in: want it out by %g mm, got%s", c.length.Inches(), -c.out, describe(r.found))
		}
	}
}

// The distance of two segments is no more than that of any two of their points, and as near as
// the points are dense.
func TestSegmentsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(label string) mgl64.Vec3 {
			c := func(k string) float64 { return float64(rapid.IntRange(-20, 20).Draw(t, label+k)) }
			return mgl64.Vec3{c("x"), c("y"), c("z")}
		}
		a, b := segment{draw("a"), draw("b")}, segment{draw("c"), draw("d")}
		got, least := a.nearest(b), math.Inf(1)
		const n = 60
		for i := range n + 1 {
			for j := range n + 1 {
				p := a.from.Add(a.to.Sub(a.from).Mul(float64(i) / n))
				q := b.from.Add(b.to.Sub(b.from).Mul(float64(j) / n))
				least = math.Min(least, p.Sub(q).Len())
			}
		}
		cell := (a.to.Sub(a.from).Len() + b.to.Sub(b.from).Len()) / n
		if got > least+1e-9 || got < least-cell {
			t.Fatalf("%.6f, the nearest of the points %.6f", got, least)
		}
	})
}
