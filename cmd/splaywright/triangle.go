package main

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"splaywright/model/measure"
)

// triangle is a lean as lengths tell it: how far out of plumb, over what height, and over what length along the slope. Two of
// them are enough; three have to agree.
type triangle struct{ out, height, along string }

// agree is how far three sides may miss a triangle, as a share of the longest: what a rule reads of half a metre.
const agree = 0.002

// lean is the angle from plumb: its tangent is out over the height, its sine out over the length along the slope, its cosine
// the height over that.
func (t triangle) lean() (measure.Angle, error) {
	sides, err := t.sides()
	if err != nil {
		return 0, err
	}
	out, height, along := sides[0], sides[1], sides[2]
	switch {
	case t.along == "":
		return measure.Angle(math.Atan2(out, height)), nil
	case t.height == "" && math.Abs(out) >= along:
		return 0, fmt.Errorf("a board of %+s along its slope cannot come %+s out of plumb; was the height meant?", t.along, t.out)
	case t.height == "":
		return measure.Angle(math.Asin(out / along)), nil
	case height > along*(1+agree):
		return 0, fmt.Errorf("a board of %+s along its slope cannot stand %+s high", t.along, t.height)
	case t.out == "":
		return measure.Angle(math.Acos(min(1, height/along))), nil
	}
	slope := math.Hypot(out, height)
	if math.Abs(slope-along) <= agree*along {
		return measure.Angle(math.Atan2(out, height)), nil
	}
	likes := func(mm float64) string { return like(t.along, mm) }
	text := fmt.Sprintf("%+s out and %+s high are %+s along the slope, and %+s is told: %+s off. Leave one of the three out", t.out, t.height, likes(slope), t.along, likes(math.Abs(along-slope)))
	if math.Abs(out) < along {
		text = fmt.Sprintf("%s; with that slope it is %+s out, or %+s high", text, likes(math.Copysign(math.Sqrt(along*along-height*height), out)), likes(math.Sqrt(along*along-out*out)))
	}
	return 0, errors.New(text)
}

// sides are the lengths in millimetres; one that is not told is 0.
func (t triangle) sides() (mm [3]float64, err error) {
	texts, told, bare := [3]string{t.out, t.height, t.along}, 0, map[bool]string{}
	for i, text := range texts {
		if text == "" {
			continue
		}
		told++
		l, err := measure.ParseLength(text, measure.Metric)
		switch {
		case err != nil:
			return mm, err
		case i > 0 && l <= 0:
			return mm, fmt.Errorf("%q: a length above zero is expected", text)
		}
		if mm[i] = l.MM(); l != 0 {
			bare[isBare(text)] = text
		}
	}
	switch {
	case told < 2:
		return mm, errors.New("a lean by lengths takes two of --out, --height and --along")
	case len(bare) > 1:
		return mm, fmt.Errorf("%q and %q: one has a unit and the other has none; both lengths need one, or neither", bare[true], bare[false])
	}
	return mm, nil
}

// like shows a length as another was typed: bare, in inches or in millimetres, to a hundredth.
func like(text string, mm float64) string {
	switch {
	case isBare(text):
		return measure.Fixed(mm, 2)
	case strings.ContainsAny(text, `"”″`) || strings.Contains(text, "in"):
		return measure.Fixed(mm/measure.Inch.MM(), 2) + " in"
	}
	return measure.Fixed(mm, 2) + " mm"
}
