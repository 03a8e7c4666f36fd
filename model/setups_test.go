package model_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model"
	"splaywright/model/cut"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// someStool is a stool of any lean.
func someStool(t *rapid.T) form.Design {
	d := formtest.Full()
	if rapid.Bool().Draw(t, "butted") {
		d = formtest.Butt()
	}
	d.Splay.Ends = measure.Angle(rapid.Float64Range(-10, 35).Draw(t, "ends")) * measure.Degree
	d.Splay.Edges = measure.Angle(rapid.Float64Range(-5, 20).Draw(t, "edges")) * measure.Degree
	if rapid.Bool().Draw(t, "flush") {
		d.Splay.EdgeCut = form.EdgeFlush
	}
	return d
}

// onTheSaw turns a board as it is put down: the axis that a square cut's normal has goes to X, the way up to Z.
func onTheSaw(u cut.Setup) mgl64.Mat3 {
	quarter := math.Pi / 2
	rip := mgl64.Ident3()
	if u.Kind == part.Rip {
		rip = mgl64.Rotate3DZ(-quarter) // y along X
	}
	lean := u.Lean.Radians()
	switch u.Position {
	case cut.EndOn:
		return mgl64.Rotate3DZ(-quarter)
	case cut.OnEdge:
		stood := mgl64.Rotate3DX(quarter) // y up, the outer face away from the fence
		if u.Kind == part.Rip {
			return mgl64.Rotate3DZ(quarter).Mul3(stood) // that face along X
		}
		return stood
	case cut.OnEnd:
		return mgl64.Rotate3DY(-quarter) // x up, the inner face along X
	case cut.Nested, cut.Cradled:
		switch u.Raised { // the right hand's turns that lift each side
		case cut.PlusY:
			return rip.Mul3(mgl64.Rotate3DX(lean))
		case cut.MinusY:
			return rip.Mul3(mgl64.Rotate3DX(-lean))
		case cut.PlusX:
			return rip.Mul3(mgl64.Rotate3DY(-lean))
		}
		return rip.Mul3(mgl64.Rotate3DY(lean))
	}
	return rip
}

// sawnCorners are the corners of the face that a cut leaves: its line on the outer face, and the same line
// where the cut comes out of the inner one.
func sawnCorners(q *part.Part, c part.Cut) []mgl64.Vec3 {
	n := c.Normal
	level := math.Hypot(n[0], n[1])
	out := mgl64.Vec3{n[0] / level, n[1] / level, 0}
	line := mgl64.Vec3{-out[1], out[0], 0}
	at := out.Mul(c.Offset / level)
	thick := q.Blank.Thickness.MM()
	inner := at.Add(out.Mul(thick * n[2] / level)).Sub(mgl64.Vec3{0, 0, thick})
	half := line.Mul(c.Length.MM() / 2)
	return []mgl64.Vec3{at.Add(half), at.Sub(half), inner.Add(half), inner.Sub(half)}
}

// The pair of every set-up, with the board put down as that set-up says, cuts the plane of the cut; and the blade
// comes through when it reaches the set-up's reach. For pieces of every form, and for a cradle of any angle.
func TestEverySetupCutsItsPlane(t *testing.T) {
	seen := map[cut.Position]int{}
	rapid.Check(t, func(t *rapid.T) {
		make := rapid.SampledFrom([]func(*rapid.T) form.Design{someStool, someWalls}).Draw(t, "which")
		saw := cut.Saw{Upright: rapid.IntRange(0, 5).Draw(t, "upright") == 0}
		if rapid.Bool().Draw(t, "has a cradle") {
			saw.Cradle = measure.Angle(rapid.Float64Range(1, 60).Draw(t, "cradle")) * measure.Degree
		}
		for _, limit := range []*measure.Angle{&saw.MaxSwing, &saw.MaxTilt} {
			*limit = measure.Angle(rapid.Float64Range(5, 60).Draw(t, "limit")) * measure.Degree
		}
		p := model.Derive(make(t))
		for _, q := range p.Parts {
			for _, c := range q.Cuts {
				if level := math.Hypot(c.Normal[0], c.Normal[1]); level < 0.05 || !(c.Length > 0) {
					continue
				}
				for _, u := range cut.ForSaw(q, c, saw) {
					seen[u.Position]++
					lies := onTheSaw(u)
					n := lies.Mul3x1(c.Normal)
					sinS, cosS := math.Sincos(u.Setting.Swing.Radians())
					sinT, cosT := math.Sincos(u.Setting.Tilt.Radians())
					for k, want := range []float64{cosT * cosS, cosT * sinS, sinT} {
						if got := math.Abs(n[k]); math.Abs(got-want) > 1e-9 {
							t.Fatalf("%s/%s %s: the blade's plane has %g where the cut has %g (axis %d)", q.ID, c.ID, u.Position, want, got, k)
						}
					}
					if u.Kind == part.Rip {
						continue
					}
					lo, hi := math.Inf(1), math.Inf(-1)
					for _, v := range sawnCorners(q, c) {
						z := lies.Mul3x1(v)[2]
						lo, hi = min(lo, z), max(hi, z)
					}
					if want := (hi - lo) / cosT; math.Abs(u.Reach.MM()-want) > 1e-9*(1+want) {
						t.Fatalf("%s/%s %s: reach %g, by corners %g", q.ID, c.ID, u.Position, u.Reach.MM(), want)
					}
				}
			}
		}
	})
	for _, pos := range []cut.Position{cut.Flat, cut.OnEdge, cut.Nested, cut.Cradled} {
		if seen[pos] == 0 {
			t.Errorf("never %s", pos)
		}
	}
}
