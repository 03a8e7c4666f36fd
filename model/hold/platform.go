package hold

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
)

// The platform test of EN 14183 step stools, as read in the extract of a certificate,
// https://www.smiletools.cn/testing/step-stool-testing/ : 2600 N for a minute on 100 mm × 100 mm, in the middle and at a front
// corner. In the middle the third of the wood's strength that bending is held to asks for more from 90 kg on. How much of the
// bend may last is not reckoned: no table says when wood begins to keep one.
const (
	platformLoad = 2600.0 // N
	platformPad  = 100.0  // mm, each way
	platformHigh = 1000.0 // mm, the most that the standard provides for standing on

	platformSource = "EN 14183 platform test: 2600 N on 100 mm × 100 mm, in the extract of a certificate, https://www.smiletools.cn/testing/step-stool-testing/"
)

// platformCorner is the load that tips the piece where the platform test has it at a corner of the top. A piece that
// stands wherever it is loaded there has no such figure.
func (r *reckoning) platformCorner(back []float64) {
	if r.seat.Height.MM() > platformHigh {
		return
	}
	all := corners(r.top)
	low, high := all[0], all[0]
	for _, c := range all {
		for k := range 2 {
			low[k], high[k] = min(low[k], c[k]), max(high[k], c[k])
		}
	}
	least := math.Inf(1)
	for _, spot := range []mgl64.Vec2{{low[0] + platformPad/2, low[1] + platformPad/2}, {high[0] - platformPad/2, low[1] + platformPad/2},
		{low[0] + platformPad/2, high[1] - platformPad/2}, {high[0] - platformPad/2, high[1] - platformPad/2}} {
		for i, in := range Inside(r.weight.feet, spot) {
			least = min(least, LiftsAt(-in, r.weight.mass*gravity, back[i]))
		}
	}
	if math.IsInf(least, 1) {
		return
	}
	r.add(Figure{ID: "platform-tips", What: fmt.Sprintf("load on 100 mm × 100 mm at a corner of %s that tips the piece, as the platform of a step stool is tested", seatName(r.top)),
		Value: max(least, 0), Limit: platformLoad, Least: true, Unit: "N", Formula: "own weight · its middle inside the foot line / middle of the pad outside the foot line", Source: platformSource, Parts: []string{r.top.ID},
		Sizes: append(r.footCuts(), "corners.overhang", "corners.overhang-edges", "splay.ends", "splay.edges", r.seat.Path), Advice: feetOut(max(r.d.Corners.Overhang, r.d.Corners.OverhangEdges)), Level: part.Note})
}
