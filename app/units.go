package app

import (
	"slices"
	"strings"

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
