package remedy

import (
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"splaywright/model/measure"
)

// shown is how far the figure is printed that stands there now, in its unit; what follows from other sizes has no end.
const shown = 0.01

// value is a number of the design and the step in which it is turned.
type value struct {
	path string
	now  float64 // in millimetres, degrees or as counted
	step float64
	unit string
}

// value finds the number at a path of the design, with its defaults filled in.
func (s *search) value(path string) (value, bool) {
	at, ok := lookUp(reflect.ValueOf(s.piece.Design), strings.Split(path, "."))
	if !ok {
		return value{}, false
	}
	v := value{path: path}
	switch x := at.(type) {
	case measure.Length:
		v.now, v.step, v.unit = x.MM(), 0.5, "mm"
		if s.piece.Design.Units == measure.Imperial {
			v.now, v.step, v.unit = x.Inches(), 1./32, "in"
		}
	case measure.Angle:
		v.now, v.step, v.unit = x.Degrees(), 0.5, "deg"
	case int:
		v.now, v.step = float64(x), 1
	default:
		return value{}, false
	}
	return v, true
}

// at is the number so many steps on, on the grid of steps.
func (v value) at(n int) float64 {
	grid := math.Floor(v.now/v.step + 1e-9)
	if n < 0 {
		grid = math.Ceil(v.now/v.step - 1e-9)
	}
	return (grid + float64(n)) * v.step
}

// can tells whether a number stays above nothing, where it was; of those of which none at all is a choice, not below it.
func (v value) can(n int) bool {
	return v.now <= 0 || v.at(n) > 0 || v.at(n) == 0 && slices.Contains(mayBeNone, v.path)
}

// mayBeNone are the sizes that a person may do without.
var mayBeNone = []string{"corners.stop", "corners.overhang", "corners.overhang-edges"}

func (v value) text(x float64) string {
	return strings.TrimSpace(strconv.FormatFloat(math.Round(x*1e6)/1e6, 'f', -1, 64) + " " + v.unit)
}

func (v value) offer(n int) Offer {
	return Offer{Path: v.path, Was: v.text(math.Round(v.now/shown) * shown), Now: v.text(v.at(n))}
}

// lookUp follows a path of the design file into the design: the keys are the names of the fields, in
// small letters and with hyphens.
func lookUp(at reflect.Value, keys []string) (any, bool) {
	for at.Kind() == reflect.Pointer {
		if at.IsNil() {
			return nil, false
		}
		at = at.Elem()
	}
	if len(keys) == 0 {
		return at.Interface(), true
	}
	switch at.Kind() {
	case reflect.Struct:
		name := strings.ReplaceAll(keys[0], "-", "")
		f := at.FieldByNameFunc(func(n string) bool { return strings.EqualFold(n, name) })
		if f.IsValid() {
			return lookUp(f, keys[1:])
		}
	case reflect.Slice:
		if i, err := strconv.Atoi(keys[0]); err == nil && i >= 0 && i < at.Len() {
			return lookUp(at.Index(i), keys[1:])
		}
	}
	return nil, false
}
