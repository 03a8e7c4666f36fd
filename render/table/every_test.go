package table

import (
	"splaywright/model/form"
	"splaywright/model/measure"
)

// everyPiece is a piece of each form with each joint that its corners, its stretchers, its aprons and its bottom can have, by
// what it is. Sizes are invented.
func everyPiece() map[string]form.Design {
	out := map[string]form.Design{}
	screws := func(fromEnd measure.Length) *form.Screws {
		return &form.Screws{Gauge: 8, Length: 45, Count: 2, FromEnd: fromEnd}
	}
	for _, joint := range form.CornerJoints() {
		for _, what := range []string{form.Butt, form.Housing, form.ThroughTenon, form.HousedTenon} {
			d := form.Design{Form: "stool", Timber: "white oak", Size: form.Size{Height: 420, Width: 500, Depth: 300},
				Splay:   form.Splay{Ends: 6 * measure.Degree},
				Boards:  form.Boards{Top: form.Board{Thickness: 22}, Side: form.Board{Thickness: 22}},
				Corners: form.Corners{Joint: joint}, Stretchers: []form.Stretcher{{Width: 60, Thickness: 22, BelowTop: 120, Joint: what, Depth: 7}},
				Features: []form.Feature{{On: "side", Kind: "arch", Width: 150, Rise: 40}, {On: "all", Kind: "round-over", Radius: 3}}}
			if what == form.Butt {
				d.Stretchers[0].Screws = screws(15)
			}
			if joint == form.Butt {
				d.Corners.Screws = screws(40)
			}
			if what == form.ThroughTenon {
				wedges := 2
				d.Stretchers[0].Tenon = &form.Tenon{Wedges: &wedges}
			}
			out["stool, "+joint+", stretcher with "+what] = d
		}
		for _, what := range []string{form.Butt, form.Housing} {
			d := form.Design{Form: "stool", Timber: "white oak", Size: form.Size{Height: 440, Width: 900, Depth: 320},
				Splay:   form.Splay{Ends: 6 * measure.Degree, Edges: 3 * measure.Degree},
				Boards:  form.Boards{Top: form.Board{Thickness: 24}, Side: form.Board{Thickness: 24}},
				Corners: form.Corners{Joint: joint}, Aprons: &form.Aprons{Width: 70, Thickness: 20, At: form.AtBoth, Joint: what, Depth: 7, BelowTop: 60}}
			out["bench, "+joint+", aprons with "+what] = d
		}
		d := form.Design{Form: "steps", Timber: "white oak", Size: form.Size{Height: 440, Width: 560, Depth: 320, LowerHeight: 220, LowerWidth: 270},
			Splay:   form.Splay{Ends: 6 * measure.Degree},
			Boards:  form.Boards{Top: form.Board{Thickness: 22}, Side: form.Board{Thickness: 20}},
			Corners: form.Corners{Joint: joint}}
		out["steps, "+joint] = d
		for _, bottom := range []string{form.InGroove, form.InRabbet, form.ScrewedOn} {
			for _, name := range []string{"tray", "chest", "ring"} {
				d := form.Design{Form: name, Timber: "black cherry", Size: form.Size{Height: 220, Width: 500, Depth: 380},
					Splay:  form.Splay{Ends: 7 * measure.Degree, Front: 5 * measure.Degree},
					Boards: form.Boards{Side: form.Board{Thickness: 16}}, Corners: form.Corners{Joint: joint},
					Bottom: &form.Bottom{Thickness: 10, Joint: bottom}, Features: []form.Feature{{On: "all", Kind: "round-over", Radius: 2}}}
				if bottom == form.ScrewedOn {
					d.Bottom.Screws = &form.Screws{Gauge: 6, Length: 32, Count: 3, FromEnd: 40}
				}
				if joint == form.Butt {
					d.Corners.Screws = &form.Screws{Gauge: 6, Length: 45, Count: 3, FromEnd: 30, Counterbore: 6, Plug: true}
				}
				if name == "ring" {
					d.Size.Depth, d.Size.Staves, d.Splay.Front = 0, 6, 0
				}
				if name == "chest" {
					d.Lid = &form.Lid{Thickness: 18, Overhang: 10, Battens: &form.Battens{Count: 2, Screws: &form.Screws{Gauge: 8, Length: 28, Count: 3, FromEnd: 40}}}
				}
				out[name+", "+joint+", bottom "+bottom] = d
			}
		}
	}
	return out
}
