package check

import (
	"fmt"
	"math"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Limits of angles as people use them.
const (
	// unusualSplay: sack-back chairs splay up to about 14°, http://www.thewindsorinstitute.com/maats-feather/ ;
	// a sawhorse about 20° (https://www.buildeazy.com/sawhorse-2.php); 30° is beyond both.
	unusualSplay = 30 * measure.Degree
	// fromFloor: an angle this large is more likely meant from the floor or the end.
	fromFloor = 45 * measure.Degree
	// steepSlope and flatSlope: the working range is 7° to 11.5°, https://www.woodworkingarchive.biz/custom-woodworking/layout.html ;
	// a jig of 14° and a taste for 1:5 lie just outside and are let pass.
	steepSlope = 15 * measure.Degree
	flatSlope  = 4 * measure.Degree
)

const (
	splaySource   = "http://www.thewindsorinstitute.com/maats-feather/ (14°) and https://www.buildeazy.com/sawhorse-2.php (20°)"
	meaningSource = "common practice: splay is given from plumb, slope from the grain"
	slopeSource   = "https://www.woodworkingarchive.biz/custom-woodworking/layout.html (7° to 11 1/2°)"
)

// meanings tells of angles that were probably typed in another meaning than the one read.
func meanings(r *run) {
	for _, s := range splays(r.d) {
		splayMeaning(r, s.path, s.of, s.angle)
	}
	if j := r.d.Corners.Joint; j == form.ThroughDovetail || j == form.HalfBlindDovetail {
		slopeMeaning(r, r.d.Corners.Slope)
	}
}

func splayMeaning(r *run, path, of string, a measure.Angle) {
	size := measure.Angle(math.Abs(a.Radians()))
	f := part.Finding{Figure: a.Degrees(), Unit: "deg", Level: part.Warning, Sizes: []string{path}, Parts: leaningIDs(r)}
	switch {
	case size > fromFloor:
		f.ID, f.Limit, f.Source = "splay-from-floor", fromFloor.Degrees(), meaningSource
		f.Text = sentence("a splay of %s for %s leans that far from plumb; if it was measured from the floor, the splay is %s.",
			deg(a), of, deg(measure.Angle(math.Copysign((90*measure.Degree-size).Radians(), a.Radians()))))
	case size > unusualSplay && !r.walled():
		f.ID, f.Limit, f.Source = "splay-unusual", unusualSplay.Degrees(), splaySource
		f.Text = sentence("a splay of %s for %s is more than stools and benches have, seldom over 20 degrees from plumb; check that it was measured from plumb.", deg(a), of)
	default:
		return
	}
	r.add(f)
}

// topIDs are the boards that are stepped or sat on: a stool's top, the treads of steps.
func topIDs(r *run) []string {
	var out []string
	for _, q := range r.p.Parts {
		if isTop(q) {
			out = append(out, q.ID)
		}
	}
	return out
}

func sideIDs(r *run) []string {
	var out []string
	for _, q := range r.p.Parts {
		if isSide(q) {
			out = append(out, q.ID)
		}
	}
	return out
}

func slopeMeaning(r *run, a measure.Angle) {
	f := part.Finding{Figure: a.Degrees(), Unit: "deg", Level: part.Warning, Sizes: []string{"corners.slope"}, Parts: dovetailedIDs(r)}
	switch {
	case a > fromFloor:
		other := 90*measure.Degree - a
		f.ID, f.Limit, f.Source = "slope-from-end", fromFloor.Degrees(), meaningSource
		f.Text = sentence("a tail slope of %s is measured from the grain; if it was measured from the end, it is %s, which is %s.", deg(a), deg(other), measure.Ratio(other))
	case a > steepSlope:
		f.ID, f.Limit, f.Source = "slope-steep", steepSlope.Degrees(), slopeSource
		f.Text = sentence("a tail slope of %s (%s) is steeper than the trade's 7 to 11 1/2 degrees and leaves short grain at the corners of the tails.", deg(a), measure.Ratio(a))
	case a <= 0:
		f.ID, f.Limit, f.Source = "slope-none", 0, ownGeometry
		f.Text = sentence("a tail slope of %s holds nothing: the tails would be straight or pull themselves out; 1:7 is usual.", deg(a))
	case a < flatSlope:
		f.ID, f.Limit, f.Source = "slope-flat", flatSlope.Degrees(), slopeSource
		f.Text = sentence("a tail slope of %s (%s) hardly holds; the trade uses 7 to 11 1/2 degrees.%s", deg(a), measure.Ratio(a), ratioMeant(a))
	case a < 6*measure.Degree:
		f.ID, f.Limit, f.Source, f.Level = "slope-or-ratio", 6, slopeSource, part.Note
		f.Text = sentence("a tail slope of %s is %s, flatter than the trade's 7 to 11 1/2 degrees.%s", deg(a), measure.Ratio(a), ratioMeant(a))
	default:
		return
	}
	r.add(f)
}

// ratioMeant offers the other reading of a small number: "5" may be 5 degrees or 1 in 5, as in a
// lamp whose shoulders were cut at "5.1 degrees" from a drawing that said 5:1
// (https://woodworkingmasterclasses.com/videos/floor-lamp/floor-lamp-episode-2/).
func ratioMeant(a measure.Angle) string {
	n := a.Degrees()
	if n < 3 {
		return ""
	}
	return fmt.Sprintf(" If 1 in %.3g was meant, type 1:%.3g, which is %s.", n, n, deg(measure.Angle(math.Atan(1/n))))
}
