package part

import (
	"splaywright/model/measure"
)

// ScrewHoles are the holes that a wood screw asks for.
type ScrewHoles struct {
	Pilot       measure.Length // in the board that takes the thread
	Clearance   measure.Length // in the board that the shank goes through
	Counterbore measure.Length // for the head, or for the plug that covers it
}

// screwRow is one gauge of wood screw; diameters in 1/64 in unless decimal inches are given.
type screwRow struct {
	gauge              int
	hard, soft         measure.Length // pilot holes
	clearance, counter measure.Length
	plug               measure.Length
}

const (
	sixtyFourth = measure.Inch / 64
	thousandth  = measure.Inch / 1000
)

// screwRows: pilot, clearance and counterbore read in
// http://glenlarchive.com/weblettr/webletters-8/wl60-bb-plate6b.html, where the pilots of nos. 6, 12
// and 14 in hardwood are drill-gauge numbers (44 = 0.086 in, 25 = 0.1495 in, 14 = 0.182 in). Other
// charts differ by 1/64 in either way. Plugs: cutters come in 1/4, 3/8 and 1/2 in
// (https://www.jlconline.com/how-to/interiors/plugging-fastener-holes_o), 3/8 in for nos. 6 to 10 and
// 1/2 in for nos. 12 and 14 by common practice. No. 4 is not in the chart: its pilots are 90 % and
// 70 % of a root of 2/3 shank (http://cwc.ca/wood-products/connections/screws/; shank 0.112 in) to the
// nearest 1/64 in, clearance and counterbore the next 1/64 and 1/16 in over shank and head.
var screwRows = []screwRow{
	{4, 4 * sixtyFourth, 3 * sixtyFourth, 8 * sixtyFourth, 16 * sixtyFourth, 16 * sixtyFourth},
	{6, 86 * thousandth, 4 * sixtyFourth, 9 * sixtyFourth, 20 * sixtyFourth, 24 * sixtyFourth},
	{8, 7 * sixtyFourth, 5 * sixtyFourth, 11 * sixtyFourth, 24 * sixtyFourth, 24 * sixtyFourth},
	{10, 8 * sixtyFourth, 6 * sixtyFourth, 12 * sixtyFourth, 24 * sixtyFourth, 24 * sixtyFourth},
	{12, 149.5 * thousandth, 7 * sixtyFourth, 14 * sixtyFourth, 28 * sixtyFourth, 32 * sixtyFourth},
	{14, 182 * thousandth, 7 * sixtyFourth, 16 * sixtyFourth, 32 * sixtyFourth, 32 * sixtyFourth},
}

// ScrewSource is where the holes of a screw's number were read.
const ScrewSource = "http://glenlarchive.com/weblettr/webletters-8/wl60-bb-plate6b.html"

// ScrewHolesFor gives the holes of a wood screw by its number, 4 to 14; ok is false outside. The
// pilot is wider in hardwood. An odd number takes the pilot of the number below and the other
// holes of the number above. A plugged counterbore is as wide as its plug.
func ScrewHolesFor(gauge int, hardwood, plug bool) (h ScrewHoles, ok bool) {
	first, last := screwRows[0].gauge, screwRows[len(screwRows)-1].gauge
	if gauge < first || gauge > last {
		return ScrewHoles{}, false
	}
	below, above := screwRows[(gauge-first)/2], screwRows[(gauge-first+1)/2]
	h = ScrewHoles{Pilot: below.soft, Clearance: above.clearance, Counterbore: above.counter}
	if hardwood {
		h.Pilot = below.hard
	}
	if plug {
		h.Counterbore = above.plug
	}
	return h, true
}

// flatHeads are the largest flat heads of production screws, no. 4 first, 1/1000 in, http://www.ary.com/Info/WoodScrewSizes.html
// (nos. 12 and 14 from a reprint of the same table).
var flatHeads = []measure.Length{225, 279, 332, 385, 438, 507}

// LargestHead is how wide the flat head of a wood screw may be by its number, 4 to 14, an odd one as the number above; ok is false
// outside.
func LargestHead(gauge int) (width measure.Length, ok bool) {
	first := screwRows[0].gauge
	if gauge < first || gauge > screwRows[len(screwRows)-1].gauge {
		return 0, false
	}
	return flatHeads[(gauge-first+1)/2] * thousandth, true
}
