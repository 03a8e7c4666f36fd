package table

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// handPiece is a low step made by hand, without the derivation: a top and two sides that lean
// 6°, 420 × 250 × 260 mm, 20 mm thick, four tails a corner. Figures of its joint are those of the
// worked example, computed apart with a general-purpose solid library.
func handPiece() *form.Piece {
	lean := 6 * measure.Degree
	p := &form.Piece{Title: "Hand-made step", Form: "stool"}
	p.Design = form.Design{
		Splay:     form.Splay{Ends: lean},
		Allowance: form.Allowance{Length: 25, Width: 6, Thickness: 3},
		Saw:       form.Saw{Step: 0.1 * measure.Degree},
	}
	p.Overall = form.Overall{Height: 260, WidthTop: 420, WidthFloor: 474.654, DepthTop: 250, DepthFloor: 250, Mass: 3.51}
	p.Parts = []*part.Part{handTop(lean), handSide("left", lean), handSide("right", lean)}
	p.Joints = []joint.Joint{handJoint("left"), handJoint("right")}
	return p
}

func handBox(length, width, thickness measure.Length) part.Box {
	return part.Box{Length: length, Width: width, Thickness: thickness}
}

func handTop(lean measure.Angle) *part.Part {
	q := &part.Part{
		ID: "top", Name: "Top", Timber: "white oak", Mark: "1",
		Blank: handBox(424.204, 250, 20), Rough: handBox(449.204, 256, 23),
		Place: mgl64.Translate3D(0, 0, 260), Volume: 2064413.743, Mass: 1.4,
	}
	sin, cos := math.Sincos(lean.Radians())
	q.Cuts = []part.Cut{
		handCut("left-end", part.Crosscut, mgl64.Vec3{-cos, 0, sin}, 210*cos, "top/right-end"),
		handCut("right-end", part.Crosscut, mgl64.Vec3{cos, 0, sin}, 210*cos, "top/left-end"),
		handCut("front-edge", part.Rip, mgl64.Vec3{0, -1, 0}, 125, "top/back-edge"),
		handCut("back-edge", part.Rip, mgl64.Vec3{0, 1, 0}, 125, "top/front-edge"),
	}
	return q
}

// handSide's frame has x down the slope; y runs to the back on the right side, to the front on
// the left.
func handSide(hand string, lean measure.Angle) *part.Part {
	sin, cos := math.Sincos(lean.Radians())
	q := &part.Part{
		ID: "side-" + hand, Name: "Side, " + hand, Timber: "white oak", Mark: "2",
		Blank: handBox(263.534, 250, 20), Rough: handBox(288.534, 256, 23),
		Volume: 1229658.276, Mass: 0.84,
		Place: mgl64.Mat4FromCols(mgl64.Vec4{sin, 0, -cos, 0}, mgl64.Vec4{0, 1, 0, 0}, mgl64.Vec4{cos, 0, sin, 0}, mgl64.Vec4{210, 0, 260, 1}),
	}
	front, back, other := -1.0, 1.0, "side-left"
	if hand == "left" {
		q.Mark, front, back, other = "3", 1, -1, "side-right"
		q.Place = mgl64.Mat4FromCols(mgl64.Vec4{-sin, 0, -cos, 0}, mgl64.Vec4{0, -1, 0, 0}, mgl64.Vec4{-cos, 0, sin, 0}, mgl64.Vec4{-210, 0, 260, 1})
	}
	q.Cuts = []part.Cut{
		handCut("top-end", part.Crosscut, mgl64.Vec3{-cos, 0, sin}, 0, other+"/top-end"),
		handCut("floor-end", part.Crosscut, mgl64.Vec3{cos, 0, -sin}, 260, other+"/floor-end"),
		handCut("front-edge", part.Rip, mgl64.Vec3{0, front, 0}, 125, other+"/front-edge"),
		handCut("back-edge", part.Rip, mgl64.Vec3{0, back, 0}, 125, other+"/back-edge"),
	}
	return q
}

func handCut(id string, kind part.CutKind, n mgl64.Vec3, offset float64, pair string) part.Cut {
	c := part.Cut{ID: id, Kind: kind, Normal: n, Offset: offset, Length: 250, Pair: pair, OuterLonger: n[2] < 0}
	c.Tilt = measure.Angle(math.Asin(math.Abs(n[2])))
	return c
}

func handJoint(hand string) joint.Joint {
	j := joint.Joint{
		ID: "top/side-" + hand, Kind: "through dovetail", TailBoard: "top", PinBoard: "side-" + hand,
		Dihedral: 96 * measure.Degree, Slope: 8 * measure.Degree,
		Baseline:    joint.Faces{Outer: 20.1102, Inner: 20.1102},
		PinBaseline: joint.Faces{Outer: 20.1102, Inner: 20.1102},
		CheekTilt:   0.83804 * measure.Degree, PinAngle: 8.04349 * measure.Degree, PinEnd: 8 * measure.Degree, BackPinEnd: 8 * measure.Degree, Width: 250,
	}
	in := measure.Length(20.1102 * math.Tan(8*math.Pi/180)) // a tail narrows by this on each side down to the baseline
	for i := range 4 {
		start := 8 + measure.Length(i)*61
		tail := joint.Span{Start: start, End: start + 51}
		j.Tails = append(j.Tails, tail)
		j.TailsInner = append(j.TailsInner, joint.Span{Start: start + in/60, End: start + 51 - in/60})
		j.TailRoots = append(j.TailRoots, joint.Span{Start: start + in, End: start + 51 - in})
	}
	last := measure.Length(0)
	for _, t := range append(j.Tails, joint.Span{Start: 250}) {
		j.Pins = append(j.Pins, joint.Span{Start: last, End: t.Start})
		j.PinsInner = append(j.PinsInner, joint.Span{Start: max(0, last-in), End: min(250, t.Start+in)})
		last = t.End
	}
	return j
}
