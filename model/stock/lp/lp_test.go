package lp

import (
	"math"
	"testing"
)

// Two needs, 3 and 5; one column gives (1, 2) for 1, another (1, 0) for 0.6. By hand: 2.5 of the first and 0.5 of the
// second, 2.8. With at most 2 of the first, one of the second need stays uncovered at 10: 2 + 0.6 + 10.
func TestByHand(t *testing.T) {
	l := New([]float64{3, 5}, 10, nil)
	l.Add(Column{Row: []int{0, 1}, Val: []float64{1, 2}, Cost: 1, Tag: 1})
	l.Add(Column{Row: []int{0}, Val: []float64{1}, Cost: 0.6, Tag: 2})
	if !l.Run() || math.Abs(l.Value()-2.8) > 1e-12 {
		t.Errorf("%g, want 2.8", l.Value())
	}
	if a, b := l.Price(0), l.Price(1); math.Abs(a-0.6) > 1e-12 || math.Abs(b-0.2) > 1e-12 {
		t.Errorf("prices %g %g, want 0.6 0.2", a, b)
	}
	got := map[int]float64{}
	l.Taken(func(tag int, x float64) { got[tag] += x })
	if math.Abs(got[1]-2.5) > 1e-12 || math.Abs(got[2]-0.5) > 1e-12 {
		t.Errorf("taken %v", got)
	}

	l = New([]float64{3, 5}, 10, []float64{2})
	l.Add(Column{Row: []int{0, 1, 2}, Val: []float64{1, 2, 1}, Cost: 1, Tag: 1})
	l.Add(Column{Row: []int{0}, Val: []float64{1}, Cost: 0.6, Tag: 2})
	if !l.Run() || math.Abs(l.Value()-12.6) > 1e-12 || l.Price(2) >= 0 {
		t.Errorf("%g, limit's price %g; want 12.6 and a price below 0", l.Value(), l.Price(2))
	}
}
