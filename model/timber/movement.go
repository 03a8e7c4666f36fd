package timber

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"sync"

	"splaywright/assets"
)

// Movement is how a species shrinks and swells across its grain.
type Movement struct {
	Name string
	// Shrinkage from green to oven-dry, percent of the green size.
	Radial, Tangential, Volumetric float64
	ShrinkageSure                  string // "read", "second-hand", "memory"
	// Change of size per percent of moisture between 6 and 14 %, as a part of the size; 0 = not published.
	ChangeRadial, ChangeTangential         float64
	ChangeRadialSure, ChangeTangentialSure string
	Source                                 string
}

// movements is the built-in table by the species' key.
var movements = sync.OnceValue(func() map[string]Movement {
	all, err := LoadMovement(assets.Movement)
	if err != nil {
		panic(err) // the table is built in; a test reads it
	}
	out := map[string]Movement{}
	for _, m := range all {
		out[key(m.Name)] = m
	}
	return out
})

// FindMovement gives the movement of the species that goes by a name, as Find does.
func FindMovement(name string) (Movement, bool) {
	if s, ok := Find(name); ok {
		name = s.Name
	}
	m, ok := movements()[key(name)]
	return m, ok
}

var movementColumns = []string{"name", "radial", "tangential", "volumetric", "shrinkage_sure",
	"change_radial", "change_tangential", "change_radial_sure", "change_tangential_sure", "source"}

// LoadMovement reads a table of movement. A row without a source, without a word on how sure it is,
// or with a figure that is not a positive number is refused with its line.
func LoadMovement(text []byte) ([]Movement, error) {
	var all []Movement
	err := rows(text, "movement table", movementColumns, 0, func(row []string) error {
		m, err := movementRow(row)
		all = append(all, m)
		return err
	})
	if err != nil {
		return nil, err
	}
	return all, nil
}

func movementRow(row []string) (Movement, error) {
	m := Movement{Name: row[0], ShrinkageSure: row[4], ChangeRadialSure: row[7], ChangeTangentialSure: row[8], Source: row[9]}
	if m.Name == "" || m.Source == "" {
		return m, errors.New("a row needs a name and a source")
	}
	for _, f := range []struct {
		at   int
		to   *float64
		sure string
		may  bool // may be left out
	}{
		{1, &m.Radial, m.ShrinkageSure, false}, {2, &m.Tangential, m.ShrinkageSure, false}, {3, &m.Volumetric, m.ShrinkageSure, false},
		{5, &m.ChangeRadial, m.ChangeRadialSure, true}, {6, &m.ChangeTangential, m.ChangeTangentialSure, true},
	} {
		if f.may && row[f.at] == "" {
			continue
		}
		x, err := strconv.ParseFloat(row[f.at], 64)
		if err != nil || !(x > 0) {
			return m, fmt.Errorf("%s: %q is not a positive number", movementColumns[f.at], row[f.at])
		}
		if !slices.Contains([]string{"read", "second-hand", "memory"}, f.sure) {
			return m, fmt.Errorf("%s: %q does not say how sure it is (read, second-hand, memory)", movementColumns[f.at], f.sure)
		}
		*f.to = x
	}
	return m, nil
}

// Direction of a board's width or thickness to the growth rings.
type Direction string

// Across a flatsawn board's width runs the tangential direction, across a quartersawn one's the radial.
const (
	AcrossFlatsawn     Direction = "flatsawn"
	AcrossQuartersawn  Direction = "quartersawn"
	lowestCoefficient            = 6.0
	highestCoefficient           = 14.0
)

// Change is how much a size across the grain grows when the moisture goes from one percentage to
// another (FPL-GTR-190 chapter 13): by the coefficient where it is published and both moistures lie
// between 6 and 14 %, else by the shrinkage from the green size. It is not defined above fibre
// saturation, 30 %.
func (m Movement) Change(size float64, d Direction, from, to float64) float64 {
	c, s := m.ChangeTangential, m.Tangential
	if d == AcrossQuartersawn {
		c, s = m.ChangeRadial, m.Radial
	}
	within := min(from, to) >= lowestCoefficient && max(from, to) <= highestCoefficient
	if c > 0 && within {
		return size * c * (to - from)
	}
	return size * (to - from) / (fibreSaturation*100*100/s - fibreSaturation*100 + from)
}

// EquilibriumMoisture is the moisture, percent, that wood takes on after long enough in air of a
// temperature (°C) and relative humidity (percent), by the sorption formula of FPL-GTR-190 chapter 4
// with the coefficients of FPL-RN-0268 (1998).
func EquilibriumMoisture(celsius, humidity float64) float64 {
	t, h := celsius, humidity/100
	w := 349 + 1.29*t + 0.0135*t*t
	k := 0.805 + 0.000736*t - 0.00000273*t*t
	k1 := 6.27 - 0.00938*t - 0.000303*t*t
	k2 := 1.91 + 0.0407*t - 0.000293*t*t
	kh := k * h
	return 1800 / w * (kh/(1-kh) + (k1*kh+2*k1*k2*kh*kh)/(1+k1*kh+k1*k2*kh*kh))
}
