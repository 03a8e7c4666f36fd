package model_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/model/part"
)

func TestDeriveIsTheSameEveryTime(t *testing.T) {
	a, b := model.Derive(formtest.Full()), model.Derive(formtest.Full())
	if d := cmp.Diff(a, b); d != "" {
		t.Errorf("two derivations of one design differ:\n%s", d)
	}
}

func TestFindingsComeMostSeriousFirst(t *testing.T) {
	d := formtest.Full()
	d.Corners.Tails = new(60) // stops
	d.Timber = "no such timber"
	p := model.Derive(d)
	if !p.Stopped() {
		t.Fatal("sixty tails of no width stop nothing")
	}
	order := map[part.Level]int{part.Stop: 0, part.Warning: 1, part.Note: 2}
	for i := 1; i < len(p.Findings); i++ {
		if order[p.Findings[i].Level] < order[p.Findings[i-1].Level] {
			t.Errorf("%s (%s) comes after %s (%s)", p.Findings[i].ID, p.Findings[i].Level,
				p.Findings[i-1].ID, p.Findings[i-1].Level)
		}
	}
}

// Deriving must leave the design that it was given alone.
func TestDeriveChangesNothingItWasGiven(t *testing.T) {
	d := formtest.Full()
	model.Derive(d)
	if diff := cmp.Diff(formtest.Full(), d); diff != "" {
		t.Errorf("the design changed:\n%s", diff)
	}
}

func BenchmarkDeriveExample(b *testing.B) {
	d := formtest.WorkedExample()
	for b.Loop() {
		model.Derive(d)
	}
}

func BenchmarkDeriveFull(b *testing.B) {
	d := formtest.Full()
	for b.Loop() {
		model.Derive(d)
	}
}

func BenchmarkDerive40Tails(b *testing.B) {
	d := formtest.WorkedExample()
	d.Size.Depth = 1200
	d.Corners.Tails = new(40)
	if model.Derive(d).Stopped() {
		b.Fatal("forty tails do not fit")
	}
	for b.Loop() {
		model.Derive(d)
	}
}
