package table

import (
	"testing"

	"splaywright/model/measure"
)

// A coarse step of the boards' sizes does not make a 9.5 mm plug one of 10, nor 3/8 in one of 1/2.
func TestBitsAreNotRoundedWithBoards(t *testing.T) {
	if got := bits(measure.Style{Step: 1}).FormatUnit(9.5); got != "9.5 mm" {
		t.Error(got)
	}
	if got := bits(measure.Style{Unit: measure.Imperial, Step: measure.Inch / 4}).FormatUnit(3 * measure.Inch / 8); got != `3/8"` {
		t.Error(got)
	}
}
