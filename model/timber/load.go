package timber

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"splaywright/model/measure"
)

// columns of the species table, in order.
var columns = []string{"name", "aliases", "kind", "specific_gravity", "volume_at", "side_hardness",
	"modulus_of_elasticity", "modulus_of_rupture", "read", "source"}

// figures are what the read column may name.
var figures = []string{"SG", "MOR", "MOE", "hardness"}

// Load reads a species table. A row without a source, with a figure that is not a positive
// number, or with a name that an earlier row has taken is refused with its line.
func Load(text []byte) ([]Species, error) {
	var all []Species
	taken := map[string]string{}
	err := rows(text, "species table", columns, 0, func(row []string) error {
		s, err := loadRow(row)
		if err == nil {
			err = claim(taken, s)
		}
		all = append(all, s)
		return err
	})
	if err != nil {
		return nil, err
	}
	return all, nil
}

// claim refuses a name or alias that another species goes by.
func claim(taken map[string]string, s Species) error {
	for _, n := range append([]string{s.Name}, s.Aliases...) {
		k := key(n)
		if other, ok := taken[k]; ok {
			return fmt.Errorf("%q already stands for %s", n, other)
		}
		taken[k] = s.Name
	}
	return nil
}

func loadRow(row []string) (Species, error) {
	s := Species{Name: row[0], Aliases: list(row[1], ";"), Wood: Wood(row[2]),
		Read: list(row[8], " "), Source: strings.TrimSpace(row[9])}
	switch {
	case key(s.Name) == "":
		return s, errors.New("it has no name")
	case s.Source == "":
		return s, errors.New("it has no source")
	case s.Wood != Hardwood && s.Wood != Softwood:
		return s, fmt.Errorf("kind is %q, expected %q or %q", row[2], Hardwood, Softwood)
	case row[4] != "12 %" && row[4] != "green":
		return s, fmt.Errorf(`volume_at is %q, expected "12 %%" or "green"`, row[4])
	}
	s.GreenSG = row[4] == "green"
	if err := loadRead(&s); err != nil {
		return s, err
	}
	return s, loadFigures(&s, row)
}

// loadRead takes "none" for a row remembered altogether: an empty cell is an oversight.
func loadRead(s *Species) error {
	if len(s.Read) == 0 {
		return errors.New(`read is empty, expected the figures read in the source, or "none"`)
	}
	if slices.Equal(s.Read, []string{"none"}) {
		s.Read = nil
	}
	for _, r := range s.Read {
		if !slices.Contains(figures, r) {
			return fmt.Errorf("read names %q, expected some of %q", r, figures)
		}
	}
	return nil
}

func loadFigures(s *Species, row []string) error {
	for _, f := range []struct {
		column int
		into   *float64
		scale  float64
	}{{3, &s.SG, 1}, {5, &s.Janka, measure.NewtonsPerPoundForce}, {6, &s.MOE, 1e6 * measure.MegapascalsPerPSI}, {7, &s.MOR, measure.MegapascalsPerPSI}} {
		if row[f.column] == "" && f.column == 5 {
			continue
		}
		v, err := strconv.ParseFloat(row[f.column], 64)
		if err != nil || !(v > 0) || v > 1e6 {
			return fmt.Errorf("%+s is %q, expected a positive number", columns[f.column], row[f.column])
		}
		*f.into = v * f.scale
	}
	if s.SG >= 1.5 {
		return fmt.Errorf("specific_gravity is %v; no wood is heavier than 1.5", s.SG)
	}
	s.Density12 = density12(s.SG, s.GreenSG)
	return nil
}

func list(text, separator string) []string {
	var out []string
	for _, t := range strings.Split(text, separator) {
		if t = strings.TrimSpace(t); t != "" {
			out = append(out, t)
		}
	}
	return out
}
