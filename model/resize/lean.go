package resize

import (
	"errors"
	"fmt"
	"math"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// lean is an angle of the design that settles one size at the floor.
type lean struct {
	path string
	of   func(*form.Design) *measure.Angle
	at   func(form.Overall) measure.Length
	size string // the overall size that it goes with
}

func (t *task) leans() []lean {
	ends := lean{"splay.ends", func(d *form.Design) *measure.Angle { return &d.Splay.Ends }, func(o form.Overall) measure.Length { return o.WidthFloor }, "size.width"}
	switch t.was.Form {
	case "ring":
		return []lean{ends}
	case "stool":
		return []lean{ends, {"splay.edges", func(d *form.Design) *measure.Angle { return &d.Splay.Edges }, func(o form.Overall) measure.Length { return o.DepthFloor }, "size.depth"}}
	}
	return []lean{ends, {"splay.front", func(d *form.Design) *measure.Angle { return &d.Splay.Front }, func(o form.Overall) measure.Length { return o.DepthFloor }, "size.depth"}}
}

// footprint finds the leans at which the piece stands on the floor as it stood.
func (t *task) footprint() error {
	s := t.was.Splay
	if s.Back != nil || s.EndLeft != nil || s.EndRight != nil {
		return errors.New("the footprint cannot be held while one wall leans unlike its fellow; let splay.back, splay.end-left and splay.end-right go first")
	}
	if t.now.Size.TakenAt == form.AtFloor {
		return errors.New("width and depth of this piece are taken at the floor, so they are the footprint; leave them as they are, or let size.taken-at be top")
	}
	for _, l := range t.leans() {
		want := l.at(t.before.Overall)
		a, err := solveLean(t.now, l, want)
		if err != nil {
			return fmt.Errorf("the footprint cannot be held: %w; another %s would do", err, l.size)
		}
		if math.Abs(float64(a-*l.of(&t.now))) < leanNoise {
			continue
		}
		*l.of(&t.now) = a
		if err := t.edit(Footprint, l.path, degrees(a)); err != nil {
			return err
		}
	}
	return nil
}

const (
	leanNoise = 1e-9                // radians
	steepest  = 60 * measure.Degree // from plumb; beyond it nothing is a leg or a wall
	sizeNoise = 1e-6 * measure.Millimetre
)

// solveLean finds the lean at which an overall size at the floor is what it should be. The size goes
// evenly with the tangent of the lean, so two tries settle it and a third proves it.
func solveLean(d form.Design, l lean, want measure.Length) (measure.Angle, error) {
	at := func(tan float64) measure.Length {
		*l.of(&d) = measure.Angle(math.Atan(tan))
		return l.at(form.Build(d).Overall)
	}
	const try = 0.1
	upright, leaning := at(0), at(try)
	if upright == 0 || math.Abs(float64(leaning-upright)) < float64(sizeNoise) {
		return 0, errors.New("the piece cannot stand at its new sizes")
	}
	tan := try * float64((want-upright)/(leaning-upright))
	a := measure.Angle(math.Atan(tan))
	switch got := at(tan); {
	case math.Abs(float64(a)) > float64(steepest):
		return 0, fmt.Errorf("%s would have to be %s from plumb", l.path, measure.FormatAngle(a, measure.Degree/10))
	case math.Abs(float64(got-want)) > float64(sizeNoise):
		return 0, fmt.Errorf("%s stops short of it", l.path)
	}
	return a, nil
}

// legLength finds the lean of the sides at which they are as long as they were, along the slope.
func (t *task) legLength() error {
	long := t.before.Part("side-left").FaceLength.Outer
	p := form.Build(t.now)
	q := p.Part("side-left")
	if q == nil {
		return errors.New("the leg length cannot be held: the piece cannot stand at its new sizes")
	}
	// the face runs between two level planes, so its plumb height is the same at any lean
	rise := float64(q.FaceLength.Outer) * math.Cos(t.now.Splay.Ends.Radians())
	if rise > float64(long) {
		return fmt.Errorf("the leg length cannot be held: sides of %s do not reach up to the top, %s above the floor; another height would do",
			t.show(long), t.show(measure.Length(rise)))
	}
	a := measure.Angle(math.Acos(rise / float64(long)))
	if t.now.Splay.Ends < 0 {
		a = -a
	}
	if math.Abs(float64(a)) > float64(steepest) {
		return fmt.Errorf("the leg length cannot be held: the sides would lean %s from plumb; another height would do", measure.FormatAngle(a, measure.Degree/10))
	}
	if math.Abs(float64(a-t.now.Splay.Ends)) < leanNoise {
		return nil
	}
	t.now.Splay.Ends = a
	return t.edit(LegLength, "splay.ends", degrees(a))
}
