package formtest

import (
	"math/rand/v2"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// Random draws a piece of shop sizes of any form and with any joint that there is, the same for the
// same number. A few of them are stopped, as what people type is.
func Random(seed uint64) form.Design {
	r := dice{rand.New(rand.NewPCG(seed, 7))}
	names := form.Forms()
	d := form.Design{Title: "Random", Form: names[r.IntN(len(names))], Timber: r.pick("white oak", "cherry", "ash", "eastern white pine")}
	d.Size.TakenAt = form.TakenAt(r.pick(string(form.AtTop), string(form.AtFloor)))
	if form.OnSides(d.Form) {
		r.onSides(&d)
	} else {
		r.walls(&d)
	}
	return d
}

type dice struct{ *rand.Rand }

func (r dice) pick(words ...string) string { return words[r.IntN(len(words))] }

func (r dice) size(lo, hi float64) measure.Length {
	return measure.Length(lo + (hi-lo)*r.Float64())
}

func (r dice) lean(lo, hi float64) measure.Angle {
	if r.IntN(4) == 0 {
		return 0
	}
	return measure.Angle(lo+(hi-lo)*r.Float64()) * measure.Degree
}

// onSides is a stool or steps.
func (r dice) onSides(d *form.Design) {
	d.Size.Height, d.Size.Width, d.Size.Depth = r.size(220, 520), r.size(380, 900), r.size(220, 400)
	d.Splay.Ends, d.Splay.Edges = r.lean(-4, 14), r.lean(-3, 9)
	d.Splay.EdgeCut = form.EdgeCut(r.pick(string(form.EdgeSquare), string(form.EdgeFlush)))
	d.Boards.Top.Thickness, d.Boards.Side.Thickness = r.size(16, 28), r.size(16, 26)
	d.Corners.Joint = r.pick(form.CornerJoints()...)
	d.Corners.TailsOn = r.pick(form.OnTop, form.OnSide)
	if d.Form == form.Steps {
		d.Size.Height, d.Size.Width = d.Size.Height+120, d.Size.Width+120
		d.Size.LowerHeight, d.Size.LowerWidth = d.Size.Height*r.size(0.4, 0.6), d.Size.Width*r.size(0.4, 0.6)
		d.Splay.Middle = r.lean(-5, 8)
	}
	for i := range r.IntN(3) {
		s := form.Stretcher{
			Width: r.size(36, 60), Thickness: r.size(14, 22), Set: r.pick(form.OnEdge, form.Flat), BelowTop: r.size(0, 30),
			Across: measure.Length(i)*90 - 45, Joint: r.pick(form.StretcherJoints()...),
		}
		if d.Form == form.Steps {
			s.Under = r.pick(form.UnderUpper, form.UnderLower)
		}
		d.Stretchers = append(d.Stretchers, s)
	}
	if d.Form != form.Steps && len(d.Stretchers) == 0 && r.IntN(2) == 0 {
		in := r.size(8, 20)
		d.Aprons = &form.Aprons{
			At: r.pick(form.AtBoth, form.AtFront, form.AtBack), Width: r.size(40, 90), Thickness: r.size(14, 20), SetIn: &in,
			BelowTop: r.size(0, 20), Stand: r.pick(form.Leaning, form.Plumb), Joint: r.pick(form.Butt, form.Housing),
		}
	}
}

// walls is a piece with walls all round.
func (r dice) walls(d *form.Design) {
	d.Size.Height, d.Size.Width, d.Size.Depth, d.Size.Staves = r.size(80, 260), r.size(420, 800), r.size(360, 600), 3+r.IntN(8)
	d.Splay.Ends, d.Splay.Front = r.lean(-8, 18), r.lean(-8, 18)
	d.Boards.Side.Thickness = r.size(10, 22)
	joints := form.WallJoints()
	d.Corners.Joint = joints[r.IntN(len(joints))]
	if d.Form == "ring" {
		d.Size.Depth, d.Splay.Front = 0, 0
		d.Size.Staves = 3 + r.IntN(8)
	} else {
		d.Corners.Over = r.pick(form.OnFront, form.OnEnd)
		d.Boards.End.Thickness = r.size(10, 22)
	}
	if r.IntN(3) == 0 {
		d.Bottom = &form.Bottom{Thickness: r.size(5, 10), Joint: r.pick(form.InGroove, form.InRabbet, form.ScrewedOn)}
		if d.Bottom.Joint == form.InGroove {
			d.Bottom.Up = r.size(8, 16)
		}
	}
	if d.Form == "chest" && r.IntN(2) == 0 {
		d.Lid = &form.Lid{Thickness: r.size(14, 22), Overhang: r.size(0, 15)}
	}
}
