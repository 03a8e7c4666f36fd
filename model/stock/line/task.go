// Package line plans how parts are crosscut from stock of one width and thickness: rails, battens, mouldings,
// dowels, strips for a glue-up. It is exact where it says so: a plan is called proven only when a bound computed in
// whole numbers meets it.
//
// Lengths are millimetres, prices in any currency.
package line

import (
	"errors"
	"fmt"
	"math"
)

// Stock is one length that can be bought or lies on hand.
type Stock struct {
	Name   string
	Length float64 // mm, as it lies there
	Price  float64 // of one; with no price anywhere the plan takes the least length of wood
	Limit  int     // how many there are; 0 means as many as wanted
}

// Part is one length to be cut.
type Part struct {
	Name   string
	Length float64 // mm
	Count  int
}

// Task is everything a plan is made from.
type Task struct {
	Stocks []Stock
	Parts  []Part
	Kerf   float64 // mm, width of the saw's cut, lost between two neighbouring parts
	Trim   float64 // mm, taken off each end before the first and after the last part, its saw cut included
}

// Bar is a stock length and what is cut from it, or several cut alike.
type Bar struct {
	Stock int   // index into Task.Stocks
	Parts []int // indices into Task.Parts, longest first
	Count int   // how many bars are cut this way
}

// Plan is the answer to a Task.
type Plan struct {
	Bars   []Bar
	Cost   float64 // price of the bars, or their length in mm when no price is given
	Bound  float64 // no plan costs less than this
	Proven bool    // Cost is the least there is: the bound meets it
	Nodes  int     // how many places of the search were looked at
}

// Gap is how far the plan's cost may lie above the least, as a fraction of the bound.
func (p Plan) Gap() float64 {
	if p.Proven || p.Bound <= 0 {
		return 0
	}
	return p.Cost/p.Bound - 1
}

// Number is how many bars the plan takes.
func (p Plan) Number() int {
	n := 0
	for _, b := range p.Bars {
		n += b.Count
	}
	return n
}

// TooLong is a part that no stock can yield.
type TooLong struct {
	Part    Part
	Longest float64 // mm, the longest part that any of the stock yields
}

func (e *TooLong) Error() string {
	return fmt.Sprintf("%s is %.1f mm long; the longest part this stock yields is %.1f mm, %.1f mm short",
		e.Part.Name, e.Part.Length, e.Longest, e.Part.Length-e.Longest)
}

// NotEnough says that the stock on hand ran out.
type NotEnough struct {
	Left   map[int]int // parts left over in the best try: index into Task.Parts, how many
	Proven bool        // true: no plan exists; false: none was found
}

func (e *NotEnough) Error() string {
	n := 0
	for _, c := range e.Left {
		n += c
	}
	if e.Proven {
		return fmt.Sprintf("the stock on hand cannot yield all parts; %d left over in the best try", n)
	}
	return fmt.Sprintf("no way found to cut all parts from the stock on hand; %d left over", n)
}

// finest is the step of length the planner counts in: a millionth of a millimetre, in which 1/64 in (0.396875 mm)
// is a whole number.
const finest = 1e-6

// longest keeps sums of many lengths far inside whole 64-bit numbers.
const longest = 1e6 // mm

func check(t Task) error {
	if len(t.Stocks) == 0 {
		return errors.New("no stock to cut from")
	}
	if bad(t.Kerf) || bad(t.Trim) {
		return fmt.Errorf("kerf %g mm and trim %g mm must be between 0 and %g", t.Kerf, t.Trim, longest)
	}
	priced := false
	for _, s := range t.Stocks {
		if bad(s.Length) || s.Length == 0 {
			return fmt.Errorf("stock %q has no usable length: %g mm", s.Name, s.Length)
		}
		if bad(s.Price) || s.Limit < 0 {
			return fmt.Errorf("stock %q: price %g and limit %d cannot be negative", s.Name, s.Price, s.Limit)
		}
		priced = priced || s.Price > 0
	}
	for _, s := range t.Stocks {
		if priced && s.Price == 0 {
			return fmt.Errorf("stock %q has no price though others have", s.Name)
		}
	}
	for _, p := range t.Parts {
		if bad(p.Length) || p.Length == 0 || p.Count < 0 {
			return fmt.Errorf("part %q: length %g mm, count %d", p.Name, p.Length, p.Count)
		}
	}
	return nil
}

func bad(v float64) bool { return math.IsNaN(v) || v < 0 || v > longest }
