package timber

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"

	"splaywright/assets"
	"splaywright/model/measure"
)

// Ladder is a row of sizes that wood is sold by.
type Ladder string

// The ladders of assets/sold.csv: hardwood goes by its rough thickness, softwood by nominal sizes.
const (
	HardwoodThickness Ladder = "hardwood thickness"
	SoftwoodThickness Ladder = "softwood thickness"
	SoftwoodWidth     Ladder = "softwood width"
)

// Sold is a size that wood is sold by.
type Sold struct {
	Ladder   Ladder
	Nominal  string         // as the yard says it: "4/4", "1 1/4"
	Rough    measure.Length // the nominal size as a length
	Surfaced measure.Length // hardwood: both sides; softwood: dressed dry
	Other    measure.Length // hardwood: one side; softwood: dressed green; 0 = not in the table
	Sure     string         // "read", "second-hand", "memory"
	Source   string
}

var sold = sync.OnceValue(func() []Sold {
	all, err := LoadSold(assets.Sold)
	if err != nil {
		panic(err) // the table is built in; a test reads it
	}
	return all
})

// Steps lists the sizes of a ladder, the smallest first.
func Steps(l Ladder) []Sold {
	var out []Sold
	for _, s := range sold() {
		if s.Ladder == l {
			out = append(out, s)
		}
	}
	return out
}

// samePiece lets a size that is a step up to the rounding of binary fractions count as that step.
const samePiece measure.Length = 1e-9

// Surfaced gives the smallest size on a ladder that still holds a finished size once it is surfaced;
// ok is false where none does.
func Surfaced(l Ladder, finished measure.Length) (s Sold, ok bool) {
	for _, s := range sold() {
		if s.Ladder == l && s.Surfaced+samePiece >= finished {
			return s, true
		}
	}
	return Sold{}, false
}

// Bought gives the smallest thickness on a ladder that a part comes out of: one that still holds the finished board once
// it is surfaced and, of hardwood, which is sold rough, the rough board too; ok is false where none does.
func Bought(l Ladder, finished, rough measure.Length) (s Sold, ok bool) {
	for _, s := range sold() {
		if s.Ladder == l && s.Surfaced+samePiece >= finished && (l != HardwoodThickness || s.Rough+samePiece >= rough) {
			return s, true
		}
	}
	return Sold{}, false
}

// AskedFor is wood by the yard's own words: a thickness, and for softwood a width too where one is named.
type AskedFor struct {
	Thickness Sold
	Width     *Sold // of softwood; nil = not named
}

// Asked reads what wood is asked for by: "5/4" is a rough thickness of hardwood, "1 x 8" a nominal thickness and width
// of softwood, "2 x" its thickness alone.
func Asked(text string) (AskedFor, error) {
	thick, wide, soft := strings.Cut(strings.ReplaceAll(strings.ToLower(text), "×", "x"), "x")
	thick, wide = strings.TrimSpace(thick), strings.TrimSpace(wide)
	ladder := HardwoodThickness
	if soft {
		ladder = SoftwoodThickness
	}
	t, ok := step(ladder, thick)
	if !ok {
		return AskedFor{}, fmt.Errorf("%q is no thickness that is sold; hardwood: %s; softwood, with an x and its width behind: %s",
			text, nominals(HardwoodThickness), nominals(SoftwoodThickness))
	}
	a := AskedFor{Thickness: t}
	if wide == "" {
		return a, nil
	}
	w, ok := step(SoftwoodWidth, wide)
	if !ok {
		return AskedFor{}, fmt.Errorf("%q is no width that softwood is sold in; %s are", wide, nominals(SoftwoodWidth))
	}
	a.Width = &w
	return a, nil
}

func step(l Ladder, nominal string) (Sold, bool) {
	for _, s := range Steps(l) {
		if s.Nominal == nominal || s.Nominal == strings.ReplaceAll(nominal, "-", " ") {
			return s, true
		}
	}
	return Sold{}, false
}

func nominals(l Ladder) string {
	var out []string
	for _, s := range Steps(l) {
		out = append(out, s.Nominal)
	}
	return strings.Join(out, ", ")
}

var soldColumns = []string{"what", "nominal", "surfaced", "other", "sure", "source"}

// LoadSold reads a table of sizes. A row without a source, with a size that is not one, or that does
// not rise above the one before on its ladder is refused with its line.
func LoadSold(text []byte) ([]Sold, error) {
	var all []Sold
	err := rows(text, "table of sizes sold", soldColumns, 1, func(row []string) error {
		s, err := soldRow(row)
		if err == nil && len(all) > 0 && all[len(all)-1].Ladder == s.Ladder && s.Rough <= all[len(all)-1].Rough {
			err = errors.New("it is no larger than the size before it")
		}
		all = append(all, s)
		return err
	})
	if err != nil {
		return nil, err
	}
	return all, nil
}

func soldRow(row []string) (Sold, error) {
	s := Sold{Ladder: Ladder(row[0]), Nominal: row[1], Sure: row[4], Source: strings.TrimSpace(row[5])}
	switch {
	case !slices.Contains([]Ladder{HardwoodThickness, SoftwoodThickness, SoftwoodWidth}, s.Ladder):
		return s, fmt.Errorf("%q is no ladder", row[0])
	case s.Source == "":
		return s, errors.New("it has no source")
	case !slices.Contains([]string{"read", "second-hand", "memory"}, s.Sure):
		return s, fmt.Errorf("%q does not say how sure it is (read, second-hand, memory)", s.Sure)
	}
	for i, to := range []*measure.Length{&s.Rough, &s.Surfaced, &s.Other} {
		text := row[1+i]
		if text == "" && i == 2 {
			continue
		}
		q, n, err := measure.Literal(text + " in")
		if err != nil || n != len(text)+3 || !(q.Value > 0) {
			return s, fmt.Errorf("%s: %q is no size in inches", soldColumns[1+i], text)
		}
		*to = measure.Length(q.Value)
	}
	if s.Surfaced >= s.Rough {
		return s, errors.New("surfacing leaves it no thinner")
	}
	return s, nil
}
