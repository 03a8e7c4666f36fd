package model_test

import (
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/measure"
)

// A dovetailed chest with a bottom in grooves, a lid and its battens.
func BenchmarkDeriveChest(b *testing.B) {
	depth := measure.Length(7)
	d := form.Design{
		Title: "Chest", Form: "chest", Timber: "white oak",
		Size:    form.Size{Height: 440, Width: 780, Depth: 380},
		Splay:   form.Splay{Front: 4 * measure.Degree, Ends: 6 * measure.Degree},
		Boards:  form.Boards{Side: form.Board{Thickness: 20}},
		Corners: form.Corners{Joint: form.ThroughDovetail},
		Bottom:  &form.Bottom{Thickness: 14, Joint: form.InGroove, Up: 45, Depth: &depth},
		Lid:     &form.Lid{Thickness: 22, Overhang: 14, Battens: &form.Battens{Count: 2}},
	}
	if model.Derive(d).Stopped() {
		b.Fatal("the chest is stopped")
	}
	for b.Loop() {
		model.Derive(d)
	}
}

// Sixteen staves with tails and pins in turn.
func BenchmarkDeriveRing16(b *testing.B) {
	d := form.Design{
		Title: "Ring", Form: "ring", Timber: "white oak",
		Size:    form.Size{Height: 250, Width: 900, Staves: 16},
		Splay:   form.Splay{Ends: 10 * measure.Degree},
		Boards:  form.Boards{Side: form.Board{Thickness: 18}},
		Corners: form.Corners{Joint: form.ThroughDovetail},
	}
	if model.Derive(d).Stopped() {
		b.Fatal("the ring is stopped")
	}
	for b.Loop() {
		model.Derive(d)
	}
}
