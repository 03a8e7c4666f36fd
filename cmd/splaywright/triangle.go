package main

import (
	"errors"
	"fmt"
	"math"

	"splaywright/model/measure"
)

// triangle is a lean as two lengths tell it: how far out of plumb, and over what. Of height and along one is given.
type triangle struct{ out, height, along string }

// lean is the angle from plumb: its tangent is out over the height, its sine out over the length along the slope.
func (t triangle) lean() (measure.Angle, error) {
	if t.out == "" || (t.height == "") == (t.along == "") {
		return 0, errors.New("a lean by two lengths is --out with --height, or --out with --along")
	}
	over, sine := t.height, t.along != ""
	if sine {
		over = t.along
	}
	out, err := measure.ParseLength(t.out, measure.Metric)
	if err != nil {
		return 0, err
	}
	length, err := measure.ParseLength(over, measure.Metric)
	switch {
	case err != nil:
		return 0, err
	case length <= 0:
		return 0, fmt.Errorf("%q: a length above zero is expected", over)
	case out != 0 && isBare(t.out) != isBare(over):
		return 0, fmt.Errorf("%q and %q: one has a unit and the other has none; both lengths need one, or neither", t.out, over)
	case !sine:
		return measure.Angle(math.Atan2(out.MM(), length.MM())), nil
	case math.Abs(out.MM()) >= length.MM():
		return 0, fmt.Errorf("a board of %+s along its slope cannot come %+s out of plumb; was the height meant?", over, t.out)
	}
	return measure.Angle(math.Asin(out.MM() / length.MM())), nil
}
