package table

import (
	"slices"
	"sort"
	"strconv"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// group is a set of equal parts: cut from the same blank by the same cuts to the same volume.
// A left and a right part that mirror each other are equal in that sense.
type group []*part.Part

// groups keeps the order in which the parts first appear.
func groups(p *form.Piece) []group {
	var all []group
	for _, q := range p.Parts {
		i := slices.IndexFunc(all, func(g group) bool { return alikeParts(g[0], q) })
		if i < 0 {
			all = append(all, group{q})
			continue
		}
		all[i] = append(all[i], q)
	}
	return all
}

// Figures that agree so closely are the same to any shop: they differ by rounding noise, or by
// less than anybody can cut.
const (
	sameLength = measure.Length(1e-3)
	sameAngle  = 1e-5 * measure.Degree
	sameVolume = 0.05 // mm³
)

func alikeParts(a, b *part.Part) bool {
	return a.Timber == b.Timber && alikeBoxes(a.Blank, b.Blank) && alikeBoxes(a.Rough, b.Rough) &&
		within(a.Volume, b.Volume, sameVolume) && alikeCuts(a.Cuts, b.Cuts)
}

func alikeBoxes(a, b part.Box) bool {
	return within(a.Length, b.Length, sameLength) && within(a.Width, b.Width, sameLength) &&
		within(a.Thickness, b.Thickness, sameLength)
}

// alikeCuts looks for each cut of the one among the cuts of the other, in whatever order.
func alikeCuts(a, b []part.Cut) bool {
	if len(a) != len(b) {
		return false
	}
	used := make([]bool, len(b))
	for _, c := range a {
		found := false
		for i, d := range b {
			if !used[i] && alikeCut(c, d) {
				used[i], found = true, true
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

func alikeCut(a, b part.Cut) bool {
	return a.Kind == b.Kind && a.OuterLonger == b.OuterLonger && within(a.Swing, b.Swing, sameAngle) &&
		within(a.Tilt, b.Tilt, sameAngle) && within(a.Length, b.Length, sameLength)
}

func within[T ~float64](a, b, tolerance T) bool { return a-b <= tolerance && b-a <= tolerance }

func (g group) marks() string { return JoinMarks(g) }

// JoinMarks writes the marks of boards in their order, those of many that count on as "1–6".
func JoinMarks(boards []*part.Part) string {
	var marks []string
	for _, q := range boards {
		if q.Mark != "" {
			marks = append(marks, q.Mark)
		}
	}
	sort.SliceStable(marks, func(i, j int) bool {
		if len(marks[i]) != len(marks[j]) {
			return len(marks[i]) < len(marks[j]) // 9 before 10
		}
		return marks[i] < marks[j]
	})
	if run, ok := numbered(marks); ok {
		return run
	}
	return strings.Join(marks, ", ")
}

// numbered writes names that count on from each other as first and last: "Stave 1", "Stave 2" and
// "Stave 3" as "Stave 1–3", and two as "Stave 1 and 2".
func numbered(names []string) (string, bool) {
	if len(names) < 2 {
		return "", false
	}
	stem := strings.TrimRight(names[0], "0123456789")
	first, err := strconv.Atoi(names[0][len(stem):])
	if err != nil {
		return "", false
	}
	for i, n := range names {
		if n != stem+strconv.Itoa(first+i) {
			return "", false
		}
	}
	if len(names) == 2 && stem != "" {
		return names[0] + " and " + strconv.Itoa(first+1), true
	}
	if len(names) == 2 {
		return "", false // marks: "4, 5"
	}
	return names[0] + "–" + strconv.Itoa(first+len(names)-1), true
}

func (g group) name() string { return JoinNames(g.names()) }

func (g group) names() []string {
	var names []string
	for _, q := range g {
		names = append(names, q.Name)
	}
	return names
}

// short is the marks with what the names have in common: "2, 3 Side", "1–6 Stave".
func (g group) short() string {
	name := g.name()
	stem, _, found := strings.Cut(name, ", ")
	for _, q := range g {
		found = found && len(g) > 1 && strings.HasPrefix(q.Name, stem+", ")
	}
	if found {
		name = stem
	}
	if run, ok := numbered(g.names()); ok && len(g) > 1 && name == run { // the marks are numbers enough
		name = strings.TrimRight(g[0].Name, " 0123456789")
	}
	return strings.TrimSpace(g.marks() + " " + name)
}

// JoinNames writes "Side, left" and "Side, right" as "Side, left and right", and "Front" and "Back" as "Front and back".
func JoinNames(names []string) string {
	if len(names) == 1 {
		return names[0]
	}
	if run, ok := numbered(names); ok {
		return run
	}
	stem, _, found := strings.Cut(names[0], ", ")
	var tails, plain []string
	for i, n := range names {
		s, tail, ok := strings.Cut(n, ", ")
		if !ok || s != stem {
			found = false
		}
		tails = append(tails, tail)
		if !ok && i > 0 {
			n = strings.ToLower(n[:1]) + n[1:]
		}
		plain = append(plain, n)
	}
	if found {
		return stem + ", " + and(tails)
	}
	if slices.ContainsFunc(names, func(n string) bool { return strings.Contains(n, ", ") }) {
		return and(names) // each name keeps its capital, which tells where it begins
	}
	return and(plain)
}

func and(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	last := len(list) - 1
	return strings.Join(list[:last], ", ") + " and " + list[last]
}
