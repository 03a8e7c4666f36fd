// Package formtest holds designs that tests of other packages start from.
package formtest

import (
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/stock"
)

// WorkedExample is the plain dovetailed step whose figures were worked out by hand and by an
// outside solid library: ends 6°, edges plumb, four tails on the top.
func WorkedExample() form.Design {
	return form.Design{
		Title: "Worked example", Units: measure.Metric, Form: "stool",
		Size:   form.Size{Height: 260, Width: 420, Depth: 250, TakenAt: form.AtTop},
		Splay:  form.Splay{Ends: 6 * measure.Degree, EdgeCut: form.EdgeSquare},
		Timber: "white oak",
		Boards: form.Boards{Top: form.Board{Thickness: 20}, Side: form.Board{Thickness: 20}},
		Corners: form.Corners{
			Joint: form.ThroughDovetail, TailsOn: form.OnTop, Slope: 8 * measure.Degree,
			Tails: new(4), Pin: length(10), HalfPin: length(8),
		},
		Allowance: form.Allowance{Length: 25, Width: 6, Thickness: 3},
		Saw:       form.Saw{Kerf: 3.2, Step: 0.1 * measure.Degree},
		Round:     form.Round{To: 0.5, Unit: measure.Metric},
		Papers:    form.Papers{Sheet: "A4", Projection: "first"},
	}
}

// Full is the worked example with leaning edges, two stretchers and every kind of feature.
func Full() form.Design {
	d := WorkedExample()
	d.Title = "Everything at once"
	d.Splay.Edges = 4 * measure.Degree
	d.Stretchers = []form.Stretcher{
		{
			Width: 60, Thickness: 20, Set: form.OnEdge, Joint: form.Butt,
			Screws: &form.Screws{Gauge: 8, Length: 50, Count: 2, FromEnd: 15, Counterbore: 8, Plug: true},
		},
		{
			Width: 70, Thickness: 18, Set: form.Flat, BelowTop: 130, Across: 20, Joint: form.Housing, Depth: 6,
			Screws: &form.Screws{Gauge: 8, Length: 45, Count: 2, FromEnd: 18},
		},
	}
	d.Features = []form.Feature{
		{On: "side", Kind: "arch", Width: 150, Rise: 45},
		{On: "top", Kind: "hand hole", Length: 95, Width: 28, Y: 60},
		{On: "top", Kind: "slot", Length: 60, Width: 16, Y: -60, Angle: 30 * measure.Degree},
		{On: "side", Kind: "hole", Diameter: 25, X: 150, Y: 75},
		{On: "all", Kind: "round-over", Radius: 3},
	}
	return d
}

// Housing is a step whose top overhangs the sides and is housed over them and screwed.
func Housing() form.Design {
	d := WorkedExample()
	d.Title = "Housed top"
	d.Splay.Edges = 3 * measure.Degree
	d.Corners = form.Corners{
		Joint: form.Housing, Overhang: 18, OverhangEdges: 10, Depth: length(7),
		Screws: &form.Screws{Gauge: 8, Length: 50, Count: 3, FromEnd: 40, Counterbore: 6, Plug: true},
	}
	return d
}

// Butt is a step whose top lies flush on the sides and is screwed down.
func Butt() form.Design {
	d := WorkedExample()
	d.Title = "Butted top"
	d.Corners = form.Corners{
		Joint:  form.Butt,
		Screws: &form.Screws{Gauge: 8, Length: 60, Count: 3, FromEnd: 40, Counterbore: 6, Plug: true},
	}
	return d
}

// LetterBox is a mitred box of 10 mm walls that come out of one board: 2 mm are planed off each, the saw's cut through the
// thickness takes 1.4.
func LetterBox() form.Design {
	return form.Design{
		Title: "Letter box", Form: "tray", Timber: "black walnut",
		Size:   form.Size{Height: 110, Width: 320, Depth: 220},
		Splay:  form.Splay{Front: 6 * measure.Degree, Ends: 6 * measure.Degree},
		Boards: form.Boards{Side: form.Board{Thickness: 10}}, Corners: form.Corners{Joint: form.Mitre},
		Allowance: form.Allowance{Length: 6, Width: 4, Thickness: 2},
		Saw:       form.Saw{Kerf: 2.4, Resaw: 1.4},
		Plan:      form.Plan{TrimEnds: 10, Resawn: true},
		OnHand:    []stock.Board{{Name: "baluster blank", Timber: "black walnut", Length: 760, Width: 150, Thickness: 27}},
	}
}

// MirrorStool is a stool of 20 mm sides that come out of one board of 54 mm and mirror each other.
func MirrorStool() form.Design {
	return form.Design{
		Title: "Mirror stool", Form: "stool", Timber: "white oak",
		Size:      form.Size{Height: 300, Width: 420, Depth: 240},
		Splay:     form.Splay{Ends: 8 * measure.Degree, Edges: 3 * measure.Degree},
		Boards:    form.Boards{Top: form.Board{Thickness: 22}, Side: form.Board{Thickness: 20}},
		Allowance: form.Allowance{Length: 20, Width: 6, Thickness: 3},
		Plan:      form.Plan{TrimEnds: 15, Keep: 150, Resawn: true},
		OnHand: []stock.Board{
			{Name: "beam end", Timber: "white oak", Length: 900, Width: 300, Thickness: 54, Avoid: []stock.Avoid{{What: "split", Length: 120, Width: 60}}},
			{Name: "shelf", Timber: "white oak", Length: 900, Width: 280, Thickness: 27},
		},
	}
}

func length(l measure.Length) *measure.Length { return &l }
