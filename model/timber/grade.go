package timber

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"splaywright/assets"
	"splaywright/model/measure"
)

// Grade is a grade that hardwood is sold by: how small a board may be that bears it, and how much of its surface comes out
// as clear pieces of what size at least. That is said of the poorest board that bears it.
type Grade struct {
	Name       string
	Mark       string // how a tally writes it: "1C"
	Aliases    []string
	Width      measure.Length // of the smallest board
	Length     measure.Length
	Cuttings   []Cutting // a clear piece is as large as one of these at least
	Units      int       // cutting units for each foot of surface measure, of UnitsOfFoot
	BetterFace bool      // the promise is for the better face; the other is No. 1 Common
	Sure       string    // "read", "second-hand", "memory"
	Source     string

	plus, over, most int // of Pieces
}

// Cutting is the size of a clear piece.
type Cutting struct{ Width, Length measure.Length }

// Cutting units. One is 1 in × 1 ft of surface, so that a square foot has twelve.
const (
	UnitsOfFoot = 12
	CuttingUnit = 12 * 25.4 * 25.4 // mm²
)

// seasoned is what the smallest board of a grade may have shrunk in width by when it was kiln-dried,
// http://www.ahec-europe.org/technical_guide/grading/summary.php/en
const seasoned = measure.Inch / 2

var grades = sync.OnceValue(func() []Grade {
	all, err := LoadGrades(assets.Grades)
	if err != nil {
		panic(err) // the table is built in; a test reads it
	}
	return all
})

// Grades lists the grades of hardwood, the best first.
func Grades() []Grade { return slices.Clone(grades()) }

// GradeNames are their names, in the same order.
func GradeNames() []string {
	var out []string
	for _, g := range grades() {
		out = append(out, g.Name)
	}
	return out
}

// FindGrade gives the grade that goes by a name: in capitals or not, "No. 1 Common", "no 1 common", "#1 common" or "1C".
func FindGrade(name string) (Grade, bool) {
	want := gradeKey(name)
	for _, g := range grades() {
		if want != "" && slices.ContainsFunc(append([]string{g.Name, g.Mark}, g.Aliases...), func(n string) bool { return gradeKey(n) == want }) {
			return g, true
		}
	}
	return Grade{}, false
}

// gradeKey makes names of a grade that mean the same equal: small letters and digits, without the number sign.
func gradeKey(name string) string {
	k := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, name)
	if rest, numbered := strings.CutPrefix(k, "no"); numbered && rest != "" && unicode.IsDigit(rune(rest[0])) {
		return rest
	}
	return k
}

// Share is how much of the surface is promised clear, of 1.
func (g Grade) Share() float64 { return float64(g.Units) / UnitsOfFoot }

// WideEnough tells whether a board may bear the grade by its width, shrinkage in the kiln allowed for.
func (g Grade) WideEnough(width measure.Length) bool { return width+seasoned+samePiece >= g.Width }

// LongEnough tells whether a board may bear the grade by its length. One typed in whole millimetres may miss by one.
func (g Grade) LongEnough(length measure.Length) bool { return length+measure.Millimetre >= g.Length }

// Promised is how many cutting units a board of the grade promises: its surface measure as it is tallied, times the
// grade's units. Exactly half a foot, which a tally counts up and down by turns, is not counted on.
// (The cutting unit method: "multiply the surface feet of the board as tallied" is what
// https://forestryforum.com/board/index.php?action=printpage;topic=29330.0 reads in the rules.)
func (g Grade) Promised(length, width measure.Length) int { return g.Units * SureFeet(length, width) }

// SureFeet is the surface measure of a board in whole feet, exactly half a foot down.
func SureFeet(length, width measure.Length) int {
	feet := wholeFeet(length, width)
	if whole, rest := math.Modf(feet); math.Abs(rest-0.5) < 1e-9 {
		return int(whole)
	}
	return int(math.Round(feet))
}

// Pieces is in how many clear pieces, at most, the promise may lie on a board; 0 = any number.
func (g Grade) Pieces(feet int) int {
	if g.over == 0 {
		return 0
	}
	return max(1, min(g.most, (feet+g.plus)/g.over))
}

// Yields tells whether a piece is no larger than one of the clear pieces that the grade promises.
func (g Grade) Yields(length, width measure.Length) bool {
	return slices.ContainsFunc(g.Cuttings, func(c Cutting) bool { return length <= c.Length+samePiece && width <= c.Width+samePiece })
}

// Bears gives the best grade whose smallest board is no larger than a board; ok is false where there is none.
func Bears(length, width measure.Length) (g Grade, ok bool) {
	i := slices.IndexFunc(grades(), func(g Grade) bool { return g.WideEnough(width) && g.LongEnough(length) })
	if i < 0 {
		return Grade{}, false
	}
	return grades()[i], true
}

var gradeColumns = []string{"name", "mark", "aliases", "width", "length", "cuttings", "units", "plus", "over", "most", "face", "sure", "source"}

// LoadGrades reads a table of grades. A row without a source, with a number that is none, or that promises more than the one
// before it is refused with its line.
func LoadGrades(text []byte) ([]Grade, error) {
	var all []Grade
	err := rows(text, "table of grades", gradeColumns, 0, func(row []string) error {
		g, err := gradeRow(row)
		if err == nil && len(all) > 0 && all[len(all)-1].Units < g.Units {
			err = errors.New("it promises more than the grade before it")
		}
		all = append(all, g)
		return err
	})
	if err != nil {
		return nil, err
	}
	return all, nil
}

func gradeRow(row []string) (Grade, error) {
	g := Grade{Name: row[0], Mark: row[1], Aliases: split(row[2]), BetterFace: row[10] == "better", Sure: row[11], Source: strings.TrimSpace(row[12])}
	switch {
	case g.Name == "" || g.Mark == "":
		return g, errors.New("it has no name")
	case row[10] != "better" && row[10] != "both":
		return g, fmt.Errorf("%q does not say which face bears it (better, both)", row[10])
	case g.Source == "":
		return g, errors.New("it has no source")
	case !slices.Contains([]string{"read", "second-hand", "memory"}, g.Sure):
		return g, fmt.Errorf("%q does not say how sure it is (read, second-hand, memory)", g.Sure)
	}
	var width, length int
	for i, to := range map[int]*int{3: &width, 4: &length, 6: &g.Units, 7: &g.plus, 8: &g.over, 9: &g.most} {
		n, err := strconv.Atoi(row[i])
		if err != nil || n < 0 || i < 7 && n == 0 {
			return g, fmt.Errorf("%s: %q is no number", gradeColumns[i], row[i])
		}
		*to = n
	}
	if g.Units > UnitsOfFoot {
		return g, fmt.Errorf("units: %d of %d are more than all", g.Units, UnitsOfFoot)
	}
	g.Width, g.Length = measure.Length(width)*measure.Inch, measure.Length(length)*12*measure.Inch
	for _, text := range split(row[5]) {
		var w, l int
		if n, err := fmt.Sscanf(text, "%d x %d", &w, &l); n != 2 || err != nil || w < 1 || l < 1 {
			return g, fmt.Errorf("cuttings: %q is no size", text)
		}
		g.Cuttings = append(g.Cuttings, Cutting{Width: measure.Length(w) * measure.Inch, Length: measure.Length(l) * 12 * measure.Inch})
	}
	if len(g.Cuttings) == 0 {
		return g, errors.New("it promises no clear piece")
	}
	return g, nil
}

func split(list string) []string {
	var out []string
	for s := range strings.SplitSeq(list, ";") {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return out
}
