package app

import (
	"slices"
	"strings"

	"splaywright/app/say"
	"splaywright/assets"
)

// inchExample is the example in inches.
const inchExample = "lamp-table-stool"

// ExampleFor is the example that a window without a file begins with: one in inches where people
// measure in them. get gives the environment's settings, of which the first that is set counts:
// LC_ALL, LC_MEASUREMENT, LANG.
func ExampleFor(get func(string) string) string {
	for _, key := range []string{"LC_ALL", "LC_MEASUREMENT", "LANG"} {
		if locale := get(key); locale != "" {
			if inches(locale) {
				return inchExample
			}
			break
		}
	}
	return assets.FirstExample
}

// inches tells whether a territory measures lengths in inches: the United States and Liberia (from
// memory of the measurement systems in Unicode's CLDR).
func inches(locale string) bool {
	locale, _, _ = strings.Cut(locale, ".")
	locale, _, _ = strings.Cut(locale, "@")
	_, territory, _ := strings.Cut(locale, "_")
	return slices.Contains([]string{"US", "LR"}, territory)
}

// CommaFor tells whether people write decimals with a comma where the environment's settings say they
// are. get gives a setting, of which the first that is set counts: LC_ALL, LC_NUMERIC, LANG.
func CommaFor(get func(string) string) bool {
	for _, key := range []string{"LC_ALL", "LC_NUMERIC", "LANG"} {
		if locale := get(key); locale != "" {
			return comma(locale)
		}
	}
	return false
}

// comma tells whether a language divides decimals by a comma in most of the territories where it is
// spoken, and not by a point as in Switzerland, Liechtenstein, Mexico and around it (from memory of the
// number formats in Unicode's CLDR).
func comma(locale string) bool {
	locale, _, _ = strings.Cut(locale, ".")
	locale, _, _ = strings.Cut(locale, "@")
	language, territory, _ := strings.Cut(locale, "_")
	if slices.Contains([]string{"CH", "LI", "MX", "US", "GT", "HN", "NI", "PA", "PR", "SV", "DO", "PE"}, territory) {
		return false
	}
	return slices.Contains(strings.Fields("bg ca cs da de el es et fi fr gl hr hu id is it lt lv nb nl nn no pl pt ro ru sk sl sr sv tr uk vi"), language)
}

// custom is what a design that begins with an example takes over from how people write here: its title and the decimal sign.
func (w *Window) custom(example string) [][2]string {
	var out [][2]string
	if e, ok := assets.FindExample(example); ok && say.It(e.Title) != e.Title {
		out = append(out, [2]string{"title", say.It(e.Title)})
	}
	if w.comma {
		out = append(out, [2]string{"round.decimal", "comma"})
	}
	return out
}
