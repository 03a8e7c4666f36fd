package timber

import (
	"cmp"
	"slices"
	"strings"
	"sync"
	"unicode"

	"splaywright/assets"
	"splaywright/model/word"
)

// table is the built-in table with every name and alias pointing into it.
var table = sync.OnceValue(func() (t struct {
	all    []Species
	byName map[string]int
}) {
	all, err := Load(assets.Species)
	if err != nil {
		panic(err) // the table is built in; a test reads it
	}
	t.all, t.byName = all, map[string]int{}
	for i, s := range all {
		for _, n := range append([]string{s.Name}, s.Aliases...) {
			t.byName[key(n)] = i
		}
	}
	return t
})

// Find gives the species that goes by a name: in capitals or not, "white oak" or
// "oak, white", with or without hyphens.
func Find(name string) (Species, bool) {
	t := table()
	i, ok := t.byName[name] // as most are written already
	if !ok {
		i, ok = t.byName[key(name)]
	}
	if !ok {
		return Species{}, false
	}
	return t.all[i], true
}

// Names lists the species in alphabetical order.
func Names() []string {
	var out []string
	for _, s := range table().all {
		out = append(out, s.Name)
	}
	slices.Sort(out)
	return out
}

// All lists the species with their figures, in alphabetical order.
func All() []Species {
	all := slices.Clone(table().all)
	slices.SortFunc(all, func(a, b Species) int { return cmp.Compare(a.Name, b.Name) })
	return all
}

// Nearest gives up to n species whose names come closest to a name that Find does not know:
// those that share a word first, then those that differ by the fewest letters. Names that
// share nothing and differ by more than half are left out.
func Nearest(name string, n int) []string {
	type match struct {
		name  string
		score int
	}
	var found []match
	want := key(name)
	for _, s := range All() {
		best := -1
		for _, alias := range append([]string{s.Name}, s.Aliases...) {
			d := word.Distance(want, key(alias))
			if shareWord(want, key(alias)) {
				d = min(d, 1)
			} else if 2*d > max(len(want), len(key(alias))) {
				continue
			}
			if best < 0 || d < best {
				best = d
			}
		}
		if best >= 0 {
			found = append(found, match{s.Name, best})
		}
	}
	slices.SortStableFunc(found, func(a, b match) int { return cmp.Compare(a.score, b.score) })
	var out []string
	for _, m := range found[:min(n, len(found))] {
		out = append(out, m.name)
	}
	return out
}

// key makes names that mean the same equal: small letters, single spaces, no hyphens, and
// "oak, white" turned into "white oak".
func key(name string) string {
	if noun, kind, ok := strings.Cut(name, ","); ok {
		name = kind + " " + noun
	}
	return strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return unicode.IsSpace(r) || r == '-' || r == '_'
	}), " ")
}

func shareWord(a, b string) bool {
	for _, w := range strings.Fields(a) {
		if slices.Contains(strings.Fields(b), w) {
			return true
		}
	}
	return false
}
