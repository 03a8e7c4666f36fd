package check

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// What splines, keys and tenons leave of the wood round them. All common practice.
const (
	// splineOuter and splineInner, shares of a wall's thickness that a spline's groove leaves under its faces:
	// a quarter outside, where the corner takes the knocks, an eighth inside.
	splineOuter = 1.0 / 4
	splineInner = 1.0 / 8
	// keyLeft is the share of a corner's depth that a key slot leaves inside.
	keyLeft = 1.0 / 4
	// besideMortise, shares of a side's thickness, at its long edges, and at its ends, where the grain is short;
	// wedges drive against what is beyond, and want so much more.
	besideMortise = 1.0 / 2
	beyondMortise = 1.0
	beyondWedges  = 1.5
	// thinTenon is the share of a stretcher's thickness under which its tenon breaks first.
	thinTenon = 1.0 / 3
	// steepWedge, degrees, between a wedge's sides, beyond which it springs back out.
	steepWedge = 12.0
)

// loose looks at splines, keys and tenons.
func loose(r *run) {
	for _, j := range r.p.Joints {
		switch {
		case j.Spline != nil:
			splineWood(r, j, j.Spline)
		case j.Keys != nil:
			keyWood(r, j.Keys, j)
		case j.Tenon != nil:
			tenonSizes(r, j)
			mortiseWood(r, j)
		}
	}
}

func splineWood(r *run, j joint.Joint, s *joint.Spline) {
	sizes := []string{"corners.spline.inset", "corners.spline.width", "corners.spline.thickness", "boards.side.thickness"}
	for i, id := range []string{j.TailBoard, j.PinBoard} {
		q := r.p.Part(id)
		if q == nil {
			continue
		}
		thick := q.Blank.Thickness.MM()
		for _, face := range []struct {
			name        string
			left, least float64
		}{{"outer", s.Left[i].Outer.MM(), thick * splineOuter}, {"inner", s.Left[i].Inner.MM(), thick * splineInner}} {
			if face.left <= 0 || face.left >= face.least-noise { // nothing left is a stop of the form
				continue
			}
			left, least := r.apart(face.left, face.least)
			r.add(part.Finding{ID: "spline-near-face", Level: part.Warning, Figure: face.left, Limit: face.least, Unit: "mm", Source: commonPractice,
				Parts: []string{id}, Sizes: sizes,
				Text: sentence("the grooves of the splines leave %s of wood under the %s face of %s, where %s or more hold: set them elsewhere, or make them narrower or thinner.",
					left, face.name, theBoard(q), least)})
		}
	}
}

func keyWood(r *run, k *joint.Keys, j joint.Joint) {
	whole := (k.Depth + k.Left).MM()
	if least := whole * keyLeft; k.Left > 0 && k.Left.MM() < least-noise {
		left, enough := r.apart(k.Left.MM(), least)
		r.add(part.Finding{ID: "key-slot-near-inside", Level: part.Warning, Figure: k.Left.MM(), Limit: least, Unit: "mm", Source: commonPractice,
			Parts: []string{j.TailBoard, j.PinBoard}, Sizes: []string{"corners.keys.depth", "boards.side.thickness"},
			Text: sentence("the key slots leave %s of wood inside the corner, so that the saw may show there; %s deep or less leaves %s.",
				left, r.mm(r.down(whole-least)), enough)})
	}
}

func tenonSizes(r *run, j joint.Joint) {
	q := r.p.Part(j.PinBoard)
	rail, ok := r.railOf(q)
	if !ok || rail.Tenon == nil {
		return
	}
	t, path := j.Tenon, rail.Path+".tenon"
	if least := rail.Thickness.MM() * thinTenon; t.Thickness.MM() < least-noise {
		r.add(part.Finding{ID: "tenon-thin", Level: part.Warning, Figure: t.Thickness.MM(), Limit: least, Unit: "mm", Source: "common practice: a third of the stretcher at least",
			Parts: []string{q.ID}, Sizes: []string{path + ".thickness"},
			Text: sentence("the tenons of %s are %s thick, less than a third of it, and break before it does; %s or more hold.", boardName(q), r.long(t.Thickness), r.mm(r.up(least)))})
	}
	if t.Shoulder.Width == 0 && t.Shoulder.Thickness == 0 {
		r.add(part.Finding{ID: "tenon-without-shoulders", Level: part.Note, Source: commonPractice,
			Parts: []string{q.ID}, Sizes: []string{path + ".width", path + ".thickness"},
			Text: sentence("the tenons of %s are as wide and as thick as it is: without shoulders nothing stops it in its mortise, and nothing hides the mortise's edge.", boardName(q))})
	}
	if w := t.Wedges; w != nil && w.Angle > steepWedge*measure.Degree+noise {
		angle, most := measure.AnglesApart(w.Angle, steepWedge*measure.Degree)
		r.add(part.Finding{ID: "wedge-steep", Level: part.Warning, Figure: w.Angle.Degrees(), Limit: steepWedge, Unit: "deg", Source: commonPractice,
			Parts: []string{q.ID}, Sizes: []string{path + ".flare", path + ".wedges"},
			Text: sentence("the wedges of %s open by %s; beyond %s they spring back out and split what they should spread. Let the mortise flare less, or drive more of them.",
				boardName(q), angle, most)})
	}
}

// mortiseWood looks at the wood between a mortise and the edges and ends of its side, on both faces.
func mortiseWood(r *run, j joint.Joint) {
	side, q := r.p.Part(j.TailBoard), r.p.Part(j.PinBoard)
	rail, ok := r.railOf(q)
	if side == nil || !ok {
		return
	}
	thick := side.Blank.Thickness.MM()
	for _, c := range side.Cuts {
		least := thick * besideMortise
		if c.Kind == part.Crosscut {
			if least = thick * beyondMortise; j.Tenon.Wedges != nil {
				least = thick * beyondWedges
			}
		}
		gap := mortiseGap(j, c, thick)
		if gap >= least-noise {
			continue
		}
		left, enough := r.apart(max(0, gap), least)
		f := part.Finding{ID: "mortise-near-edge", Level: part.Warning, Figure: gap, Limit: least, Unit: "mm", Source: commonPractice,
			Parts: []string{side.ID}, Sizes: []string{rail.Placed, rail.Path + ".below-top", rail.Path + ".tenon.width", rail.Path + ".tenon.thickness"},
			Text: sentence("the mortise of %s leaves %s of wood to the %s of the side, where %s or more hold; move it by %s, or make the tenon smaller.",
				boardName(q), left, cutName(c.ID), enough, r.mm(r.up(least-gap)))}
		if gap <= 0 {
			f.ID, f.Level, f.Source, f.Limit = "mortise-through-edge", part.Stop, ownGeometry, 0
			f.Text = sentence("the mortise of %s breaks out of the %s of the side by %s; move it, or make the tenon smaller.", boardName(q), cutName(c.ID), r.past(-gap))
		}
		r.add(f)
	}
}

// mortiseGap is the least way, in either face that the mortise opens in, from its corners to a cut.
func mortiseGap(j joint.Joint, c part.Cut, thick float64) float64 {
	levels := []float64{-thick}
	if j.Kind == form.ThroughTenon {
		levels = append(levels, 0)
	}
	least := math.Inf(1)
	for _, z := range levels {
		for i := range j.Tenon.Mortise {
			m, n := j.Tenon.Mortise[i], j.Tenon.Mortise[(i+1)%4]
			at := mgl64.Mat3FromRows(m.N, n.N, mgl64.Vec3{0, 0, 1}).Inv().Mul3x1(mgl64.Vec3{m.D, n.D, z})
			flat := math.Hypot(c.Normal[0], c.Normal[1])
			least = min(least, (c.Offset-c.Normal.Dot(at))/flat)
		}
	}
	return least
}
