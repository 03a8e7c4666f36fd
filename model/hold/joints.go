package hold

import (
	"fmt"
	"math"
	"slices"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/part"
)

const (
	// fingerShare of its length that a finger should be wide: thinner ones break off at their root when the joint is
	// knocked together (common practice).
	fingerShare = 0.25
	// steepTail is the steepest slope of tails in use: 11 1/2° off square. Steeper ones leave corners that hold on by
	// short grain.
	steepTail = 11.5 * math.Pi / 180
	// told is the slope above which package check warns by itself.
	toldSlope = 15 * math.Pi / 180

	fingerSource = "common practice: a finger is a quarter as wide as it is long or more, or it breaks off at its root when the joint is knocked together"
	tailSource   = "tails slope by 7° to 11 1/2° (https://www.woodworkingarchive.biz/custom-woodworking/layout.html); limit: the corner that 11 1/2° leaves"
	beyondSource = "common practice: beyond a groove across the grain there is as much wood along the grain as the groove is deep, or it shears off"
	underSource  = "common practice: the wood under a groove is as high as the groove is deep, or it splits off along the grain under a load"
)

// joinery looks at what joints leave of short grain: the corners of tails, thin fingers, and the wood beyond housings
// and under the groove of a bottom. Pins run along their board's grain with cheeks that hold it, however the board
// leans, so they have none; half pins at an edge that runs out are looked at in package check.
func (r *reckoning) joinery() {
	for _, j := range r.p.Joints {
		switch {
		case j.Kind == form.FingerJoint:
			r.fingers(j)
		case len(j.Tails) > 0:
			r.tailCorners(j)
		case j.Kind == form.Housing || j.Kind == form.GrooveTongue:
			r.beyondHousing(j)
		}
	}
	r.underGroove()
}

// fingers is the narrowest finger of a corner. Its length is that of the baseline farther from the end.
func (r *reckoning) fingers(j joint.Joint) {
	narrow := math.Inf(1)
	for _, spans := range [][]joint.Span{j.Tails, j.Pins} {
		for _, s := range spans {
			narrow = min(narrow, s.Width().MM())
		}
	}
	long := max(j.Baseline.Outer, j.PinBaseline.Outer).MM()
	r.add(Figure{ID: "fingers-thin", What: "width of the narrowest finger of the corners", Value: narrow, Limit: fingerShare * long, Least: true, Unit: "mm",
		Formula: "width of the finger; at least a quarter of its length, which is the mating board's thickness / sin(corner)", Source: fingerSource,
		Parts: []string{j.TailBoard, j.PinBoard}, Sizes: []string{"corners.tails", "corners.tail"},
		Advice: fmt.Sprintf("fewer fingers, each %s wide or more", r.up(fingerShare*long)), Level: part.Warning})
}

// tailCorners is the wood of a tail's two corners that goes past its neck: fibres that run out of its sloping side and
// are joined to the tail across the grain alone. Of joints whose tails slope alike it is told for the longest tails.
func (r *reckoning) tailCorners(j joint.Joint) {
	slope, long := j.Slope.Radians(), j.Baseline.Outer.MM()
	f := Figure{ID: "tail-corners-short-grain", What: "short grain at each corner of the tails, past their necks", Value: long * math.Tan(slope), Limit: long * math.Tan(steepTail), Unit: "mm",
		Formula: "length of the tail · tan(slope)", Source: tailSource, Parts: []string{j.TailBoard, j.PinBoard}, Sizes: []string{"corners.slope"},
		Advice: "tails that slope by 1:5 or less, 1:6 in softwood and 1:8 in hardwood", Level: part.Note, Told: slope > toldSlope}
	n := slices.IndexFunc(r.out, func(g Figure) bool { return g.ID == f.ID && math.Abs(g.Value*f.Limit-f.Value*g.Limit) < noise })
	if n < 0 {
		r.add(f)
		return
	}
	g := &r.out[n]
	g.Value, g.Limit, g.Parts = max(g.Value, f.Value), max(g.Limit, f.Limit), join(g.Parts, f.Parts)
}

// beyondHousing is the wood along the grain between a housing and the free end of the board that it crosses. A housing
// that is open to the end leaves none, and nothing that could break.
func (r *reckoning) beyondHousing(j joint.Joint) {
	over, under := r.p.Part(j.TailBoard), r.p.Part(j.PinBoard)
	k := r.d.Corners
	if over == nil || under == nil || j.Kind != k.Joint || !cornerBoard(under) {
		return
	}
	left := k.Overhang.MM()
	if form.OnSides(r.p.Form) && left > 0 { // taken at the upper face; the side leans out below it
		left -= over.Blank.Thickness.MM() * math.Tan(r.d.Splay.Ends.Radians())
	}
	if k.Shoulder != nil {
		left += k.Shoulder.MM() / math.Abs(under.Place.Mat3().Col(2).Dot(over.Place.Mat3().Col(0)))
	}
	if left <= noise {
		return
	}
	r.add(Figure{ID: "short-grain-beyond-housing", What: fmt.Sprintf("wood along the grain of the %s beyond the housing, to its end", partName(over)), Value: left, Limit: j.Depth.MM(), Least: true, Unit: "mm",
		Formula: "overhang (a stool's: less top · tan(splay)), and the shoulder of the board that is let in; at least the housing's depth", Source: beyondSource,
		Parts: []string{over.ID, under.ID}, Sizes: []string{"corners.overhang", "corners.shoulder", "corners.depth"},
		Advice: fmt.Sprintf("%s more of it, or a shallower housing", r.up(max(j.Depth.MM()-left, 0))), Level: part.Warning})
}

// cornerBoard tells whether a board stands in the corners of the piece: a side or a wall.
func cornerBoard(q *part.Part) bool {
	return isWall(q) || len(q.ID) > 5 && q.ID[:5] == "side-"
}

// underGroove is the wood of the walls under the groove of the bottom.
func (r *reckoning) underGroove() {
	u := r.d.Bottom
	if u == nil || u.Joint != form.InGroove || u.Depth == nil || r.p.Part("bottom") == nil {
		return
	}
	var walls []string
	for _, q := range r.p.Parts {
		if isWall(q) {
			walls = append(walls, q.ID)
		}
	}
	r.add(Figure{ID: "wood-under-groove", What: "wood of the walls under the groove of the bottom", Value: u.Up.MM(), Limit: u.Depth.MM(), Least: true, Unit: "mm",
		Formula: "height of the groove above the floor; at least its depth", Source: underSource, Parts: walls, Sizes: []string{"bottom.up", "bottom.depth"},
		Advice: fmt.Sprintf("a groove %s up, or a shallower one", r.up(u.Depth.MM())), Level: part.Warning})
}
